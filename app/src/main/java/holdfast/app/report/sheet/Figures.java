package holdfast.app.report.sheet;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.model.scene.UsMeasure;
import java.math.RoundingMode;
import java.util.List;

/** Figures as they stand on the sheet, in the reader's units; lengths and masses for work at the bench, so no finer. */
record Figures(Units units) {
  String mm(double v) {
    return units == Units.METRIC ? Units.fixed(v, 0, RoundingMode.HALF_EVEN) + " mm"
        : units.text(Quantity.LENGTH, v, RoundingMode.HALF_EVEN);
  }

  /** A room or gap: never printed larger than it is. */
  String mmAtLeast(double v) {
    return units == Units.METRIC ? Units.fixed(v, 0, RoundingMode.FLOOR) + " mm"
        : units.text(Quantity.LENGTH, v, RoundingMode.FLOOR);
  }

  /** Three lengths, the unit once. */
  String size(double a, double b, double c) {
    return length(a) + " × " + length(b) + " × " + mm(c);
  }

  String size(double a, double b) {
    return length(a) + " × " + mm(b);
  }

  /** A length without its unit. */
  String length(double v) {
    return units == Units.METRIC ? Units.fixed(v, 0, RoundingMode.HALF_EVEN)
        : units.number(Quantity.LENGTH, v, RoundingMode.HALF_EVEN);
  }

  String kg(double v) {
    return units == Units.METRIC
        ? trimmed(v, v < 10 ? 2 : v < 100 ? 1 : 0) + " kg" : trimmed(v / UsMeasure.POUND_KG, v < 45 ? 1 : 0) + " lb";
  }

  /** What one or two people may lift: never printed larger than it is. */
  String kgAtMost(double v) {
    boolean metric = units == Units.METRIC;
    return Units.plain(Double.parseDouble(Units.fixed(metric ? v : v / UsMeasure.POUND_KG, metric ? 1 : 0, RoundingMode.FLOOR)))
        + (metric ? " kg" : " lb");
  }

  String litres(double v) {
    double amount = units == Units.METRIC ? v : v / UsMeasure.GALLON_L;
    return trimmed(amount, amount < 1 ? 2 : amount < 100 ? 1 : 0) + (units == Units.METRIC ? " L" : " gal");
  }

  /** A mass to buy: rounded up to what scales in a shop tell. */
  String kgToBuy(double v) {
    boolean metric = units == Units.METRIC;
    double amount = metric ? v : v / UsMeasure.POUND_KG;
    String s = Units.fixed(amount, amount < 100 ? 1 : 0, RoundingMode.CEILING);
    return (s.endsWith(".0") ? s.substring(0, s.length() - 2) : s) + (metric ? " kg" : " lb");
  }

  /** Without noughts after the point, a whole number without its point. */
  private static String trimmed(double v, int decimals) {
    String s = Units.fixed(v, decimals, RoundingMode.HALF_EVEN);
    return decimals == 0 ? s : s.replaceAll("\\.?0+$", "");
  }

  /** Dry mass to a volume of water, grams to the litre. */
  String perLitre(double g) {
    return units == Units.METRIC ? Math.round(g) + " g/L"
        : Units.fixed(g * UsMeasure.GALLON_L / UsMeasure.OUNCE_G, 1, RoundingMode.HALF_EVEN) + " oz/gal";
  }

  /** Grams for mixing, rounded up: too little powder cannot be mended. */
  String grams(double v) {
    return units == Units.METRIC ? Units.fixed(v, 0, RoundingMode.CEILING) + " g"
        : Units.fixed(v / UsMeasure.OUNCE_G, 1, RoundingMode.CEILING) + " oz";
  }

  /** What several mixes take together: the sum of the figures as they stand on the sheet. */
  String gramsTogether(List<Double> each) {
    boolean metric = units == Units.METRIC;
    double sum = each.stream()
        .mapToDouble(v -> metric ? v : v / UsMeasure.OUNCE_G)
        .map(v -> Double.parseDouble(Units.fixed(v, metric ? 0 : 1, RoundingMode.CEILING))).sum();
    return Units.fixed(sum, metric ? 0 : 1, RoundingMode.HALF_EVEN) + (metric ? " g" : " oz");
  }

  String ml(double v) {
    return units.text(Quantity.SMALL_VOLUME, v, RoundingMode.HALF_EVEN);
  }

  String area(double mm2) {
    return units == Units.METRIC
        ? Units.fixed(mm2 / 100, 1, RoundingMode.HALF_EVEN) + " cm²" : units.text(Quantity.AREA, mm2, RoundingMode.HALF_EVEN);
  }

  /** A force that is asked for: never printed smaller than it is. */
  String newtons(double n) {
    return units.text(Quantity.FORCE, n, RoundingMode.CEILING);
  }

  /** A force that is offered: never printed larger than it is. */
  String newtonsAtMost(double n) {
    return units.text(Quantity.FORCE, n, RoundingMode.FLOOR);
  }

  /** A moment that is asked for, newton metres or inch pounds. */
  String moment(double nm) {
    return moment(nm, RoundingMode.CEILING);
  }

  String momentAtMost(double nm) {
    return moment(nm, RoundingMode.FLOOR);
  }

  private String moment(double nm, RoundingMode rounding) {
    return units == Units.METRIC ? Units.fixed(nm, 2, rounding) + " N m"
        : Units.fixed(nm / (UsMeasure.POUND_FORCE_N * UsMeasure.INCH_MM / 1e3), 1, rounding) + " in lbf";
  }

  /** A strength, newtons a square metre in: never printed larger than it is. */
  String strength(double nM2) {
    boolean metric = units == Units.METRIC;
    return Units.fixed(Quantity.STRESS.in(units, nM2 * 1e-6), metric ? 2 : 1, RoundingMode.FLOOR) + " "
        + units.sign(Quantity.STRESS);
  }

  /** A share that is used up, rounded up. */
  static String use(double share) {
    return Units.fixed(100 * share, 0, RoundingMode.CEILING) + " %";
  }

  /** Kilograms a square metre, or pounds a square foot. */
  String load(double kgM2) {
    return units == Units.METRIC
        ? Units.fixed(kgM2, 0, RoundingMode.CEILING) + " kg/m²"
        : Units.fixed(kgM2 * UsMeasure.FOOT_M * UsMeasure.FOOT_M / UsMeasure.POUND_KG, 0, RoundingMode.CEILING) + " lb/ft²";
  }

  static String percent(double share) {
    return Units.fixed(100 * share, 0, RoundingMode.HALF_EVEN) + " %";
  }

  /** A share that is promised: never printed larger than it is. */
  static String percentDown(double share) {
    return Units.fixed(100 * share, 0, RoundingMode.FLOOR) + " %";
  }

  static String money(double v) {
    return Units.fixed(v, 2, RoundingMode.HALF_EVEN);
  }

  /** A clock time from the start of work: 1:05 for 65 minutes. */
  static String clock(double minutes) {
    long m = Math.round(minutes);
    return m / 60 + ":" + (m % 60 < 10 ? "0" : "") + m % 60;
  }

  /** A span of time: "45 min", "3 h", "2 h 30 min". */
  static String span(double minutes) {
    long m = (long) Math.ceil(minutes - 1e-9);
    if (m < 60) return m + " min";
    return m / 60 + " h" + (m % 60 == 0 ? "" : " " + m % 60 + " min");
  }

  static String hours(double h) {
    return span(60 * h);
  }

  static String days(double d) {
    String n = Units.fixed(d, d == Math.rint(d) ? 0 : 1, RoundingMode.HALF_EVEN);
    return n + (n.equals("1") ? " day" : " days");
  }
}
