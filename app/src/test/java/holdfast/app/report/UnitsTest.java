package holdfast.app.report;

import static java.math.RoundingMode.CEILING;
import static java.math.RoundingMode.FLOOR;
import static java.math.RoundingMode.HALF_EVEN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
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
    assertThat(Units.US.number(Quantity.LENGTH, 25.4, FLOOR)).isEqualTo("1");
  }

  /**
   * What the trade calls glass, grids and rods of these thicknesses (trade's tables; common practice), and lengths on a tape:
   * 1 in = 25.4 mm (NIST SP 811), so a sixteenth is 1.5875 mm.
   */
  @ParameterizedTest
  @CsvSource({"5, 3/16", "6, 1/4", "8, 5/16", "10, 3/8", "12, 1/2", "12.7, 1/2", "19.05, 3/4", "25.4, 1", "914.4, 36",
      "1190, 46 7/8", "40, 1 9/16", "3.175, 1/8", "3.17, 0.12", "1, 0.04", "0, 0", "-40, -1 9/16", "304.7, 12"})
  void inchesReadAsOnATape(double mm, String inches) {
    assertThat(Units.US.number(Quantity.LENGTH, mm, HALF_EVEN)).isEqualTo(inches);
    assertThat(Units.US.text(Quantity.LENGTH, mm, HALF_EVEN)).isEqualTo(inches + " in");
    assertThat(Units.US.brief(Quantity.LENGTH, mm)).isEqualTo(inches + " in");
  }

  /** Down and up by less than a sixteenth, whatever the length; a fraction typed back is what it says. */
  @Test
  void inchesAreRoundedAsTheyAreAsked() {
    for (double mm = 3.2; mm < 2000; mm += 0.37) {
      double down = inches(Units.US.number(Quantity.LENGTH, mm, FLOOR)) * 25.4;
      double up = inches(Units.US.number(Quantity.LENGTH, mm, RoundingMode.CEILING)) * 25.4;
      assertThat(down).isBetween(mm - 1.5875 - 1e-6, mm + 1e-6);
      assertThat(up).isBetween(mm - 1e-6, mm + 1.5875 + 1e-6);
    }
  }

  private static double inches(String typed) {
    double sum = 0;
    for (String part : typed.split(" ")) {
      String[] over = part.split("/");
      sum += Double.parseDouble(over[0]) / (over.length > 1 ? Double.parseDouble(over[1]) : 1);
    }
    return sum;
  }

  /** 40 mm are 1.57480 in: what is less never reads as enough, what is enough never as less. */
  @Test
  void aRoomReadsBelowWhatIsWantedOnlyIfItIs() {
    assertThat(FigureText.room(40.1, 40, Units.US)).containsExactly("1.578", "1.574");
    assertThat(FigureText.room(39.9, 40, Units.US)).containsExactly("1 9/16", "1 5/8");
    assertThat(FigureText.room(45, 40, Units.US)).containsExactly("1 3/4", "1 5/8");
    assertThat(FigureText.room(39.9, 40, Units.METRIC)).containsExactly("39.9", "40");
    assertThat(FigureText.against(39.9, 40, "mm", Severity.FAIL, Units.US))
        .isEqualTo("found: 1 9/16 in, wanted: at least 1 5/8 in");
    assertThat(FigureText.against(304.9, 303.3, "mm", Severity.FAIL, Units.US))
        .isEqualTo("found: 12 1/16 in, wanted: at most 11 15/16 in");
  }

  /** Decimals where they may be typed over. */
  @Test
  void whatIsTypedOverHasDecimals() {
    assertThat(Units.US.typed(Quantity.LENGTH, 40)).isEqualTo("1.57");
    assertThat(Units.METRIC.typed(Quantity.LENGTH, 40)).isEqualTo("40");
  }

  @Test
  void zeroHasNoSignAndNothingIsPrintedAsNotANumber() {
    assertThat(Units.fixed(-0.0001, 2, HALF_EVEN)).isEqualTo("0.00");
    assertThat(Units.fixed(Double.NaN, 1, FLOOR)).isEqualTo("unknown");
    assertThat(Units.fixed(Double.POSITIVE_INFINITY, 1, FLOOR)).isEqualTo("no limit");
  }

  @ParameterizedTest
  @CsvSource(delimiter = '|', value = {
    "move it 12 mm back                       | move it 1/2 in back",
    "tie it with 40 ml of mortar              | tie it with 1.35 fl oz of mortar",
    "a push of 3.2 N tips it; it must bear 20 N. | a push of 0.719 lbf tips it; it must bear 4.5 lbf.",
    "stress 7.25 N/mm2, allowed 5.05 N/mm²    | stress 1050 psi, allowed 732 psi",
    "100 × 200 × 300 mm                       | 3 15/16 × 7 7/8 × 11 13/16 in",
    "from 25 to 50 mm                         | from 1 to 1 15/16 in",
    "250 g of powder in 2 batches             | 250 g of powder in 2 batches",
    "0.1 g sideways, 5 Newtons, 3 mmx, a12 mm | 0.1 g sideways, 5 Newtons, 3 mmx, a12 mm",
    "7 N s                                    | 1.57 lbf s",
    "2.7 kg of rock in 158 litres             | 5.95 lb of rock in 41.7 gal",
    "moved 20 mm that way                     | moved 3/4 in that way",
    "a foot 2 mm thick, 0.3 mm apart          | a foot 0.08 in thick, 0.01 in apart",
    "Move it at least 13 mm back.             | Move it at least 9/16 in back.",
    "a gap of at most 13 mm, 10 mm to spare   | a gap of at most 1/2 in, 3/8 in to spare",
    "it tips when pressed on its rim with 10.3 N | it tips when pressed on its rim with 2.31 lbf",
    "nothing topples under a push of 20 N     | nothing topples under a push of 4.5 lbf",
    "it stands 12 mm from the front pane      | it stands 7/16 in from the front pane",
    "a push of at least 16.9 N, at most 17 N  | a push of at least 3.8 lbf, at most 3.82 lbf"
  })
  void sentencesOfTheEngineAreRewritten(String metric, String us) {
    assertThat(Units.US.prose(metric)).isEqualTo(us);
    assertThat(Units.METRIC.prose(metric)).isEqualTo(metric.replace("mm2", "mm²"));
  }

  /**
   * 1 lb/gal is 0.1198264 kg/L (NIST SP 811, published): 0.06 are 0.50072, 0.24 are 2.00290, 0.05 are 0.41727 and 0.3 are
   * 2.50362. The report's line and the sheet's tell the same of them.
   */
  @Test
  void aUsualRangeReadsTheSameInReportAndSheet() {
    assertThat(FigureText.range(0.05, 0.06, 0.24, Units.US)).containsExactly("0.41 lb/gal", "0.51", "2.00 lb/gal");
    assertThat(FigureText.against(0.05, 0.06, "kg/L", Severity.NOTE, Units.US)).isEqualTo(
        "found: 0.41 lb/gal, limit 0.51 lb/gal");
    assertThat(FigureText.range(0.3, 0.06, 0.24, Units.US)).containsExactly("2.51 lb/gal", "0.51", "2.00 lb/gal");
    assertThat(FigureText.against(0.3, 0.24, "kg/L", Severity.NOTE, Units.US)).isEqualTo(
        "found: 2.51 lb/gal, limit 2.00 lb/gal");
    assertThat(FigureText.range(0.0601, 0.06, 0.24, Units.US).get(0)).isEqualTo("0.51 lb/gal");
    assertThat(FigureText.range(0.2399, 0.06, 0.24, Units.US).get(0)).isEqualTo("2.00 lb/gal");
    assertThat(FigureText.range(0.1, 0.06, 0.24, Units.METRIC)).containsExactly("0.10 kg/L", "0.06", "0.24 kg/L");
  }

  private static Finding finding(double figure, double limit, String unit, String sentence) {
    return new Finding(Code.SLIDES, Severity.WARN, List.of("antler"), OptionalDouble.of(figure), OptionalDouble.of(limit), unit,
        Optional.empty(), sentence, "");
  }

  /**
   * 0.990868 N are 0.22275 lbf (4.4482216 N to the pound-force, NIST SP 811, published): a sentence that tells 0.9 N of it tells
   * the 0.22 lbf that stand beside the limit, not the 0.202 that 0.9 N would be. 369.6 mm are 14.551 in; 20 mm are 0.787 in.
   */
  @Test
  void aSentenceTellsItsFindingsFigureAsItStandsBesideTheLimit() {
    Finding slides = finding(0.990868, 20, "N", "antler slides under a push of 0.9 N toward the back; moved 20 mm that way it stands.");
    assertThat(FigureText.against(0.990868, 20, "N", Severity.WARN, Units.US)).startsWith("found: 0.22 lbf,");
    assertThat(FigureText.sentence(slides, Units.US))
        .isEqualTo("antler slides under a push of 0.22 lbf toward the back; moved 3/4 in that way it stands.");
    assertThat(FigureText.sentence(slides, Units.METRIC)).isEqualTo(slides.sentence());
    Finding tall = finding(369.6, 303.3, "mm", "crown reaches 370 mm, 82 % of the water's depth.");
    assertThat(FigureText.against(369.6, 303.3, "mm", Severity.FAIL, Units.US)).startsWith("found: 14 9/16 in,");
    assertThat(FigureText.sentence(tall, Units.US)).isEqualTo("crown reaches 14 9/16 in, 82 % of the water's depth.");
  }

  /** What a sentence tells beside its figure is converted by itself. */
  @Test
  void otherFiguresOfASentenceAreTheirOwn() {
    assertThat(FigureText.sentence(finding(5, 20, "N", "a push of 16.9 N, toward 12 mm"), Units.US))
        .isEqualTo("a push of 3.79 lbf, toward 1/2 in");
  }
}
