// The sintered look: diffuse light from the vertices, and the gloss of a polished ceramic. In the
// row, light falls off to the back of the mouth, and necks sink into the dark where gum would be.

in vec3 v_position;
in vec3 v_normal;
in vec3 v_lit;
in float v_open;

uniform mat3 axes;
uniform vec3 occlusal;
uniform vec3 eye_position;
uniform float relief;
#ifdef ROW
in vec2 v_row;
uniform float surround;       // linear grey behind the row
uniform float grey;           // 1 = value alone
#endif

out vec4 pixel;

float edge(float q, float half_width)
{
    float s = clamp((half_width + 0.15 - q) / 0.30, 0.0, 1.0);
    return s * s * (3.0 - 2.0 * s);
}

// Brightness of a rectangular soft box seen in direction r; half widths are tangents.
float soft_box(vec3 r, vec3 towards, vec3 upright, float half_a, float half_b)
{
    vec3 d = normalize(towards);
    vec3 a = normalize(cross(upright, d));
    float z = dot(r, d);
    if (z <= 0.0)
        return 0.0;
    return edge(abs(dot(r, a)) / z, half_a) * edge(abs(dot(r, cross(d, a))) / z, half_b);
}

void main()
{
    vec3 right = axes[0], up = axes[1], eye = axes[2];
    vec3 view = normalize(eye_position - v_position);
    vec3 n = normalize(v_normal);
    float facing = clamp(dot(n, view), 0.0, 1.0);
    float grazing = 1.0 - facing;
    float square = grazing * grazing;
    float fresnel = 0.045 + 0.525 * square * square * grazing;
    vec3 mirror = 2.0 * dot(n, view) * n - view;
    vec3 sky = normalize(0.55 * occlusal + 0.45 * up);
    float around = 0.10 * (0.5 + 0.5 * dot(mirror, sky))
        + 2.7 * soft_box(mirror, -0.42 * right + 0.80 * up + 0.42 * eye, eye, 0.27, 0.20)
        + soft_box(mirror, 0.95 * right + 0.25 * up + 0.35 * eye, up, 0.12, 0.55);
    float seen = clamp(1.25 * pow(v_open, 0.6) - 0.22, 0.0, 1.0);
    vec3 c = v_lit + relief * fresnel * around * seen;
#ifdef ROW
    c *= mix(1.0, v_row.x, relief);
#endif
    // A shoulder keeps lights from clipping; without shading nothing is touched.
    vec3 shoulder = 0.82 + 0.18 * (1.0 - exp(-(c - 0.82) / 0.18));
    c = mix(c, shoulder, step(0.82, c) * relief);
#ifdef ROW
    c = mix(c, vec3(dot(c, vec3(0.2126, 0.7152, 0.0722))), grey);
    c = mix(vec3(surround), c, v_row.y);
#endif
    pixel = vec4(encoded(c), 1.0);
}
