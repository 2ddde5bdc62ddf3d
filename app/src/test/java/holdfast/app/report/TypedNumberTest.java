package holdfast.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.RoundingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedNumberTest {
  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "12.5 | 12.5", "12,5 | 12.5", ".5 | 0.5", "1/2 | 0.5", "12 1/2 | 12.5", "12-1/2 | 12.5", "-3/4 | -0.75", "−1 1/2 | -1.5", "7. | 7",
    " 3/16 | 0.1875", "+4 | 4"
  })
  void fractionsAndDecimals(String typed, double value) {
    assertThat(TypedNumber.of(typed)).isEqualTo(value);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "a", "1/", "/2", "1 2", "NaN", "Infinity", "1/2/3", "1/0", "0x10", "--1", "12 in"})
  void whatIsNone(String typed) {
    assertThatThrownBy(() -> TypedNumber.of(typed)).isInstanceOf(NumberFormatException.class);
  }

  /** What the reports print in inches can be typed again. */
  @Test
  void whatIsPrintedInInchesIsRead() {
    for (double mm = 4; mm < 400; mm += 3.7) {
      String printed = Units.US.number(Quantity.LENGTH, mm, RoundingMode.HALF_EVEN);
      assertThat(TypedNumber.of(printed) * 25.4).as(printed).isBetween(mm - 0.8, mm + 0.8);
    }
  }
}
