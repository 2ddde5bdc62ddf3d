package holdfast.engine.pane;

import holdfast.engine.pane.PaneReport.CaseStress;
import holdfast.engine.pane.PaneReport.FootBearing;
import holdfast.engine.pane.PaneReport.StressMap;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.scene.UsualGlass;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Will the rocks crack the bottom pane? Forces on feet in, stresses and findings out.
 *
 * <p>Every load case is put on every bed the scene admits: four edges, foam at its soft and its stiff end, or all three
 * where the support is unknown; the worst counts.
 */
public final class BottomPane {
  /** Points of the stress map along the pane's longer side in a report; a picture asks for more. */
  public static final int MAP_POINTS = 31;

  private static final double GRAVITY = 9.81;
  private static final double PA_PER_N_MM2 = 1e6;

  private final Scene scene;
  private final PaneLoad load;
  private final Plate plate;
  private final GlassStrength strength;
  private final double offsetM;
  private final List<FootLoad> feet;
  private final int mapPoints;
  private final Foams foams;

  /** Where panes on foam come from: whoever judges one again and again may keep them with what they have worked out. */
  @FunctionalInterface
  public interface Foams {
    FoamPlate on(Plate plate, double foundationNm3);
  }

  private BottomPane(Scene scene, PaneLoad load, int mapPoints, Foams foams) {
    this.foams = foams;
    this.scene = scene;
    this.load = load;
    this.plate = plateOf(scene);
    this.strength = GlassStrength.of(scene.settings(), scene.tank().temperedBottom());
    this.offsetM = FloorSpread.offsetM(scene.tank());
    this.feet = allFeet(load);
    this.mapPoints = mapPoints;
  }

  /** Judges the bottom pane of a scene under its feet. */
  public static PaneReport judge(Scene scene, PaneLoad load) {
    return judge(scene, load, FoamPlate::new);
  }

  /** The same with panes on foam from elsewhere. */
  public static PaneReport judge(Scene scene, PaneLoad load, Foams foams) {
    return new BottomPane(scene, load, MAP_POINTS, foams).report();
  }

  /** The same with a stress map of {@code mapPoints} points along the longer side. */
  public static PaneReport judge(Scene scene, PaneLoad load, int mapPoints) {
    if (mapPoints < 3) throw new IllegalArgumentException("mapPoints must be 3 or more, was " + mapPoints);
    return new BottomPane(scene, load, mapPoints, FoamPlate::new).report();
  }

  /** The bottom pane of a scene; it reaches to the middle of the side panes. */
  static Plate plateOf(Scene scene) {
    Tank tank = scene.tank();
    Settings s = scene.settings();
    return new Plate(1e-3 * (tank.lengthMm() + tank.sideGlassMm()), 1e-3 * (tank.widthMm() + tank.sideGlassMm()),
        1e-3 * tank.bottomGlassMm(), PA_PER_N_MM2 * s.get(Setting.GLASS_YOUNG_N_MM2), s.get(Setting.GLASS_POISSON));
  }

  /** Pressure of what lies evenly on the pane, pascals: water and the sand in it; drained, the wet sand. */
  static double evenPa(Scene scene, LoadCase load) {
    double water = SeaWater.densityKgM3(scene.water().salinity(), scene.water().temperatureC());
    double bulk = 1e3 * scene.sand().bulkKgPerL();
    double grain = 1e3 * scene.settings().get(Setting.SAND_GRAIN_KG_PER_L);
    double sandM = 1e-3 * scene.sand().depthMm();
    return switch (load) {
      case DRY -> 0;
      case FILLED -> GRAVITY * (water * 1e-3 * scene.water().levelMm() + sandM * Math.max(0, bulk * (1 - water / grain)));
      case DRAINED -> GRAVITY * sandM * (bulk + Math.max(0, water * (1 - bulk / grain)));
    };
  }

  /** One way of carrying the pane. */
  record Bed(PlateModel model, String words, OptionalDouble foamNm3) {
    boolean foam() {
      return foamNm3.isPresent();
    }
  }

  private List<Bed> beds() {
    List<Bed> beds = new ArrayList<>();
    Tank.BottomSupport support = scene.tank().bottomSupport();
    if (support != Tank.BottomSupport.FULL) beds.add(new Bed(new EdgePlate(plate), "four edges", OptionalDouble.empty()));
    if (support != Tank.BottomSupport.EDGES) {
      double soft = scene.settings().get(Setting.FOAM_SOFT_N_M3);
      double stiff = scene.settings().get(Setting.FOAM_STIFF_N_M3);
      beds.add(new Bed(foams.on(plate, soft), "soft foam", OptionalDouble.of(soft)));
      if (stiff != soft) beds.add(new Bed(foams.on(plate, stiff), "stiff foam", OptionalDouble.of(stiff)));
    }
    return beds;
  }

  private static List<FootLoad> allFeet(PaneLoad load) {
    // The same foot has other forces in other cases: rock and outline tell it.
    Map<List<Object>, FootLoad> byPlace = new LinkedHashMap<>();
    load.cases().values().forEach(c -> c.feet().forEach(f -> byPlace.putIfAbsent(List.of(f.rock(), f.polygon()), f)));
    return List.copyOf(byPlace.values());
  }

  /** A case with every foot of {@link #feet}, without force where the case has it not. */
  private PaneLoad.Case aligned(PaneLoad.Case given) {
    List<FootLoad> all = new ArrayList<>();
    for (FootLoad f : feet) {
      all.add(given.feet().stream().filter(g -> g.rock().equals(f.rock()) && g.polygon().equals(f.polygon())).findFirst()
          .orElse(new FootLoad(f.rock(), f.polygon(), 0, 0, true)));
    }
    return new PaneLoad.Case(all, given.weightN(), given.allOnFloor());
  }

  /** What is kept of one case on one bed while the report is put together. */
  record Solved(
      Bed bed, PaneSolver solver, Envelope envelope, PaneSolver.Worst worst, int foot, double evenPa, CaseStress stress) {}

  private PaneReport report() {
    List<Solved> solved = new ArrayList<>();
    for (Bed bed : beds()) {
      FloorSpread spread = new FloorSpread(scene, scene.floor(), plate);
      PaneSolver solver = solver(bed, spread, mapPoints);
      load.cases().forEach((c, given) -> solved.add(solve(bed, solver, spread, c, aligned(given))));
    }
    // What the rocks break comes before what the water alone does.
    Solved governing = solved.stream()
        .max(Comparator.comparing((Solved s) -> PaneFindings.rocksOver(s.stress))
            .thenComparingDouble(s -> s.stress.utilisation()))
        .orElseThrow();
    List<FootBearing> bearings = bearings();
    PaneStrike strike = new PaneStrike(scene, plate, governing.bed.model());
    Optional<PaneReport.Slip> slip = load.heaviest().map(strike::slip);
    List<PaneReport.Remedy> remedies = new PaneRemedies(this, solved).list();
    List<CaseStress> cases = solved.stream().map(Solved::stress).toList();
    PaneFindings findings = new PaneFindings(scene, load, strength);
    return new PaneReport(plate, strength, usualGlassMm(), bearings, cases, governing.stress, map(governing), slip, remedies,
        findings.list(bearings, cases, governing.stress, slip, remedies, usualGlassMm()),
        findings.assumptions(bearings), findings.cautions(), load);
  }

  private double usualGlassMm() {
    Tank t = scene.tank();
    return UsualGlass.forInsideMm(t.lengthMm(), t.widthMm(), t.heightMm());
  }

  private PaneSolver solver(Bed bed, FloorSpread spread, int points) {
    return solver(bed, feet.stream().map(f -> List.of(spread.bearing(f, bed.foam()).patch())).toList(), points);
  }

  /** A solver for other patches under the feet, on a net of so many points along the longer side. */
  PaneSolver solver(Bed bed, List<List<Patch>> patches, int points) {
    double longer = Math.max(plate.lengthM(), plate.widthM());
    int columns = Math.max(7, (int) Math.round((points - 1) * plate.lengthM() / longer) + 1);
    int rows = Math.max(7, (int) Math.round((points - 1) * plate.widthM() / longer) + 1);
    return new PaneSolver(bed.model(), patches, columns, rows);
  }

  private Solved solve(Bed bed, PaneSolver solver, FloorSpread spread, LoadCase loadCase, PaneLoad.Case given) {
    Envelope envelope = new Envelope(given);
    double evenPa = bed.foam() ? 0 : evenPa(scene, loadCase);
    PaneSolver.Worst total = solver.worst(envelope, evenPa);
    PaneSolver.Worst rocks = evenPa == 0 ? total : solver.worst(envelope, 0);
    int foot = solver.governingFoot(total);
    double totalN = stressNmm2(total.peak().momentNm());
    double waterN = stressNmm2(solver.waterMomentNm(evenPa));
    double rocksN = stressNmm2(rocks.peak().momentNm());
    double oneSpot = totalN;
    if (foot >= 0) {
      Patch spot = spread.onOneSpot(feet.get(foot), bed.foam()).patch();
      double force = envelope.mostN(foot);
      Bending bending = solver.withFoot(spot.centre(), total, evenPa, foot, spot, force);
      oneSpot = Math.max(totalN, stressNmm2(bending.principal()));
    }
    double limit = strength.limitNmm2(loadCase.duration());
    PlateModel.Deflection deflection = solver.deflection(total.peak().forcesN(), evenPa);
    CaseStress stress = new CaseStress(loadCase, bed.words, bed.foamNm3, waterN, rocksN, totalN,
        mm(total.at().x()), mm(total.at().y()), foot < 0 ? "" : feet.get(foot).rock(),
        foot < 0 ? 0 : solver.share(total, foot), foot < 0 ? 0 : total.peak().forcesN()[foot], oneSpot,
        strength.designNmm2(loadCase.duration()), totalN / limit, waterN / limit, rocksN / limit,
        totalN / strength.tradeLimitNmm2(), greatestDeflectionMm(deflection));
    return new Solved(bed, solver, envelope, total, foot, evenPa, stress);
  }

  /** On the nodes of a net, then refined by halving steps. */
  private double greatestDeflectionMm(PlateModel.Deflection deflection) {
    int n = 12;
    PlateModel.Net net = new PlateModel.Net(plate, n + 1, n + 1);
    double[] onNet = deflection.onNet(net);
    int most = n / 2 * (n + 2);
    for (int k = 0; k < onNet.length; k++) if (onNet[k] > onNet[most]) most = k;
    double bestX = net.x(most);
    double bestY = net.y(most);
    double best = onNet[most];
    double dx = 0.5 * plate.lengthM() / n;
    double dy = 0.5 * plate.widthM() / n;
    for (int round = 0; round < 7; round++, dx *= 0.5, dy *= 0.5) {
      double atX = bestX;
      double atY = bestY;
      for (int d = 0; d < 4; d++) {
        double x = Math.min(Math.max(atX + (d == 0 ? dx : d == 1 ? -dx : 0), 0), plate.lengthM());
        double y = Math.min(Math.max(atY + (d == 2 ? dy : d == 3 ? -dy : 0), 0), plate.widthM());
        double w = deflection.atM(x, y);
        if (w > best) {
          best = w;
          bestX = x;
          bestY = y;
        }
      }
    }
    return 1e3 * best;
  }

  private StressMap map(Solved s) {
    int columns = s.solver.columns();
    int rows = s.solver.rows();
    double[] stress = s.solver.stressMapPa(s.envelope, s.evenPa);
    double[] deflection = s.solver.deflection(s.worst.peak().forcesN(), s.evenPa)
        .onNet(new PlateModel.Net(plate, columns, rows));
    List<Double> stresses = new ArrayList<>(stress.length);
    List<Double> deflections = new ArrayList<>(stress.length);
    for (double pa : stress) stresses.add(pa / PA_PER_N_MM2);
    for (double m : deflection) deflections.add(1e3 * m);
    double stepX = plate.lengthM() / (columns - 1);
    double stepY = plate.widthM() / (rows - 1);
    return new StressMap(
        s.stress.load(), s.bed.words, columns, rows, mm(0), 1e3 * stepX, mm(0), 1e3 * stepY, stresses, deflections);
  }

  private List<FootBearing> bearings() {
    FloorSpread present = new FloorSpread(scene, scene.floor(), plate);
    FloorSpread bare = new FloorSpread(scene, Covers.bare(), plate);
    FloorSpread grid = new FloorSpread(scene, Covers.grid(scene), plate);
    StonePoint point = StonePoint.limestoneOn(plate.youngPa(), plate.poisson());
    double radiusM = 1e-3 * scene.settings().get(Setting.POINT_RADIUS_MM);
    List<FootBearing> all = new ArrayList<>();
    for (FootLoad foot : feet) {
      LoadCase worst = LoadCase.FILLED;
      double most = -1;
      for (Map.Entry<LoadCase, PaneLoad.Case> c : load.cases().entrySet()) {
        PaneLoad.Case given = aligned(c.getValue());
        double force = new Envelope(given).mostN(feet.indexOf(foot));
        if (force > most) {
          most = force;
          worst = c.getKey();
        }
      }
      FloorSpread.Bearing now = present.bearing(foot, false);
      Point2 centre = Outline.centroid(now.foot());
      OptionalDouble ring = now.bare()
          ? OptionalDouble.of(point.press(radiusM, most).ringPa() / PA_PER_N_MM2) : OptionalDouble.empty();
      all.add(new FootBearing(foot.rock(), mm(centre.x()), mm(centre.y()), Outline.moved(now.foot(), -offsetM, -offsetM), most,
          worst, 1e6 * now.contactM2(), most / (PA_PER_N_MM2 * now.bearingM2()),
          most / (PA_PER_N_MM2 * bare.bearing(foot, false).bearingM2()),
          most / (PA_PER_N_MM2 * grid.bearing(foot, false).bearingM2()), now.bare(), now.onSand(), ring));
    }
    return all;
  }

  Scene scene() {
    return scene;
  }

  Plate plate() {
    return plate;
  }

  GlassStrength strength() {
    return strength;
  }

  /** Every foot of every case. */
  List<FootLoad> feet() {
    return feet;
  }

  /** The forces of a case on {@link #feet}, all at {@code share} of what they are. */
  Envelope envelope(LoadCase loadCase, double share) {
    PaneLoad.Case c = aligned(load.cases().get(loadCase));
    List<FootLoad> lighter = c.feet().stream()
        .map(f -> new FootLoad(f.rock(), f.polygon(), share * f.leastN(), share * f.mostN(), f.bounded())).toList();
    return new Envelope(new PaneLoad.Case(lighter, share * c.weightN(), c.allOnFloor()));
  }

  double stressNmm2(double momentNm) {
    return plate.surfaceStressPa(Math.abs(momentNm)) / PA_PER_N_MM2;
  }

  /** From plate axes to the tank's, millimetres. */
  private double mm(double plateAxisM) {
    return 1e3 * (plateAxisM - offsetM);
  }

  /** Floors to compare with. */
  static final class Covers {
    private Covers() {}

    static Floor bare() {
      return new Floor(Floor.Kind.BARE, Floor.DEFAULT.cellMm(), 0, 0, 0, Optional.empty());
    }

    /** The scene's own grid made to cover the whole bottom, or the usual one. */
    static Floor grid(Scene scene) {
      Floor f = scene.floor().kind() == Floor.Kind.GRID ? scene.floor() : Floor.DEFAULT;
      return new Floor(Floor.Kind.GRID, f.cellMm(), f.wallMm(), f.thicknessMm(), 0, Optional.empty());
    }
  }
}
