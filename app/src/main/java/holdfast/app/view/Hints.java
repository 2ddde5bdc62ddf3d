package holdfast.app.view;

import java.util.EnumSet;
import java.util.Set;

/** One hint at a time, until its lesson has been learnt. */
final class Hints {
  /** What there is to learn, in the order in which it comes up. */
  enum Lesson {
    SET_DOWN("Double-click a rock on the tray to set it down."),
    CHOOSE("Click a rock to choose it."),
    DRAG("Drag the rock: it slides over whatever lies below."),
    TURN("Turn it by its rings, lift it by its arrow."),
    CIRCLE("Drag beside the rocks to circle the view, turn the wheel to come nearer."),
    FINDING("Click a finding to see where it is and what to do about it."),
    BUMP("Press B and pull an arrow from a rock to bump it."),
    HELP("F1 lists every key.");

    private final String words;

    Lesson(String words) {
      this.words = words;
    }
  }

  private final Workbench bench;
  private final Set<Lesson> learnt = EnumSet.noneOf(Lesson.class);

  Hints(Workbench bench) {
    this.bench = bench;
  }

  void learnt(Lesson lesson) {
    learnt.add(lesson);
  }

  boolean knows(Lesson lesson) {
    return learnt.contains(lesson);
  }

  String forNow() {
    if (bench.mode() == Workbench.Mode.BUMP) return "Pull an arrow back from a rock, like a bowstring, and let go. Esc ends it.";
    if (bench.mode() == Workbench.Mode.STAGES) return "Slide through the stages of building. Esc ends it.";
    boolean empty = bench.scene().placements().isEmpty();
    for (Lesson l : Lesson.values()) {
      if (learnt.contains(l) || !due(l, empty)) continue;
      return l.words;
    }
    return "";
  }

  private boolean due(Lesson l, boolean empty) {
    return switch (l) {
      case SET_DOWN -> empty;
      case CHOOSE -> !empty && bench.chosen().isEmpty();
      case DRAG, TURN -> bench.chosenPlacement().isPresent();
      case FINDING -> bench.report().map(r -> !r.findings().isEmpty()).orElse(false);
      case CIRCLE, BUMP, HELP -> true;
    };
  }
}
