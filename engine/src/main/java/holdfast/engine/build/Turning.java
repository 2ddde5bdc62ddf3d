package holdfast.engine.build;

import holdfast.engine.build.Modules.Module;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import holdfast.model.shape.RockBody;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How a piece that does not pass the opening on a straight lift passes it by turning part way through.
 *
 * <p>A way that is found is proved, for a tank that is empty but for its devices: the piece keeps the clearance that is asked for
 * on each side of the opening, and of panes and devices under it, from above the rim to upright between floor and opening. That
 * none is found says nothing.
 */
public final class Turning {
  /** A person follows turns up to this from one pose to the next. */
  private static final double FOLLOWED_RAD = Math.toRadians(45);

  private Turning() {}

  /**
   * A pose on the way in.
   *
   * @param pose takes a point of the piece as placed in the scene to where it is now; metres, in the tank's frame
   * @param turnRad turned about the vertical, counter-clockwise from above, before it is tilted
   * @param tiltRad angle of what is its top as built from upright
   * @param towardDegrees to where its top is tilted: 0 right, 90 back
   * @param lowestM height of its lowest point above the rim, below nought when it is in the tank
   * @param highestM of its highest point
   */
  public record Step(Pose pose, double turnRad, double tiltRad, double towardDegrees, double lowestM, double highestM) {}

  /**
   * A way through an opening.
   *
   * @param opening its number, 0 for the first
   * @param path the movement
   * @param steps poses on it that are near enough to each other to follow, from above the rim downwards
   */
  public record Way(int opening, TurnPath path, List<Step> steps) {
    public Way {
      steps = List.copyOf(steps);
    }
  }

  /** What is asked, apart from where the piece stands; equal questions have equal answers. */
  public record Question(GateBody body, List<Gate> gates) {
    public Question {
      gates = List.copyOf(gates);
    }

    /** The first gate that lets the body through, and how. */
    public Optional<Found> answer() {
      for (int i = 0; i < gates.size(); i++) {
        Gate gate = gates.get(i);
        if (gates.subList(0, i).stream().anyMatch(g -> g.likeness(gate))) continue;
        Optional<TurnPath> path = TurnSearch.find(body, gate);
        if (path.isPresent()) return Optional.of(new Found(i, path.get()));
      }
      return Optional.empty();
    }
  }

  /** An opening and the way through it. */
  public record Found(int opening, TurnPath path) {}

  /** The question for a piece of a scene; {@code bodies} are those of its rocks. */
  public static Question question(Scene scene, List<RockBody> bodies, Module m) {
    return new Question(
        GateBody.of(hulls(scene, bodies, m)),
        Modules.openings(scene.tank()).stream().map(o -> Gate.of(scene, o)).toList());
  }

  /** How a piece passes that does not on a straight lift; empty where none was found. */
  public static Optional<Way> of(Scene scene, List<RockBody> bodies, Module m) {
    Question q = question(scene, bodies, m);
    return q.answer().map(f -> way(scene, hulls(scene, bodies, m), q, f));
  }

  private static List<Hull> hulls(Scene scene, List<RockBody> bodies, Module m) {
    List<Hull> out = new ArrayList<>();
    for (String rock : m.rocks()) {
      RockBody body = bodies.stream().filter(b -> b.name().equals(rock)).findFirst().orElseThrow();
      Pose pose = scene.placement(rock).orElseThrow().pose();
      for (Hull h : body.lobes()) out.add(h.moved(pose));
    }
    return out;
  }

  private static Way way(Scene scene, List<Hull> hulls, Question q, Found found) {
    Tank tank = scene.tank();
    Tank.Opening o = Modules.openings(tank).get(found.opening);
    double rim = tank.heightMm() * 1e-3;
    Vec3 origin = hulls.get(0).corners().get(0);
    GateFit fit = new GateFit(q.body, q.gates.get(found.opening));
    List<Step> steps = new ArrayList<>();
    // Above the rim it hangs over the middle of the opening.
    Vec3 over = new Vec3((o.xMm() + o.lengthMm() / 2) * 1e-3, (o.yMm() + o.widthMm() / 2) * 1e-3, rim);
    for (GatePose p : spread(found.path, q.body.centre())) {
      fit.room(p);
      double[] middle = fit.middle();
      Vec3 at = new Vec3(
          Double.isNaN(middle[0]) ? over.x() : middle[0], Double.isNaN(middle[1]) ? over.y() : middle[1], rim + p.heightM());
      Pose pose = new Pose(at.minus(p.turn().rotate(origin.plus(q.body.centre()))), p.turn());
      Vec3 up = p.turn().rotate(Vec3.Z);
      double tilt = Math.atan2(Math.hypot(up.x(), up.y()), up.z());
      double toward = Math.toDegrees(Math.atan2(up.y(), up.x()));
      Quat level = Quat.about(new Vec3(-up.y(), up.x(), 0).norm() > 0 ? new Vec3(-up.y(), up.x(), 0).unit() : Vec3.X, -tilt)
          .times(p.turn());
      double turn = 2 * Math.atan2(level.z(), level.w());
      steps.add(new Step(pose, Math.IEEEremainder(turn, 2 * Math.PI), tilt, toward, fit.bottom(), fit.top()));
    }
    return new Way(found.opening, found.path, steps);
  }

  /** The poses of a path, and others between them where it turns far. */
  private static List<GatePose> spread(TurnPath path, Vec3 centre) {
    List<GatePose> out = new ArrayList<>(List.of(path.poses().get(0)));
    for (int i = 0; i < path.pivots().size(); i++) {
      GateLeg leg = new GateLeg(path.poses().get(i), path.poses().get(i + 1), path.pivots().get(i), centre);
      int parts = Math.max(1, (int) Math.ceil(leg.angleRad() / FOLLOWED_RAD - 1e-9));
      for (int k = 1; k <= parts; k++) out.add(leg.at((double) k / parts));
    }
    return out;
  }
}
