package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The heap while it is being settled: bodies with their poses, gathered into rigid groups that move as one. Group -1
 * never moves. Mutable, and alive only inside one settling.
 */
final class Cluster {
  final List<MotionBody> bodies;
  final Pose[] poses;
  /** Group of each body, -1 when it stays where it is. */
  final int[] group;
  final int groups;
  final double[] massKg;
  /** A length for each group that makes turns comparable with shifts: the largest reach from its centre. */
  final double[] reachM;
  private final List<List<PlacedLobe.Topology>> topologies = new ArrayList<>();
  private final List<List<PlacedLobe>> fixed = new ArrayList<>();

  Cluster(List<MotionBody> bodies, int[] group, List<Solid> fixed) {
    this.bodies = bodies;
    this.group = group;
    for (Solid s : fixed) {
      this.fixed.add(s.lobes().stream().map(h -> PlacedLobe.of(h, PlacedLobe.Topology.of(h), Pose.IDENTITY)).toList());
    }
    poses = bodies.stream().map(MotionBody::pose).toArray(Pose[]::new);
    int most = -1;
    for (int g : group) most = Math.max(most, g);
    groups = most + 1;
    massKg = new double[groups];
    reachM = new double[groups];
    for (int i = 0; i < bodies.size(); i++) {
      if (group[i] >= 0) massKg[group[i]] += bodies.get(i).massKg();
      topologies.add(bodies.get(i).lobes().stream().map(PlacedLobe.Topology::of).toList());
    }
    Vec3[] centres = centres();
    for (int i = 0; i < bodies.size(); i++) {
      int g = group[i];
      if (g < 0) continue;
      double off = poses[i].apply(bodies.get(i).centre()).distanceTo(centres[g]);
      reachM[g] = Math.max(reachM[g], bodies.get(i).reachM() + off);
    }
  }

  /** Centre of mass of each group, world. */
  Vec3[] centres() {
    Vec3[] sum = new Vec3[groups];
    Arrays.fill(sum, Vec3.ZERO);
    for (int i = 0; i < bodies.size(); i++) {
      int g = group[i];
      if (g < 0) continue;
      sum[g] = sum[g].plusTimes(bodies.get(i).massKg() / massKg[g], poses[i].apply(bodies.get(i).centre()));
    }
    return sum;
  }

  /** Moves every body of a group: a turn about the group's centre, then a shift. */
  void move(int g, Vec3 centre, Vec3 shift, Vec3 turn) {
    Quat q = Quat.ofRotationVector(turn);
    for (int i = 0; i < poses.length; i++) {
      if (group[i] != g) continue;
      Pose p = poses[i];
      poses[i] = new Pose(centre.plus(shift).plus(q.rotate(p.at().minus(centre))), q.times(p.turn()).unit());
    }
  }

  /** A pair of bodies and how two of their lobes face each other; {@code b = -1 - i} is the fixed solid number i. */
  record Facing(int a, int b, LobeGap gap) {}

  /** Every pair of lobes of different groups that comes within a distance. */
  List<Facing> facings(double withinM) {
    List<List<PlacedLobe>> placed = new ArrayList<>();
    for (int i = 0; i < poses.length; i++) {
      List<PlacedLobe> lobes = new ArrayList<>();
      for (int k = 0; k < topologies.get(i).size(); k++) {
        lobes.add(PlacedLobe.of(bodies.get(i).lobes().get(k), topologies.get(i).get(k), poses[i]));
      }
      placed.add(lobes);
    }
    List<Facing> all = new ArrayList<>();
    for (int i = 0; i < poses.length; i++) {
      for (int j = 0; j < i; j++) {
        if (group[i] != group[j]) facings(i, placed.get(i), j, placed.get(j), withinM, all);
      }
      for (int f = 0; f < fixed.size() && group[i] >= 0; f++) {
        facings(i, placed.get(i), -1 - f, fixed.get(f), withinM, all);
      }
    }
    return all;
  }

  private static void facings(
      int i, List<PlacedLobe> a, int j, List<PlacedLobe> b, double withinM, List<Facing> all) {
    for (PlacedLobe p : a) {
      for (PlacedLobe q : b) {
        if (!p.boxNear(q, withinM)) continue;
        LobeGap gap = LobeGap.between(p, q, withinM);
        if (gap.gapM() <= withinM) all.add(new Facing(i, j, gap));
      }
    }
  }
}
