package holdfast.engine.verification;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The page {@code engine/VERIFICATION.md}, written from the rows. */
final class Page {
  private Page() {}

  /** Where the page lies, looked for from the working folder upward. */
  static Path file() {
    for (Path p = Path.of("").toAbsolutePath(); p != null; p = p.getParent()) {
      if (Files.isDirectory(p.resolve("engine/src/test")) && Files.isDirectory(p.resolve("model"))) {
        return p.resolve("engine/VERIFICATION.md");
      }
    }
    throw new AssertionError("the project's folder was not found above " + Path.of("").toAbsolutePath());
  }

  static String of(List<Row> rows, PushRatios pushed, Verdicts judged) {
    StringBuilder s = new StringBuilder("""
        # What the statics are held against

        Written by a test from the cases in `engine/src/test/java/holdfast/engine/verification`; the same test fails when a
        value is missed or this page is out of date. To write it anew:
        `mvn -q -pl engine -am test -Dtest=VerificationTest -Dsurefire.failIfNoSpecifiedTests=false -Dholdfast.verification.write=true`.

        Grades: *published*, a printed figure seen in the source or in a stated copy; *memory*, a printed figure recalled;
        *derived*, an exact or numeric derivation. "Balance": some admissible contact forces balance the loads. "Stays": the
        heap placed without pre-load remains. Nothing here has been measured on real rock: the figures show that the
        mechanics is solved rightly, not that a heap of stone is as regular as its model.
        """);
    Map<String, List<Row>> groups = new LinkedHashMap<>();
    for (Row r : rows) groups.computeIfAbsent(r.group(), g -> new ArrayList<>()).add(r);
    groups.forEach((group, list) -> {
      s.append("\n## ").append(group).append("\n\n");
      List<String> sources = list.stream().map(Page::source).distinct().toList();
      s.append("| case | expected | ours | difference | tolerance, for | source |\n|---|---|---|---|---|---|\n");
      for (Row r : list) {
        String tolerance = r.tolerance().isEmpty() ? "the same" : r.tolerance() + ", " + r.reason();
        s.append("| ").append(String.join(" | ", r.name(), r.expected(), r.ours(), r.difference(), tolerance,
            String.valueOf((char) ('a' + sources.indexOf(source(r)))))).append(" |\n");
      }
      s.append('\n');
      for (int i = 0; i < sources.size(); i++) {
        s.append("* ").append((char) ('a' + i)).append(": ").append(sources.get(i)).append('\n');
      }
    });
    return s.append(pushed.page()).append(VerdictsPage.of(judged)).toString();
  }

  /**
   * Lines in which a page is not current. Figures of ours and their differences from the expected value may differ by half
   * of the row's tolerance, so that another last digit of the solver is no reason to write the page anew.
   */
  static List<String> differences(String committed, String current) {
    List<String> old = committed.lines().toList();
    List<String> now = current.lines().toList();
    List<String> off = new ArrayList<>();
    for (int i = 0; i < Math.max(old.size(), now.size()); i++) {
      String a = i < old.size() ? old.get(i) : "";
      String b = i < now.size() ? now.get(i) : "";
      if (!a.equals(b) && !nearly(a.split(" \\| ", -1), b.split(" \\| ", -1))) off.add(a + "\n  is now\n" + b);
    }
    return off;
  }

  private static boolean nearly(String[] a, String[] b) {
    if (a.length != 6 || b.length != 6 || b[4].startsWith("the same")) return false;
    double half = Double.parseDouble(b[4].substring(0, b[4].indexOf(','))) / 2;
    for (int c : new int[] {0, 1, 4, 5}) if (!a[c].equals(b[c])) return false;
    for (int c : new int[] {2, 3}) if (!(Math.abs(Double.parseDouble(a[c]) - Double.parseDouble(b[c])) <= half)) return false;
    return true;
  }

  private static String source(Row r) {
    return r.source() + " (" + r.grade().word() + ")";
  }
}
