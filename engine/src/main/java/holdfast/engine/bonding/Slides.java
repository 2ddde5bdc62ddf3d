package holdfast.engine.bonding;

import holdfast.engine.statics.heap.SceneHeap;
import holdfast.engine.statics.heap.State;
import holdfast.model.geom.Vec3;
import java.util.Collection;
import java.util.Optional;

/**
 * What slides lead to. A rock that only shifts under the tier's push is no reason for a bond; one after whose slide something
 * falls is.
 */
public interface Slides {
  /** Looks at no slide. */
  Slides NONE = new Slides() {
    @Override
    public Optional<Slide> first(SceneHeap scene, Collection<Integer> rocks) {
      return Optional.empty();
    }

    @Override
    public boolean falls(SceneHeap scene, int rock) {
      return false;
    }
  };

  /**
   * A slide that ends in a fall.
   *
   * @param rock that is pushed
   * @param way which way, unit vector
   */
  record Slide(int rock, State state, Vec3 way) {}

  /** The first of some rocks, in their order, that slides below the tier so that something falls; several threads may ask. */
  Optional<Slide> first(SceneHeap scene, Collection<Integer> rocks);

  /** The same question about one rock. */
  boolean falls(SceneHeap scene, int rock);
}
