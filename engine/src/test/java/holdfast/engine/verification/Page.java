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

  static String of(List<Row> rows) {
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
    return s.toString();
  }

  private static String source(Row r) {
    return r.source() + " (" + r.grade().word() + ")";
  }
}
