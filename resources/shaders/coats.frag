// The number of coats: one tone for each whole number, and a line where the number changes.

in float v_relief;
in float v_coats;

uniform vec3 coat_tone[13];      // linear, for 0 to 12 coats
uniform float pixel_ratio;

out vec4 pixel;

void main()
{
    float slope = max(length(vec2(dFdx(v_coats), dFdy(v_coats))), 1e-5);
    int whole = int(clamp(floor(v_coats + 0.5), 0.0, 12.0));
    float past = v_coats + 0.5;
    float distance = abs(past - round(past)) / slope;
    // Below half a coat there is no line: round(past) is 0 there.
    float line = clamp(0.5 * pixel_ratio - distance + 0.5, 0.0, 1.0) * step(0.5, round(past));
    float room = clamp(1.4 - slope * pixel_ratio * 2.6, 0.0, 1.0);
    vec3 c = coat_tone[whole] * v_relief;
    float light = dot(coat_tone[whole], vec3(0.2126, 0.7152, 0.0722));
    c = mix(c, vec3(light > 0.18 ? 0.01 : 0.9), 0.75 * line * room);
    pixel = vec4(encoded(c), 1.0);
}
