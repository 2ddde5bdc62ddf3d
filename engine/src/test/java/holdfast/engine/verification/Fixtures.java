package holdfast.engine.verification;

import holdfast.engine.statics.LooseBlocksSolver;
import holdfast.engine.statics.heap.Heap;
import holdfast.engine.statics.heap.Link;
import holdfast.engine.statics.heap.Wrench;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A heap put together link by link, for cases whose contacts are exact points or curved joints. */
final class Fixtures {
  private final List<Heap.Body> bodies = new ArrayList<>();
  private final List<Link> links = new ArrayList<>();
  private final List<Wrench> dead = new ArrayList<>();

  /** Adds a body of a weight; its number comes back. */
  int body(String name, Vec3 centre, double sizeM, double weightN) {
    bodies.add(new Heap.Body(name, centre, sizeM, weightN / 9.81));
    dead.add(new Wrench(new Vec3(0, 0, -weightN), Vec3.ZERO));
    return bodies.size() - 1;
  }

  /** Adds a bearing with its normal out of {@code b} into {@code a}. */
  Fixtures bearing(int a, int b, Vec3 normal, double friction, Vec3... polygon) {
    links.add(new Link.Bearing(a, b, normal.unit(), List.of(polygon), friction));
    return this;
  }

  /** A point where two balls of the same radius touch, or a ball and the ground beneath. */
  Fixtures touch(int a, int b, double radiusM, double friction) {
    Vec3 p = bodies.get(a).centre();
    Vec3 normal = b == Heap.GROUND ? Vec3.Z : p.minus(bodies.get(b).centre()).unit();
    return bearing(a, b, normal, friction, p.plusTimes(-radiusM, normal));
  }

  Heap heap() {
    return new Heap(bodies, links);
  }

  List<Wrench> dead() {
    return List.copyOf(dead);
  }

  LooseBlocksSolver.Result judge() {
    return LooseBlocksSolver.judge(heap(), dead, Optional.empty());
  }
}
