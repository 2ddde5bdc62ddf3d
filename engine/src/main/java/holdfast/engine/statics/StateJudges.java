package holdfast.engine.statics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

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
   * Every part in every state, in the order of the parts and then of the states.
   *
   * @param loads for every state, in the order in which they are judged, the weights of the whole heap's bodies
   */
  public static List<Judged> all(List<Heap.Part> parts, Map<State, List<Wrench>> loads, int threads, Recall recall) {
    return judged(parts, loads, threads, recall, false);
  }

  /** The same up to the first that is not safe; whether there is one, the last of the answer tells. */
  public static List<Judged> toFirstUnsafe(List<Heap.Part> parts, Map<State, List<Wrench>> loads, int threads, Recall recall) {
    List<Judged> out = new ArrayList<>();
    for (Judged j : judged(parts, loads, threads, recall, true)) {
      out.add(j);
      if (!j.judge.safe()) break;
    }
    return out;
  }

  private static List<Judged> judged(List<Heap.Part> parts, Map<State, List<Wrench>> loads, int threads, Recall recall, boolean stop) {
    List<Class> classes = new ArrayList<>();
    for (Heap.Part p : parts) classes.addAll(classes(p, loads));
    // The first in their order counts, whoever finds one first; what comes after a known one need not be asked.
    AtomicInteger unsafe = new AtomicInteger(Integer.MAX_VALUE);
    List<Integer> places = new ArrayList<>();
    for (int k = 0; k < classes.size(); k++) places.add(k);
    List<List<Judged>> found = Parallel.map(places, threads, k -> {
      if (stop && k > unsafe.get()) return List.of();
      Class c = classes.get(k);
      PartJudge first = recall.judge(c.part, loads.get(c.first));
      if (!first.safe()) unsafe.accumulateAndGet(k, Math::min);
      List<Judged> own = new ArrayList<>();
      own.add(new Judged(c.first, first));
      for (State s : c.others) own.add(new Judged(s, recall.scaled(first, loads.get(s)).orElseThrow()));
      return own;
    });
    List<Judged> out = new ArrayList<>();
    for (Heap.Part p : parts) {
      for (State s : loads.keySet()) {
        for (List<Judged> own : found) {
          for (Judged j : own) if (j.judge.part() == p && j.state == s) out.add(j);
        }
      }
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
