package holdfast.app.view.draw;

import holdfast.model.geom.Vec3;
import org.joml.Matrix4f;
import org.joml.Vector3f;
import org.joml.Vector4f;

/**
 * Where the picture is seen from. It circles {@code target} at {@code distanceM}; immutable, so a move is a new camera.
 *
 * @param target the point in the middle, metres
 * @param yawDeg the heading it looks along: 90 looks to the back, 0 to the right
 * @param pitchDeg how far it looks down: 0 level, 90 straight down
 * @param distanceM from the target
 * @param flat parallel lines stay parallel, so lengths can be compared
 */
public record Camera(Vec3 target, double yawDeg, double pitchDeg, double distanceM, boolean flat) {
  private static final double FOV_DEG = 28;
  private static final double NEAREST_M = 0.05;
  private static final double FARTHEST_M = 30;

  /** The standard views. */
  public enum View {
    FRONT("front", 90, 0, true), LEFT("left", 0, 0, true), TOP("top", 90, 90, true), CORNER("corner", 62, 21, false);

    private final String word;
    private final double yaw;
    private final double pitch;
    private final boolean flat;

    View(String word, double yaw, double pitch, boolean flat) {
      this.word = word;
      this.yaw = yaw;
      this.pitch = pitch;
      this.flat = flat;
    }

    public String word() {
      return word;
    }
  }

  public Camera {
    pitchDeg = Math.max(-30, Math.min(90, pitchDeg));
    yawDeg = ((yawDeg % 360) + 360) % 360;
    distanceM = Math.max(NEAREST_M, Math.min(FARTHEST_M, distanceM));
  }

  /** A standard view that holds the box from {@code lo} to {@code hi} with a margin, in a picture this wide for its height. */
  public static Camera fit(View view, Vec3 lo, Vec3 hi, double aspect, double margin) {
    return new Camera(lo.plus(hi).times(0.5), view.yaw, view.pitch, 1, view.flat).fitted(lo, hi, aspect, margin);
  }

  /** The same direction, moved so that the box is in the middle and fills the picture but for the margin (a share of it). */
  public Camera fitted(Vec3 lo, Vec3 hi, double aspect, double margin) {
    Camera at = new Camera(lo.plus(hi).times(0.5), yawDeg, pitchDeg, 1, flat);
    for (int round = 0; round < 6; round++) {
      double need = 0;
      double left = 1e9;
      double right = -1e9;
      double low = 1e9;
      double high = -1e9;
      Matrix4f m = at.viewProjection(aspect);
      for (int i = 0; i < 8; i++) {
        Vector4f p = m.transform(new Vector4f(
            (float) ((i & 1) == 0 ? lo.x() : hi.x()), (float) ((i & 2) == 0 ? lo.y() : hi.y()),
            (float) ((i & 4) == 0 ? lo.z() : hi.z()), 1));
        left = Math.min(left, p.x / p.w);
        right = Math.max(right, p.x / p.w);
        low = Math.min(low, p.y / p.w);
        high = Math.max(high, p.y / p.w);
      }
      need = Math.max(right - left, high - low) / 2 / (1 - margin);
      double halfHeight = at.halfHeightM();
      Vec3 shift = at.right().times((left + right) / 2 * halfHeight * aspect).plus(at.up().times((low + high) / 2 * halfHeight));
      at = new Camera(at.target.plus(shift), yawDeg, pitchDeg, at.distanceM * need, flat);
    }
    return at;
  }

  /** Half the height of what is seen at the target, metres. */
  public double halfHeightM() {
    return distanceM * Math.tan(Math.toRadians(FOV_DEG / 2));
  }

  /** The direction it looks along. */
  public Vec3 forward() {
    double p = Math.toRadians(pitchDeg);
    return Vec3.heading(yawDeg).times(Math.cos(p)).plus(Vec3.Z.times(-Math.sin(p)));
  }

  public Vec3 right() {
    return Vec3.heading(yawDeg - 90);
  }

  public Vec3 up() {
    return right().cross(forward());
  }

  public Vec3 eye() {
    return target.plusTimes(-distanceM, forward());
  }

  public Camera turned(double yaw, double pitch) {
    return new Camera(target, yawDeg + yaw, pitchDeg + pitch, distanceM, false);
  }

  public Camera zoomed(double factor) {
    return new Camera(target, yawDeg, pitchDeg, distanceM * factor, flat);
  }

  /** Slides by a share of the picture's height. */
  public Camera panned(double rightShare, double upShare) {
    double h = 2 * halfHeightM();
    return new Camera(target.plusTimes(rightShare * h, right()).plusTimes(upShare * h, up()), yawDeg, pitchDeg, distanceM, flat);
  }

  /** The way from this camera to another, {@code t} from 0 to 1. */
  public Camera toward(Camera o, double t) {
    double turn = ((o.yawDeg - yawDeg) % 360 + 540) % 360 - 180;
    return new Camera(
        target.plusTimes(t, o.target.minus(target)), yawDeg + t * turn, pitchDeg + t * (o.pitchDeg - pitchDeg),
        Math.exp(Math.log(distanceM) + t * (Math.log(o.distanceM) - Math.log(distanceM))), t >= 1 ? o.flat : flat && o.flat);
  }

  public Matrix4f view() {
    Vec3 e = eye();
    Vec3 u = up();
    return new Matrix4f().lookAt(
        new Vector3f((float) e.x(), (float) e.y(), (float) e.z()),
        new Vector3f((float) target.x(), (float) target.y(), (float) target.z()),
        new Vector3f((float) u.x(), (float) u.y(), (float) u.z()));
  }

  public Matrix4f viewProjection(double aspect) {
    float near = (float) Math.max(0.02, distanceM * 0.05);
    float far = (float) (distanceM + 8);
    Matrix4f p = new Matrix4f();
    if (flat) {
      float h = (float) halfHeightM();
      float w = (float) (h * aspect);
      p.ortho(-w, w, -h, h, (float) -8, far);
    } else {
      p.perspective((float) Math.toRadians(FOV_DEG), (float) aspect, near, far);
    }
    return p.mul(view());
  }

  /** A line of sight: where it starts, and its unit direction. */
  public record Ray(Vec3 from, Vec3 along) {
    public Vec3 at(double t) {
      return from.plusTimes(t, along);
    }
  }

  /** The line of sight through a place in the picture: both from -1 to 1, up and right positive. */
  public Ray ray(double x, double y, double aspect) {
    double h = halfHeightM();
    Vec3 across = right().times(x * h * aspect).plus(up().times(y * h));
    if (flat) return new Ray(eye().plus(across).plusTimes(-4, forward()), forward());
    return new Ray(eye(), target.plus(across).minus(eye()).unit());
  }
}
