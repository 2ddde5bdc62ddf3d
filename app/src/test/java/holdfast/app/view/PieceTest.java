package holdfast.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import holdfast.engine.contact.Planar;
import holdfast.engine.gap.DeadWater;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.SeaWater;
import holdfast.model.scene.Setting;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.Shapes;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is drawn of a piece and of a pocket, against what follows from boxes by hand. */
class PieceTest {
  private final Scene scene = Judged.scene("handling");
  private final List<Piece> pieces =
      Piece.all(scene, Shapes.of(scene, f -> new MeshResult.Unreadable("none")).placed());

  private Piece piece(String... rocks) {
    return pieces.stream().filter(p -> p.module().rocks().equals(List.of(rocks))).findFirst().orElseThrow();
  }

  /** Rocks fixed on the bench are one piece, the others one each. */
  @Test
  void thereIsAPieceForEachLift() {
    assertThat(pieces.stream().map(p -> p.module().rocks().size())).containsExactlyInAnyOrder(1, 1, 1, 1, 1, 1, 1, 2);
    assertThat(piece("pier", "arm").topM()).isCloseTo(0.230, within(1e-9));
  }

  /**
   * Both boxes stand over (420, 230): so does their common centre. Wet they weigh, by volume V and dry mass m, m + rho_w
   * (V - m / rho_s): pier 2.448 L and 4.2 kg, arm 3.456 L and 6.5 kg. Their centres are at 85 and 200 mm.
   */
  @Test
  void theCentreOfMassIsThatOfTheWetStones() {
    double water = SeaWater.densityKgM3(35, 25) / 1e3;
    double mineral = scene.settings().get(Setting.MINERAL_DENSITY) / 1e3;
    double pier = 4.2 + water * (2.448 - 4.2 / mineral);
    double arm = 6.5 + water * (3.456 - 6.5 / mineral);
    Vec3 c = piece("pier", "arm").centre();
    assertThat(c.distanceTo(new Vec3(0.420, 0.230, (pier * 0.085 + arm * 0.200) / (pier + arm)))).isLessThan(1e-6);
  }

  /** An opening of 230 x 310 mm less 10 mm on each side; a small box in it keeps its own size and lies in its middle. */
  @Test
  void theSectionLiesInTheMiddleOfTheOpening() {
    Piece p = piece("sinker");
    List<Vec3> free = p.freeOpening(scene);
    assertThat(free.get(1).minus(free.get(0)).distanceTo(new Vec3(0.210, 0.290, 0))).isLessThan(1e-12);
    double[] section = p.section(scene);
    assertThat(Planar.area(section)).isCloseTo(0.080 * 0.070, within(1e-9));
    assertThat(PieceMarks.beyond(section, free.get(0), free.get(1))).isEmpty();
  }

  /** What is drawn as too large is as far outside as the finding says: the section less the opening, the sides alike. */
  @Test
  void whatIsTooLargeStandsOutByTheLackOfRoom() {
    Piece p = piece("pier", "arm");
    List<Vec3> free = p.freeOpening(scene);
    double most = 0;
    double[] section = p.section(scene);
    double outside = 0;
    for (double[] part : PieceMarks.beyond(section, free.get(0), free.get(1))) {
      outside += Planar.area(part);
      for (int i = 0; i < Planar.corners(part); i++) {
        most = Math.max(most, Math.max(free.get(0).x() - part[2 * i], part[2 * i] - free.get(1).x()));
        most = Math.max(most, Math.max(free.get(0).y() - part[2 * i + 1], part[2 * i + 1] - free.get(1).y()));
      }
    }
    assertThat(p.module().passage().slackM()).isNegative();
    assertThat(most).isCloseTo(-p.module().passage().slackM() / 2, within(1e-9));
    double[] rim = {free.get(0).x(), free.get(0).y(), free.get(1).x(), free.get(0).y(), free.get(1).x(), free.get(1).y(),
        free.get(0).x(), free.get(1).y()};
    assertThat(outside).isCloseTo(Planar.area(section) - Planar.area(Planar.clip(section, rim, 0)), within(1e-12));
  }

  /** A cube has six faces; two that share one have ten, three in a row fourteen. Each face looks away from its cell. */
  @Test
  void onlyTheOuterFacesOfAPocketAreDrawn() {
    for (int n = 1; n <= 3; n++) {
      List<Vec3> cells = IntStream.range(0, n).mapToObj(i -> new Vec3(0.1 + 0.005 * i, 0.2, 0.3)).toList();
      Hollow h = Hollow.of(new DeadWater.Pocket(n * 1.25e-7, cells.get(0), List.of("a"), cells, 0.005));
      assertThat(h.skin()).hasSize(4 * n + 2);
      for (List<Vec3> f : h.skin()) {
        Vec3 normal = f.get(1).minus(f.get(0)).cross(f.get(3).minus(f.get(0)));
        Vec3 middle = f.get(0).plus(f.get(2)).times(0.5);
        double nearest = cells.stream().mapToDouble(c -> c.distanceTo(middle)).min().orElseThrow();
        assertThat(nearest).isCloseTo(0.0025, within(1e-12));
        assertThat(cells.stream().anyMatch(c -> middle.minus(c).cross(normal).norm() < 1e-15
            && middle.minus(c).dot(normal) > 0)).isTrue();
      }
    }
  }
}
