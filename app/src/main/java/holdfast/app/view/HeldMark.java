package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Stone;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Optional;

/** What is known of the place to which a rock is being dragged, written beneath it where one looks. */
final class HeldMark {
  private static final double BELOW_PX = 26;

  private HeldMark() {}

  static void draw(Brush brush, Projector eye, Stone held, Optional<Judge.Found> found) {
    Projector.Spot p = eye.spot(new Vec3(held.centreInTank().x(), held.centreInTank().y(), held.low().z()));
    if (!p.inFront()) return;
    Optional<CheckReport> report = found.flatMap(Judge.Found::report);
    Colour ink = report.flatMap(SoFar::look).map(l -> l == SeverityLook.FAIL ? Palette.FAIL : Palette.INK).orElse(Palette.INK);
    brush.tag(p.x(), p.y() + BELOW_PX * brush.scale(), words(held.name(), found), Style.STRONG, ink, Palette.PANEL.solid(0.94));
  }

  /** The worst of what was found of the present place, first of the rock itself; never that all is well. */
  static String words(String rock, Optional<Judge.Found> found) {
    if (found.isEmpty()) return "judging…";
    if (found.get().report().isEmpty()) return "not judged";
    List<Finding> fails =
        SoFar.findings(found.get().report().get()).stream().filter(f -> f.severity() == Severity.FAIL).toList();
    if (fails.isEmpty()) return SoFar.fine(found.get().depth());
    Finding f = fails.stream().filter(x -> x.about().contains(rock)).findFirst().orElse(fails.get(0));
    return f.about().isEmpty() || f.about().contains(rock) ? f.title() : f.about().get(0) + ": " + f.title();
  }
}
