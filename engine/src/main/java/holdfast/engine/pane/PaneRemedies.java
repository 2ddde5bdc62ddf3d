package holdfast.engine.pane;

import holdfast.engine.pane.PaneReport.Remedy;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Setting;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What would bring the pane under its limit. Each remedy is worked out anew with all feet, in every load case on every bed:
 * where the foot that governed is mended and another one governs, that one is mended too, until the pane passes or the remedy
 * has no more to give.
 */
final class PaneRemedies {
  private static final double[] FOOT_RADII_M = {0.010, 0.015, 0.020, 0.030, 0.040, 0.050, 0.060, 0.080, 0.100};
  private static final double[] MOVES_M = {0.025, 0.050, 0.075, 0.100, 0.150, 0.200, 0.300};

  /** Points of the net along the longer side; feet are asked in their middle and climbed from there, so it may be coarse. */
  private static final int NET = 13;

  /** A step that takes off less than this share has nothing to give. */
  private static final double WORTH = 0.005;

  /** Feet that one remedy may ask to be mended: more is another layout. */
  private static final int MOST_FEET = 6;

  private final BottomPane pane;
  private final List<BottomPane.Solved> cases;

  PaneRemedies(BottomPane pane, List<BottomPane.Solved> cases) {
    this.pane = pane;
    this.cases = cases;
  }

  /** Nothing unless the rocks take a case over its limit. */
  List<Remedy> list() {
    List<Remedy> all = new ArrayList<>();
    if (cases.stream().noneMatch(c -> c.foot() >= 0 && PaneFindings.rocksOver(c.stress()))) return all;
    Trial now = new Trial(pane.scene().floor(), new TreeMap<>());
    Trial bedded = now;
    String first = "";
    if (pane.scene().floor().kind() == Floor.Kind.BARE) {
      bedded = new Trial(BottomPane.Covers.grid(pane.scene()), new TreeMap<>());
      all.add(new Remedy(Remedy.Kind.GRID, "lay a louvre grid under the rocks", bedded.left()));
      if (bedded.left() <= 1) bedded = now;
      else first = "lay a louvre grid and ";
    }
    widened(bedded).ifPresent(t -> all.add(new Remedy(Remedy.Kind.WIDER_FOOT, footWords(t), t.left())));
    String grid = first;
    shimmed(bedded).ifPresent(t -> all.add(new Remedy(Remedy.Kind.SHIM,
        grid + "bed " + names(t.seats) + " on three shims" + (t.seats.size() == 1 ? "" : " each")
            + ", set well apart under the rim", t.left())));
    moved(bedded).ifPresent(m -> all.add(new Remedy(Remedy.Kind.MOVE, grid + m.words, m.trial.left(),
        grid.isEmpty() ? Optional.of(m.shift) : Optional.empty())));
    lighter(now).ifPresent(all::add);
    return all;
  }

  /** How a foot bears in a trial. */
  private sealed interface Seat {}

  private record Disc(double radiusM) implements Seat {}

  private record Moved(double dxM, double dyM) implements Seat {}

  private record Shims() implements Seat {}

  /** A floor and seats for some of the feet, judged when asked. */
  private final class Trial {
    private final Floor floor;
    private final Map<Integer, Seat> seats;
    private double left;
    private int foot = -1;

    Trial(Floor floor, Map<Integer, Seat> seats) {
      this.floor = floor;
      this.seats = Collections.unmodifiableMap(new TreeMap<>(seats));
      BottomPane.Bed last = null;
      PaneSolver solver = null;
      for (BottomPane.Solved c : cases) {
        if (c.bed() != last) solver = pane.solver(c.bed(), patches(c.bed()), NET);
        last = c.bed();
        // Where water alone is over the limit, the rocks answer for what they add.
        PaneSolver.Worst worst = solver.worst(c.envelope(), judgedWithPa(c));
        double use = use(c, worst);
        if (use <= left) continue;
        left = use;
        foot = solver.governingFoot(worst);
      }
    }

    double left() {
      return left;
    }

    /** The foot that governs, or -1. */
    int foot() {
      return foot;
    }

    Trial with(int number, Seat seat) {
      Map<Integer, Seat> next = new TreeMap<>(seats);
      next.put(number, seat);
      return new Trial(floor, next);
    }

    List<List<Patch>> patches(BottomPane.Bed bed) {
      List<List<Patch>> all = new ArrayList<>();
      for (int i = 0; i < pane.feet().size(); i++) all.add(patches(bed, i));
      return all;
    }

    private List<Patch> patches(BottomPane.Bed bed, int number) {
      FloorSpread spread = new FloorSpread(pane.scene(), floor, pane.plate());
      FloorSpread.Bearing bearing = spread.bearing(pane.feet().get(number), bed.foam());
      Seat seat = seats.get(number);
      if (seat instanceof Disc d) {
        Point2 c = Outline.centroid(bearing.foot());
        return List.of(Patch.disc(c.x(), c.y(), d.radiusM).forThickness(pane.plate().thicknessM()));
      }
      if (seat instanceof Moved m) return List.of(Patch.of(Outline.moved(bearing.patch().ring(), m.dxM, m.dyM)));
      if (seat instanceof Shims) return shims(bearing);
      return List.of(bearing.patch());
    }
  }

  private static double judgedWithPa(BottomPane.Solved c) {
    return c.stress().waterUtilisation() > 1 ? 0 : c.evenPa();
  }

  private double use(BottomPane.Solved c, PaneSolver.Worst worst) {
    return pane.stressNmm2(worst.peak().momentNm()) / pane.strength().limitNmm2(c.stress().load().duration());
  }

  // -- the remedies -------------------------------------------------------------------------------------------------

  /** Bedded feet, one step wider at a time under whichever foot governs. */
  private Optional<Trial> widened(Trial from) {
    Trial trial = from;
    while (trial.left() > 1) {
      int foot = trial.foot();
      if (foot < 0) return Optional.empty();
      double now = radiusM(trial, foot);
      double next = 0;
      for (double r : FOOT_RADII_M) if (next == 0 && r > now + 1e-9) next = r;
      if (next == 0 || room(foot) < next) return Optional.empty();
      Trial wider = trial.with(foot, new Disc(next));
      if (wider.seats.size() > MOST_FEET || wider.left() > (1 - WORTH) * trial.left()) return Optional.empty();
      trial = wider;
    }
    return trial.seats.isEmpty() ? Optional.empty() : Optional.of(trial);
  }

  /** Radius of the circle with the area that a foot bears on now, or of its bedded foot. */
  private double radiusM(Trial trial, int foot) {
    if (trial.seats.get(foot) instanceof Disc d) return d.radiusM;
    double area = 0;
    for (BottomPane.Solved c : cases) area = Math.max(area, trial.patches(c.bed(), foot).get(0).areaM2());
    return Math.sqrt(area / Math.PI);
  }

  /** From the middle of a foot to the nearest edge of the pane. */
  private double room(int foot) {
    Point2 c = Outline.centroid(footOutline(foot));
    return pane.plate().edgeDistanceM(c.x(), c.y());
  }

  private List<Point2> footOutline(int foot) {
    return new FloorSpread(pane.scene(), pane.scene().floor(), pane.plate()).bearing(pane.feet().get(foot), false).foot();
  }

  /** Three shims each, under whichever foot governs. */
  private Optional<Trial> shimmed(Trial from) {
    Trial trial = from;
    while (trial.left() > 1) {
      int foot = trial.foot();
      if (foot < 0 || trial.seats.containsKey(foot) || !takesShims(trial, foot)) return Optional.empty();
      Trial next = trial.with(foot, new Shims());
      if (next.seats.size() > MOST_FEET || next.left() > (1 - WORTH) * trial.left()) return Optional.empty();
      trial = next;
    }
    return trial.seats.isEmpty() ? Optional.empty() : Optional.of(trial);
  }

  /** The foot is broad enough that three spots under its rim lie apart. */
  private boolean takesShims(Trial trial, int foot) {
    List<Point2> outline = footOutline(foot);
    if (outline.size() < 3) return false;
    double spot = trial.patches(cases.get(0).bed(), foot).get(0).semiMinorM();
    return Outline.inradius(outline, Outline.centroid(outline)) >= 2 * Math.min(spot, spotM());
  }

  private double spotM() {
    return 0.5e-3 * pane.scene().settings().get(Setting.SPOT_MM);
  }

  private List<Patch> shims(FloorSpread.Bearing bearing) {
    Point2 c = Outline.centroid(bearing.foot());
    double out = 0.8 * Outline.inradius(bearing.foot(), c);
    List<Patch> all = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      double angle = Math.PI / 2 + k * 2 * Math.PI / 3;
      all.add(Patch.disc(c.x() + out * Math.cos(angle), c.y() + out * Math.sin(angle), spotM())
          .forThickness(pane.plate().thicknessM()));
    }
    return all;
  }

  private record Way(Trial trial, String words, Remedy.Shift shift) {}

  /** The foot that governs, the least way toward any side that will do; of several sides the one that leaves least. */
  private Optional<Way> moved(Trial from) {
    int foot = from.foot();
    if (foot < 0) return Optional.empty();
    String[] words = {"right", "left", "back", "front"};
    int[][] sides = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    for (double by : MOVES_M) {
      Way best = null;
      for (int k = 0; k < 4; k++) {
        if (!staysOnPane(foot, by * sides[k][0], by * sides[k][1])) continue;
        Trial trial = from.with(foot, new Moved(by * sides[k][0], by * sides[k][1]));
        if (trial.left() > 1 || (best != null && trial.left() >= best.trial.left())) continue;
        best = new Way(trial, String.format(Locale.ROOT,
            "move %s %.0f mm toward the %s with what it carries, and check again", pane.feet().get(foot).rock(),
            1e3 * by, words[k]), new Remedy.Shift(pane.feet().get(foot).rock(), by * sides[k][0], by * sides[k][1]));
      }
      if (best != null) return Optional.of(best);
    }
    return Optional.empty();
  }

  private boolean staysOnPane(int foot, double dx, double dy) {
    double inside = FloorSpread.offsetM(pane.scene().tank());
    return Outline.moved(footOutline(foot), dx, dy).stream()
        .allMatch(p -> pane.plate().edgeDistanceM(p.x(), p.y()) >= inside - 1e-9);
  }

  /** How much of this rock the pane would carry as it is laid out: by bisection, since the forces that govern may change. */
  private Optional<Remedy> lighter(Trial now) {
    List<PaneSolver> solvers = new ArrayList<>();
    for (BottomPane.Solved c : cases) solvers.add(pane.solver(c.bed(), now.patches(c.bed()), NET));
    double fits = 0;
    double over = 1;
    for (int round = 0; round < 7; round++) {
      double middle = 0.5 * (fits + over);
      if (left(solvers, middle) <= 1) fits = middle;
      else over = middle;
    }
    int percent = (int) Math.floor(100 * fits);
    if (percent < 1) return Optional.empty();
    return Optional.of(new Remedy(Remedy.Kind.LESS_ROCK,
        "lay up no more than " + percent + " % of this rock's weight in this way", left(solvers, 0.01 * percent)));
  }

  private double left(List<PaneSolver> solvers, double share) {
    double left = 0;
    for (int i = 0; i < solvers.size(); i++) {
      BottomPane.Solved c = cases.get(i);
      left = Math.max(left, use(c, solvers.get(i).worst(pane.envelope(c.stress().load(), share), judgedWithPa(c))));
    }
    return left;
  }

  // -- words --------------------------------------------------------------------------------------------------------

  private String footWords(Trial t) {
    List<String> each = new ArrayList<>();
    t.seats.forEach((foot, seat) -> each.add(String.format(Locale.ROOT, "%s a bedded foot %.0f mm across",
        pane.feet().get(foot).rock(), 2e3 * ((Disc) seat).radiusM)));
    boolean grid = t.floor.kind() == Floor.Kind.GRID && pane.scene().floor().kind() != Floor.Kind.GRID;
    return (grid ? "lay a louvre grid and give " : "give ") + joined(each);
  }

  private String names(Map<Integer, Seat> seats) {
    return joined(seats.keySet().stream().map(f -> pane.feet().get(f).rock()).distinct().toList());
  }

  private static String joined(List<String> words) {
    int n = words.size();
    return n == 1 ? words.get(0) : String.join(", ", words.subList(0, n - 1)) + " and " + words.get(n - 1);
  }
}
