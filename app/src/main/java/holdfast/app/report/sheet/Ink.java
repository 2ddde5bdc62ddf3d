package holdfast.app.report.sheet;

/**
 * The colours of the sheet, each chosen to survive a grey printer and colour-blind eyes: nothing is told by colour alone.
 * Red, green and blue from 0 to 1.
 */
enum Ink {
  BLACK(0.08f, 0.09f, 0.11f),
  GREY(0.42f, 0.44f, 0.47f),
  PALE(0.74f, 0.76f, 0.78f),
  FAINT(0.88f, 0.89f, 0.90f),
  PAPER(1, 1, 1),
  /** Fill of dry and cast rock. */
  STONE(0.93f, 0.91f, 0.87f),
  /** Fill of living rock. */
  LIVING(0.84f, 0.92f, 0.87f),
  /** Fill of the rock that a picture is about. */
  NEW(1.0f, 0.87f, 0.62f),
  WATER(0.25f, 0.50f, 0.70f),
  SAND(0.72f, 0.60f, 0.40f),
  /** Frame of a caution. */
  CAUTION(0.835f, 0.369f, 0.0f),
  CAUTION_FILL(1.0f, 0.955f, 0.90f),
  FINE(0.0f, 0.45f, 0.33f);

  private final float red;
  private final float green;
  private final float blue;

  Ink(float red, float green, float blue) {
    this.red = red;
    this.green = green;
    this.blue = blue;
  }

  float red() {
    return red;
  }

  float green() {
    return green;
  }

  float blue() {
    return blue;
  }
}
