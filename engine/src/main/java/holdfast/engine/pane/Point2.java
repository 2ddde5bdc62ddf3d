package holdfast.engine.pane;

/** A point of the pane in plan, metres. */
public record Point2(double x, double y) {
  double distanceTo(Point2 o) {
    return Math.hypot(x - o.x, y - o.y);
  }
}
