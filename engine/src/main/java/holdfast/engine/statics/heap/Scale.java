package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * What forces and lengths of a heap are measured by, so that its equations are of the size of one: the mean weight of a
 * body, and half the mean size of one.
 */
public record Scale(double forceN, double lengthM) {
  /** That of a heap whose bodies weigh about {@code typicalN}. */
  public static Scale of(Heap heap, double typicalN) {
    double size = heap.bodies().stream().mapToDouble(Heap.Body::sizeM).average().orElse(1);
    return new Scale(typicalN > 0 ? typicalN : 1, size > 0 ? size / 2 : 1);
  }

  /** Loads, newtons about each body's centre, as six figures a body: forces over the force, moments over force and length. */
  public double[] six(List<Wrench> loads) {
    double[] out = new double[6 * loads.size()];
    six(loads, out);
    return out;
  }

  /** The same into an array that is there. */
  public void six(List<Wrench> loads, double[] out) {
    for (int i = 0; i < loads.size(); i++) {
      Vec3 f = loads.get(i).force();
      Vec3 m = loads.get(i).moment();
      out[6 * i] = f.x() / forceN;
      out[6 * i + 1] = f.y() / forceN;
      out[6 * i + 2] = f.z() / forceN;
      out[6 * i + 3] = m.x() / forceN / lengthM;
      out[6 * i + 4] = m.y() / forceN / lengthM;
      out[6 * i + 5] = m.z() / forceN / lengthM;
    }
  }
}
