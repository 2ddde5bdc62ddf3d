package holdfast.app.view;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * What a longer job found of the scene as it is. One job at a time: a row of edits does not pile up jobs that nobody wants any
 * more. Belongs to the drawing thread.
 */
final class Measured<T> {
  private final Chores chores;
  private Optional<T> found = Optional.empty();
  private long foundOf;
  private long asked;
  private boolean working;

  Measured(Chores chores) {
    this.chores = chores;
  }

  /** What was found of this revision of the scene. */
  Optional<T> of(long revision) {
    return found.filter(f -> foundOf == revision);
  }

  /**
   * Starts the job for this revision, unless it was started already or another one is not yet done.
   *
   * @param first makes ready on the drawing thread what the job works on
   */
  <S> void want(long revision, Supplier<S> first, Function<S, T> job) {
    if (asked == revision || working) return;
    asked = revision;
    working = true;
    S ready = first.get();
    chores.start(() -> job.apply(ready), f -> done(Optional.of(f), revision), why -> done(Optional.empty(), revision));
  }

  private void done(Optional<T> answer, long revision) {
    working = false;
    found = answer;
    foundOf = revision;
  }
}
