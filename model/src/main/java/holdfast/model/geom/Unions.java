package holdfast.model.geom;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Volume, centre and inertia of several hulls together, overlaps counted once. */
public final class Unions {
  /** Most intersections that are worked out before giving up; a sound rock needs a few dozen. */
  private static final int MOST_TERMS = 20_000;

  private Unions() {}

  /**
   * Inclusion and exclusion over the intersections, each of which is convex: exact but for rounding and for films thinner
   * than {@link Tolerances#THIN}. Empty when so many hulls overlap in one place that the sum would run away.
   */
  public static Optional<MassProperties> massProperties(List<Hull> hulls) {
    if (hulls.size() == 1) return Optional.of(Polyhedra.massProperties(hulls.get(0)));
    return moments(hulls, Polyhedra.middle(hulls.get(0))).map(Moments::massProperties);
  }

  static Optional<Moments> moments(List<Hull> hulls, Vec3 origin) {
    Moments sum = Moments.none(origin);
    int terms = 0;
    record Term(Hull hull, int last, int sign) {}

    List<Term> level = new ArrayList<>();
    for (int i = 0; i < hulls.size(); i++) level.add(new Term(hulls.get(i), i, 1));
    while (!level.isEmpty()) {
      List<Term> next = new ArrayList<>();
      for (Term t : level) {
        sum = sum.plusTimes(t.sign, Moments.of(t.hull, origin));
        for (int j = t.last + 1; j < hulls.size(); j++) {
          if (++terms > MOST_TERMS) return Optional.empty();
          int further = j;
          Polyhedra.intersect(t.hull, hulls.get(j)).ifPresent(h -> next.add(new Term(h, further, -t.sign)));
        }
      }
      level = next;
    }
    return Optional.of(sum);
  }
}
