package holdfast.app.view;

import holdfast.app.report.SeverityLook;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What may be said of a scene while its pushes are still being asked about: that it fails, if it does so already, and
 * never that it passes.
 */
final class SoFar {
  private SoFar() {}

  /** The findings without the one that says that pushes were not asked about: they are being asked. */
  static List<Finding> findings(CheckReport quick) {
    return quick.findings().stream().filter(f -> !onlyNotAsked(f)).toList();
  }

  private static boolean onlyNotAsked(Finding f) {
    return f.code() == Code.UNDECIDED && f.figure().isEmpty() && f.state().isEmpty() && f.about().equals(List.of("the heap"));
  }

  /** How bad it is already; empty where nothing speaks against it so far, which is no pass. */
  static Optional<SeverityLook> look(CheckReport quick) {
    if (quick.verdict() == CheckReport.Verdict.FAILS) return Optional.of(SeverityLook.FAIL);
    return findings(quick).stream().filter(f -> f.severity() == Severity.FAIL).findAny().map(f -> SeverityLook.UNDECIDED);
  }

  /** What may be said in a word where nothing speaks against it so far. */
  static String fine(Judge.Depth depth) {
    return depth == Judge.Depth.STANDING ? "stays so far" : "bears the push so far";
  }

  /** {@code held}: a rock is in the hand, and the rest is asked when it is let go. */
  static String words(CheckReport quick, Judge.Depth depth, boolean held) {
    if (quick.rocks().isEmpty()) return "No rock is placed yet.";
    String known = look(quick).map(l -> l == SeverityLook.FAIL
        ? "Not safe as it is: " + findings(quick).stream().filter(f -> f.severity() == Severity.FAIL)
            .map(f -> f.title().toLowerCase(Locale.ROOT)).distinct().limit(3).collect(Collectors.joining(", ")) + "."
        : "Whether it stays could not be settled: treat it as falling.")
        .orElse(depth == Judge.Depth.STANDING ? "Stays under its own weight so far. No verdict yet."
            : "Stays, and nothing goes over when pushed, pressed or shaken as asked. No verdict yet.");
    if (depth == Judge.Depth.STANDING) return known + " Pushes, presses and shaking are still being asked about.";
    return known + (held ? " Slides, margins and room are judged when you let go."
        : " Slides and margins are still being asked about.");
  }
}
