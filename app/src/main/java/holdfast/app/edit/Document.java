package holdfast.app.edit;

import holdfast.model.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A scene that is being worked on, and all that was done to it. Belongs to one thread; what other threads get is the
 * immutable {@link Scene} and the {@link #revision} that it had.
 *
 * <p>Undo keeps whole scenes: they share every part that an edit left alone, so a step costs a list of placements.
 */
public final class Document {
  /** An edit that is not part of a gesture. */
  public static final long NO_GESTURE = 0;

  private record Step(String name, Scene before, Scene after, long gesture) {}

  private final List<Step> steps = new ArrayList<>();
  private int done;
  private Scene scene;
  private Scene saved;
  private long revision;

  public Document(Scene scene) {
    this(scene, 1);
  }

  /** {@code firstRevision} lies above that of a document that this one takes the place of. */
  public Document(Scene scene, long firstRevision) {
    this.scene = scene;
    this.saved = scene;
    this.revision = firstRevision;
  }

  public Scene scene() {
    return scene;
  }

  /** Goes up with every change, undone and redone ones too; never comes back to an earlier value. */
  public long revision() {
    return revision;
  }

  /** Makes a change and remembers it. A change that changes nothing is not remembered. */
  public Outcome apply(Edit edit) {
    return apply(edit, NO_GESTURE);
  }

  /**
   * Makes a change that belongs to a gesture, such as a drag: all changes of one gesture in a row are one step of undo,
   * under the name of the latest.
   */
  public Outcome apply(Edit edit, long gesture) {
    Outcome outcome = edit.on(scene);
    outcome.match(next -> {
      if (!next.equals(scene)) record(edit.name(), next, gesture);
      return null;
    }, reason -> null);
    return outcome;
  }

  private void record(String name, Scene next, long gesture) {
    steps.subList(done, steps.size()).clear();
    Step last = done > 0 ? steps.get(done - 1) : null;
    if (gesture != NO_GESTURE && last != null && last.gesture == gesture) {
      steps.set(done - 1, new Step(name, last.before, next, gesture));
    } else {
      steps.add(new Step(name, scene, next, gesture));
      done++;
    }
    show(next);
  }

  private void show(Scene next) {
    scene = next;
    revision++;
  }

  /** The name of what would be undone. */
  public Optional<String> undoName() {
    return done > 0 ? Optional.of(steps.get(done - 1).name) : Optional.empty();
  }

  /** The name of what would be done again. */
  public Optional<String> redoName() {
    return done < steps.size() ? Optional.of(steps.get(done).name) : Optional.empty();
  }

  /** Takes back the latest change; its name, or empty when there is none. */
  public Optional<String> undo() {
    if (done == 0) return Optional.empty();
    Step s = steps.get(--done);
    show(s.before);
    return Optional.of(s.name);
  }

  /** Makes again what was taken back last. */
  public Optional<String> redo() {
    if (done == steps.size()) return Optional.empty();
    Step s = steps.get(done++);
    show(s.after);
    return Optional.of(s.name);
  }

  /** Names of all steps, the oldest first; the first {@link #stepsDone} of them are in force. */
  public List<String> stepNames() {
    return steps.stream().map(Step::name).toList();
  }

  public int stepsDone() {
    return done;
  }

  /** What is shown is what the file has. */
  public void markSaved() {
    saved = scene;
  }

  /** There is work that the file does not have. */
  public boolean unsaved() {
    return scene != saved && !scene.equals(saved);
  }

  /** Work that came from a rescue copy: the file does not have it. */
  public void markUnsaved() {
    saved = null;
  }
}
