package holdfast.engine.verification;

import holdfast.engine.contact.Contact;
import holdfast.engine.motion.ContactEngine;
import holdfast.engine.motion.ContactEngine.Contacts;
import holdfast.engine.motion.ContactEngine.Foot;
import holdfast.engine.statics.LoadCase;
import holdfast.engine.statics.PartJudge;
import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.model.geom.Hull;
import holdfast.model.geom.MassProperties;
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
    /** Forces straight up at the contacts balance a level heap: proof that it stays, see {@link ParallelForces}. */
    PARALLEL_FORCES("level, and balanced by forces straight up at the contacts (linear program): proof that it stays"),
    /** Given every corner of every contact, the same engine lets it stay; by itself it leaves some of them out. */
    ALL_CORNERS("stays in the same engine once it is given every corner of every contact: by itself it leaves corners out"),
    /** The same at a finer step. */
    FINER_STEP("stays in the same engine given every corner, at a finer step or with more rounds"),
    /** Plain springs, dampers and friction at the corners keep it, see {@link SpringJudge}; the engine goes on from no forces at all. */
    SPRINGS("stays on springs with friction at its corners, a second judge in plain arithmetic with no part of the statics"),
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

  /** Seconds played: what is going to fall has moved by centimetres then. */
  private static final double PLAYED_S = 1.5;

  /** Metres: the engine creeps by tenths of a millimetre under friction; what moves more than this falls. */
  private static final double MOVED_M = 3e-3;

  /** Of the distance to a contact's middle: corners given to the engine lie this far in, so that rounding loses none over the rim. */
  private static final double CORNERS_IN = 1e-3;

  /** Steps a second and rounds of the solver, finer in the one or the other than what is asked first. */
  private static final int[][] FINER = {{2000, 16}, {240, 255}, {1000, 64}, {4000, 64}};

  /** Metres: how far the heap's weight on one corner presses its spring in; stones of 100 mm sink in less. */
  private static final double[] SINKS_M = {1e-5, 2e-6};

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

  /** The farthest that a stone's centre goes, metres, as the engine comes: contacts thinned out to four points or so. */
  static double movedM(RandomHeap made, double stepHz, int rounds) {
    return play(made, Contacts.THINNED, stepHz, rounds);
  }

  /** The same with every corner of every contact as a contact point. */
  static double movedOnCornersM(RandomHeap made, double stepHz, int rounds) {
    return play(made, Contacts.GIVEN, stepHz, rounds);
  }

  private static double play(RandomHeap made, Contacts contacts, double stepHz, int rounds) {
    List<Foot> corners = contacts == Contacts.GIVEN ? corners(made) : List.of();
    try (ContactEngine e = new ContactEngine(made.bodies(), made.floor(), made.friction(), contacts, corners, stepHz, rounds)) {
      return e.farthestM(PLAYED_S, MOVED_M);
    }
  }

  /**
   * Corners of the contacts. Of laid heaps they are cut from the stones' corners, of settled ones they come from the contact
   * finder, whose polygons have at most eight.
   */
  static List<Foot> corners(RandomHeap made) {
    return corners(made, CORNERS_IN);
  }

  /** Cosine of two normals that are of one face: a thousandth of a degree. */
  private static final double SAME_NORMAL = Math.cos(Math.toRadians(1e-3));

  /** The same, drawn in toward the middle of each contact by this share. */
  static List<Foot> corners(RandomHeap made, double in) {
    if (!made.settled()) return new ParallelForces(made).corners(in);
    List<Foot> out = new ArrayList<>();
    for (Contact c : made.contacts()) {
      boolean ground = c.b() == made.rocks().size();
      Vec3 middle = Vec3.ZERO;
      for (Vec3 p : c.polygon()) middle = middle.plusTimes(1.0 / c.polygon().size(), p);
      // The point belongs to the one stone and lies in the other's face: a ball on an edge or a corner would roll off it.
      boolean faceOfB = ground || faces(made.rocks().get(c.b()).get(c.lobeB()), c.normal())
          || !faces(made.rocks().get(c.a()).get(c.lobeA()), c.normal().negated()) && c.normal().z() > 0;
      for (Vec3 p : c.polygon()) {
        Vec3 at = p.plusTimes(in, middle.minus(p));
        out.add(faceOfB ? new Foot(c.a(), c.b(), at, c.normal()) : new Foot(c.b(), c.a(), at, c.normal().negated()));
      }
    }
    return out;
  }

  private static boolean faces(Hull lobe, Vec3 normal) {
    return lobe.faces().stream().anyMatch(f -> f.normal().dot(normal) > SAME_NORMAL);
  }

  /** The points at which the engine, as it comes, makes contact in its first step. */
  static List<ContactEngine.Touch> firstTouches(RandomHeap made) {
    try (ContactEngine e =
        new ContactEngine(made.bodies(), made.floor(), made.friction(), Contacts.THINNED, List.of(), 240, 16)) {
      e.step();
      return e.touches();
    }
  }

  static Says engine(RandomHeap made) {
    return says(movedM(made, 240, 16));
  }

  static Says onCorners(RandomHeap made) {
    return says(movedOnCornersM(made, 1000, 16));
  }

  private static Says says(double movedM) {
    return movedM < MOVED_M ? Says.STAYS : Says.FALLS;
  }

  /** Looks into a heap that stays in ours and falls in the engine, as it comes or given every corner. */
  static Reason explain(RandomHeap made, Says onCorners) {
    if (standsInClosedForm(made)) return Reason.CLOSED_FORM;
    if (!made.settled()) {
      ParallelForces upright = new ParallelForces(made);
      if (upright.level() && upright.balanced()) return Reason.PARALLEL_FORCES;
    }
    if (onCorners == Says.STAYS) return Reason.ALL_CORNERS;
    for (int[] finer : FINER) {
      if (says(movedOnCornersM(made, finer[0], finer[1])) == Says.STAYS) return Reason.FINER_STEP;
    }
    for (double sink : SINKS_M) {
      if (new SpringJudge(made.bodies(), corners(made), made.friction(), sink).stays()) return Reason.SPRINGS;
    }
    return Reason.UNEXPLAINED;
  }

  /**
   * Where every stone bears on one patch, what lies above a patch must have its centre over it along the vertical, and the
   * patch must be less steep than the friction: derived, exact, and no part of the statics.
   */
  static boolean standsInClosedForm(RandomHeap made) {
    int n = made.rocks().size();
    Contact[] beneath = new Contact[n];
    int[] on = new int[n];
    for (Contact c : made.contacts()) {
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
        MassProperties m = RandomHeap.mass(made.rocks().get(k));
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
