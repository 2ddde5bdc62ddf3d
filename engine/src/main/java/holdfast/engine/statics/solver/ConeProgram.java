package holdfast.engine.statics.solver;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The data of one cone program over a heap, laid flat:
 *
 * <pre>
 *   minimise    c . x - l
 *   subject to  sum over links of B x  +  l w  =  - load        (six equations a body)
 *               h - G x  in  K                                   (link by link)
 *               0 &lt;= l &lt;= cap
 * </pre>
 *
 * where {@code x} are the forces in the links and {@code l} is the factor on the live load {@code w}; without a live
 * load there is no {@code l}.
 */
public final class ConeProgram {
  final int bodies;
  /** One a link. */
  public final Element[] elements;
  /** First unknown and first row of the cone of each link. */
  public final int[] xStart;
  public final int[] zStart;
  /** Number of unknowns of all links; the live factor, when there is one, is unknown number {@code links}. */
  public final int links;
  /** Of the links and the live factor; rows of the whole cone. */
  public final int unknowns;
  public final int rows;
  final double[] cost;
  /** Minus the load, six entries a body. */
  public final double[] rhs;
  /** The live load, six entries a body, or null. */
  final double[] live;
  /** The cone's own side. */
  public final double[] h;
  /** Degree of the cone: half-lines plus second-order cones. */
  public final int degree;

  /**
   * The program of some links.
   *
   * @param load six entries a body
   * @param live the same, or null: then there is no factor
   * @param linkCost a cost for every unknown of the links, or null for none
   */
  public ConeProgram(int bodies, List<Element> elements, double[] load, double[] live, double cap, double[] linkCost) {
    this.bodies = bodies;
    this.elements = elements.toArray(Element[]::new);
    int n = this.elements.length;
    xStart = new int[n + 1];
    zStart = new int[n + 1];
    int order = 0;
    for (int e = 0; e < n; e++) {
      xStart[e + 1] = xStart[e] + this.elements[e].size();
      zStart[e + 1] = zStart[e] + this.elements[e].rows();
      order += this.elements[e].halfLines() + this.elements[e].cones().length;
    }
    links = xStart[n];
    unknowns = links + (live == null ? 0 : 1);
    rows = zStart[n] + (live == null ? 0 : 2);
    degree = order + (live == null ? 0 : 2);
    this.live = live;
    cost = new double[unknowns];
    if (linkCost != null) System.arraycopy(linkCost, 0, cost, 0, links);
    if (live != null) cost[links] = -1;
    rhs = new double[6 * bodies];
    for (int i = 0; i < rhs.length; i++) rhs[i] = -load[i];
    h = new double[rows];
    for (int e = 0; e < n; e++) System.arraycopy(this.elements[e].h(), 0, h, zStart[e], this.elements[e].rows());
    if (live != null) h[rows - 1] = cap;
  }

  /** The bodies that the live load acts on, in order. */
  public int[] liveBodies() {
    if (live == null) return new int[0];
    return IntStream.range(0, bodies).filter(b -> {
      for (int r = 0; r < 6; r++) {
        if (live[6 * b + r] != 0) return true;
      }
      return false;
    }).toArray();
  }

  /** The pattern of the equations of balance: bodies that share a link, or the live load. */
  public BlockCholesky pattern() {
    List<int[]> pairs = new ArrayList<>();
    for (Element e : elements) {
      if (e.b() >= 0) pairs.add(new int[] {e.a(), e.b()});
    }
    int[] shared = liveBodies();
    for (int i : shared) {
      for (int j : shared) {
        if (j < i) pairs.add(new int[] {i, j});
      }
    }
    return new BlockCholesky(bodies, pairs);
  }

  /** out := A x, six entries a body. */
  public void balance(double[] x, double[] out) {
    Arrays.fill(out, 0);
    for (int e = 0; e < elements.length; e++) {
      Element el = elements[e];
      addProduct(el.wrenchA(), el.size(), x, xStart[e], out, 6 * el.a());
      if (el.b() >= 0) addProduct(el.wrenchB(), el.size(), x, xStart[e], out, 6 * el.b());
    }
    if (live != null) {
      for (int i = 0; i < out.length; i++) out[i] += live[i] * x[links];
    }
  }

  private static void addProduct(double[] m, int size, double[] x, int at, double[] out, int to) {
    for (int r = 0; r < 6; r++) {
      double s = 0;
      for (int c = 0; c < size; c++) s += m[r * size + c] * x[at + c];
      out[to + r] += s;
    }
  }

  /** out := A' y. */
  public void motion(double[] y, double[] out) {
    for (int e = 0; e < elements.length; e++) {
      Element el = elements[e];
      int size = el.size();
      for (int c = 0; c < size; c++) {
        double s = 0;
        for (int r = 0; r < 6; r++) s += el.wrenchA()[r * size + c] * y[6 * el.a() + r];
        if (el.b() >= 0) {
          for (int r = 0; r < 6; r++) s += el.wrenchB()[r * size + c] * y[6 * el.b() + r];
        }
        out[xStart[e] + c] = s;
      }
    }
    if (live != null) {
      double s = 0;
      for (int i = 0; i < live.length; i++) s += live[i] * y[i];
      out[links] = s;
    }
  }

  /** out := G x. */
  public void cone(double[] x, double[] out) {
    for (int e = 0; e < elements.length; e++) {
      Element el = elements[e];
      int size = el.size();
      for (int r = 0; r < el.rows(); r++) {
        double s = 0;
        for (int c = 0; c < size; c++) s += el.g()[r * size + c] * x[xStart[e] + c];
        out[zStart[e] + r] = s;
      }
    }
    if (live != null) {
      out[rows - 2] = -x[links];
      out[rows - 1] = x[links];
    }
  }

  /** out += G' z. */
  public void addConeTransposed(double[] z, double[] out) {
    for (int e = 0; e < elements.length; e++) {
      Element el = elements[e];
      int size = el.size();
      for (int r = 0; r < el.rows(); r++) {
        double v = z[zStart[e] + r];
        if (v == 0) continue;
        for (int c = 0; c < size; c++) out[xStart[e] + c] += el.g()[r * size + c] * v;
      }
    }
    if (live != null) out[links] += z[rows - 1] - z[rows - 2];
  }
}
