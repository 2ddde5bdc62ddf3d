package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Scale;
import org.junit.jupiter.api.Test;

class FallPictureTest {
  /** The inch is 25.4 mm (NIST SP 811): four are 101.6. The words beside the ruler say its length exactly. */
  @Test
  void theRulerIsARoundLengthInTheReadersUnits() {
    assertThat(FallPicture.rulerMm(Units.METRIC)).isEqualTo(100);
    assertThat(FallPicture.rulerMm(Units.US)).isCloseTo(101.6, within(1e-9));
    assertThat(Scale.length(FallPicture.rulerMm(Units.METRIC), Units.METRIC)).isEqualTo("100 mm");
    assertThat(Scale.length(FallPicture.rulerMm(Units.US), Units.US)).isEqualTo("4 in");
  }
}
