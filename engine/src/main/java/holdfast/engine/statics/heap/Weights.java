package holdfast.engine.statics.heap;

import holdfast.engine.contact.Carried;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.RockBody;
import holdfast.model.shape.Submerged;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What each rock weighs in each state, and where that acts.
 *
 * <p>Pores flood, so a rock loses {@code rho_water / rho_mineral} of its dry weight and its sealed voids lift besides;
 * the hull's volume displaces nothing. A rock that stands out of the water loses the share of its volume below the line,
 * at the centroid of that part. Just drained it carries its pore water and no water carries it.
 */
public final class Weights {
  private final Scene scene;
  private final List<PlacedRock> rocks;
  private final double water;
  private final double mineral;

  /** From before an edit, rock by rock; null for a rock that came or moved since. */
  private final Map<State, List<Wrench>> carried;
  private final Map<State, List<Wrench>> known = new ConcurrentHashMap<>();

  public Weights(Scene scene, List<PlacedRock> rocks) {
    this(scene, rocks, Map.of());
  }

  private Weights(Scene scene, List<PlacedRock> rocks, Map<State, List<Wrench>> carried) {
    this.carried = carried;
    this.scene = scene;
    this.rocks = List.copyOf(rocks);
    water = SeaWater.densityKgM3(scene.water().salinity(), scene.water().temperatureC());
    mineral = scene.settings().get(Setting.MINERAL_DENSITY);
  }

  /** The states worth asking about: the overgrown one only where something lives. */
  public List<State> states() {
    List<State> out = new ArrayList<>();
    for (State s : State.values()) {
      if (s != State.GROWN || rocks.stream().anyMatch(Weights::lives)) out.add(s);
    }
    return out;
  }

  /** For every state worth asking about, in their order, the weight of every rock about its centre of mass. */
  public Map<State, List<Wrench>> loads() {
    Map<State, List<Wrench>> out = new EnumMap<>(State.class);
    for (State s : states()) out.put(s, loads(s));
    return out;
  }

  /** The same after an edit that leaves water and settings: what rocks weigh that have not moved is kept. */
  Weights next(Scene now, List<PlacedRock> placed, Carried before) {
    Map<State, List<Wrench>> kept = new EnumMap<>(State.class);
    known.forEach((state, loads) -> {
      List<Wrench> same = new ArrayList<>(placed.size());
      for (int i = 0; i < placed.size(); i++) same.add(before.has(i) ? loads.get(before.before(i)) : null);
      kept.put(state, same);
    });
    return new Weights(now, placed, kept);
  }

  /** The weight of every rock, about its centre of mass. */
  public List<Wrench> loads(State state) {
    return known.computeIfAbsent(state, s -> {
      List<Wrench> before = carried.get(s);
      List<Wrench> out = new ArrayList<>(rocks.size());
      for (int i = 0; i < rocks.size(); i++) {
        Wrench same = before == null ? null : before.get(i);
        out.add(same == null ? load(s, rocks.get(i)) : same);
      }
      return List.copyOf(out);
    });
  }

  private Wrench load(State state, PlacedRock placed) {
    RockBody rock = placed.body();
    double levelM = scene.water().levelMm() * 1e-3 * state.waterShare();
    double mass = rock.dryMassKg() + (state == State.DRAINED ? rock.poreWaterKg() : 0);
    Wrench w = new Wrench(Vec3.Z.times(-mass * Gravity.G), Vec3.ZERO);
    if (levelM > 0) w = w.plus(lift(placed, levelM));
    if (state == State.GROWN && lives(placed)) {
      double growth = scene.settings().get(Setting.GROWTH_KG) * Gravity.G;
      w = w.plus(Wrench.of(Vec3.Z.times(-growth), top(placed), placed.centre()));
    }
    return w;
  }

  /** Mass that shakes with each rock, pore water with it when the pores are full, kilograms. */
  public List<Double> shakingKg(State state) {
    return rocks.stream().map(PlacedRock::body)
        .map(r -> r.dryMassKg() + (state == State.DRY ? 0 : r.poreWaterKg())).toList();
  }

  /** The weight of one rock wholly under water, newtons; below zero it floats. */
  public double submergedN(int rock) {
    RockBody r = rocks.get(rock).body();
    return Gravity.G * (r.dryMassKg() * (1 - water / mineral) - water * r.sealedVolumeM3());
  }

  private Wrench lift(PlacedRock placed, double levelM) {
    RockBody rock = placed.body();
    double full = Gravity.G * water * (rock.dryMassKg() / mineral + rock.sealedVolumeM3());
    Submerged below = Submerged.of(rock, placed.pose(), levelM);
    return Wrench.of(Vec3.Z.times(full * below.share()), below.centre(), placed.centre());
  }

  private static boolean lives(PlacedRock placed) {
    return placed.rock().kind() == Rock.Kind.LIVE;
  }

  private static Vec3 top(PlacedRock placed) {
    Vec3 best = null;
    for (Hull h : placed.lobes()) {
      for (Vec3 p : h.corners()) {
        if (best == null || p.z() > best.z()) best = p;
      }
    }
    return best;
  }
}
