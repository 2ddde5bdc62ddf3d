package holdfast.app.report.sheet;

import holdfast.engine.build.Stander;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.JointSpec.Bond;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Rock.Kind;
import holdfast.model.scene.Rock.Look;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented layouts for the sheet's tests: a ridge in a long tank, an arch and pillar in a cube, a braced display. */
final class SheetFixture {
  private final List<Rock> rocks = new ArrayList<>();
  private final List<Placement> places = new ArrayList<>();
  private final List<JointSpec> joints = new ArrayList<>();

  private SheetFixture rock(
      String name, Kind kind, Look look, double l, double w, double h, double kg, double x, double y, double z, double turn) {
    rocks.add(new Rock(name, kind, new Rock.Measured(look, l, w, h, rocks.size() + 1),
        new Rock.Weighed(kg, Rock.Weighing.DRY, OptionalDouble.empty()), 0, false, false, OptionalDouble.empty()));
    places.add(new Placement(name, new Vec3(x, y, z), Quat.ofDegreesZyx(turn, 0, 0), false));
    return this;
  }

  private SheetFixture joint(String a, String b, Bond bond, double ml) {
    joints.add(JointSpec.paste(a, b, bond, ml));
    return this;
  }

  static Scene ridge() {
    SheetFixture f = new SheetFixture()
        .rock("broad slab", Kind.DRY, Look.SLAB, 300, 200, 120, 5.6, 220, 220, 10, 10)
        .rock("long slab", Kind.DRY, Look.SLAB, 270, 180, 110, 4.3, 520, 220, 10, -15)
        .rock("chunk", Kind.DRY, Look.BLOCK, 240, 170, 140, 4.6, 810, 215, 10, 30)
        .rock("wide shelf", Kind.DRY, Look.SHELF, 320, 170, 60, 2.8, 480, 220, 120, 0)
        .rock("small shelf", Kind.DRY, Look.SHELF, 260, 150, 50, 1.7, 800, 215, 150, 20)
        .rock("tall chunk", Kind.DRY, Look.BLOCK, 180, 150, 150, 2.9, 210, 220, 130, 0)
        .rock("antler", Kind.DRY, Look.BRANCH, 170, 140, 150, 1.9, 520, 225, 180, 40)
        .rock("green crown", Kind.LIVE, Look.ROUND, 150, 130, 110, 2.0, 205, 215, 280, 0)
        .rock("purple cap", Kind.LIVE, Look.ROUND, 130, 110, 100, 1.4, 800, 215, 200, 0)
        .joint("broad slab", "tall chunk", Bond.MORTAR, 90).joint("tall chunk", "green crown", Bond.PUTTY, 25)
        .joint("long slab", "wide shelf", Bond.MORTAR, 60).joint("wide shelf", "antler", Bond.MORTAR, 40)
        .joint("chunk", "small shelf", Bond.MORTAR, 45);
    Tank tank = new Tank(1190, 440, 480, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(),
        List.of(Side.FRONT, Side.RIGHT, Side.BACK), List.of());
    return f.scene("Peninsula ridge", tank, 30, 455, List.of(),
        List.of(new Scene.Lamp("left lamp", new Vec3(300, 220, 700), 300, 200, 1),
            new Scene.Lamp("right lamp", new Vec3(890, 220, 700), 300, 200, 1)),
        Settings.DEFAULT.with(Setting.PRICE_DRY, 7).with(Setting.PRICE_LIVE, 18).with(Setting.PRICE_STARTER, 0.2));
  }

  static Scene cube() {
    SheetFixture f = new SheetFixture()
        .rock("foot", Kind.DRY, Look.BLOCK, 260, 240, 120, 5.6, 170, 420, 10, 0)
        .rock("waist", Kind.DRY, Look.BLOCK, 180, 170, 130, 2.9, 170, 420, 130, 20)
        .rock("head", Kind.DRY, Look.BLOCK, 200, 160, 110, 2.4, 172, 418, 260, 0)
        .rock("left leg", Kind.DRY, Look.BLOCK, 170, 150, 180, 3.3, 230, 150, 10, 0)
        .rock("right leg", Kind.DRY, Look.BLOCK, 150, 150, 180, 2.9, 450, 160, 10, 0)
        .rock("span", Kind.DRY, Look.SHELF, 340, 130, 80, 2.7, 340, 155, 190, 2)
        .rock("moss cap", Kind.LIVE, Look.ROUND, 150, 130, 90, 1.7, 340, 155, 270, 0);
    f.joints.add(new JointSpec("foot", "waist", Bond.ROD, 0, 10, 40, true));
    f.joints.add(new JointSpec("waist", "head", Bond.MORTAR, 40, 8, 40, true));
    f.joint("left leg", "span", Bond.MORTAR, 40).joint("right leg", "span", Bond.MORTAR, 40).joint("span", "moss cap",
        Bond.GEL, 6);
    Tank tank = new Tank(580, 580, 580, 10, 12, Tank.BottomSupport.FULL, false, false, List.of(),
        List.of(Side.FRONT, Side.LEFT), List.of());
    return f.scene("Cube: pillar and arch", tank, 40, 550, List.of(),
        List.of(new Scene.Lamp("lamp", new Vec3(290, 290, 800), 300, 300, 1)), Settings.DEFAULT);
  }

  static Scene display() {
    SheetFixture f = new SheetFixture()
        .rock("west base", Kind.DRY, Look.BLOCK, 380, 280, 160, 11.5, 330, 260, 10, 0)
        .rock("middle base", Kind.DRY, Look.BLOCK, 380, 280, 160, 11.5, 900, 230, 10, 90)
        .rock("east base", Kind.DRY, Look.BLOCK, 380, 280, 160, 11.5, 1430, 260, 10, 0)
        .rock("west block", Kind.DRY, Look.BLOCK, 300, 240, 150, 7.4, 330, 260, 170, 15)
        .rock("east block", Kind.DRY, Look.BLOCK, 300, 240, 150, 7.4, 1430, 260, 170, -15)
        .rock("west shelf", Kind.DRY, Look.SHELF, 420, 260, 70, 5.6, 330, 260, 320, 0)
        .rock("east shelf", Kind.DRY, Look.SHELF, 420, 260, 70, 5.6, 1430, 260, 320, 0)
        .rock("big living", Kind.LIVE, Look.ROUND, 200, 180, 150, 4.6, 860, 220, 170, 0)
        .rock("small living", Kind.LIVE, Look.ROUND, 170, 160, 130, 3.2, 930, 320, 170, 0)
        .joint("west base", "west block", Bond.MORTAR, 100).joint("west block", "west shelf", Bond.MORTAR, 100)
        .joint("east base", "east block", Bond.MORTAR, 100).joint("east block", "east shelf", Bond.MORTAR, 100)
        .joint("middle base", "big living", Bond.PUTTY, 60).joint("middle base", "small living", Bond.PUTTY, 60);
    Tank tank = new Tank(1770, 570, 580, 15, 15, Tank.BottomSupport.FULL, false, false,
        List.of(new Tank.Opening(80, 80, 730, 410), new Tank.Opening(960, 80, 730, 410)), List.of(Side.FRONT), List.of());
    return f.scene("Shop display", tank, 30, 545,
        List.of(new Scene.Device("overflow", new Vec3(685, 440, 0), new Vec3(400, 130, 560), 100)), List.of(),
        Settings.DEFAULT.with(Setting.PANEL_LENGTH_MM, 1200));
  }

  /** An L of two bars: by its hull too wide for the opening. */
  static Scene hook() {
    SheetFixture f = new SheetFixture()
        .rock("sill", Kind.DRY, Look.BOX, 300, 100, 60, 2.9, 600, 250, 10, 0)
        .rock("post", Kind.DRY, Look.BOX, 60, 100, 240, 2.3, 480, 250, 70, 0)
        .rock("stone", Kind.DRY, Look.BOX, 100, 100, 60, 1.0, 900, 250, 10, 0)
        .joint("sill", "post", Bond.MORTAR, 100);
    Tank tank = new Tank(1200, 500, 500, 10, 12, Tank.BottomSupport.FULL, false, false,
        List.of(new Tank.Opening(400, 150, 150, 130)), List.of(Side.FRONT), List.of());
    return f.scene("Hook", tank, 0, 450, List.of(), List.of(), Settings.DEFAULT);
  }

  private Scene scene(
      String name, Tank tank, double sand, double water, List<Scene.Device> devices, List<Scene.Lamp> lamps, Settings settings) {
    return new Scene(name, tank, Floor.DEFAULT, new Scene.Sand(sand, 1.5), new Scene.Water(water, 35, 25), devices, lamps,
        rocks, places, joints, settings);
  }

  /** A judge that lets everything stand but a span with a cap on it before its joints have set. */
  static Stander stander(Scene scene) {
    List<String> names = scene.placements().stream().map(Placement::rock).toList();
    int span = names.indexOf("span");
    int cap = names.indexOf("moss cap");
    return (placed, cured) -> !(placed.contains(span) && placed.contains(cap)) || cured.contains(2) || cured.contains(3);
  }

  static SheetContent content(Scene scene) {
    return SheetContent.of(scene, Shapes.of(scene, MeshLoader.NONE), Optional.empty(), stander(scene));
  }
}
