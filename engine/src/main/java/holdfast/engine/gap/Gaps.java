package holdfast.engine.gap;

import holdfast.engine.contact.HullDistance;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.TankSolids;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;

/**
 * All distances that are kept, each beside its limit, in the order of rocks, then of panes or devices.
 *
 * @param panes every rock to every pane
 * @param devices every rock to every device
 * @param heights every rock's top
 * @param reaches how far an arm must reach for every rock
 * @param rooms growing room above every living rock
 */
public record Gaps(
    List<PaneGap> panes, List<DeviceGap> devices, List<RockHeight> heights, List<ArmReach> reaches,
    List<GrowingRoom> rooms) {

  private static final double MM = 1e-3;

  public Gaps {
    panes = List.copyOf(panes);
    devices = List.copyOf(devices);
    heights = List.copyOf(heights);
    reaches = List.copyOf(reaches);
    rooms = List.copyOf(rooms);
  }

  /**
   * A rock and a pane. Exact: a convex body is nearest to a plane with a corner.
   *
   * @param rock number of the placement
   * @param distanceM from the inner face; below zero the rock sticks into the glass
   * @param requiredM the gap asked for; zero on panes that rock may touch
   * @param mayTouch the scene lets rock lean against this pane
   */
  public record PaneGap(
      int rock, String name, Side side, double distanceM, double requiredM, boolean mayTouch, Vec3 onRock, Vec3 onPane) {
    /** On a pane that it may touch it always is: a rock that sticks into the glass is told of as an overlap. */
    public boolean kept() {
      return mayTouch || distanceM >= requiredM - Tolerances.ROUNDING_M;
    }
  }

  /**
   * A rock and a device. Exact over all lobes.
   *
   * @param distanceM below zero they overlap
   */
  public record DeviceGap(
      int rock, String name, String device, double distanceM, double requiredM, Vec3 onRock, Vec3 onDevice) {
    public boolean kept() {
      return distanceM >= requiredM - Tolerances.ROUNDING_M;
    }
  }

  /**
   * A rock's highest point.
   *
   * @param topM above the inner bottom
   * @param limitM the share of the water's depth that rock may fill
   */
  public record RockHeight(int rock, String name, double topM, double limitM, Vec3 top) {
    public boolean kept() {
      return topM <= limitM + Tolerances.ROUNDING_M;
    }
  }

  /**
   * How far an arm reaches from the rim's opening to a rock: straight lines from the nearest place of the nearest
   * opening; rocks in the way are not seen.
   *
   * @param nearestM to its nearest point: it can be touched
   * @param farthestM to its farthest corner: it can be held all round and its foot be reached
   */
  public record ArmReach(int rock, String name, double nearestM, double farthestM, double limitM) {
    public boolean kept() {
      return farthestM <= limitM + Tolerances.ROUNDING_M;
    }
  }

  /** Measures the rocks of a scene where they are placed. */
  public static Gaps of(Scene scene, List<PlacedRock> placed) {
    List<PaneGap> panes = new ArrayList<>();
    List<DeviceGap> devices = new ArrayList<>();
    List<RockHeight> heights = new ArrayList<>();
    List<ArmReach> reaches = new ArrayList<>();
    List<Solid> fixed = TankSolids.of(scene);
    List<Solid> boxes = fixed.subList(fixed.size() - scene.devices().size(), fixed.size());
    List<Hull> openings = openings(scene.tank());
    for (PlacedRock p : placed) {
      for (Side side : Side.values()) panes.add(pane(scene, p, side));
      for (int d = 0; d < boxes.size(); d++) devices.add(device(p, scene.devices().get(d), boxes.get(d)));
      heights.add(height(scene, p));
      reaches.add(reach(p, openings, scene.settings().get(Setting.REACH_MM) * MM));
    }
    return new Gaps(panes, devices, heights, reaches, GrowingRoom.of(scene, placed));
  }

  /** The gap that rock must keep from a pane: for people's eyes or for the rest, and never less than the cleaner needs. */
  public static double requiredM(Scene scene, Side side) {
    Settings s = scene.settings();
    if (scene.tank().mayTouch().contains(side)) return 0;
    double gap = s.get(scene.tank().viewedFrom().contains(side) ? Setting.GAP_VIEWED_MM : Setting.GAP_OTHER_MM);
    return Math.max(gap, s.get(Setting.GAP_CLEANER_MM)) * MM;
  }

  private static PaneGap pane(Scene scene, PlacedRock p, Side side) {
    PaneFrame frame = PaneFrame.of(scene.tank(), side);
    Vec3 nearest = farthestAlong(p, side.outward());
    return new PaneGap(p.index(), p.rock().name(), side, frame.depth(nearest), requiredM(scene, side),
        scene.tank().mayTouch().contains(side), nearest, frame.foot(nearest));
  }

  private static DeviceGap device(PlacedRock p, Scene.Device device, Solid box) {
    HullDistance d = HullDistance.between(p.lobes(), box.lobes());
    return new DeviceGap(p.index(), p.rock().name(), device.name(), d.distanceM(), device.clearMm() * MM, d.onA(), d.onB());
  }

  private static RockHeight height(Scene scene, PlacedRock p) {
    Vec3 top = farthestAlong(p, Vec3.Z);
    double limit = scene.settings().get(Setting.HEIGHT_SHARE) * scene.water().levelMm() * MM;
    return new RockHeight(p.index(), p.rock().name(), top.z(), limit, top);
  }

  private static ArmReach reach(PlacedRock p, List<Hull> openings, double limit) {
    double nearest = Double.POSITIVE_INFINITY;
    double farthest = Double.POSITIVE_INFINITY;
    for (Hull opening : openings) {
      nearest = Math.min(nearest, Math.max(0, HullDistance.between(p.lobes(), List.of(opening)).distanceM()));
      double most = 0;
      // The distance to a convex set is a convex function: over a lobe it is largest at a corner.
      for (Hull lobe : p.lobes()) for (Vec3 c : lobe.corners()) most = Math.max(most, distanceToBox(c, opening));
      farthest = Math.min(farthest, most);
    }
    return new ArmReach(p.index(), p.rock().name(), nearest, farthest, limit);
  }

  private static double distanceToBox(Vec3 p, Hull box) {
    double dx = Math.max(0, Math.max(p.x() - box.reach(Vec3.X), -box.reach(Vec3.X.negated()) - p.x()));
    double dy = Math.max(0, Math.max(p.y() - box.reach(Vec3.Y), -box.reach(Vec3.Y.negated()) - p.y()));
    double dz = Math.max(0, Math.max(p.z() - box.reach(Vec3.Z), -box.reach(Vec3.Z.negated()) - p.z()));
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  /** The openings as boxes that stand on the rim. */
  private static List<Hull> openings(Tank tank) {
    List<Tank.Opening> list = tank.openings().isEmpty()
        ? List.of(new Tank.Opening(0, 0, tank.lengthMm(), tank.widthMm())) : tank.openings();
    List<Hull> boxes = new ArrayList<>();
    double rim = tank.heightMm() * MM;
    for (Tank.Opening o : list) {
      List<Vec3> c = new ArrayList<>();
      for (double z : new double[] {rim, rim + 1}) {
        for (double y : new double[] {o.yMm(), o.yMm() + o.widthMm()}) {
          for (double x : new double[] {o.xMm(), o.xMm() + o.lengthMm()}) c.add(new Vec3(x * MM, y * MM, z));
        }
      }
      HullBuilder.build(c).match(boxes::add, reason -> false);
    }
    return boxes;
  }

  private static Vec3 farthestAlong(PlacedRock p, Vec3 d) {
    Vec3 best = null;
    for (Hull h : p.lobes()) for (Vec3 c : h.corners()) if (best == null || c.dot(d) > best.dot(d)) best = c;
    return best;
  }
}
