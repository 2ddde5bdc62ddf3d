package holdfast.engine.contact;

import holdfast.engine.contact.Solid.Surface;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.HullResult;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;

/**
 * What rock can bear on besides rock: the floor, the four panes, the devices; fixed bodies, metres.
 *
 * <p>The bottom pane lies under all of the tank with its top at z = 0; a grid or sheet covers its extent. The panes are
 * as thick as the glass, at least {@link #LEAST_GLASS_M}, so that a rock sketched into one is pushed back the way it
 * came.
 */
public final class TankSolids {
  public static final String BOTTOM = "bottom pane";
  public static final String GRID = "floor grid";
  public static final String SHEET = "floor sheet";

  /** Metres. Panes are made at least this thick: only their inner face matters here. */
  static final double LEAST_GLASS_M = 0.02;

  private static final double MM = 1e-3;

  private TankSolids() {}

  /** What a body of a scene is. */
  public enum Part { ROCK, FLOOR, PANE, DEVICE }

  /** What one of {@link SceneSolids#of} is, by its place among them: rocks and devices may be called anything. */
  public static Part part(Scene scene, List<Solid> solids, int body) {
    if (!solids.get(body).fixed()) return Part.ROCK;
    int fromLast = solids.size() - 1 - body;
    int devices = scene.devices().size();
    return fromLast < devices ? Part.DEVICE : fromLast < devices + Side.values().length ? Part.PANE : Part.FLOOR;
  }

  /** The name of a side pane. */
  public static String pane(Side side) {
    return side.word() + " pane";
  }

  /** Bottom pane; grid or sheet; front, right, back, left pane; devices in scene order. */
  public static List<Solid> of(Scene scene) {
    Tank tank = scene.tank();
    double length = tank.lengthMm() * MM;
    double width = tank.widthMm() * MM;
    double height = tank.heightMm() * MM;
    double side = Math.max(LEAST_GLASS_M, tank.sideGlassMm() * MM);
    double bottom = Math.max(LEAST_GLASS_M, tank.bottomGlassMm() * MM);
    List<Solid> solids = new ArrayList<>();
    solids.add(box(BOTTOM, Surface.GLASS, new Vec3(-side, -side, -bottom), new Vec3(length + side, width + side, 0)));
    Floor floor = scene.floor();
    if (floor.topMm() > 0) {
      Floor.Extent e = floor.extentIn(tank);
      boolean grid = floor.kind() == Floor.Kind.GRID;
      Vec3 low = new Vec3(e.xMm(), e.yMm(), 0).times(MM);
      Vec3 high = new Vec3(e.xMm() + e.lengthMm(), e.yMm() + e.widthMm(), floor.topMm()).times(MM);
      if (high.x() > low.x() && high.y() > low.y()) {
        solids.add(box(grid ? GRID : SHEET, grid ? Surface.GRID : Surface.SHEET, low, high));
      }
    }
    solids.add(box(pane(Side.FRONT), Surface.GLASS, new Vec3(-side, -side, 0), new Vec3(length + side, 0, height)));
    solids.add(box(pane(Side.RIGHT), Surface.GLASS, new Vec3(length, 0, 0), new Vec3(length + side, width, height)));
    solids.add(box(pane(Side.BACK), Surface.GLASS, new Vec3(-side, width, 0), new Vec3(length + side, width + side, height)));
    solids.add(box(pane(Side.LEFT), Surface.GLASS, new Vec3(-side, 0, 0), new Vec3(0, width, height)));
    for (Scene.Device d : scene.devices()) {
      solids.add(box(d.name(), Surface.SHEET, d.atMm().times(MM), d.atMm().plus(d.sizeMm()).times(MM)));
    }
    return List.copyOf(solids);
  }

  private static Solid box(String name, Surface surface, Vec3 low, Vec3 high) {
    return new Solid(name, surface, true, List.of(boxHull(name, low, high)));
  }

  private static Hull boxHull(String name, Vec3 low, Vec3 high) {
    List<Vec3> corners = new ArrayList<>();
    for (double z : new double[] {low.z(), high.z()}) {
      for (double y : new double[] {low.y(), high.y()}) {
        for (double x : new double[] {low.x(), high.x()}) corners.add(new Vec3(x, y, z));
      }
    }
    HullResult result = HullBuilder.build(corners);
    return result.match(h -> h, reason -> {
      // The reader lets no part of a tank through that has no volume.
      throw new IllegalArgumentException("'" + name + "' is no box: " + reason);
    });
  }
}
