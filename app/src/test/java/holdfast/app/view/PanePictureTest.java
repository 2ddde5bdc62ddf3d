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
  private static final Tank TANK = new Tank(740, 440, 590, 8, 10, Tank.BottomSupport.FULL, false, false, List.of(), List.of(), List.of());
  private static final Scene SCENE = new Scene("one foot", TANK, Floor.DEFAULT, new Scene.Sand(0, 1.5), new Scene.Water(500, 35, 25),
      List.of(), List.of(), List.of(), List.of(), List.of(), Settings.DEFAULT);

  private static PaneReport report() {
    List<Vec3> square = List.of(new Vec3(0.18, 0.13, 0.01), new Vec3(0.22, 0.13, 0.01), new Vec3(0.22, 0.17, 0.01), new Vec3(0.18, 0.17, 0.01));
    PaneLoad.Case filled = new PaneLoad.Case(List.of(new FootLoad("slab", square, 60, 60, true)), 60, true);
    return BottomPane.judge(SCENE, new PaneLoad(Map.of(LoadCase.FILLED, filled), Optional.empty()));
  }

  /** The foot stands left of and before the middle: the darkest part of the map must be there too. */
  @ParameterizedTest
  @EnumSource(Units.class)
  void darkestUnderTheFoot(Units units) {
    BufferedImage image = PanePicture.draw(SCENE, report(), 800, 560, units);
    long dark = 0;
    double sumX = 0;
    double sumY = 0;
    Colour limit = Palette.scale(0.85);
    for (int y = 100; y < 440; y++) {
      for (int x = 60; x < 650; x++) {
        int rgb = image.getRGB(x, y);
        Colour c = Colour.of(rgb & 0xFFFFFF);
        boolean onScale = c.b() > c.g() && c.r() > c.g();
        if (onScale && c.luminance() <= limit.luminance()) {
          dark++;
          sumX += x;
          sumY += y;
        }
      }
    }
    assertThat(dark).isPositive();
    // The pane fills the drawing's middle: left of 355 and below 270 pixels is left of and before its middle.
    assertThat(sumX / dark).isLessThan(355);
    assertThat(sumY / dark).isGreaterThan(270);
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
