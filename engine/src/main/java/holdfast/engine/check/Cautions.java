package holdfast.engine.check;

import java.util.List;

/** What every reader must be told, whatever was found. */
final class Cautions {
  private Cautions() {}

  static List<String> of() {
    return List.of(
        "This is a calculation on measured and guessed figures, not a guarantee. Try each rock by hand as it is placed: wiggle"
            + " it, then push the top from all sides, gently.",
        "Loads on the bottom pane and its support are for the tank's maker to confirm.",
        "Lift with bent knees, close to the body, with help for anything heavy; never over a person or over bare glass.",
        "Wet cement burns skin and eyes: waterproof gloves, goggles, no dust. Follow its maker's sheet; cure, soak and test the"
            + " water before animals go in.",
        "Keep electricity on a residual-current device with drip loops. Stand and floor are for their makers, local codes and a"
            + " licensed engineer.");
  }
}
