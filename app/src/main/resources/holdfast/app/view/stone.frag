#include noise.glsl
#include light.glsl
in vec3 local;
in vec3 world;
in vec3 worldNormal;
in vec3 worldFace;
uniform mat4 place;
uniform int kind;          // 0 dry, 1 live, 2 cast
uniform float seed;
uniform vec3 tone;
uniform vec3 patchTone;
uniform vec4 wash;         // colour laid over the stone, and how much of it
uniform float alpha;
uniform vec3 eye;
out vec4 result;

void main() {
  vec3 q = local + vec3(seed * 0.37, seed * 0.61, seed * 0.23);
  vec4 broad = noise(q * 26.0);
  vec4 mid = noise(q * 88.0);
  vec4 fine = noise(q * 260.0);
  vec3 bump = broad.yzw * 0.10 + mid.yzw * 0.13 + fine.yzw * 0.10;
  vec3 colour;
  if (kind == 0) {
    // Bare limestone: pale, with pits.
    float pit = smoothstep(0.66, 0.86, mid.x * 0.45 + fine.x * 0.55);
    colour = tone * (0.90 + 0.17 * broad.x + 0.10 * fine.x) * (1.0 - 0.42 * pit);
    colour = mix(colour, colour * vec3(1.03, 0.97, 0.88), smoothstep(0.5, 0.8, broad.x));
    bump += fine.yzw * pit * 0.25;
  } else if (kind == 1) {
    // Overgrown: a crust in two tones, dotted with polyps.
    float zone = smoothstep(0.46, 0.54, broad.x * 0.7 + mid.x * 0.3);
    colour = mix(tone, patchTone, zone) * (0.86 + 0.30 * fine.x);
    vec3 cell = q * mat3(0.64, 0.48, 0.60, -0.60, 0.80, 0.0, -0.48, -0.36, 0.80) * 72.0;
    ivec3 id = ivec3(floor(cell));
    vec3 off = fract(cell) - vec3(0.27 + 0.46 * hash(id), 0.27 + 0.46 * hash(id + 17), 0.27 + 0.46 * hash(id + 43));
    float radius = length(off);
    float there = step(0.45, hash(id + 71));
    float ring = smoothstep(0.09, 0.13, radius) * (1.0 - smoothstep(0.20, 0.26, radius));
    colour = mix(colour, vec3(0.95, 0.92, 0.83), ring * there * 0.8);
    bump *= 0.8;
  } else {
    // Cast: even, with the faint courses of its mould.
    float course = 0.5 + 0.5 * sin(local.z * 520.0 + broad.x * 3.0);
    colour = tone * (0.92 + 0.06 * fine.x + 0.10 * course);
    bump *= 0.35;
  }
  vec3 nFace = normalize(worldFace);
  vec3 n = normalize(normalize(worldNormal) - mat3(place) * bump * 0.55);
  colour = mix(colour, wash.rgb, wash.a);
  vec3 c = shade(colour, world, n, nFace, 1.0);
  // Where stone meets what it stands on it is darker: little light finds its way there.
  c *= 1.0 - 0.30 * (1.0 - smoothstep(0.0, 0.05, world.z)) * (0.6 - 0.4 * n.z);
  vec3 look = normalize(eye - world);
  c += 0.05 * pow(1.0 - max(dot(n, look), 0.0), 3.0);
  result = vec4(c, alpha);
}
