package holdfast.app.view;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.engine.check.Finding;
import holdfast.engine.gap.DeadWater;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;

/** Pockets of dead water as cells; in the one that the finding is about, the ball that cannot leave it, and how much it is. */
record HollowMarks(Scene scene, List<Hollow> hollows, Finding finding, Units units) {
  /** Litres by which a finding's figure may differ from its pocket's volume: it is the same number, in another unit. */
  private static final double SAME_ML = 1e-6;

  void cells(Marks marks) {
    for (Hollow h : hollows) {
      double solid = isMeant(h.pocket()) ? 0.5 : 0.2;
      for (List<Vec3> f : h.skin()) marks.veil().quad(f.get(0), f.get(1), f.get(2), f.get(3), Palette.FORCE.solid(solid));
    }
  }

  private boolean isMeant(DeadWater.Pocket p) {
    return finding.about().equals(p.rocks())
        && finding.figure().stream().anyMatch(ml -> Math.abs(ml - 1e6 * p.volumeM3()) < SAME_ML);
  }

  void words(Brush brush, Projector eye) {
    double ballM = scene.settings().get(Setting.DEAD_WATER_MM) / 1e3;
    for (Hollow h : hollows) {
      if (!isMeant(h.pocket())) continue;
      // A place of the pocket's own: the mean place may lie in a rock when the pocket is bent.
      Vec3 at = h.pocket().cells().stream()
          .min(Comparator.comparingDouble(c -> c.distanceTo(h.pocket().centre()))).orElseThrow();
      Projector.Spot p = eye.spot(at);
      if (!p.inFront()) continue;
      double px = ballM / 2 / eye.metresPerPixel(at);
      brush.ring(p.x(), p.y(), px / brush.scale(), 2.4, Palette.INK);
      brush.tagBehind(p.x(), p.y() - px, 0, -1,
          units.text(Quantity.SMALL_VOLUME, 1e6 * h.pocket().volumeM3(), RoundingMode.HALF_EVEN), Style.STRONG);
    }
  }
}
