layout(location = 0) in vec3 position;
uniform mat4 viewProjection;
uniform mat4 place;
uniform vec4 cut;

void main() {
  vec4 w = place * vec4(position, 1.0);
  gl_Position = viewProjection * w;
  gl_ClipDistance[0] = dot(cut, w);
}
