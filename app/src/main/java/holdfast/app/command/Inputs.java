package holdfast.app.command;

import holdfast.model.io.LooseBlocks;
import holdfast.model.io.LooseBlocksReader;
import holdfast.model.io.Problem;
import holdfast.model.io.ReadResult;
import holdfast.model.io.SceneReader;
import holdfast.model.scene.Scene;
import holdfast.model.shape.MeshFiles;
import holdfast.model.shape.MeshResult;
import holdfast.model.shape.Shapes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Files that a command reads: their content, or an {@link InputProblem} that says all that is wrong with them. */
final class Inputs {
  /** A scan of one stone with far more triangles than its shape needs. */
  private static final long MOST_MESH_BYTES = 256L << 20;

  /** How the names of files end that may be meant. */
  private static final List<String> SCENES = List.of(".json");
  private static final List<String> MESHES = List.of(".stl", ".obj");

  private Inputs() {}

  static Scene scene(Path file) {
    mustBeThere(file);
    return content(SceneReader.read(file), file);
  }

  static LooseBlocks looseBlocks(Path file) {
    mustBeThere(file);
    return content(LooseBlocksReader.read(file), file);
  }

  private static <T> T content(ReadResult<T> result, Path file) {
    return result.match(read -> read, refused -> {
      List<Problem> problems = refused.problems();
      throw new InputProblem(
          problems.size() == 1 ? file + " has something wrong in it:" : file + " has " + problems.size() + " things wrong in it:",
          problems.stream().map(Problem::rendered).toList());
    });
  }

  /** The rocks of a scene as bodies, meshes read from files beside it. */
  static Shapes shapes(Scene scene, Path file) {
    Path folder = file.toAbsolutePath().getParent();
    Shapes shapes = Shapes.of(scene, mesh -> mesh(folder.resolve(mesh)));
    if (shapes.sound()) return shapes;
    throw new InputProblem(file + (shapes.problems().size() == 1 ? " has a rock" : " has rocks") + " that cannot be:",
        shapes.problems().stream()
            .map(p -> file + ": $.rocks[" + p.rockIndex() + "]: '" + p.rock() + "': " + p.reason()).toList());
  }

  /** A scanned mesh. */
  static MeshResult mesh(Path file) {
    try {
      if (Files.size(file) > MOST_MESH_BYTES) {
        return new MeshResult.Unreadable(
            Files.size(file) + " bytes; at most " + MOST_MESH_BYTES + " are read: thin the mesh out");
      }
      return MeshFiles.parse(file.toString(), Files.readAllBytes(file));
    } catch (NoSuchFileException e) {
      return new MeshResult.Unreadable("there is no such file");
    } catch (IOException | SecurityException e) {
      return new MeshResult.Unreadable("it cannot be read");
    }
  }

  /** A file that is not there is a slip of the hand: the nearest name in its folder, or among the scenes, may be meant. */
  static void mustBeThere(Path file) {
    mustBeThere(file, SCENES);
  }

  /** The same for a scan. */
  static void meshMustBeThere(Path file) {
    mustBeThere(file, MESHES);
  }

  private static void mustBeThere(Path file, List<String> endings) {
    mustHaveAName(file);
    if (Files.isDirectory(file)) {
      List<String> inside = namesIn(file, endings).keySet().stream().limit(12).toList();
      throw new InputProblem(file + " is a folder; a file is wanted.",
          inside.isEmpty() ? List.of() : List.of("In it: " + String.join(", ", inside)));
    }
    if (Files.exists(file)) return;
    Map<String, Path> candidates = new LinkedHashMap<>();
    Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
    if (endings.equals(SCENES)) candidates.putAll(namesIn(Path.of("scenes"), endings));
    candidates.putAll(namesIn(folder, endings));
    String name = String.valueOf(file.getFileName());
    Optional<String> near = Nearest.to(name, candidates.keySet())
        .or(() -> Nearest.to(name + endings.get(0), candidates.keySet()));
    throw new InputProblem(file + ": there is no such file.",
        near.map(n -> List.of("Did you mean " + candidates.get(n) + "?")).orElse(List.of()));
  }

  /** A name that no scene file would take. */
  static InputProblem noName(String option, String typed, int longest) {
    return new InputProblem(option + " must be 1 to " + longest + " characters on one line, without spaces at its ends, was '"
        + typed.replaceAll("\\p{Cntrl}", "?") + "'.");
  }

  static void mustHaveAName(Path file) {
    if (file.toString().isBlank()) throw new InputProblem("the name of a file is empty.");
  }

  /** A schema is no scene, though it ends as one. */
  private static boolean named(String name, List<String> endings) {
    String lower = name.toLowerCase(Locale.ROOT);
    return endings.stream().anyMatch(lower::endsWith) && !lower.endsWith(".schema.json");
  }

  private static Map<String, Path> namesIn(Path folder, List<String> endings) {
    Map<String, Path> names = new LinkedHashMap<>();
    List<Path> found = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      files.filter(p -> named(p.getFileName().toString(), endings)).sorted().limit(500).forEach(found::add);
    } catch (IOException | SecurityException e) {
      return names; // only a hint is lost
    }
    found.forEach(p -> names.put(p.getFileName().toString(), p));
    return names;
  }
}
