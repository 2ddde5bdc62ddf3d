in vec2 at;
in vec4 tint;
uniform sampler2D letters;
out vec4 result;

void main() {
  result = vec4(tint.rgb, tint.a * (at.x < 0.0 ? 1.0 : texture(letters, at).r));
}
