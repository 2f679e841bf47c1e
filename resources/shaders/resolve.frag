// Four pictures, each shifted by part of a pixel, averaged in linear light: smooth edges that work
// on every card, and leave flat colours exactly as they were.

uniform sampler2D picture_0;
uniform sampler2D picture_1;
uniform sampler2D picture_2;
uniform sampler2D picture_3;

out vec4 pixel;

vec3 linear(sampler2D picture)
{
    vec3 c = texelFetch(picture, ivec2(gl_FragCoord.xy), 0).rgb;
    return mix(c / 12.92, pow((c + 0.055) / 1.055, vec3(2.4)), step(0.04045, c));
}

void main()
{
    vec3 sum = linear(picture_0) + linear(picture_1) + linear(picture_2) + linear(picture_3);
    pixel = vec4(encoded(0.25 * sum), 1.0);
}
