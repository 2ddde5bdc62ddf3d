package holdfast.engine.statics;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.engine.statics.balance.Balance;
import holdfast.engine.statics.balance.ForceBalance;
import holdfast.engine.statics.balance.Margin;
import holdfast.engine.statics.heap.Gravity;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.HeapAssembly;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.rest.Rest;
import holdfast.engine.statics.rest.Resting;
import holdfast.model.geom.Hull;
import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.HullResult;
import holdfast.model.geom.MassProperties;
import holdfast.model.geom.Polyhedra;
import holdfast.model.geom.Vec3;
import holdfast.model.io.LooseBlocks;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Judges a bare heap of blocks: patches as they are, one friction, gravity 9.81 m/s2. */
public final class LooseBlocksSolver {
  private LooseBlocksSolver() {}

  /** A question answered, or not. */
  public enum Answer {
    YES, NO, UNDECIDED
  }

  /**
   * What was found.
   *
   * @param equilibrium some admissible forces balance gravity
   * @param stays the heap remains, placed without pre-load
   * @param reason why something is undecided; empty otherwise
   * @param associative largest factor of the load that some admissible forces balance; absent without a load or limit
   * @param nonAssociative largest factor under which the heap was confirmed to stay
   */
  public record Result(
      Answer equilibrium, Answer stays, String reason, OptionalDouble associative, OptionalDouble nonAssociative) {}

  /** What can come of a file that was read: a result, or a block that is no solid. */
  public sealed interface Outcome {
    record Solved(Result result) implements Outcome {}

    record NoSolid(String block, String reason) implements Outcome {}
  }

  public static Outcome solve(LooseBlocks file) {
    List<Solid> solids = new ArrayList<>();
    List<Heap.Body> bodies = new ArrayList<>();
    List<Wrench> dead = new ArrayList<>();
    List<Wrench> live = new ArrayList<>();
    Vec3 along = file.load().map(LooseBlocks.BodyLoad::direction).orElse(Vec3.ZERO);
    for (LooseBlocks.Block b : file.blocks()) {
      HullResult built = HullBuilder.build(b.verticesM());
      if (built instanceof HullResult.Degenerate d) return new Outcome.NoSolid(b.id(), d.reason());
      Hull hull = ((HullResult.Solid) built).hull();
      Solid solid = new Solid(b.id(), Solid.Surface.ROCK, b.fixed(), List.of(hull));
      solids.add(solid);
      if (b.fixed()) continue;
      MassProperties m = Polyhedra.massProperties(hull);
      double mass = m.volumeM3() * b.densityKgM3();
      bodies.add(new Heap.Body(b.id(), m.centre(), solid.sizeM(), mass));
      dead.add(new Wrench(new Vec3(0, 0, -mass * Gravity.G), Vec3.ZERO));
      live.add(new Wrench(along.times(mass * Gravity.G), Vec3.ZERO));
    }
    List<Link> links = HeapAssembly.bearings(
        solids, ContactFinder.find(solids, ContactRules.DEFAULT).contacts(), (a, b) -> file.friction(), 0);
    Optional<List<Wrench>> load = file.load().map(l -> live);
    return new Outcome.Solved(judge(new Heap(bodies, links), dead, load));
  }

  /** The same for a heap that is already put together. */
  public static Result judge(Heap heap, List<Wrench> dead, Optional<List<Wrench>> live) {
    if (heap.bodies().isEmpty()) {
      return new Result(Answer.YES, Answer.YES, "", OptionalDouble.empty(), OptionalDouble.empty());
    }
    double typical = ForceBalance.typicalN(dead);
    ForceBalance balance = new ForceBalance(heap, typical);
    Balance stands = balance.stands(dead);
    Answer equilibrium = stands.match(s -> Answer.YES, f -> Answer.NO, u -> Answer.UNDECIDED);
    String reason = stands.match(s -> "", f -> "", Balance.Undecided::reason);
    Resting resting = new Resting(heap, typical);
    Rest rest = resting.under(dead);
    Answer stays = equilibrium == Answer.NO
        ? Answer.NO
        : rest.match(s -> equilibrium, m -> Answer.NO, b -> Answer.NO, u -> Answer.UNDECIDED);
    if (reason.isEmpty()) reason = rest instanceof Rest.Undecided u && stays == Answer.UNDECIDED ? u.reason() : "";
    if (live.isEmpty() || equilibrium != Answer.YES) {
      return new Result(equilibrium, stays, reason, OptionalDouble.empty(), OptionalDouble.empty());
    }
    Margin margin = balance.fine(dead, live.get(), Tolerances.FACTOR_CAP);
    OptionalDouble associative = margin.match(
        l -> OptionalDouble.of(l.factor()), b -> OptionalDouble.empty(), f -> OptionalDouble.empty(),
        u -> OptionalDouble.empty());
    OptionalDouble confirmed = OptionalDouble.empty();
    if (associative.isPresent() && rest instanceof Rest.Stays s) {
      double most = associative.getAsDouble();
      confirmed = OptionalDouble.of(Confirmed.largest(
          resting, s.state(), dead, live.get(), most, Tolerances.CONFIRM_FINE).factor());
    }
    return new Result(equilibrium, stays, reason, associative, confirmed);
  }
}
