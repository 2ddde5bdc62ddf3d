package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Camera;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
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
}
