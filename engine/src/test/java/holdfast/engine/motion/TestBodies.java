package holdfast.engine.motion;

import holdfast.engine.contact.Solid;
import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Bodies for the tests of this package. */
final class TestBodies {
  private TestBodies() {}

  static Hull hull(List<Vec3> points) {
    return HullBuilder.build(points).match(h -> h, reason -> {
      throw new IllegalStateException(reason);
    });
  }

  static Hull boxHull(Vec3 low, Vec3 high) {
    List<Vec3> corners = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      corners.add(new Vec3((i & 1) == 0 ? low.x() : high.x(), (i & 2) == 0 ? low.y() : high.y(), (i & 4) == 0 ? low.z() : high.z()));
    }
    return hull(corners);
  }

  /** A body of one lobe and even density, its own origin as in the hull. */
  static MotionBody body(String name, Hull hull, double densityKgM3, Pose pose) {
    MassProperties m = Polyhedra.massProperties(hull);
    return new MotionBody(name, Surface.ROCK, List.of(hull), densityKgM3 * m.volumeM3(), m.centre(),
        m.inertia().times(densityKgM3), pose);
  }

  /** A box of 2 kg/L about its own origin. */
  static MotionBody box(String name, double x, double y, double z, Pose pose) {
    Vec3 half = new Vec3(x, y, z).times(0.5);
    return body(name, boxHull(half.negated(), half), 2000, pose);
  }

  static Pose at(double x, double y, double z) {
    return new Pose(new Vec3(x, y, z), Quat.IDENTITY);
  }

  static Pose at(double x, double y, double z, Quat turn) {
    return new Pose(new Vec3(x, y, z), turn);
  }

  static Solid floor() {
    return new Solid("bottom pane", Surface.GLASS, true, List.of(boxHull(new Vec3(-2, -2, -0.1), new Vec3(4, 4, 0))));
  }

  /** A lumpy convex stone of about the given radius, flattened by the third factor. */
  static Hull stone(Random random, double radiusM, double flat) {
    List<Vec3> points = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      Vec3 d = new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
      Vec3 p = d.times(radiusM * (0.85 + 0.3 * random.nextDouble()));
      points.add(new Vec3(p.x(), p.y(), p.z() * flat));
    }
    return hull(points);
  }

  static MotionWorld open(WorldOptions options) {
    return MotionWorlds.open(options).match(w -> w, reason -> {
      throw new IllegalStateException(reason);
    });
  }
}
