package holdfast.app.view;

import holdfast.app.report.Units;
import holdfast.app.view.draw.Scale;
import holdfast.engine.check.Code;
import holdfast.engine.check.Finding;
import java.util.Optional;

/** What moves and why, for the line above the first movement of a finding. */
final class MovementWords {
  private MovementWords() {}

  static String of(Finding f, Units units) {
    String who = f.about().isEmpty() ? "the heap" : f.about().get(0);
    return switch (f.code()) {
      case TOPPLES -> who + " topples" + under(f, units);
      case SLIDES -> who + " slides" + under(f, units);
      case LOOSE -> who + " moves" + under(f, units);
      case PRESSED -> who + " tips, pressed down" + figure(f, units).map(n -> " with " + n).orElse("");
      case SHAKES -> "shaken sideways" + f.figure().stream().mapToObj(g -> " with " + Scale.number(g, 3) + " g")
          .findFirst().orElse("");
      case SQUEEZED -> who + " slips under its own weight";
      case UNDERMINED -> "the sand under " + who + " dug away";
      case SAND_ONLY -> "all sand dug away";
      case LIFTED -> who + " lifted out";
      case SINGLE_BOND -> "without the bond between " + String.join(" and ", f.about());
      case NEEDS_PANE -> "without the pane it leans on";
      default -> who + " falls under its own weight";
    };
  }

  /** The rock that is taken out before anything moves. */
  static Optional<String> out(Finding f) {
    return f.code() == Code.LIFTED ? f.about().stream().findFirst() : Optional.empty();
  }

  private static Optional<String> figure(Finding f, Units units) {
    return f.figure().stream().mapToObj(n -> Scale.force(n, units)).findFirst();
  }

  private static String under(Finding f, Units units) {
    return figure(f, units).map(n -> " under " + n).orElse(" under its own weight");
  }
}
