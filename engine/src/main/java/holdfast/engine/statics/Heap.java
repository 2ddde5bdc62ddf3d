package holdfast.engine.statics;

import holdfast.model.geom.Vec3;
import java.util.List;

/**
 * A heap ready to be judged: free bodies and the links that can carry force between them and to the ground.
 * Loads come apart from it, since one heap is asked under many.
 */
public record Heap(List<Body> bodies, List<Link> links) {
  /** The number that stands for everything fixed. */
  public static final int GROUND = -1;

  public Heap {
    bodies = List.copyOf(bodies);
    links = List.copyOf(links);
    for (Link l : links) {
      if (l.a() < 0 || l.a() >= bodies.size() || l.b() < GROUND || l.b() >= bodies.size() || l.a() == l.b()) {
        throw new IllegalArgumentException("link joins bodies " + l.a() + " and " + l.b() + " of " + bodies.size());
      }
    }
  }

  /**
   * A free body.
   *
   * @param centre its centre of mass, metres; wrenches on it are about this point
   * @param sizeM its largest extent, metres
   */
  public record Body(String name, Vec3 centre, double sizeM) {}
}
