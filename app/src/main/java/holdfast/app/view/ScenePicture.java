package holdfast.app.view;

import static org.lwjgl.opengl.GL11.glFinish;

import holdfast.app.view.gl.Target;
import java.util.List;
import java.util.Optional;

/**
 * The picture of the scene in the window, drawn anew only when something in it changed: finely, or on a machine that is
 * slow to draw with one sample a pixel while things move.
 */
final class ScenePicture implements AutoCloseable {
  private final ViewWindow.Quality quality;
  private final Target fine;
  /** Made when it is first needed. */
  private Optional<Target> sketch = Optional.empty();
  private Target latest;
  private double fineMs;
  private Object painted;

  /** {@code fineMs} is how long a fine picture took before, in another size; 0 if that is not known. */
  ScenePicture(int width, int height, ViewWindow.Quality quality, double fineMs) {
    this.quality = quality;
    this.fineMs = fineMs;
    fine = new Target(width, height, quality.samples());
    latest = fine;
  }

  /** True when it was drawn. */
  boolean paint(ScenePainter painter, boolean inMotion) {
    boolean quick = quality.samples() > 1 && fineMs > quality.patienceMs() && inMotion;
    Object wanted = List.of(quick, painter.state(fine.width(), fine.height()));
    if (wanted.equals(painted)) return false;
    long start = System.nanoTime();
    latest = quick ? sketch() : fine;
    painter.paint(latest);
    latest.resolve();
    if (!quick) {
      // Only when the picture is finished its time is known.
      glFinish();
      fineMs = (System.nanoTime() - start) * 1e-6;
    }
    painted = wanted;
    return true;
  }

  private Target sketch() {
    if (sketch.isEmpty()) sketch = Optional.of(new Target(fine.width(), fine.height(), 1));
    return sketch.get();
  }

  /** The latest picture was drawn with one sample a pixel, since things moved. */
  boolean sketched() {
    return latest != fine;
  }

  double fineMs() {
    return fineMs;
  }

  void copyInto(Target other, int x, int y) {
    latest.copyInto(other, x, y);
  }

  @Override
  public void close() {
    fine.close();
    sketch.ifPresent(Target::close);
  }
}
