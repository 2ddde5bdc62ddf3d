package holdfast.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Compares a text with one that was read by a person and kept in the test resources, byte for byte. */
public final class Golden {
  private Golden() {}

  /**
   * Fails when {@code actual} differs from the resource {@code name} beside {@code owner}; what it was then lies in
   * {@code target/golden}, to be looked at and, if it is right, copied over the resource.
   */
  public static void check(Class<?> owner, String name, String actual) {
    try (InputStream in = owner.getResourceAsStream(name)) {
      String expected = in == null ? "" : new String(in.readAllBytes(), StandardCharsets.UTF_8);
      if (!expected.equals(actual)) {
        Path at = Path.of("target", "golden", name);
        Files.createDirectories(at.getParent());
        Files.writeString(at, actual);
      }
      assertThat(actual).as(name).isEqualTo(expected);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
