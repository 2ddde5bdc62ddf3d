package holdfast.app.view.draw;

import holdfast.model.geom.Vec3;
import org.joml.Matrix4f;
import org.joml.Vector4f;

/** From places in the tank to pixels of the picture and back. */
public record Projector(Camera camera, int width, int height, Matrix4f matrix) {
  public Projector(Camera camera, int width, int height) {
    this(camera, width, height, camera.viewProjection(width / (double) height));
  }

  public double aspect() {
    return width / (double) height;
  }

  /** Pixels from the top left; {@code inFront} is false behind the camera, where x and y mean nothing. */
  public record Spot(double x, double y, boolean inFront) {}

  public Spot spot(Vec3 p) {
    Vector4f v = matrix.transform(new Vector4f((float) p.x(), (float) p.y(), (float) p.z(), 1));
    if (v.w <= 1e-5f) return new Spot(0, 0, false);
    return new Spot((v.x / v.w * 0.5 + 0.5) * width, (0.5 - v.y / v.w * 0.5) * height, true);
  }

  /** The line of sight through a pixel. */
  public Camera.Ray ray(double x, double y) {
    return camera.ray(x / width * 2 - 1, 1 - y / height * 2, aspect());
  }

  /** How many metres a pixel spans at a place. */
  public double metresPerPixel(Vec3 p) {
    double depth = camera.flat() ? camera.distanceM() : Math.max(1e-3, p.minus(camera.eye()).dot(camera.forward()));
    return 2 * camera.halfHeightM() / camera.distanceM() * depth / height;
  }
}
