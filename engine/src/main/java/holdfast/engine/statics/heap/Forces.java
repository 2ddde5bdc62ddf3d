package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * The forces in the links of a heap, one entry a link in the heap's order, newtons.
 */
public record Forces(List<LinkForce> links) {
  public Forces {
    links = List.copyOf(links);
  }

  /**
   * The force that one link puts on its body {@code a}; body {@code b} gets the opposite.
   *
   * @param normalN its part along the normal: above zero it pushes the bodies apart
   * @param shear its part across the normal
   * @param at where it acts: the centre of pressure of a bearing, the centroid of a bond
   * @param moment moment about {@code at}, newton metres: twist for a bearing; bending and torsion for a bond
   * @param cornersN pushes at the corners of a bearing's polygon; empty for bonds and rods
   */
  public record LinkForce(double normalN, Vec3 shear, Vec3 at, Vec3 moment, List<Double> cornersN) {
    public LinkForce {
      cornersN = List.copyOf(cornersN);
    }

    /** The force scaled. */
    public LinkForce times(double factor) {
      return new LinkForce(normalN * factor, shear.times(factor), at, moment.times(factor),
          cornersN.stream().map(n -> n * factor).toList());
    }

    /** The whole force on {@code a}. */
    public Vec3 force(Vec3 normal) {
      return shear.plusTimes(normalN, normal);
    }
  }

  /** All forces so many times as large, where they act. */
  public Forces times(double factor) {
    return new Forces(links.stream().map(f -> f.times(factor)).toList());
  }

  /** What is left over on each body when these forces and {@code loads} are added: zero in balance. */
  public List<Wrench> unbalance(Heap heap, List<Wrench> loads) {
    List<Wrench> left = new ArrayList<>(loads);
    for (int i = 0; i < links.size(); i++) {
      Link link = heap.links().get(i);
      LinkForce f = links.get(i);
      Vec3 force = f.force(link.normal());
      left.set(link.a(), left.get(link.a()).plus(wrench(force, f, heap.bodies().get(link.a()).centre(), 1)));
      if (link.b() >= 0) {
        left.set(link.b(), left.get(link.b()).plus(wrench(force, f, heap.bodies().get(link.b()).centre(), -1)));
      }
    }
    return left;
  }

  /** The largest of what is left over, over the largest load; moments over half the mean size of a body. */
  public double unbalanced(Heap heap, List<Wrench> loads) {
    double lengthM = Scale.of(heap, 1).lengthM();
    double size = loads.stream().mapToDouble(w -> Math.max(w.force().norm(), w.moment().norm() / lengthM)).max().orElse(0);
    double worst = unbalance(heap, loads).stream()
        .mapToDouble(w -> Math.max(w.force().norm(), w.moment().norm() / lengthM)).max().orElse(0);
    return worst / Math.max(size, Double.MIN_NORMAL);
  }

  private static Wrench wrench(Vec3 force, LinkForce f, Vec3 centre, double sign) {
    return new Wrench(force.times(sign), f.at().minus(centre).cross(force).plus(f.moment()).times(sign));
  }
}
