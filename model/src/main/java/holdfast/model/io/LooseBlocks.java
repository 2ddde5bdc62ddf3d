package holdfast.model.io;

import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Optional;

/**
 * A bare heap of convex blocks, metres and kilograms, from a file of format {@code loose-blocks/1}.
 *
 * @param name a title
 * @param friction coefficient of friction of every contact
 * @param blocks the blocks in the order of the file; at least one
 * @param load a load to be raised until the heap fails
 */
public record LooseBlocks(String name, double friction, List<Block> blocks, Optional<BodyLoad> load) {
  public LooseBlocks {
    blocks = List.copyOf(blocks);
  }

  /** One block: the convex hull of its points, fixed to the ground or free. */
  public record Block(String id, boolean fixed, double densityKgM3, List<Vec3> verticesM) {
    public Block {
      verticesM = List.copyOf(verticesM);
    }
  }

  /** A force of a factor times each free block's weight at its centroid, along a unit vector. */
  public record BodyLoad(Vec3 direction) {}
}
