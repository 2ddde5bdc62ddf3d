package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.engine.statics.heap.Twist;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Plays a disturbance in a {@link MotionWorld} until everything rests, and says how it ended for each rock. A picture of
 * what would happen, and an estimate of how hard things land; whether a heap is safe is for the statics to say.
 */
public final class Bump {
  /** Seconds played before the disturbance, so that contacts carry what they have to. */
  private static final double BEFORE_S = 0.3;

  /** Metres: what moves less than this in {@link #STILL_S}, twice running, rests. */
  private static final double STILL_M = 1e-4;

  private static final double STILL_S = 0.25;

  /** Metres: a rock that strayed less has stayed; what the eye does not see. */
  static final double STAYED_M = 5e-4;

  /** Metres and radians: a rock that is farther off in the end has shifted. */
  static final double SHIFTED_M = 1e-3;

  static final double SHIFTED_RAD = Math.toRadians(1);

  /** A rock has fallen when its centre sank by this share of its height, or when it is turned over by this angle. */
  static final double FELL_SHARE = 0.2;

  static final double FELL_RAD = Math.toRadians(30);

  /** Metres: what a rock is this near to in the end, it rests on. */
  private static final double RESTS_M = 1e-3;

  /** Rounds of the contact solver: bonds and tall stacks want more than a single stone. */
  private static final int ITERATIONS = 16;

  /** The arm's grip, newtons a metre a second for each newton it may use: it reaches its force 2 mm/s short of its speed. */
  private static final double ARM_GRIP = 500;

  private final PlayJob job;
  private final Disturbance disturbance;
  private final MotionWorld world;
  private final int[] bonds;
  private final Quat[] bondTurns;
  private final BondLoad[] bondLoads;
  private final List<PlayResult.Broken> broken = new ArrayList<>();
  private final List<PlayResult.Frame> frames = new ArrayList<>();
  private final Pose[] poses;
  private final Twist[] velocities;
  private final double[] strayed;
  private final PlayResult.Landing[] landings;
  private final double[] lowZ;
  private final double[] highZ;
  private final int target;
  /** What does not move, as it is now. */
  private final List<Solid> fixed;
  private boolean removed;

  private Bump(PlayJob job, Disturbance disturbance, MotionWorld world) {
    this.job = job;
    this.disturbance = disturbance;
    this.world = world;
    this.fixed = new ArrayList<>(job.fixed());
    int n = job.bodies().size();
    target = job.number(disturbance.rock());
    poses = new Pose[n];
    velocities = new Twist[n];
    strayed = new double[n];
    landings = new PlayResult.Landing[n];
    lowZ = new double[n];
    highZ = new double[n];
    bonds = new int[job.bonds().size()];
    bondTurns = new Quat[bonds.length];
    bondLoads = new BondLoad[bonds.length];
    for (int k = 0; k < bonds.length; k++) bondLoads[k] = new BondLoad();
  }

  /** Plays a disturbance. */
  public static PlayResult play(PlayJob job, Disturbance disturbance) {
    if (!disturbance.rock().isEmpty() && job.number(disturbance.rock()) < 0) {
      return new PlayResult.NotPlayed("there is no placed rock '" + disturbance.rock() + "'");
    }
    MotionWorlds.Opened opened = MotionWorlds.open(new WorldOptions(job.stepHz(), ITERATIONS, job.friction()));
    return opened.match(world -> {
      try (world) {
        return new Bump(job, disturbance, world).run();
      }
    }, PlayResult.NotPlayed::new);
  }

  private PlayResult run() {
    fill();
    for (double t = 0; t < BEFORE_S; t += world.stepS()) step(-1);
    Pose[] start = poses.clone();
    begin();
    Arm arm = disturbance instanceof Disturbance.Arm a ? new Arm(a) : null;
    PaneWatch panes = new PaneWatch(job);
    keepFrame(0);
    double frameS = job.framesPerS() > 0 ? 1 / job.framesPerS() : Double.POSITIVE_INFINITY;
    double nextFrame = frameS;
    Pose[] then = poses.clone();
    double window = 0;
    int still = 0;
    boolean rested = false;
    long steps = 0;
    double t = 0;
    while (t < job.mostS() && !rested) {
      if (arm != null) arm.push(t);
      Twist[] before = velocities.clone();
      step(t);
      t = ++steps * world.stepS();
      for (int i = 0; i < poses.length; i++) {
        if (gone(i)) continue;
        panes.see(i, poses[i], before[i], t);
        strayed[i] = Math.max(strayed[i], apart(i, start[i], poses[i]));
        noteFall(i, start[i]);
      }
      if (t >= nextFrame - 1e-9) {
        keepFrame(t);
        nextFrame += frameS;
      }
      window += world.stepS();
      if (window < STILL_S) continue;
      window = 0;
      double far = 0;
      for (int i = 0; i < poses.length; i++) if (!gone(i)) far = Math.max(far, apart(i, then[i], poses[i]));
      then = poses.clone();
      still = far < STILL_M && (arm == null || arm.done) ? still + 1 : 0;
      rested = still >= 2;
    }
    keepFrame(t);
    return new PlayResult.Played(outcomes(start), panes.hits(), broken, frames, t, rested);
  }

  private void fill() {
    fixed.forEach(world::addFixed);
    for (int i = 0; i < poses.length; i++) {
      world.addBody(job.bodies().get(i).body(), Tolerances.unlikeSize(i));
      poses[i] = job.bodies().get(i).body().pose();
      velocities[i] = Twist.ZERO;
    }
    for (int k = 0; k < bonds.length; k++) {
      MotionBond b = job.bonds().get(k);
      int i = job.number(b.a());
      int j = job.number(b.b());
      if (i < 0 || j < 0) bonds[k] = -1;
      else bonds[k] = b.strength().carriesMoment() ? world.addBond(i, j, b.at()) : world.addBall(i, j, b.at());
      if (i >= 0) bondTurns[k] = poses[i].turn();
    }
  }

  private void begin() {
    if (disturbance instanceof Disturbance.Blow blow) {
      MotionBody b = job.bodies().get(target).body();
      world.applyImpulse(target, blow.impulseNs(), poses[target].apply(b.pose().applyInverse(blow.at())));
    } else if (disturbance instanceof Disturbance.Removal) {
      for (int k = 0; k < bonds.length; k++) {
        MotionBond b = job.bonds().get(k);
        if (b.a().equals(disturbance.rock()) || b.b().equals(disturbance.rock())) bonds[k] = -1;
      }
      world.removeBody(target);
      removed = true;
    } else if (disturbance instanceof Disturbance.Undermining u) {
      Optional<Solid> sand = fixed.stream().filter(f -> f.name().equals(SandBed.NAME)).findFirst();
      if (sand.isEmpty()) return;
      world.removeFixed(SandBed.NAME);
      fixed.remove(sand.get());
      SandBed.dug(sand.get(), u.feet()).ifPresent(left -> {
        world.addFixed(left);
        fixed.add(left);
      });
    }
  }

  private boolean gone(int body) {
    return removed && body == target;
  }

  private void step(double t) {
    for (int i = 0; i < poses.length; i++) if (!gone(i)) weigh(i);
    world.step();
    for (int i = 0; i < poses.length; i++) {
      if (gone(i)) continue;
      poses[i] = world.pose(i);
      velocities[i] = world.velocity(i);
    }
    for (int k = 0; k < bonds.length; k++) {
      if (bonds[k] < 0) continue;
      MotionBond b = job.bonds().get(k);
      Quat back = bondTurns[k].times(poses[job.number(b.a())].turn().conjugate());
      Wrench now = world.bondLoad(bonds[k]);
      Wrench load = bondLoads[k].add(new Wrench(back.rotate(now.force()), back.rotate(now.moment())), world.stepS());
      if (t < 0 || b.strength().use(load, b.normal()) < 1) continue;
      world.breakBond(bonds[k]);
      bonds[k] = -1;
      broken.add(new PlayResult.Broken(b.a(), b.b(), t + world.stepS()));
    }
  }

  /** The world pulls every body by its mass times g; what the rock weighs, and the drag, come on top. */
  private void weigh(int i) {
    PlayBody b = job.bodies().get(i);
    double share = 0;
    Wrench wrench = Wrench.ZERO;
    if (job.water().isPresent()) {
      WaterModel water = job.water().get();
      heights(i);
      share = Math.max(0, Math.min(1, (water.levelM() - lowZ[i]) / Math.max(1e-9, highZ[i] - lowZ[i])));
      wrench = water.drag(b, velocities[i], share);
    }
    double weight = b.weightAboveN() + share * (b.weightUnderN() - b.weightAboveN());
    double lift = b.body().massKg() * Gravity.G - weight;
    if (lift != 0 || wrench != Wrench.ZERO) {
      world.applyWrench(i, wrench.plus(new Wrench(new Vec3(0, 0, lift), Vec3.ZERO)));
    }
  }

  private void heights(int i) {
    MotionBody.Heights now = job.bodies().get(i).body().heights(poses[i]);
    lowZ[i] = now.lowM();
    highZ[i] = now.highM();
  }

  /** The arm: a force that grows as the point falls behind the arm's speed, up to its limit. */
  private final class Arm {
    private final Disturbance.Arm arm;
    private final Vec3 local;
    private final Vec3 from;
    private boolean done;

    Arm(Disturbance.Arm arm) {
      this.arm = arm;
      MotionBody b = job.bodies().get(target).body();
      local = b.pose().applyInverse(arm.at());
      from = poses[target].apply(local);
    }

    void push(double t) {
      if (done) return;
      Vec3 at = poses[target].apply(local);
      done = t > arm.mostS() || at.minus(from).dot(arm.toward()) > arm.strokeM();
      if (done) return;
      Vec3 centre = poses[target].apply(job.bodies().get(target).body().centre());
      double behind = arm.speedMS() - velocities[target].at(at, centre).dot(arm.toward());
      double force = Math.max(0, Math.min(arm.forceN(), ARM_GRIP * arm.forceN() * behind));
      // A hand does not strike: its force grows over the first part of its push.
      force *= Math.min(1, t / (0.25 * arm.mostS()));
      world.applyWrench(target, Wrench.of(arm.toward().times(force), at, centre));
    }
  }

  // -- what is noted ------------------------------------------------------------------------------------------------

  /** The farthest that a point of the body can be from where it was, metres: an upper bound. */
  private double apart(int i, Pose was, Pose now) {
    MotionBody b = job.bodies().get(i).body();
    double angle = now.turn().times(was.turn().conjugate()).angleRad();
    return now.apply(b.centre()).distanceTo(was.apply(b.centre())) + 2 * Math.sin(Math.min(angle, Math.PI) / 2) * b.reachM();
  }

  private void noteFall(int i, Pose start) {
    MotionBody b = job.bodies().get(i).body();
    double drop = start.apply(b.centre()).z() - poses[i].apply(b.centre()).z();
    if (drop < STAYED_M) return;
    double energy = PaneWatch.energy(b, poses[i], velocities[i]);
    if (landings[i] == null || energy > landings[i].energyJ()) {
      landings[i] = new PlayResult.Landing(energy, velocities[i].velocity().norm());
    }
  }

  private void keepFrame(double t) {
    frames.add(new PlayResult.Frame(t, List.of(poses)));
  }

  private List<PlayResult.Outcome> outcomes(Pose[] start) {
    List<Set<String>> restsOn = restsOn();
    List<PlayResult.Outcome> outcomes = new ArrayList<>();
    for (int i = 0; i < poses.length; i++) {
      MotionBody b = job.bodies().get(i).body();
      Vec3 was = start[i].apply(b.centre());
      Vec3 now = poses[i].apply(b.centre());
      double turn = poses[i].turn().times(start[i].turn().conjugate()).angleRad();
      Vec3 up = poses[i].turn().times(start[i].turn().conjugate()).rotate(Vec3.Z);
      double tilt = Math.acos(Math.max(-1, Math.min(1, up.z())));
      double drop = was.z() - now.z();
      PlayResult.Fate fate;
      if (gone(i)) {
        fate = PlayResult.Fate.REMOVED;
      } else if (tilt > FELL_RAD || drop > FELL_SHARE * b.heights().extentM()) {
        fate = PlayResult.Fate.FELL;
      } else if (now.distanceTo(was) > SHIFTED_M || turn > SHIFTED_RAD) {
        fate = PlayResult.Fate.SHIFTED;
      } else {
        fate = strayed[i] > STAYED_M ? PlayResult.Fate.ROCKED : PlayResult.Fate.STAYED;
      }
      boolean fell = fate == PlayResult.Fate.FELL;
      outcomes.add(new PlayResult.Outcome(b.name(), fate, now.distanceTo(was), turn, drop, strayed[i], now,
          List.copyOf(restsOn.get(i)), fell ? Optional.ofNullable(landings[i]) : Optional.empty()));
    }
    return outcomes;
  }

  private List<Set<String>> restsOn() {
    List<MotionBody> placed = new ArrayList<>();
    List<Integer> number = new ArrayList<>();
    for (int i = 0; i < poses.length; i++) {
      if (gone(i)) continue;
      placed.add(job.bodies().get(i).body().at(poses[i]));
      number.add(i);
    }
    int[] apart = new int[placed.size()];
    for (int i = 0; i < apart.length; i++) apart[i] = i;
    List<Set<String>> restsOn = new ArrayList<>();
    for (int i = 0; i < poses.length; i++) restsOn.add(new LinkedHashSet<>());
    for (Cluster.Facing f : new Cluster(placed, apart, fixed).facings(RESTS_M)) {
      int a = number.get(f.a());
      if (f.b() < 0) {
        restsOn.get(a).add(fixed.get(-1 - f.b()).name());
      } else {
        int b = number.get(f.b());
        restsOn.get(a).add(job.bodies().get(b).name());
        restsOn.get(b).add(job.bodies().get(a).name());
      }
    }
    return restsOn;
  }
}
