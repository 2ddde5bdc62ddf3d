package holdfast.app.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A plain table: columns that align, no wider than a page. When it would be, cells of its widest text column are broken
 * into lines.
 */
public final class Table {
  private static final String INDENT = "  ";
  private static final String BETWEEN = "  ";
  private static final int NARROWEST = 10;
  /** Longer words than this are broken when room is short. */
  private static final int LONGEST_WORD = 20;

  private final List<String> heads = new ArrayList<>();
  private final List<Boolean> right = new ArrayList<>();
  private final List<List<String>> rows = new ArrayList<>();

  /** Adds a column of words. */
  public Table words(String head) {
    heads.add(head);
    right.add(false);
    return this;
  }

  /** Adds a column of figures, which align on the right. */
  public Table figures(String head) {
    heads.add(head);
    right.add(true);
    return this;
  }

  /** Adds a row, one cell a column. */
  public Table row(String... cells) {
    if (cells.length != heads.size()) {
      throw new IllegalArgumentException("a row of " + cells.length + " cells for " + heads.size() + " columns");
    }
    List<String> clean = new ArrayList<>();
    for (String c : cells) clean.add(Words.clean(c));
    rows.add(clean);
    return this;
  }

  public boolean isEmpty() {
    return rows.isEmpty();
  }

  /** The table's lines, none wider than {@code pageWidth} unless it has more columns than fit. */
  public String render(int pageWidth) {
    int[] widths = widths(pageWidth);
    StringBuilder b = new StringBuilder();
    line(b, heads, widths);
    List<String> rules = new ArrayList<>();
    for (int w : widths) rules.add("─".repeat(w));
    line(b, rules, widths);
    rows.forEach(r -> line(b, r, widths));
    return b.toString();
  }

  private int[] widths(int pageWidth) {
    int n = heads.size();
    int[] widths = new int[n];
    int[] least = new int[n];
    for (int c = 0; c < n; c++) {
      widths[c] = widest(heads.get(c));
      least[c] = NARROWEST;
      for (List<String> row : rows) {
        widths[c] = Math.max(widths[c], Words.width(row.get(c)));
        least[c] = Math.max(least[c], Math.min(LONGEST_WORD, longestWord(row.get(c))));
      }
    }
    int room = pageWidth - INDENT.length() - BETWEEN.length() * (n - 1);
    for (int over = total(widths) - room; over > 0; over--) {
      int widest = -1;
      for (int c = 0; c < n; c++) {
        if (!right.get(c) && widths[c] > least[c] && (widest < 0 || widths[c] > widths[widest])) widest = c;
      }
      if (widest < 0) break;
      widths[widest]--;
    }
    return widths;
  }

  private static int longestWord(String cell) {
    int longest = 0;
    for (String word : cell.split("\\s+")) longest = Math.max(longest, Words.width(word));
    return longest;
  }

  private static int widest(String head) {
    return head.lines().mapToInt(Words::width).max().orElse(0);
  }

  private static int total(int[] widths) {
    int sum = 0;
    for (int w : widths) sum += w;
    return sum;
  }

  private void line(StringBuilder b, List<String> cells, int[] widths) {
    List<List<String>> broken = new ArrayList<>();
    int height = 1;
    for (int c = 0; c < cells.size(); c++) {
      List<String> cell = new ArrayList<>();
      for (String part : cells.get(c).split("\n")) cell.addAll(Words.wrap(part, widths[c]));
      broken.add(cell);
      height = Math.max(height, cell.size());
    }
    for (int k = 0; k < height; k++) {
      StringBuilder row = new StringBuilder(INDENT);
      for (int c = 0; c < cells.size(); c++) {
        List<String> cell = broken.get(c);
        if (c > 0) row.append(BETWEEN);
        row.append(Words.padded(k < cell.size() ? cell.get(k) : "", widths[c], right.get(c)));
      }
      b.append(row.toString().stripTrailing()).append('\n');
    }
  }
}
