package holdfast.app.view.draw;

import holdfast.app.view.gl.Floats;
import holdfast.model.geom.Vec3;
import java.util.List;

/** Gathers flat coloured faces: position, normal, colour. */
public final class Facets {
  private final Floats data = new Floats();

  Floats data() {
    return data;
  }

  public Facets triangle(Vec3 a, Vec3 b, Vec3 c, Vec3 n, Colour colour) {
    corner(a, n, colour);
    corner(b, n, colour);
    corner(c, n, colour);
    return this;
  }

  /** A triangle whose corners have colours of their own. */
  public Facets shaded(Vec3 a, Colour ca, Vec3 b, Colour cb, Vec3 c, Colour cc, Vec3 n) {
    corner(a, n, ca);
    corner(b, n, cb);
    corner(c, n, cc);
    return this;
  }

  public Facets quad(Vec3 a, Vec3 b, Vec3 c, Vec3 d, Colour colour) {
    Vec3 n = b.minus(a).cross(d.minus(a)).unit();
    return triangle(a, b, c, n, colour).triangle(a, c, d, n, colour);
  }

  /** A convex polygon facing {@code n}. */
  public Facets polygon(List<Vec3> loop, Vec3 n, Colour colour) {
    for (int i = 1; i + 1 < loop.size(); i++) triangle(loop.get(0), loop.get(i), loop.get(i + 1), n, colour);
    return this;
  }

  /** A box; {@code faces} names the ones to draw: any of the letters l r f b d u (left, right, front, back, down, up). */
  public Facets box(Vec3 lo, Vec3 hi, Colour c, String faces) {
    Vec3[] p = new Vec3[8];
    for (int i = 0; i < 8; i++) {
      p[i] = new Vec3((i & 1) == 0 ? lo.x() : hi.x(), (i & 2) == 0 ? lo.y() : hi.y(), (i & 4) == 0 ? lo.z() : hi.z());
    }
    if (faces.indexOf('l') >= 0) quad(p[2], p[0], p[4], p[6], c);
    if (faces.indexOf('r') >= 0) quad(p[1], p[3], p[7], p[5], c);
    if (faces.indexOf('f') >= 0) quad(p[0], p[1], p[5], p[4], c);
    if (faces.indexOf('b') >= 0) quad(p[3], p[2], p[6], p[7], c);
    if (faces.indexOf('d') >= 0) quad(p[2], p[3], p[1], p[0], c);
    if (faces.indexOf('u') >= 0) quad(p[4], p[5], p[7], p[6], c);
    return this;
  }

  /** A flat rectangle at one height, facing up. */
  public Facets sheet(double x0, double y0, double x1, double y1, double z, Colour c) {
    return quad(new Vec3(x0, y0, z), new Vec3(x1, y0, z), new Vec3(x1, y1, z), new Vec3(x0, y1, z), c);
  }

  private void corner(Vec3 p, Vec3 n, Colour c) {
    data.add((float) p.x(), (float) p.y(), (float) p.z(), (float) n.x(), (float) n.y(), (float) n.z(), c.r(), c.g(),
        c.b(), c.a());
  }
}
