package holdfast.app.report;

import holdfast.engine.pane.PaneReport;

/** The bottom pane, for people. */
final class PaneText {
  private PaneText() {}

  static String of(PaneReport pane, Units units) {
    return "";
  }
}
