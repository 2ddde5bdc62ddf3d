in vec2 at;
uniform vec3 high;
uniform vec3 low;
out vec4 result;

void main() {
  float t = smoothstep(0.0, 1.0, at.y);
  // A little noise hides the steps of the gradient.
  float d = fract(sin(dot(gl_FragCoord.xy, vec2(12.9898, 78.233))) * 43758.5453) - 0.5;
  result = vec4(mix(low, high, t) + d / 255.0, 1.0);
}
