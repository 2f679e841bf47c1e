// The zones: a colour and a hatch each, black borders in a white halo, accents dashed on top.
// A border is where two softened zone shares are equal; its distance in pixels is the difference
// of the shares over the slope of that difference, so lines keep their width on every slope.

in vec3 v_crown;
in float v_relief;
in vec4 v_zone_a;
in vec2 v_zone_b;
in vec4 v_accent_a;
in vec3 v_accent_b;

uniform vec3 zone_colour[7];     // linear; 0: no zone yet
uniform float hatch_tone[7];     // linear grey of the hatch
uniform float pixel_ratio;       // device pixels per logical pixel

out vec4 pixel;

float slope_of(float f)
{
    return max(length(vec2(dFdx(f), dFdy(f))), 1e-5);
}

// What black ink leaves of the light where it covers part of a pixel. Ink is laid on as the eye
// sees it: mixed in linear light, thin dark lines would come out grey.
float inked(float cover)
{
    return pow(1.0 - 0.97 * cover, 2.2);
}

// Ink of planes where `f` is a whole number, one pixel wide, fading where they crowd.
float hatch(float f)
{
    float slope = slope_of(f);
    float distance = abs(f - round(f)) / slope;
    float room = clamp(1.4 - slope * pixel_ratio * 2.6, 0.0, 1.0);
    return clamp(0.5 * pixel_ratio - distance + 0.5, 0.0, 1.0) * room;
}

void main()
{
    float share[6] = float[6](v_zone_a.x, v_zone_a.y, v_zone_a.z, v_zone_a.w,
                              v_zone_b.x, v_zone_b.y);
    vec2 slope[6];
    for (int k = 0; k < 6; ++k)
        slope[k] = vec2(dFdx(share[k]), dFdy(share[k]));

    float x = v_crown.x, y = v_crown.y, z = v_crown.z;
    float ink[7] = float[7](0.0,
                            hatch(z / 0.52),
                            0.0,
                            hatch((z + 0.9 * y) / 0.62),
                            hatch((0.86 * x + 0.5 * y) / 0.62),
                            max(hatch((x + y) / 0.46), hatch((x - y) / 0.46)),
                            0.0);

    int zone = 0;
    for (int k = 1; k < 6; ++k)
        if (share[k] > share[zone])
            zone = k;
    int number = share[zone] > 0.02 ? zone + 1 : 0;

    vec3 c = mix(zone_colour[number], vec3(hatch_tone[number]), 0.62 * ink[number]);
    c *= v_relief;

    float border = 1e6;
    for (int k = 0; k < 6; ++k)
        if (k != zone)
            border = min(border, (share[zone] - share[k]) / max(length(slope[zone] - slope[k]), 1e-5));
    border = number == 0 ? 1e6 : border;
    c = mix(c, vec3(1.0), 0.9 * clamp(2.0 * pixel_ratio - border + 0.5, 0.0, 1.0));
    c *= inked(clamp(0.95 * pixel_ratio - border + 0.5, 0.0, 1.0));

    float accent[7] = float[7](v_accent_a.x, v_accent_a.y, v_accent_a.z, v_accent_a.w,
                               v_accent_b.x, v_accent_b.y, v_accent_b.z);
    float outline = 1e6;
    for (int k = 0; k < 7; ++k)
        outline = min(outline, abs(accent[k] - 0.5) / slope_of(accent[k]));
    float dash = step(0.5, fract((gl_FragCoord.x + gl_FragCoord.y) / (10.0 * pixel_ratio)));
    c = mix(c, vec3(1.0), 0.8 * clamp(1.5 * pixel_ratio - outline + 0.5, 0.0, 1.0));
    c *= inked(dash * clamp(0.8 * pixel_ratio - outline + 0.5, 0.0, 1.0));

    pixel = vec4(encoded(c), 1.0);
}
