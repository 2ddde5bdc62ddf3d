package holdfast.app.edit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Arrays;
import java.util.Optional;

/** What a file was when it was read or written, so that a change by somebody else is noticed before it is overwritten. */
public final class FileMark {
  private final Path file;
  private final long bytes;
  private final long modified;
  private final int content;

  private FileMark(Path file, long bytes, long modified, int content) {
    this.file = file;
    this.bytes = bytes;
    this.modified = modified;
    this.content = content;
  }

  /** The file as it is now; empty when it cannot be read. */
  public static Optional<FileMark> of(Path file) {
    try {
      BasicFileAttributes a = Files.readAttributes(file, BasicFileAttributes.class);
      return Optional.of(new FileMark(file, a.size(), a.lastModifiedTime().toMillis(),
          Arrays.hashCode(Files.readAllBytes(file))));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** Somebody else has written other bytes into it, or it is gone. */
  public boolean changed() {
    try {
      BasicFileAttributes a = Files.readAttributes(file, BasicFileAttributes.class);
      if (a.size() == bytes && a.lastModifiedTime().toMillis() == modified) return false;
      return a.size() != bytes || Arrays.hashCode(Files.readAllBytes(file)) != content;
    } catch (IOException e) {
      return true;
    }
  }
}
