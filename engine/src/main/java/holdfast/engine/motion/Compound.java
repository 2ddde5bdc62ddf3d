package holdfast.engine.motion;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Mat3;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * A rigid group of rocks as one body, whose own frame is the world as it was when the group was made.
 *
 * @param body the group; its surface is that of its heaviest rock
 * @param reachM largest distance of a corner from the centre
 */
record Compound(MotionBody body, double reachM) {

  static Compound of(Cluster cluster, int g) {
    List<Hull> lobes = new ArrayList<>();
    Vec3 centre = cluster.centres()[g];
    Mat3 inertia = Mat3.ZERO;
    StringBuilder name = new StringBuilder();
    Surface surface = Surface.ROCK;
    double heaviest = 0;
    for (int i = 0; i < cluster.poses.length; i++) {
      if (cluster.group[i] != g) continue;
      MotionBody b = cluster.bodies.get(i);
      Pose pose = cluster.poses[i];
      for (Hull h : b.lobes()) lobes.add(h.moved(pose));
      inertia = inertia.plus(aboutPoint(b, pose, centre));
      if (b.massKg() > heaviest) {
        heaviest = b.massKg();
        surface = b.surface();
      }
      name.append(name.length() == 0 ? "" : " + ").append(b.name());
    }
    MotionBody body = new MotionBody(name.toString(), surface, lobes, cluster.massKg[g], centre, inertia, Pose.IDENTITY);
    return new Compound(body, body.reachM());
  }

  /** Inertia of a placed body about a point, by the parallel axes theorem. */
  private static Mat3 aboutPoint(MotionBody b, Pose pose, Vec3 point) {
    Mat3 r = Mat3.of(pose.turn());
    Mat3 own = r.times(b.inertia()).times(r.transposed());
    Vec3 d = pose.apply(b.centre()).minus(point);
    double dd = d.dot(d);
    return own.plus(new Mat3(
        dd - d.x() * d.x(), -d.x() * d.y(), -d.x() * d.z(),
        -d.y() * d.x(), dd - d.y() * d.y(), -d.y() * d.z(),
        -d.z() * d.x(), -d.z() * d.y(), dd - d.z() * d.z()).times(b.massKg()));
  }
}
