package holdfast.app.view;

import holdfast.app.edit.Document;
import holdfast.app.edit.Edit;
import holdfast.app.edit.Outcome;
import holdfast.app.report.SeverityLook;
import holdfast.app.report.Units;
import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Finding;
import holdfast.engine.statics.heap.Mechanism;
import holdfast.model.scene.Placement;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * All that the window works on, without the window: the document and its file, what is chosen, where one looks from,
 * and what the judge found. Belongs to the drawing thread.
 */
final class Workbench implements AutoCloseable {
  /** What a drag in the picture does. */
  enum Mode { ARRANGE, BUMP, STAGES }

  private final Filing filing;
  private final Judgement judgement;
  private final Chores chores;
  private final Chores plans;
  private final SceneStones stones;
  private final Sight sight;
  private final Shown shown = new Shown();
  private Document document;
  private Optional<Notice> notice = Optional.empty();
  private Optional<String> chosen = Optional.empty();
  private Optional<String> hovered = Optional.empty();
  private Optional<Finding> opened = Optional.empty();
  private Units units = Units.METRIC;
  private Mode mode = Mode.ARRANGE;
  private long now;
  private long gestures;

  Workbench(Scene scene, Path userFolder, Judge.Work work, Runnable wake) {
    filing = new Filing(userFolder);
    judgement = new Judgement(work, wake, () -> document.revision());
    chores = new Chores(wake);
    plans = new Chores(wake);
    stones = new SceneStones(name -> ScanFiles.load(filing.folder(), name));
    document = new Document(scene);
    sight = new Sight(this::tableau);
  }

  // -- parts --------------------------------------------------------------------------------------------------------

  Document document() {
    return document;
  }

  Scene scene() {
    return document.scene();
  }

  Filing filing() {
    return filing;
  }

  Chores chores() {
    return chores;
  }

  /** Searches that may take long and must not keep the other jobs waiting. */
  Chores plans() {
    return plans;
  }

  Shown shown() {
    return shown;
  }

  /** Where one looks from. */
  Sight sight() {
    return sight;
  }

  SceneStones stones() {
    return stones;
  }

  Tableau tableau() {
    return stones.tableau(scene());
  }

  Units units() {
    return units;
  }

  void setUnits(Units other) {
    units = other;
  }

  Mode mode() {
    return mode;
  }

  void setMode(Mode other) {
    mode = other;
  }

  long now() {
    return now;
  }

  // -- time ---------------------------------------------------------------------------------------------------------

  /** Once a frame: what became due since the last one. True when the picture has to be drawn again. */
  boolean tick(long nanos) {
    now = nanos;
    boolean redraw = chores.deliver() | plans.deliver() | sight.tick(now);
    if (notice.isPresent() && now > notice.get().untilNanos()) {
      notice = Optional.empty();
      redraw = true;
    }
    if (judgement.ask(scene(), () -> stones.shapes(scene()), now)) {
      opened = Optional.empty();
      redraw = true;
    }
    redraw |= judgement.news();
    try {
      redraw |= filing.tick(document, now);
    } catch (IOException e) {
      tell("The side copy of unsaved work could not be written: " + e.getMessage(), SeverityLook.WARN);
    }
    return redraw;
  }

  void tell(String text, SeverityLook look) {
    notice = Optional.of(new Notice(text, look, now + (long) (Notice.SECONDS * 1e9)));
  }

  /** News of a job that is under way; it stays until other news takes its place. */
  void tellUntilDone(String text) {
    notice = Optional.of(new Notice(text, SeverityLook.NOTE, Long.MAX_VALUE));
  }

  Optional<Notice> notice() {
    return notice;
  }

  // -- edits --------------------------------------------------------------------------------------------------------

  boolean apply(Edit edit) {
    return apply(edit, Document.NO_GESTURE);
  }

  boolean apply(Edit edit, long gesture) {
    Outcome outcome = document.apply(edit, gesture);
    outcome.match(s -> null, reason -> {
      tell(reason, SeverityLook.WARN);
      return null;
    });
    tidy();
    return outcome instanceof Outcome.Changed;
  }

  /** A number for the next drag: all its edits are one step of undo. */
  long newGesture() {
    return ++gestures;
  }

  void undo() {
    document.undo().ifPresentOrElse(n -> tell("Undone: " + n, SeverityLook.FINE),
        () -> tell("Nothing to undo.", SeverityLook.NOTE));
    tidy();
  }

  void redo() {
    document.redo().ifPresentOrElse(n -> tell("Done again: " + n, SeverityLook.FINE),
        () -> tell("Nothing to redo.", SeverityLook.NOTE));
    tidy();
  }

  /** A choice of something that is gone is no choice. */
  private void tidy() {
    chosen = chosen.filter(n -> scene().rock(n).isPresent());
    hovered = hovered.filter(n -> scene().placement(n).isPresent());
  }

  // -- choice -------------------------------------------------------------------------------------------------------

  Optional<String> chosen() {
    return chosen;
  }

  Optional<Rock> chosenRock() {
    return chosen.flatMap(scene()::rock);
  }

  Optional<Placement> chosenPlacement() {
    return chosen.flatMap(scene()::placement);
  }

  Optional<Stone> chosenStone() {
    return chosen.flatMap(this::stone);
  }

  Optional<Stone> stone(String name) {
    return tableau().stones().stream().filter(s -> s.name().equals(name)).findFirst();
  }

  void choose(Optional<String> rock) {
    chosen = rock;
  }

  Optional<String> hovered() {
    return hovered;
  }

  /** The rock under the pointer; true when it is another than before. */
  boolean hover(Optional<String> rock) {
    boolean other = !rock.equals(hovered);
    hovered = rock;
    return other;
  }

  // -- judgement ----------------------------------------------------------------------------------------------------

  Judgement judgement() {
    return judgement;
  }

  /** What is known of the scene as it is now. */
  Optional<Judge.Found> found() {
    return judgement.found();
  }

  Optional<CheckReport> report() {
    return judgement.report();
  }

  List<Finding> findings() {
    return judgement.findings();
  }

  boolean judgementSettled() {
    return judgement.settled();
  }

  Optional<Finding> opened() {
    return opened.filter(f -> findings().contains(f));
  }

  /**
   * Opens a finding, chooses the rock it is about and flies there and to what moves; the whole tank comes in sight where it
   * is about no rock or its drawing wants it. Opening it again closes it.
   */
  void open(Finding finding) {
    if (opened().filter(finding::equals).isPresent()) {
      opened = Optional.empty();
      return;
    }
    opened = Optional.of(finding);
    List<Stone> movers = movers(finding);
    List<Stone> about =
        tableau().stones().stream().filter(s -> finding.about().contains(s.name()) || movers.contains(s)).toList();
    finding.about().stream().filter(n -> stone(n).isPresent()).findFirst().ifPresent(n -> choose(Optional.of(n)));
    if (about.isEmpty() || SceneMarksChoice.wholeTank(finding.code())) sight.fit();
    else sight.flyTo(about);
  }

  private List<Stone> movers(Finding finding) {
    List<Stone> all = tableau().stones();
    return finding.mechanism().map(Mechanism::twists).filter(t -> t.size() == all.size()).map(t ->
        IntStream.range(0, t.size()).filter(i -> t.get(i).velocity().norm() > FirstMovement.STILL).mapToObj(all::get).toList())
        .orElse(List.of());
  }

  // -- scenes -------------------------------------------------------------------------------------------------------

  /** Another scene takes the place of this one. */
  void show(Scene scene, Optional<Path> file) {
    try {
      filing.adopt(file);
    } catch (IOException e) {
      tell("The list of recent scenes could not be written: " + e.getMessage(), SeverityLook.NOTE);
    }
    document = new Document(scene, document.revision() + 1);
    chosen = Optional.empty();
    hovered = Optional.empty();
    mode = Mode.ARRANGE;
    sight.set(sight.fitted(Camera.View.CORNER));
  }

  /** Unsaved work of an earlier run on the same file takes its place; the file has not got it. */
  void takeBack(Scene scene) {
    document = new Document(scene, document.revision() + 1);
    document.markUnsaved();
    tidy();
    tell("Your unsaved work is back. Save it to keep it.", SeverityLook.NOTE);
  }

  Set<String> chosenNames() {
    return chosen.map(Set::of).orElse(Set.of());
  }

  @Override
  public void close() {
    judgement.close();
    chores.close();
    plans.close();
  }
}
