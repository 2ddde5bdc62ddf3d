package holdfast.app.view;

import holdfast.app.report.CheckProgress;
import holdfast.engine.check.CheckReport;
import holdfast.engine.check.CheckWatch;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.Optional;

/**
 * Judges scenes on a thread of its own, in the steps of {@link Depth}. Only the latest scene counts: whatever was found about
 * an older one is dropped, so that what is shown is never stale, and work on it is broken off by interrupting the judging
 * thread. While a rock is held in the hand only the first two steps are done, which keep up with it. After the
 * last step follows the push rose of one rock, if somebody wants to see it.
 */
public final class Judge implements AutoCloseable {
  /** How far a judgement goes, each step with all that the ones before it asked. */
  public enum Depth {
    /** Whether the heap stands and the rocks lie as drawn. */
    STANDING,
    /** Whether something goes over under the push, press and shaking that the scene asks for: the first that does. */
    BEARING,
    /** Room, the bottom pane and handling as well. */
    ROOM,
    /** Every push, press and shake, what is dug or lifted away, which joints to fix: only this is a verdict. */
    FULL;

    /** Whether it is asked of a rock that is still in the hand. */
    boolean whileHeld() {
      return compareTo(ROOM) < 0;
    }
  }

  /** Something that judges a scene. */
  @FunctionalInterface
  public interface Work {
    CheckReport judge(Scene scene, Shapes shapes, Depth depth, CheckWatch watch) throws Exception;

    /** How hard a push one rock takes from every direction; asked after the full judgement of the scene. None where unknown. */
    default List<CheckReport.PushLine> rose(Scene scene, Shapes shapes, String rock) throws Exception {
      return List.of();
    }
  }

  /**
   * What was found.
   *
   * @param revision the revision of the scene that was judged
   * @param report absent when judging broke off
   * @param trouble why it broke off
   * @param depth how far it went; short of {@link Depth#FULL} there is no verdict yet, at best "so far"
   */
  public record Found(long revision, Optional<CheckReport> report, Optional<String> trouble, Depth depth) {
    boolean full() {
      return depth == Depth.FULL;
    }
  }

  /** How hard a push a rock takes from every direction; empty where that could not be worked out. */
  public record Rose(long revision, String rock, List<CheckReport.PushLine> sides) {
    public Rose {
      sides = List.copyOf(sides);
    }
  }

  private record Question(Scene scene, Shapes shapes, long revision) {}

  private final Work work;
  private final Runnable wake;
  private final Thread thread;
  private Optional<Question> question = Optional.empty();
  /** The step that the question is to be asked next; none when it is settled. */
  private Optional<Depth> next = Optional.empty();
  private Optional<Found> found = Optional.empty();
  /** The rock whose push rose is wanted, and the latest one of this scene. */
  private Optional<String> wanted = Optional.empty();
  private Optional<Rose> rose = Optional.empty();
  private CheckProgress progress = new CheckProgress();
  private boolean held;
  private boolean working;
  private boolean onRose;
  private boolean ended;

  /** {@code wake} is called on the judging thread whenever there is something new. */
  public Judge(Work work, Runnable wake) {
    this.work = work;
    this.wake = wake;
    thread = new Thread(this::run, "judge");
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    thread.start();
  }

  /** Asks for a judgement; an earlier question is forgotten. */
  public synchronized void ask(Scene scene, Shapes shapes, long revision) {
    if (question.filter(q -> q.revision == revision).isPresent()) return;
    question = Optional.of(new Question(scene, shapes, revision));
    next = Optional.of(Depth.STANDING);
    found = Optional.empty();
    rose = Optional.empty();
    if (working) thread.interrupt();
    notifyAll();
  }

  /** While a rock is held nothing is asked but the first two steps; let go, the others follow. */
  public synchronized void hold(boolean inHand) {
    if (held == inHand) return;
    held = inHand;
    notifyAll();
  }

  /** The rock whose push rose is worked out when the scene has been judged; work on another one is broken off. */
  public synchronized void want(Optional<String> rock) {
    if (wanted.equals(rock)) return;
    wanted = rock;
    if (working && onRose) thread.interrupt();
    notifyAll();
  }

  /** The push rose that was worked out last, if it is one of the scene asked about last. */
  public synchronized Optional<Rose> rose() {
    return rose;
  }

  /** A push rose is wanted and not known yet. */
  public synchronized boolean awaitsRose() {
    return next.isEmpty() && roseDue();
  }

  /** What is known of the scene asked about last; nothing while it is being judged. */
  public synchronized Optional<Found> found() {
    return found;
  }

  /** The latest scene has been judged in full, or judging it broke off. */
  public synchronized boolean settled() {
    return next.isEmpty();
  }

  /** Nothing is being worked out, nor will be until something is asked, chosen or let go. */
  public synchronized boolean idle() {
    return !working && !due();
  }

  /** What the judgement of the latest scene is at; empty when nothing is being worked out. */
  public synchronized Optional<String> at() {
    return next.isPresent() && due() ? Optional.of(progress.words()) : Optional.empty();
  }

  private boolean due() {
    return next.map(n -> !held || n.whileHeld()).orElseGet(this::roseDue);
  }

  private boolean roseDue() {
    return !held && wanted.isPresent() && found.filter(f -> f.full() && f.report.isPresent()).isPresent()
        && rose.filter(r -> r.rock.equals(wanted.get())).isEmpty();
  }

  private void run() {
    while (true) {
      Question asked;
      Optional<Depth> depth;
      Optional<String> rock;
      CheckProgress watch = new CheckProgress();
      synchronized (this) {
        while (!ended && !due()) {
          try {
            wait();
          } catch (InterruptedException e) {
            // Meant for work that was just finished: look again whether there is more.
          }
        }
        if (ended) return;
        asked = question.orElseThrow();
        depth = next;
        rock = wanted;
        progress = watch;
        working = true;
        onRose = depth.isEmpty();
      }
      boolean counted = depth.isPresent() ? judged(asked, depth.get(), watch) : rosed(asked, rock.orElseThrow());
      synchronized (this) {
        working = false;
        // The mark of an interruption that came too late must not reach the next work.
        Thread.interrupted();
      }
      if (counted) wake.run();
    }
  }

  /** True when the answer counted. */
  private boolean judged(Question asked, Depth depth, CheckWatch watch) {
    Found answer;
    try {
      CheckReport report = work.judge(asked.scene, asked.shapes, depth, watch);
      answer = new Found(asked.revision, Optional.of(report), Optional.empty(), depth);
    } catch (Exception | LinkageError | StackOverflowError e) {
      // A judgement that breaks off is no judgement: the window says so instead of showing an old one.
      answer = new Found(asked.revision, Optional.empty(), Optional.of(String.valueOf(e.getMessage())), depth);
    }
    synchronized (this) {
      if (ended || question.orElse(null) != asked) return false;
      found = Optional.of(answer);
      next = answer.trouble.isPresent() || answer.full() ? Optional.empty() : Optional.of(Depth.values()[depth.ordinal() + 1]);
    }
    return true;
  }

  /** The same for a push rose. */
  private boolean rosed(Question asked, String rock) {
    List<CheckReport.PushLine> sides;
    try {
      sides = work.rose(asked.scene, asked.shapes, rock);
    } catch (Exception | LinkageError | StackOverflowError e) {
      // Without it the verdict stands; there is none to show.
      sides = List.of();
    }
    synchronized (this) {
      if (ended || question.orElse(null) != asked || !wanted.equals(Optional.of(rock))) return false;
      rose = Optional.of(new Rose(asked.revision, rock, sides));
    }
    return true;
  }

  @Override
  public void close() {
    synchronized (this) {
      ended = true;
      if (working) thread.interrupt();
      notifyAll();
    }
  }
}
