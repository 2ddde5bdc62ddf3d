package holdfast.engine.verification;

import holdfast.engine.statics.LooseBlocksSolver;
import holdfast.engine.statics.LooseBlocksSolver.Answer;
import holdfast.engine.statics.LooseBlocksSolver.Outcome;
import holdfast.engine.statics.LooseBlocksSolver.Result;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import holdfast.model.io.LooseBlocks;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.function.UnaryOperator;

/** Puts heaps of blocks together from a few dimensions in metres, and asks about them. Density 1000 kg/m3 throughout. */
final class Blocks {
  static final double DENSITY = 1000;
  private final List<LooseBlocks.Block> blocks = new ArrayList<>();
  private UnaryOperator<Vec3> place = p -> p;

  /** Everything added from here on is turned about an axis through the origin first. */
  Blocks turned(Vec3 axis, double degrees) {
    Quat q = Quat.about(axis, Math.toRadians(degrees));
    place = q::rotate;
    return this;
  }

  /** An upright box from low to high along x, y and z. */
  Blocks box(String id, boolean fixed, double x0, double x1, double y0, double y1, double z0, double z1) {
    return prism(id, fixed, y0, y1, x0, z0, x1, z0, x1, z1, x0, z1);
  }

  /** A prism along y of a convex section given as x, z, x, z and so on. */
  Blocks prism(String id, boolean fixed, double y0, double y1, double... section) {
    List<Vec3> points = new ArrayList<>();
    for (double y : new double[] {y0, y1}) {
      for (int i = 0; i < section.length; i += 2) points.add(place.apply(new Vec3(section[i], y, section[i + 1])));
    }
    blocks.add(new LooseBlocks.Block(id, fixed, DENSITY, points));
    return this;
  }

  LooseBlocks heap(String name, double friction) {
    return new LooseBlocks(name, friction, blocks, Optional.empty());
  }

  /** The heap with a horizontal force of a factor times each block's weight. */
  LooseBlocks pushed(String name, double friction, Vec3 direction) {
    return new LooseBlocks(name, friction, blocks, Optional.of(new LooseBlocks.BodyLoad(direction)));
  }

  static Result solve(LooseBlocks heap) {
    Outcome outcome = LooseBlocksSolver.solve(heap);
    if (outcome instanceof Outcome.Solved s) return s.result();
    throw new AssertionError(outcome.toString());
  }

  /** "balance yes, stays no" and the like. */
  static String words(Answer equilibrium, Answer stays) {
    return "balance " + word(equilibrium) + ", stays " + word(stays);
  }

  static String words(LooseBlocks heap) {
    Result r = solve(heap);
    return words(r.equilibrium(), r.stays());
  }

  private static String word(Answer a) {
    return switch (a) {
      case YES -> "yes";
      case NO -> "no";
      case UNDECIDED -> "undecided";
    };
  }

  /**
   * Where a question turns from yes to no between two values, to within {@code width}. The ends must answer differently;
   * {@code low} may be the one that says yes or the one that says no.
   */
  static double turning(double low, double high, double width, DoublePredicate yes) {
    boolean atLow = yes.test(low);
    if (yes.test(high) == atLow) throw new AssertionError("the same answer at " + low + " and " + high);
    double a = low;
    double b = high;
    while (b - a > width) {
      double m = (a + b) / 2;
      if (yes.test(m) == atLow) a = m;
      else b = m;
    }
    return (a + b) / 2;
  }
}
