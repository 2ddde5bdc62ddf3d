package holdfast.engine.build;

import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;

/**
 * A movement from one pose to another: a turn about one axis at a steady rate while one point of the body, the pivot, rises or
 * sinks at a steady rate. Where the pivot goes sideways is left open.
 *
 * @param pivot in the body's frame as built, metres
 * @param centre the body's centre in the same frame
 */
record GateLeg(GatePose from, GatePose to, Vec3 pivot, Vec3 centre) {

  private Quat change() {
    Quat q = to.turn().times(from.turn().conjugate()).unit();
    return q.w() < 0 ? new Quat(-q.w(), -q.x(), -q.y(), -q.z()) : q;
  }

  /** Angle through which it turns, radians. */
  double angleRad() {
    return change().angleRad();
  }

  private double pivotHeight(GatePose p) {
    return p.heightM() + p.turn().rotate(pivot.minus(centre)).z();
  }

  /** The pose at a share of the way. */
  GatePose at(double share) {
    if (share <= 0) return from;
    if (share >= 1) return to;
    Quat turn = part(change(), share).times(from.turn()).unit();
    double h = pivotHeight(from) + share * (pivotHeight(to) - pivotHeight(from));
    return new GatePose(turn, h - turn.rotate(pivot.minus(centre)).z());
  }

  private static Quat part(Quat q, double share) {
    Vec3 axis = new Vec3(q.x(), q.y(), q.z());
    double s = axis.norm();
    return s == 0 ? Quat.IDENTITY : Quat.about(axis.times(1 / s), share * 2 * Math.atan2(s, q.w()));
  }

  /**
   * The least room on the way, proved: a lower bound that is at most {@link Tolerances#TOLD_M} too small where it is not above
   * {@code enough}; NaN when it is not above nought or not proved. The way is halved until what can move in each part is less
   * than the room at its middle, see {@link GateFit}.
   *
   * @param least room that is asked for
   * @param enough room above which it need not be known better
   */
  double proved(GateFit fit, double least, double enough) {
    double angle = change().angleRad();
    double lift = Math.abs(pivotHeight(to) - pivotHeight(from));
    double reach = 0;
    for (GateBody.Lobe l : fit.body().lobes()) for (Vec3 p : l.corners()) reach = Math.max(reach, p.distanceTo(pivot));
    return proved(fit, 0, 1, angle, lift, reach, least, enough);
  }

  private double proved(
      GateFit fit, double t0, double t1, double angle, double lift, double reach, double least, double enough) {
    double half = (t1 - t0) / 2;
    GatePose middle = at((t0 + t1) / 2);
    double room = fit.room(middle.turn(), pivot, pivotHeight(middle), lift * half, angle * half);
    double moved = lift * half + angle * half * reach;
    if (room >= least && (room >= enough || moved <= Tolerances.TOLD_M / 2)) return room;
    if (room < least) {
      if (moved < Tolerances.SHORTEST_M) return Double.NaN;
      if (fit.room(middle) < least) return Double.NaN;
    }
    double first = proved(fit, t0, (t0 + t1) / 2, angle, lift, reach, least, enough);
    return Double.isNaN(first) ? first
        : Math.min(first, proved(fit, (t0 + t1) / 2, t1, angle, lift, reach, least, enough));
  }
}
