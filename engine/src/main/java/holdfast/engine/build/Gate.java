package holdfast.engine.build;

import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;

/**
 * The way into a tank, seen from its rim: an opening of some depth, and under it the room between panes, devices and floor.
 * Metres; x and y from the inner front-left corner, z = 0 at the rim and up. The clearance for fingers is taken off already.
 * Above the rim nothing is in the way.
 *
 * @param opening what lies between the rim and {@code thicknessM} below it must be within
 * @param room what lies below that must be within
 * @param thicknessM how far down from the rim the opening is this narrow
 * @param depthM from the rim to what rock stands on
 */
public record Gate(Rectangle opening, Rectangle room, double thicknessM, double depthM) {

  /** Least and greatest x and y, metres. */
  public record Rectangle(double x0, double y0, double x1, double y1) {
    private Rectangle within(double by) {
      return new Rectangle(x0 + by, y0 + by, x1 - by, y1 - by);
    }

    private double area() {
      return Math.max(0, x1 - x0) * Math.max(0, y1 - y0);
    }

    /** The largest part beside a rectangle that is taken. */
    private Rectangle beside(Rectangle taken) {
      if (taken.x0 >= x1 || taken.x1 <= x0 || taken.y0 >= y1 || taken.y1 <= y0) return this;
      Rectangle best = new Rectangle(x0, y0, taken.x0, y1);
      for (Rectangle r : new Rectangle[] {
          new Rectangle(taken.x1, y0, x1, y1), new Rectangle(x0, y0, x1, taken.y0), new Rectangle(x0, taken.y1, x1, y1)}) {
        if (r.area() > best.area()) best = r;
      }
      return best;
    }
  }

  /**
   * The way through one opening of a scene's tank. A device takes the whole height above and below it, so that what is free
   * stays a rectangle; this errs to the safe side.
   */
  static Gate of(Scene scene, Tank.Opening o) {
    Tank tank = scene.tank();
    double clear = 1e-3 * scene.settings().get(Setting.OPENING_CLEAR_MM);
    double thick = 1e-3 * braceMm(scene);
    Rectangle opening = new Rectangle(
        o.xMm() * 1e-3, o.yMm() * 1e-3, (o.xMm() + o.lengthMm()) * 1e-3, (o.yMm() + o.widthMm()) * 1e-3);
    Rectangle room = new Rectangle(0, 0, tank.lengthMm() * 1e-3, tank.widthMm() * 1e-3);
    for (Scene.Device d : scene.devices()) {
      Rectangle taken = new Rectangle(d.atMm().x() * 1e-3, d.atMm().y() * 1e-3,
          (d.atMm().x() + d.sizeMm().x()) * 1e-3, (d.atMm().y() + d.sizeMm().y()) * 1e-3);
      room = room.beside(taken);
      boolean high = (d.atMm().z() + d.sizeMm().z()) * 1e-3 > tank.heightMm() * 1e-3 - thick;
      if (high) opening = opening.beside(taken);
    }
    return new Gate(opening.within(clear), room.within(clear), thick, (tank.heightMm() - scene.floor().topMm()) * 1e-3);
  }

  /** How far down from the rim its braces make the opening narrow, mm; never less than the side glass. */
  static double braceMm(Scene scene) {
    return Math.max(scene.settings().get(Setting.BRACE_MM), scene.tank().sideGlassMm());
  }

  /** The same with that much less on each side of opening and room, metres. */
  Gate narrowed(double byM) {
    return new Gate(opening.within(byM), room.within(byM), thicknessM, depthM);
  }

  /** Whether another is the same, or the same half-way round the tank: what was not found here is not sought there. */
  boolean likeness(Gate o) {
    return equals(o) || thicknessM == o.thicknessM && depthM == o.depthM && room.equals(o.room)
        && near(opening.x0 - room.x0, room.x1 - o.opening.x1) && near(room.x1 - opening.x1, o.opening.x0 - room.x0)
        && near(opening.y0 - room.y0, room.y1 - o.opening.y1) && near(room.y1 - opening.y1, o.opening.y0 - room.y0);
  }

  private static boolean near(double a, double b) {
    return Math.abs(a - b) < Tolerances.LEAST_ROOM_M;
  }

  /** Sides of the opening, metres; not above nought when nothing passes. */
  double lengthM() {
    return opening.x1 - opening.x0;
  }

  double widthM() {
    return opening.y1 - opening.y0;
  }
}
