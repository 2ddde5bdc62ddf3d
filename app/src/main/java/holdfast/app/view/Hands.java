package holdfast.app.view;

import holdfast.app.edit.Edit;
import holdfast.app.edit.Lowering;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Picking;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Stone;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Pose;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the pointer does in the picture: circle, slide and zoom the camera; choose a stone, drag it over whatever lies
 * below, lift it, turn it by its rings; pull the arrow of a bump. Pixels are those of the picture, from its top left.
 */
final class Hands {
  /** Buttons of the pointer. */
  enum Button { MAIN, OTHER, MIDDLE }

  /** Held keys that change what a drag does. */
  record Keys(boolean shift, boolean alt) {}

  private static final double DEGREES_PER_PX = 0.35;
  private static final double ZOOM_PER_NOTCH = 0.88;
  private static final double CLICK_PX = 4;
  private static final double COARSE_DEG = 15;
  /** The arrow for lifting stands out beyond the rings by about this much. */
  private static final double NEAR_PX = 60;

  private sealed interface Doing {
    record Nothing() implements Doing {}

    record Circle(double startX, double startY, boolean overStone) implements Doing {}

    record Slide() implements Doing {}

    record Carry(Stone stone, Placement from, Vec3 grabbed, long gesture, List<Hull> others) implements Doing {}

    record Lift(Stone stone, Placement from, double startY, long gesture) implements Doing {}

    record Turn(Stone stone, Placement from, Handles.Grip grip, double startDeg, long gesture) implements Doing {}

    record Pull(Stone stone, Vec3 at) implements Doing {}
  }

  /** The arrow of a bump as it is pulled: where it hits, which way and how hard. */
  record Pulled(String rock, Vec3 at, Vec3 impulseNs) {}

  private final Workbench bench;
  private Doing doing = new Doing.Nothing();
  private double lastX;
  private double lastY;
  private Optional<Handles.Grip> lit = Optional.empty();
  private Optional<Pulled> pulled = Optional.empty();
  private Optional<Pulled> released = Optional.empty();
  private boolean near;
  private float scale = 1;

  Hands(Workbench bench) {
    this.bench = bench;
  }

  void setScale(float s) {
    scale = s;
  }

  Optional<Handles.Grip> lit() {
    return lit;
  }

  /** The pointer is about the chosen stone, so its handles are worth showing. */
  boolean near() {
    return near || carrying();
  }

  Optional<Pulled> pulled() {
    return pulled;
  }

  /** A bump that was let go since the last call. */
  Optional<Pulled> takeReleased() {
    Optional<Pulled> r = released;
    released = Optional.empty();
    return r;
  }

  /** A stone is being moved. */
  boolean carrying() {
    return doing instanceof Doing.Carry || doing instanceof Doing.Lift || doing instanceof Doing.Turn;
  }

  /** A stone is being turned or lifted by a handle. */
  boolean turning() {
    return doing instanceof Doing.Lift || doing instanceof Doing.Turn;
  }

  boolean circling() {
    return doing instanceof Doing.Circle;
  }

  boolean idle() {
    return doing instanceof Doing.Nothing;
  }

  // -- events -------------------------------------------------------------------------------------------------------

  void press(Button button, double x, double y, Projector eye, Keys keys) {
    lastX = x;
    lastY = y;
    if (!idle()) return;
    if (button != Button.MAIN) {
      doing = button == Button.OTHER || keys.shift() ? new Doing.Slide() : new Doing.Circle(x, y, true);
      return;
    }
    Optional<Stone> chosen = bench.chosenStone();
    if (bench.mode() == Workbench.Mode.ARRANGE && chosen.isPresent() && !locked()) {
      Optional<Handles.Grip> grip = Handles.at(chosen.get(), eye, x, y, scale);
      if (grip.isPresent()) {
        doing = grasp(chosen.get(), grip.get(), x, y, eye);
        return;
      }
    }
    Optional<Picking.Hit> hit = Picking.stone(eye.ray(x, y), bench.tableau().stones());
    if (hit.isEmpty()) {
      doing = new Doing.Circle(x, y, false);
      return;
    }
    Stone s = hit.get().stone();
    bench.choose(Optional.of(s.name()));
    if (bench.mode() == Workbench.Mode.BUMP) {
      doing = new Doing.Pull(s, hit.get().point());
    } else if (bench.mode() == Workbench.Mode.ARRANGE && !locked()) {
      List<Hull> others = new ArrayList<>();
      for (Stone o : bench.tableau().stones()) {
        if (!o.name().equals(s.name())) for (Hull h : o.lobes()) others.add(h.moved(o.pose()));
      }
      doing = new Doing.Carry(s, bench.chosenPlacement().orElseThrow(), hit.get().point(), bench.newGesture(), others);
    } else {
      doing = new Doing.Circle(x, y, true);
    }
  }

  private boolean locked() {
    return bench.chosenPlacement().map(Placement::locked).orElse(true);
  }

  private Doing grasp(Stone s, Handles.Grip grip, double x, double y, Projector eye) {
    Placement from = bench.chosenPlacement().orElseThrow();
    if (grip == Handles.Grip.LIFT) return new Doing.Lift(s, from, y, bench.newGesture());
    return Handles.angle(s, grip, eye.ray(x, y))
        .<Doing>map(a -> new Doing.Turn(s, from, grip, a, bench.newGesture())).orElseGet(Doing.Nothing::new);
  }

  /** True when the picture has to be drawn again. */
  boolean move(double x, double y, Projector eye, Keys keys) {
    double dx = x - lastX;
    double dy = y - lastY;
    lastX = x;
    lastY = y;
    if (doing instanceof Doing.Nothing) return point(x, y, eye);
    if (doing instanceof Doing.Circle) {
      bench.sight().set(bench.sight().camera().turned(-dx * DEGREES_PER_PX / scale, dy * DEGREES_PER_PX / scale));
    }
    if (doing instanceof Doing.Slide) bench.sight().set(bench.sight().camera().panned(-dx / eye.height(), dy / eye.height()));
    if (doing instanceof Doing.Carry c) carry(c, x, y, eye, keys);
    if (doing instanceof Doing.Lift l) lift(l, y, eye, keys);
    if (doing instanceof Doing.Turn t) turn(t, x, y, eye, keys);
    if (doing instanceof Doing.Pull p) pull(p, x, y, eye);
    return true;
  }

  private boolean point(double x, double y, Projector eye) {
    Optional<Handles.Grip> before = lit;
    lit = bench.mode() == Workbench.Mode.ARRANGE && !locked()
        ? bench.chosenStone().flatMap(s -> Handles.at(s, eye, x, y, scale)) : Optional.empty();
    boolean wasNear = near;
    near = bench.chosenStone().map(s -> about(s, x, y, eye)).orElse(false);
    Optional<String> under = lit.isPresent() ? Optional.empty()
        : Picking.stone(eye.ray(x, y), bench.tableau().stones()).map(h -> h.stone().name());
    return bench.hover(under) | !lit.equals(before) | near != wasNear;
  }

  private boolean about(Stone s, double x, double y, Projector eye) {
    Vec3 middle = Handles.middle(s);
    Projector.Spot p = eye.spot(middle);
    double reach = Handles.radius(s) / eye.metresPerPixel(middle) + NEAR_PX * scale;
    return p.inFront() && Math.hypot(x - p.x(), y - p.y()) < reach;
  }

  void release(double x, double y) {
    if (doing instanceof Doing.Circle c && !c.overStone() && Math.hypot(x - c.startX(), y - c.startY()) < CLICK_PX * scale) {
      bench.choose(Optional.empty());
    }
    if (doing instanceof Doing.Pull) {
      released = pulled;
      pulled = Optional.empty();
    }
    doing = new Doing.Nothing();
  }

  void scroll(double notches) {
    bench.sight().set(bench.sight().camera().zoomed(Math.pow(ZOOM_PER_NOTCH, notches)));
  }

  // -- drags --------------------------------------------------------------------------------------------------------

  private void carry(Doing.Carry c, double x, double y, Projector eye, Keys keys) {
    Camera.Ray ray = eye.ray(x, y);
    Vec3 shift;
    if (Math.abs(ray.along().z()) < 0.12) {
      // Seen level, a drag is sideways along the picture.
      Vec3 right = eye.camera().right();
      Projector.Spot start = eye.spot(c.grabbed());
      shift = right.times((x - start.x()) * eye.metresPerPixel(c.grabbed()));
    } else {
      Optional<Vec3> at = Picking.level(ray, c.grabbed().z());
      if (at.isEmpty()) return;
      shift = at.get().minus(c.grabbed());
    }
    Vec3 to = c.from().atMm().plus(new Vec3(shift.x(), shift.y(), 0).times(1e3));
    Scene scene = bench.scene();
    if (!keys.alt()) to = snapped(to, scene);
    to = kept(to, c.stone(), scene);
    double z = keys.shift() ? c.from().atMm().z() : resting(c, to, scene);
    bench.apply(new Edit.Move("move", c.stone().name(), new Vec3(to.x(), to.y(), z), c.from().turn()), c.gesture());
  }

  /** The nearest half cell of the floor grid. */
  private static Vec3 snapped(Vec3 mm, Scene scene) {
    Floor.Extent e = scene.floor().extentIn(scene.tank());
    double half = scene.floor().cellMm() / 2;
    return new Vec3(e.xMm() + Math.round((mm.x() - e.xMm()) / half) * half,
        e.yMm() + Math.round((mm.y() - e.yMm()) / half) * half, mm.z());
  }

  /** No stone is dragged through a pane. */
  private static Vec3 kept(Vec3 mm, Stone s, Scene scene) {
    Vec3 at = s.pose().at();
    double left = 1e3 * (at.x() - s.low().x());
    double right = 1e3 * (s.high().x() - at.x());
    double front = 1e3 * (at.y() - s.low().y());
    double back = 1e3 * (s.high().y() - at.y());
    return new Vec3(within(mm.x(), left, scene.tank().lengthMm() - right),
        within(mm.y(), front, scene.tank().widthMm() - back), mm.z());
  }

  private static double within(double v, double lo, double hi) {
    return hi < lo ? (lo + hi) / 2 : Math.max(lo, Math.min(hi, v));
  }

  private static double resting(Doing.Carry c, Vec3 toMm, Scene scene) {
    double high = scene.tank().heightMm() / 1e3 + 1;
    Pose p = new Pose(new Vec3(toMm.x() / 1e3, toMm.y() / 1e3, high), c.from().turn());
    double fall = Lowering.heightAbove(
        c.stone().lobes().stream().map(h -> h.moved(p)).toList(), c.others(), scene.floor().topMm() / 1e3);
    return 1e3 * (high - fall);
  }

  private void lift(Doing.Lift l, double y, Projector eye, Keys keys) {
    double mm = (l.startY() - y) * eye.metresPerPixel(Handles.middle(l.stone())) * 1e3 / Math.max(0.2, eye.camera().up().z());
    double step = keys.alt() ? 0.1 : 1;
    double floor = 1e3 * (l.stone().pose().at().z() - l.stone().low().z());
    double z = Math.max(floor, Math.round((l.from().atMm().z() + mm) / step) * step);
    bench.apply(new Edit.Move("lift", l.stone().name(), new Vec3(l.from().atMm().x(), l.from().atMm().y(), z), l.from().turn()),
        l.gesture());
  }

  private void turn(Doing.Turn t, double x, double y, Projector eye, Keys keys) {
    Optional<Double> now = Handles.angle(t.stone(), t.grip(), eye.ray(x, y));
    if (now.isEmpty()) return;
    double step = keys.shift() ? COARSE_DEG : keys.alt() ? 0.1 : 1;
    double by = Math.round((now.get() - t.startDeg()) / step) * step;
    bench.apply(turned(t.stone(), t.from(), t.grip().axis(), by), t.gesture());
  }

  /** A turn about the stone's centre of mass. */
  static Edit turned(Stone s, Placement from, Vec3 axis, double degrees) {
    Quat q = Quat.about(axis, Math.toRadians(degrees));
    Vec3 centre = from.pose().apply(s.centre());
    Vec3 at = centre.plus(q.rotate(from.pose().at().minus(centre)));
    return new Edit.Move("turn", s.name(), at.times(1e3), q.times(from.turn()).unit());
  }

  private void pull(Doing.Pull p, double x, double y, Projector eye) {
    // The arrow is pulled back like a bowstring, level, and flies the other way.
    Optional<Vec3> at = Math.abs(eye.ray(x, y).along().z()) > 0.12 ? Picking.level(eye.ray(x, y), p.at().z())
        : Optional.of(p.at().plusTimes((x - eye.spot(p.at()).x()) * eye.metresPerPixel(p.at()), eye.camera().right()));
    pulled = at.map(a -> new Pulled(p.stone().name(), p.at(), p.at().minus(a).times(BumpWords.NS_PER_METRE)));
  }
}
