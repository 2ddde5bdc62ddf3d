package holdfast.model.shape;

import static holdfast.model.shape.StoneCutter.centred;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock.Look;
import holdfast.model.shape.StoneCutter.Plane;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * The looks: for each a smooth body, how rough it is broken, and where it is flat. Bodies are given by how far they
 * reach in a direction, about the middle of a box of the measured size; the shares below are by eye.
 */
final class StoneLooks {
  /** Directions steeper than this (sine of the angle above level) are left out where a flat place belongs. */
  private static final double STEEP = 0.93;

  private StoneLooks() {}

  /** Corners of each lobe, not yet fitted to the box, from {@code more} cuts than usual; a lobe that came out open is empty. */
  static List<List<Vec3>> carve(Look look, Vec3 size, int more, Random random) {
    return switch (look) {
      case BLOCK -> List.of(block(size, more, random));
      case SLAB -> List.of(slab(size, more, random));
      case ROUND -> List.of(round(size, more, random));
      case SHELF -> List.of(shelf(size, more, random));
      case SPIKE -> List.of(spike(size, more, random));
      case BRANCH -> branch(size, more, random);
      case ARCH -> arch(size, more, random);
      case BOX -> throw new IllegalArgumentException("a box is not carved");
    };
  }

  /** A rounded box: |x/a|^p + |y/b|^p + |z/c|^p = 1 reaches (sum of |a n|^q)^(1/q) with 1/p + 1/q = 1. */
  private static ToDoubleFunction<Vec3> roundedBox(Vec3 size, double power) {
    double q = power / (power - 1);
    return n -> StrictMath.pow(
        StrictMath.pow(Math.abs(n.x()) * size.x() / 2, q)
            + StrictMath.pow(Math.abs(n.y()) * size.y() / 2, q)
            + StrictMath.pow(Math.abs(n.z()) * size.z() / 2, q), 1 / q);
  }

  /** A rounded box whose plan is skewed and turned a little, so that no side runs along the box. */
  private static ToDoubleFunction<Vec3> skewed(Vec3 size, double power, double skew, Random random) {
    ToDoubleFunction<Vec3> body = roundedBox(size, power);
    double yx = skew * 2 * centred(random) * Math.min(1, size.y() / size.x());
    double xy = skew * 2 * centred(random) * Math.min(1, size.x() / size.y());
    double xz = skew * centred(random);
    double yz = skew * centred(random);
    // The body sheared by A reaches along n as the plain one does along A' n.
    return n -> body.applyAsDouble(
        new Vec3(n.x() + yx * n.y(), n.y() + xy * n.x(), n.z() + xz * n.x() + yz * n.y()));
  }

  private static List<Plane> broken(
      ToDoubleFunction<Vec3> body, List<Vec3> directions, double swell, double step, Random random) {
    ToDoubleFunction<Vec3> rough = StoneCutter.roughness(swell, step, random);
    List<Plane> planes = new ArrayList<>();
    for (Vec3 n : directions) planes.add(new Plane(n, body.applyAsDouble(n) * rough.applyAsDouble(n)));
    return planes;
  }

  /** Large fresh breaks that take off a corner or an edge. */
  private static void breaks(
      List<Plane> planes, ToDoubleFunction<Vec3> body, int n, double depth, double steep, Random random) {
    for (int i = 0; i < n; i++) {
      double a = 2 * Math.PI * random.nextDouble();
      double z = steep * 2 * centred(random);
      double r = Math.sqrt(1 - z * z);
      Vec3 u = new Vec3(r * StrictMath.cos(a), r * StrictMath.sin(a), z);
      planes.add(new Plane(u, body.applyAsDouble(u) * (1 - depth * (0.4 + 0.6 * random.nextDouble()))));
    }
  }

  private static List<Vec3> notSteep(List<Vec3> directions, boolean up, boolean down) {
    return directions.stream().filter(n -> !(up && n.z() > STEEP) && !(down && n.z() < -STEEP)).toList();
  }

  private static Plane level(double up, double height) {
    return new Plane(new Vec3(0, 0, up), up * height);
  }

  private static List<Vec3> block(Vec3 size, int more, Random random) {
    ToDoubleFunction<Vec3> body = skewed(size, 3.6 + 1.6 * random.nextDouble(), 0.3, random);
    List<Vec3> directions = notSteep(StoneCutter.directions(50 + more, 0.16, random), true, true);
    List<Plane> planes = broken(body, directions, 0.07, 0.025, random);
    breaks(planes, body, 2 + random.nextInt(3), 0.2, 0.6, random);
    planes.add(level(1, (0.40 + 0.04 * random.nextDouble()) * size.z()));
    planes.add(level(-1, -(0.41 + 0.04 * random.nextDouble()) * size.z()));
    return StoneCutter.corners(planes, Vec3.ZERO);
  }

  private static List<Vec3> slab(Vec3 size, int more, Random random) {
    ToDoubleFunction<Vec3> body = skewed(size, 2.6 + 0.8 * random.nextDouble(), 0.35, random);
    List<Vec3> directions = notSteep(StoneCutter.directions(50 + more, 0.16, random), true, true);
    List<Plane> planes = broken(body, directions, 0.09, 0.03, random);
    breaks(planes, body, 3 + random.nextInt(3), 0.22, 0.35, random);
    planes.add(level(1, (0.36 + 0.04 * random.nextDouble()) * size.z()));
    planes.add(level(-1, -(0.37 + 0.04 * random.nextDouble()) * size.z()));
    return StoneCutter.corners(planes, Vec3.ZERO);
  }

  private static List<Vec3> round(Vec3 size, int more, Random random) {
    ToDoubleFunction<Vec3> body = skewed(size, 2.1 + 0.4 * random.nextDouble(), 0.2, random);
    List<Vec3> directions = notSteep(StoneCutter.directions(56 + more, 0.22, random), false, true);
    List<Plane> planes = broken(body, directions, 0.07, 0.022, random);
    breaks(planes, body, 2 + random.nextInt(2), 0.14, 0.8, random);
    planes.add(level(-1, -(0.41 + 0.02 * random.nextDouble()) * size.z()));
    return StoneCutter.corners(planes, Vec3.ZERO);
  }

  /** Thick at the left end, where it lies flat; the underside rises towards the right. */
  private static List<Vec3> shelf(Vec3 size, int more, Random random) {
    ToDoubleFunction<Vec3> body = skewed(size, 2.8 + 0.6 * random.nextDouble(), 0.25, random);
    List<Vec3> directions = notSteep(StoneCutter.directions(52 + more, 0.16, random), true, true);
    List<Plane> planes = broken(body, directions, 0.08, 0.025, random);
    breaks(planes, body, 3, 0.18, 0.3, random);
    double under = -(0.40 + 0.03 * random.nextDouble()) * size.z();
    planes.add(level(1, 0.40 * size.z()));
    planes.add(level(-1, under));
    for (int i = 0; i < 2; i++) {
      // From the keel at mid length (then further out) the underside climbs by a quarter of the thickness to the tip.
      double keel = (-0.04 + 0.22 * i) * size.x();
      double rise = (0.26 + 0.14 * i) * size.z() / (0.5 * size.x() - Math.min(keel, 0.3 * size.x()));
      Vec3 n = new Vec3(rise, 0.25 * rise * 2 * centred(random), -1).unit();
      planes.add(new Plane(n, n.dot(new Vec3(keel, 0, under))));
    }
    return StoneCutter.corners(planes, Vec3.ZERO);
  }

  /** A ball or a point that a lobe is spanned between. */
  private record Knob(Vec3 at, double radius) {}

  /** The hull of balls: a limb. Reaches are measured from {@code middle}. */
  private static ToDoubleFunction<Vec3> limb(List<Knob> knobs, Vec3 middle) {
    return n -> {
      double best = Double.NEGATIVE_INFINITY;
      for (Knob k : knobs) best = Math.max(best, n.dot(k.at.minus(middle)) + k.radius);
      return best;
    };
  }

  private static Vec3 middle(List<Knob> knobs) {
    Vec3 sum = Vec3.ZERO;
    for (Knob k : knobs) sum = sum.plus(k.at);
    return sum.times(1.0 / knobs.size());
  }

  /** A limb broken into faces; level at {@code floor} underneath when {@code footed}. */
  private static List<Vec3> brokenLimb(List<Knob> knobs, int faces, double rough, boolean footed, double floor, Random random) {
    Vec3 middle = middle(knobs);
    ToDoubleFunction<Vec3> body = limb(knobs, middle);
    List<Vec3> directions = notSteep(StoneCutter.directions(faces, 0.14, random), false, footed);
    List<Plane> planes = new ArrayList<>();
    for (Plane p : broken(body, directions, rough, rough / 2.5, random)) {
      planes.add(new Plane(p.normal(), p.offset() + p.normal().dot(middle)));
    }
    if (footed) planes.add(level(-1, floor));
    return StoneCutter.corners(planes, middle);
  }

  private static List<Vec3> spike(Vec3 size, int more, Random random) {
    double lean = 0.16 * centred(random);
    double waist = 0.52 + 0.16 * random.nextDouble();
    List<Knob> knobs = new ArrayList<>();
    double r = 0.12 * Math.min(size.x(), Math.min(size.y(), size.z()));
    int sides = 6;
    for (int i = 0; i < sides; i++) {
      double a = 2 * Math.PI * (i + 0.6 * centred(random)) / sides;
      double c = StrictMath.cos(a);
      double s = StrictMath.sin(a);
      knobs.add(new Knob(new Vec3((lean + 0.40 * c) * size.x(), 0.40 * s * size.y(), waist * size.z()), r));
      double shoulder = 0.84 + 0.05 * centred(random);
      knobs.add(new Knob(new Vec3((lean + 0.20 * c) * size.x(), 0.22 * s * size.y(), shoulder * size.z()), r));
      knobs.add(new Knob(new Vec3(0.09 * c * size.x(), 0.09 * s * size.y(), 0.02 * size.z()), 0.5 * r));
    }
    return brokenLimb(knobs, 52 + more, 0.04, true, 0, random);
  }

  private static List<List<Vec3>> branch(Vec3 size, int more, Random random) {
    double across = Math.min(size.x(), size.y());
    double thick = Math.min(across, 1.3 * size.z());
    double knot = (0.36 + 0.08 * random.nextDouble()) * size.z();
    double stem = 0.23 * thick;
    List<List<Vec3>> lobes = new ArrayList<>();
    List<Knob> trunk = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      double a = 2 * Math.PI * (i + 0.5 * centred(random)) / 5;
      trunk.add(new Knob(new Vec3(
          0.17 * size.x() * StrictMath.cos(a), 0.17 * size.y() * StrictMath.sin(a), 0.03 * size.z()), 0.07 * thick));
    }
    Vec3 fork = new Vec3(0.08 * centred(random) * size.x(), 0.08 * centred(random) * size.y(), knot);
    trunk.add(new Knob(fork, stem));
    lobes.add(brokenLimb(trunk, 46 + more, 0.05, true, 0, random));
    int arms = 3 + random.nextInt(3);
    double turn = random.nextDouble();
    for (int i = 0; i < arms; i++) {
      double a = 2 * Math.PI * (i + turn + 0.35 * centred(random)) / arms;
      double tip = (0.09 + 0.03 * random.nextDouble()) * thick;
      double out = 0.36 + 0.06 * random.nextDouble();
      double up = i == 0 ? 0.90 : 0.62 + 0.28 * random.nextDouble();
      Vec3 from = fork.plus(new Vec3(0, 0, 0.06 * centred(random) * size.z()));
      Vec3 to = new Vec3(out * size.x() * StrictMath.cos(a), out * size.y() * StrictMath.sin(a), up * size.z());
      Vec3 elbow = from.times(0.5).plusTimes(0.5, to).plus(new Vec3(0, 0, -0.03 * size.z()));
      List<Knob> arm = List.of(new Knob(from, 0.17 * thick), new Knob(elbow, 0.155 * thick), new Knob(to, tip));
      lobes.add(brokenLimb(arm, 44 + more, 0.05, false, 0, random));
    }
    return lobes;
  }

  private static List<List<Vec3>> arch(Vec3 size, int more, Random random) {
    List<List<Vec3>> lobes = new ArrayList<>();
    double r = 0.09 * Math.min(size.y(), Math.min(size.z(), 0.5 * size.x()));
    for (int side = -1; side <= 1; side += 2) {
      List<Knob> leg = new ArrayList<>();
      double foot = side * (0.36 + 0.02 * random.nextDouble());
      double head = side * (0.27 + 0.03 * random.nextDouble());
      double deep = 0.30 + 0.07 * random.nextDouble();
      for (int i = 0; i < 4; i++) {
        double x = (i & 1) == 0 ? -1 : 1;
        double y = (i & 2) == 0 ? -1 : 1;
        leg.add(new Knob(new Vec3((foot + 0.075 * x) * size.x(), deep * y * size.y(), 0.02 * size.z()), r));
        leg.add(new Knob(new Vec3((head + 0.08 * x) * size.x(), 0.85 * deep * y * size.y(), 0.74 * size.z()), r));
      }
      lobes.add(brokenLimb(leg, 46 + more, 0.05, true, 0, random));
    }
    double crown = 0.06 * centred(random);
    double rise = 0.04 + 0.05 * random.nextDouble();
    for (int side = -1; side <= 1; side += 2) {
      List<Knob> half = new ArrayList<>();
      for (int i = 0; i < 2; i++) {
        double y = i == 0 ? -1 : 1;
        half.add(new Knob(new Vec3(side * 0.36 * size.x(), 0.27 * y * size.y(), 0.63 * size.z()), r));
        half.add(new Knob(new Vec3(side * 0.30 * size.x(), 0.24 * y * size.y(), (0.86 - rise) * size.z()), r));
        half.add(new Knob(new Vec3((crown - side * 0.09) * size.x(), 0.28 * y * size.y(), 0.72 * size.z()), r));
        half.add(new Knob(new Vec3((crown - side * 0.05) * size.x(), 0.23 * y * size.y(), 0.90 * size.z()), r));
      }
      lobes.add(brokenLimb(half, 46 + more, 0.05, false, 0, random));
    }
    return lobes;
  }
}
