package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Palette;
import holdfast.engine.pane.BottomPane;
import holdfast.engine.pane.FootLoad;
import holdfast.engine.pane.LoadCase;
import holdfast.engine.pane.PaneLoad;
import holdfast.engine.pane.PaneReport;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PanePictureTest {
  private static final Tank TANK =
      new Tank(740, 440, 590, 8, 10, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
  private static final Scene SCENE = new Scene("one foot", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5),
      new Scene.Water(500, 35, 25), List.of(), List.of(), List.of(), List.of(), List.of(), Settings.DEFAULT);

  private static PaneReport report() {
    List<Vec3> square = List.of(
        new Vec3(0.18, 0.13, 0.01), new Vec3(0.22, 0.13, 0.01), new Vec3(0.22, 0.17, 0.01), new Vec3(0.18, 0.17, 0.01));
    PaneLoad.Case filled = new PaneLoad.Case(List.of(new FootLoad("slab", square, 60, 60, true)), 60, true);
    return BottomPane.judge(SCENE, new PaneLoad(Map.of(LoadCase.FILLED, filled), Optional.empty()));
  }

  /** The foot stands left of and before the middle: the map must be darker there than in the quarter across. */
  @ParameterizedTest
  @EnumSource(Units.class)
  void darkestUnderTheFoot(Units units) {
    BufferedImage image = PanePicture.draw(SCENE, report(), 800, 560, units);
    double here = luminance(image, 120, 340, 290, 420);
    assertThat(here).isLessThan(0.9 * luminance(image, 400, 620, 150, 280));
    assertThat(here).isLessThan(0.9 * luminance(image, 400, 620, 290, 420));
  }

  private static double luminance(BufferedImage image, int x0, int x1, int y0, int y1) {
    double sum = 0;
    for (int y = y0; y < y1; y++) {
      for (int x = x0; x < x1; x++) sum += Colour.of(image.getRGB(x, y) & 0xFFFFFF).luminance();
    }
    return sum / ((x1 - x0) * (y1 - y0));
  }

  @Test
  void sameBytesEachTime() {
    BufferedImage one = PanePicture.draw(SCENE, report(), 640, 480, Units.METRIC);
    BufferedImage two = PanePicture.draw(SCENE, report(), 640, 480, Units.METRIC);
    assertThat(one.getRGB(0, 0, 640, 480, null, 0, 640)).isEqualTo(two.getRGB(0, 0, 640, 480, null, 0, 640));
  }

  /** The scale must be readable without hue: lightness falls all the way. */
  @Test
  void scaleDarkensAllTheWay() {
    double last = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= 50; i++) {
      double l = Palette.scale(i / 50.0).luminance();
      assertThat(l).isLessThan(last);
      last = l;
    }
  }

  @Test
  void wordsKeepClear() {
    FreePlaces places = new FreePlaces(new Rectangle2D.Double(0, 0, 200, 100));
    Rectangle2D thing = new Rectangle2D.Double(150, 40, 20, 20);
    places.take(thing);
    Rectangle2D first = places.beside(thing, 60, 14, 4);
    Rectangle2D second = places.beside(thing, 60, 14, 4);
    assertThat(first.getMaxX()).as("no room to the right").isLessThanOrEqualTo(150);
    assertThat(first.intersects(second)).isFalse();
    assertThat(second.intersects(thing)).isFalse();
  }
}
