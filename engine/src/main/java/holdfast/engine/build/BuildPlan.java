package holdfast.engine.build;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.model.scene.Scene;
import holdfast.model.shape.RockBody;
import holdfast.model.shape.Shapes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * How a scene is built. Where joints are made on the bench there are two orders: rock by rock on the bench, and then piece
 * by piece in the tank, where the rest of the joints are made. Living rock that is set after filling stays in its water
 * until then. Where no joint is made on the bench, the rocks go straight into the tank.
 *
 * @param rocks names in the order of the placements: the numbers of the stages
 * @param supports what rests on what
 * @param modules pieces fixed together on the bench
 * @param order the order of placing, rock by rock: on the bench when {@code carry} is there, else in the tank
 * @param batches cement and clock of that
 * @param carry the order in which pieces go into the tank
 * @param onSand rocks for which the sand is laid before
 * @param wetFrom stage of the last order from which on pieces can be set after filling; the number of stages when none can
 */
public record BuildPlan(
    List<String> rocks, Supports supports, List<Modules.Module> modules, BuildOrder.Order order, Batches batches,
    Optional<Carry> carry, Set<Integer> onSand, int wetFrom) {
  /** Stages judged at most when nothing else is said; a plain order of thirty rocks needs thirty. */
  public static final int MOST_QUESTIONS = 400;

  public BuildPlan {
    rocks = List.copyOf(rocks);
    modules = List.copyOf(modules);
    onSand = Collections.unmodifiableSet(new TreeSet<>(onSand));
  }

  /**
   * Pieces into the tank; the numbers of its stages are those of the modules.
   *
   * @param locked pairs of pieces that rest on each other, so that neither can be lowered first
   */
  public record Carry(BuildOrder.Order order, Batches batches, List<List<Integer>> locked) {
    public Carry {
      locked = List.copyOf(locked);
    }
  }

  /** The order in the tank: of pieces when some were joined on the bench, else of rocks. */
  public BuildOrder.Order tankOrder() {
    return carry.map(Carry::order).orElse(order);
  }

  /** Cement and clock of the order in the tank. */
  public Batches tankBatches() {
    return carry.map(Carry::batches).orElse(batches);
  }

  /** Names of the rocks that come at a stage of the order in the tank. */
  public List<String> tankRocks(int stage) {
    int unit = tankOrder().stages().get(stage).rock();
    return carry.isPresent() ? modules.get(unit).rocks() : List.of(rocks.get(unit));
  }

  /** The first stage of the order in the tank that stands on sand, -1 when none does: the sand is laid before it. */
  public int sandBefore() {
    List<BuildOrder.Stage> stages = tankOrder().stages();
    for (int i = 0; i < stages.size(); i++) {
      int unit = stages.get(i).rock();
      if (carry.isPresent() ? rocksOf(unit).stream().anyMatch(onSand::contains) : onSand.contains(unit)) return i;
    }
    return -1;
  }

  /** Numbers of the rocks of a module. */
  public List<Integer> rocksOf(int module) {
    return modules.get(module).rocks().stream().map(rocks::indexOf).toList();
  }

  /** Every batch of mortar, those of the bench first. */
  public List<Batches.Batch> mortar() {
    List<Batches.Batch> out = new ArrayList<>(batches.batches());
    carry.ifPresent(c -> out.addAll(c.batches.batches()));
    return out;
  }

  /** All the powder, waste included, grams. */
  public double powderG() {
    return batches.powderG() + carry.map(c -> c.batches.powderG()).orElse(0.0);
  }

  /** All the putty, waste left out, millilitres. */
  public double putty() {
    return batches.putty() + carry.map(c -> c.batches.putty()).orElse(0.0);
  }

  /** All the gel, waste left out, millilitres. */
  public double gel() {
    return batches.gel() + carry.map(c -> c.batches.gel()).orElse(0.0);
  }

  /** All the joints that take a rod. */
  public int rods() {
    return batches.rods() + carry.map(c -> c.batches.rods()).orElse(0);
  }

  /**
   * The plan of a scene whose rocks all have a shape: the one that window and build sheet show.
   *
   * @param stander judges the stages
   */
  public static BuildPlan of(Scene scene, Shapes shapes, Stander stander) {
    List<Solid> solids = SceneSolids.ofPlaced(scene, shapes.placed());
    return of(scene, List.copyOf(shapes.bodies().values()), solids, ContactFinder.find(solids, ContactRules.DEFAULT).contacts(),
        StageJudge.sandFeet(scene, shapes.placed()), stander, MOST_QUESTIONS);
  }

  /**
   * The plan of a scene.
   *
   * @param bodies of its rocks
   * @param solids as they were searched for contacts: the placed rocks first, in the order of the placements
   * @param contacts between them
   * @param sandFeet rocks that bear on sand in the finished heap
   * @param stander judges the stages
   */
  public static BuildPlan of(
      Scene scene, List<RockBody> bodies, List<Solid> solids, List<Contact> contacts, Set<Integer> sandFeet, Stander stander,
      int mostQuestions) {
    return new BuildPlanner(scene, bodies, solids, contacts, stander, mostQuestions).planned(sandFeet);
  }
}
