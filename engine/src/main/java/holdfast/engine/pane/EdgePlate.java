package holdfast.engine.pane;

import java.util.List;

/**
 * A rectangular pane carried on four edges that hold it down but let it turn (simply supported), as over a rim or frame.
 *
 * <p>Problem: D lap lap w = q, with w = 0 and no edge moment on all sides.
 *
 * <p>Point loads: the closed form for the endless strip (Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells,
 * article 35, after Nadai) across the shorter side, mirrored with changing sign in the two short edges; a row of images
 * that falls off as exp(-2 pi long / short) is summed until the next adds nothing. With M = (1 / 4 pi)
 * ln[(cosh v - cos(u + s)) / (cosh v - cos(u - s))]: -D w_yy = (M + y M_y) / 2, -D w_xx = (M - y M_y) / 2,
 * -D w_xy = y M_x / 2. Water: Levy's single series about the cylinder's parabola. Deflection: Navier's double series.
 *
 * <p>Limits: thin plate, small deflection, no holes. Corners are held down; a pane free to lift there bends a little more
 * in the corners and no more in the middle.
 */
public final class EdgePlate implements PlateModel {
  private final Plate plate;
  /** True where the shorter side lies along y, so that strip coordinates swap. */
  private final boolean swapped;
  private final double shortM;
  private final double longM;
  private final double imageReach;
  private final int deflectionTerms;

  public EdgePlate(Plate plate) {
    this(plate, Tolerances.IMAGE_REACH, Tolerances.DEFLECTION_TERMS);
  }

  /** For showing convergence: how far the row of images goes, and how many terms the deflection gets. */
  EdgePlate(Plate plate, double imageReach, int deflectionTerms) {
    this.plate = plate;
    this.swapped = plate.widthM() < plate.lengthM();
    this.shortM = Math.min(plate.lengthM(), plate.widthM());
    this.longM = Math.max(plate.lengthM(), plate.widthM());
    this.imageReach = imageReach;
    this.deflectionTerms = deflectionTerms;
  }

  @Override
  public Plate plate() {
    return plate;
  }

  @Override
  public UnitLoad unitLoad(Patch patch) {
    return new GreenLoad(plate, patch) {
      @Override
      void addPoints(double x, double y, double[] points, boolean withoutCore, double[] k) {
        double[] sum = new double[3];
        for (int p = 0; p < points.length; p += 3) {
          double sx = points[p];
          double sy = points[p + 1];
          if (swapped) {
            addStrip(y, x, sy, sx, points[p + 2], sum);
          } else {
            addStrip(x, y, sx, sy, points[p + 2], sum);
          }
          if (withoutCore) subtractCore(x - sx, y - sy, points[p + 2], k);
        }
        k[0] += sum[swapped ? 1 : 0];
        k[1] += sum[swapped ? 0 : 1];
        k[2] += sum[2];
      }
    };
  }

  /** The row of images of one load; u across, v along. */
  private void addStrip(double u, double v, double su, double sv, double weight, double[] sum) {
    double c = Math.PI / shortM;
    double reach = imageReach / c;
    Across across = Across.of(0.5 * c * (u - su), 0.5 * c * (u + su));
    addImage(c, reach, v - sv, across, weight, sum);
    addImage(c, reach, v + sv, across, -weight, sum);
    for (double period = 2 * longM; period - Math.abs(v) - Math.abs(sv) < reach; period += 2 * longM) {
      addImage(c, reach, v - sv - period, across, weight, sum);
      addImage(c, reach, v - sv + period, across, weight, sum);
      addImage(c, reach, v + sv - period, across, -weight, sum);
      addImage(c, reach, v + sv + period, across, -weight, sum);
    }
  }

  /** What all images of one source share: sines and cosines of half the difference and half the sum of angles. */
  private record Across(double sinMinus, double cosMinus, double sinPlus, double cosPlus) {
    static Across of(double minus, double plus) {
      return new Across(Math.sin(minus), Math.cos(minus), Math.sin(plus), Math.cos(plus));
    }
  }

  private static void addImage(double c, double reach, double dv, Across across, double weight, double[] sum) {
    // Its moment is about exp(-c dv) (1 + c dv) / pi.
    if (Math.abs(dv) > reach) return;
    double half = sinh(0.5 * c * dv);
    double half2 = half * half;
    double sinMinus = across.sinMinus;
    double sinPlus = across.sinPlus;
    double minus = 2 * (half2 + sinMinus * sinMinus);
    double plus = 2 * (half2 + sinPlus * sinPlus);
    double scale = weight / (8 * Math.PI);
    double m = scale * Math.log(plus / minus);
    double turned = dv * scale * c * 2;
    double mv = turned * half * Math.sqrt(1 + half2) * (1 / plus - 1 / minus);
    sum[0] += m - mv;
    sum[1] += m + mv;
    sum[2] += turned * (sinPlus * across.cosPlus / plus - sinMinus * across.cosMinus / minus);
  }

  /** Hyperbolic sine by the fast exponential; a series near zero, where the difference would lose digits. */
  private static double sinh(double x) {
    if (Math.abs(x) < 0.1) {
      double q = x * x;
      return x * (1 + q / 6 * (1 + q / 20 * (1 + q / 42)));
    }
    double e = Math.exp(x);
    return 0.5 * (e - 1 / e);
  }

  @Override
  public Bending unitWater(double x, double y) {
    double u = swapped ? y : x;
    double v = (swapped ? x : y) - 0.5 * longM;
    double ku = 0.5 * u * (shortM - u);
    double kv = 0;
    double kuv = 0;
    double scale = 4 * shortM * shortM / (Math.PI * Math.PI * Math.PI);
    for (int m = 1; m < 400; m += 2) {
      double c = m * Math.PI / shortM;
      double a = 0.5 * c * longM;
      double b = c * v;
      // cosh(b) / cosh(a) and sinh(b) / cosh(a) without overflow
      double grow = Math.exp(Math.abs(b) - a) / (1 + Math.exp(-2 * a));
      double cosh = grow * (1 + Math.exp(-2 * Math.abs(b)));
      double sinh = Math.signum(b) * grow * (1 - Math.exp(-2 * Math.abs(b)));
      double tanh = Math.tanh(a);
      double s = scale / ((double) m * m * m);
      // w = Y sin(cu); the part of Y beyond the parabola is f = -(a tanh a + 2) / 2 cosh b / cosh a + b sinh b / (2 cosh a)
      double lead = 0.5 * (a * tanh + 2);
      double f = -lead * cosh + 0.5 * b * sinh;
      double f1 = -lead * sinh + 0.5 * (sinh + b * cosh);
      double f2 = -lead * cosh + 0.5 * (2 * cosh + b * sinh);
      double sin = Math.sin(c * u);
      ku += s * f * sin;
      kv -= s * f2 * sin;
      kuv -= s * f1 * Math.cos(c * u);
      if (s * (lead + Math.abs(b)) * cosh < 1e-9 * scale) break;
    }
    return swapped
        ? Bending.ofCurvature(kv, ku, kuv, plate.poisson())
        : Bending.ofCurvature(ku, kv, kuv, plate.poisson());
  }

  @Override
  public Deflection deflection(List<UnitLoad> loads, double[] forcesN, double waterPa) {
    double a = plate.lengthM();
    double b = plate.widthM();
    int nx = Math.min(4 * deflectionTerms, (int) Math.ceil(deflectionTerms * a / shortM));
    int ny = Math.min(4 * deflectionTerms, (int) Math.ceil(deflectionTerms * b / shortM));
    double[][] w = new double[nx + 1][ny + 1];
    double[] sx = new double[nx + 1];
    double[] sy = new double[ny + 1];
    for (int i = 0; i < loads.size(); i++) {
      Patch patch = loads.get(i).patch();
      double[] points = patch.radiusM() > 0.2 * shortM ? patch.fine() : patch.coarse();
      for (int p = 0; p < points.length; p += 3) {
        sines(Math.PI * points[p] / a, sx);
        sines(Math.PI * points[p + 1] / b, sy);
        double force = 4 * forcesN[i] * points[p + 2] / (a * b);
        for (int m = 1; m <= nx; m++) {
          double fm = force * sx[m];
          for (int n = 1; n <= ny; n++) w[m][n] += fm * sy[n];
        }
      }
    }
    double d = plate.stiffnessNm() * Math.pow(Math.PI, 4);
    for (int m = 1; m <= nx; m++) {
      for (int n = 1; n <= ny; n++) {
        double water = m % 2 == 1 && n % 2 == 1 ? 16 * waterPa / (Math.PI * Math.PI * m * n) : 0;
        double waves = m * m / (a * a) + n * n / (b * b);
        w[m][n] = (w[m][n] + water) / (d * waves * waves);
      }
    }
    return (x, y) -> {
      double[] px = new double[nx + 1];
      double[] py = new double[ny + 1];
      sines(Math.PI * x / a, px);
      sines(Math.PI * y / b, py);
      double sum = 0;
      for (int m = 1; m <= nx; m++) {
        double row = 0;
        for (int n = 1; n <= ny; n++) row += w[m][n] * py[n];
        sum += px[m] * row;
      }
      return sum;
    };
  }

  /** sin(k angle) for every k up to the length, by the recurrence sin(k+1) = 2 cos sin(k) - sin(k-1). */
  private static void sines(double angle, double[] out) {
    double twice = 2 * Math.cos(angle);
    out[0] = 0;
    if (out.length > 1) out[1] = Math.sin(angle);
    for (int k = 2; k < out.length; k++) out[k] = twice * out[k - 1] - out[k - 2];
  }
}
