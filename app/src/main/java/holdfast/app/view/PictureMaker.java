package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.report.sheet.PaperNames;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Legends;
import holdfast.app.view.draw.Lettering;
import holdfast.app.view.draw.Looks;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Renderer;
import holdfast.app.view.draw.Scale;
import holdfast.app.view.draw.Tableau;
import holdfast.app.view.gl.Target;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.awt.image.BufferedImage;
import java.util.List;

/** Makes a finished picture of a scene: the tank from a standard side, with a line of words beneath. Needs a current context. */
public final class PictureMaker implements AutoCloseable {
  private static final int SAMPLES = 4;
  private static final int SHADOW_MAP = 2048;
  private static final double REFERENCE_HEIGHT = 800;
  private final Renderer renderer = new Renderer(SHADOW_MAP);

  /**
   * What is wanted.
   *
   * @param names write the stones' names on them
   */
  public record Wish(Camera.View view, int width, int height, Units units, boolean names) {}

  /** How large lettering and lines are on a picture of this size, 1 on one 800 high. */
  static float scaleFor(int width, int height) {
    return (float) Math.max(0.75, Math.min(height / REFERENCE_HEIGHT, width / (1.3 * REFERENCE_HEIGHT)));
  }

  public BufferedImage picture(Tableau tableau, Wish wish) {
    float scale = scaleFor(wish.width(), wish.height());
    try (Lettering letters = new Lettering(scale); Brush brush = new Brush(letters);
        Target target = new Target(wish.width(), wish.height(), SAMPLES)) {
      brush.call(PaperNames.of(tableau.scene(), letters::draws)::written);
      double strip = 58 * scale;
      Camera camera = frame(tableau, wish, strip);
      Looks looks = Looks.PLAIN;
      renderer.draw(target, tableau, camera, looks, new Marks(), scale);
      Projector eye = new Projector(camera, wish.width(), wish.height());
      Legends legends = new Legends(brush, eye, wish.units());
      legends.cells(tableau.scene());
      legends.water(tableau.scene());
      if (wish.names()) legends.namesOfSeen(tableau.stones());
      caption(brush, tableau, wish, strip, legends);
      brush.paint(wish.width(), wish.height());
      target.resolve();
      BufferedImage image = new BufferedImage(wish.width(), wish.height(), BufferedImage.TYPE_INT_RGB);
      image.setRGB(0, 0, wish.width(), wish.height(), target.read(), 0, wish.width());
      return image;
    }
  }

  /** Leaves room for the strip of words at the foot. */
  private static Camera frame(Tableau t, Wish wish, double strip) {
    double free = 1 - strip / wish.height();
    Camera c = Camera.fit(wish.view(), t.low(), t.high(), wish.width() / (wish.height() * free), 0.12);
    Vec3 down = c.up().times(-(1 / free - 1) * c.halfHeightM());
    return new Camera(c.target().plus(down), c.yawDeg(), c.pitchDeg(), c.distanceM() / free, c.flat());
  }

  private static void caption(Brush brush, Tableau tableau, Wish wish, double strip, Legends legends) {
    Scene scene = tableau.scene();
    Tank t = scene.tank();
    double s = brush.scale();
    double top = wish.height() - strip;
    double middle = top + strip / 2;
    brush.box(0, top, wish.width(), wish.height(), Palette.PANEL);
    brush.box(0, top, wish.width(), top + s, Palette.RULE);
    double x = 24 * s;
    double base = middle + brush.letters().capHeight(Lettering.Style.TITLE) / 2;
    double end = legends.scale(wish.width() - 24 * s, middle + 5 * s) - 18 * s;
    String view = switch (wish.view()) {
      case FRONT -> "from the front";
      case LEFT -> "from the left";
      case TOP -> "from above";
      case CORNER -> "from the front left";
    };
    String rocks = tableau.stones().size() + (tableau.stones().size() == 1 ? " rock" : " rocks");
    String inside = "inside " + Scale.lengths(wish.units(), t.lengthMm(), t.widthMm(), t.heightMm());
    Lettering letters = brush.letters();
    List<String> facts = List.of(inside, rocks, view, "numbers count the floor's cells");
    Caption words = Caption.fit(brush.called(scene.name()), facts, end - x, 18 * s,
        w -> letters.width(w, Lettering.Style.TITLE), w -> letters.width(w, Lettering.Style.LABEL));
    brush.text(x, base, words.name(), Lettering.Style.TITLE, 0, Palette.INK);
    x += letters.width(words.name(), Lettering.Style.TITLE) + 18 * s;
    brush.text(x, base, words.about(), Lettering.Style.LABEL, 0, Palette.INK_SOFT);
  }

  @Override
  public void close() {
    renderer.close();
  }
}
