package holdfast.engine.motion;

import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds the steadiest rest of one rock near a spot: it is dropped there on each of its broad faces, turned round, and at
 * spots about the one asked for; the rests are ranked by a push margin that the caller provides, then by how little the
 * other rocks were disturbed.
 */
public final class SteadyRest {
  private SteadyRest() {}

  /** How hard a rock of a heap at rest is to push over, newtons; larger is steadier. The statics know best. */
  @FunctionalInterface
  public interface Rank {
    double marginN(List<MotionBody> heap, int rock);
  }

  /**
   * What is tried.
   *
   * @param radiusM how far from the spot
   * @param spots spots on that circle besides the middle
   * @param faces broadest faces that it is laid on, besides how it is held now
   * @param turns turns round for each
   * @param disturbedM another rock that moves farther rules a rest out
   */
  public record Tries(double radiusM, int spots, int faces, int turns, double disturbedM) {
    public static final Tries DEFAULT = new Tries(0.02, 2, 3, 4, 0.002);

    public Tries {
      if (!(radiusM >= 0) || spots < 0 || faces < 0 || turns < 1) {
        throw new IllegalArgumentException("tries out of range: " + radiusM + ", " + spots + ", " + faces + ", " + turns);
      }
    }
  }

  /** One rest. */
  public record Candidate(Pose pose, double marginN, double rolledM, double disturbedM, SettleResult.Settled heap) {}

  /** The rests found, steadiest first. Where two rank alike the one tried first comes first. */
  public static List<Candidate> near(SettleJob job, String rock, Vec3 spot, Tries tries, Rank rank) {
    int number = Drop.number(job, rock);
    if (number < 0) return List.of();
    MotionBody body = job.bodies().get(number);
    List<Candidate> found = new ArrayList<>();
    for (Vec3 at : spots(spot, tries)) {
      for (Quat held : attitudes(body, tries)) {
        if (!(Drop.drop(job, rock, at, held) instanceof Drop.Dropped.Lies lies)) continue;
        if (lies.disturbedM() > tries.disturbedM() || !lies.heap().atRest()) continue;
        List<MotionBody> heap = new ArrayList<>();
        for (int i = 0; i < job.bodies().size(); i++) heap.add(job.bodies().get(i).at(lies.heap().moves().get(i).pose()));
        found.add(new Candidate(lies.pose(), rank.marginN(heap, number), lies.rolledM(), lies.disturbedM(), lies.heap()));
      }
    }
    found.sort(Comparator.comparingDouble((Candidate c) -> -c.marginN()).thenComparingDouble(Candidate::disturbedM));
    return List.copyOf(found);
  }

  private static List<Vec3> spots(Vec3 spot, Tries tries) {
    List<Vec3> spots = new ArrayList<>();
    spots.add(spot);
    for (int i = 0; i < tries.spots(); i++) spots.add(spot.plusTimes(tries.radiusM(), Vec3.heading(360.0 * i / tries.spots())));
    return spots;
  }

  private static List<Quat> attitudes(MotionBody body, Tries tries) {
    List<Quat> lain = new ArrayList<>();
    lain.add(body.pose().turn());
    List<Vec3> corners = new ArrayList<>();
    for (Hull h : body.lobes()) corners.addAll(h.corners());
    List<Hull.Face> faces = HullBuilder.build(corners).match(
        hull -> hull.faces().stream().filter(f -> under(hull, f, body.centre()))
            .sorted(Comparator.comparingDouble(f -> -area(hull, f))).limit(tries.faces()).toList(),
        reason -> List.<Hull.Face>of());
    for (Hull.Face f : faces) lain.add(onto(f.normal()));
    List<Quat> all = new ArrayList<>();
    for (Quat q : lain) {
      for (int i = 0; i < tries.turns(); i++) all.add(Quat.about(Vec3.Z, 2 * Math.PI * i / tries.turns()).times(q).unit());
    }
    return all;
  }

  /** The shortest rotation that turns a normal straight down. */
  private static Quat onto(Vec3 normal) {
    Vec3 down = Vec3.Z.negated();
    Vec3 axis = normal.cross(down);
    double s = axis.norm();
    double c = normal.dot(down);
    if (s < 1e-9) return c > 0 ? Quat.IDENTITY : Quat.about(Vec3.X, Math.PI);
    return Quat.about(axis.times(1 / s), Math.atan2(s, c));
  }

  /** Whether the centre stands over the face when it lies down: only then can the rock rest on it. */
  private static boolean under(Hull hull, Hull.Face f, Vec3 centre) {
    List<Vec3> loop = hull.loop(f);
    for (int i = 0; i < loop.size(); i++) {
      Vec3 p = loop.get(i);
      Vec3 inward = f.normal().cross(loop.get((i + 1) % loop.size()).minus(p));
      if (inward.dot(centre.minus(p)) < 0) return false;
    }
    return true;
  }

  private static double area(Hull hull, Hull.Face f) {
    List<Vec3> loop = hull.loop(f);
    Vec3 sum = Vec3.ZERO;
    Vec3 o = loop.get(0);
    for (int i = 1; i + 1 < loop.size(); i++) sum = sum.plus(loop.get(i).minus(o).cross(loop.get(i + 1).minus(o)));
    return sum.norm() / 2;
  }
}
