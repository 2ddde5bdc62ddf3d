package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Objects;

/**
 * What can carry force between two bodies of a heap: bare contact under friction, a bond, or a rod.
 *
 * <p>{@code a} is always a free body; {@code b} is a free body or {@link Heap#GROUND}. The force of a link acts on
 * {@code a}, its opposite on {@code b}.
 */
public sealed interface Link {
  int a();

  int b();

  /** Corners of the patch, metres, in order round it; one for a point, two for an edge. */
  List<Vec3> polygon();

  /** Unit normal out of {@code b} into {@code a}. */
  Vec3 normal();

  /** The same link between bodies of other numbers. */
  Link between(int newA, int newB);

  /**
   * Bare contact: the normal force is a sum of pushes at the corners; shear and twist stay within the friction.
   *
   * @param friction coefficient of friction, 0 or more
   */
  record Bearing(int a, int b, Vec3 normal, List<Vec3> polygon, double friction) implements Link {
    public Bearing {
      polygon = List.copyOf(polygon);
      Objects.requireNonNull(normal);
      if (polygon.isEmpty()) throw new IllegalArgumentException("a bearing has at least one point");
      if (!(friction >= 0)) throw new IllegalArgumentException("friction must be 0 or more, was " + friction);
    }

    @Override
    public Bearing between(int newA, int newB) {
      return new Bearing(newA, newB, normal, polygon, friction);
    }

    /** A bearing in one point for every corner, each with its own push and this friction. */
    public List<Link> corners(double friction) {
      return polygon.stream().<Link>map(p -> new Bearing(a, b, normal, List.of(p), friction)).toList();
    }
  }

  /**
   * A bonded patch: one wrench, its linear stress within the design strength in tension at every corner, shear and
   * torsion together within it, compression within the strength of the rock. No friction is counted on top.
   *
   * @param areaM2 bonded area
   * @param tensionN_m2 design strength in tension
   * @param shearN_m2 design strength in shear
   * @param crushingN_m2 strength of the rock in compression
   * @param moment whether the bond carries bending and twist (a gel does not)
   */
  record Bond(
      int a, int b, Vec3 normal, List<Vec3> polygon, double areaM2,
      double tensionN_m2, double shearN_m2, double crushingN_m2, boolean moment) implements Link {
    public Bond {
      polygon = List.copyOf(polygon);
      if (!(areaM2 >= 0)) throw new IllegalArgumentException("areaM2 must be 0 or more, was " + areaM2);
    }

    @Override
    public Bond between(int newA, int newB) {
      return new Bond(newA, newB, normal, polygon, areaM2, tensionN_m2, shearN_m2, crushingN_m2, moment);
    }
  }

  /**
   * A rod across a joint beside its bearing: shear and bending within its own section, pull only when glued.
   *
   * @param at where it crosses the joint; {@code normal} is its axis
   * @param diameterM its thickness: what it gives in bending follows from it
   */
  record Rod(
      int a, int b, Vec3 normal, Vec3 at, double diameterM, double shearN, double bendingNm, double pullN) implements Link {
    @Override
    public List<Vec3> polygon() {
      return List.of(at);
    }

    @Override
    public Rod between(int newA, int newB) {
      return new Rod(newA, newB, normal, at, diameterM, shearN, bendingNm, pullN);
    }
  }
}
