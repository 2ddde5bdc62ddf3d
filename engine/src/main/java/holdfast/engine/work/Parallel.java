package holdfast.engine.work;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;

/**
 * Runs independent questions on several threads, the asking one among them; the answers come in the order of the questions,
 * whoever was first. A thread that is interrupted begins no further question and ends with an {@link IllegalStateException}:
 * whoever asked no longer wants to know. The threads are kept, and with them what judges made ready for each.
 */
public final class Parallel {
  private static final ExecutorService THREADS = Executors.newCachedThreadPool(r -> {
    Thread t = new Thread(r, "holdfast-check");
    t.setDaemon(true);
    return t;
  });

  private Parallel() {}

  /** The answers to all items, in their order; of several failures the first in that order is thrown. */
  public static <T, R> List<R> map(List<T> items, int threads, Function<T, R> work) {
    if (threads == 1 || items.size() < 2) return items.stream().map(item -> wanted(item, work)).toList();
    Answers<T, R> answers = new Answers<>(items, work);
    List<Future<?>> helpers = new ArrayList<>();
    for (int k = 1; k < Math.min(threads, items.size()); k++) helpers.add(THREADS.submit(answers));
    try {
      answers.run();
      for (Future<?> f : helpers) f.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the check was interrupted", e);
    } catch (CancellationException | ExecutionException e) {
      throw new IllegalStateException(e);
    } finally {
      for (Future<?> f : helpers) f.cancel(true);
    }
    return answers.inOrder();
  }

  /** Answers whatever question is next until none is left or one failed. */
  private static final class Answers<T, R> implements Runnable {
    private final List<T> items;
    private final Function<T, R> work;
    private final AtomicInteger next = new AtomicInteger();
    private final List<R> found;
    private final RuntimeException[] failed;

    Answers(List<T> items, Function<T, R> work) {
      this.items = items;
      this.work = work;
      found = new ArrayList<>();
      for (int i = 0; i < items.size(); i++) found.add(null);
      failed = new RuntimeException[items.size()];
    }

    @Override
    public void run() {
      for (int i = next.getAndIncrement(); i < items.size(); i = next.getAndIncrement()) {
        try {
          found.set(i, wanted(items.get(i), work));
        } catch (RuntimeException e) {
          failed[i] = e;
          next.set(items.size());
        }
      }
    }

    List<R> inOrder() {
      for (RuntimeException e : failed) if (e != null) throw e;
      return List.copyOf(found);
    }
  }

  /**
   * Ends with an {@link IllegalStateException} where the thread is interrupted: for work that takes long, before each of its
   * steps. No answer comes of it then, so none can be read as a yes or kept.
   */
  public static void stopIfInterrupted() {
    if (Thread.currentThread().isInterrupted()) throw new IllegalStateException("the check was interrupted");
  }

  private static <T, R> R wanted(T item, Function<T, R> work) {
    stopIfInterrupted();
    return work.apply(item);
  }
}
