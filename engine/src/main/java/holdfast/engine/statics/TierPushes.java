package holdfast.engine.statics;

import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Push;
import holdfast.engine.statics.heap.State;
import holdfast.model.scene.Settings;
import holdfast.model.shape.PlacedRock;
import java.util.List;
import java.util.Optional;

/**
 * The pushes that a tier asks of one rock: the whole of it from every side on every line, and a part of it on the way there
 * on the middle line of every side ({@link LoadCase#onTheWay}), since what holds at the end need not hold before.
 *
 * @param sideways every line of every side
 * @param middles the middle line of every side, in the order of the sides
 */
public record TierPushes(List<Push> sideways, List<Push> middles) {
  public TierPushes {
    sideways = List.copyOf(sideways);
    middles = List.copyOf(middles);
  }

  /** Those of a rock of the heap from all sides of the settings. */
  public static TierPushes on(int rock, PlacedRock placed, Settings settings) {
    List<List<Push>> round = Push.round(rock, placed.lobes(), placed.centre(), settings);
    return new TierPushes(round.stream().flatMap(List::stream).toList(), round.stream().map(lines -> lines.get(0)).toList());
  }

  /** A push that is not borne, and the share of the tier at which it was asked. */
  public record Refused(Push push, double share) {}

  /**
   * The first that tips something. A rock that only slides does not count.
   *
   * @param heap the whole heap that the judged part is of
   */
  public Optional<Refused> firstToTip(State state, PartJudge judge, Heap heap, double tierN) {
    for (Push p : sideways) if (tips(state, judge, heap, p, tierN)) return Optional.of(new Refused(p, 1));
    for (int d = 0; d < middles.size(); d++) {
      double share = LoadCase.onTheWay(d);
      if (tips(state, judge, heap, middles.get(d), share * tierN)) return Optional.of(new Refused(middles.get(d), share));
    }
    return Optional.empty();
  }

  /** Whether a force is not borne, in any way but by sliding. */
  public static boolean tips(State state, PartJudge judge, Heap heap, Push push, double newtons) {
    LoadCase c = new LoadCase(state, judge, judge.part().of(push.unit(heap)));
    return LoadCase.toppling(List.of(c), newtons, LoadCase.SEARCH_SHARE).isPresent();
  }
}
