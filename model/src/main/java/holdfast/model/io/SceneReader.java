package holdfast.model.io;

import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BiFunction;

/**
 * Reads {@code holdfast-scene/1}. A file is either right, and becomes a {@link Scene}, or every problem in it is reported,
 * each with line, JSON path, what was found and what would be right. Nothing is guessed and nothing is thrown.
 */
public final class SceneReader {
  private SceneReader() {}

  /** Reads a file; mesh files are looked for from its folder. */
  public static ReadResult<Scene> read(Path file) {
    Path parent = file.toAbsolutePath().getParent();
    return readFile(file, (json, label) -> read(json, label, Optional.ofNullable(parent)));
  }

  /** Reads text; {@code label} names it in messages. Whether mesh files are there is not checked. */
  public static ReadResult<Scene> read(String json, String label) {
    return read(json, label, Optional.empty());
  }

  /** Reads text as if it stood in a file in {@code folder}. */
  public static ReadResult<Scene> read(String json, String label, Optional<Path> folder) {
    Problems problems = new Problems(label);
    Optional<Scene> scene = JsonText.parse(json, problems).flatMap(root -> new SceneParts(problems, folder).read(root));
    return result(scene, problems);
  }

  static <T> ReadResult<T> result(Optional<T> content, Problems problems) {
    if (problems.any()) return new ReadResult.Refused<>(problems.inFileOrder());
    return new ReadResult.Read<>(content.orElseThrow(() -> new IllegalStateException("nothing read and no problem reported")));
  }

  /** Gets the text of a file and hands it on, or refuses. The file is named in messages as the user named it. */
  static <T> ReadResult<T> readFile(Path file, BiFunction<String, String, ReadResult<T>> reader) {
    Problems problems = new Problems(file.toString());
    try {
      if (Files.isDirectory(file)) {
        problems.addAboutFile("a folder", "must be a JSON file");
      } else if (Files.size(file) > 4L * JsonText.MAX_CHARS) {
        problems.addAboutFile(Files.size(file) + " bytes", "must have at most " + JsonText.MAX_CHARS + " characters");
      } else {
        String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(Files.readAllBytes(file))).toString();
        return reader.apply(text, file.toString());
      }
    } catch (NoSuchFileException e) {
      problems.addAboutFile("no such file", "must be the name of a JSON file");
    } catch (CharacterCodingException e) {
      problems.addAboutFile("bytes that are not UTF-8", "must be JSON text in UTF-8");
    } catch (IOException | SecurityException e) {
      problems.addAboutFile("a file that can't be read", "must be readable");
    }
    return new ReadResult.Refused<>(problems.inFileOrder());
  }
}
