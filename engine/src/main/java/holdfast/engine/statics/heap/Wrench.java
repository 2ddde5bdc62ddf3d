package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;

/** A force in newtons and a moment in newton metres about a body's centre of mass. */
public record Wrench(Vec3 force, Vec3 moment) {
  public static final Wrench ZERO = new Wrench(Vec3.ZERO, Vec3.ZERO);

  /** A force acting at {@code at}, about {@code centre}. */
  public static Wrench of(Vec3 force, Vec3 at, Vec3 centre) {
    return new Wrench(force, at.minus(centre).cross(force));
  }

  public Wrench plus(Wrench o) {
    return new Wrench(force.plus(o.force), moment.plus(o.moment));
  }

  public Wrench times(double s) {
    return new Wrench(force.times(s), moment.times(s));
  }

  public boolean isZero() {
    return force.equals(Vec3.ZERO) && moment.equals(Vec3.ZERO);
  }
}
