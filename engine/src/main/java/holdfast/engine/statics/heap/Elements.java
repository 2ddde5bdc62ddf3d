package holdfast.engine.statics.heap;

import holdfast.engine.statics.solver.Element;
import holdfast.model.geom.Vec3;

/**
 * Turns links into cone elements. Forces are scaled by {@code forceN}, lengths by {@code lengthM}.
 *
 * <p>A bearing's unknowns are the pushes at its corners, two shears and a twist. The shears act at the centre of
 * pressure and the twist is about it, so that
 *
 * <pre>
 *   (V / mu N)^2 + (T / (c mu N))^2 &lt;= 1,     |T| &lt;= mu * sum n_k |x_k - p|
 * </pre>
 *
 * with c the mean distance of the patch from the centre of pressure p. The first bound is the ellipsoid that limits
 * friction under an even pressure; the second takes away what is left of the twist when the pressure gathers in a few
 * corners. Both are convex once p is held; {@code ForceBalance} lets p settle.
 *
 * @see <a href="https://doi.org/10.1016/0043-1648(91)90104-3">Goyal, Ruina and Papadopoulos 1991, Planar sliding with dry
 *     friction</a>, for the limit surface
 */
public final class Elements {
  private final Heap heap;
  private final double forceN;
  private final double lengthM;

  /** Elements of the links of {@code heap}, scaled by a force and a length. */
  public Elements(Heap heap, double forceN, double lengthM) {
    this.heap = heap;
    this.forceN = forceN;
    this.lengthM = lengthM;
  }

  /** Where a bearing's shear acts: the centre of pressure, in the patch's own coordinates, and c. */
  public record Centre(double u, double v, double meanDistanceM) {
    /** The pressure in the middle of a patch. */
    public static Centre middle(Patch patch) {
      return new Centre(0, 0, patch.meanDistance(0, 0));
    }
  }

  /** A link of any kind; a bearing's shear at {@code centre}. */
  public Element of(Link link, Patch patch, Centre centre) {
    if (link instanceof Link.Bearing b) return bearing(b, patch, centre);
    return link instanceof Link.Bond b ? bond(b, patch) : rod((Link.Rod) link);
  }

  Element bearing(Link.Bearing link, Patch patch, Centre centre) {
    Rows rows = new Rows(link, patch.corners.size() + frictionUnknowns(link, patch));
    int m = patch.corners.size();
    for (int k = 0; k < m; k++) rows.force(k, link.normal(), patch.corners.get(k));
    if (link.friction() == 0) return rows.element(m, new int[0], identity(m, m), new double[m]);
    Vec3 p = patch.centroid.plusTimes(centre.u(), patch.first).plusTimes(centre.v(), patch.second);
    rows.force(m, patch.first, p);
    rows.force(m + 1, patch.second, p);
    boolean twists = rows.size == m + 3;
    double c = centre.meanDistanceM();
    if (twists) rows.moment(m + 2, link.normal().times(c));
    int lines = m + (twists ? 2 : 0);
    int dim = twists ? 4 : 3;
    double[] g = new double[(lines + dim) * rows.size];
    for (int k = 0; k < m; k++) {
      g[k * rows.size + k] = -1;
      g[lines * rows.size + k] = -link.friction();
      if (twists) {
        double arm = link.friction() * Math.hypot(patch.u[k] - centre.u(), patch.v[k] - centre.v()) / c;
        g[m * rows.size + k] = -arm;
        g[(m + 1) * rows.size + k] = -arm;
      }
    }
    if (twists) {
      g[m * rows.size + m + 2] = 1;
      g[(m + 1) * rows.size + m + 2] = -1;
    }
    for (int i = 1; i < dim; i++) g[(lines + i) * rows.size + m + i - 1] = -1;
    return rows.element(lines, new int[] {dim}, g, new double[lines + dim]);
  }

  private int frictionUnknowns(Link.Bearing link, Patch patch) {
    if (link.friction() == 0) return 0;
    return patch.reachM() > 0 ? 3 : 2;
  }

  /** Pull, two shears, and for a patch with an area two bending moments and a twist, within the strength of what bonds. */
  public Element bond(Link.Bond link, Patch patch) {
    double area = link.areaM2();
    double tension = link.tensionN_m2() * area / forceN;
    double crushing = link.crushingN_m2() * area / forceN;
    double shear = link.shearN_m2() * area / forceN;
    boolean bends = link.moment() && patch.areaM2 > 0;
    Rows rows = new Rows(link, bends ? 6 : 3);
    rows.force(0, link.normal(), patch.centroid);
    rows.force(1, patch.first, patch.centroid);
    rows.force(2, patch.second, patch.centroid);
    int corners = bends ? patch.corners.size() : 1;
    int lines = 2 * corners;
    int dim = bends ? 4 : 3;
    double[] g = new double[(lines + dim) * rows.size];
    double[] h = new double[lines + dim];
    if (bends) {
      // Stress x area = N + u a + v b; the moments that go with the gradients a and b.
      rows.moment(3, patch.first.times(patch.uv / lengthM).plusTimes(-patch.uu / lengthM, patch.second));
      rows.moment(4, patch.first.times(patch.vv / lengthM).plusTimes(-patch.uv / lengthM, patch.second));
      rows.moment(5, link.normal().times(bondTwistArm(patch)));
    }
    for (int k = 0; k < corners; k++) {
      g[k * rows.size] = -1;
      g[(corners + k) * rows.size] = 1;
      if (bends) {
        g[k * rows.size + 3] = -patch.u[k] / lengthM;
        g[k * rows.size + 4] = -patch.v[k] / lengthM;
        g[(corners + k) * rows.size + 3] = patch.u[k] / lengthM;
        g[(corners + k) * rows.size + 4] = patch.v[k] / lengthM;
      }
      h[k] = tension;
      h[corners + k] = crushing;
    }
    h[lines] = shear;
    g[(lines + 1) * rows.size + 1] = -1;
    g[(lines + 2) * rows.size + 2] = -1;
    if (bends) g[(lines + 3) * rows.size + 5] = -1;
    return rows.element(lines, new int[] {dim}, g, h);
  }

  /** Elastic torsion: the shear is largest at the farthest corner, T = tau I_p / r, as a lever for the shear force. */
  public static double bondTwistArm(Patch patch) {
    return (patch.uu + patch.vv) / patch.reachM();
  }

  /** Two shears, two bending moments, and pull where it is glued, within what the rod bears. */
  public Element rod(Link.Rod link) {
    boolean pulls = link.pullN() > 0;
    Vec3 first = link.normal().anyPerpendicular();
    Vec3 second = link.normal().cross(first);
    Rows rows = new Rows(link, pulls ? 5 : 4);
    rows.force(0, first, link.at());
    rows.force(1, second, link.at());
    rows.moment(2, first.times(lengthM));
    rows.moment(3, second.times(lengthM));
    if (pulls) rows.force(4, link.normal().negated(), link.at());
    int lines = pulls ? 2 : 0;
    double[] g = new double[(lines + 6) * rows.size];
    double[] h = new double[lines + 6];
    if (pulls) {
      g[4] = -1;
      g[rows.size + 4] = 1;
      h[1] = link.pullN() / forceN;
    }
    for (int i = 1; i <= 2; i++) {
      g[(lines + i) * rows.size + i - 1] = -1;
      g[(lines + 3 + i) * rows.size + i + 1] = -1;
    }
    h[lines] = link.shearN() / forceN;
    h[lines + 3] = link.bendingNm() / (forceN * lengthM);
    return rows.element(lines, new int[] {3, 3}, g, h);
  }

  private static double[] identity(int rows, int size) {
    double[] g = new double[rows * size];
    for (int k = 0; k < rows; k++) g[k * size + k] = -1;
    return g;
  }

  /** Gathers the wrenches of one link, unknown by unknown. */
  private final class Rows {
    private final Link link;
    private final int size;
    private final double[] onA;
    private final double[] onB;

    Rows(Link link, int size) {
      this.link = link;
      this.size = size;
      onA = new double[6 * size];
      onB = new double[link.b() >= 0 ? 6 * size : 0];
    }

    /** A unit of scaled force along {@code direction} at {@code at}. */
    void force(int column, Vec3 direction, Vec3 at) {
      put(onA, column, direction, at.minus(heap.bodies().get(link.a()).centre()).cross(direction).times(1 / lengthM), 1);
      if (link.b() >= 0) {
        put(onB, column, direction, at.minus(heap.bodies().get(link.b()).centre()).cross(direction).times(1 / lengthM), -1);
      }
    }

    /** A unit of scaled force on the lever {@code arm} (metres along the axis of the moment). */
    void moment(int column, Vec3 arm) {
      put(onA, column, Vec3.ZERO, arm.times(1 / lengthM), 1);
      if (link.b() >= 0) put(onB, column, Vec3.ZERO, arm.times(1 / lengthM), -1);
    }

    private void put(double[] to, int column, Vec3 f, Vec3 m, double sign) {
      double[] six = {f.x(), f.y(), f.z(), m.x(), m.y(), m.z()};
      for (int r = 0; r < 6; r++) to[r * size + column] = sign * six[r];
    }

    Element element(int lines, int[] cones, double[] g, double[] h) {
      return new Element(link.a(), link.b(), size, onA, onB, lines, cones, g, h);
    }
  }
}
