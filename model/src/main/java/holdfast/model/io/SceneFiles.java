package holdfast.model.io;

import holdfast.model.scene.Scene;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/**
 * Saves files so that after a crash there is the old one or the new one, never half of one. What goes wrong is told of the
 * file that was named, not of the one beside it.
 */
public final class SceneFiles {
  private SceneFiles() {}

  /** Saves the scene's canonical text. */
  public static void save(Path file, Scene scene) throws IOException {
    saveText(file, SceneWriter.write(scene));
  }

  /** Writes beside the target, forces it to the disk and moves it over. A link is followed, so that it stays a link. */
  public static void saveText(Path file, String text) throws IOException {
    ByteBuffer bytes = StandardCharsets.UTF_8.encode(text);
    save(file, bytes);
  }

  /** The same for what is not text: pictures and sheets. */
  public static void saveBytes(Path file, byte[] content) throws IOException {
    save(file, ByteBuffer.wrap(content));
  }

  private static void save(Path file, ByteBuffer bytes) throws IOException {
    try {
      saveBeside(file, bytes);
    } catch (NoSuchFileException | AccessDeniedException e) {
      throw new FileSystemException(file.toString(), null, "may not be written there");
    } catch (FileSystemException e) {
      throw new FileSystemException(file.toString(), null, e.getReason());
    } catch (IOException e) {
      throw new FileSystemException(file.toString(), null, e.getMessage());
    }
  }

  private static void saveBeside(Path file, ByteBuffer bytes) throws IOException {
    Path target = Files.isSymbolicLink(file) ? file.toRealPath() : file.toAbsolutePath();
    Path beside = target.resolveSibling("." + UUID.randomUUID() + ".tmp");
    try {
      // Made as any new file is, not as a temporary one, which only its owner could read.
      try (FileChannel out = FileChannel.open(beside, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW)) {
        while (bytes.hasRemaining()) out.write(bytes);
        out.force(true);
      }
      copyPermissions(target, beside);
      move(beside, target);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  private static void move(Path from, Path to) throws IOException {
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  /** Where files have permissions, the new one gets those of the one it replaces. */
  private static void copyPermissions(Path target, Path beside) throws IOException {
    if (Files.exists(target) && Files.getFileStore(target).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(beside, Files.getPosixFilePermissions(target));
    }
  }
}
