package holdfast.app.command;

import holdfast.app.report.sheet.Sheet;
import holdfast.app.view.Pngs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * Files that a command writes, with one rule for all: what Holdfast drew itself, it may draw anew over the old one; a scene,
 * which is somebody's work, and every file that is not Holdfast's own of that kind are written over only with
 * {@code --replace}, and frames not over a scene even then.
 */
final class Outputs {
  /** How each command tells of the rule. */
  static final String REPLACE_SCENE = "Write over a file that is already there.";
  static final String REPLACE_DRAWN =
      "Write over a file that is already there, whatever it is. One that holdfast wrote as such is written anew without it.";

  /** What a file of frames begins with, {@code holdfast.app.report.BumpText}. */
  private static final String FRAMES = "\"format\": \"holdfast-frames/";
  private static final String SCENE = "\"format\": \"holdfast-scene/";
  private static final int BEGINNING = 200;

  private Outputs() {}

  /** What is written. */
  enum Kind {
    SCENE(".json", "", file -> false),
    SHEET(".pdf", "is no build sheet of holdfast's", Sheet::isOne),
    PICTURE(".png", "is no picture of holdfast's", Pngs::isOurs),
    FRAMES(".json", "holds no frames of holdfast's", Outputs::holdsFrames);

    private final String ending;
    private final String other;
    private final Predicate<Path> ours;

    Kind(String ending, String other, Predicate<Path> ours) {
      this.ending = ending;
      this.other = other;
      this.ours = ours;
    }
  }

  /** Refuses a file that may not be written: not named as its kind is, without a folder, or already there and not ours. */
  static void mayWrite(String option, Path file, Kind kind, boolean replace) {
    Inputs.mustHaveAName(file);
    if (Files.isDirectory(file)) throw new InputProblem(file + " is a folder; name a file to write.");
    if (!file.toString().toLowerCase(Locale.ROOT).endsWith(kind.ending)) {
      throw new InputProblem(option + " must name a file that ends in " + kind.ending + ", was '" + file + "'.");
    }
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null && !Files.isDirectory(folder)) throw new InputProblem(folder + ": there is no such folder to write to.");
    if (kind == Kind.FRAMES && begins(file, SCENE)) {
      throw new InputProblem(file + " is a scene; frames are never written over one.");
    }
    if (replace || !Files.exists(file) || kind.ours.test(file)) return;
    throw new InputProblem(file + " is already there" + (kind.other.isEmpty() ? "." : " and " + kind.other + "."),
        "Name another file, or add --replace to write over it.");
  }

  private static boolean holdsFrames(Path file) {
    return begins(file, FRAMES);
  }

  private static boolean begins(Path file, String with) {
    try (var in = Files.newInputStream(file)) {
      return new String(in.readNBytes(BEGINNING), StandardCharsets.UTF_8).contains(with);
    } catch (IOException | SecurityException e) {
      return false; // what cannot be read is not known to be ours
    }
  }
}
