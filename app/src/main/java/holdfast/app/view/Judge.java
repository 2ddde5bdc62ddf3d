package holdfast.app.view;

import holdfast.engine.check.CheckReport;
import holdfast.model.scene.Scene;
import holdfast.model.shape.Shapes;
import java.util.Optional;

/**
 * Judges scenes on a thread of its own, in two steps: first whether the heap stands and has room, then with every push,
 * press and shake. Only the latest scene counts: whatever was found about an older one is dropped, so that what is shown
 * is never stale, and work on it is broken off by interrupting the judging thread.
 */
public final class Judge implements AutoCloseable {
  /** Something that judges a scene. */
  @FunctionalInterface
  public interface Work {
    CheckReport judge(Scene scene, Shapes shapes, boolean full) throws Exception;
  }

  /**
   * What was found.
   *
   * @param revision the revision of the scene that was judged
   * @param report absent when judging broke off
   * @param trouble why it broke off
   * @param full pushes, presses and shakes are in; without them there is no verdict yet, at best "so far"
   */
  public record Found(long revision, Optional<CheckReport> report, Optional<String> trouble, boolean full) {}

  private final Work work;
  private final Runnable wake;
  private final Thread thread;
  private Scene wanted;
  private Shapes wantedShapes;
  private long wantedRevision;
  private Found found;
  private boolean working;
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
    if (revision == wantedRevision) return;
    wanted = scene;
    wantedShapes = shapes;
    wantedRevision = revision;
    found = null;
    if (working) thread.interrupt();
    notifyAll();
  }

  /** What is known of the scene asked about last; nothing while it is being judged. */
  public synchronized Optional<Found> found() {
    return Optional.ofNullable(found);
  }

  /** The latest scene has been judged in full, or judging it broke off. */
  public synchronized boolean settled() {
    return wanted == null || found != null && (found.full || found.trouble.isPresent());
  }

  private void run() {
    long done = 0;
    while (true) {
      Scene scene;
      Shapes shapes;
      long revision;
      synchronized (this) {
        while (!ended && (wanted == null || wantedRevision == done)) {
          try {
            wait();
          } catch (InterruptedException e) {
            // Meant for work that was just finished: look again whether there is more.
          }
        }
        if (ended) return;
        scene = wanted;
        shapes = wantedShapes;
        revision = wantedRevision;
        working = true;
      }
      done = revision;
      // The quick answer first; without the margins of every side it is shown as what it is, no verdict.
      if (judged(scene, shapes, revision, false)) judged(scene, shapes, revision, true);
      synchronized (this) {
        working = false;
        // The mark of an interruption that came too late must not reach the next work.
        Thread.interrupted();
      }
    }
  }

  /** True when the answer counted and there is more to ask. */
  private boolean judged(Scene scene, Shapes shapes, long revision, boolean full) {
    Found answer;
    try {
      answer = new Found(revision, Optional.of(work.judge(scene, shapes, full)), Optional.empty(), full);
    } catch (Exception | LinkageError | StackOverflowError e) {
      // A judgement that breaks off is no judgement: the window says so instead of showing an old one.
      answer = new Found(revision, Optional.empty(), Optional.of(String.valueOf(e.getMessage())), full);
    }
    synchronized (this) {
      if (ended || revision != wantedRevision) return false;
      found = answer;
    }
    wake.run();
    return answer.trouble.isEmpty();
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
