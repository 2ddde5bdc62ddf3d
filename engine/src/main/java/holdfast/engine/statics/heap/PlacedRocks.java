package holdfast.engine.statics.heap;

import holdfast.engine.contact.Carried;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.ContactSearch;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.model.scene.Floor;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Settings;
import holdfast.model.scene.Tank;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Rocks in place, what they bear on and what they weigh: all of a {@link SceneHeap} that does not hang on which joints are
 * fixed. After an edit it is sought anew only about the rocks that came or moved. What {@code bonds} have made so far is all
 * that changes in it.
 *
 * @param scene where they lie
 * @param solids the rocks, then the fixed parts of the tank
 */
record PlacedRocks(
    Scene scene, List<PlacedRock> rocks, Map<String, Integer> numbers, List<Solid> solids, ContactSearch search,
    Weights weights, BearingLinks bearings, BondLinks bonds) {

  /** All besides the rocks in place that contacts, bearings, bonds and weights depend on. */
  private record Around(
      Tank tank, Floor floor, Scene.Sand sand, Scene.Water water, List<Scene.Device> devices, Settings settings) {
    static Around of(Scene s) {
      return new Around(s.tank(), s.floor(), s.sand(), s.water(), s.devices(), s.settings());
    }
  }

  static PlacedRocks of(Scene scene, List<PlacedRock> rocks) {
    List<Solid> solids = SceneSolids.ofPlaced(scene, rocks);
    ContactSearch search = ContactSearch.of(solids, ContactRules.DEFAULT);
    return new PlacedRocks(scene, List.copyOf(rocks), numbers(rocks), solids, search, new Weights(scene, rocks),
        new BearingLinks(scene, solids, search.found(), Optional.empty()),
        new BondLinks(scene.settings(), solids, search.found()));
  }

  /** The rocks of a scene that may be another, equal to {@link #of} in all that can be asked. */
  PlacedRocks next(Scene now, List<PlacedRock> placed) {
    if (!Around.of(now).equals(Around.of(scene))) return of(now, placed);
    return carried(placed).map(c -> next(now, placed, c)).orElseGet(() -> of(now, placed));
  }

  private PlacedRocks next(Scene now, List<PlacedRock> placed, Carried carried) {
    if (carried.all()) return new PlacedRocks(now, List.copyOf(placed), numbers, solids, search, weights, bearings, bonds);
    List<Solid> bodies = new ArrayList<>(placed.size() + solids.size() - rocks.size());
    for (int i = 0; i < placed.size(); i++) {
      bodies.add(carried.has(i) ? solids.get(carried.before(i)) : SceneSolids.rock(placed.get(i)));
    }
    bodies.addAll(solids.subList(rocks.size(), solids.size()));
    ContactSearch found = search.after(bodies, carried);
    return new PlacedRocks(now, List.copyOf(placed), numbers(placed), List.copyOf(bodies), found,
        weights.next(now, placed, carried), new BearingLinks(now, bodies, found.found(), Optional.of(bearings)),
        bonds.next(now.joints(), bodies, found.found(), carried, numbers));
  }

  /** Which bodies are as they were; nothing where rocks have changed places in the order. */
  private Optional<Carried> carried(List<PlacedRock> placed) {
    int fixed = solids.size() - rocks.size();
    int[] before = new int[placed.size() + fixed];
    int last = Carried.NONE;
    for (int i = 0; i < placed.size(); i++) {
      int was = numbers.getOrDefault(placed.get(i).rock().name(), Carried.NONE);
      boolean same = was != Carried.NONE && same(rocks.get(was), placed.get(i));
      if (same && was <= last) return Optional.empty();
      before[i] = same ? was : Carried.NONE;
      if (same) last = was;
    }
    for (int k = 0; k < fixed; k++) before[placed.size() + k] = rocks.size() + k;
    return Optional.of(new Carried(before, solids.size()));
  }

  /** Whether it is the same rock, shaped and placed the same, number by number. */
  private static boolean same(PlacedRock p, PlacedRock q) {
    if (p == q) return true;
    if (!p.rock().equals(q.rock()) || !p.body().equals(q.body()) || !p.pose().equals(q.pose())
        || !p.centre().equals(q.centre()) || p.lobes().size() != q.lobes().size()) {
      return false;
    }
    for (int k = 0; k < p.lobes().size(); k++) if (!p.lobes().get(k).sameAs(q.lobes().get(k))) return false;
    return true;
  }

  private static Map<String, Integer> numbers(List<PlacedRock> placed) {
    Map<String, Integer> out = new HashMap<>();
    for (int i = 0; i < placed.size(); i++) out.putIfAbsent(placed.get(i).rock().name(), i);
    return out;
  }
}
