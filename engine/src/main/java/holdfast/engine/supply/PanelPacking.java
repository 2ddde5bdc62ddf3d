package holdfast.engine.supply;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Rectangles out of stock panels by guillotine cuts: every cut runs from edge to edge of the part being cut, as a saw
 * or a pair of side cutters works along a louvre. Pieces may be turned by a right angle.
 *
 * <p>The problem: split the pieces into the fewest sets such that each set can be cut from one panel. A set of pieces
 * has a table of the smallest bounding rectangles that it can be cut from: for one piece its two orientations, for more
 * the best of every way to part the set in two, side by side or one above the other, with the width of the cut between.
 * Every guillotine pattern is such a tree, so the table is exact; the fewest panels follow from a table over sets.
 * Exact up to {@value #EXACT_PIECES} pieces; beyond that, first fit in order of falling area, each panel still judged
 * by the exact table, and the lower bound by area says how good that is.
 */
final class PanelPacking {
  /** Pieces up to which all sets are looked at: 3^9 ways to part a set in two. */
  static final int EXACT_PIECES = 9;

  /** Millimetres that a piece may be wider than a panel and still count as fitting: rounding only. */
  private static final double ROUNDING_MM = 1e-9;

  private final double[] long1;
  private final double[] short1;
  private final double panelLength;
  private final double panelWidth;
  private final double saw;

  private PanelPacking(List<double[]> pieces, double panelLength, double panelWidth, double saw) {
    this.long1 = pieces.stream().mapToDouble(p -> p[0]).toArray();
    this.short1 = pieces.stream().mapToDouble(p -> p[1]).toArray();
    this.panelLength = panelLength;
    this.panelWidth = panelWidth;
    this.saw = saw;
  }

  /** A piece on a panel: its number, where its lower left corner is and its size there, millimetres. */
  record Spot(int piece, double xMm, double yMm, double lengthMm, double widthMm) {}

  /**
   * Pieces on panels.
   *
   * @param panels for each panel the pieces on it
   * @param fewest no plan has fewer panels
   */
  record Packing(List<List<Spot>> panels, boolean fewest) {}

  /**
   * Lays pieces out on the fewest panels.
   *
   * @param pieces length and width of each, millimetres
   * @param sawMm width lost to each cut between two pieces
   * @return empty when a piece is larger than a panel
   */
  static Optional<Packing> pack(List<double[]> pieces, double panelLengthMm, double panelWidthMm, double sawMm) {
    for (double[] p : pieces) {
      boolean fits = fits(p[0], p[1], panelLengthMm, panelWidthMm);
      if (!fits) return Optional.empty();
    }
    if (pieces.isEmpty()) return Optional.of(new Packing(List.of(), true));
    PanelPacking packing = new PanelPacking(pieces, panelLengthMm, panelWidthMm, sawMm);
    return Optional.of(pieces.size() <= EXACT_PIECES ? packing.exact() : packing.firstFit());
  }

  private static boolean fits(double a, double b, double panelLength, double panelWidth) {
    return a <= panelLength + ROUNDING_MM && b <= panelWidth + ROUNDING_MM
        || b <= panelLength + ROUNDING_MM && a <= panelWidth + ROUNDING_MM;
  }

  /** A way to cut a set of pieces from a rectangle: one piece, or a cut with a way for either side. */
  private record Way(double length, double width, int piece, boolean sideBySide, Way first, Way second) {
    void collect(double x, double y, double saw, List<Spot> into) {
      if (first == null) {
        into.add(new Spot(piece, x, y, length, width));
        return;
      }
      first.collect(x, y, saw, into);
      if (sideBySide) second.collect(x + first.length + saw, y, saw, into);
      else second.collect(x, y + first.width + saw, saw, into);
    }
  }

  private Packing exact() {
    int n = long1.length;
    int all = (1 << n) - 1;
    List<List<Way>> ways = waysOfAllSets(identity(n));
    int[] panels = new int[all + 1];
    int[] last = new int[all + 1];
    for (int set = 1; set <= all; set++) {
      panels[set] = Integer.MAX_VALUE;
      int lowest = Integer.lowestOneBit(set);
      for (int on = set; on > 0; on = (on - 1) & set) {
        if ((on & lowest) == 0 || ways.get(on).isEmpty()) continue;
        if (panels[set ^ on] + 1 < panels[set]) {
          panels[set] = panels[set ^ on] + 1;
          last[set] = on;
        }
      }
    }
    List<List<Spot>> out = new ArrayList<>();
    for (int set = all; set > 0; set ^= last[set]) out.add(spots(ways.get(last[set]).get(0)));
    return new Packing(List.copyOf(out), true);
  }

  private Packing firstFit() {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < long1.length; i++) order.add(i);
    order.sort((i, j) -> Double.compare(long1[j] * short1[j], long1[i] * short1[i]));
    List<List<Integer>> sets = new ArrayList<>();
    List<Way> best = new ArrayList<>();
    for (int piece : order) {
      boolean placed = false;
      for (int s = 0; s < sets.size() && !placed; s++) {
        if (sets.get(s).size() >= EXACT_PIECES) continue;
        List<Integer> tried = new ArrayList<>(sets.get(s));
        tried.add(piece);
        List<List<Way>> ways = waysOfAllSets(tried);
        List<Way> whole = ways.get(ways.size() - 1);
        if (!whole.isEmpty()) {
          sets.set(s, tried);
          best.set(s, whole.get(0));
          placed = true;
        }
      }
      if (!placed) {
        List<Integer> alone = new ArrayList<>(List.of(piece));
        sets.add(alone);
        best.add(waysOfAllSets(alone).get(1).get(0));
      }
    }
    double area = 0;
    for (int i = 0; i < long1.length; i++) area += long1[i] * short1[i];
    boolean fewest = sets.size() <= Math.ceil(area / (panelLength * panelWidth) - ROUNDING_MM);
    return new Packing(best.stream().map(this::spots).toList(), fewest);
  }

  private List<Spot> spots(Way way) {
    List<Spot> out = new ArrayList<>();
    way.collect(0, 0, saw, out);
    return List.copyOf(out);
  }

  /** For every set of the given pieces, its undominated ways within a panel, in order of rising length. */
  private List<List<Way>> waysOfAllSets(List<Integer> pieces) {
    int all = (1 << pieces.size()) - 1;
    List<List<Way>> ways = new ArrayList<>(Collections.nCopies(all + 1, List.of()));
    for (int set = 1; set <= all; set++) {
      List<Way> found = new ArrayList<>();
      if (Integer.bitCount(set) == 1) {
        int p = pieces.get(Integer.numberOfTrailingZeros(set));
        keep(found, new Way(long1[p], short1[p], p, false, null, null));
        keep(found, new Way(short1[p], long1[p], p, false, null, null));
      } else {
        int lowest = Integer.lowestOneBit(set);
        for (int one = (set - 1) & set; one > 0; one = (one - 1) & set) {
          if ((one & lowest) == 0) continue;
          for (Way a : ways.get(one)) {
            for (Way b : ways.get(set ^ one)) {
              keep(found, new Way(a.length + saw + b.length, Math.max(a.width, b.width), -1, true, a, b));
              keep(found, new Way(Math.max(a.length, b.length), a.width + saw + b.width, -1, false, a, b));
            }
          }
        }
      }
      ways.set(set, List.copyOf(found));
    }
    return ways;
  }

  /** Adds a way unless it is larger than the panel or no better than one that is there. */
  private void keep(List<Way> found, Way way) {
    if (way.length > panelLength + ROUNDING_MM || way.width > panelWidth + ROUNDING_MM) return;
    for (Way w : found) {
      if (w.length <= way.length && w.width <= way.width) return;
    }
    found.removeIf(w -> way.length <= w.length && way.width <= w.width);
    found.add(way);
    found.sort((a, b) -> Double.compare(a.length, b.length));
  }

  private static List<Integer> identity(int n) {
    List<Integer> out = new ArrayList<>();
    for (int i = 0; i < n; i++) out.add(i);
    return out;
  }
}
