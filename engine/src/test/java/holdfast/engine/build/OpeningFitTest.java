package holdfast.engine.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.build.OpeningFit.Answer;
import holdfast.engine.build.OpeningFit.Passage;
import holdfast.model.geom.Quat;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OpeningFitTest {

  private static List<Vec3> box(double x, double y, double z) {
    List<Vec3> p = new ArrayList<>();
    for (int i = 0; i < 8; i++) p.add(new Vec3((i & 1) * x, (i >> 1 & 1) * y, (i >> 2) * z));
    return p;
  }

  /** A pose that is offered must fit when it is measured. */
  private static void assertSound(List<Vec3> points, Passage p, double first, double second) {
    assertThat(p.up().norm()).isCloseTo(1, within(1e-12));
    assertThat(p.up().dot(p.along())).isCloseTo(0, within(1e-12));
    Vec3 across = p.up().cross(p.along());
    assertThat(Math.min(first - extent(points, p.along()), second - extent(points, across)))
        .isCloseTo(p.slackM(), within(1e-12));
  }

  private static double extent(List<Vec3> points, Vec3 d) {
    return points.stream().mapToDouble(v -> v.dot(d)).max().orElseThrow()
        - points.stream().mapToDouble(v -> v.dot(d)).min().orElseThrow();
  }

  @Test
  void aBoxPassesUprightWhereItJustFits() {
    List<Vec3> points = box(0.4, 0.2, 0.5);
    Passage p = OpeningFit.through(points, 0.4 + 1e-6, 0.2 + 1e-6);
    assertThat(p.answer()).isEqualTo(Answer.PASSES);
    assertThat(p.tiltRad()).isCloseTo(0, within(1e-9));
    assertSound(points, p, 0.4 + 1e-6, 0.2 + 1e-6);
    // The other way round it must be turned by a right angle.
    assertThat(OpeningFit.through(points, 0.201, 0.401).answer()).isEqualTo(Answer.PASSES);
  }

  @Test
  void aLyingSlabPassesOnItsEnd() {
    List<Vec3> points = box(0.9, 0.2, 0.1);
    Passage p = OpeningFit.through(points, 0.25, 0.12);
    assertThat(p.answer()).isEqualTo(Answer.PASSES);
    assertThat(p.tiltRad()).isGreaterThan(1.3);
    assertSound(points, p, 0.25, 0.12);
  }

  @Test
  void nothingNarrowerThanTheThinnestWidthLetsABoxPass() {
    assertThat(OpeningFit.through(box(0.3, 0.2, 0.1), 0.5, 0.099).answer()).isEqualTo(Answer.STUCK);
    assertThat(OpeningFit.through(box(0.3, 0.2, 0.1), 0.198, 0.15).answer()).isEqualTo(Answer.STUCK);
  }

  /** A plate p wide and t thick goes cornerwise through a square of side a when (p + t) / sqrt 2 <= a (derived). */
  @Test
  void aPlatePassesCornerwise() {
    double most = 0.1 * Math.sqrt(2) - 0.01;
    List<Vec3> fits = box(most - 0.0007, 0.01, 1);
    Passage p = OpeningFit.through(fits, 0.1, 0.1);
    assertThat(p.answer()).isEqualTo(Answer.PASSES);
    assertSound(fits, p, 0.1, 0.1);
    assertThat(OpeningFit.through(box(most + 0.0015, 0.01, 1), 0.1, 0.1).answer()).isEqualTo(Answer.STUCK);
  }

  /**
   * A regular tetrahedron of edge 1 passes a square hole of side sqrt(1/2) and no smaller one: Itoh, Tanoue and
   * Zamfirescu 2006, J. Geometry 84:119 (published, from memory); the shadow along a line through the middles of two
   * opposite edges is that square (derived).
   */
  @Test
  void aTetrahedronPassesItsSquareHole() {
    double e = Math.sqrt(0.5);
    Quat turn = Quat.ofRotationVector(new Vec3(0.4, -0.3, 0.9));
    List<Vec3> points = new ArrayList<>();
    for (Vec3 v : List.of(new Vec3(0, 0, 0), new Vec3(e, e, 0), new Vec3(e, 0, e), new Vec3(0, e, e))) points.add(turn.rotate(v));
    Passage p = OpeningFit.through(points, e + 0.002, e + 0.002);
    assertThat(p.answer()).isEqualTo(Answer.PASSES);
    assertSound(points, p, e + 0.002, e + 0.002);
    assertThat(OpeningFit.through(points, e - 0.003, e - 0.003).answer()).isEqualTo(Answer.STUCK);
  }

  /** The bound holds: no pose drawn by chance has more room than the search says there can be. */
  @Test
  void noChancePoseBeatsTheBound() {
    long seed = 5;
    Random random = new Random(seed);
    for (int run = 0; run < 12; run++) {
      List<Vec3> points = new ArrayList<>();
      for (int i = 0; i < 24; i++) points.add(new Vec3(random.nextDouble() * 0.4, random.nextDouble() * 0.25,
          random.nextDouble() * 0.2));
      double a = 0.2 + 0.15 * random.nextDouble();
      double b = 0.15 + 0.1 * random.nextDouble();
      Passage p = OpeningFit.through(points, a, b);
      double best = Double.NEGATIVE_INFINITY;
      for (int k = 0; k < 8000; k++) {
        Quat q = new Quat(random.nextGaussian(), random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
        best = Math.max(best, Math.min(a - extent(points, q.rotate(Vec3.X)), b - extent(points, q.rotate(Vec3.Y))));
      }
      assertThat(best).as("seed %d run %d", seed, run).isLessThanOrEqualTo(p.atMostM());
      if (p.answer() == Answer.PASSES) assertSound(points, p, a, b);
      if (best >= 0) assertThat(p.answer()).as("seed %d run %d", seed, run).isEqualTo(Answer.PASSES);
    }
  }
}
