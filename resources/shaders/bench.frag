// The bench look: chalky ceramic with dye in it. It is matt: there is no gloss to add.

in vec3 v_lit;

uniform float relief;

out vec4 pixel;

void main()
{
    vec3 shoulder = 0.82 + 0.18 * (1.0 - exp(-(v_lit - 0.82) / 0.18));
    pixel = vec4(encoded(mix(v_lit, shoulder, step(0.82, v_lit) * relief)), 1.0);
}
