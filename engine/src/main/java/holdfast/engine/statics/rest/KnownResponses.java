package holdfast.engine.statics.rest;

import holdfast.engine.statics.solver.BlockLu;
import java.util.Arrays;
import java.util.Optional;

/**
 * How a heap at rest gives way to small forces while every contact that presses goes on pressing and holding: linear, so
 * worked out once for every force that is asked about and added up. The forces are unit loads on bodies, and unit forces at
 * the <em>places</em>: first the corners of all bearings, then three a bearing for its shears through the centroid of the
 * patch and its twist over the patch's mean distance.
 *
 * <p>Scaled as in {@link CompliantHeap}. Responses are found when first asked for; not for several threads at once.
 */
final class KnownResponses {
  static final int COLUMN = CompliantHeap.COLUMN;

  final CompliantHeap soft;
  final int corners;
  final int places;
  /** Arm of the twist of each link, over the patch's mean distance; metres. */
  final double[] arm;
  private final BlockLu stiffness;
  private final BlockLu factor;
  private final BlockLu changed;
  private final LinkBlocks blocks;
  final double[] shearColumn;
  private final double[][] ofPlace;
  private final double[][] ofLoad;

  private KnownResponses(CompliantHeap soft, BlockLu stiffness, BlockLu factor) {
    this.soft = soft;
    this.stiffness = stiffness;
    this.factor = factor;
    changed = new BlockLu(soft.pattern);
    blocks = new LinkBlocks(soft);
    corners = soft.cornerStart[soft.links];
    places = corners + 3 * soft.links;
    arm = new double[soft.links];
    for (int i = 0; i < soft.links; i++) {
      if (!soft.bearing[i]) continue;
      arm[i] = soft.patches[i].meanDistance(0, 0);
      soft.centre(i, 0, 0, arm[i]);
    }
    shearColumn = soft.slipColumn.clone();
    ofPlace = new double[places][];
    ofLoad = new double[6 * soft.bodies][];
  }

  /**
   * Makes them ready; empty where the heap gives way without limit.
   *
   * @param stiffness at rest; see {@link RestStep#holding}
   */
  static Optional<KnownResponses> of(CompliantHeap soft, BlockLu stiffness) {
    BlockLu factor = new BlockLu(soft.pattern);
    factor.set(stiffness);
    return factor.factor() ? Optional.of(new KnownResponses(soft, stiffness, factor)) : Optional.empty();
  }

  /** Begins a stiffness that differs from that at rest. */
  void beginChange() {
    changed.set(stiffness);
  }

  /** Takes {@code f p q'} from it. */
  void change(int link, double[] p, int pAt, double[] q, int qAt, double f) {
    blocks.add(changed, link, p, pAt, q, qAt, -f);
  }

  /** The movement with the changed stiffness under {@code load}, into {@code out}; false where it has no limit. */
  boolean underChange(double[] load, double[] out) {
    if (!changed.factor()) return false;
    changed.solve(load, out);
    return true;
  }

  /** The same once more with the stiffness as it then was. */
  void underChangeAgain(double[] load, double[] out) {
    changed.solve(load, out);
  }

  /** How far a movement goes along a place of a link. */
  double along(int place, int link, double[] d) {
    return place < corners
        ? soft.along(soft.cornerColumn, COLUMN * place, link, d)
        : soft.along(shearColumn, COLUMN * (place - corners), link, d);
  }

  /** Adds a force at a place of a link to {@code out}. */
  void addTo(double[] out, int place, int link, double f) {
    if (place < corners) soft.addTo(out, soft.cornerColumn, COLUMN * place, link, f);
    else soft.addTo(out, shearColumn, COLUMN * (place - corners), link, f);
  }

  /** The movement under a unit force at a place of a link. */
  double[] ofPlace(int place, int link) {
    if (ofPlace[place] == null) {
      double[] d = new double[6 * soft.bodies];
      addTo(d, place, link, 1);
      factor.solve(d, d);
      ofPlace[place] = d;
    }
    return ofPlace[place];
  }

  /** The movement under {@code load}, six figures a body, into {@code out}. */
  void underLoad(double[] load, double[] out) {
    int loaded = 0;
    for (double f : load) if (f != 0) loaded++;
    if (loaded > 6) {
      factor.solve(load, out);
      return;
    }
    Arrays.fill(out, 0);
    for (int k = 0; k < load.length; k++) {
      if (load[k] == 0) continue;
      if (ofLoad[k] == null) {
        double[] d = new double[load.length];
        d[k] = 1;
        factor.solve(d, d);
        ofLoad[k] = d;
      }
      double[] d = ofLoad[k];
      for (int i = 0; i < out.length; i++) out[i] += load[k] * d[i];
    }
  }
}
