package holdfast.engine.verification;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.engine.motion.MotionBody;
import holdfast.engine.motion.MotionWorld;
import holdfast.engine.motion.MotionWorlds;
import holdfast.engine.motion.WorldOptions;
import holdfast.engine.statics.Balance;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Rest;
import holdfast.engine.statics.State;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The same heap to the statics and to the 3D engine, which knows nothing of the statics: it plays the heap from rest. */
final class EngineJudge {
  /** What one of the two says. */
  enum Says {
    STAYS, FALLS, UNDECIDED
  }

  /** Why the engine lets a heap fall that stays in ours. */
  enum Reason {
    /** Every stone bears on one patch alone, and by moments about that patch the heap stands (exact). */
    CLOSED_FORM("stands in closed form: one patch beneath each stone, the weight above it inside"),
    /** At a thousand steps a second and 64 or 255 rounds the engine lets it stay too. */
    FINER_STEP("stays in the engine too at a finer step"),
    /** Forces straight up at the contacts balance a level heap: proof that it stays, see {@link ParallelForces}. */
    PARALLEL_FORCES("level, and balanced by forces straight up at the contacts (linear program): proof that it stays"),
    /** The stones made unlike in size by up to 1e-5, it stays in the engine in at least one of five tries. */
    UNLIKE_SIZE(
        "stays in the engine in at least one of five tries with sizes unlike by up to 1e-5: there noise decides"),
    /** Forces within the friction balance it. Proves that a balance exists, not that the heap stays. */
    TILTED_BALANCE("not proven to stay: balanced by forces within the friction (linear program), so a balance exists"),
    /** Ours bears it by less than {@link #HAIR_DEGREES}; no balance was found apart from the statics: open. */
    BY_A_HAIR("open: stays in ours by less than 0.05 degrees of tilt, and no balance was found apart from the statics"),
    /** Nothing explains it: ours is in doubt. */
    UNEXPLAINED("unexplained");

    private final String words;

    Reason(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /** Degrees of tilt: 0.05 of them are 0.1 mm at a height of 0.1 m. */
  private static final double HAIR_DEGREES = 0.05;

  /** Seconds played: what is going to fall has moved by centimetres then. */
  private static final double PLAYED_S = 1.5;

  /** Metres: the engine creeps by tenths of a millimetre under friction; what moves more than this falls. */
  private static final double MOVED_M = 3e-3;

  /** The most by which sizes are made unlike, relative: faces set exactly flush make the engine rock a stone by millimetres. */
  private static final double UNLIKE = 1e-5;

  private EngineJudge() {}

  static Says ours(RandomHeap made) {
    PartJudge j = judge(made);
    if (j.safe()) return Says.STAYS;
    if (j.balance() instanceof Balance.Falls || j.rest() instanceof Rest.Moves) return Says.FALLS;
    return Says.UNDECIDED;
  }

  private static PartJudge judge(RandomHeap made) {
    Heap h = made.heap();
    List<Integer> all = new ArrayList<>();
    for (int i = 0; i < h.bodies().size(); i++) all.add(i);
    return new PartJudge(h.part(all), RandomHeap.weights(h));
  }

  /** The tilt that the heap bears toward its weakest of 16 sides, degrees: the angle of the shake margin. */
  static double tiltMarginDegrees(RandomHeap made) {
    PartJudge j = judge(made);
    if (!j.safe()) return 0;
    List<LoadCase> cases = new ArrayList<>();
    for (int d = 0; d < 16; d++) {
      Vec3 along = Vec3.heading(22.5 * d);
      List<Wrench> live = j.dead().stream().map(w -> new Wrench(along.times(w.force().norm()), Vec3.ZERO)).toList();
      cases.add(new LoadCase(State.DRY, j, live));
    }
    return Math.toDegrees(Math.atan(LoadCase.least(cases, 1, 0.02).factor()));
  }

  /** The farthest that a stone's centre moves, metres, played at {@code stepHz}. */
  static double movedM(RandomHeap made, double stepHz, int rounds) {
    return played(made, stepHz, rounds, 0, PLAYED_S, 10 * MOVED_M).farM();
  }

  /** How far the farthest stone's centre went, and how much farther it went or came back in the last second, metres. */
  record Played(double farM, double lastSecondM) {}

  /**
   * Plays a heap from rest.
   *
   * @param unlike 0 for the sizes as they are; else the seed of small unlike changes of size
   * @param enoughM the play ends when a stone has moved this far
   */
  static Played played(RandomHeap made, double stepHz, int rounds, long unlike, double seconds, double enoughM) {
    Random sizes = new Random(unlike);
    WorldOptions options = new WorldOptions(stepHz, rounds, WorldOptions.Friction.uniform(made.friction()));
    try (MotionWorld world = MotionWorlds.open(options).match(w -> w, why -> {
      throw new IllegalStateException(why);
    })) {
      world.addFixed(new Solid("floor", Solid.Surface.GLASS, true, List.of(made.floor())));
      List<MotionBody> bodies = new ArrayList<>();
      for (Hull h : made.rocks()) {
        MassProperties m = Polyhedra.massProperties(h);
        MotionBody b = new MotionBody("stone " + bodies.size(), Solid.Surface.ROCK, List.of(h), RandomHeap.DENSITY * m.volumeM3(),
            m.centre(), m.inertia().times(RandomHeap.DENSITY), Pose.IDENTITY);
        bodies.add(b);
        world.addBody(b, unlike == 0 ? 1 : 1 - UNLIKE * (0.1 + 0.9 * sizes.nextDouble()));
      }
      double far = 0;
      double last = 0;
      Vec3[] before = bodies.stream().map(MotionBody::centre).toArray(Vec3[]::new);
      for (double t = 0; t < seconds && far < enoughM; t += world.stepS()) {
        world.step();
        if (t < seconds - 1) last = 0;
        for (int i = 0; i < before.length; i++) {
          Vec3 c = bodies.get(i).centre();
          Vec3 now = world.pose(i).apply(c);
          far = Math.max(far, now.distanceTo(c));
          if (t < seconds - 1) before[i] = now;
          last = Math.max(last, now.distanceTo(before[i]));
        }
      }
      return new Played(far, last);
    }
  }

  static Says engine(RandomHeap made, double stepHz, int rounds) {
    return movedM(made, stepHz, rounds) < MOVED_M ? Says.STAYS : Says.FALLS;
  }

  /** Looks into a heap that stays in ours and falls in the engine. */
  static Reason explain(RandomHeap made) {
    if (standsInClosedForm(made)) return Reason.CLOSED_FORM;
    if (engine(made, 1000, 64) == Says.STAYS || engine(made, 1000, 255) == Says.STAYS) return Reason.FINER_STEP;
    ParallelForces upright = new ParallelForces(made);
    if (upright.level() && upright.balanced()) return Reason.PARALLEL_FORCES;
    for (int seed = 1; seed <= 5; seed++) {
      if (played(made, 240, 16, seed, PLAYED_S, MOVED_M).farM() < MOVED_M) return Reason.UNLIKE_SIZE;
      if (played(made, 1000, 64, seed, PLAYED_S, MOVED_M).farM() < MOVED_M) return Reason.UNLIKE_SIZE;
    }
    if (upright.balanced() || upright.balancedWithinFriction()) return Reason.TILTED_BALANCE;
    return tiltMarginDegrees(made) < HAIR_DEGREES ? Reason.BY_A_HAIR : Reason.UNEXPLAINED;
  }

  /**
   * Where every stone bears on one patch, what lies above a patch must have its centre over it along the vertical, and the
   * patch must be less steep than the friction: derived, exact, and no part of the statics.
   */
  static boolean standsInClosedForm(RandomHeap made) {
    List<Solid> solids = made.solids();
    int n = made.rocks().size();
    Contact[] beneath = new Contact[n];
    int[] on = new int[n];
    for (Contact c : ContactFinder.find(solids, ContactRules.DEFAULT.scaleFree()).contacts()) {
      int upper = c.b() == n || c.a() < c.b() && c.normal().z() > 0 ? c.a() : c.b();
      if (beneath[upper] != null || c.polygon().size() < 3) return false;
      beneath[upper] = c;
      on[upper] = upper == c.a() ? c.b() : c.a();
    }
    for (int i = 0; i < n; i++) {
      if (beneath[i] == null) return false;
      double mass = 0;
      Vec3 sum = Vec3.ZERO;
      for (int k = 0; k < n; k++) {
        int down = k;
        while (down != n && down != i) down = on[down];
        if (down != i) continue;
        MassProperties m = Polyhedra.massProperties(made.rocks().get(k));
        mass += m.volumeM3();
        sum = sum.plusTimes(m.volumeM3(), m.centre());
      }
      if (!carries(beneath[i], sum.times(1 / mass), made.friction())) return false;
    }
    return true;
  }

  private static boolean carries(Contact c, Vec3 centre, double friction) {
    Vec3 n = c.normal().z() > 0 ? c.normal() : c.normal().negated();
    if (Math.sqrt(1 - n.z() * n.z()) / n.z() > friction) return false;
    List<Vec3> p = c.polygon();
    double turn = 0;
    for (int i = 0; i < p.size(); i++) {
      Vec3 a = p.get(i).minus(centre);
      Vec3 b = p.get((i + 1) % p.size()).minus(centre);
      double cross = a.x() * b.y() - a.y() * b.x();
      if (turn * cross < 0) return false;
      if (cross != 0) turn = cross;
    }
    return true;
  }
}
