package holdfast.model.io;

import java.util.regex.Pattern;

/** JSON paths as in RFC 9535: {@code $.rocks[2].name}, {@code $.settings['push.tier_n']}. */
final class Paths {
  private static final Pattern PLAIN = Pattern.compile("[A-Za-z_][A-Za-z0-9_]*");

  private Paths() {}

  static String child(String parent, String key) {
    if (PLAIN.matcher(key).matches()) return parent + "." + key;
    String quoted = JsonLayout.quoted(key);
    String inner = quoted.substring(1, quoted.length() - 1).replace("\\\"", "\"").replace("'", "\\'");
    return parent + "['" + inner + "']";
  }

  static String item(String parent, int index) {
    return parent + "[" + index + "]";
  }
}
