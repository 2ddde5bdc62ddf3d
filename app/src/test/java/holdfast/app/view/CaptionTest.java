package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class CaptionTest {
  private static final List<String> PARTS = List.of("inside 60 × 30 × 35 cm", "12 rocks", "from the front left");

  /** Letters of the name are twice as wide as the others; 18 pixels lie between (definition). */
  private static Caption fit(String name, double room) {
    return Caption.fit(name, PARTS, room, 18, w -> 2 * w.length(), String::length);
  }

  @Test
  void allIsToldWhereThereIsRoom() {
    assertThat(fit("Low ridge", 300))
        .isEqualTo(new Caption("Low ridge", "inside 60 × 30 × 35 cm  ·  12 rocks  ·  from the front left"));
  }

  @Test
  void nothingEverReachesPastItsRoom() {
    for (int room = 0; room < 200; room++) {
      Caption c = fit("A scene with a long name", room);
      double about = c.about().isEmpty() ? 0 : 18 + c.about().length();
      assertThat(2 * c.name().length() + about).as("room for %d", room).isLessThanOrEqualTo(room);
    }
  }

  @Test
  void theViewGoesFirstThenTheRocksThenTheEndOfTheName() {
    assertThat(fit("Low ridge", 72).about()).isEqualTo("inside 60 × 30 × 35 cm  ·  12 rocks");
    assertThat(fit("Low ridge", 60).about()).isEqualTo("inside 60 × 30 × 35 cm");
    assertThat(fit("Low ridge", 12)).isEqualTo(new Caption("Low r…", ""));
  }
}
