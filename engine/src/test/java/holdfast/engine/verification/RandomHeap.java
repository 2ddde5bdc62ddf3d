package holdfast.engine.verification;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.HeapAssembly;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;

/**
 * A heap of random stones on a floor that touch by construction: layers of stones with level tops and undersides, each
 * laid across what is beneath it, the whole tilted or not, so that some heaps stand, some slide and some go over.
 *
 * @param rocks stones in the world, in the order in which they were laid
 * @param floor what they stand on, fixed
 */
record RandomHeap(long seed, List<Hull> rocks, Hull floor, double friction, double insetM) {
  static final double DENSITY = 1800;
  private static final double G = 9.81;

  /** A heap of 2 to {@code most} stones; the same seed gives the same heap. */
  static RandomHeap of(long seed, int most) {
    Random r = new Random(seed);
    int count = 2 + r.nextInt(most - 1);
    List<Hull> rocks = new ArrayList<>();
    double z = 0;
    List<double[]> beneath = new ArrayList<>();
    while (rocks.size() < count) {
      double height = 0.04 + 0.08 * r.nextDouble();
      List<double[]> layer = new ArrayList<>();
      int wanted = Math.min(count - rocks.size(), 1 + r.nextInt(3));
      for (int tries = 0; layer.size() < wanted && tries < 60; tries++) {
        double radius = 0.04 + 0.08 * r.nextDouble();
        double x;
        double y;
        if (beneath.isEmpty()) {
          x = 0.3 * (r.nextDouble() - 0.5);
          y = 0.3 * (r.nextDouble() - 0.5);
        } else if (beneath.size() > 1 && r.nextDouble() < 0.7) {
          // Across two of the stones beneath.
          int first = r.nextInt(beneath.size());
          double[] p = beneath.get(first);
          double[] q = beneath.get((first + 1) % beneath.size());
          double share = 0.35 + 0.3 * r.nextDouble();
          radius += 0.6 * Math.hypot(q[0] - p[0], q[1] - p[1]);
          x = p[0] + share * (q[0] - p[0]);
          y = p[1] + share * (q[1] - p[1]);
        } else {
          double[] on = beneath.get(r.nextInt(beneath.size()));
          double off = 0.6 * on[2] * Math.sqrt(r.nextDouble());
          double toward = 2 * Math.PI * r.nextDouble();
          x = on[0] + off * Math.cos(toward);
          y = on[1] + off * Math.sin(toward);
        }
        double px = x;
        double py = y;
        double pr = radius;
        if (layer.stream().anyMatch(o -> Math.hypot(o[0] - px, o[1] - py) < o[2] + pr + 0.002)) continue;
        layer.add(new double[] {x, y, radius});
        rocks.add(stone(r, x, y, z, radius, height));
      }
      if (layer.isEmpty()) break;
      beneath = layer;
      z += height;
    }
    Hull floor = hull(List.of(
        new Vec3(-1, -1, -0.05), new Vec3(1, -1, -0.05), new Vec3(1, 1, -0.05), new Vec3(-1, 1, -0.05),
        new Vec3(-1, -1, 0), new Vec3(1, -1, 0), new Vec3(1, 1, 0), new Vec3(-1, 1, 0)));
    double friction = 0.25 + 0.5 * r.nextDouble();
    RandomHeap level = new RandomHeap(seed, rocks, floor, friction, 0);
    if (r.nextBoolean()) return level;
    double degrees = 22 * r.nextDouble();
    Quat tilt = Quat.about(Vec3.heading(360 * r.nextDouble()), Math.toRadians(degrees));
    return level.placed(tilt::rotate);
  }

  /** A stone with a level top and underside, wider in the middle, within a circle. */
  private static Hull stone(Random r, double x, double y, double z, double radius, double height) {
    List<Vec3> p = new ArrayList<>();
    double[] level = {0, 0.5, 1};
    double[] width = {0.55 + 0.3 * r.nextDouble(), 0.9, 0.5 + 0.35 * r.nextDouble()};
    for (int k = 0; k < 3; k++) {
      int n = 5 + r.nextInt(4);
      double turn = 2 * Math.PI * r.nextDouble();
      for (int i = 0; i < n; i++) {
        double a = turn + 2 * Math.PI * (i + 0.3 * r.nextDouble()) / n;
        double d = radius * width[k] * (0.9 + 0.1 * r.nextDouble());
        p.add(new Vec3(x + d * Math.cos(a), y + d * Math.sin(a), z + height * level[k]));
      }
    }
    return hull(p);
  }

  static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, why -> {
      throw new AssertionError(why);
    });
  }

  /** The same heap with every point moved by an isometry or a scaling. */
  RandomHeap placed(UnaryOperator<Vec3> move) {
    UnaryOperator<Hull> m = h -> hull(h.corners().stream().map(move).toList());
    return new RandomHeap(seed, rocks.stream().map(m).toList(), m.apply(floor), friction, insetM);
  }

  RandomHeap withFriction(double mu) {
    return new RandomHeap(seed, rocks, floor, mu, insetM);
  }

  RandomHeap withInset(double metres) {
    return new RandomHeap(seed, rocks, floor, friction, metres);
  }

  List<Solid> solids() {
    List<Solid> out = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) out.add(new Solid("stone " + i, Solid.Surface.ROCK, false, List.of(rocks.get(i))));
    out.add(new Solid("floor", Solid.Surface.GLASS, true, List.of(floor)));
    return out;
  }

  /** Bodies and bearings; tolerances of contacts relative to the stones alone, so that nothing depends on the scale. */
  Heap heap() {
    List<Solid> solids = solids();
    List<Heap.Body> bodies = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) {
      MassProperties m = Polyhedra.massProperties(rocks.get(i));
      bodies.add(new Heap.Body("stone " + i, m.centre(), solids.get(i).sizeM(), m.volumeM3() * DENSITY));
    }
    return new Heap(bodies, HeapAssembly.bearings(
        solids, ContactFinder.find(solids, ContactRules.DEFAULT.scaleFree()).contacts(), (a, b) -> friction, insetM));
  }

  static List<Wrench> weights(Heap heap) {
    return heap.bodies().stream().map(b -> new Wrench(new Vec3(0, 0, -b.massKg() * G), Vec3.ZERO)).toList();
  }

  /** A unit force on one stone through a point given by shares of its own corners, the same for every placing. */
  List<Wrench> push(Heap heap, int rock, Vec3 direction) {
    Vec3 highest = null;
    for (Vec3 p : rocks.get(rock).corners()) if (highest == null || p.z() > highest.z() + 1e-6) highest = p;
    Vec3 at = heap.bodies().get(rock).centre().times(0.3).plusTimes(0.7, highest);
    List<Wrench> out = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) {
      out.add(i == rock ? Wrench.of(direction, at, heap.bodies().get(i).centre()) : Wrench.ZERO);
    }
    return out;
  }
}
