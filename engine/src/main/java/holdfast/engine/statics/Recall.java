package holdfast.engine.statics;

import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.scene.Scene;
import holdfast.model.shape.PlacedRock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * What was found before, by what it was found from: after an edit only the heap that was touched is judged anew. Every
 * answer depends on its key alone, so it is the same whether it was recalled or not. What a few rounds did not ask for is
 * forgotten, also when they were broken off: whoever drags a rock on and on must not fill the memory. For several threads at
 * once.
 */
public final class Recall {
  /** Rounds that an answer outlives unasked: an edit takes two, and an interrupted one has asked for little. */
  private static final int ROUNDS = 4;

  private final Map<Object, Kept> kept = new ConcurrentHashMap<>();
  /** One whose answers are taken over where they are known; null for none. */
  private final Recall other;
  private volatile int round;
  private SceneHeap last;

  public Recall() {
    this(null);
  }

  /**
   * One that takes over what another one knows, as long as that one keeps it.
   *
   * @param other of one who asks less and more often
   */
  public Recall(Recall other) {
    this.other = other;
  }

  private static final class Kept {
    final Object value;
    volatile int round;

    Kept(Object value, int round) {
      this.value = value;
      this.round = round;
    }
  }

  /** Bodies, links and loads; equal where nothing that the statics see differs. */
  private record Loaded(Heap.Part part, List<Wrench> dead) {
    @Override
    public int hashCode() {
      return 31 * part.bodies().hashCode() + dead.hashCode();
    }
  }

  /** The answer to {@code key}, from {@code work} if it is not known; null is no answer. */
  @SuppressWarnings("unchecked")
  public <T> T of(Object key, Supplier<T> work) {
    Kept known = kept.get(key);
    if (known == null) {
      Kept elsewhere = other == null ? null : other.kept.get(key);
      known = new Kept(elsewhere == null ? work.get() : elsewhere.value, round);
      Kept meanwhile = kept.putIfAbsent(key, known);
      if (meanwhile != null) known = meanwhile;
    }
    known.round = round;
    return (T) known.value;
  }

  /**
   * The heap of a scene, as {@link SceneHeap#of} makes it; what the last one that was asked for tells of it is not sought
   * again.
   */
  public synchronized SceneHeap heap(Scene scene, List<PlacedRock> rocks) {
    last = last == null ? SceneHeap.of(scene, rocks) : last.next(scene, rocks);
    return last;
  }

  /** One separate heap judged under its share of {@code whole}; the same object for equal heaps and loads. */
  public PartJudge judge(Heap.Part part, List<Wrench> whole) {
    return of(new Loaded(part, part.of(whole)), () -> new PartJudge(part, whole));
  }

  /** The same under weights in proportion to those of {@code base}, from its judgement; empty where they are not. */
  Optional<PartJudge> scaled(PartJudge base, List<Wrench> whole) {
    return of(new Scaled(base, base.part().of(whole)), () -> base.scaled(whole));
  }

  /** A judgement and weights that it may be scaled to. */
  private record Scaled(PartJudge base, List<Wrench> dead) {}

  /** Ends a round, completed or not: forgets what it and those just before did not ask for. */
  public void ended() {
    int now = round;
    kept.values().removeIf(k -> k.round <= now - ROUNDS);
    round = now + 1;
  }

  /** Number of answers kept. */
  public int size() {
    return kept.size();
  }
}
