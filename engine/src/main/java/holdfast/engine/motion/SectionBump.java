package holdfast.engine.motion;

import holdfast.engine.contact.Solid.Surface;
import holdfast.engine.statics.heap.Twist;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.dyn4j.dynamics.Body;
import org.dyn4j.dynamics.BodyFixture;
import org.dyn4j.dynamics.contact.Contact;
import org.dyn4j.dynamics.contact.ContactConstraint;
import org.dyn4j.geometry.Geometry;
import org.dyn4j.geometry.Mass;
import org.dyn4j.geometry.MassType;
import org.dyn4j.geometry.Vector2;
import org.dyn4j.world.ContactCollisionData;
import org.dyn4j.world.World;
import org.dyn4j.world.listener.ContactListenerAdapter;

/**
 * A bump in the vertical plane of the blow, in two dimensions and double precision: quick, and easy to look at.
 *
 * <p>Every rock counts per metre of depth: its own mass, weight and drag divided by the depth that a prism of its cut
 * would have ({@link SectionCut.Slice#depthM}); the blow is divided by that depth of the struck rock. Contacts, friction
 * and bounce (none) are those of the heap. For a heap that is a prism across the plane the section is exact; what speaks
 * against it is listed in {@link SectionResult.Played#doubts}. Bonds hold as they do in three dimensions and break at the same
 * strength ({@link SectionBonds}).
 *
 * <p>Set up for stones of centimetres: {@link #LINEAR_M} of overlap allowed (the library's 5 mm would sink a stack by
 * centimetres), {@link PlayJob#stepHz} steps a second.
 */
public final class SectionBump {
  /** Metres of overlap that the solver leaves. */
  private static final double LINEAR_M = 5e-5;

  private static final int VELOCITY_ROUNDS = 40;
  private static final int POSITION_ROUNDS = 20;
  private static final double BEFORE_S = 0.3;
  private static final double STILL_S = 0.25;
  private static final double STILL_M = 1e-4;

  /** A rock counts as a prism when it fills at least this share of its extent across the plane. */
  private static final double PRISM_SHARE = 0.8;

  /** Its centre of mass may lie this share of its extent out of the plane. */
  private static final double OFF_SHARE = 0.1;

  /** Metres: rocks nearer than this count as touching. */
  private static final double TOUCH_M = 1e-3;

  /** Metres that a rock may move before the blow. */
  private static final double SETTLED_M = 2e-3;

  private final PlayJob job;
  private final Disturbance.Blow blow;
  private final Vec3 toward;
  private final SectionCut cut;
  private final World<Body> world = new World<>();
  private final List<Body> bodies = new ArrayList<>();
  private final List<SectionResult.Frame> frames = new ArrayList<>();
  private final SectionBonds bonds;

  private SectionBump(PlayJob job, Disturbance.Blow blow, Vec3 toward, SectionCut cut) {
    this.job = job;
    this.blow = blow;
    this.toward = toward;
    this.cut = cut;
    this.bonds = new SectionBonds(world, cut, 1 / job.stepHz());
  }

  /** What a body of the plane is: a rock's slice, or something fixed. */
  private record Tag(SectionCut.Slice slice, Surface surface) {}

  /** Plays a horizontal blow in its own plane. */
  public static SectionResult play(PlayJob job, Disturbance.Blow blow) {
    int target = job.number(blow.rock());
    if (target < 0) return new SectionResult.NotPlayed("there is no placed rock '" + blow.rock() + "'");
    Vec3 flat = new Vec3(blow.impulseNs().x(), blow.impulseNs().y(), 0);
    if (!(flat.norm() > 0)) return new SectionResult.NotPlayed("a section needs a blow with a direction on the level");
    SectionCut cut = SectionCut.of(job, blow.at(), flat.unit());
    if (cut.slice(target).isEmpty()) {
      return new SectionResult.NotPlayed("the plane of the blow does not cut '" + blow.rock() + "'");
    }
    return new SectionBump(job, blow, flat.unit(), cut).run();
  }

  private SectionResult run() {
    fill();
    double dt = 1 / job.stepHz();
    for (double t = 0; t < BEFORE_S; t += dt) step(dt);
    List<SectionResult.Move> start = moves();
    List<String> fallen = fallen(start);
    if (!fallen.isEmpty()) {
      return new SectionResult.NotPlayed("cut through " + job.bodies().get(job.number(blow.rock())).name() + " that way, "
          + String.join(", ", fallen) + (fallen.size() == 1 ? " falls" : " fall") + " before the blow: what carries "
          + (fallen.size() == 1 ? "it" : "them") + " lies outside the plane");
    }
    strike();
    frames.add(new SectionResult.Frame(0, start));
    double frameS = job.framesPerS() > 0 ? 1 / job.framesPerS() : Double.POSITIVE_INFINITY;
    double nextFrame = frameS;
    double window = 0;
    double[] strayed = new double[bodies.size()];
    List<SectionResult.Move> then = start;
    int still = 0;
    long steps = 0;
    double t = 0;
    while (t < job.mostS() && still < 2) {
      step(dt);
      t = ++steps * dt;
      bonds.breakOverloaded(t);
      List<SectionResult.Move> now = moves();
      for (int i = 0; i < strayed.length; i++) strayed[i] = Math.max(strayed[i], apart(i, start.get(i), now.get(i)));
      if (t >= nextFrame - 1e-9) {
        frames.add(new SectionResult.Frame(t, now));
        nextFrame += frameS;
      }
      window += dt;
      if (window < STILL_S) continue;
      window = 0;
      double far = 0;
      for (int i = 0; i < strayed.length; i++) far = Math.max(far, apart(i, then.get(i), now.get(i)));
      then = now;
      still = far < STILL_M ? still + 1 : 0;
    }
    List<SectionResult.Move> end = moves();
    frames.add(new SectionResult.Frame(t, end));
    return new SectionResult.Played(
        pieces(), frames, outcomes(start, end, strayed), bonds.broken(), t, still >= 2, doubts(start));
  }

  /** The rocks that fell in the plane before anything struck them: a picture of the blow would show another fall. */
  private List<String> fallen(List<SectionResult.Move> start) {
    List<SectionResult.Move> untouched = start.stream().map(m -> new SectionResult.Move(m.pivotAlong(), m.pivotUp(), 0, 0, 0)).toList();
    return outcomes(untouched, start, new double[bodies.size()]).stream()
        .filter(o -> o.fate() == PlayResult.Fate.FELL).map(SectionResult.Outcome::rock).toList();
  }

  private void fill() {
    world.setGravity(0, -Gravity.G);
    world.getSettings().setAtRestDetectionEnabled(false);
    world.getSettings().setLinearTolerance(LINEAR_M);
    world.getSettings().setMaximumLinearCorrection(0.005);
    world.getSettings().setMaximumWarmStartDistance(0.001);
    world.getSettings().setVelocityConstraintSolverIterations(VELOCITY_ROUNDS);
    world.getSettings().setPositionConstraintSolverIterations(POSITION_ROUNDS);
    world.getSettings().setStepFrequency(1 / job.stepHz());
    world.addContactListener(new ContactListenerAdapter<>() {
      @Override
      public void preSolve(ContactCollisionData<Body> collision, Contact contact) {
        ContactConstraint<Body> c = collision.getContactConstraint();
        Surface one = ((Tag) c.getBody1().getUserData()).surface;
        Surface two = ((Tag) c.getBody2().getUserData()).surface;
        c.setFriction(job.friction().between(one, two));
      }
    });
    for (SectionCut.FixedSlice f : cut.fixed()) {
      Body b = body(f.polygons(), new Tag(null, f.surface()));
      b.setMass(MassType.INFINITE);
      world.addBody(b);
    }
    for (SectionCut.Slice s : cut.rocks()) {
      PlayBody rock = job.bodies().get(s.body());
      Body b = body(s.polygons(), new Tag(s, rock.body().surface()));
      double mass = rock.body().massKg() / s.depthM();
      b.setMass(new Mass(new Vector2(s.centre().along(), s.centre().up()), mass, mass * s.polarM4() / s.areaM2()));
      bodies.add(b);
      world.addBody(b);
    }
    int[] steps = job.bonds().isEmpty() ? new int[0] : steps();
    for (MotionBond bond : job.bonds()) {
      Body a = ofRock(bond.a());
      Body b = ofRock(bond.b());
      if (a != null && b != null) bonds.add(bond, a, slice(a), b, slice(b), steps);
    }
  }

  private static Body body(List<List<SectionCut.Point>> polygons, Tag tag) {
    Body b = new Body();
    for (List<SectionCut.Point> p : polygons) {
      Vector2[] corners = p.stream().map(q -> new Vector2(q.along(), q.up())).toArray(Vector2[]::new);
      BodyFixture f = b.addFixture(Geometry.createPolygon(corners));
      f.setRestitution(0);
    }
    b.setUserData(tag);
    return b;
  }

  private Body ofRock(String name) {
    for (Body b : bodies) {
      if (job.bodies().get(slice(b).body()).name().equals(name)) return b;
    }
    return null;
  }

  private static SectionCut.Slice slice(Body b) {
    return ((Tag) b.getUserData()).slice;
  }

  private void step(double dt) {
    for (Body b : bodies) {
      SectionCut.Slice s = slice(b);
      PlayBody rock = job.bodies().get(s.body());
      double weight = rock.weightAboveN();
      double dragAlong = 0;
      double dragUp = 0;
      if (job.water().isPresent()) {
        WaterModel water = job.water().get();
        boolean under = b.getWorldCenter().y < water.levelM();
        if (under) {
          weight = rock.weightUnderN();
          Vector2 v = b.getLinearVelocity();
          Vec3 drag = water.drag(rock, new Twist(new Vec3(v.x, 0, v.y), Vec3.ZERO), 1).force();
          dragAlong = drag.x();
          dragUp = drag.z();
        }
      }
      double lift = rock.body().massKg() * Gravity.G - weight;
      b.applyForce(new Vector2(dragAlong / s.depthM(), (lift + dragUp) / s.depthM()));
    }
    world.step(1, dt);
  }

  private void strike() {
    for (Body b : bodies) {
      SectionCut.Slice s = slice(b);
      if (s.body() != job.number(blow.rock())) continue;
      Vec3 at = blow.at().minus(cut.foot());
      Vector2 j = new Vector2(blow.impulseNs().dot(toward) / s.depthM(), blow.impulseNs().z() / s.depthM());
      b.applyImpulse(j, new Vector2(at.dot(toward), at.z()));
    }
  }

  /** Bodies start untransformed, so a body's transform is its move. */
  private List<SectionResult.Move> moves() {
    List<SectionResult.Move> moves = new ArrayList<>();
    for (Body b : bodies) {
      SectionCut.Point c = slice(b).centre();
      Vector2 now = b.getWorldCenter();
      double turn = b.getTransform().getRotationAngle();
      moves.add(new SectionResult.Move(c.along(), c.up(), now.x - c.along(), now.y - c.up(), turn));
    }
    return moves;
  }

  private double apart(int i, SectionResult.Move was, SectionResult.Move now) {
    double shift = Math.hypot(now.shiftAlong() - was.shiftAlong(), now.shiftUp() - was.shiftUp());
    double turn = Math.abs(turn(was, now));
    return shift + 2 * Math.sin(turn / 2) * bodies.get(i).getRotationDiscRadius();
  }

  /** The turn between two moves, from -pi to pi. */
  private static double turn(SectionResult.Move was, SectionResult.Move now) {
    return Math.IEEEremainder(now.turnRad() - was.turnRad(), 2 * Math.PI);
  }

  private List<SectionResult.Piece> pieces() {
    List<SectionResult.Piece> pieces = new ArrayList<>();
    for (SectionCut.FixedSlice f : cut.fixed()) pieces.add(new SectionResult.Piece(f.name(), false, plain(f.polygons())));
    for (SectionCut.Slice s : cut.rocks()) {
      pieces.add(new SectionResult.Piece(job.bodies().get(s.body()).name(), true, plain(s.polygons())));
    }
    return pieces;
  }

  private static List<List<double[]>> plain(List<List<SectionCut.Point>> polygons) {
    return polygons.stream().map(p -> p.stream().map(q -> new double[] {q.along(), q.up()}).toList()).toList();
  }

  private List<SectionResult.Outcome> outcomes(
      List<SectionResult.Move> start, List<SectionResult.Move> end, double[] strayed) {
    List<SectionResult.Outcome> outcomes = new ArrayList<>();
    for (int i = 0; i < bodies.size(); i++) {
      SectionCut.Slice s = slice(bodies.get(i));
      double turn = turn(start.get(i), end.get(i));
      double drop = start.get(i).shiftUp() - end.get(i).shiftUp();
      double shift = Math.hypot(end.get(i).shiftAlong() - start.get(i).shiftAlong(), drop);
      double low = s.polygons().stream().flatMap(List::stream).mapToDouble(SectionCut.Point::up).min().orElse(0);
      double high = s.polygons().stream().flatMap(List::stream).mapToDouble(SectionCut.Point::up).max().orElse(0);
      PlayResult.Fate fate;
      if (Math.abs(turn) > Bump.FELL_RAD || drop > Bump.FELL_SHARE * (high - low)) {
        fate = PlayResult.Fate.FELL;
      } else if (shift > Bump.SHIFTED_M || Math.abs(turn) > Bump.SHIFTED_RAD) {
        fate = PlayResult.Fate.SHIFTED;
      } else {
        fate = strayed[i] > Bump.STAYED_M ? PlayResult.Fate.ROCKED : PlayResult.Fate.STAYED;
      }
      outcomes.add(new SectionResult.Outcome(job.bodies().get(s.body()).name(), fate, shift, turn, drop));
    }
    return outcomes;
  }

  /** What speaks against the section, counting only the rocks that bear on each other with the struck one. */
  private List<String> doubts(List<SectionResult.Move> start) {
    List<MotionBody> all = job.bodies().stream().map(PlayBody::body).toList();
    List<Cluster.Facing> touching = touching(all);
    boolean[] heap = heap(all.size(), touching);
    List<String> noPrism = new ArrayList<>();
    List<String> off = new ArrayList<>();
    List<String> leaning = new ArrayList<>();
    List<String> outside = new ArrayList<>();
    for (int i = 0; i < bodies.size(); i++) {
      SectionCut.Slice s = slice(bodies.get(i));
      if (!heap[s.body()]) continue;
      String name = all.get(s.body()).name();
      if (s.depthM() < PRISM_SHARE * s.extentM()) noPrism.add(name);
      if (Math.abs(s.offM()) > OFF_SHARE * s.extentM()) off.add(name);
      SectionResult.Move m = start.get(i);
      double moved = Math.hypot(m.shiftAlong(), m.shiftUp()) + Math.abs(m.turnRad()) * bodies.get(i).getRotationDiscRadius();
      if (moved > SETTLED_M) leaning.add(name);
    }
    for (int i = 0; i < heap.length; i++) if (heap[i] && cut.slice(i).isEmpty()) outside.add(all.get(i).name());
    List<String> doubts = new ArrayList<>();
    if (!noPrism.isEmpty()) doubts.add("no prism across the plane: " + String.join(", ", noPrism));
    if (!off.isEmpty()) doubts.add("centre of mass out of the plane: " + String.join(", ", off));
    if (!leaning.isEmpty()) doubts.add("held from outside the plane: " + String.join(", ", leaning));
    if (!outside.isEmpty()) doubts.add("part of the heap but outside the plane: " + String.join(", ", outside));
    List<String> bonded = bonds.outOfPlane();
    if (!bonded.isEmpty()) doubts.add("bonded beside the plane: " + String.join(", ", bonded));
    return doubts;
  }

  private static List<Cluster.Facing> touching(List<MotionBody> all) {
    int[] apart = new int[all.size()];
    for (int i = 0; i < apart.length; i++) apart[i] = i;
    return new Cluster(all, apart, List.of()).facings(TOUCH_M);
  }

  /** How many rocks each rock has between itself and the tank, by touching or bonds. */
  private int[] steps() {
    List<MotionBody> all = job.bodies().stream().map(PlayBody::body).toList();
    int[] steps = new int[all.size()];
    Arrays.fill(steps, all.size());
    int[] apart = new int[all.size()];
    for (int i = 0; i < apart.length; i++) apart[i] = i;
    List<int[]> pairs = new ArrayList<>();
    for (Cluster.Facing f : new Cluster(all, apart, job.fixed()).facings(TOUCH_M)) {
      if (f.b() < 0) steps[f.a()] = 0;
      else pairs.add(new int[] {f.a(), f.b()});
    }
    for (MotionBond b : job.bonds()) {
      if (job.number(b.a()) >= 0 && job.number(b.b()) >= 0) pairs.add(new int[] {job.number(b.a()), job.number(b.b())});
    }
    for (int round = 0; round < steps.length; round++) {
      for (int[] p : pairs) {
        steps[p[0]] = Math.min(steps[p[0]], steps[p[1]] + 1);
        steps[p[1]] = Math.min(steps[p[1]], steps[p[0]] + 1);
      }
    }
    return steps;
  }

  /** The rocks that are joined to the struck one by touching, through others or not. */
  private boolean[] heap(int n, List<Cluster.Facing> touching) {
    boolean[] heap = new boolean[n];
    heap[job.number(blow.rock())] = true;
    boolean grew = true;
    while (grew) {
      grew = false;
      for (Cluster.Facing f : touching) {
        if (heap[f.a()] == heap[f.b()]) continue;
        heap[f.a()] = true;
        heap[f.b()] = true;
        grew = true;
      }
    }
    return heap;
  }
}
