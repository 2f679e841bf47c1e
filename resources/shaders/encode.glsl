// The display encoding is ours, so that a colour comes out of the framebuffer as it went in.

vec3 encoded(vec3 c)
{
    c = clamp(c, 0.0, 1.0);
    return mix(12.92 * c, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
}
