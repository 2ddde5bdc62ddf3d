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
import holdfast.engine.statics.ForceBalance;
import holdfast.engine.statics.Heap;
import holdfast.engine.statics.Link;
import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.Rest;
import holdfast.engine.statics.State;
import holdfast.engine.statics.Wrench;
import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

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
    /** Leant back by no more than engines are known to tip early, it stays in the engine too. */
    TIPS_EARLY("stays in the engine too when leant back by 3.3 degrees: engines tip early"),
    /** The engine keeps few points of a patch; with four corners a patch it falls in ours too. */
    FEW_POINTS("falls in ours too when each patch keeps four of its corners: the engine keeps few points of a contact"),
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

  /** Degrees; how early four engines tipped a tower of six. */
  private static final double EARLY_DEGREES = 3.3;

  /** Seconds played: what is going to fall has moved by centimetres then. */
  private static final double PLAYED_S = 1.5;

  /** Metres: the engine creeps by tenths of a millimetre under friction; what moves more than this falls. */
  private static final double MOVED_M = 3e-3;

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
        world.addBody(b);
      }
      double far = 0;
      for (double t = 0; t < PLAYED_S && far < 10 * MOVED_M; t += world.stepS()) {
        world.step();
        for (int i = 0; i < bodies.size(); i++) {
          Vec3 c = bodies.get(i).centre();
          far = Math.max(far, world.pose(i).apply(c).distanceTo(c));
        }
      }
      return far;
    }
  }

  static Says engine(RandomHeap made, double stepHz, int rounds) {
    return movedM(made, stepHz, rounds) < MOVED_M ? Says.STAYS : Says.FALLS;
  }

  /** Looks into a heap that stays in ours and falls in the engine. */
  static Reason explain(RandomHeap made) {
    if (standsInClosedForm(made)) return Reason.CLOSED_FORM;
    if (engine(made, 1000, 64) == Says.STAYS || engine(made, 1000, 255) == Says.STAYS) return Reason.FINER_STEP;
    for (int d = 0; d < 8; d++) {
      Quat lean = Quat.about(Vec3.heading(45.0 * d), Math.toRadians(EARLY_DEGREES));
      RandomHeap leant = made.placed(lean::rotate);
      if (ours(leant) == Says.STAYS && engine(leant, 240, 16) == Says.STAYS) return Reason.TIPS_EARLY;
    }
    return fallsOnFourCorners(made) ? Reason.FEW_POINTS : Reason.UNEXPLAINED;
  }

  private static boolean fallsOnFourCorners(RandomHeap made) {
    Heap h = made.heap();
    for (int start = 0; start < 4; start++) {
      List<Link> links = new ArrayList<>();
      for (Link l : h.links()) {
        Link.Bearing b = (Link.Bearing) l;
        links.add(new Link.Bearing(b.a(), b.b(), b.normal(), fourCorners(b.polygon(), start), b.friction()));
      }
      Heap cut = new Heap(h.bodies(), links);
      if (!(new ForceBalance(cut, 1).stands(RandomHeap.weights(cut)) instanceof Balance.Stands)) return true;
    }
    return false;
  }

  /** One corner, the farthest from it, and the farthest to either side of the line between them: how manifolds are thinned. */
  private static List<Vec3> fourCorners(List<Vec3> polygon, int start) {
    if (polygon.size() <= 4) return polygon;
    int first = start % polygon.size();
    int far = first;
    for (int i = 0; i < polygon.size(); i++) {
      if (polygon.get(i).distanceTo(polygon.get(first)) > polygon.get(far).distanceTo(polygon.get(first))) far = i;
    }
    Vec3 along = polygon.get(far).minus(polygon.get(first)).unit();
    int[] side = {-1, -1};
    double[] most = {0, 0};
    for (int i = 0; i < polygon.size(); i++) {
      double d = polygon.get(i).minus(polygon.get(first)).cross(along).norm();
      int s = (i - first + polygon.size()) % polygon.size() < (far - first + polygon.size()) % polygon.size() ? 0 : 1;
      if (d > most[s]) {
        most[s] = d;
        side[s] = i;
      }
    }
    List<Vec3> out = new ArrayList<>();
    for (int i : new int[] {first, side[0], far, side[1]}) if (i >= 0) out.add(polygon.get(i));
    return out;
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
