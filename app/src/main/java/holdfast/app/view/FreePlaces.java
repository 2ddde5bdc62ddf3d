package holdfast.app.view;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Where words beside things go on a flat picture: clear of what is taken if they can, and inside the drawing. */
final class FreePlaces {
  private final Rectangle2D within;
  private final List<Rectangle2D> taken = new ArrayList<>();

  FreePlaces(Rectangle2D within) {
    this.within = within;
  }

  void take(Rectangle2D box) {
    taken.add(box);
  }

  /** A box of this size by another: right, left, above, below, then the corners, the first that clashes least; taken then. */
  Rectangle2D beside(Rectangle2D by, double w, double h, double gap) {
    double right = by.getMaxX() + gap;
    double left = by.getMinX() - gap - w;
    double above = by.getMinY() - gap - h;
    double below = by.getMaxY() + gap;
    double midX = by.getCenterX() - 0.5 * w;
    double midY = by.getCenterY() - 0.5 * h;
    double[][] places = {{right, midY}, {left, midY}, {midX, above}, {midX, below},
      {right, above}, {right, below}, {left, above}, {left, below}};
    Rectangle2D best = null;
    double least = Double.POSITIVE_INFINITY;
    for (double[] p : places) {
      Rectangle2D box = new Rectangle2D.Double(p[0], p[1], w, h);
      double clash = taken.stream().mapToDouble(t -> shared(t, box)).sum() + w * h - shared(within, box);
      if (clash < least - 1e-9) {
        least = clash;
        best = box;
      }
    }
    taken.add(best);
    return best;
  }

  private static double shared(Rectangle2D a, Rectangle2D b) {
    Rectangle2D both = a.createIntersection(b);
    return both.getWidth() > 0 && both.getHeight() > 0 ? both.getWidth() * both.getHeight() : 0;
  }
}
