package holdfast.app.view;

import holdfast.app.edit.KnownHints;
import holdfast.app.report.SeverityLook;
import java.io.IOException;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** One hint at a time, until its lesson has been learnt or waved away; kept from start to start. */
final class Hints {
  /** What there is to learn, in the order in which it comes up. */
  enum Lesson {
    ADD("Press A to add a rock: measure it, weigh it."),
    SET_DOWN("Double-click a rock on the tray to set it down."),
    CHOOSE("Click a rock to choose it."),
    DRAG("Drag the rock: it slides over whatever lies below."),
    TURN("Turn it by its rings, lift it by its arrow."),
    CIRCLE("Drag beside the rocks to circle the view, turn the wheel to come nearer."),
    FINDING("Click a finding to see where it is and what to do about it."),
    BUMP("Press B and pull an arrow from a rock to bump it."),
    BUILD("Press G to go through the stages of building."),
    GIVE_OUT("Ctrl E writes a picture or the build sheet."),
    HELP("F1 lists every key.");

    private final String words;

    Lesson(String words) {
      this.words = words;
    }

    private String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  private final Workbench bench;
  private final KnownHints store;
  private final Set<Lesson> learnt = EnumSet.noneOf(Lesson.class);

  Hints(Workbench bench, Path userFolder) {
    this.bench = bench;
    store = new KnownHints(userFolder);
    Set<String> known = store.words();
    for (Lesson l : Lesson.values()) if (known.contains(l.word())) learnt.add(l);
  }

  void learnt(Lesson lesson) {
    if (learnt.add(lesson)) keep();
  }

  boolean knows(Lesson lesson) {
    return learnt.contains(lesson);
  }

  /** The hint on show is not wanted any more. */
  void wave() {
    current().ifPresent(this::learnt);
  }

  /** All hints from the start. */
  void again() {
    learnt.clear();
    keep();
  }

  private void keep() {
    Set<String> words = new LinkedHashSet<>();
    for (Lesson l : learnt) words.add(l.word());
    try {
      store.keep(words);
    } catch (IOException e) {
      bench.tell("Which hints you know could not be kept: " + e.getMessage(), SeverityLook.NOTE);
    }
  }

  /** Once a frame: what is being done has been learnt. */
  void watch() {
    if (bench.opened().isPresent()) learnt(Lesson.FINDING);
    if (bench.mode() == Workbench.Mode.BUMP) learnt(Lesson.BUMP);
    if (bench.mode() == Workbench.Mode.STAGES) learnt(Lesson.BUILD);
    if (bench.document().undoName().filter(n -> n.startsWith("add ")).isPresent()) learnt(Lesson.ADD);
    if (bench.document().undoName().filter(n -> n.startsWith("set down")).isPresent()) learnt(Lesson.SET_DOWN);
  }

  String forNow() {
    if (bench.mode() == Workbench.Mode.BUMP) return "Pull an arrow back from a rock, like a bowstring, and let go. Esc ends it.";
    if (bench.mode() == Workbench.Mode.STAGES) return "Left and right arrow: one stage back, one on. Esc ends it.";
    return current().map(l -> l.words).orElse("");
  }

  /** The first lesson that is due and not learnt; none while the hands are busy with bumps or stages. */
  Optional<Lesson> current() {
    if (bench.mode() != Workbench.Mode.ARRANGE) return Optional.empty();
    boolean empty = bench.scene().placements().isEmpty();
    for (Lesson l : Lesson.values()) if (!learnt.contains(l) && due(l, empty)) return Optional.of(l);
    return Optional.empty();
  }

  private boolean due(Lesson l, boolean empty) {
    return switch (l) {
      case ADD -> bench.scene().rocks().isEmpty();
      case SET_DOWN -> empty && !bench.scene().rocks().isEmpty();
      case CHOOSE -> !empty && bench.chosen().isEmpty();
      case DRAG, TURN -> bench.chosenPlacement().isPresent();
      case FINDING -> !bench.findings().isEmpty();
      case BUMP, BUILD, GIVE_OUT -> !empty;
      case CIRCLE, HELP -> true;
    };
  }
}
