package holdfast.app.view;

import holdfast.app.report.Quantity;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Colour;
import holdfast.app.view.draw.Lettering.Style;
import holdfast.app.view.draw.Marks;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Scale;
import holdfast.engine.build.OpeningFit;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import holdfast.engine.contact.Planar;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** A piece that is hard to lift, with centre of mass and mass, or one that an opening keeps out, with its section there. */
record PieceMarks(Scene scene, Piece piece, Finding finding, Units units) {
  /** Metres: the arrow above a piece that is lifted. */
  private static final double ARROW_M = 0.09;
  /** Metres between the lines that hatch what is too large. */
  private static final double HATCH_M = 0.008;
  /** Pixels between a piece and its outline. */
  private static final double ROOM_PX = 8;
  private static final double CENTRE_PX = 9;

  private Colour colour() {
    return finding.severity() == Severity.FAIL ? Palette.FAIL : Palette.WARN;
  }

  // -- lift ---------------------------------------------------------------------------------------------------------

  void lift(Brush brush, Projector eye) {
    outline(brush, eye);
    Projector.Spot centre = eye.spot(piece.centre());
    Vec3 over = new Vec3(piece.centre().x(), piece.centre().y(), piece.topM());
    Projector.Spot top = eye.spot(over);
    Projector.Spot tip = eye.spot(over.plusTimes(ARROW_M, Vec3.Z));
    if (!centre.inFront() || !top.inFront() || !tip.inFront()) return;
    brush.dashes(centre.x(), centre.y(), top.x(), top.y(), 2, 4, Palette.INK);
    brush.arrow(top.x(), top.y(), tip.x(), tip.y(), 4, colour());
    centreOfMass(brush, centre.x(), centre.y(), CENTRE_PX);
    finding.figure().ifPresent(kg -> brush.tagBehind(tip.x(), tip.y(), 0, -1, mass(kg), Style.STRONG));
  }

  private String mass(double kg) {
    String wet = units.text(Quantity.MASS, kg, RoundingMode.CEILING) + " wet";
    if (finding.limit().isEmpty()) return wet;
    return wet + ", at most " + units.brief(Quantity.MASS, finding.limit().getAsDouble())
        + (finding.severity() == Severity.FAIL ? " for two" : " for one");
  }

  /** The mechanics' sign of a centre of mass: a disc of which opposite quarters are dark. */
  static void centreOfMass(Brush brush, double x, double y, double radius) {
    double r = radius * brush.scale();
    brush.disc(x, y, radius, Palette.PANEL);
    for (int from = 0; from < 360; from += 180) {
      List<double[]> quarter = new ArrayList<>(List.of(new double[] {x, y}));
      for (int a = 0; a <= 90; a += 10) {
        double t = Math.toRadians(from + a);
        quarter.add(new double[] {x + r * Math.cos(t), y + r * Math.sin(t)});
      }
      brush.fan(quarter, Palette.INK);
    }
    brush.ring(x, y, radius, 1.6, Palette.INK);
  }

  /** A line round all of the piece's rocks as they are seen. */
  private void outline(Brush brush, Projector eye) {
    double[] seen = new double[2 * piece.corners().size()];
    for (int i = 0; i < piece.corners().size(); i++) {
      Projector.Spot p = eye.spot(piece.corners().get(i));
      if (!p.inFront()) return;
      seen[2 * i] = p.x();
      seen[2 * i + 1] = p.y();
    }
    double[] hull = Planar.hull(seen, brush.scale());
    int n = Planar.corners(hull);
    double mx = 0;
    double my = 0;
    for (int i = 0; i < n; i++) {
      mx += hull[2 * i] / n;
      my += hull[2 * i + 1] / n;
    }
    for (int i = 0; i < n; i++) {
      double dx = hull[2 * i] - mx;
      double dy = hull[2 * i + 1] - my;
      double away = ROOM_PX * brush.scale() / Math.max(1, Math.hypot(dx, dy));
      hull[2 * i] += away * dx;
      hull[2 * i + 1] += away * dy;
    }
    for (int i = 0; i < n; i++) {
      int j = (i + 1) % n;
      brush.line(hull[2 * i], hull[2 * i + 1], hull[2 * j], hull[2 * j + 1], 2.6, colour());
    }
  }

  // -- opening ------------------------------------------------------------------------------------------------------

  /** The opening without the room for fingers, and in it the piece's section: hatched where it is too large. */
  void opening(Marks marks) {
    List<Vec3> free = piece.freeOpening(scene);
    Vec3 lo = free.get(0);
    Vec3 hi = free.get(1);
    double z = lo.z();
    double[] section = piece.section(scene);
    if (hi.x() > lo.x() && hi.y() > lo.y()) {
      double[] rim = {lo.x(), lo.y(), hi.x(), lo.y(), hi.x(), hi.y(), lo.x(), hi.y()};
      loop(marks, rim, z, 2.6, Palette.GAP);
      double[] fits = Planar.clip(section, rim, 0);
      if (Planar.corners(fits) > 2) marks.veil().polygon(places(fits, z), Vec3.Z, Palette.FINE.solid(0.4));
    }
    for (double[] part : beyond(section, lo, hi)) {
      marks.veil().polygon(places(part, z), Vec3.Z, Palette.FAIL.solid(0.5));
      hatch(marks, part, z);
    }
    loop(marks, section, z, 2, Palette.INK);
  }

  /** What the section has outside the rectangle, in convex parts. */
  static List<double[]> beyond(double[] section, Vec3 lo, Vec3 hi) {
    List<double[]> parts = new ArrayList<>();
    double[][] sides = {{-1, 0, -lo.x()}, {1, 0, hi.x()}, {0, -1, -lo.y()}, {0, 1, hi.y()}};
    double[] rest = section;
    for (double[] s : sides) {
      double[] out = Planar.clip(rest, -s[0], -s[1], -s[2], 0);
      if (Planar.corners(out) > 2 && Planar.area(out) > 0) parts.add(out);
      rest = Planar.clip(rest, s[0], s[1], s[2], 0);
    }
    return parts;
  }

  private static void hatch(Marks marks, double[] part, double z) {
    double h = Math.sqrt(0.5);
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < Planar.corners(part); i++) {
      double c = h * (part[2 * i] - part[2 * i + 1]);
      low = Math.min(low, c);
      high = Math.max(high, c);
    }
    for (double c = HATCH_M * Math.ceil(low / HATCH_M); c < high; c += HATCH_M) {
      List<Vec3> cut = new ArrayList<>();
      for (int i = 0; i < Planar.corners(part); i++) {
        int j = (i + 1) % Planar.corners(part);
        double from = h * (part[2 * i] - part[2 * i + 1]) - c;
        double to = h * (part[2 * j] - part[2 * j + 1]) - c;
        if (from < 0 == to < 0) continue;
        double t = from / (from - to);
        cut.add(new Vec3(part[2 * i] + t * (part[2 * j] - part[2 * i]),
            part[2 * i + 1] + t * (part[2 * j + 1] - part[2 * i + 1]), z));
      }
      if (cut.size() == 2) marks.line(cut.get(0), cut.get(1), 1.3, Palette.FAIL.solid(0.9));
    }
  }

  private static void loop(Marks marks, double[] polygon, double z, double px, Colour c) {
    List<Vec3> p = places(polygon, z);
    for (int i = 0; i < p.size(); i++) marks.line(p.get(i), p.get((i + 1) % p.size()), px, c);
  }

  private static List<Vec3> places(double[] polygon, double z) {
    List<Vec3> out = new ArrayList<>();
    for (int i = 0; i < Planar.corners(polygon); i++) out.add(new Vec3(polygon[2 * i], polygon[2 * i + 1], z));
    return out;
  }

  /**
   * The piece, the way up to its opening, and by how much it is too large for it.
   *
   * @param turning a way was found on which it turns part way through
   */
  void openingWords(Brush brush, Projector eye, boolean turning) {
    outline(brush, eye);
    List<Vec3> free = piece.freeOpening(scene);
    Projector.Spot from = eye.spot(new Vec3(piece.centre().x(), piece.centre().y(), piece.topM()));
    Projector.Spot to = eye.spot(free.get(0).plus(free.get(1)).times(0.5));
    if (!from.inFront() || !to.inFront()) return;
    brush.dashes(from.x(), from.y(), to.x(), to.y(), 2, 5, Palette.INK);
    brush.tag(to.x(), to.y(), openingTag(turning), Style.STRONG, Palette.INK, Palette.PANEL.solid(0.92));
  }

  private String openingTag(boolean turning) {
    if (turning) return "only by turning: see the sheet";
    return switch (piece.module().passage().answer()) {
      case STUCK -> Scale.excess(-1e3 * piece.module().passage().slackM(), units) + " too large";
      case PASSES -> "too tall, tilted to fit";
      case UNDECIDED -> "within " + Scale.length(1e3 * OpeningFit.TOLERANCE_M, units) + ": not settled";
    };
  }
}
