package holdfast.engine.verification;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.engine.motion.MotionBody;
import holdfast.engine.motion.Settle;
import holdfast.engine.motion.SettleJob;
import holdfast.engine.motion.WorldOptions;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.HeapAssembly;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Unions;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Rock.Look;
import holdfast.model.scene.Settings;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.RockShapes;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * A heap of random stones on a floor, level or tilted, so that some heaps stand, some slide and some go over. It is one of
 * two families: laid ({@link #of}), where stones with level tops and undersides touch by construction, each laid across
 * what is beneath it; or settled ({@link #settled}), where stones of every look were let down until they lay on the edges,
 * corners and faces that they found.
 *
 * @param settled of which family it is
 * @param rocks lobes of the stones in the world, stone by stone in the order in which they were laid
 * @param floor what they stand on, fixed
 */
record RandomHeap(long seed, boolean settled, List<List<Hull>> rocks, Hull floor, double friction, double insetM) {
  static final double DENSITY = 1800;
  private static final double G = 9.81;
  private static final double MOST_TILT_DEGREES = 22;
  private static final double MOST_SETTLED_TILT_DEGREES = 15;

  /** A heap of 2 to {@code most} stones; the same seed gives the same heap. */
  static RandomHeap of(long seed, int most) {
    Random r = new Random(seed);
    int count = 2 + r.nextInt(most - 1);
    List<List<Hull>> rocks = new ArrayList<>();
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
        rocks.add(List.of(stone(r, x, y, z, radius, height)));
      }
      if (layer.isEmpty()) break;
      beneath = layer;
      z += height;
    }
    double friction = 0.25 + 0.5 * r.nextDouble();
    return tilted(new RandomHeap(seed, false, rocks, ground(), friction, 0), r, MOST_TILT_DEGREES);
  }

  /** The heap as it is or tilted about a random line, as often the one as the other. */
  private static RandomHeap tilted(RandomHeap level, Random r, double mostDegrees) {
    if (r.nextBoolean()) return level;
    double degrees = mostDegrees * r.nextDouble();
    Quat tilt = Quat.about(Vec3.heading(360 * r.nextDouble()), Math.toRadians(degrees));
    return level.placed(tilt::rotate);
  }

  private static Hull ground() {
    return hull(List.of(
        new Vec3(-1, -1, -0.05), new Vec3(1, -1, -0.05), new Vec3(1, 1, -0.05), new Vec3(-1, 1, -0.05),
        new Vec3(-1, -1, 0), new Vec3(1, -1, 0), new Vec3(1, 1, 0), new Vec3(-1, 1, 0)));
  }

  /**
   * A heap of 2 to {@code most} stones of every look, let down in the 3D engine and polished until they touch. What did not
   * come to rest in time is there too, as it then was.
   */
  static RandomHeap settled(long seed, int most) {
    Random r = new Random(seed);
    int count = 2 + r.nextInt(most - 1);
    List<MotionBody> bodies = new ArrayList<>();
    double top = 0.02;
    for (int i = 0; i < count; i++) {
      Look look = Look.values()[r.nextInt(Look.values().length)];
      List<Hull> lobes = lobes(look, r);
      Quat turn = Quat.about(Vec3.Z, 2 * Math.PI * r.nextDouble());
      // One in three is dropped any way up.
      if (r.nextInt(3) == 0) {
        turn = new Quat(r.nextGaussian(), r.nextGaussian(), r.nextGaussian(), r.nextGaussian()).unit();
      }
      double spread = 0.12 * Math.sqrt(r.nextDouble());
      Vec3 over = Vec3.heading(360 * r.nextDouble()).times(spread);
      MassProperties m = mass(lobes);
      MotionBody b = new MotionBody("stone " + i, Solid.Surface.ROCK, lobes, DENSITY * m.volumeM3(), m.centre(),
          m.inertia().times(DENSITY), new Pose(over, turn));
      double low = b.heights().lowM();
      b = b.at(new Pose(new Vec3(over.x(), over.y(), top - low + 0.005), turn));
      top = b.heights().highM();
      bodies.add(b);
    }
    double friction = 0.3 + 0.4 * r.nextDouble();
    SettleJob job = new SettleJob(bodies, Set.of(), List.of(new Solid("floor", Solid.Surface.GLASS, true, List.of(ground()))),
        List.of(), 0, WorldOptions.Friction.uniform(friction + 0.05));
    List<List<Hull>> rocks = Settle.settle(job).match(s -> {
      List<List<Hull>> out = new ArrayList<>();
      for (int i = 0; i < bodies.size(); i++) {
        Pose at = s.moves().get(i).pose();
        out.add(bodies.get(i).lobes().stream().map(h -> hull(h.corners().stream().map(at::apply).toList())).toList());
      }
      return out;
    }, none -> {
      throw new IllegalStateException(none.reason());
    });
    return tilted(new RandomHeap(seed, true, rocks, ground(), friction, 0), r, MOST_SETTLED_TILT_DEGREES);
  }

  private static List<Hull> lobes(Look look, Random r) {
    double length = 80 + 140 * r.nextDouble();
    double width = length * (0.5 + 0.4 * r.nextDouble());
    double flat = look == Look.SLAB || look == Look.SHELF ? 0.25 : 0.5;
    Rock.Form form = new Rock.Measured(look, length, width, length * (flat + 0.3 * r.nextDouble()), r.nextInt(1 << 20));
    Rock rock = new Rock("stone", Rock.Kind.DRY, form, new Rock.BulkDensity(DENSITY / 1000), 0, false, false, OptionalDouble.empty());
    return RockShapes.body(rock, Settings.DEFAULT, MeshLoader.NONE).match(b -> b.lobes(), why -> {
      throw new AssertionError(why);
    });
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

  /** Of all lobes of a stone together, each part of space once. */
  static MassProperties mass(List<Hull> lobes) {
    return Unions.massProperties(lobes).orElseThrow();
  }

  static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, why -> {
      throw new AssertionError(why);
    });
  }

  /** The same heap with every point moved by an isometry or a scaling. */
  RandomHeap placed(UnaryOperator<Vec3> move) {
    UnaryOperator<Hull> m = h -> hull(h.corners().stream().map(move).toList());
    return new RandomHeap(seed, settled, rocks.stream().map(lobes -> lobes.stream().map(m).toList()).toList(), m.apply(floor), friction, insetM);
  }

  RandomHeap withFriction(double mu) {
    return new RandomHeap(seed, settled, rocks, floor, mu, insetM);
  }

  RandomHeap withInset(double metres) {
    return new RandomHeap(seed, settled, rocks, floor, friction, metres);
  }

  List<Solid> solids() {
    List<Solid> out = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) out.add(new Solid("stone " + i, Solid.Surface.ROCK, false, rocks.get(i)));
    out.add(new Solid("floor", Solid.Surface.GLASS, true, List.of(floor)));
    return out;
  }

  /** Bodies and bearings; tolerances of contacts relative to the stones alone, so that nothing depends on the scale. */
  Heap heap() {
    List<Solid> solids = solids();
    List<Heap.Body> bodies = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) {
      MassProperties m = mass(rocks.get(i));
      bodies.add(new Heap.Body("stone " + i, m.centre(), solids.get(i).sizeM(), m.volumeM3() * DENSITY));
    }
    return new Heap(bodies, HeapAssembly.bearings(
        solids, contacts(), (a, b) -> friction, insetM));
  }

  List<Contact> contacts() {
    return ContactFinder.find(solids(), ContactRules.DEFAULT.scaleFree()).contacts();
  }

  /** The stones where they are, for the engine. */
  List<MotionBody> bodies() {
    List<MotionBody> out = new ArrayList<>();
    for (List<Hull> lobes : rocks) {
      MassProperties m = mass(lobes);
      out.add(new MotionBody("stone " + out.size(), Solid.Surface.ROCK, lobes, DENSITY * m.volumeM3(), m.centre(),
          m.inertia().times(DENSITY), Pose.IDENTITY));
    }
    return out;
  }

  static List<Wrench> weights(Heap heap) {
    return heap.bodies().stream().map(b -> new Wrench(new Vec3(0, 0, -b.massKg() * G), Vec3.ZERO)).toList();
  }

  /** A unit force on one stone through a point given by shares of its own corners, the same for every placing. */
  List<Wrench> push(Heap heap, int rock, Vec3 direction) {
    Vec3 at = pushedAt(heap, rock);
    List<Wrench> out = new ArrayList<>();
    for (int i = 0; i < rocks.size(); i++) {
      out.add(i == rock ? Wrench.of(direction, at, heap.bodies().get(i).centre()) : Wrench.ZERO);
    }
    return out;
  }

  /** Where {@link #push} acts. */
  Vec3 pushedAt(Heap heap, int rock) {
    Vec3 highest = null;
    for (Hull h : rocks.get(rock)) {
      for (Vec3 p : h.corners()) if (highest == null || p.z() > highest.z() + 1e-6) highest = p;
    }
    return heap.bodies().get(rock).centre().times(0.3).plusTimes(0.7, highest);
  }
}
