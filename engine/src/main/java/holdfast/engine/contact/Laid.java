package holdfast.engine.contact;

import java.util.List;

/**
 * A body laid out for searching.
 *
 * @param sizeM as {@link Solid#sizeM}
 * @param lobes its lobes, in their order
 */
record Laid(boolean fixed, double sizeM, List<Polytope> lobes) {
  static Laid of(Solid solid) {
    return new Laid(solid.fixed(), solid.sizeM(), solid.lobes().stream().map(Polytope::new).toList());
  }
}
