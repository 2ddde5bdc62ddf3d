package holdfast.model.scene;

import holdfast.model.geom.Vec3;

/** One of the four side panes, named as seen from the front. */
public enum Side {
  FRONT("front", new Vec3(0, -1, 0)),
  RIGHT("right", new Vec3(1, 0, 0)),
  BACK("back", new Vec3(0, 1, 0)),
  LEFT("left", new Vec3(-1, 0, 0));

  private final String word;
  private final Vec3 outward;

  Side(String word, Vec3 outward) {
    this.word = word;
    this.outward = outward;
  }

  public String word() {
    return word;
  }

  /** The unit vector out of the tank through this pane. */
  public Vec3 outward() {
    return outward;
  }
}
