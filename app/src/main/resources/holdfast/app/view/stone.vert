layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec3 faceNormal;
uniform mat4 viewProjection;
uniform mat4 place;
uniform vec4 cut;
uniform float swell;
out vec3 local;
out vec3 world;
out vec3 worldNormal;
out vec3 worldFace;

void main() {
  vec4 w = place * vec4(position + normal * swell, 1.0);
  local = position;
  world = w.xyz;
  worldNormal = mat3(place) * normal;
  worldFace = mat3(place) * faceNormal;
  gl_Position = viewProjection * w;
  gl_ClipDistance[0] = dot(cut, w);
}
