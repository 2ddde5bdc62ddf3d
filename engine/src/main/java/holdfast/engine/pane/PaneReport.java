package holdfast.engine.pane;

/** What was found about the bottom pane. */
public record PaneReport() {}
