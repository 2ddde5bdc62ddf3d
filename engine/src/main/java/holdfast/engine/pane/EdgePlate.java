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
  private final double imageShare;
  private final int deflectionTerms;

  public EdgePlate(Plate plate) {
    this(plate, Tolerances.IMAGE_SHARE, Tolerances.DEFLECTION_TERMS);
  }

  /** For showing convergence: where the row of images ends, and how many terms the deflection gets. */
  EdgePlate(Plate plate, double imageShare, int deflectionTerms) {
    this.plate = plate;
    this.swapped = plate.widthM() < plate.lengthM();
    this.shortM = Math.min(plate.lengthM(), plate.widthM());
    this.longM = Math.max(plate.lengthM(), plate.widthM());
    this.imageShare = imageShare;
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
      void addPoint(double x, double y, double sourceX, double sourceY, double weight, boolean withoutCore, double[] k) {
        if (swapped) {
          addStrip(y, x, sourceY, sourceX, weight, 1, 0, k);
        } else {
          addStrip(x, y, sourceX, sourceY, weight, 0, 1, k);
        }
        if (withoutCore) subtractCore(x - sourceX, y - sourceY, weight, k);
      }
    };
  }

  /** u across, v along; {@code ku} and {@code kv} say where their curvatures go in {@code k}. */
  private void addStrip(double u, double v, double su, double sv, double weight, int ku, int kv, double[] k) {
    double c = Math.PI / shortM;
    Across across = Across.of(0.5 * c * (u - su), 0.5 * c * (u + su));
    double[] sum = new double[3];
    addImage(c, v - sv, across, weight, sum);
    addImage(c, v + sv, across, -weight, sum);
    for (int i = 1; ; i++) {
      double period = 2 * longM * i;
      double added = addImage(c, v - sv - period, across, weight, sum);
      added = Math.max(added, addImage(c, v - sv + period, across, weight, sum));
      added = Math.max(added, addImage(c, v + sv - period, across, -weight, sum));
      added = Math.max(added, addImage(c, v + sv + period, across, -weight, sum));
      if (added < imageShare) break;
    }
    k[ku] += sum[0];
    k[kv] += sum[1];
    k[2] += sum[2];
  }

  /** What all images of one source share: sines and cosines of half the difference and half the sum of angles. */
  private record Across(double sinMinus, double cosMinus, double sinPlus, double cosPlus) {
    static Across of(double minus, double plus) {
      return new Across(Math.sin(minus), Math.cos(minus), Math.sin(plus), Math.cos(plus));
    }
  }

  /** One load of the row; gives back the size of what it added, without its weight. */
  private double addImage(double c, double dv, Across across, double weight, double[] sum) {
    double reach = c * Math.abs(dv);
    // Its moment is about exp(-reach) (1 + reach) / pi.
    if ((1 + reach) * Math.exp(-reach) < imageShare) return 0;
    double half = sinh(0.5 * c * dv);
    double half2 = half * half;
    double sinMinus = across.sinMinus;
    double sinPlus = across.sinPlus;
    double same = 0.25 * c * c * Tolerances.SAME_POINT_M2;
    double minus = 2 * Math.max(half2 + sinMinus * sinMinus, same);
    double plus = 2 * Math.max(half2 + sinPlus * sinPlus, same);
    double scale = 1 / (4 * Math.PI);
    double m = scale * Math.log(plus / minus);
    double mv = scale * c * 2 * half * Math.sqrt(1 + half2) * (1 / plus - 1 / minus);
    double mu = scale * c * 2 * (sinPlus * across.cosPlus / plus - sinMinus * across.cosMinus / minus);
    sum[0] += weight * 0.5 * (m - dv * mv);
    sum[1] += weight * 0.5 * (m + dv * mv);
    sum[2] += weight * 0.5 * dv * mu;
    return Math.max(Math.abs(m), Math.abs(dv) * (Math.abs(mv) + Math.abs(mu)));
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
