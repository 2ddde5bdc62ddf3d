package holdfast.app.report;

import static java.math.RoundingMode.CEILING;
import static java.math.RoundingMode.FLOOR;
import static java.math.RoundingMode.HALF_EVEN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitsTest {
  /**
   * One of the US unit, in the metric unit. NIST Special Publication 811 (2008), appendix B.8, printed factors: inch
   * 2.54 E-02 m (exact), square inch 6.4516 E-04 m2 (exact), pound (avoirdupois) 4.535924 E-01 kg, pound-force
   * 4.448222 N, foot pound-force 1.355818 J, psi 6.894757 E+03 Pa, gallon (US) 3.785412 L, fluid ounce (US) 29.57353 mL,
   * pound per gallon (US) 1.198264 E+02 kg/m3. Grade: published, printed digits from memory; the exact definitions of
   * inch, pound and US gallon (231 cubic inches) reproduce all of them.
   */
  @ParameterizedTest
  @CsvSource({
    "LENGTH, 25.4", "AREA, 645.16", "MASS, 0.4535924", "FORCE, 4.448222", "ENERGY, 1.355818", "STRESS, 0.006894757",
    "VOLUME, 3.785412", "SMALL_VOLUME, 29.57353", "DENSITY, 0.1198264", "IMPULSE, 4.448222"
  })
  void factorsAgreeWithThePrintedTable(Quantity quantity, double metricPerUs) {
    assertThat(quantity.in(Units.US, metricPerUs)).isCloseTo(1, within(5e-7));
    assertThat(quantity.in(Units.METRIC, metricPerUs)).isEqualTo(metricPerUs);
  }

  @Test
  void figuresRoundInTheDirectionAskedFor() {
    assertThat(Units.METRIC.text(Quantity.FORCE, 4.96, FLOOR)).isEqualTo("4.9 N");
    assertThat(Units.METRIC.text(Quantity.FORCE, 4.91, CEILING)).isEqualTo("5.0 N");
    // 20 N / 4.4482216 = 4.49617 lbf
    assertThat(Units.US.text(Quantity.FORCE, 20, HALF_EVEN)).isEqualTo("4.50 lbf");
    assertThat(Units.US.text(Quantity.FORCE, 20, FLOOR)).isEqualTo("4.49 lbf");
    assertThat(Units.US.text(Quantity.STRESS, 7.25, HALF_EVEN)).isEqualTo("1052 psi");
    assertThat(Units.METRIC.text(Quantity.AREA, 873.2, FLOOR)).isEqualTo("873 mm²");
  }

  @Test
  void whatIsExactStaysExactWhateverTheDirection() {
    // 0.3 N written in binary lies below 0.3; rounding down must not make it 0.2
    assertThat(Units.METRIC.number(Quantity.FORCE, 0.3, FLOOR)).isEqualTo("0.3");
    assertThat(Units.METRIC.number(Quantity.FORCE, 0.1 + 0.2, CEILING)).isEqualTo("0.3");
    assertThat(Units.US.number(Quantity.LENGTH, 25.4, FLOOR)).isEqualTo("1.00");
  }

  @Test
  void zeroHasNoSignAndNothingIsPrintedAsNotANumber() {
    assertThat(Units.fixed(-0.0001, 2, HALF_EVEN)).isEqualTo("0.00");
    assertThat(Units.fixed(Double.NaN, 1, FLOOR)).isEqualTo("unknown");
    assertThat(Units.fixed(Double.POSITIVE_INFINITY, 1, FLOOR)).isEqualTo("no limit");
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "move it 12 mm back                       | move it 0.472 in back",
    "tie it with 40 ml of mortar              | tie it with 1.35 fl oz of mortar",
    "a push of 3.2 N tips it; it must bear 20 N. | a push of 0.719 lbf tips it; it must bear 4.5 lbf.",
    "stress 7.25 N/mm2, allowed 5.05 N/mm²    | stress 1050 psi, allowed 732 psi",
    "100 × 200 × 300 mm                       | 3.94 × 7.87 × 11.8 in",
    "from 25 to 50 mm                         | from 0.984 to 1.97 in",
    "250 g of powder in 2 batches             | 250 g of powder in 2 batches",
    "0.1 g sideways, 5 Newtons, 3 mmx, a12 mm | 0.1 g sideways, 5 Newtons, 3 mmx, a12 mm",
    "7 N s                                    | 1.57 lbf s"
  })
  void sentencesOfTheEngineAreRewritten(String metric, String us) {
    assertThat(Units.US.prose(metric)).isEqualTo(us);
    assertThat(Units.METRIC.prose(metric)).isEqualTo(metric.replace("mm2", "mm²"));
  }
}
