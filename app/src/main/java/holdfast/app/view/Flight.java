package holdfast.app.view;

import holdfast.app.view.draw.Camera;

/** A short way of the camera from one place to another, easing in and out. */
record Flight(Camera from, Camera to, long startNanos) {
  private static final double SECONDS = 0.38;

  private double share(long now) {
    return Math.min(1, Math.max(0, (now - startNanos) * 1e-9 / SECONDS));
  }

  boolean over(long now) {
    return share(now) >= 1;
  }

  Camera at(long now) {
    double t = share(now);
    return t >= 1 ? to : from.toward(to, t * t * (3 - 2 * t));
  }
}
