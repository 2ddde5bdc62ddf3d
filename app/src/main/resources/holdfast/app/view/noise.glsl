// Value noise with its gradient. Hash by integer arithmetic, so that every driver draws the same stone.
float hash(ivec3 p) {
  uint h = uint(p.x) * 0x8da6b343u ^ uint(p.y) * 0xd8163841u ^ uint(p.z) * 0xcb1ab31fu;
  h = (h ^ (h >> 13)) * 0x5bd1e995u;
  h ^= h >> 15;
  return float(h & 0xffffu) / 65535.0;
}

vec4 noise(vec3 x) {
  ivec3 i = ivec3(floor(x));
  vec3 f = fract(x);
  vec3 u = f * f * f * (f * (f * 6.0 - 15.0) + 10.0);
  vec3 du = 30.0 * f * f * (f * (f - 2.0) + 1.0);
  float a = hash(i), b = hash(i + ivec3(1, 0, 0)), c = hash(i + ivec3(0, 1, 0)), d = hash(i + ivec3(1, 1, 0));
  float e = hash(i + ivec3(0, 0, 1)), g = hash(i + ivec3(1, 0, 1)), h = hash(i + ivec3(0, 1, 1)), k = hash(i + ivec3(1, 1, 1));
  float k1 = b - a, k2 = c - a, k3 = e - a, k4 = a - b - c + d, k5 = a - c - e + h, k6 = a - b - e + g;
  float k7 = -a + b + c - d + e - g - h + k;
  float v = a + k1 * u.x + k2 * u.y + k3 * u.z + k4 * u.x * u.y + k5 * u.y * u.z + k6 * u.z * u.x + k7 * u.x * u.y * u.z;
  vec3 grad = du * vec3(k1 + k4 * u.y + k6 * u.z + k7 * u.y * u.z,
                        k2 + k5 * u.z + k4 * u.x + k7 * u.z * u.x,
                        k3 + k6 * u.x + k5 * u.y + k7 * u.x * u.y);
  return vec4(v, grad);
}
