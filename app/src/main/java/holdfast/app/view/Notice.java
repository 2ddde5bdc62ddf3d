package holdfast.app.view;

import holdfast.app.report.SeverityLook;

/** A line of news at the foot of the window, for some seconds or while a job goes on. */
record Notice(String text, SeverityLook look, long untilNanos) {
  static final double SECONDS = 6;
}
