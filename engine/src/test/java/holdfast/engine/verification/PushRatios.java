package holdfast.engine.verification;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The steady push at which a 3D engine lets a tower move, over the margin of the statics; kept as a table for the page. */
public record PushRatios(List<Line> lines) {
  private static final String NAME = "push-ratios.csv";

  /**
   * One tower: its seed makes it again.
   *
   * @param boxes how many it has
   * @param pushed which of them is pushed, from the floor
   * @param marginN push margin of the statics, confirmed by staying
   * @param pushN the least push at which anything moved in the engine; above 1.5 margins, that
   */
  public record Line(long seed, int boxes, int pushed, double marginN, double pushN) {
    public double ratio() {
      return pushN / marginN;
    }
  }

  public PushRatios {
    lines = List.copyOf(lines);
  }

  public void write() throws IOException {
    StringBuilder s = new StringBuilder("seed,boxes,pushed,margin_n,push_n\n");
    for (Line l : lines) {
      s.append(String.format(Locale.ROOT, "%d,%d,%d,%.4f,%.4f%n", l.seed, l.boxes, l.pushed, l.marginN, l.pushN).replace("\r", ""));
    }
    Path file = Page.file().resolveSibling("src/test/resources/holdfast/engine/verification/" + NAME);
    Files.createDirectories(file.getParent());
    Files.writeString(file, s);
  }

  /** The kept table. */
  public static PushRatios read() throws IOException {
    try (InputStream in = PushRatios.class.getResourceAsStream(NAME)) {
      List<Line> lines = new ArrayList<>();
      for (String text : new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().skip(1).toList()) {
        String[] c = text.split(",", -1);
        lines.add(new Line(Long.parseLong(c[0]), Integer.parseInt(c[1]), Integer.parseInt(c[2]), Double.parseDouble(c[3]),
            Double.parseDouble(c[4])));
      }
      return new PushRatios(lines);
    }
  }

  /** Ratios in order, least first. */
  public double[] sorted() {
    return lines.stream().mapToDouble(Line::ratio).sorted().toArray();
  }

  /** The table for the page. */
  String page() {
    StringBuilder s = new StringBuilder("\n## An engine's slow push beside the margin\n\n");
    s.append(lines.size()).append(" towers of two to four boxes set askew, friction 0.6, one box pushed at 0.9 of its height ever harder until\n"
        + "anything moves 5 mm in a 3D engine (240 steps a second, bisection to 2 %). Ratio of that push to the margin that the\n"
        + "statics confirm by staying. Rigid-body engines tip stacks of six some 3 degrees early and creep just under the friction\n"
        + "angle, so ratios a little under 1 are the engine's; none of them decides anything. Written by `SlowPushTest`.\n\n");
    s.append("| boxes | towers | least | median | most | under 0.95 | over 1.05 |\n|---|---|---|---|---|---|---|\n");
    for (int boxes = 2; boxes <= 4; boxes++) {
      int n = boxes;
      row(s, String.valueOf(n), new PushRatios(lines.stream().filter(l -> l.boxes == n).toList()).sorted());
    }
    row(s, "all", sorted());
    s.append("\n| tower | boxes | pushed, from the floor | margin N | engine N | ratio |\n|---|---|---|---|---|---|\n");
    for (Line l : lines) {
      s.append(String.format(Locale.ROOT, "| %d | %d | %d | %.2f | %.2f | %.3f |%n", l.seed, l.boxes, l.pushed + 1, l.marginN, l.pushN,
          l.ratio()).replace("\r", ""));
    }
    return s.toString();
  }

  private static void row(StringBuilder s, String name, double[] r) {
    if (r.length == 0) return;
    long low = java.util.Arrays.stream(r).filter(x -> x < 0.95).count();
    long high = java.util.Arrays.stream(r).filter(x -> x > 1.05).count();
    s.append(String.format(Locale.ROOT, "| %s | %d | %.3f | %.3f | %.3f | %d | %d |%n", name, r.length, r[0], r[r.length / 2],
        r[r.length - 1], low, high).replace("\r", ""));
  }
}
