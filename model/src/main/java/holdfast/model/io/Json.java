package holdfast.model.io;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A JSON value together with where it stood in the text. Numbers keep the digits as they were typed, so that a message can
 * show them; a number too large for a double has an infinite {@code value}.
 */
sealed interface Json {
  /**
   * A place in the text.
   *
   * @param line counted from 1
   * @param order how many values and keys came before; sorts problems into the order of the file
   */
  record At(int line, int order) {}

  At at();

  record Obj(At at, List<Member> members) implements Json {
    Optional<Member> member(String key) {
      return members.stream().filter(m -> m.key().equals(key)).findFirst();
    }
  }

  /** One key of an object with its value; {@code at} is the key's place. */
  record Member(At at, String key, Json value) {}

  record Arr(At at, List<Json> items) implements Json {}

  record Str(At at, String text) implements Json {}

  record Num(At at, String digits, double value) implements Json {}

  record Bool(At at, boolean value) implements Json {}

  record Null(At at) implements Json {}

  /** The value as a message shows it: short, on one line. */
  default String shown() {
    if (this instanceof Str s) return JsonLayout.quoted(shortened(s.text()));
    if (this instanceof Num n) return shortened(n.digits());
    if (this instanceof Bool b) return String.valueOf(b.value());
    if (this instanceof Null) return "null";
    if (this instanceof Arr a) {
      boolean plain = a.items().size() <= 4 && a.items().stream().allMatch(i -> i instanceof Num || i instanceof Str);
      return plain
          ? a.items().stream().map(Json::shown).collect(Collectors.joining(", ", "[", "]"))
          : "a list of " + a.items().size();
    }
    return "an object";
  }

  private static String shortened(String text) {
    int end = 60;
    if (text.length() <= end) return text;
    // Never cut between the two halves of a character outside the basic plane.
    if (Character.isHighSurrogate(text.charAt(end - 1))) end--;
    return text.substring(0, end) + "…";
  }
}
