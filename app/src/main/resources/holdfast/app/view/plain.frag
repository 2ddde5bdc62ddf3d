#include noise.glsl
#include light.glsl
in vec3 world;
in vec3 worldNormal;
in vec4 tint;
uniform int pattern;       // 0 none, 1 louvre cells, 2 sand, 3 hatching of a cut, 4 shade round the tank
uniform float amount;      // how much of the light counts
uniform vec4 cells;        // louvre: corner x, corner y, pitch, wall; ground: middle and half lengths of the tank
uniform vec3 under;        // what is seen through the louvre
out vec4 result;

float wall(vec2 p, float pitch, float width) {
  // Each line is averaged over the pixel, so that far cells turn grey instead of flickering.
  vec2 size = max(fwidth(p), vec2(1e-6));
  vec2 d = abs(mod(p + pitch * 0.5, pitch) - pitch * 0.5);
  vec2 cover = clamp((width * 0.5 - d) / size + 0.5, 0.0, 1.0);
  vec2 mean = vec2(width / pitch);
  cover = mix(cover, mean, clamp(size / pitch * 2.0 - 0.5, 0.0, 1.0));
  return max(cover.x, cover.y);
}

void main() {
  vec3 n = normalize(worldNormal);
  vec4 c = tint;
  if (pattern == 1) {
    float w = wall(world.xy - cells.xy, cells.z, cells.w);
    vec2 inCell = mod(world.xy - cells.xy, cells.z) / cells.z;
    c.rgb = mix(under * (0.86 + 0.14 * inCell.y), c.rgb, w);
  } else if (pattern == 2) {
    float grain = noise(world * 900.0).x * 0.5 + noise(world * 310.0).x * 0.5;
    c.rgb *= 0.90 + 0.20 * grain;
  } else if (pattern == 3) {
    float s = (world.x + world.y + world.z) * 150.0;
    float w = max(fwidth(s), 1e-4);
    float line = 1.0 - smoothstep(0.10 - w, 0.10 + w, abs(fract(s) - 0.5));
    c.rgb *= 1.0 - 0.22 * line;
  } else if (pattern == 4) {
    float off = length(max(abs(world.xy - cells.xy) - cells.zw, 0.0));
    c.a *= exp(-off / 0.07);
  }
  c.rgb = shade(c.rgb, world, n, n, amount);
  result = c;
}
