package holdfast.model.io;

/**
 * One thing that is wrong with a file.
 *
 * @param file the file as the user named it
 * @param line the line it stands in, from 1; 0 when it concerns the file as a whole
 * @param jsonPath where, as in RFC 9535: {@code $.rocks[2].form.length_mm}
 * @param found what stands there
 * @param right what would be right
 */
public record Problem(String file, int line, String jsonPath, String found, String right) {
  /** One line for people: file, line, path, what was found, what would be right. */
  public String rendered() {
    return file + (line > 0 ? ":" + line : "") + ": " + jsonPath + ": found " + found + "; " + right;
  }
}
