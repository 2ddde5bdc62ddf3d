package holdfast.engine.statics;

import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.State;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.work.Parallel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * The judgements of separate heaps in every state. States whose weights are in proportion share one judgement, that of the
 * first of them, scaled: dry, filled and drained mostly are. The order of the states decides which is the first, so the
 * answers do not depend on threads or on what was recalled.
 */
public final class StateJudges {
  /** One separate heap in one state. */
  public record Judged(State state, PartJudge judge) {}

  /** A state of a part that no earlier one is in proportion to, and those that are in proportion to it. */
  private record Class(Heap.Part part, State first, List<State> others) {}

  private StateJudges() {}

  /**
   * Every part in every state: for every part, in the order of the parts, its judgements in the order of the states.
   *
   * @param loads for every state, in the order in which they are judged, the weights of the whole heap's bodies
   */
  public static List<List<Judged>> all(List<Heap.Part> parts, Map<State, List<Wrench>> loads, int threads, Recall recall) {
    return judged(parts, loads, threads, recall, false);
  }

  /**
   * The same up to the first that is not safe, in that order. It is the last one of the last part that is answered for; where
   * that one is safe, all are there and all are safe.
   */
  public static List<List<Judged>> toFirstUnsafe(
      List<Heap.Part> parts, Map<State, List<Wrench>> loads, int threads, Recall recall) {
    List<List<Judged>> out = new ArrayList<>();
    for (List<Judged> ofPart : judged(parts, loads, threads, recall, true)) {
      List<Judged> own = new ArrayList<>();
      out.add(own);
      for (Judged j : ofPart) {
        own.add(j);
        if (!j.judge.safe()) return out;
      }
    }
    return out;
  }

  private static List<List<Judged>> judged(
      List<Heap.Part> parts, Map<State, List<Wrench>> loads, int threads, Recall recall, boolean stop) {
    List<Class> classes = new ArrayList<>();
    for (Heap.Part p : parts) classes.addAll(classes(p, loads));
    // The first in their order counts, whoever finds one first; what comes after a known one need not be asked.
    AtomicInteger unsafe = new AtomicInteger(Integer.MAX_VALUE);
    List<Map<State, PartJudge>> found = Parallel.map(IntStream.range(0, classes.size()).boxed().toList(), threads, k -> {
      Map<State, PartJudge> own = new EnumMap<>(State.class);
      if (stop && k > unsafe.get()) return own;
      Class c = classes.get(k);
      PartJudge first = recall.judge(c.part, loads.get(c.first));
      if (!first.safe()) unsafe.accumulateAndGet(k, Math::min);
      own.put(c.first, first);
      for (State s : c.others) own.put(s, recall.scaled(first, loads.get(s)).orElseThrow());
      return own;
    });
    List<List<Judged>> out = new ArrayList<>();
    int k = 0;
    for (Heap.Part p : parts) {
      Map<State, PartJudge> own = new EnumMap<>(State.class);
      for (; k < classes.size() && classes.get(k).part == p; k++) own.putAll(found.get(k));
      out.add(loads.keySet().stream().filter(own::containsKey).map(s -> new Judged(s, own.get(s))).toList());
    }
    return out;
  }

  private static List<Class> classes(Heap.Part part, Map<State, List<Wrench>> loads) {
    List<Class> out = new ArrayList<>();
    for (State s : loads.keySet()) {
      List<Wrench> dead = part.of(loads.get(s));
      Class like = out.stream().filter(c -> PartJudge.scales(part.heap(), part.of(loads.get(c.first)), dead))
          .findFirst().orElse(null);
      if (like != null) like.others.add(s);
      else out.add(new Class(part, s, new ArrayList<>()));
    }
    return out;
  }

  /**
   * Of judgements of one part those that can govern a live load that is the same in every state, the lightest first: no other
   * one makes them needless ({@link PartJudge#covers}).
   */
  public static List<Judged> governing(List<Judged> ofPart) {
    List<Judged> lightest = new ArrayList<>(ofPart);
    lightest.sort(Comparator.comparingDouble(j -> j.judge.deadN()));
    List<Judged> out = new ArrayList<>();
    for (Judged j : lightest) if (out.stream().noneMatch(o -> o.judge.safe() && o.judge.covers(j.judge))) out.add(j);
    return out;
  }
}
