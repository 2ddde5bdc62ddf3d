uniform sampler2DShadow shadowMap;
uniform mat4 shadowMatrix;
uniform vec3 lampDirection;   // towards the lamp
uniform float shadowSpread;   // softness, in shares of the map
uniform float shadowTexel;

const vec2 TAPS[12] = vec2[](
  vec2(-0.326, -0.406), vec2(-0.840, -0.074), vec2(-0.696, 0.457), vec2(-0.203, 0.621), vec2(0.962, -0.195), vec2(0.473, -0.480),
  vec2(0.519, 0.767), vec2(0.185, -0.893), vec2(0.507, 0.064), vec2(0.896, 0.412), vec2(-0.322, -0.933), vec2(-0.792, -0.598));

float lit(vec3 world, vec3 normal) {
  vec3 p = (shadowMatrix * vec4(world + normal * 0.0035, 1.0)).xyz * 0.5 + 0.5;
  float sum = 0.0;
  for (int i = 0; i < 12; i++) sum += texture(shadowMap, vec3(p.xy + TAPS[i] * shadowSpread, p.z - 0.0008));
  return sum / 12.0;
}

vec3 shade(vec3 colour, vec3 world, vec3 normal, vec3 flatNormal, float amount) {
  float sun = max(dot(normal, lampDirection), 0.0);
  float shadow = dot(flatNormal, lampDirection) > 0.0 ? lit(world, flatNormal) : 0.0;
  float sky = 0.5 + 0.5 * normal.z;
  vec3 ambient = mix(vec3(0.34, 0.335, 0.34), vec3(0.535, 0.55, 0.565), sky);
  float fill = max(dot(normal, vec3(-0.45, -0.86, 0.24)), 0.0) * 0.17;
  vec3 light = ambient + fill + vec3(0.50, 0.485, 0.45) * sun * shadow;
  return mix(colour, colour * light, amount);
}
