// Not shown: which area lies under each pixel, and how deep, so that numbers find their place.
// Red is the zone, green one bit per accent, blue and alpha the depth.

in vec4 v_zone_a;
in vec2 v_zone_b;
in vec4 v_accent_a;
in vec3 v_accent_b;

out vec4 pixel;

void main()
{
    float share[6] = float[6](v_zone_a.x, v_zone_a.y, v_zone_a.z, v_zone_a.w,
                              v_zone_b.x, v_zone_b.y);
    int zone = 0;
    for (int k = 1; k < 6; ++k)
        if (share[k] > share[zone])
            zone = k;
    float accent[7] = float[7](v_accent_a.x, v_accent_a.y, v_accent_a.z, v_accent_a.w,
                               v_accent_b.x, v_accent_b.y, v_accent_b.z);
    int bits = 0;
    for (int k = 0; k < 7; ++k)
        if (accent[k] > 0.5)
            bits += 1 << k;
    float depth = floor(gl_FragCoord.z * 65535.0);
    pixel = vec4(share[zone] > 0.02 ? float(zone + 1) : 0.0, float(bits),
                 floor(depth / 256.0), mod(depth, 256.0)) / 255.0;
}
