package holdfast.app.view;

import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

/** Longer jobs off the drawing thread; their results come back to it in {@link #deliver}. */
final class Chores implements AutoCloseable {
  private final ExecutorService worker = Executors.newSingleThreadExecutor(r -> {
    Thread t = new Thread(r, "chores");
    t.setDaemon(true);
    return t;
  });
  private final Queue<Runnable> results = new ConcurrentLinkedQueue<>();
  private final AtomicInteger open = new AtomicInteger();
  private final Runnable wake;

  Chores(Runnable wake) {
    this.wake = wake;
  }

  /** Does the job elsewhere; then calls one of the two on the drawing thread. */
  <T> void start(Callable<T> job, Consumer<T> done, Consumer<String> failed) {
    open.incrementAndGet();
    worker.execute(() -> {
      Runnable result;
      try {
        T value = job.call();
        result = () -> done.accept(value);
      } catch (Exception | LinkageError | StackOverflowError e) {
        // The window goes on; what could not be done is told.
        String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
        result = () -> failed.accept(why);
      }
      results.add(result);
      wake.run();
    });
  }

  /** Hands over what is finished; true when there was something. */
  boolean deliver() {
    boolean any = false;
    for (Runnable r = results.poll(); r != null; r = results.poll()) {
      open.decrementAndGet();
      r.run();
      any = true;
    }
    return any;
  }

  boolean busy() {
    return open.get() > 0;
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
