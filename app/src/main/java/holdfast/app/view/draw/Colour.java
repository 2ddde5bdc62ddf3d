package holdfast.app.view.draw;

import java.awt.Color;

/** A colour as shown (sRGB), parts from 0 to 1; {@code a} is how solid it is. */
public record Colour(float r, float g, float b, float a) {
  /** From 0xRRGGBB. */
  public static Colour of(int rgb) {
    return new Colour((rgb >> 16 & 255) / 255f, (rgb >> 8 & 255) / 255f, (rgb & 255) / 255f, 1);
  }

  public Colour solid(double alpha) {
    return new Colour(r, g, b, (float) alpha);
  }

  /** The colour {@code share} of the way from this one to another. */
  public Colour toward(Colour o, double share) {
    float s = (float) share;
    return new Colour(r + s * (o.r - r), g + s * (o.g - g), b + s * (o.b - b), a + s * (o.a - a));
  }

  public float[] rgb() {
    return new float[] {r, g, b};
  }

  public float[] rgba() {
    return new float[] {r, g, b, a};
  }

  /** For pictures that are drawn without OpenGL. */
  public Color awt() {
    return new Color(r, g, b, a);
  }

  /** Packed for the panels: 0xAABBGGRR. */
  public int packed() {
    return Math.round(a * 255) << 24 | Math.round(b * 255) << 16 | Math.round(g * 255) << 8 | Math.round(r * 255);
  }

  /** Relative luminance, 0 black to 1 white, by the WCAG 2 formula. */
  public double luminance() {
    return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
  }

  private static double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
