package holdfast.app.report;

/** The units that people read: of lengths, masses, forces and so on. Files and the engine know no other than SI. */
public enum Units {
  METRIC, US
}
