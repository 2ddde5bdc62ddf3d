package holdfast.app.view.draw;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** The tank in faces and lines, metres: bottom, floor, sand, water, devices, panes, rim and braces. */
final class TankParts {
  final Facets ground = new Facets();
  final Facets bottom = new Facets();
  final Facets floor = new Facets();
  final Facets sand = new Facets();
  final Facets water = new Facets();
  final Facets devices = new Facets();
  final Facets glass = new Facets();
  final List<Wire> wires = new ArrayList<>();
  final float[] cells;
  private final Scene scene;
  private final double length;
  private final double width;
  private final double height;
  private final double side;
  private final double under;

  TankParts(Scene scene) {
    this.scene = scene;
    Tank t = scene.tank();
    length = t.lengthMm() / 1e3;
    width = t.widthMm() / 1e3;
    height = t.heightMm() / 1e3;
    side = t.sideGlassMm() / 1e3;
    under = t.bottomGlassMm() / 1e3;
    Floor.Extent e = scene.floor().extentIn(t);
    cells = new float[] {(float) (e.xMm() / 1e3), (float) (e.yMm() / 1e3), (float) (scene.floor().cellMm() / 1e3),
        (float) (scene.floor().wallMm() / 1e3)};
    ground();
    bottom();
    floor(e);
    sand();
    water();
    devices();
    panes();
    braces();
  }

  private void ground() {
    double r = 1.4 * Math.max(length, width);
    ground.sheet(length / 2 - r, width / 2 - r, length / 2 + r, width / 2 + r, -under - 0.0005, Palette.INK.solid(0.22));
  }

  private void bottom() {
    bottom.box(new Vec3(-side, -side, -under), new Vec3(length + side, width + side, 0), Palette.BOTTOM, "lrfbu");
  }

  private void floor(Floor.Extent e) {
    if (scene.floor().kind() == Floor.Kind.BARE) return;
    Vec3 lo = new Vec3(e.xMm(), e.yMm(), 0.2).times(1e-3);
    Vec3 hi = new Vec3(e.xMm() + e.lengthMm(), e.yMm() + e.widthMm(), scene.floor().thicknessMm()).times(1e-3);
    floor.box(lo, hi, Palette.LOUVRE, "lrfbu");
  }

  private void sand() {
    double z = scene.sand().depthMm() / 1e3;
    if (z <= 0) return;
    double in = 0.0004;
    sand.box(new Vec3(in, in, 0.0006), new Vec3(length - in, width - in, z), Palette.SAND.solid(0.62), "u");
    sand.box(new Vec3(in, in, 0.0006), new Vec3(length - in, width - in, z), Palette.SAND.solid(0.42), "lrfb");
  }

  private void water() {
    double z = scene.water().levelMm() / 1e3;
    if (z <= 0) return;
    water.sheet(0, 0, length, width, z, Palette.WATER.solid(0.13));
    Colour body = Palette.WATER.solid(0.035);
    water.box(new Vec3(0.0002, 0.0002, 0.001), new Vec3(length - 0.0002, width - 0.0002, z), body, "lrfb");
    rectangle(0, 0, length, width, z, 1.5, Palette.WATER_LINE.solid(0.75));
  }

  private void devices() {
    for (Scene.Device d : scene.devices()) {
      Vec3 lo = d.atMm().times(1e-3);
      Vec3 hi = lo.plus(d.sizeMm().times(1e-3));
      devices.box(lo, hi, Palette.DEVICE.solid(0.55), "lrfbu");
      frame(lo, hi, 1.2, Palette.INK_SOFT.solid(0.8));
    }
  }

  private void panes() {
    Colour tint = Palette.GLASS.solid(0.055);
    Colour edge = Palette.GLASS_EDGE.solid(0.55);
    Vec3 outLo = new Vec3(-side, -side, 0);
    Vec3 outHi = new Vec3(length + side, width + side, height);
    glass.box(outLo, outHi, tint, "lrfb");
    // The sawn rim: four strips of glass seen end on.
    glass.sheet(-side, -side, length + side, 0, height, edge);
    glass.sheet(-side, width, length + side, width + side, height, edge);
    glass.sheet(-side, 0, 0, width, height, edge);
    glass.sheet(length, 0, length + side, width, height, edge);
    Colour line = Palette.GLASS_EDGE.solid(0.8);
    rectangle(-side, -side, length + side, width + side, height, 1.3, line);
    rectangle(0, 0, length, width, height, 0.9, line.solid(0.5));
    rectangle(-side, -side, length + side, width + side, -under, 1.3, line);
    for (double x : new double[] {-side, length + side}) {
      for (double y : new double[] {-side, width + side}) {
        wires.add(new Wire(new Vec3(x, y, -under), new Vec3(x, y, height), 1.3, line));
      }
    }
    for (double x : new double[] {0, length}) {
      for (double y : new double[] {0, width}) {
        wires.add(new Wire(new Vec3(x, y, 0), new Vec3(x, y, height), 0.9, line.solid(0.35)));
      }
    }
  }

  /** Rim and braces are what the openings leave of the top. */
  private void braces() {
    List<Tank.Opening> openings = scene.tank().openings();
    if (openings.isEmpty()) return;
    TreeSet<Double> xs = new TreeSet<>(List.of(0.0, length));
    TreeSet<Double> ys = new TreeSet<>(List.of(0.0, width));
    for (Tank.Opening o : openings) {
      xs.add(o.xMm() / 1e3);
      xs.add((o.xMm() + o.lengthMm()) / 1e3);
      ys.add(o.yMm() / 1e3);
      ys.add((o.yMm() + o.widthMm()) / 1e3);
    }
    List<Double> x = List.copyOf(xs);
    List<Double> y = List.copyOf(ys);
    double z = height - 0.004;
    for (int i = 0; i + 1 < x.size(); i++) {
      for (int j = 0; j + 1 < y.size(); j++) {
        double mx = 500 * (x.get(i) + x.get(i + 1));
        double my = 500 * (y.get(j) + y.get(j + 1));
        boolean open = openings.stream().anyMatch(o ->
            mx > o.xMm() && mx < o.xMm() + o.lengthMm() && my > o.yMm() && my < o.yMm() + o.widthMm());
        if (!open) glass.sheet(x.get(i), y.get(j), x.get(i + 1), y.get(j + 1), z, Palette.GLASS.solid(0.5));
      }
    }
    for (Tank.Opening o : openings) {
      rectangle(o.xMm() / 1e3, o.yMm() / 1e3, (o.xMm() + o.lengthMm()) / 1e3, (o.yMm() + o.widthMm()) / 1e3, z, 1.1,
          Palette.GLASS_EDGE.solid(0.75));
    }
  }

  private void rectangle(double x0, double y0, double x1, double y1, double z, double px, Colour c) {
    Vec3[] p = {new Vec3(x0, y0, z), new Vec3(x1, y0, z), new Vec3(x1, y1, z), new Vec3(x0, y1, z)};
    for (int i = 0; i < 4; i++) wires.add(new Wire(p[i], p[(i + 1) % 4], px, c));
  }

  private void frame(Vec3 lo, Vec3 hi, double px, Colour c) {
    rectangle(lo.x(), lo.y(), hi.x(), hi.y(), lo.z(), px, c);
    rectangle(lo.x(), lo.y(), hi.x(), hi.y(), hi.z(), px, c);
    for (double x : new double[] {lo.x(), hi.x()}) {
      for (double y : new double[] {lo.y(), hi.y()}) {
        wires.add(new Wire(new Vec3(x, y, lo.z()), new Vec3(x, y, hi.z()), px, c));
      }
    }
  }
}
