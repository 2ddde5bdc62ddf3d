package holdfast.engine.pane;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The pane on four edges against printed tables and against a plain double series. */
class EdgePlateTest {
  private static final double TABLE_NU = 0.3;

  /** Sides 1 along x and {@code ratio} along y. */
  private static Plate plate(double ratio) {
    return new Plate(1, ratio, 0.01, 70e9, TABLE_NU);
  }

  private static double deflection(EdgePlate model, Patch patch, double x, double y) {
    return model.deflection(List.of(model.unitLoad(patch)), new double[] {1}, 0).atM(x, y);
  }

  private static Bending bending(PlateModel model, Patch patch, double x, double y) {
    return model.bending(model.unitLoad(patch), x, y);
  }

  /**
   * Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8: w = alpha q a^4 / D, Mx = beta q a^2,
   * My = beta1 q a^2 in the middle. Printed digits from memory, up to 0.4 % low; the series columns are the same series
   * summed to the end (derived).
   */
  @ParameterizedTest
  @CsvSource({
    "1.0, 0.00406, 0.004062, 0.0479, 0.047886, 0.0479, 0.047886",
    "1.1, 0.00485, 0.004869, 0.0554, 0.055484, 0.0493, 0.049318",
    "1.2, 0.00564, 0.005651, 0.0627, 0.062682, 0.0501, 0.050081",
    "1.3, 0.00638, 0.006392, 0.0694, 0.069385, 0.0503, 0.050337",
    "1.4, 0.00705, 0.007085, 0.0755, 0.075549, 0.0502, 0.050222",
    "1.5, 0.00772, 0.007724, 0.0812, 0.081160, 0.0498, 0.049843",
    "1.6, 0.00830, 0.008308, 0.0862, 0.086229, 0.0492, 0.049285",
    "1.7, 0.00883, 0.008838, 0.0908, 0.090780, 0.0486, 0.048615",
    "1.8, 0.00931, 0.009316, 0.0948, 0.094847, 0.0479, 0.047880",
    "1.9, 0.00974, 0.009745, 0.0985, 0.098469, 0.0471, 0.047116",
    "2.0, 0.01013, 0.010129, 0.1017, 0.101683, 0.0464, 0.046350",
    "3.0, 0.01223, 0.012233, 0.1189, 0.118861, 0.0406, 0.040627",
    "4.0, 0.01282, 0.012819, 0.1235, 0.123459, 0.0384, 0.038415",
    "5.0, 0.01297, 0.012971, 0.1246, 0.124624, 0.0375, 0.037745"})
  void uniformWater(double ratio, double alphaPrinted, double alpha, double betaPrinted, double beta, double beta1Printed,
      double beta1) {
    Plate plate = plate(ratio);
    EdgePlate model = new EdgePlate(plate);
    double w = model.deflection(List.of(), new double[0], 1).atM(0.5, 0.5 * ratio) * plate.stiffnessNm();
    Bending m = model.unitWater(0.5, 0.5 * ratio);
    assertThat(w).isCloseTo(alpha, Percentage.withPercentage(0.1)).isCloseTo(alphaPrinted, Percentage.withPercentage(0.7));
    assertThat(m.xx()).isCloseTo(beta, Percentage.withPercentage(0.1)).isCloseTo(betaPrinted, Percentage.withPercentage(0.7));
    assertThat(m.yy()).isCloseTo(beta1, Percentage.withPercentage(0.1)).isCloseTo(beta1Printed, Percentage.withPercentage(0.7));
  }

  /** The same book: w = alpha P a^2 / D under a point load in the middle. Series column (derived), 0.1 %. */
  @ParameterizedTest
  @CsvSource({"1.0, 0.011601", "1.1, 0.012668", "1.2, 0.013556", "1.4, 0.014867", "1.6, 0.015701", "1.8, 0.016215",
    "2.0, 0.016524", "3.0, 0.016934"})
  void pointLoadInTheMiddle(double ratio, double alpha) {
    EdgePlate model = new EdgePlate(plate(ratio));
    double w = deflection(model, Patch.disc(0.5, 0.5 * ratio, 1e-5), 0.5, 0.5 * ratio);
    assertThat(w * model.plate().stiffnessNm()).isCloseTo(alpha, Percentage.withPercentage(0.1));
  }

  /**
   * Roark, Formulas for Stress and Strain, table 11.4 case 1b (published), small circle in the middle:
   * sigma = 3 W / (2 pi t^2) [(1 + nu) ln(2 b / (pi r')) + beta]; longer over shorter side, beta.
   */
  @ParameterizedTest
  @CsvSource({"1.0, 0.435", "1.2, 0.650", "1.4, 0.789", "1.6, 0.875", "1.8, 0.927", "2.0, 0.958", "12, 1.000"})
  void smallCircle(double ratio, double beta) {
    double radius = 0.004;
    Bending m = bending(new EdgePlate(plate(ratio)), Patch.disc(0.5, 0.5 * ratio, radius), 0.5, 0.5 * ratio);
    double found = 4 * Math.PI * m.principal() - (1 + TABLE_NU) * Math.log(2 / (Math.PI * radius));
    // One per cent of the stress factor that beta is part of, and of beta itself.
    assertThat(found).isCloseTo(beta, Percentage.withPercentage(1));
  }

  /**
   * A patch a1 x b1 in the middle of a plate a x 1, nu 0.3: six times the greater moment per newton. The first figures agree
   * with the tables of Roark 11.4 case 1c (published); digits from the double series (derived). A side of 0 is a line.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0.2, 0, 1.829134", "1, 0.4, 0, 1.391476", "1, 1, 0, 0.764151", "1, 0, 0.6, 1.126172", "1, 0.2, 0.2, 1.274467",
    "1, 0.4, 0.2, 1.072240", "1, 0.6, 0.6, 0.594111", "1, 0.8, 1, 0.349356", "1, 1, 1, 0.287318",
    "1.4, 0.2, 0, 1.999952", "1.4, 0.2, 0.2, 1.442434", "1.4, 0.4, 0.6, 0.829457", "1.4, 0, 0.2, 1.805015",
    "1.4, 1.4, 1, 0.323782", "2, 0.4, 0, 1.650971", "2, 0, 0.4, 1.340878", "2, 0.8, 0.2, 1.042810", "2, 1.6, 0.8, 0.444673",
    "2, 2, 1, 0.305049"})
  void patchInTheMiddle(double a, double a1, double b1, double sixM) {
    double line = 1e-4;
    EdgePlate model = new EdgePlate(new Plate(a, 1, 0.01, 70e9, TABLE_NU));
    Bending m = bending(model, Patch.rectangle(0.5 * a, 0.5, Math.max(a1, line), Math.max(b1, line)), 0.5 * a, 0.5);
    assertThat(6 * m.principal()).isCloseTo(sixM, Percentage.withPercentage(1));
  }

  /** Another method: Navier's double series for a rectangle off the middle, summed bluntly (derived). */
  @Test
  void agreesWithTheDoubleSeries() {
    Plate plate = new Plate(1.19, 0.44, 0.012, 70e9, 0.2);
    EdgePlate model = new EdgePlate(plate);
    Patch patch = Patch.rectangle(0.3, 0.15, 0.06, 0.04);
    double[][] places = {{0.3, 0.15}, {0.32, 0.16}, {0.36, 0.2}, {0.2, 0.1}, {0.8, 0.3}, {0.02, 0.02}, {0.331, 0.171}};
    for (double[] p : places) {
      Bending series = doubleSeries(plate, 0.3, 0.15, 0.06, 0.04, p[0], p[1]);
      Bending found = bending(model, patch, p[0], p[1]);
      assertThat(found.xx()).as("xx at %s, %s", p[0], p[1]).isCloseTo(series.xx(), within(3e-4));
      assertThat(found.yy()).as("yy at %s, %s", p[0], p[1]).isCloseTo(series.yy(), within(3e-4));
      assertThat(found.xy()).as("xy at %s, %s", p[0], p[1]).isCloseTo(series.xy(), within(3e-4));
    }
  }

  private static Bending doubleSeries(Plate plate, double cx, double cy, double sx, double sy, double x, double y) {
    double a = plate.lengthM();
    double b = plate.widthM();
    double xx = 0;
    double yy = 0;
    double xy = 0;
    for (int m = 1; m < 1500; m++) {
      double am = m * Math.PI / a;
      for (int n = 1; n < 600; n++) {
        double bn = n * Math.PI / b;
        double q = 16 / (Math.PI * Math.PI * m * n * sx * sy)
            * Math.sin(am * cx) * Math.sin(bn * cy) * Math.sin(0.5 * am * sx) * Math.sin(0.5 * bn * sy);
        double w = q / Math.pow(am * am + bn * bn, 2);
        xx += w * am * am * Math.sin(am * x) * Math.sin(bn * y);
        yy += w * bn * bn * Math.sin(am * x) * Math.sin(bn * y);
        xy -= w * am * bn * Math.cos(am * x) * Math.cos(bn * y);
      }
    }
    return Bending.ofCurvature(xx, yy, xy, plate.poisson());
  }

  @Test
  void mirroredLoadsBendMirrored() {
    Plate plate = new Plate(0.9, 0.45, 0.01, 70e9, 0.2);
    EdgePlate model = new EdgePlate(plate);
    Bending here = bending(model, Patch.rectangle(0.2, 0.1, 0.05, 0.03), 0.31, 0.22);
    Bending mirrored = bending(model, Patch.rectangle(0.7, 0.1, 0.05, 0.03), 0.59, 0.22);
    EdgePlate onEnd = new EdgePlate(new Plate(0.45, 0.9, 0.01, 70e9, 0.2));
    Bending turned = bending(onEnd, Patch.rectangle(0.1, 0.2, 0.03, 0.05), 0.22, 0.31);
    assertThat(mirrored.xx()).isCloseTo(here.xx(), within(1e-6 * Math.abs(here.xx())));
    assertThat(mirrored.yy()).isCloseTo(here.yy(), within(1e-6 * Math.abs(here.yy())));
    assertThat(mirrored.xy()).isCloseTo(-here.xy(), within(1e-6 * Math.abs(here.xy())));
    assertThat(turned.yy()).isCloseTo(here.xx(), within(1e-6 * Math.abs(here.xx())));
    assertThat(turned.xy()).isCloseTo(here.xy(), within(1e-6 * Math.abs(here.xy())));
  }

  /** Maxwell and Betti: deflection at B by a load at A is that at A by a load at B. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void deflectionIsReciprocal(long seed) {
    Random random = new Random(seed);
    EdgePlate model = new EdgePlate(new Plate(0.9, 0.45, 0.01, 70e9, 0.2));
    double ax = 0.9 * random.nextDouble();
    double ay = 0.45 * random.nextDouble();
    double bx = 0.9 * random.nextDouble();
    double by = 0.45 * random.nextDouble();
    double ab = deflection(model, Patch.disc(ax, ay, 1e-5), bx, by);
    double ba = deflection(model, Patch.disc(bx, by, 1e-5), ax, ay);
    assertThat(ab).as("seed %d", seed).isCloseTo(ba, within(1e-6 * Math.abs(ba)));
  }

  /** For the smallest patch that the rule for thick panes leaves, 0.325 t. */
  @ParameterizedTest
  @CsvSource({"0.45, 0.22", "0.03, 0.02", "0.2, 0.4"})
  void twiceTheTermsChangeLittle(double x, double y) {
    Plate plate = new Plate(0.9, 0.45, 0.01, 70e9, 0.2);
    Patch patch = Patch.disc(x, y, Patch.equivalentRadiusM(0, plate.thicknessM()));
    EdgePlate usual = new EdgePlate(plate);
    EdgePlate twice = new EdgePlate(plate, 2 * Tolerances.IMAGE_REACH, 2 * Tolerances.DEFLECTION_TERMS);
    assertThat(bending(usual, patch, x, y).principal())
        .isCloseTo(bending(twice, patch, x, y).principal(), Percentage.withPercentage(0.1));
    // Deflection against that of a newton in the middle, the greatest there is: in a corner it is next to nothing.
    double greatest = deflection(usual, Patch.disc(0.45, 0.225, 0.003), 0.45, 0.225);
    assertThat(deflection(usual, patch, x, y)).isCloseTo(deflection(twice, patch, x, y), within(1e-3 * greatest));
    assertThat(deflection(usual, patch, 0.45, 0.22)).isCloseTo(deflection(twice, patch, 0.45, 0.22), within(1e-3 * greatest));
  }

  @Test
  void edgesCarryNoMoment() {
    EdgePlate model = new EdgePlate(new Plate(0.9, 0.45, 0.01, 70e9, 0.2));
    Bending m = bending(model, Patch.disc(0.3, 0.2, 0.01), 0, 0.2);
    assertThat(m.xx()).isCloseTo(0, within(1e-9));
    assertThat(model.unitWater(0.45, 0.45).yy()).isCloseTo(0, within(1e-9));
  }
}
