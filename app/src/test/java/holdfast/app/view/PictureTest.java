package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import holdfast.app.report.sheet.PaperNames;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Lettering;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Pictures of the worked example from the standard sides against kept ones that were looked at. */
class PictureTest {
  private static BufferedImage draw(Camera.View view) {
    Graphics.context();
    try (PictureMaker maker = new PictureMaker()) {
      var scene = ScenesSheet.exampleScene().orElseThrow();
      SceneStones stones = new SceneStones(name -> ScanFiles.load(Path.of(""), name));
      return maker.picture(stones.tableau(scene), new PictureMaker.Wish(view, 480, 320, Units.METRIC, view == Camera.View.TOP));
    }
  }

  @ParameterizedTest
  @EnumSource(Camera.View.class)
  void looksAsItWasKept(Camera.View view) throws IOException {
    Pictures.looksAsKept(draw(view), view.word());
  }

  @Test
  void drawsTheSameTwice() {
    BufferedImage a = draw(Camera.View.CORNER);
    BufferedImage b = draw(Camera.View.CORNER);
    assertThat(b.getRGB(0, 0, 480, 320, null, 0, 480)).isEqualTo(a.getRGB(0, 0, 480, 320, null, 0, 480));
  }

  @Test
  void differentViewsDiffer() {
    // A comparison that cannot fail is none: two views must not pass for each other.
    assertThat(Pictures.alike(draw(Camera.View.FRONT), draw(Camera.View.TOP))).isFalse();
  }

  /**
   * On a picture of 6000 x 3750 pixels the title is about 90 pixels high: all sizes of letters together no longer fit into what
   * holds them at 800, and the title was what was left out.
   */
  @Test
  void aLargePictureHasItsTitle() {
    Graphics.context();
    try (Lettering letters = new Lettering(PictureMaker.scaleFor(6000, 3750))) {
      for (Lettering.Style style : Lettering.Style.values()) {
        for (int code : "Peninsula, ridge: 12".codePoints().toArray()) {
          if (code == ' ') continue;
          Lettering.Glyph g = letters.letter(style, code);
          assertThat(g.u1() - g.u0()).as("%s of %s", Character.toString(code), style).isPositive();
          assertThat(g.v1() - g.v0()).as("%s of %s", Character.toString(code), style).isPositive();
        }
      }
    }
  }

  /** The typeface has the letters of these alphabets (its own table of characters); none of Chinese, and no little pictures. */
  @Test
  void namesInOtherAlphabetsAreWritten() {
    Graphics.context();
    try (Lettering letters = new Lettering(1)) {
      assertThat("Łódź Żabnica Šumava Ağaç Őr Ēriks".codePoints().allMatch(letters::draws)).isTrue();
      assertThat("Βράχος Скала їжак".codePoints().allMatch(letters::draws)).isTrue();
      assertThat("水族館🐠".codePoints().noneMatch(letters::draws)).isTrue();
    }
  }

  /** Two rocks whose names cannot be written are told apart all the same. */
  @Test
  void namesThatCannotBeWrittenAreTheRocksNumbers() {
    Graphics.context();
    try (Lettering letters = new Lettering(1); Brush brush = new Brush(letters)) {
      Scene s = ScenesSheet.exampleScene().orElseThrow();
      Rock first = s.rocks().get(0);
      Rock strange = new Rock("水族館", first.kind(), first.form(), first.mass(), first.sealedVolumeMl(), first.slimy(), first.removable(),
          first.pricePerKg());
      Scene named = new Scene(s.name(), s.tank(), s.floor(), s.sand(), s.water(), s.devices(), s.lamps(),
          List.of(strange, s.rocks().get(1)), List.of(), List.of(), s.settings());
      brush.call(PaperNames.of(named, letters::draws)::written);
      assertThat(brush.called("水族館")).isEqualTo("rock 1");
      assertThat(brush.called(s.rocks().get(1).name())).isEqualTo(s.rocks().get(1).name());
    }
  }
}
