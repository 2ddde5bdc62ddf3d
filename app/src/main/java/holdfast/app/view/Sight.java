package holdfast.app.view;

import holdfast.app.view.draw.Camera;
import holdfast.app.view.draw.Stone;
import holdfast.app.view.draw.Tableau;
import holdfast.model.geom.Vec3;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Where one looks from, and the flight to where one is to look from. */
final class Sight {
  /** Metres kept in sight about a place that is flown to, beside a share of its own size. */
  private static final double ROOM_M = 0.12;

  /** Shares of the picture kept free round a whole tank and round a place in it. */
  private static final double ROUND_TANK = 0.12;
  private static final double ROUND_PLACE = 0.1;

  private final Supplier<Tableau> tableau;
  private Camera camera;
  private Optional<Flight> flight = Optional.empty();
  private double aspect = 1.6;
  private long now;

  Sight(Supplier<Tableau> tableau) {
    this.tableau = tableau;
    camera = fitted(Camera.View.CORNER);
  }

  /** Once a frame; true when one looks from elsewhere than before. */
  boolean tick(long nanos) {
    now = nanos;
    if (flight.isEmpty()) return false;
    camera = flight.get().at(now);
    if (flight.get().over(now)) flight = Optional.empty();
    return true;
  }

  /** A flight is under way. */
  boolean moving() {
    return flight.isPresent();
  }

  Camera camera() {
    return camera;
  }

  void set(Camera c) {
    camera = c;
    flight = Optional.empty();
  }

  /** Width of the picture by its height. */
  double aspect() {
    return aspect;
  }

  void setAspect(double a) {
    aspect = a;
  }

  void fly(Camera to) {
    flight = Optional.of(new Flight(camera, to, now));
  }

  void flyTo(Camera.View view) {
    fly(fitted(view));
  }

  /** Everything in sight from where one looks. */
  void fit() {
    Tableau t = tableau.get();
    fly(camera.fitted(t.low(), t.high(), aspect, ROUND_TANK));
  }

  Camera fitted(Camera.View view) {
    Tableau t = tableau.get();
    return Camera.fit(view, t.low(), t.high(), aspect, ROUND_TANK);
  }

  /** These stones in sight, with room about them. */
  void flyTo(List<Stone> about) {
    Vec3 lo = about.get(0).low();
    Vec3 hi = about.get(0).high();
    for (Stone s : about) {
      lo = new Vec3(Math.min(lo.x(), s.low().x()), Math.min(lo.y(), s.low().y()), Math.min(lo.z(), s.low().z()));
      hi = new Vec3(Math.max(hi.x(), s.high().x()), Math.max(hi.y(), s.high().y()), Math.max(hi.z(), s.high().z()));
    }
    Vec3 room = new Vec3(1, 1, 1).times(0.5 * hi.minus(lo).norm() + ROOM_M);
    fly(camera.fitted(lo.minus(room.times(0.5)), hi.plus(room.times(0.5)), aspect, ROUND_PLACE));
  }
}
