package holdfast.model.io;

import holdfast.model.scene.Tank.BottomSupport;
import holdfast.model.scene.UsMeasure;
import holdfast.model.scene.UsualGlass;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Common tank sizes. Metric names give the outer glass, inch names the outside over the trim (published size charts); inner =
 * outer less twice the glass, height less the bottom (memory). The glass is the usual one for the size; everybody should
 * measure their own.
 */
public final class TankSizes {

  /** Outer lengths, centimetres (common practice). */
  private static final int[][] METRIC_CM = {
      {30, 30, 30}, {30, 30, 35}, {40, 25, 25}, {45, 45, 45}, {60, 30, 30}, {60, 30, 35}, {60, 40, 40}, {60, 60, 60},
      {80, 35, 40}, {80, 40, 50}, {90, 45, 45}, {100, 40, 50}, {100, 50, 50}, {120, 40, 50}, {120, 45, 50}, {120, 50, 50},
      {120, 60, 60}, {150, 50, 60}, {150, 60, 60}, {180, 60, 60}, {200, 60, 60},
  };
  /** Outside lengths over the trim, inches (published). */
  private static final int[][] INCHES = {
      {24, 12, 16}, {36, 18, 16}, {48, 13, 21}, {48, 18, 21}, {48, 24, 24}, {72, 24, 24},
  };

  private TankSizes() {}

  /** All of them: metric from small to large, then those in inches. */
  public static List<TankSize> all() {
    List<TankSize> sizes = new ArrayList<>();
    // Foam or frame is not known of a metric tank, and the worse of both is then taken; those with a trim stand on it.
    for (int[] s : METRIC_CM) sizes.add(outer(s, 10, "cm", BottomSupport.UNKNOWN));
    for (int[] s : INCHES) sizes.add(outer(s, UsMeasure.INCH_MM, "in", BottomSupport.EDGES));
    return List.copyOf(sizes);
  }

  /** The size of that name; case, spaces and the sign of multiplication do not matter, and the unit is cm if left out. */
  public static Optional<TankSize> named(String name) {
    String wanted = plain(name);
    return all().stream().filter(s -> plain(s.name()).equals(wanted) || plain(s.name()).equals(wanted + "cm")).findFirst();
  }

  /** The name that a mistyped one most likely stands for. */
  public static Optional<String> nearest(String name) {
    return Keys.nearest(name, all().stream().map(TankSize::name).toList());
  }

  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replace('×', 'x').replaceAll("\\s+", "");
  }

  private static TankSize outer(int[] size, double unitMm, String unit, BottomSupport support) {
    double length = size[0] * unitMm;
    double width = size[1] * unitMm;
    double height = size[2] * unitMm;
    double glass = UsualGlass.forOutsideMm(length, width, height);
    return new TankSize(size[0] + "x" + size[1] + "x" + size[2] + " " + unit,
        tenths(length - 2 * glass), tenths(width - 2 * glass), tenths(height - glass), glass, support);
  }

  private static double tenths(double mm) {
    return Math.rint(mm * 10) / 10;
  }
}
