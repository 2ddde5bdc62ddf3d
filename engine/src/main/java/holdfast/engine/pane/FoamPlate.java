package holdfast.engine.pane;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A rectangular pane bedded on foam over a full deck, all edges free.
 *
 * <p>Problem: D lap lap w + k w = q, edge moments and edge forces nil. Split as w = w_inf + w_edge: w_inf is the endless
 * plate's answer to a point load, w = -P L^2 / (2 pi D) kei(r / L), L^4 = D / k (Hertz 1884; Timoshenko and Woinowsky-Krieger,
 * article 57), whose greatest deflection is P / (8 sqrt(k D)); w_edge is smooth inside and cancels what w_inf leaves on the
 * edges, found on a {@link FreePlateMesh}. A load close to an edge is mirrored in it first: load and image leave no shear
 * force and no twist there, so the mesh has only a moment to cancel. Its peak is as narrow as the load is close; such a load
 * gets a mesh of its own, fine across from it. Uniform water sinks the pane evenly and bends nothing.
 *
 * <p>How good: on meshes twice as fine moments and deflections change by less than a thousandth of the greatest under the load,
 * for patches down to the smallest that stand for a point (see {@link Patch#forThickness}), anywhere on the pane. Right in
 * the corner point itself, where there is no moment, a hundredth of it remains.
 *
 * <p>Limits: the foam pulls as well as it pushes (lift-off is left out; under a filled tank the water's weight holds the
 * pane down); the side panes' stiffness and weight are not counted, which leaves a load by the edge more stress than it has.
 */
public final class FoamPlate implements PlateModel {
  private final Plate plate;
  private final double foundationNm3;
  private final double lengthM;
  private final double fineness;
  private final FreePlateMesh mesh;
  private final EdgeForces forces;
  /** Loads made last: the same feet come back in every trial of a remedy. */
  private final Map<List<Point2>, Bedded> kept = new LinkedHashMap<>(16, 0.75f, true) {
    @Override
    protected boolean removeEldestEntry(Map.Entry<List<Point2>, Bedded> eldest) {
      return size() > Tolerances.LOADS_KEPT;
    }
  };
  /** What newtons at the nodes of a net leave along the outline, node by node: it does not depend on the loads. */
  private final Map<Net, double[][]> newtons = new ConcurrentHashMap<>();

  public FoamPlate(Plate plate, double foundationNm3) {
    this(plate, foundationNm3, 1);
  }

  /** For showing convergence: how many times as fine as usual the meshes are. */
  FoamPlate(Plate plate, double foundationNm3, double fineness) {
    if (!(foundationNm3 > 0)) throw new IllegalArgumentException("foundationNm3 must be above 0, was " + foundationNm3);
    this.plate = plate;
    this.foundationNm3 = foundationNm3;
    this.lengthM = Math.pow(plate.stiffnessNm() / foundationNm3, 0.25);
    this.fineness = fineness;
    SplineNet net = new SplineNet(line(plate.lengthM(), Tolerances.ELEMENT_LENGTHS, List.of()),
        line(plate.widthM(), Tolerances.ELEMENT_LENGTHS, List.of()));
    this.mesh = new FreePlateMesh(plate, foundationNm3, net);
    this.forces = new EdgeForces(plate, lengthM, net);
  }

  /** Elements along one side of the pane, shorter toward its ends and some more places. */
  private SplineLine line(double sideM, double mostLengths, List<SplineLine.Focus> more) {
    List<SplineLine.Focus> foci = new ArrayList<>(more);
    double reach = Tolerances.END_LENGTHS * lengthM;
    foci.add(new SplineLine.Focus(0, 0, reach));
    foci.add(new SplineLine.Focus(sideM, sideM, reach));
    double most = Math.max(mostLengths * lengthM, sideM / Tolerances.MOST_ELEMENTS);
    return SplineLine.graded(sideM, Math.min(most, sideM / Tolerances.LEAST_ELEMENTS) / fineness,
        Tolerances.ELEMENT_SHARE / fineness, foci);
  }

  /**
   * A net that is fine where a patch close to an edge leaves a peak of moment on it: across from the patch, and toward the edges
   * that are near.
   */
  private SplineNet netFor(Patch patch) {
    double[] x = patch.ring().stream().mapToDouble(Point2::x).sorted().toArray();
    double[] y = patch.ring().stream().mapToDouble(Point2::y).sorted().toArray();
    // A patch may reach beyond the pane.
    double[] alongX = {Math.max(0, x[0]), Math.min(plate.lengthM(), x[x.length - 1]), plate.lengthM()};
    double[] alongY = {Math.max(0, y[0]), Math.min(plate.widthM(), y[y.length - 1]), plate.widthM()};
    return new SplineNet(line(plate.lengthM(), Tolerances.OWN_ELEMENT_LENGTHS, foci(alongX, alongY)),
        line(plate.widthM(), Tolerances.OWN_ELEMENT_LENGTHS, foci(alongY, alongX)));
  }

  /** Where a line is to be fine; {@code along} and {@code across} it: where the patch begins and ends, and the pane ends. */
  private List<SplineLine.Focus> foci(double[] along, double[] across) {
    double near = Tolerances.OWN_MESH_LENGTHS * lengthM;
    double small = Math.max(Tolerances.LEAST_REACH_LENGTHS * lengthM,
        Tolerances.PATCH_SHARE * Math.min(along[1] - along[0], across[1] - across[0]));
    List<SplineLine.Focus> foci = new ArrayList<>();
    double start = Math.max(along[0], small);
    double end = Math.max(along[2] - along[1], small);
    if (start < near) foci.add(new SplineLine.Focus(0, 0, start));
    if (end < near) foci.add(new SplineLine.Focus(along[2], along[2], end));
    double off = Math.min(across[0], across[2] - across[1]);
    if (off < near) {
      double reach = Math.max(Math.max(off, small), Tolerances.PATCH_SHARE * (along[1] - along[0]));
      foci.add(new SplineLine.Focus(along[0], along[1], reach));
    }
    return foci;
  }

  public double foundationNm3() {
    return foundationNm3;
  }

  /** The characteristic length (D / k)^(1/4), metres. */
  public double characteristicLengthM() {
    return lengthM;
  }

  @Override
  public Plate plate() {
    return plate;
  }

  @Override
  public UnitLoad unitLoad(Patch patch) {
    synchronized (kept) {
      return kept.computeIfAbsent(patch.ring(), ring -> new Bedded(patch));
    }
  }

  @Override
  public Bending unitWater(double x, double y) {
    return Bending.ZERO;
  }

  @Override
  public double[] influences(List<UnitLoad> loads, double x, double y) {
    SplineNet.Place shared = mesh.net().place(x, y);
    double[] all = new double[3 * loads.size()];
    double[] k = new double[3];
    double[] w = new double[4];
    double d = plate.stiffnessNm();
    double nu = plate.poisson();
    for (int i = 0; i < loads.size(); i++) {
      Arrays.fill(k, 0);
      Bedded load = (Bedded) loads.get(i);
      load.addMirrored(x, y, k);
      if (load.ownNet == null) shared.of(load.edges, w);
      else load.ownNet.place(x, y).of(load.ownEdges, w);
      double kxx = k[0] - d * w[1];
      double kyy = k[1] - d * w[2];
      all[3 * i] = kxx + nu * kyy;
      all[3 * i + 1] = kyy + nu * kxx;
      all[3 * i + 2] = (1 - nu) * (k[2] - d * w[3]);
    }
    return all;
  }

  @Override
  public double[] influences(UnitLoad load, Net net) {
    return ((Bedded) load).onNets.computeIfAbsent(net, n -> PlateModel.super.influences(load, n));
  }

  /**
   * Deflection by Green's formula, with the newton at the place asked for as the second field:
   * w(B) = [g_A(B) + g_B(A) - T_A(g_B) - T_B(g_A)] / 2 - T_B(w_edge) (see {@link EdgeForces}). What the mesh and the sums over
   * the edges leave out is the same when A and B change places, so deflection is reciprocal to rounding; and it errs with the
   * product of both meshes' errors, not with the mesh's error at the place.
   */
  @Override
  public Deflection deflection(List<UnitLoad> loads, double[] forcesN, double waterPa) {
    double[] unknowns = new double[mesh.net().unknowns()];
    double[] field = null;
    double[][] points = new double[loads.size()][];
    double[][] mirrored = new double[loads.size()][];
    for (int i = 0; i < points.length; i++) {
      Bedded load = (Bedded) loads.get(i);
      if (field == null) field = new double[load.field.length];
      for (int u = 0; u < unknowns.length; u++) unknowns[u] += forcesN[i] * load.edges[u];
      for (int f = 0; f < field.length; f++) field[f] += forcesN[i] * load.field[f];
      points[i] = sinking(load.patch());
      mirrored[i] = withImages(points[i], load.patch().ring());
    }
    if (field == null) return (x, y) -> waterPa / foundationNm3;
    return new Sunk(points, mirrored, forcesN.clone(), field, forces.trace(unknowns), waterPa / foundationNm3);
  }

  private final class Sunk implements Deflection {
    private final double[][] points;
    private final double[][] mirrored;
    private final double[] forcesN;
    private final double[] loaded;
    private final double[] moved;
    private final double evenM;

    Sunk(double[][] points, double[][] mirrored, double[] forcesN, double[] loaded, double[] moved, double evenM) {
      this.points = points;
      this.mirrored = mirrored;
      this.forcesN = forcesN;
      this.loaded = loaded;
      this.moved = moved;
      this.evenM = evenM;
    }

    @Override
    public double atM(double x, double y) {
      return atM(newton(x, y), newtonLeaves(x, y));
    }

    @Override
    public double[] onNet(Net net) {
      if (net.nodes() > Tolerances.NEWTONS_KEPT) return Deflection.super.onNet(net);
      double[][] asked = newtons.computeIfAbsent(net, FoamPlate.this::newtons);
      double[] all = new double[net.nodes()];
      for (int n = 0; n < all.length; n++) all[n] = atM(newton(net.x(n), net.y(n)), asked[n]);
      return all;
    }

    private double atM(double[] here, double[] asked) {
      double sum = -forces.work(loaded, asked) - forces.work(asked, loaded);
      for (int i = 0; i < points.length; i++) {
        sum += forcesN[i] * endless(mirrored[i], here, 1);
        sum += forcesN[i] * endless(here, points[i], points[i].length / 3);
      }
      return evenM + 0.5 * sum - forces.work(asked, moved);
    }
  }

  /** A newton at a place and its images. */
  private double[] newton(double x, double y) {
    return withImages(new double[] {x, y, 1}, List.of(new Point2(x, y)));
  }

  /** What they leave along the outline. */
  private double[] newtonLeaves(double x, double y) {
    return forces.of(newton(x, y));
  }

  private double[][] newtons(Net net) {
    double[][] all = new double[net.nodes()][];
    for (int n = 0; n < all.length; n++) all[n] = newtonLeaves(net.x(n), net.y(n));
    return all;
  }

  /** Points that stand for a patch in the deflection under itself, which is smooth. */
  private double[] sinking(Patch patch) {
    boolean point = patch.radiusM() < Tolerances.POINT_LENGTHS * lengthM;
    boolean small = patch.radiusM() < Tolerances.SMALL_SHARE * lengthM;
    return point ? patch.middle() : small ? patch.coarse() : patch.pointsFrom(lengthM);
  }

  /** Deflection of the endless plate under loads at some points, summed over the first {@code count} places by weight. */
  private double endless(double[] points, double[] places, int count) {
    double[] kelvin = new double[4];
    double sum = 0;
    for (int q = 0; q < 3 * count; q += 3) {
      for (int p = 0; p < points.length; p += 3) {
        double rho = EdgeForces.distance(places[q] - points[p], places[q + 1] - points[p + 1], lengthM) / lengthM;
        if (rho >= Kelvin.REACH) continue;
        Kelvin.quick(rho, kelvin);
        sum -= points[p + 2] * places[q + 2] * kelvin[1];
      }
    }
    return sum * lengthM * lengthM / (2 * Math.PI * plate.stiffnessNm());
  }

  /** Points, then their mirror images in the free edges close to an outline. */
  private double[] withImages(double[] points, List<Point2> outline) {
    List<Mirror> mirrors = mirrors(outline);
    double[] all = new double[points.length * mirrors.size()];
    int at = 0;
    for (Mirror m : mirrors) {
      for (int p = 0; p < points.length; p += 3) {
        all[at++] = m.x(points[p]);
        all[at++] = m.y(points[p + 1]);
        all[at++] = points[p + 2];
      }
    }
    return all;
  }

  /** Mirrors at the free edges close to an outline, one after the other; the first changes nothing. */
  private List<Mirror> mirrors(List<Point2> outline) {
    double near = Tolerances.MIRROR_LENGTHS * lengthM;
    double left = Double.POSITIVE_INFINITY;
    double right = Double.POSITIVE_INFINITY;
    double front = Double.POSITIVE_INFINITY;
    double back = Double.POSITIVE_INFINITY;
    for (Point2 p : outline) {
      left = Math.min(left, p.x());
      right = Math.min(right, plate.lengthM() - p.x());
      front = Math.min(front, p.y());
      back = Math.min(back, plate.widthM() - p.y());
    }
    List<Mirror> all = new ArrayList<>();
    for (int copy = 0; copy < 4; copy++) {
      boolean flipX = (copy & 1) != 0;
      boolean flipY = (copy & 2) != 0;
      if ((flipX && Math.min(left, right) >= near) || (flipY && Math.min(front, back) >= near)) continue;
      all.add(new Mirror(flipX, flipY, left < right ? 0 : 2 * plate.lengthM(), front < back ? 0 : 2 * plate.widthM()));
    }
    return all;
  }

  /** Where a place goes that is mirrored at edges across x, across y, both or none; {@code twice}: twice where the edges lie. */
  private record Mirror(boolean flipX, boolean flipY, double twiceX, double twiceY) {
    double x(double x) {
      return flipX ? twiceX - x : x;
    }

    double y(double y) {
      return flipY ? twiceY - y : y;
    }
  }

  private final class Bedded extends GreenLoad {
    private final List<Mirror> mirrors;
    /** What the load and its images leave along the edges. */
    private final double[] field;
    /** Unknowns of w_edge, which cancels it. */
    private final double[] edges;
    /** The same on a mesh for this load alone where it lies close to an edge; else null. */
    private final SplineNet ownNet;
    private final double[] ownEdges;
    /** What the load bends at the nodes of the nets that were asked about. */
    private final Map<Net, double[]> onNets = new ConcurrentHashMap<>();

    Bedded(Patch patch) {
      super(plate, patch);
      this.mirrors = mirrors(patch.ring());
      double[] points = withImages(smoothPoints(), patch.ring());
      this.field = forces.of(points);
      this.edges = forces.cancelling(field);
      mesh.solve(edges);
      double off = patch.ring().stream().mapToDouble(p -> plate.edgeDistanceM(p.x(), p.y())).min().orElseThrow();
      if (off >= Tolerances.OWN_MESH_LENGTHS * lengthM) {
        this.ownNet = null;
        this.ownEdges = null;
        return;
      }
      this.ownNet = netFor(patch);
      EdgeForces own = new EdgeForces(plate, lengthM, ownNet);
      double[] left = own.of(points);
      own.bend(left, patch.centre(), Tolerances.NEAR_RADII * patch.radiusM(), this::addMirrored);
      this.ownEdges = own.cancelling(left);
      new FreePlateMesh(plate, foundationNm3, ownNet).solve(ownEdges);
    }

    /** Curvatures of the load and its images on the endless plate. */
    void addMirrored(double x, double y, double[] k) {
      addCurvature(x, y, k);
      double[] image = new double[3];
      for (Mirror m : mirrors.subList(1, mirrors.size())) {
        Arrays.fill(image, 0);
        // Seen from the mirrored place the load looks as its image does from here.
        addCurvature(m.x(x), m.y(y), image);
        k[0] += image[0];
        k[1] += image[1];
        k[2] += m.flipX == m.flipY ? image[2] : -image[2];
      }
    }

    @Override
    void addPoints(double x, double y, double[] points, boolean withoutCore, double[] k) {
      double[] kelvin = new double[4];
      for (int p = 0; p < points.length; p += 3) {
        double dx = x - points[p];
        double dy = y - points[p + 1];
        double r = EdgeForces.distance(dx, dy, lengthM);
        double rho = r / lengthM;
        if (rho < Kelvin.REACH) {
          Kelvin.quick(rho, kelvin);
          // g = -kei, g'' + g'/rho = -ker; stiffness times minus curvature = -(1 / 2 pi) g''
          double hoop = -kelvin[3] / rho;
          double radial = -kelvin[0] - hoop;
          double scale = -points[p + 2] / (2 * Math.PI);
          double cc = dx * dx / (r * r);
          double ss = dy * dy / (r * r);
          k[0] += scale * (radial * cc + hoop * ss);
          k[1] += scale * (radial * ss + hoop * cc);
          k[2] += scale * (radial - hoop) * dx * dy / (r * r);
        }
        if (withoutCore) subtractCore(dx, dy, points[p + 2], k);
      }
    }
  }
}
