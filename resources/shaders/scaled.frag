// Colours that stand for a figure, under faint shadows only.

in vec3 v_lit;
in float v_relief;

out vec4 pixel;

void main()
{
    pixel = vec4(encoded(v_lit * v_relief), 1.0);
}
