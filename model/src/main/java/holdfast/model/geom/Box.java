package holdfast.model.geom;

/**
 * The box round some points, its sides along the axes.
 *
 * @param low least coordinates; plus infinity for no points
 * @param high greatest coordinates; minus infinity for no points
 */
public record Box(Vec3 low, Vec3 high) {
  /** The box round points; a box of no points holds none. */
  public static Box round(Iterable<Vec3> points) {
    double x0 = Double.POSITIVE_INFINITY;
    double y0 = Double.POSITIVE_INFINITY;
    double z0 = Double.POSITIVE_INFINITY;
    double x1 = Double.NEGATIVE_INFINITY;
    double y1 = Double.NEGATIVE_INFINITY;
    double z1 = Double.NEGATIVE_INFINITY;
    for (Vec3 p : points) {
      x0 = Math.min(x0, p.x());
      y0 = Math.min(y0, p.y());
      z0 = Math.min(z0, p.z());
      x1 = Math.max(x1, p.x());
      y1 = Math.max(y1, p.y());
      z1 = Math.max(z1, p.z());
    }
    return new Box(new Vec3(x0, y0, z0), new Vec3(x1, y1, z1));
  }

  public Vec3 middle() {
    return low.plus(high).times(0.5);
  }

  /** Lengths of its sides. */
  public Vec3 size() {
    return high.minus(low);
  }
}
