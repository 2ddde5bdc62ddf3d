package holdfast.engine.contact;

import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * One patch where two bodies bear on each other. Two bodies may share several.
 *
 * @param a number of one body in the list that was searched
 * @param b number of the other body, {@code a < b}
 * @param lobeA lobe of {@code a}
 * @param lobeB lobe of {@code b}
 * @param normal unit normal, out of {@code b} into {@code a}: {@code b} pushes {@code a} along it
 * @param polygon corners of the patch in its plane, counter-clockwise seen against the normal (from the tip of the
 *     normal); two points for an edge, one for a point
 * @param distanceM least distance of the two lobes, metres: above zero they hover, below zero they overlap
 */
public record Contact(int a, int b, int lobeA, int lobeB, Vec3 normal, List<Vec3> polygon, double distanceM) {
  public Contact {
    polygon = List.copyOf(polygon);
    if (polygon.isEmpty()) throw new IllegalArgumentException("a contact has at least one point");
    if (a >= b) throw new IllegalArgumentException("bodies must be in order, were " + a + " and " + b);
  }

  /** The same contact of bodies of other numbers in the same order. */
  Contact between(int newA, int newB) {
    return newA == a && newB == b ? this : new Contact(newA, newB, lobeA, lobeB, normal, polygon, distanceM);
  }

  /** Area of the patch in square metres; zero for an edge or a point. */
  public double areaM2() {
    Vec3 sum = Vec3.ZERO;
    for (int i = 1; i + 1 < polygon.size(); i++) {
      sum = sum.plus(polygon.get(i).minus(polygon.get(0)).cross(polygon.get(i + 1).minus(polygon.get(0))));
    }
    return 0.5 * sum.norm();
  }
}
