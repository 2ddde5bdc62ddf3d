package holdfast.app.view;

import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Stone;
import holdfast.engine.gap.ReachMap;
import holdfast.engine.light.LightReport;
import holdfast.engine.pane.PaneReport;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Side;
import java.util.List;

/** What was found of places all over the tank, in colours: stress of the bottom pane, reach of a cleaner, light. */
final class MapMarks {
  private MapMarks() {}

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
