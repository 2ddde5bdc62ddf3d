out vec2 at;

void main() {
  at = vec2(float((gl_VertexID & 1) * 4 - 1), float((gl_VertexID >> 1) * 4 - 1));
  gl_Position = vec4(at, 1.0, 1.0);
  at = at * 0.5 + 0.5;
}
