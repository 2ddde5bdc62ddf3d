package holdfast.app.view.draw;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Tank;
import java.util.List;

/** Everything that stands before the camera: the scene's tank and its stones in place. */
public record Tableau(Scene scene, List<Stone> stones) {
  public Tableau {
    stones = List.copyOf(stones);
  }

  /** Outer corners of the tank, metres. */
  public Vec3 low() {
    Tank t = scene.tank();
    return new Vec3(-t.sideGlassMm(), -t.sideGlassMm(), -t.bottomGlassMm()).times(1e-3);
  }

  public Vec3 high() {
    Tank t = scene.tank();
    return new Vec3(t.lengthMm() + t.sideGlassMm(), t.widthMm() + t.sideGlassMm(), t.heightMm()).times(1e-3);
  }

  public Tableau withStones(List<Stone> others) {
    return new Tableau(scene, others);
  }
}
