package holdfast.engine.statics.heap;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.SupportInset;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** From bodies in place and their contacts to a {@link Heap} of bearings. */
public final class HeapAssembly {
  private HeapAssembly() {}

  /** Coefficient of friction of a pair of bodies. */
  @FunctionalInterface
  public interface Friction {
    double between(Solid a, Solid b);
  }

  /**
   * Numbers the free bodies: place in the heap by place in {@code solids}, {@link Heap#GROUND} for fixed ones.
   */
  public static int[] numbers(List<Solid> solids) {
    int[] number = new int[solids.size()];
    int next = 0;
    for (int i = 0; i < number.length; i++) number[i] = solids.get(i).fixed() ? Heap.GROUND : next++;
    return number;
  }

  /**
   * One bearing for one contact, the patch drawn in by {@code insetM}, acting on its free body.
   *
   * @param number as from {@link #numbers}
   */
  public static Link.Bearing bearing(Contact c, int[] number, double friction, double insetM) {
    List<Vec3> polygon = SupportInset.drawnIn(c.polygon(), c.normal(), insetM);
    if (number[c.a()] >= 0) return new Link.Bearing(number[c.a()], number[c.b()], c.normal(), polygon, friction);
    List<Vec3> turned = new ArrayList<>(polygon);
    Collections.reverse(turned);
    return new Link.Bearing(number[c.b()], number[c.a()], c.normal().negated(), turned, friction);
  }

  /** All contacts as bearings, in their order. */
  public static List<Link> bearings(List<Solid> solids, List<Contact> contacts, Friction friction, double insetM) {
    int[] number = numbers(solids);
    List<Link> links = new ArrayList<>(contacts.size());
    for (Contact c : contacts) {
      links.add(bearing(c, number, friction.between(solids.get(c.a()), solids.get(c.b())), insetM));
    }
    return links;
  }
}
