layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec4 colour;
uniform mat4 viewProjection;
uniform vec4 cut;
out vec3 world;
out vec3 worldNormal;
out vec4 tint;

void main() {
  world = position;
  worldNormal = normal;
  tint = colour;
  gl_Position = viewProjection * vec4(position, 1.0);
  gl_ClipDistance[0] = dot(cut, vec4(position, 1.0));
}
