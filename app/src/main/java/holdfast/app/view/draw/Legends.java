package holdfast.app.view.draw;

import holdfast.app.report.Units;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import holdfast.model.scene.UsMeasure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What is written about the tank on a picture: numbers of the cells, level of the water, lengths, a scale, names. */
public final class Legends {
  private static final double LEAST_CELL_GAP_PX = 26;
  private final Brush brush;
  private final Projector eye;
  private final Units units;

  public Legends(Brush brush, Projector eye, Units units) {
    this.brush = brush;
    this.eye = eye;
    this.units = units;
  }

  /** Column numbers along the front edge of the floor and row numbers along its left edge, counted from the front left. */
  public void cells(Scene scene) {
    Floor.Extent e = scene.floor().extentIn(scene.tank());
    double cell = scene.floor().cellMm();
    double z = -scene.tank().bottomGlassMm() / 1e3;
    Vec3 corner = new Vec3(e.xMm() / 1e3, e.yMm() / 1e3, z);
    double aside = (scene.tank().sideGlassMm() + e.yMm()) / 1e3;
    double pitch = eye.camera().pitchDeg();
    boolean level = pitch < 4;
    boolean fromLeft = level && Math.abs(eye.camera().yawDeg()) < 1;
    if (!fromLeft) axis(corner, Vec3.X, Vec3.Y.negated(), cell / 1e3, (int) (e.lengthMm() / cell), aside, level);
    if (fromLeft || !level) axis(corner, Vec3.Y, Vec3.X.negated(), cell / 1e3, (int) (e.widthMm() / cell), aside, level);
  }

  private void axis(Vec3 corner, Vec3 along, Vec3 out, double cellM, int count, double asideM, boolean level) {
    Projector.Spot a = eye.spot(corner);
    Projector.Spot b = eye.spot(corner.plusTimes(count * cellM, along));
    if (!a.inFront() || !b.inFront()) return;
    double length = Math.hypot(b.x() - a.x(), b.y() - a.y());
    int every = 1;
    for (int step : new int[] {1, 2, 5, 10, 20, 50}) {
      every = step;
      if (length / count * step >= LEAST_CELL_GAP_PX * brush.scale()) break;
    }
    for (int i = every; i <= count; i += every) {
      Vec3 middle = corner.plusTimes((i - 0.5) * cellM, along);
      Projector.Spot edge = eye.spot(middle.plusTimes(level ? 0 : asideM, out));
      Projector.Spot text = eye.spot(middle.plusTimes(level ? 0 : asideM + 0.001, out));
      if (!edge.inFront()) continue;
      double dx = text.x() - edge.x();
      double dy = level ? 1 : text.y() - edge.y();
      double n = Math.max(1e-6, Math.hypot(dx, dy));
      dx /= n;
      dy /= n;
      if (level) {
        dx = 0;
        edge = new Projector.Spot(edge.x(), edge.y() + 2 * brush.scale(), true);
      }
      double s = brush.scale();
      brush.line(edge.x() + dx * 3 * s, edge.y() + dy * 3 * s, edge.x() + dx * 7 * s, edge.y() + dy * 7 * s, 1,
          Palette.INK_FAINT);
      brush.text(edge.x() + dx * 16 * s, edge.y() + dy * 16 * s + brush.letters().capHeight(Lettering.Style.TICK) / 2,
          Integer.toString(i), Lettering.Style.TICK, 0.5, Palette.INK_SOFT);
    }
  }

  /** The level of the water in words, left of the upright edge of the tank that lies farthest left in the picture. */
  public void water(Scene scene) {
    Tank t = scene.tank();
    double level = scene.water().levelMm();
    if (level <= 0 || eye.camera().pitchDeg() > 80) return;
    double side = t.sideGlassMm() / 1e3;
    Projector.Spot best = null;
    for (int i = 0; i < 4; i++) {
      Projector.Spot p = eye.spot(new Vec3((i & 1) == 0 ? -side : t.lengthMm() / 1e3 + side,
          (i & 2) == 0 ? -side : t.widthMm() / 1e3 + side, level / 1e3));
      if (p.inFront() && (best == null || p.x() < best.x())) best = p;
    }
    if (best == null) return;
    double s = brush.scale();
    String text = "water " + Scale.length(level, units);
    double x = best.x() - 8 * s;
    if (x - brush.letters().width(text, Lettering.Style.TICK) < 4 * s) return;
    brush.text(x, best.y() + brush.letters().capHeight(Lettering.Style.TICK) / 2, text, Lettering.Style.TICK, 1,
        Palette.WATER_LINE);
  }

  /**
   * A bar of a round length; only where lengths can be compared.
   *
   * @param x its right end
   * @return where it and its words begin; {@code x} where there is none
   */
  public double scale(double x, double y) {
    if (!eye.camera().flat()) return x;
    double mmPerPx = 1e3 * eye.metresPerPixel(eye.camera().target());
    double unit = units == Units.US ? UsMeasure.INCH_MM : 1;
    double best = 0;
    for (double v : units == Units.US ? new double[] {1, 2, 4, 6, 12, 24} : new double[] {10, 20, 50, 100, 200, 500, 1000}) {
      if (v * unit / mmPerPx <= 170 * brush.scale()) best = v * unit;
    }
    if (best == 0) return x;
    double s = brush.scale();
    double px = best / mmPerPx;
    brush.box(x - px, y - 1 * s, x, y + 1 * s, Palette.INK_SOFT);
    brush.box(x - px, y - 4 * s, x - px + 2 * s, y + 4 * s, Palette.INK_SOFT);
    brush.box(x - 2 * s, y - 4 * s, x, y + 4 * s, Palette.INK_SOFT);
    String words = Scale.length(best, units).replace(".0 in", " in");
    brush.text(x - px / 2, y - 7 * s, words, Lettering.Style.TICK, 0.5, Palette.INK_SOFT);
    return x - Math.max(px, px / 2 + brush.letters().width(words, Lettering.Style.TICK) / 2);
  }

  /** The name of each stone at its middle; a name that would lie on another is moved down. */
  public void names(List<Stone> stones) {
    names(stones, st -> Optional.of(eye.spot(st.centreInTank())).filter(Projector.Spot::inFront));
  }

  /** The same for a picture that nobody can turn: only of rocks that are seen, where they are seen. */
  public void namesOfSeen(List<Stone> stones) {
    names(stones, st -> NamePlaces.seen(eye, st, stones));
  }

  private void names(List<Stone> stones, Function<Stone, Optional<Projector.Spot>> place) {
    List<double[]> taken = new ArrayList<>();
    double h = 20 * brush.scale();
    List<Stone> nearestFirst = new ArrayList<>(stones);
    Vec3 away = eye.camera().forward();
    nearestFirst.sort(Comparator.comparingDouble(q -> q.centreInTank().dot(away)));
    for (Stone st : nearestFirst) {
      Optional<Projector.Spot> found = place.apply(st);
      if (found.isEmpty()) continue;
      Projector.Spot p = found.get();
      double half = brush.letters().width(brush.called(st.name()), Lettering.Style.LABEL) / 2 + 7 * brush.scale();
      double y = p.y();
      for (int round = 0; round < 12; round++) {
        double at = y;
        boolean clash = taken.stream().anyMatch(t -> Math.abs(t[0] - p.x()) < t[2] + half && Math.abs(t[1] - at) < h);
        if (!clash) break;
        y += h / 2;
      }
      taken.add(new double[] {p.x(), y, half});
      brush.tag(p.x(), y, st.name(), Lettering.Style.LABEL, Palette.INK, Palette.PANEL.solid(0.86));
    }
  }
}
