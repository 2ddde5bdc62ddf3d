package holdfast.engine.statics.balance;

import holdfast.engine.statics.heap.BondUse;
import holdfast.engine.statics.heap.Elements;
import holdfast.engine.statics.heap.Forces;
import holdfast.engine.statics.heap.Forces.LinkForce;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Patch;
import holdfast.engine.statics.heap.Wrench;
import holdfast.engine.statics.solver.BlockCholesky;
import holdfast.engine.statics.solver.BlockPattern;
import holdfast.engine.statics.solver.Element;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * A heap with friction at the corners of its bearings, between newtons and the figures of {@link CornerPath}: forces over
 * {@code forceN}, lengths over {@code lengthM}, all moments about the middle of the heap.
 *
 * <p>Bonds and rods stay what {@link Elements} makes of them. A glued rod may also push, as it does when it is elastic, so
 * it gets a bearing without friction beside it.
 */
final class CornerModel {
  final Heap heap;
  final double forceN;
  final double lengthM;
  final Vec3 origin;
  private final List<Link.Bearing> bearings = new ArrayList<>();
  private final List<Element> elements = new ArrayList<>();
  private final List<Patch> patches = new ArrayList<>();
  /** First corner of a link's bearing, and first unknown of its element; -1 where there is none. */
  private final int[] cornerAt;
  private final int[] unknownAt;
  private final BlockPattern pattern;

  CornerModel(Heap heap, double typicalN) {
    this.heap = heap;
    forceN = typicalN;
    int n = heap.bodies().size();
    Vec3 sum = Vec3.ZERO;
    for (Heap.Body b : heap.bodies()) sum = sum.plus(b.centre());
    origin = sum.times(1.0 / n);
    double apart = 0;
    double size = 0;
    for (Heap.Body b : heap.bodies()) {
      apart += b.centre().minus(origin).norm() / n;
      size += b.sizeM() / 2 / n;
    }
    double larger = Math.max(apart, size);
    lengthM = larger > 0 ? larger : 1;
    List<Heap.Body> together = heap.bodies().stream().map(b -> new Heap.Body(b.name(), origin, b.sizeM(), b.massKg())).toList();
    Elements make = new Elements(new Heap(together, heap.links()), forceN, lengthM);
    cornerAt = new int[heap.links().size()];
    unknownAt = new int[heap.links().size()];
    List<int[]> pairs = new ArrayList<>();
    int corner = 0;
    int unknown = 0;
    for (int i = 0; i < cornerAt.length; i++) {
      Link l = heap.links().get(i);
      if (l.b() >= 0) pairs.add(new int[] {l.a(), l.b()});
      Patch patch = l instanceof Link.Bearing ? null : new Patch(l.normal(), l.polygon());
      patches.add(patch);
      Link.Bearing pushed = pushing(l);
      cornerAt[i] = pushed == null ? -1 : corner;
      if (pushed != null) {
        bearings.add(pushed);
        corner += pushed.polygon().size();
      }
      unknownAt[i] = patch == null ? -1 : unknown;
      if (patch != null) {
        elements.add(make.of(l, patch, Elements.Centre.middle(patch)));
        unknown += elements.get(elements.size() - 1).size();
      }
    }
    pattern = new BlockPattern(n, pairs);
  }

  /** What of a link pushes corner by corner, or null. */
  private static Link.Bearing pushing(Link l) {
    if (l instanceof Link.Bearing b) return b;
    boolean glued = l instanceof Link.Rod r && r.pullN() > 0;
    return glued ? new Link.Bearing(l.a(), l.b(), l.normal(), l.polygon(), 0) : null;
  }

  /** The heap with every bearing in one point a corner, for the general solver; its links in the order of {@link #forces}. */
  List<Link> points() {
    List<Link> out = new ArrayList<>();
    for (Link.Bearing b : bearings) out.addAll(b.corners(b.friction()));
    for (Link l : heap.links()) if (!(l instanceof Link.Bearing)) out.add(l);
    return out;
  }

  CornerPath path(double[] dead, double mostPush) {
    BlockCholesky factor = new BlockCholesky(pattern);
    CornerCones corners = new CornerCones(new CornerShape(bearings, origin, lengthM, mostPush, factor));
    FastenedCones fastened = elements.isEmpty() ? null : new FastenedCones(heap.bodies().size(), elements);
    return new CornerPath(corners, fastened, factor, dead);
  }

  /** Loads about the middle of the heap, scaled. */
  double[] scaled(List<Wrench> loads) {
    double[] out = new double[6 * loads.size()];
    for (int i = 0; i < loads.size(); i++) {
      Vec3 f = loads.get(i).force().times(1 / forceN);
      Vec3 arm = heap.bodies().get(i).centre().minus(origin);
      Vec3 m = loads.get(i).moment().times(1 / forceN).plus(arm.cross(f)).times(1 / lengthM);
      put(out, 6 * i, f, m);
    }
    return out;
  }

  private static void put(double[] out, int at, Vec3 f, Vec3 m) {
    out[at] = f.x();
    out[at + 1] = f.y();
    out[at + 2] = f.z();
    out[at + 3] = m.x();
    out[at + 4] = m.y();
    out[at + 5] = m.z();
  }

  /** Movements of the origin as carried along by each body, to movements of the bodies' centres in the same scale. */
  double[] aboutCentres(double[] y) {
    double[] out = new double[y.length];
    for (int i = 0; i < y.length / 6; i++) {
      Vec3 spin = new Vec3(y[6 * i + 3], y[6 * i + 4], y[6 * i + 5]);
      Vec3 arm = heap.bodies().get(i).centre().minus(origin).times(1 / lengthM);
      put(out, 6 * i, new Vec3(y[6 * i], y[6 * i + 1], y[6 * i + 2]).plus(spin.cross(arm)), spin);
    }
    return out;
  }

  /**
   * Forces in newtons.
   *
   * @param s of each corner as in {@link CornerPoint}
   * @param x unknowns of bonds and rods, or null without any
   */
  Forces forces(double[][] s, double[] x) {
    List<LinkForce> out = new ArrayList<>(cornerAt.length);
    for (int i = 0; i < cornerAt.length; i++) {
      Link l = heap.links().get(i);
      if (l instanceof Link.Bearing b) {
        out.add(bearing(b, s, cornerAt[i]));
        continue;
      }
      int size = l instanceof Link.Bond b ? b.moment() && patches.get(i).areaM2 > 0 ? 6 : 3 : ((Link.Rod) l).pullN() > 0 ? 5 : 4;
      double[] newtons = new double[size];
      for (int k = 0; k < size; k++) newtons[k] = x[unknownAt[i] + k] * forceN;
      if (l instanceof Link.Bond b) {
        out.add(BondUse.bondForce(b, patches.get(i), newtons, lengthM));
        continue;
      }
      LinkForce f = BondUse.rodForce((Link.Rod) l, newtons, lengthM);
      double push = cornerAt[i] < 0 ? 0 : s[0][cornerAt[i]] * forceN;
      out.add(new LinkForce(f.normalN() + push, f.shear(), f.at(), f.moment(), f.cornersN()));
    }
    return new Forces(out);
  }

  private LinkForce bearing(Link.Bearing b, double[][] s, int from) {
    Vec3 first = b.normal().anyPerpendicular();
    Vec3 second = b.normal().cross(first);
    int n = b.polygon().size();
    List<Double> pushes = new ArrayList<>(n);
    double normal = 0;
    double u = 0;
    double v = 0;
    Vec3 weighed = Vec3.ZERO;
    Vec3 middle = Vec3.ZERO;
    for (int k = 0; k < n; k++) {
      int o = from + k;
      double push = s[0][o] * forceN / (b.friction() > 0 ? b.friction() : 1);
      pushes.add(push);
      normal += push;
      u += s[1][o] * forceN;
      v += s[2][o] * forceN;
      weighed = weighed.plusTimes(push, b.polygon().get(k));
      middle = middle.plusTimes(1.0 / n, b.polygon().get(k));
    }
    Vec3 at = normal > 0 ? weighed.times(1 / normal) : middle;
    Vec3 moment = Vec3.ZERO;
    for (int k = 0; k < n; k++) {
      int o = from + k;
      Vec3 shear = first.times(s[1][o] * forceN).plusTimes(s[2][o] * forceN, second);
      moment = moment.plus(b.polygon().get(k).minus(at).cross(shear.plusTimes(pushes.get(k), b.normal())));
    }
    return new LinkForce(normal, first.times(u).plusTimes(v, second), at, moment, pushes);
  }

  /**
   * What corners at their largest push gain in a movement of the bodies' centres in which they open less than they slide:
   * scaled, zero where the movement is free of that.
   */
  double excess(double[] centres, double mostPush) {
    double sum = 0;
    for (Link.Bearing b : bearings) {
      Vec3 one = b.polygon().get(0);
      Vec3 there = velocity(centres, b.a(), one);
      Vec3 spin = spin(centres, b.a());
      if (b.b() >= 0) {
        there = there.minus(velocity(centres, b.b(), one));
        spin = spin.minus(spin(centres, b.b()));
      }
      for (Vec3 p : b.polygon()) {
        Vec3 v = there.plus(spin.cross(p.minus(one)).times(1 / lengthM));
        double opens = v.dot(b.normal());
        // Whichever way it slides along the patch.
        Vec3 along = v.plusTimes(-opens, b.normal());
        double slides = b.friction() * b.friction() * along.dot(along);
        if (opens >= 0 && opens * opens >= slides) continue;
        sum += mostPush * (Math.sqrt(slides) - opens);
      }
    }
    return sum;
  }

  private Vec3 velocity(double[] six, int body, Vec3 at) {
    Vec3 arm = at.minus(heap.bodies().get(body).centre()).times(1 / lengthM);
    return new Vec3(six[6 * body], six[6 * body + 1], six[6 * body + 2]).plus(spin(six, body).cross(arm));
  }

  private static Vec3 spin(double[] six, int body) {
    return new Vec3(six[6 * body + 3], six[6 * body + 4], six[6 * body + 5]);
  }

  /** The largest load left on any body, over the largest load there is. */
  double unbalance(Forces f, List<Wrench> loads) {
    double size = 0;
    for (Wrench w : loads) size = Math.max(size, Math.max(w.force().norm(), w.moment().norm() / lengthM));
    double worst = 0;
    for (Wrench w : f.unbalance(heap, loads)) {
      worst = Math.max(worst, Math.max(w.force().norm(), w.moment().norm() / lengthM));
    }
    return worst / Math.max(size, Double.MIN_NORMAL);
  }
}
