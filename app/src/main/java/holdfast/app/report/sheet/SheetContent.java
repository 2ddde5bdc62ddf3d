package holdfast.app.report.sheet;

import holdfast.app.report.JointNumbers;
import holdfast.engine.bonding.JointDemands;
import holdfast.engine.build.BuildOrder;
import holdfast.engine.build.BuildPlan;
import holdfast.engine.build.Stander;
import holdfast.engine.build.Turning;
import holdfast.engine.check.CheckReport;
import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.TankSolids;
import holdfast.engine.gap.Cleaner;
import holdfast.engine.gap.DeadWater;
import holdfast.engine.gap.ReachMap;
import holdfast.engine.light.LightReport;
import holdfast.engine.supply.Supply;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.GridCells;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import holdfast.model.shape.RockBody;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Everything that the sheet says, worked out once; metres and kilograms inside, millimetres where a name says so.
 *
 * @param hulls lobes of each placed rock in the world, in the order of the placements
 * @param supply what to buy and what it weighs
 * @param light light on living rock
 * @param plan order, modules, batches
 * @param rocks one line a placed rock, in the order of building
 * @param joints one line for each joint that is fixed, in the order of the scene
 * @param resting pairs of rocks that rest on each other without being fixed
 * @param feet contact patches with the floor
 * @param demands what each joint is asked for and by which rocks pieces are lifted; empty when it was not worked out
 * @param turning ways through the opening of pieces that do not pass it on a straight lift, where one was found
 * @param deadWater pockets that water hardly reaches
 * @param cleaning what cleaners of several thicknesses reach of the panes
 * @param check the verdict, when one was worked out
 */
public record SheetContent(
    Scene scene, List<List<Hull>> hulls, Supply supply, LightReport light, BuildPlan plan,
    List<RockLine> rocks, List<JointLine> joints, List<Resting> resting, List<Foot> feet, JointDemands.Result demands,
    List<Turned> turning, List<DeadWater.Pocket> deadWater, List<Cleaning> cleaning, Optional<CheckReport> check) {

  public SheetContent {
    hulls = hulls.stream().map(List::copyOf).toList();
    rocks = List.copyOf(rocks);
    joints = List.copyOf(joints);
    resting = List.copyOf(resting);
    feet = List.copyOf(feet);
    turning = List.copyOf(turning);
    deadWater = List.copyOf(deadWater);
    cleaning = List.copyOf(cleaning);
  }

  /**
   * A placed rock.
   *
   * @param rock its number among the placements
   * @param stage when it is placed, from 1; 0 when it comes only with the pieces
   * @param carrying when it goes into the tank with its piece, from 1; 0 when rocks go straight in
   * @param sizeMm along the tank's axes, as placed
   * @param fromCell cell of its front-left end, {@code toCell} of its back-right end
   * @param underMm height of its lowest point over the inner bottom, {@code topMm} of its highest
   */
  public record RockLine(
      int rock, int stage, int carrying, String name, Rock.Kind kind, double dryKg, Vec3 sizeMm,
      String fromCell, String toCell, double underMm, double topMm) {}

  /**
   * A joint that is fixed.
   *
   * @param number its number on the sheet, from 1
   * @param index its place in the scene
   * @param at middle of its contact patch, metres; between the rocks when they do not touch
   * @param areaMm2 area of the patches; 0 when the rocks do not touch
   * @param stage stage in which it is made, from 1: of the rocks, or of the pieces when it is made in the tank after them
   * @param batch batch of mortar, from 1; 0 when it takes none
   */
  public record JointLine(
      int number, int index, JointSpec spec, Vec3 at, double areaMm2, boolean touching, int stage, int batch) {}

  /**
   * A piece that passes the opening by turning.
   *
   * @param module its number among the plan's modules
   */
  public record Turned(int module, Turning.Way way) {
    /** The opening; the whole rim where there are no braces. */
    Tank.Opening opening(Scene scene) {
      Tank t = scene.tank();
      return t.openings().isEmpty() ? new Tank.Opening(0, 0, t.lengthMm(), t.widthMm()) : t.openings().get(way.opening());
    }
  }

  /**
   * What one cleaner reaches from the rim.
   *
   * @param thicknessMm room that it needs between glass and rock
   * @param wiped share of each pane from sand to waterline, in the order of the sides
   */
  public record Cleaning(double thicknessMm, List<Double> wiped) {
    public Cleaning {
      wiped = List.copyOf(wiped);
    }
  }

  /** Two rocks that rest on each other unfixed. */
  public record Resting(String upper, String lower) {}

  /** A patch on the floor, corners in metres. */
  public record Foot(int rock, List<Vec3> polygon) {
    public Foot {
      polygon = List.copyOf(polygon);
    }
  }

  /** The content of a sheet that does not tell what joints are asked for. */
  public static SheetContent of(
      Scene scene, Shapes shapes, Optional<CheckReport> check, Stander stander) {
    return of(scene, shapes, check, stander, (plan, pieces) -> new JointDemands.Result(List.of(), List.of()));
  }

  /** Works out what the joints are asked for, given the plan and the rocks of each piece. */
  @FunctionalInterface
  public interface Demanding {
    JointDemands.Result of(BuildPlan plan, List<List<Integer>> pieces);
  }

  /** Gathers the content of a sheet; every rock of the scene must have a shape. */
  public static SheetContent of(
      Scene scene, Shapes shapes, Optional<CheckReport> check, Stander stander, Demanding demanding) {
    if (!shapes.sound()) throw new IllegalArgumentException("rocks without a shape: " + shapes.problems());
    List<RockBody> bodies = List.copyOf(shapes.bodies().values());
    List<Solid> solids = SceneSolids.ofPlaced(scene, shapes.placed());
    int rocks = scene.placements().size();
    List<List<Hull>> hulls = solids.subList(0, rocks).stream().map(Solid::lobes).toList();
    List<Contact> contacts = ContactFinder.find(solids, ContactRules.DEFAULT).contacts();
    BuildPlan plan = BuildPlan.of(scene, shapes, stander);
    List<List<Integer>> pieces = IntStream.range(0, plan.modules().size()).mapToObj(plan::rocksOf).toList();
    return new SheetContent(
        scene, hulls, Supply.of(scene, bodies), LightReport.of(scene, bodies), plan,
        rockLines(scene, bodies, hulls, plan), jointLines(scene, hulls, contacts, plan),
        resting(scene, plan, contacts, rocks), feet(scene, solids, contacts), demanding.of(plan, pieces),
        turning(scene, bodies, plan), DeadWater.of(scene, plan.rocks(), hulls), cleaning(scene, shapes), check);
  }

  private static List<Turned> turning(Scene scene, List<RockBody> bodies, BuildPlan plan) {
    List<Turned> out = new ArrayList<>();
    for (int i = 0; i < plan.modules().size(); i++) {
      int module = i;
      if (plan.modules().get(i).passes()) continue;
      Turning.of(scene, bodies, plan.modules().get(i)).ifPresent(w -> out.add(new Turned(module, w)));
    }
    return out;
  }

  /** The way of a piece that passes the opening by turning. */
  Optional<Turning.Way> wayOf(int module) {
    return turning.stream().filter(t -> t.module() == module).map(Turned::way).findFirst();
  }

  /** The cleaner of the settings first, then the usual ones. */
  private static List<Cleaning> cleaning(Scene scene, Shapes shapes) {
    List<Double> thicknesses = new ArrayList<>(List.of(Cleaner.of(scene.settings()).thicknessM()));
    for (double t : Cleaner.USUAL_THICKNESS_M) if (!thicknesses.contains(t)) thicknesses.add(t);
    return thicknesses.stream().map(t -> new Cleaning(t * 1e3, ReachMap.wiped(scene, shapes.placed(), t))).toList();
  }

  private static List<RockLine> rockLines(Scene scene, List<RockBody> bodies, List<List<Hull>> hulls, BuildPlan plan) {
    GridCells cells = GridCells.of(scene);
    List<RockLine> out = new ArrayList<>();
    List<Integer> order = new ArrayList<>(plan.order().stages().stream().map(BuildOrder.Stage::rock).toList());
    int stages = order.size();
    for (int k = 0; k < plan.tankOrder().stages().size(); k++) {
      for (String name : plan.tankRocks(k)) {
        int rock = plan.rocks().indexOf(name);
        if (!order.contains(rock)) order.add(rock);
      }
    }
    for (int s = 0; s < order.size(); s++) {
      int rock = order.get(s);
      int carrying = plan.carry()
          .map(c -> 1 + first(c.order().stages(), k -> plan.rocksOf(k.rock()).contains(rock))).orElse(0);
      String name = plan.rocks().get(rock);
      RockBody body = bodies.stream().filter(b -> b.name().equals(name)).findFirst().orElseThrow();
      double[] low = reach(hulls.get(rock), -1);
      double[] high = reach(hulls.get(rock), 1);
      out.add(new RockLine(
          rock, s < stages ? s + 1 : 0, carrying, name, scene.rock(name).orElseThrow().kind(), body.dryMassKg(),
          new Vec3(high[0] - low[0], high[1] - low[1], high[2] - low[2]).times(1e3),
          cells.name(low[0] * 1e3, low[1] * 1e3), cells.name(high[0] * 1e3, high[1] * 1e3),
          low[2] * 1e3, high[2] * 1e3));
    }
    return out;
  }

  private static double[] reach(List<Hull> lobes, int sign) {
    double[] out = new double[3];
    Vec3[] axes = {Vec3.X, Vec3.Y, Vec3.Z};
    for (int i = 0; i < 3; i++) {
      Vec3 axis = axes[i].times(sign);
      out[i] = sign * lobes.stream().mapToDouble(h -> h.reach(axis)).max().orElseThrow();
    }
    return out;
  }

  private static List<JointLine> jointLines(
      Scene scene, List<List<Hull>> hulls, List<Contact> contacts, BuildPlan plan) {
    List<JointLine> out = new ArrayList<>();
    JointNumbers numbers = JointNumbers.of(scene);
    for (int j = 0; j < scene.joints().size(); j++) {
      JointSpec spec = scene.joints().get(j);
      int a = plan.rocks().indexOf(spec.a());
      int b = plan.rocks().indexOf(spec.b());
      if (spec.bond() == JointSpec.Bond.NONE || a < 0 || b < 0) continue;
      List<Contact> patches = contacts.stream()
          .filter(c -> c.a() == Math.min(a, b) && c.b() == Math.max(a, b)).toList();
      double area = patches.stream().mapToDouble(Contact::areaM2).sum();
      Vec3 at = patches.isEmpty() ? between(hulls.get(a), hulls.get(b)) : middle(patches);
      int index = j;
      BuildOrder.Order order = spec.madeIn() == JointSpec.MadeIn.TANK
          ? plan.carry().map(BuildPlan.Carry::order).orElse(plan.order()) : plan.order();
      int stage = 1 + first(order.stages(), s -> s.joints().contains(index));
      int batch = 1 + first(plan.mortar(), x -> x.joints().contains(index));
      out.add(new JointLine(numbers.number(spec.a(), spec.b()).orElseThrow(), j, spec, at, area * 1e6, !patches.isEmpty(), stage,
          batch));
    }
    return out;
  }

  private static <T> int first(List<T> list, Predicate<T> test) {
    for (int i = 0; i < list.size(); i++) if (test.test(list.get(i))) return i;
    return -1;
  }

  /** Middle of the corners of all patches, each patch by its area, points by a trifle. */
  private static Vec3 middle(List<Contact> patches) {
    Vec3 sum = Vec3.ZERO;
    double weight = 0;
    for (Contact c : patches) {
      Vec3 mean = Vec3.ZERO;
      for (Vec3 p : c.polygon()) mean = mean.plusTimes(1.0 / c.polygon().size(), p);
      double w = c.areaM2() + 1e-9;
      sum = sum.plusTimes(w, mean);
      weight += w;
    }
    return sum.times(1 / weight);
  }

  private static Vec3 between(List<Hull> a, List<Hull> b) {
    return mean(a).plus(mean(b)).times(0.5);
  }

  private static Vec3 mean(List<Hull> lobes) {
    Vec3 sum = Vec3.ZERO;
    int n = 0;
    for (Hull h : lobes) {
      for (Vec3 p : h.corners()) sum = sum.plus(p);
      n += h.corners().size();
    }
    return sum.times(1.0 / n);
  }

  private static List<Resting> resting(Scene scene, BuildPlan plan, List<Contact> contacts, int rocks) {
    List<Resting> out = new ArrayList<>();
    for (Contact c : contacts) {
      if (c.b() >= rocks) continue;
      String a = plan.rocks().get(c.a());
      String b = plan.rocks().get(c.b());
      boolean fixed = scene.joint(a, b).map(j -> j.bond() != JointSpec.Bond.NONE).orElse(false);
      Resting r = c.normal().z() >= 0 ? new Resting(a, b) : new Resting(b, a);
      if (!fixed && !out.contains(r)) out.add(r);
    }
    return out;
  }

  private static List<Foot> feet(Scene scene, List<Solid> solids, List<Contact> contacts) {
    List<Foot> out = new ArrayList<>();
    for (Contact c : contacts) {
      boolean floor = TankSolids.part(scene, solids, c.b()) == TankSolids.Part.FLOOR && c.normal().z() > 0.9;
      if (floor) out.add(new Foot(c.a(), c.polygon()));
    }
    return out;
  }

  /** The line of a rock by its number. */
  RockLine rockLine(int rock) {
    return rocks.stream().filter(r -> r.rock() == rock).findFirst().orElseThrow();
  }

  /** The sheet's numbers of joints of a stage or batch, in words: "joint 2", "joints 1 and 4", "no joint". */
  String jointWords(List<Integer> indices) {
    List<String> numbers = joints.stream().filter(j -> indices.contains(j.index()))
        .map(j -> String.valueOf(j.number())).toList();
    if (numbers.isEmpty()) return "no joint";
    if (numbers.size() == 1) return "joint " + numbers.get(0);
    return "joints " + String.join(", ", numbers.subList(0, numbers.size() - 1)) + " and " + numbers.get(numbers.size() - 1);
  }

  /** The number of a joint on the sheet. */
  int number(int index) {
    return joints.stream().filter(j -> j.index() == index).findFirst().orElseThrow().number();
  }

  /** Joints made in the tank after those of the bench: they have a table of stages of their own. */
  boolean madeOfPieces() {
    return plan.carry().isPresent();
  }

  boolean hasLiving() {
    return rocks.stream().anyMatch(r -> r.kind() == Rock.Kind.LIVE);
  }
}
