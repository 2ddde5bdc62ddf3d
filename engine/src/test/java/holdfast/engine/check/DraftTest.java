package holdfast.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Expectations: decimal arithmetic done exactly, by hand. */
class DraftTest {
  /** A rock whose side is at 0.112 m, before a pane at 0.1: the numbers give a hair under 12 mm. */
  @Test
  void aFigureAHairUnderAWholeOneIsToldWhole() {
    double mm = (0.112 - 0.1) * 1e3;
    assertThat(Math.floor(mm)).as("else this test shows nothing").isEqualTo(11);
    assertThat(Draft.wholeDown(mm)).isEqualTo(12);
    assertThat(Draft.wholeUp(20 - mm)).isEqualTo(8);
    assertThat(Math.floor((0.3 - 0.1) * 10)).as("else this test shows nothing").isEqualTo(1);
    assertThat(Draft.down(0.3 - 0.1)).isEqualTo(0.2);
  }

  @Test
  void whatIsTrulyBetweenErrsToTheSafeSide() {
    assertThat(Draft.wholeDown(11.99999)).isEqualTo(11);
    assertThat(Draft.wholeUp(8.00001)).isEqualTo(9);
    assertThat(Draft.down(15.99999)).isEqualTo(15.9);
    assertThat(Draft.wholeDown(-0.2)).isEqualTo(-1);
  }
}
