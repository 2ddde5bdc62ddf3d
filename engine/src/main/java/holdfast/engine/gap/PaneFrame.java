package holdfast.engine.gap;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;

/**
 * One pane's own coordinates: along it (x for the front and back pane, y for the left and right), up it (z), and the
 * distance from its inner face into the tank.
 */
record PaneFrame(Side side, double lengthM, double heightM, double planeOffset) {
  static PaneFrame of(Tank tank, Side side) {
    double length = tank.lengthMm() * 1e-3;
    double width = tank.widthMm() * 1e-3;
    boolean alongX = side == Side.FRONT || side == Side.BACK;
    double offset = switch (side) {
      case FRONT, LEFT -> 0;
      case RIGHT -> length;
      case BACK -> width;
    };
    return new PaneFrame(side, alongX ? length : width, tank.heightMm() * 1e-3, offset);
  }

  double along(Vec3 p) {
    return side == Side.FRONT || side == Side.BACK ? p.x() : p.y();
  }

  /** Distance from the inner face into the tank; below zero beyond it. */
  double depth(Vec3 p) {
    return planeOffset - p.dot(side.outward());
  }

  /** The foot of a point on the inner face. */
  Vec3 foot(Vec3 p) {
    return p.plusTimes(depth(p), side.outward());
  }
}
