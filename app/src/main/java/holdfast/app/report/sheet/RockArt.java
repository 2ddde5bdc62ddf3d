package holdfast.app.report.sheet;

import holdfast.model.scene.Rock;
import java.util.List;
import java.util.function.IntFunction;

/** Draws rocks: filled from the back to the front, then their outlines, hidden ones dashed. */
final class RockArt {
  private RockArt() {}

  /**
   * Draws rocks.
   *
   * @param fill colour of each rock
   * @param creases with the edges between faces, thin
   * @param hidden with what is hidden, dashed
   * @return the lines
   */
  static List<Drawing.Stroke> draw(
      Canvas c, Scaled s, Drawing drawing, IntFunction<Ink> fill, boolean creases, boolean hidden) {
    for (int rock : drawing.backToFront()) {
      c.brush(fill.apply(rock));
      for (List<double[]> shadow : drawing.shadows(rock)) c.fillPolygon(s.all(shadow));
    }
    List<Drawing.Stroke> strokes = drawing.strokes(creases);
    if (creases) {
      c.pen(Ink.PALE, 0.15);
      strokes(c, s, strokes, Drawing.Kind.CREASE);
    }
    if (hidden) {
      c.pen(Ink.GREY, 0.22, 1.2, 0.9);
      strokes(c, s, strokes, Drawing.Kind.HIDDEN);
    }
    c.pen(Ink.BLACK, 0.4);
    strokes(c, s, strokes, Drawing.Kind.OUTLINE);
    return strokes;
  }

  private static void strokes(Canvas c, Scaled s, List<Drawing.Stroke> strokes, Drawing.Kind kind) {
    for (Drawing.Stroke k : strokes) {
      if (k.kind() == kind) c.line(s.x(k.x1()), s.y(k.y1()), s.x(k.x2()), s.y(k.y2()));
    }
  }

  static Ink fillOf(Rock.Kind kind) {
    return kind == Rock.Kind.LIVE ? Ink.LIVING : Ink.STONE;
  }

  /**
   * Where a rock's name goes, metres of the picture.
   *
   * @param depthM how deep the point lies inside what is seen of the rock; 0 when nothing is, and then it is the middle of
   *     the shadow
   */
  record Spot(double x, double y, double depthM) {}

  /** The point of a rock's shadow that is deepest inside what is seen of it. */
  static Spot seenMiddle(Drawing drawing, int rock, int rocks) {
    return seenMiddle(drawing, rock, rocks,
        new double[] {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY});
  }

  /** The same within a window: least and greatest x and y. */
  static Spot seenMiddle(Drawing drawing, int rock, int rocks, double[] window) {
    List<List<double[]>> own = drawing.shadows(rock);
    List<Integer> order = drawing.backToFront();
    List<Integer> nearer = order.subList(order.indexOf(rock) + 1, rocks);
    List<List<double[]>> over = nearer.stream().flatMap(r -> drawing.shadows(r).stream()).toList();
    double[] whole = Flat.box(own);
    double[] box = {
      Math.max(whole[0], window[0]), Math.max(whole[1], window[1]), Math.min(whole[2], window[2]), Math.min(whole[3], window[3])};
    Spot best = new Spot((whole[0] + whole[2]) / 2, (whole[1] + whole[3]) / 2, 0);
    if (box[2] <= box[0] || box[3] <= box[1]) return best;
    int steps = 40;
    for (int i = 1; i < steps; i++) {
      for (int j = 1; j < steps; j++) {
        double x = box[0] + (box[2] - box[0]) * i / steps;
        double y = box[1] + (box[3] - box[1]) * j / steps;
        double depth = own.stream().mapToDouble(p -> Flat.depth(p, x, y)).max().orElse(-1);
        for (List<double[]> o : over) depth = Math.min(depth, -Flat.depth(o, x, y));
        depth = Math.min(depth, Math.min(Math.min(x - window[0], window[2] - x), Math.min(y - window[1], window[3] - y)));
        if (depth > best.depthM + 1e-12) best = new Spot(x, y, depth);
      }
    }
    return best;
  }
}
