package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.engine.check.CheckReport;
import holdfast.engine.gap.Gaps;
import holdfast.model.geom.Vec3;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Drawings at rocks: patches, gaps, feet. Each either adds to the marks among the stones, or writes on the finished picture. */
final class SceneMarks {
  /** Metres: the column of the foot with the most force. */
  private static final double COLUMN_M = 0.15;
  /** Newtons: heaps lighter than this do not fill the height. */
  private static final double LEAST_FULL_N = 40;

  private SceneMarks() {}

  // -- patches ----------------------------------------------------------------------------------------------------------

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
}
