package holdfast.model.shape;

import holdfast.model.geom.Box;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock.Look;
import holdfast.model.scene.Rock.Measured;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Stones made up from three measured lengths, a look and a seed: the same four give the same stone on every machine.
 *
 * <p>The stone's own frame has its origin at the middle of the underside of its box, x along the length, y along the
 * width (to the back), z up. The box is met to within the rounding of the hull (a millionth of the size). Flat places,
 * where a look has them, are exactly level. What lies between is invention: a weighed mass and measured lengths are the
 * owner's, the faces are not.
 */
final class Stones {
  /** How often another throw is tried when a lobe has too few or too many faces. */
  private static final int THROWS = 24;
  private static final int LEAST_FACES = 30;
  private static final int MOST_FACES = 60;
  /** Corners this near (share of the height) to the top or underside are put on it, so that flat places are level. */
  private static final double LEVEL = 1e-4;

  private Stones() {}

  /** The lobes in metres. Empty only for lengths that make no solid. */
  static List<Hull> lobes(Measured form) {
    Vec3 size = new Vec3(form.lengthMm(), form.widthMm(), form.heightMm()).times(1e-3);
    if (form.look() == Look.BOX) return hulls(List.of(box(size)));
    List<Hull> best = List.of();
    int bestOff = Integer.MAX_VALUE;
    int more = 0;
    for (int attempt = 0; attempt < THROWS && bestOff > 0; attempt++) {
      Random random = new Random(mixed(form.seed() + 0x9E3779B97F4A7C15L * form.look().word().hashCode(), attempt));
      List<List<Vec3>> corners = StoneLooks.carve(form.look(), size, more, random);
      if (corners.stream().anyMatch(List::isEmpty)) continue;
      List<Hull> lobes = hulls(fitted(corners, size));
      if (lobes.size() < corners.size()) continue;
      int lack = lobes.stream().mapToInt(h -> Math.max(0, LEAST_FACES - h.faces().size())).max().orElseThrow();
      int excess = lobes.stream().mapToInt(h -> Math.max(0, h.faces().size() - MOST_FACES)).max().orElseThrow();
      if (lack + excess < bestOff) {
        bestOff = lack + excess;
        best = lobes;
      }
      // Many cuts near a long edge hide one another; the next throw gets more of them, or fewer.
      more += Integer.signum(lack - excess) * 4;
    }
    return best;
  }

  private static List<Hull> hulls(List<List<Vec3>> lobes) {
    List<Hull> out = new ArrayList<>();
    for (List<Vec3> p : lobes) HullBuilder.build(p).match(out::add, why -> false);
    return out;
  }

  private static List<Vec3> box(Vec3 size) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      p.add(new Vec3(
          ((i & 1) - 0.5) * size.x(), ((i >> 1 & 1) - 0.5) * size.y(), (i >> 2) * size.z()));
    }
    return p;
  }

  /** Stretches all lobes together, axis by axis, until they fill the box exactly. */
  private static List<List<Vec3>> fitted(List<List<Vec3>> lobes, Vec3 size) {
    Box box = Box.round(lobes.stream().flatMap(List::stream).toList());
    Vec3 low = box.low();
    Vec3 high = box.high();
    List<List<Vec3>> out = new ArrayList<>();
    for (List<Vec3> lobe : lobes) {
      out.add(lobe.stream().map(p -> new Vec3(
          size.x() * (share(p.x(), low.x(), high.x()) - 0.5),
          size.y() * (share(p.y(), low.y(), high.y()) - 0.5),
          size.z() * levelled(share(p.z(), low.z(), high.z())))).toList());
    }
    return out;
  }

  private static double share(double v, double low, double high) {
    return (v - low) / (high - low);
  }

  private static double levelled(double share) {
    return share < LEVEL ? 0 : share > 1 - LEVEL ? 1 : share;
  }

  /** Neighbouring seeds give unlike stones (the finaliser of SplitMix64, Steele, Lea and Flood 2014). */
  private static long mixed(long seed, int attempt) {
    long z = seed + (attempt + 1) * 0x9E3779B97F4A7C15L;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
