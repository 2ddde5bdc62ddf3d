package holdfast.app.view;

import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import holdfast.engine.check.Severity;
import java.util.List;
import java.util.Locale;
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

  static boolean fails(CheckReport quick) {
    return findings(quick).stream().anyMatch(f -> f.severity() == Severity.FAIL);
  }

  static String words(CheckReport quick) {
    if (fails(quick)) {
      return "Not safe as it is: " + findings(quick).stream().filter(f -> f.severity() == Severity.FAIL)
          .map(f -> f.code().title().toLowerCase(Locale.ROOT)).distinct().limit(3).collect(Collectors.joining(", "))
          + ". Pushes are still being asked about.";
    }
    if (quick.rocks().isEmpty()) return "No rock is placed yet.";
    return "Stays under its own weight so far. No verdict yet: pushes, presses and shaking are being asked about.";
  }
}
