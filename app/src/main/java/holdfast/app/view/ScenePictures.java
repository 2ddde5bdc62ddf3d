package holdfast.app.view;

import holdfast.app.view.draw.Tableau;
import holdfast.app.view.gl.GlContext;
import holdfast.model.scene.Scene;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.List;

/** Pictures of scenes for whoever has no window: opens a context that nobody sees, draws, and closes it. */
public final class ScenePictures {
  private ScenePictures() {}

  /** What came of asking for pictures. */
  public sealed interface Result {
    /** One picture for each wish; {@code problems} names rocks that could not be shaped and are missing. */
    record Drawn(List<BufferedImage> pictures, List<String> problems) implements Result {}

    /** No graphics here; the reason is a sentence for people. */
    record NoGraphics(String reason) implements Result {}
  }

  /** Draws a scene; {@code folder} is where the meshes of its scanned rocks lie. */
  public static Result draw(Scene scene, Path folder, List<PictureMaker.Wish> wishes) {
    return GlContext.unseen(16, 16).match(gl -> {
      try (gl; PictureMaker maker = new PictureMaker()) {
        SceneStones stones = new SceneStones(name -> ScanFiles.load(folder, name));
        Tableau tableau = stones.tableau(scene);
        return new Result.Drawn(wishes.stream().map(w -> maker.picture(tableau, w)).toList(),
            stones.problems().stream().map(p -> "'" + p.rock() + "': " + p.reason()).toList());
      }
    }, Result.NoGraphics::new);
  }
}
