package holdfast.app.view;

import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.app.view.draw.Stone;
import holdfast.engine.check.CheckReport;
import holdfast.engine.statics.Movement;
import holdfast.engine.gap.Gaps;
import holdfast.engine.gap.ReachMap;
import holdfast.engine.light.LightReport;
import holdfast.engine.pane.PaneReport;
import holdfast.app.report.JointNumbers;
import holdfast.app.report.JointNumbers.Pair;
import holdfast.app.report.Units;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Side;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The drawings of what was found. Each either adds to the marks among the stones, or writes on the finished picture. */
final class SceneMarks {
  /** A rose of fewer directions encloses nothing. */
  static final int LEAST_PETALS = 3;
  private static final double ROSE_REACH = 0.17;
  /** Metres: the column of the foot with the most force. */
  private static final double COLUMN_M = 0.15;
  /** Newtons: heaps lighter than this do not fill the height. */
  private static final double LEAST_FULL_N = 40;

  private SceneMarks() {}

  // -- push rose ----------------------------------------------------------------------------------------------------

  /** The push margins of a stone round the compass, level about its middle; the ring is the chosen tier. */
  static void rose(Brush brush, Projector eye, Stone s, CheckReport.RockLine line, Scene scene, Units units) {
    if (line.rose().size() < LEAST_PETALS) return;
    double tier = scene.settings().get(Setting.PUSH_TIER_N);
    Vec3 middle = new Vec3(s.centreInTank().x(), s.centreInTank().y(), (s.low().z() + s.high().z()) / 2);
    double perN = ROSE_REACH / (2 * tier);
    int n = line.rose().size();
    double[][] at = new double[n][];
    for (int i = 0; i < n; i++) {
      CheckReport.PushLine p = line.rose().get(i);
      double r = 0.02 + perN * Math.min(2 * tier, p.unlimited() ? 2 * tier : p.marginN());
      // A push toward the right comes from the left: the petal lies on the side where the hand is.
      Projector.Spot q = eye.spot(middle.plusTimes(-r, Vec3.heading(p.degrees())));
      if (!q.inFront()) return;
      at[i] = new double[] {q.x(), q.y()};
    }
    Projector.Spot c = eye.spot(middle);
    for (int i = 0; i < n; i++) {
      // Each direction has the sector half way to its neighbours.
      double[] before = middle(at[(i + n - 1) % n], at[i]);
      double[] after = middle(at[i], at[(i + 1) % n]);
      boolean weak = line.rose().get(i).marginN() < tier && !line.rose().get(i).unlimited();
      Colour fill = weak ? Palette.FAIL : Palette.FINE;
      for (double[] b : new double[][] {before, after}) {
        brush.triangle(c.x(), c.y(), at[i][0], at[i][1], b[0], b[1], fill.solid(0.16));
        brush.line(at[i][0], at[i][1], b[0], b[1], 2, fill.solid(0.9));
      }
    }
    ring(brush, eye, middle, 0.02 + perN * tier, Palette.INK_SOFT.solid(0.7));
    line.weakest().ifPresent(w -> {
      Vec3 dir = Vec3.heading(w.degrees());
      double r = 0.02 + perN * Math.min(2 * tier, w.marginN());
      Projector.Spot tip = eye.spot(middle.plusTimes(-r, dir));
      Projector.Spot tail = eye.spot(middle.plusTimes(-r - 0.07, dir));
      Colour colour = w.marginN() < tier && !w.unlimited() ? Palette.FAIL : Palette.FINE;
      brush.arrow(tail.x(), tail.y(), tip.x(), tip.y(), 3, colour);
      String words = (w.unlimited() ? "over " : "") + Scale.force(w.marginN(), units)
          + (w.movement() == Movement.NONE ? "" : " " + w.movement().word());
      brush.tagBehind(tail.x(), tail.y(), tail.x() - tip.x(), tail.y() - tip.y(), words, Style.STRONG);
    });
  }

  private static double[] middle(double[] a, double[] b) {
    return new double[] {(a[0] + b[0]) / 2, (a[1] + b[1]) / 2};
  }

  private static void ring(Brush brush, Projector eye, Vec3 middle, double r, Colour c) {
    for (int i = 0; i < 72; i += 2) {
      Projector.Spot a = eye.spot(middle.plusTimes(r, Vec3.heading(5 * i)));
      Projector.Spot b = eye.spot(middle.plusTimes(r, Vec3.heading(5 * (i + 1))));
      if (a.inFront() && b.inFront()) brush.line(a.x(), a.y(), b.x(), b.y(), 1.2, c);
    }
  }

  // -- joints -------------------------------------------------------------------------------------------------------

  /** Numbered joints: filled when fixed, open when not, on a square in the colour of failing when one is to be fixed. */
  static void joints(
      Brush brush, Projector eye, List<Survey.Touch> joints, JointNumbers numbers, List<Pair> wanted, Optional<Pair> open) {
    for (Survey.Touch t : joints) {
      Optional<Integer> number = numbers.number(t.a(), t.b());
      if (number.isEmpty()) continue;
      Projector.Spot p = eye.spot(t.middle());
      if (!p.inFront()) continue;
      boolean fixed = number.get() <= numbers.fixed();
      boolean on = open.filter(q -> q.is(t.a(), t.b())).isPresent();
      double r = on ? 13 : 10.5;
      if (wanted.stream().anyMatch(q -> q.is(t.a(), t.b()))) {
        double h = (r + 5) * brush.scale();
        brush.card(p.x() - h, p.y() - h, p.x() + h, p.y() + h, 4, Palette.FAIL);
      }
      brush.disc(p.x(), p.y(), r, fixed ? Palette.JOINT : Palette.PANEL.solid(0.95));
      brush.ring(p.x(), p.y(), r, on ? 3 : 2, on ? Palette.INK : Palette.JOINT);
      double base = p.y() + brush.letters().capHeight(Style.STRONG) / 2 + 0.5;
      brush.text(p.x(), base, Integer.toString(number.get()), Style.STRONG, 0.5,
          fixed ? Palette.PANEL : Palette.INK);
    }
  }

  static void patches(Marks marks, List<Survey.Touch> touches, Colour c) {
    for (Survey.Touch t : touches) {
      for (List<Vec3> patch : t.patches()) {
        if (patch.size() > 2) marks.veil().polygon(patch.stream().map(q -> q.plusTimes(0.0006, Vec3.Z)).toList(), Vec3.Z, c);
        for (int i = 0; i < patch.size() && patch.size() > 1; i++) {
          marks.line(patch.get(i), patch.get((i + 1) % patch.size()), 2, c.solid(0.95));
        }
      }
    }
  }

  // -- gaps ---------------------------------------------------------------------------------------------------------

  /** Lines from rock to glass with their length; too short ones in the colour of failing, with a square end. */
  static void gaps(Brush brush, Projector eye, Gaps gaps, Optional<String> rock, Units units) {
    for (Gaps.PaneGap g : gaps.panes()) {
      boolean wanted = rock.isPresent() ? rock.get().equals(g.name()) : !g.kept();
      if (wanted) gap(brush, eye, g.onRock(), g.onPane(), g.distanceM(), g.kept(), units);
    }
    for (Gaps.DeviceGap g : gaps.devices()) {
      boolean wanted = rock.isPresent() ? rock.get().equals(g.name()) : !g.kept();
      if (wanted) gap(brush, eye, g.onRock(), g.onDevice(), g.distanceM(), g.kept(), units);
    }
  }

  private static void gap(Brush brush, Projector eye, Vec3 a, Vec3 b, double m, boolean kept, Units units) {
    Projector.Spot p = eye.spot(a);
    Projector.Spot q = eye.spot(b);
    if (!p.inFront() || !q.inFront()) return;
    Colour c = kept ? Palette.GAP : Palette.FAIL;
    brush.line(p.x(), p.y(), q.x(), q.y(), 2.4, c);
    double s = 3.5 * brush.scale();
    if (kept) {
      brush.disc(p.x(), p.y(), 3.5, c).disc(q.x(), q.y(), 3.5, c);
    } else {
      brush.box(p.x() - s, p.y() - s, p.x() + s, p.y() + s, c).box(q.x() - s, q.y() - s, q.x() + s, q.y() + s, c);
    }
    // Beside the line, so that a short one is seen as well.
    boolean level = Math.abs(p.x() - q.x()) > Math.abs(p.y() - q.y());
    String words = Scale.room(m * 1e3, units);
    double aside = level ? 0 : brush.letters().width(words, Style.STRONG) / 2 + 14 * brush.scale();
    brush.tag((p.x() + q.x()) / 2 + aside, (p.y() + q.y()) / 2 - (level ? 16 : 0) * brush.scale(), words, Style.STRONG,
        Palette.INK, Palette.PANEL.solid(0.92));
  }

  // -- feet ---------------------------------------------------------------------------------------------------------

  /** Columns as high as the most force of each foot, the largest as high as {@link #COLUMN_M}; a collar tells the least. */
  static void feet(Marks marks, List<Survey.Touch> feet, CheckReport report) {
    double perN = perNewton(report);
    for (Survey.Touch t : feet) {
      foot(t, feet, report).ifPresent(f -> {
        Colour c = f.bounded() ? Palette.FORCE : Palette.UNDECIDED;
        marks.column(t.middle(), 0.007, height(f, perN), c);
        double least = Math.max(0.002, Math.min(COLUMN_M, f.leastN() * perN));
        marks.column(t.middle(), 0.0105, least, c.toward(Palette.PANEL, 0.35));
      });
    }
  }

  private static double perNewton(CheckReport report) {
    double most = report.feet().stream().filter(CheckReport.FootLine::bounded).mapToDouble(CheckReport.FootLine::mostN)
        .max().orElse(0);
    return COLUMN_M / Math.max(LEAST_FULL_N, most);
  }

  /** A foot without a limit gets the full height, in another colour and with other words. */
  private static double height(CheckReport.FootLine f, double perN) {
    return f.bounded() ? Math.max(0.004, f.mostN() * perN) : COLUMN_M;
  }

  static void feetWords(Brush brush, Projector eye, List<Survey.Touch> feet, CheckReport report, Units units) {
    double perN = perNewton(report);
    for (Survey.Touch t : feet) {
      foot(t, feet, report).ifPresent(f -> {
        Projector.Spot p = eye.spot(t.middle().plusTimes(height(f, perN), Vec3.Z));
        if (!p.inFront()) return;
        String most = Scale.load(f.mostN(), units);
        String least = Scale.leastLoad(Math.max(0, f.leastN()), units);
        String words = !f.bounded() ? "no limit: wedged"
            : least.equals(most) ? most : least.replaceAll(" .*", "") + " to " + most;
        brush.tag(p.x(), p.y() - 13 * brush.scale(), words, Style.LABEL, Palette.INK, Palette.PANEL.solid(0.9));
      });
    }
  }

  /** The report's line of a foot: the one in the same place of the rock's row, or the one whose area is nearest. */
  private static Optional<CheckReport.FootLine> foot(Survey.Touch t, List<Survey.Touch> feet, CheckReport report) {
    List<Survey.Touch> own = feet.stream().filter(f -> f.a().equals(t.a())).toList();
    List<CheckReport.FootLine> lines = report.feet().stream().filter(f -> f.rock().equals(t.a())).toList();
    if (own.size() == lines.size()) return Optional.of(lines.get(own.indexOf(t)));
    return lines.stream().min(Comparator.comparingDouble(f -> Math.abs(f.areaMm2() - t.areaMm2())));
  }

  // -- maps ---------------------------------------------------------------------------------------------------------

  /** Stress of the bottom pane as a veil just above the floor; the scale ends where the design strength is used up. */
  static void pane(Marks marks, PaneReport report, double topM) {
    PaneReport.StressMap m = report.map();
    double full = MapKeys.limit(report);
    double z = topM + 0.002;
    for (int r = 0; r + 1 < m.rows(); r++) {
      for (int c = 0; c + 1 < m.columns(); c++) {
        Vec3 a = place(m, c, r, z);
        Vec3 b = place(m, c + 1, r, z);
        Vec3 d = place(m, c + 1, r + 1, z);
        Vec3 e = place(m, c, r + 1, z);
        Colour ca = heat(m.stressNmm2(c, r), full);
        Colour cb = heat(m.stressNmm2(c + 1, r), full);
        Colour cd = heat(m.stressNmm2(c + 1, r + 1), full);
        Colour ce = heat(m.stressNmm2(c, r + 1), full);
        marks.veil().shaded(a, ca, b, cb, d, cd, Vec3.Z).shaded(a, ca, d, cd, e, ce, Vec3.Z);
      }
    }
  }

  private static Vec3 place(PaneReport.StressMap m, int c, int r, double z) {
    return new Vec3((m.firstXMm() + c * m.stepXMm()) / 1e3, (m.firstYMm() + r * m.stepYMm()) / 1e3, z);
  }

  private static Colour heat(double value, double full) {
    return Palette.scale(value / full).solid(0.82);
  }

  /** What a cleaner wipes of each pane: calm where it gets, dark where it does not fit, between where it is cut off. */
  static void reach(Marks marks, Scene scene, List<ReachMap> maps, List<Side> sides) {
    for (ReachMap m : maps) {
      if (!sides.contains(m.side())) continue;
      for (int r = 0; r < m.rows(); r++) reachRow(marks, scene, m, r);
    }
  }

  /** One row of the map: cells of the same state in a row are one face. What does not fit is hatched as well as dark. */
  private static void reachRow(Marks marks, Scene scene, ReachMap m, int row) {
    double w = m.cellM();
    double z = m.lowM() + row * w;
    for (int from = 0, to; from < m.columns(); from = to) {
      to = from + 1;
      while (to < m.columns() && m.state(to, row) == m.state(from, row)) to++;
      Colour colour = switch (m.state(from, row)) {
        case WIPED -> Palette.FINE.solid(0.16);
        case CUT_OFF -> Palette.WARN.solid(0.5);
        case BLOCKED -> Palette.FAIL.solid(0.5);
      };
      marks.veil().quad(on(scene, m.side(), from * w, z), on(scene, m.side(), to * w, z),
          on(scene, m.side(), to * w, z + w), on(scene, m.side(), from * w, z + w), colour);
      for (int c = from; c < to && m.state(from, row) == ReachMap.State.BLOCKED; c++) {
        if (Math.floorMod(c - row, 4) != 0) continue;
        marks.line(on(scene, m.side(), c * w, z), on(scene, m.side(), (c + 1) * w, z + w), 1.2, Palette.FAIL.solid(0.85));
      }
    }
  }

  private static Vec3 on(Scene scene, Side side, double along, double z) {
    double l = scene.tank().lengthMm() / 1e3;
    double w = scene.tank().widthMm() / 1e3;
    double in = 0.0008;
    return switch (side) {
      case FRONT -> new Vec3(Math.min(along, l), in, z);
      case BACK -> new Vec3(Math.min(along, l), w - in, z);
      case LEFT -> new Vec3(in, Math.min(along, w), z);
      case RIGHT -> new Vec3(l - in, Math.min(along, w), z);
    };
  }

  /** How much of the lamps' light each living rock gets. */
  static void light(Brush brush, Projector eye, LightReport light, List<Stone> stones) {
    for (LightReport.RockLight r : light.rocks()) {
      stones.stream().filter(s -> s.name().equals(r.rock())).findFirst().ifPresent(s -> {
        Vec3 top = new Vec3(s.centreInTank().x(), s.centreInTank().y(), s.high().z());
        Projector.Spot p = eye.spot(top);
        if (!p.inFront()) return;
        double y = p.y() - 22 * brush.scale();
        brush.tag(p.x(), y, Math.round(100 * r.unshaded()) + " %", Style.LABEL, r.shaded() ? Palette.PANEL : Palette.INK,
            r.shaded() ? Palette.INK_SOFT : Palette.LAMP);
      });
    }
  }
}
