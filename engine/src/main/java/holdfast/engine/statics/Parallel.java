package holdfast.engine.statics;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/**
 * Runs independent questions on several threads; the answers come in the order of the questions, whoever was first. A
 * thread that is interrupted begins no further question and ends with an {@link IllegalStateException}: whoever asked no
 * longer wants to know.
 */
public final class Parallel {
  private Parallel() {}

  /** The answers to all items, in their order. */
  public static <T, R> List<R> map(List<T> items, int threads, Function<T, R> work) {
    if (threads == 1 || items.size() < 2) return items.stream().map(item -> wanted(item, work)).toList();
    ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, items.size()), r -> {
      Thread t = new Thread(r, "holdfast-check");
      t.setDaemon(true);
      return t;
    });
    try {
      List<Future<R>> futures = new ArrayList<>(items.size());
      for (T item : items) futures.add(pool.submit(() -> wanted(item, work)));
      List<R> out = new ArrayList<>(items.size());
      for (Future<R> f : futures) out.add(f.get());
      return out;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the check was interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException r) throw r;
      throw new IllegalStateException(e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static <T, R> R wanted(T item, Function<T, R> work) {
    if (Thread.currentThread().isInterrupted()) throw new IllegalStateException("the check was interrupted");
    return work.apply(item);
  }
}
