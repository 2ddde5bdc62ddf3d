package holdfast.app;

import static org.assertj.core.api.Assertions.assertThat;

import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.PairFit;
import holdfast.engine.contact.SceneSolids;
import holdfast.engine.contact.Solid;
import holdfast.model.geom.Vec3;
import holdfast.model.io.SceneReader;
import holdfast.model.io.SceneWriter;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshLoader;
import holdfast.model.shape.PlacedRock;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The scenes that come with the program are canonical, whole, and lie on real contacts. */
final class ShippedScenesTest {
  /** What settling promises: neither hover nor overlap above this. */
  private static final double REST_M = 2e-4;

  private static Path folder() {
    for (Path at = Path.of("").toAbsolutePath(); at != null; at = at.getParent()) {
      if (Files.exists(at.resolve("scenes/scene.schema.json"))) return at.resolve("scenes");
    }
    throw new IllegalStateException("no folder 'scenes' above " + Path.of("").toAbsolutePath());
  }

  static List<Path> scenes() throws IOException {
    try (Stream<Path> files = Files.walk(folder())) {
      return files.filter(f -> f.toString().endsWith(".json") && !f.toString().endsWith(".schema.json")).sorted().toList();
    }
  }

  private static Scene read(Path file) {
    return SceneReader.read(file).match(
        scene -> scene, problems -> {
          throw new AssertionError(file + ": " + problems);
        });
  }

  @ParameterizedTest
  @MethodSource("scenes")
  void isCanonicalToTheByte(Path file) throws IOException {
    assertThat(SceneWriter.write(read(file))).isEqualTo(Files.readString(file));
  }

  @ParameterizedTest
  @MethodSource("scenes")
  void everyRockIsShapedPlacedAndNamedInWords(Path file) {
    Scene scene = read(file);
    Shapes shapes = Shapes.of(scene, MeshLoader.NONE);
    assertThat(shapes.problems()).isEmpty();
    assertThat(shapes.placed()).hasSize(scene.rocks().size());
    // A word: the floor's cells are named by figures, so rocks are not.
    assertThat(scene.rocks()).allSatisfy(r -> assertThat(r.name()).matches("[a-z]+( [a-z]+)*"));
  }

  /** Every rock bears on another, on the floor, or on the sand's surface where there is nothing else under it. */
  @ParameterizedTest
  @MethodSource("scenes")
  void restsOnRealContacts(Path file) {
    Scene scene = read(file);
    List<PlacedRock> placed = Shapes.of(scene, MeshLoader.NONE).placed();
    List<Solid> solids = SceneSolids.ofPlaced(scene, placed);
    ContactMap map = ContactFinder.find(solids, ContactRules.DEFAULT);
    for (int i = 0; i < placed.size(); i++) {
      int rock = i;
      double nearest = map.fits().stream().filter(f -> f.a() == rock || f.b() == rock)
          .mapToDouble(f -> Math.abs(f.distanceM())).min().orElse(Double.POSITIVE_INFINITY);
      double overSand = scene.floor().topMm() > 0
          ? Double.POSITIVE_INFINITY : Math.abs(lowestM(placed.get(i)) - scene.sand().depthMm() * 1e-3);
      assertThat(Math.min(nearest, overSand)).as(placed.get(i).rock().name()).isLessThan(REST_M);
    }
    assertThat(map.fits()).extracting(PairFit::distanceM).allSatisfy(d -> assertThat(d).isGreaterThan(-REST_M));
  }

  private static double lowestM(PlacedRock rock) {
    return -rock.reach(Vec3.Z.negated());
  }
}
