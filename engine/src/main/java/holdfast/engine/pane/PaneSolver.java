package holdfast.engine.pane;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** One pane, one way of carrying it, one set of feet: answers for every load case share the work done here. */
final class PaneSolver {
  private static final int STARTS = 3;

  private final PlateModel model;
  private final List<PlateModel.UnitLoad> units;
  private final int columns;
  private final int rows;
  private final List<Point2> places;
  private final Bending[][] perNewton;
  private final Bending[] perPascal;

  PaneSolver(PlateModel model, List<Patch> feet, int columns, int rows) {
    this.model = model;
    this.columns = columns;
    this.rows = rows;
    this.units = feet.stream().map(model::unitLoad).toList();
    List<Point2> all = new ArrayList<>();
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < columns; i++) {
        all.add(new Point2(model.plate().lengthM() * i / (columns - 1), model.plate().widthM() * j / (rows - 1)));
      }
    }
    feet.forEach(f -> all.add(f.centre()));
    this.places = List.copyOf(all);
    this.perNewton = new Bending[places.size()][];
    this.perPascal = new Bending[places.size()];
    for (int p = 0; p < perNewton.length; p++) {
      perNewton[p] = influences(places.get(p));
      perPascal[p] = model.unitWater(places.get(p).x(), places.get(p).y());
    }
  }

  private Bending[] influences(Point2 p) {
    Bending[] all = new Bending[units.size()];
    for (int i = 0; i < all.length; i++) all[i] = units.get(i).at(p.x(), p.y());
    return all;
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
      size[p] = Math.abs(envelope.at(perNewton[p], Bending.ZERO.plusTimes(waterPa, perPascal[p])).momentNm());
    }
    List<Integer> order = IntStream.range(0, size.length).boxed()
        .sorted(Comparator.comparingDouble((Integer p) -> -size[p]).thenComparingInt(p -> p)).limit(STARTS).toList();
    Worst best = null;
    for (int start : order) {
      Worst found = refine(envelope, waterPa, places.get(start));
      if (best == null || Math.abs(found.peak.momentNm()) > Math.abs(best.peak.momentNm())) best = found;
    }
    return best;
  }

  /** Steps along the axes, halved when none is better, down to the length in {@link Tolerances#PLACE_M}. */
  private Worst refine(Envelope envelope, double waterPa, Point2 start) {
    Plate plate = model.plate();
    Worst best = new Worst(start, peakAt(envelope, waterPa, start));
    double step = 0.25 * Math.min(plate.lengthM() / (columns - 1), plate.widthM() / (rows - 1));
    while (step > Tolerances.PLACE_M) {
      Worst better = best;
      for (int d = 0; d < 4; d++) {
        double x = best.at.x() + (d == 0 ? step : d == 1 ? -step : 0);
        double y = best.at.y() + (d == 2 ? step : d == 3 ? -step : 0);
        Point2 p = new Point2(Math.min(Math.max(x, 0), plate.lengthM()), Math.min(Math.max(y, 0), plate.widthM()));
        Envelope.Peak peak = peakAt(envelope, waterPa, p);
        if (Math.abs(peak.momentNm()) > Math.abs(better.peak.momentNm())) better = new Worst(p, peak);
      }
      if (better == best) step *= 0.5;
      best = better;
    }
    return best;
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
    Bending[] each = influences(worst.at);
    double angle = worst.peak.bending().principalAngle();
    double sign = Math.signum(worst.peak.momentNm());
    int most = -1;
    double best = 0;
    for (int i = 0; i < each.length; i++) {
      double share = sign * worst.peak.forcesN()[i] * each[i].along(angle);
      if (share > best) {
        best = share;
        most = i;
      }
    }
    return most;
  }

  /** Share of one foot in the principal moment of a peak. */
  double share(Worst worst, int foot) {
    Bending own = units.get(foot).at(worst.at.x(), worst.at.y());
    return worst.peak.forcesN()[foot] * own.along(worst.peak.bending().principalAngle()) / worst.peak.momentNm();
  }

  PlateModel.Deflection deflection(double[] forcesN, double waterPa) {
    return model.deflection(units, forcesN, waterPa);
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
      double moment = envelope.at(perNewton[p], Bending.ZERO.plusTimes(waterPa, perPascal[p])).momentNm();
      map[p] = model.plate().surfaceStressPa(Math.abs(moment));
    }
    return map;
  }

  /** Bending at a place with one foot's patch and force replaced. */
  Bending withFoot(Point2 at, Worst worst, double waterPa, int foot, Patch patch, double forceN) {
    Bending[] each = influences(at);
    Bending sum = Bending.ZERO.plusTimes(waterPa, model.unitWater(at.x(), at.y()));
    for (int i = 0; i < each.length; i++) if (i != foot) sum = sum.plusTimes(worst.peak.forcesN()[i], each[i]);
    return sum.plusTimes(forceN, model.unitLoad(patch).at(at.x(), at.y()));
  }
}
