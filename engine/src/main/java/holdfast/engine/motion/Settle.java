package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Brings a rough sketch to rest on real contacts and changes no more than that takes.
 *
 * <p>Three steps: overlaps are parted and bonded neighbours drawn together by the least motion ({@link Separation});
 * the heap is let down in a {@link MotionWorld} with so much drag that nothing gathers speed, until it rests; the rest
 * is polished in double precision ({@link Polish}). The last two are repeated until the engine leaves
 * the polished heap where it is, so settling a settled heap leaves it alone. Rocks that are bonded and touch move as one;
 * locked rocks don't move.
 */
public final class Settle {
  /** 1/s: drag while things come down; a stone sinks at 0.25 m/s. */
  private static final double HEAVY_DRAG = 40;

  /** 1/s: drag while the heap finds its rest. */
  private static final double LIGHT_DRAG = 3;

  /** Seconds at most with heavy and with light drag. */
  private static final double HEAVY_S = 4;

  private static final double LIGHT_S = 8;

  /**
   * Metres: what moves less than this in {@link #STILL_S}, twice running, rests; the engine's own creep under friction stays
   * below it.
   */
  private static final double STILL_M = 5e-5;

  private static final double STILL_S = 0.4;

  /** Metres: a heap that moved less than this in the engine was at rest before. */
  private static final double UNMOVED_M = 5e-4;

  /** Times the heap is let down and polished at most; it is done when the engine leaves the polished heap where it is. */
  private static final int MOST_ROUNDS = 5;

  private final SettleJob job;

  private Settle(SettleJob job) {
    this.job = job;
  }

  /** Settles a sketch. */
  public static SettleResult settle(SettleJob job) {
    return new Settle(job).run();
  }

  private SettleResult run() {
    List<int[]> bonds = bondNumbers();
    Cluster single = new Cluster(job.bodies(), groups(List.of()), job.fixed());
    new Separation(single, bonds, job.bondReachM()).run();

    List<MotionBody> parted = new ArrayList<>();
    for (int i = 0; i < job.bodies().size(); i++) parted.add(job.bodies().get(i).at(single.poses[i]));
    Cluster joined = new Cluster(parted, groups(touching(single, bonds)), job.fixed());
    double seconds = 0;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      Pose[] before = joined.poses.clone();
      MotionWorlds.Opened opened = MotionWorlds.open(WorldOptions.of(job.friction()));
      if (opened instanceof MotionWorlds.Opened.Unavailable u) return new SettleResult.NotDone(u.reason());
      Played played;
      try (MotionWorld world = ((MotionWorlds.Opened.Ready) opened).world()) {
        played = letDown(world, joined);
      }
      seconds += played.seconds();
      boolean unmoved = farthest(joined, before) < UNMOVED_M;
      if (unmoved) System.arraycopy(before, 0, joined.poses, 0, before.length);
      Polish.Done done = new Polish(joined, this::friction).run();
      if (unmoved) return result(joined, played.rested() && done.converged(), seconds);
    }
    return result(joined, false, seconds);
  }

  // -- groups -------------------------------------------------------------------------------------------------------

  private List<int[]> bondNumbers() {
    Map<String, Integer> number = new LinkedHashMap<>();
    for (int i = 0; i < job.bodies().size(); i++) number.put(job.bodies().get(i).name(), i);
    List<int[]> pairs = new ArrayList<>();
    for (SettleJob.Bonded b : job.bonds()) {
      Integer i = number.get(b.a());
      Integer j = number.get(b.b());
      if (i != null && j != null && !i.equals(j)) pairs.add(new int[] {i, j});
    }
    return pairs;
  }

  private List<int[]> touching(Cluster cluster, List<int[]> bonds) {
    List<Cluster.Facing> near = cluster.facings(Tolerances.REST_M);
    List<int[]> touching = new ArrayList<>();
    for (int[] pair : bonds) {
      boolean locked = cluster.group[pair[0]] < 0 && cluster.group[pair[1]] < 0;
      boolean touch = near.stream().anyMatch(f -> f.a() == Math.max(pair[0], pair[1]) && f.b() == Math.min(pair[0], pair[1]));
      if (touch && !locked) touching.add(pair);
    }
    return touching;
  }

  /** Group numbers from zero in the order of their first rock; -1 for what is locked or joined to it. */
  private int[] groups(List<int[]> joined) {
    int n = job.bodies().size();
    int[] root = new int[n];
    for (int i = 0; i < n; i++) root[i] = i;
    for (int[] pair : joined) {
      int a = root[pair[0]];
      int b = root[pair[1]];
      for (int i = 0; i < n; i++) if (root[i] == Math.max(a, b)) root[i] = Math.min(a, b);
    }
    boolean[] still = new boolean[n];
    for (int i = 0; i < n; i++) still[root[i]] |= job.locked().contains(job.bodies().get(i).name());
    int[] number = new int[n];
    int[] group = new int[n];
    Arrays.fill(number, -1);
    int next = 0;
    for (int i = 0; i < n; i++) {
      if (still[root[i]]) {
        group[i] = -1;
        continue;
      }
      if (number[root[i]] < 0) number[root[i]] = next++;
      group[i] = number[root[i]];
    }
    return group;
  }

  // -- the engine ---------------------------------------------------------------------------------------------------

  private record Played(boolean rested, double seconds) {}

  private Played letDown(MotionWorld world, Cluster cluster) {
    job.fixed().forEach(world::addFixed);
    for (int i = 0; i < cluster.bodies.size(); i++) {
      if (cluster.group[i] < 0) world.addFixed(cluster.bodies.get(i).at(cluster.poses[i]).solid(true));
    }
    List<Compound> compounds = new ArrayList<>();
    for (int g = 0; g < cluster.groups; g++) {
      Compound compound = Compound.of(cluster, g);
      compounds.add(compound);
      world.addBody(compound.body(), Tolerances.unlikeSize(g));
    }
    world.setDamping(HEAVY_DRAG, HEAVY_DRAG);
    double seconds = play(world, compounds, HEAVY_S);
    world.setDamping(LIGHT_DRAG, LIGHT_DRAG);
    double more = play(world, compounds, LIGHT_S);
    for (int g = 0; g < compounds.size(); g++) {
      Pose moved = world.pose(g);
      for (int i = 0; i < cluster.poses.length; i++) {
        if (cluster.group[i] != g) continue;
        Pose p = cluster.poses[i];
        cluster.poses[i] = new Pose(moved.apply(p.at()), moved.turn().times(p.turn()).unit());
      }
    }
    return new Played(more < LIGHT_S - STILL_S / 2, seconds + more);
  }

  /** Plays until everything is still; the seconds it took. */
  private static double play(MotionWorld world, List<Compound> compounds, double mostS) {
    double t = 0;
    int still = 0;
    while (t < mostS && still < 2) {
      List<Pose> then = poses(world, compounds.size());
      for (double s = 0; s < STILL_S; s += world.stepS()) world.step();
      t += STILL_S;
      double far = 0;
      for (int g = 0; g < compounds.size(); g++) far = Math.max(far, moved(compounds.get(g), then.get(g), world.pose(g)));
      still = far < STILL_M ? still + 1 : 0;
    }
    return t;
  }

  private static List<Pose> poses(MotionWorld world, int bodies) {
    List<Pose> poses = new ArrayList<>();
    for (int g = 0; g < bodies; g++) poses.add(world.pose(g));
    return poses;
  }

  /** The farthest that a point of the group can have moved, metres. */
  private static double moved(Compound compound, Pose then, Pose now) {
    Vec3 centre = compound.body().centre();
    double angle = now.turn().times(then.turn().conjugate()).angleRad();
    return now.apply(centre).distanceTo(then.apply(centre)) + angle * compound.reachM();
  }

  private double friction(int a, int b) {
    Surface sa = job.bodies().get(a).surface();
    Surface sb = b >= 0 ? job.bodies().get(b).surface() : job.fixed().get(-1 - b).surface();
    return job.friction().between(sa, sb);
  }

  /** The farthest that a corner has moved, metres. */
  private static double farthest(Cluster cluster, Pose[] before) {
    double far = 0;
    for (int i = 0; i < before.length; i++) {
      for (Hull h : cluster.bodies.get(i).lobes()) {
        for (Vec3 p : h.corners()) far = Math.max(far, before[i].apply(p).distanceTo(cluster.poses[i].apply(p)));
      }
    }
    return far;
  }

  // -- the result ---------------------------------------------------------------------------------------------------

  private SettleResult result(Cluster cluster, boolean atRest, double playedS) {
    int n = cluster.poses.length;
    double[] hover = new double[n];
    Arrays.fill(hover, Double.POSITIVE_INFINITY);
    Map<String, SettleResult.Touch> touches = new LinkedHashMap<>();
    for (Cluster.Facing f : new Cluster(placed(cluster), apart(cluster), job.fixed()).facings(Tolerances.NEAR_M)) {
      double gap = f.gap().gapM();
      hover[f.a()] = Math.min(hover[f.a()], Math.max(0, gap));
      if (f.b() >= 0) hover[f.b()] = Math.min(hover[f.b()], Math.max(0, gap));
      String a = cluster.bodies.get(f.a()).name();
      String b = f.b() < 0 ? job.fixed().get(-1 - f.b()).name() : cluster.bodies.get(f.b()).name();
      touches.merge(a + "\n" + b, new SettleResult.Touch(a, b, gap), (p, q) -> p.gapM() <= q.gapM() ? p : q);
    }
    List<SettleResult.Move> moves = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      MotionBody was = job.bodies().get(i);
      Pose now = cluster.poses[i];
      Quat turned = now.turn().times(was.pose().turn().conjugate());
      moves.add(new SettleResult.Move(was.name(), now.apply(was.centre()).distanceTo(was.centreInWorld()),
          turned.angleRad(), hover[i], cluster.group[i] < 0, now));
    }
    return new SettleResult.Settled(moves, List.copyOf(touches.values()), atRest, playedS);
  }

  private static List<MotionBody> placed(Cluster cluster) {
    List<MotionBody> placed = new ArrayList<>();
    for (int i = 0; i < cluster.poses.length; i++) placed.add(cluster.bodies.get(i).at(cluster.poses[i]));
    return placed;
  }

  private static int[] apart(Cluster cluster) {
    int[] group = new int[cluster.poses.length];
    for (int i = 0; i < group.length; i++) group[i] = i;
    return group;
  }
}
