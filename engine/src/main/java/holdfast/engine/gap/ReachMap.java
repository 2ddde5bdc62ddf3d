package holdfast.engine.gap;

import holdfast.engine.contact.Planar;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.TankSolids;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import holdfast.model.scene.Tank;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What part of one pane a cleaner can wipe, cell by cell, from the sand (or the floor) up to the water's surface.
 *
 * <p>The cleaner is a block held level against the glass. It comes over the rim and moves along the pane. For each lobe
 * of a rock, or device, that comes nearer to the glass than the cleaner is thick, the centre of the cleaner must stay out
 * of a convex region: the shadow on the pane of that part of the lobe, grown by half the cleaner each way. The places of
 * the centre are divided into cells; a cell is open only when all of it is clear of all regions, and is reached only
 * from an open neighbour beside, above or below it. So whatever is called wiped is truly wiped; near the limit a little
 * less is found than could be.
 *
 * <p>Limits: the cleaner is not turned; braces at the rim are not seen; what hangs over the rim from outside is not
 * known.
 */
public final class ReachMap {
  private final Side side;
  private final double cellM;
  private final double lowM;
  private final int columns;
  private final int rows;
  private final State[] states;
  private final List<Obstacle> obstacles;

  /** What the cleaner can do at one cell. */
  public enum State {
    /** It gets there from the rim. */
    WIPED,
    /** It fits there but cannot be brought there along the pane. */
    CUT_OFF,
    /** It does not fit. */
    BLOCKED
  }

  /**
   * A rock or device that comes nearer to the glass than the cleaner is thick.
   *
   * @param share how much of the pane's height and length the cleaner's centre is kept from by it alone
   */
  public record Obstacle(String name, double share) {}

  private ReachMap(Side side, double cellM, double lowM, int columns, int rows, State[] states, List<Obstacle> obstacles) {
    this.side = side;
    this.cellM = cellM;
    this.lowM = lowM;
    this.columns = columns;
    this.rows = rows;
    this.states = states;
    this.obstacles = List.copyOf(obstacles);
  }

  /** The four panes in the order of {@link Side}, for the cleaner of the settings. */
  public static List<ReachMap> all(Scene scene, List<PlacedRock> placed) {
    Cleaner cleaner = Cleaner.of(scene.settings());
    return Arrays.stream(Side.values()).map(s -> of(scene, placed, s, cleaner, Tolerances.REACH_CELL_M)).toList();
  }

  /**
   * The share of each pane that is wiped from the rim, in the order of {@link Side}, for a cleaner of this thickness and
   * otherwise of the settings.
   */
  public static List<Double> wiped(Scene scene, List<PlacedRock> placed, double thicknessM) {
    Cleaner cleaner = Cleaner.of(scene.settings()).ofThickness(thicknessM);
    return Arrays.stream(Side.values())
        .map(s -> of(scene, placed, s, cleaner, Tolerances.REACH_CELL_M).share(State.WIPED)).toList();
  }

  /** The map of one pane. */
  public static ReachMap of(Scene scene, List<PlacedRock> placed, Side side, Cleaner cleaner, double cellM) {
    if (!(cellM > 0)) throw new IllegalArgumentException("cellM must be above 0, was " + cellM);
    Tank tank = scene.tank();
    PaneFrame frame = PaneFrame.of(tank, side);
    double low = lowest(scene, frame, cleaner.thicknessM());
    double level = Math.min(scene.water().levelMm() * 1e-3, frame.heightM());
    int columns = cells(frame.lengthM(), cellM);
    int rows = cells(level - low, cellM);
    CleanerPlaces places = new CleanerPlaces(frame, cleaner, low, cellM);
    List<Obstacle> obstacles = new ArrayList<>();
    for (PlacedRock p : placed) block(places, p.rock().name(), p.lobes(), obstacles);
    List<Solid> fixed = TankSolids.of(scene);
    for (Solid device : fixed.subList(fixed.size() - scene.devices().size(), fixed.size())) {
      block(places, device.name(), device.lobes(), obstacles);
    }
    obstacles.sort(Comparator.comparingDouble(Obstacle::share).reversed());
    State[] states = new State[columns * rows];
    boolean[] fits = places.wiped(places.open(), columns, rows);
    boolean[] reached = places.wiped(places.reached(), columns, rows);
    for (int i = 0; i < states.length; i++) states[i] = reached[i] ? State.WIPED : fits[i] ? State.CUT_OFF : State.BLOCKED;
    return new ReachMap(side, cellM, low, columns, rows, states, obstacles);
  }

  private static void block(CleanerPlaces places, String name, List<Hull> lobes, List<Obstacle> obstacles) {
    double share = places.block(lobes);
    if (share > 0) obstacles.add(new Obstacle(name, share));
  }

  /** The cleaner stops at the sand, and at the floor where that reaches within its thickness of the glass. */
  private static double lowest(Scene scene, PaneFrame frame, double thickness) {
    double low = scene.sand().depthMm() * 1e-3;
    if (scene.floor().topMm() > 0) {
      Floor.Extent e = scene.floor().extentIn(scene.tank());
      Vec3 near = new Vec3(e.xMm(), e.yMm(), 0).times(1e-3);
      Vec3 far = new Vec3(e.xMm() + e.lengthMm(), e.yMm() + e.widthMm(), 0).times(1e-3);
      if (Math.min(frame.depth(near), frame.depth(far)) < thickness) low = Math.max(low, scene.floor().topMm() * 1e-3);
    }
    return low;
  }

  static int cells(double length, double cell) {
    return length <= 0 ? 0 : Math.max(1, (int) Math.ceil(length / cell - 1e-9));
  }

  /** The part of a hull nearer to the pane than {@code depth}, seen square on: its points as {along, up, ...}. */
  static double[] shadow(Hull lobe, PaneFrame frame, double depth) {
    Vec3 inward = frame.side().outward().negated();
    double plane = depth - frame.planeOffset();
    if (-lobe.reach(inward.negated()) >= plane - Tolerances.ROUNDING_M) return new double[0];
    List<Vec3> points = new ArrayList<>();
    for (Vec3 c : lobe.corners()) if (c.dot(inward) <= plane) points.add(c);
    Polyhedra.forEachEdge(lobe, (p, q) -> {
      Vec3 a = lobe.corners().get(p);
      Vec3 b = lobe.corners().get(q);
      double da = a.dot(inward) - plane;
      double db = b.dot(inward) - plane;
      if (da * db < 0) points.add(a.plusTimes(da / (da - db), b.minus(a)));
    });
    double[] flat = new double[2 * points.size()];
    for (int i = 0; i < points.size(); i++) {
      flat[2 * i] = frame.along(points.get(i));
      flat[2 * i + 1] = points.get(i).z();
    }
    return Planar.hull(flat, 1e-12);
  }

  public Side side() {
    return side;
  }

  /** Side of a cell; the last column and row may be narrower. */
  public double cellM() {
    return cellM;
  }

  /** Height of the lowest row's lower rim above the inner bottom. */
  public double lowM() {
    return lowM;
  }

  /** Cells along the pane: from the left for front and back, from the front for left and right. */
  public int columns() {
    return columns;
  }

  /** Cells up the pane. */
  public int rows() {
    return rows;
  }

  public State state(int column, int row) {
    if (column < 0 || column >= columns || row < 0 || row >= rows) {
      throw new IndexOutOfBoundsException("cell " + column + ", " + row + " of " + columns + " x " + rows);
    }
    return states[row * columns + column];
  }

  /** Share of the cells in one state; zero on a pane without water. */
  public double share(State state) {
    if (states.length == 0) return 0;
    return (double) Arrays.stream(states).filter(s -> s == state).count() / states.length;
  }

  /** What keeps the cleaner away, most first. */
  public List<Obstacle> obstacles() {
    return obstacles;
  }
}
