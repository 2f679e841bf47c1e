// One vertex of the crown: place, light and whatever the chosen look needs.
// Light is worked out here and not per pixel: it is smooth, and there are fewer vertices than pixels.

layout(location = 0) in vec3 position;
layout(location = 1) in vec4 sharp_normal;     // w: ambient occlusion, 1 = open
layout(location = 2) in vec3 normal_blue;      // smoothed over 0.10 mm
layout(location = 3) in vec3 normal_green;     // 0.22 mm
layout(location = 4) in vec3 normal_red;       // 0.34 mm
layout(location = 5) in vec3 colour;           // sRGB, encoded
layout(location = 6) in vec4 zone_share_a;     // zones 1 to 4
layout(location = 7) in vec4 zone_share_b;     // zones 5 and 6
layout(location = 8) in vec4 accent_share_a;   // accents 7 to 10
layout(location = 9) in vec4 accent_share_b;   // accents 11 to 13
layout(location = 10) in float coats;
#ifdef ROW
layout(location = 11) in vec2 row_light;      // light along the row; how far out of the gum
#endif

uniform mat4 clip_from_crown;
uniform mat3 axes;             // columns: right, up, towards the eye
uniform vec3 occlusal;
uniform mat3 frame;            // takes positions to mesial, buccal, occlusal
uniform vec3 origin;
uniform vec2 jitter;           // fraction of the picture, for smooth edges
uniform float relief;          // 1 = lit, 0 = shading switched off

out vec3 v_position;
out vec3 v_normal;
out vec3 v_lit;
out float v_open;
out float v_relief;
#ifdef ZONES
out vec3 v_crown;
out vec4 v_zone_a;
out vec2 v_zone_b;
out vec4 v_accent_a;
out vec3 v_accent_b;
#endif
#ifdef COATS
out float v_coats;
#endif
#ifdef ROW
out vec2 v_row;
#endif

vec3 decoded(vec3 c)
{
    return mix(c / 12.92, pow((c + 0.055) / 1.055, vec3(2.4)), step(0.04045, c));
}

float wrapped(vec3 n, vec3 towards, float wrap)
{
    return max(0.0, dot(n, towards) + wrap) / (1.0 + wrap);
}

float light_on(vec3 n, vec3 key, vec3 fill, vec3 sky)
{
    return 0.38 + 0.27 * wrapped(n, key, 0.5) + 0.17 * wrapped(n, fill, 0.6)
        + 0.18 * (0.5 + 0.5 * dot(n, sky));
}

void main()
{
    gl_Position = clip_from_crown * vec4(position, 1.0);
    gl_Position.xy += jitter * gl_Position.w;
    v_position = position;

    vec3 right = axes[0], up = axes[1], eye = axes[2];
    vec3 key = normalize(-0.50 * right + 0.62 * up + 0.60 * eye);
    vec3 blue = normalize(normal_blue);
    v_normal = normalize(0.55 * normalize(sharp_normal.xyz) + 0.45 * blue);
    v_open = clamp(sharp_normal.w, 0.02, 1.0);

#ifdef SINTERED
    vec3 fill = normalize(0.85 * right + 0.05 * up + 0.55 * eye);
    vec3 sky = normalize(0.55 * occlusal + 0.45 * up);
    float reference = light_on(normalize(eye + 0.28 * up), key, fill, sky);
#ifdef CHALK
    vec3 light = vec3(light_on(blue, key, fill, sky)) / reference;
#else
    // Light wanders sideways inside the ceramic, red furthest.
    vec3 light = vec3(light_on(normalize(normal_red), key, fill, sky),
                      light_on(normalize(normal_green), key, fill, sky),
                      light_on(blue, key, fill, sky)) / reference;
#endif
    vec3 albedo = decoded(colour);
    // Light that bounces inside grooves: deeper colour, never black.
    vec3 a = 2.0404 * albedo - 0.3324, b = 0.6417 - 4.7951 * albedo, d = 2.7552 * albedo + 0.6903;
    vec3 open = max(vec3(v_open), ((v_open * a + b) * v_open + d) * v_open);
    v_lit = albedo * mix(vec3(1.0), light * open * 1.19, relief);
#else
    v_lit = decoded(colour);
#endif
    float form = (0.55 + 0.45 * clamp((dot(blue, key) + 0.4) / 1.4, 0.0, 1.0)) / 0.95;
    v_relief = mix(1.0, form * pow(max(v_open, 0.1), 0.8), 0.55 * relief);

#ifdef ZONES
    v_crown = frame * (position - origin);
    v_zone_a = zone_share_a;
    v_zone_b = zone_share_b.xy;
    v_accent_a = accent_share_a;
    v_accent_b = accent_share_b.xyz;
#endif
#ifdef COATS
    v_coats = coats;
#endif
#ifdef ROW
    v_row = row_light;
#endif
}
