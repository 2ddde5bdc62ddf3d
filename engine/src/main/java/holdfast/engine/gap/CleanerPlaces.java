package holdfast.engine.gap;

import holdfast.engine.contact.Planar;
import holdfast.model.geom.Hull;
import java.util.ArrayDeque;
import java.util.List;

/**
 * The places of a cleaner's centre on one pane, in cells: which are open, and which of them are joined to the rim.
 * In the topmost row the cleaner is wholly above the rim, where nothing is in the way but what stands out of the tank.
 */
final class CleanerPlaces {
  private final PaneFrame frame;
  private final Cleaner cleaner;
  private final double low;
  private final double cell;
  /** First and last place of the centre along the pane. */
  private final double first;
  private final double last;
  private final int columns;
  private final int rows;
  private final boolean[] blocked;

  CleanerPlaces(PaneFrame frame, Cleaner cleaner, double low, double cell) {
    this.frame = frame;
    this.cleaner = cleaner;
    this.low = low;
    this.cell = cell;
    first = cleaner.lengthM() / 2;
    last = frame.lengthM() - cleaner.lengthM() / 2;
    // A cleaner exactly as long as the pane has one place, a cell of no width.
    columns = last < first - Tolerances.ROUNDING_M ? 0 : Math.max(1, ReachMap.cells(last - first, cell));
    rows = ReachMap.cells(frame.heightM() - low, cell) + 1;
    blocked = new boolean[columns * rows];
  }

  private double from(int column) {
    return first + column * cell;
  }

  private double to(int column) {
    return Math.max(from(column), Math.min(last, first + (column + 1) * cell));
  }

  /** Marks where one body is in the way; returns how much of the places below the rim that is. */
  double block(List<Hull> lobes) {
    boolean[] here = new boolean[blocked.length];
    for (Hull lobe : lobes) blockLobe(lobe, here);
    int below = (rows - 1) * columns;
    int count = 0;
    for (int i = 0; i < here.length; i++) {
      if (!here[i]) continue;
      blocked[i] = true;
      if (i < below) count++;
    }
    return below == 0 ? 0 : (double) count / below;
  }

  private void blockLobe(Hull lobe, boolean[] here) {
    double[] shadow = ReachMap.shadow(lobe, frame, cleaner.thicknessM());
    if (shadow.length == 0) return;
    for (int row = 0; row < rows; row++) {
      // All that a cleaner covers with its centre anywhere in this row.
      double bottom = low + row * cell;
      double top = bottom + cell + cleaner.heightM();
      double[] band = Planar.clip(shadow, 0, -1, -(bottom + Tolerances.ROUNDING_M), 0);
      if (band.length > 0) band = Planar.clip(band, 0, 1, top - Tolerances.ROUNDING_M, 0);
      if (band.length == 0) continue;
      double left = Double.POSITIVE_INFINITY;
      double right = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < band.length; i += 2) {
        left = Math.min(left, band[i]);
        right = Math.max(right, band[i]);
      }
      for (int c = 0; c < columns; c++) {
        if (to(c) + cleaner.lengthM() / 2 > left + Tolerances.ROUNDING_M
            && from(c) - cleaner.lengthM() / 2 < right - Tolerances.ROUNDING_M) {
          here[row * columns + c] = true;
        }
      }
    }
  }

  /** Cells of which every place is clear. */
  boolean[] open() {
    boolean[] open = new boolean[blocked.length];
    for (int i = 0; i < open.length; i++) open[i] = !blocked[i];
    return open;
  }

  /** Open cells joined to the top row by open neighbours. */
  boolean[] reached() {
    boolean[] reached = new boolean[blocked.length];
    ArrayDeque<Integer> front = new ArrayDeque<>();
    for (int i = (rows - 1) * columns; i < rows * columns; i++) visit(i, reached, front);
    while (!front.isEmpty()) {
      int i = front.remove();
      int column = i % columns;
      if (column > 0) visit(i - 1, reached, front);
      if (column < columns - 1) visit(i + 1, reached, front);
      if (i >= columns) visit(i - columns, reached, front);
      if (i < (rows - 1) * columns) visit(i + columns, reached, front);
    }
    return reached;
  }

  private void visit(int i, boolean[] reached, ArrayDeque<Integer> front) {
    if (blocked[i] || reached[i]) return;
    reached[i] = true;
    front.add(i);
  }

  /** Cells of the pane that are wholly wiped by a cleaner whose centre goes everywhere in the given cells. */
  boolean[] wiped(boolean[] places, int paneColumns, int paneRows) {
    // How often each pane cell is covered, as differences along both ways, summed up at the end.
    int width = paneColumns + 1;
    int[] change = new int[width * (paneRows + 1)];
    for (int row = 0; row < rows; row++) {
      int up = (int) Math.floor((cell + cleaner.heightM()) / cell + 1e-6);
      int lowRow = Math.min(row, paneRows);
      int highRow = Math.min(row + up, paneRows);
      for (int c = 0; c < columns; c++) {
        if (!places[row * columns + c]) continue;
        double right = to(c) + cleaner.lengthM() / 2;
        int end = right >= frame.lengthM() - Tolerances.ROUNDING_M ? paneColumns
            : Math.min(paneColumns, (int) Math.floor(right / cell + 1e-6));
        if (end <= c) continue;
        change[lowRow * width + c]++;
        change[lowRow * width + end]--;
        change[highRow * width + c]--;
        change[highRow * width + end]++;
      }
    }
    boolean[] wiped = new boolean[paneColumns * paneRows];
    int[] sum = new int[width];
    for (int r = 0; r < paneRows; r++) {
      int run = 0;
      for (int c = 0; c < paneColumns; c++) {
        sum[c] += change[r * width + c];
        run += sum[c];
        wiped[r * paneColumns + c] = run > 0;
      }
    }
    return wiped;
  }
}
