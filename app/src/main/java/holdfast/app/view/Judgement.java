package holdfast.app.view;

import holdfast.engine.check.CheckReport;
import holdfast.engine.check.Finding;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/** What is known of the scene as it is now, and what is being worked out about it. Belongs to the drawing thread. */
final class Judgement implements AutoCloseable {
  /** Seconds after which a judgement says what it is at. */
  private static final long TOLD_S = 1;

  private final Judge judge;
  private final LongSupplier revision;
  private long asked;
  private long askedAt;
  private long now;
  private boolean holding;
  private Optional<String> wanted = Optional.empty();
  /** Since when the push rose that is on show is waited for, and nothing else. */
  private long waitsFrom;
  /** What the latest frame knew. */
  private Optional<Judge.Found> seen = Optional.empty();
  private Optional<String> seenAt = Optional.empty();
  private Optional<Judge.Rose> seenRose = Optional.empty();
  private boolean roseLate;

  /** {@code revision} of the scene as it is now. */
  Judgement(Judge.Work work, Runnable wake, LongSupplier revision) {
    judge = new Judge(work, wake);
    this.revision = revision;
  }

  /** Asks about the scene if it is another than the one asked about; true when it is. */
  boolean ask(Scene scene, Supplier<Shapes> shapes, long nanos) {
    now = nanos;
    if (revision.getAsLong() == asked) return false;
    asked = revision.getAsLong();
    askedAt = now;
    judge.ask(scene, shapes.get(), asked);
    return true;
  }

  /** Something is known, or being worked out, that the latest frame did not show. */
  boolean news() {
    if (!judge.awaitsRose()) waitsFrom = now;
    boolean late = (now - waitsFrom) / 1_000_000_000L >= TOLD_S;
    boolean news = !found().equals(seen) || !at().equals(seenAt) || !rose().equals(seenRose) || late != roseLate;
    seen = found();
    seenAt = at();
    seenRose = rose();
    roseLate = late;
    return news;
  }

  /** A rock is held in the hand: until it is let go only whether the heap stands is judged. */
  void hold(boolean inHand) {
    // What is asked when it is let go begins then.
    if (holding && !inHand) askedAt = now;
    holding = inHand;
    judge.hold(inHand);
  }

  boolean holding() {
    return holding;
  }

  /** The rock whose push rose is on show; none where no rose is. */
  void want(Optional<String> rock) {
    if (!wanted.equals(rock)) waitsFrom = now;
    wanted = rock;
    judge.want(rock);
  }

  /** The push rose that is on show, once it is known. */
  Optional<Judge.Rose> rose() {
    return judge.rose().filter(r -> r.revision() == revision.getAsLong() && Optional.of(r.rock()).equals(wanted));
  }

  /** The push rose that is on show is long in coming. */
  boolean roseLate() {
    return roseLate && judge.awaitsRose();
  }

  Optional<Judge.Found> found() {
    return judge.found().filter(f -> f.revision() == revision.getAsLong());
  }

  Optional<CheckReport> report() {
    return found().flatMap(Judge.Found::report);
  }

  /** What was found, as far as it may be said by now. */
  List<Finding> findings() {
    return found().flatMap(f -> f.report().map(r -> f.full() ? r.findings() : SoFar.findings(r))).orElse(List.of());
  }

  /** All that there is to say of the scene is known. */
  boolean settled() {
    return asked == revision.getAsLong() && judge.settled();
  }

  /** Nothing is being worked out, nor will be until something changes, or a rock that is held is let go. */
  boolean idle() {
    return asked == revision.getAsLong() && judge.idle();
  }

  /** What is being worked out and for how long, once that is worth telling. */
  Optional<String> at() {
    long seconds = (now - askedAt) / 1_000_000_000L;
    if (asked != revision.getAsLong() || seconds < TOLD_S) return Optional.empty();
    return judge.at().map(words -> words + (words.isEmpty() ? "" : ", ") + seconds + " s");
  }

  @Override
  public void close() {
    judge.close();
  }
}
