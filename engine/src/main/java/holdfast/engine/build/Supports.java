package holdfast.engine.build;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.Solid;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What rests on what.
 *
 * @param below for each rock the rocks that it bears down on
 * @param base rocks that bear on the floor, the sand or anything else fixed
 * @param bottomM height of each rock's lowest point, metres
 */
public record Supports(List<Set<Integer>> below, Set<Integer> base, List<Double> bottomM) {
  /** A contact leans on, rather than bears, when its normal is flatter than this: sine of the slope to the horizontal. */
  private static final double BEARS = 0.2;

  public Supports {
    below = below.stream().<Set<Integer>>map(s -> Collections.unmodifiableSet(new TreeSet<>(s))).toList();
    base = Collections.unmodifiableSet(new TreeSet<>(base));
    bottomM = List.copyOf(bottomM);
  }

  /**
   * Reads the supports off the contacts.
   *
   * @param solids the bodies as they were searched: the rocks first, in the order of the placements, then all that is fixed
   * @param rocks how many of them are rocks
   */
  public static Supports of(List<Solid> solids, int rocks, List<Contact> contacts) {
    List<Set<Integer>> below = new ArrayList<>();
    Set<Integer> base = new TreeSet<>();
    List<Double> bottom = new ArrayList<>();
    for (int i = 0; i < rocks; i++) {
      below.add(new TreeSet<>());
      bottom.add(solids.get(i).lobes().stream()
          .mapToDouble(h -> -h.reach(Vec3.Z.negated())).min().orElse(0));
    }
    for (Contact c : contacts) {
      // The normal pushes a: upward means that a rests on b.
      double up = c.normal().z();
      if (up > BEARS && c.a() < rocks) {
        if (c.b() < rocks) below.get(c.a()).add(c.b());
        else base.add(c.a());
      } else if (up < -BEARS && c.b() < rocks) {
        if (c.a() < rocks) below.get(c.b()).add(c.a());
        else base.add(c.b());
      }
    }
    return new Supports(below, base, bottom);
  }

  int rocks() {
    return below.size();
  }
}
