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
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Files that a command reads: their content, or an {@link InputProblem} that says all that is wrong with them. */
final class Inputs {
  /** A scan of one stone with far more triangles than its shape needs. */
  private static final long MOST_MESH_BYTES = 256L << 20;

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
    mustHaveAName(file);
    if (Files.isDirectory(file)) {
      List<String> inside = namesIn(file).keySet().stream().limit(12).toList();
      throw new InputProblem(file + " is a folder; a file is wanted.",
          inside.isEmpty() ? List.of() : List.of("In it: " + String.join(", ", inside)));
    }
    if (Files.exists(file)) return;
    Map<String, Path> candidates = new LinkedHashMap<>();
    Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
    candidates.putAll(namesIn(Path.of("scenes")));
    candidates.putAll(namesIn(folder));
    String name = String.valueOf(file.getFileName());
    Optional<String> near = Nearest.to(name, candidates.keySet()).or(() -> Nearest.to(name + ".json", candidates.keySet()));
    throw new InputProblem(file + ": there is no such file.",
        near.map(n -> List.of("Did you mean " + candidates.get(n) + "?")).orElse(List.of()));
  }

  private static void mustHaveAName(Path file) {
    if (file.toString().isBlank()) throw new InputProblem("the name of a file is empty.");
  }

  private static Map<String, Path> namesIn(Path folder) {
    Map<String, Path> names = new LinkedHashMap<>();
    List<Path> found = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      files.filter(p -> p.getFileName().toString().endsWith(".json")).sorted().limit(500).forEach(found::add);
    } catch (IOException | SecurityException e) {
      return names; // only a hint is lost
    }
    found.forEach(p -> names.put(p.getFileName().toString(), p));
    return names;
  }

  /** Refuses to write over a file that is there, unless told to. */
  static void mustNotBeThere(Path file, boolean replace) {
    mustHaveAName(file);
    if (Files.isDirectory(file)) throw new InputProblem(file + " is a folder; name a file to write.");
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null && !Files.isDirectory(folder)) throw new InputProblem(folder + ": there is no such folder to write to.");
    if (Files.exists(file) && !replace) {
      throw new InputProblem(file + " is already there.", "Name another file, or add --replace to write over it.");
    }
  }
}
