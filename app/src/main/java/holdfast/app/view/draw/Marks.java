package holdfast.app.view.draw;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/** What a judgement draws among the stones: solid faces in the light, veils of colour, and lines. */
public final class Marks {
  final Facets solid = new Facets();
  final Facets veil = new Facets();
  final List<Wire> wires = new ArrayList<>();

  /** See-through faces in their own colour, drawn after everything solid. */
  public Facets veil() {
    return veil;
  }

  public Marks line(Vec3 a, Vec3 b, double widthPx, Colour c) {
    wires.add(new Wire(a, b, widthPx, c));
    return this;
  }

  /** An upright column on {@code foot}. */
  public Marks column(Vec3 foot, double radiusM, double heightM, Colour c) {
    int sides = 20;
    Vec3 up = Vec3.Z.times(heightM);
    for (int i = 0; i < sides; i++) {
      Vec3 a = foot.plusTimes(radiusM, Vec3.heading(360.0 * i / sides));
      Vec3 b = foot.plusTimes(radiusM, Vec3.heading(360.0 * (i + 1) / sides));
      solid.quad(a, b, b.plus(up), a.plus(up), c);
      solid.triangle(foot.plus(up), a.plus(up), b.plus(up), Vec3.Z, c);
    }
    return this;
  }
}
