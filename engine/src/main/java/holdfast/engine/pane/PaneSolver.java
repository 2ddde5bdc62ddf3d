package holdfast.engine.pane;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** One pane, one way of carrying it, one set of feet: answers for every load case share the work done here. */
final class PaneSolver {
  private static final int STARTS = 3;
  private static final double WORTH = 0.9;
  private static final int MOST_ROUNDS = 40;

  private final PlateModel model;
  private final List<PlateModel.UnitLoad> units;
  /** Number of the first unit of each foot; one more at the end. A foot's units share its force evenly. */
  private final int[] firstUnit;
  private final int columns;
  private final int rows;
  private final List<Point2> places;
  private final double[][] perNewton;
  private final Bending[] perPascal;

  /**
   * A solver for some feet.
   *
   * @param feet the patches of each foot, which share its force evenly
   */
  PaneSolver(PlateModel model, List<List<Patch>> feet, int columns, int rows) {
    this.model = model;
    this.columns = columns;
    this.rows = rows;
    this.units = feet.stream().flatMap(List::stream).map(model::unitLoad).toList();
    this.firstUnit = new int[feet.size() + 1];
    for (int i = 0; i < feet.size(); i++) firstUnit[i + 1] = firstUnit[i] + feet.get(i).size();
    PlateModel.Net net = new PlateModel.Net(model.plate(), columns, rows);
    List<Point2> all = new ArrayList<>();
    for (int n = 0; n < net.nodes(); n++) all.add(new Point2(net.x(n), net.y(n)));
    feet.forEach(f -> f.forEach(p -> all.add(p.centre())));
    this.places = List.copyOf(all);
    this.perNewton = new double[places.size()][];
    this.perPascal = new Bending[places.size()];
    double[][] onNet = units.stream().map(u -> model.influences(u, net)).toArray(double[][]::new);
    for (int p = 0; p < perNewton.length; p++) {
      perNewton[p] = p < net.nodes() ? byFoot(at(onNet, p)) : influences(places.get(p));
      perPascal[p] = model.unitWater(places.get(p).x(), places.get(p).y());
    }
  }

  private static double[] at(double[][] onNet, int node) {
    double[] each = new double[3 * onNet.length];
    for (int u = 0; u < onNet.length; u++) System.arraycopy(onNet[u], 3 * node, each, 3 * u, 3);
    return each;
  }

  /** Bending per newton of each foot: xx, yy, xy of the first, then of the next. */
  private double[] influences(Point2 p) {
    return byFoot(model.influences(units, p.x(), p.y()));
  }

  /** From units to feet. */
  private double[] byFoot(double[] each) {
    if (units.size() == feet()) return each;
    double[] all = new double[3 * feet()];
    for (int f = 0; f < feet(); f++) {
      int count = firstUnit[f + 1] - firstUnit[f];
      for (int u = firstUnit[f]; u < firstUnit[f + 1]; u++) {
        for (int k = 0; k < 3; k++) all[3 * f + k] += each[3 * u + k] / count;
      }
    }
    return all;
  }

  private int feet() {
    return firstUnit.length - 1;
  }

  private static Bending of(double[] each, int foot) {
    return new Bending(each[3 * foot], each[3 * foot + 1], each[3 * foot + 2]);
  }

  PlateModel model() {
    return model;
  }

  /** The greatest bending, where it is, and the forces that make it. */
  record Worst(Point2 at, Envelope.Peak peak) {}

  /** Greatest principal moment over the pane under feet and water. */
  Worst worst(Envelope envelope, double waterPa) {
    double[] size = new double[places.size()];
    for (int p = 0; p < size.length; p++) {
      size[p] = envelope.sizeAt(perNewton[p], Bending.ZERO.plusTimes(waterPa, perPascal[p]));
    }
    List<Integer> order = IntStream.range(0, size.length).boxed()
        .sorted(Comparator.comparingDouble((Integer p) -> -size[p]).thenComparingInt(p -> p)).limit(STARTS).toList();
    Worst best = null;
    for (int start : order) {
      // A second place that starts well below the best is not climbed to the top.
      if (best != null && size[start] < WORTH * Math.abs(best.peak.momentNm())) continue;
      Worst found = refine(envelope, waterPa, places.get(start));
      if (best == null || Math.abs(found.peak.momentNm()) > Math.abs(best.peak.momentNm())) best = found;
    }
    return best;
  }

  /**
   * Climbs to the top near a place: four neighbours, then the top of the parabola through them; the step is quartered down to
   * the length in {@link Tolerances#PLACE_M}.
   */
  private Worst refine(Envelope envelope, double waterPa, Point2 start) {
    Plate plate = model.plate();
    Worst best = new Worst(start, peakAt(envelope, waterPa, start));
    double step = 0.25 * Math.min(plate.lengthM() / (columns - 1), plate.widthM() / (rows - 1));
    for (int round = 0; step > Tolerances.PLACE_M && round < MOST_ROUNDS; round++) {
      double x = best.at.x();
      double y = best.at.y();
      Worst right = tried(envelope, waterPa, x + step, y);
      Worst left = tried(envelope, waterPa, x - step, y);
      Worst back = tried(envelope, waterPa, x, y + step);
      Worst front = tried(envelope, waterPa, x, y - step);
      double here = size(best);
      Worst top = tried(envelope, waterPa, x + step * vertex(size(left), here, size(right)),
          y + step * vertex(size(front), here, size(back)));
      Worst better = best;
      for (Worst w : List.of(right, left, back, front, top)) if (size(w) > size(better)) better = w;
      // A neighbour better than the parabola's top: the top is still farther off.
      if (better == best || better == top) step *= 0.25;
      best = better;
    }
    return best;
  }

  private static double size(Worst w) {
    return Math.abs(w.peak.momentNm());
  }

  /** Where the parabola through values at -1, 0, 1 is greatest, at most one step off. */
  private static double vertex(double before, double here, double after) {
    double bend = 2 * here - before - after;
    if (!(bend > 0)) return after > before ? 1 : -1;
    return Math.max(-1, Math.min(1, 0.5 * (after - before) / bend));
  }

  private Worst tried(Envelope envelope, double waterPa, double x, double y) {
    Plate plate = model.plate();
    Point2 p = new Point2(Math.min(Math.max(x, 0), plate.lengthM()), Math.min(Math.max(y, 0), plate.widthM()));
    return new Worst(p, peakAt(envelope, waterPa, p));
  }

  private Envelope.Peak peakAt(Envelope envelope, double waterPa, Point2 p) {
    return envelope.at(influences(p), Bending.ZERO.plusTimes(waterPa, model.unitWater(p.x(), p.y())));
  }

  /** Greatest principal moment of the water alone. */
  double waterMomentNm(double waterPa) {
    return waterPa * Arrays.stream(perPascal).mapToDouble(b -> Math.abs(b.principal())).max().orElse(0);
  }

  /** Number of the foot that adds most to a peak, or -1 without feet. */
  int governingFoot(Worst worst) {
    double[] each = influences(worst.at);
    double angle = worst.peak.bending().principalAngle();
    double sign = Math.signum(worst.peak.momentNm());
    int most = -1;
    double best = 0;
    for (int i = 0; i < feet(); i++) {
      double share = sign * worst.peak.forcesN()[i] * of(each, i).along(angle);
      if (share > best) {
        best = share;
        most = i;
      }
    }
    return most;
  }

  /** Share of one foot in the principal moment of a peak. */
  double share(Worst worst, int foot) {
    Bending own = of(influences(worst.at), foot);
    return worst.peak.forcesN()[foot] * own.along(worst.peak.bending().principalAngle()) / worst.peak.momentNm();
  }

  PlateModel.Deflection deflection(double[] forcesN, double waterPa) {
    double[] each = new double[units.size()];
    for (int f = 0; f < feet(); f++) {
      int count = firstUnit[f + 1] - firstUnit[f];
      for (int u = firstUnit[f]; u < firstUnit[f + 1]; u++) each[u] = forcesN[f] / count;
    }
    return model.deflection(units, each, waterPa);
  }

  int columns() {
    return columns;
  }

  int rows() {
    return rows;
  }

  /** Surface stress, pascals, at every grid place, row by row from the front: the greatest that the case admits there. */
  double[] stressMapPa(Envelope envelope, double waterPa) {
    double[] map = new double[columns * rows];
    for (int p = 0; p < map.length; p++) {
      double moment = Math.abs(envelope.at(perNewton[p], Bending.ZERO.plusTimes(waterPa, perPascal[p])).momentNm());
      map[p] = model.plate().surfaceStressPa(moment);
    }
    return map;
  }

  /** Bending at a place with one foot's patch and force replaced. */
  Bending withFoot(Point2 at, Worst worst, double waterPa, int foot, Patch patch, double forceN) {
    double[] each = influences(at);
    Bending sum = Bending.ZERO.plusTimes(waterPa, model.unitWater(at.x(), at.y()));
    for (int i = 0; i < feet(); i++) if (i != foot) sum = sum.plusTimes(worst.peak.forcesN()[i], of(each, i));
    return sum.plusTimes(forceN, model.bending(model.unitLoad(patch), at.x(), at.y()));
  }
}
