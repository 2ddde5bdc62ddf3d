package holdfast.app.view.draw;

import holdfast.app.view.gl.Mesh;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.util.List;

/** The tank's faces on the graphics side, made again only when tank, floor, sand, water or devices change. */
final class TankMeshes implements AutoCloseable {
  final Mesh ground = new Mesh(3, 3, 4);
  final Mesh bottom = new Mesh(3, 3, 4);
  final Mesh floor = new Mesh(3, 3, 4);
  final Mesh sand = new Mesh(3, 3, 4);
  final Mesh water = new Mesh(3, 3, 4);
  final Mesh devices = new Mesh(3, 3, 4);
  final Mesh glass = new Mesh(3, 3, 4);
  private List<Object> made = List.of();
  private List<Wire> wires = List.of();
  private float[] cells = new float[4];
  private float[] middle = new float[2];
  private float[] half = new float[2];

  void update(Scene s) {
    List<Object> wanted = List.of(s.tank(), s.floor(), s.sand(), s.water(), s.devices());
    if (wanted.equals(made)) return;
    TankParts p = new TankParts(s);
    ground.fill(p.ground.data());
    bottom.fill(p.bottom.data());
    floor.fill(p.floor.data());
    sand.fill(p.sand.data());
    water.fill(p.water.data());
    devices.fill(p.devices.data());
    glass.fill(p.glass.data());
    wires = List.copyOf(p.wires);
    cells = p.cells;
    Tank t = s.tank();
    middle = new float[] {(float) t.lengthMm() / 2e3f, (float) t.widthMm() / 2e3f};
    half = new float[] {(float) t.lengthMm() / 2e3f, (float) t.widthMm() / 2e3f};
    made = wanted;
  }

  List<Wire> wires() {
    return wires;
  }

  float[] cells() {
    return cells;
  }

  float[] middle() {
    return middle;
  }

  float[] half() {
    return half;
  }

  @Override
  public void close() {
    for (Mesh m : List.of(ground, bottom, floor, sand, water, devices, glass)) m.close();
  }
}
