package holdfast.model.io;

import holdfast.model.geom.HullBuilder;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Reads one object key by key, checks each value against its {@link Key} and reports what is wrong. A value that was
 * refused comes back as NaN, an empty text or nothing, so that reading goes on to the next problem; the caller builds
 * something only when no problem was found at all.
 */
final class ObjectWalk {
  /** Units that people measure in and files don't have. */
  private static final Set<String> OTHER_UNITS = Set.of("in", "inch", "inches", "ft", "cm", "m", "lb", "lbs", "oz", "g");

  private final Json.Obj object;
  private final String path;
  private final Keys keys;
  private final Problems problems;

  private ObjectWalk(Json.Obj object, String path, Keys keys, Problems problems) {
    this.object = object;
    this.path = path;
    this.keys = keys;
    this.problems = problems;
  }

  /** Starts on a value that should be an object; reports a value of another type and every key that is not known. */
  static Optional<ObjectWalk> over(Json value, String path, Keys keys, Problems problems) {
    if (!(value instanceof Json.Obj object)) {
      problems.add(value.at(), path, value.shown(), "must be an object, " + keys.what());
      return Optional.empty();
    }
    List<String> known = keys.names();
    for (Json.Member m : object.members()) {
      if (known.contains(m.key())) continue;
      String hint = Keys.nearest(m.key(), known)
          .map(k -> "did you mean " + k + inItsUnit(m.key(), k) + "?")
          .orElseGet(() -> known.size() > 20
              ? "see 'holdfast defaults' for the keys" : "the keys are " + String.join(", ", known));
      problems.add(m.at(), Paths.child(path, m.key()), "a key that is not known in " + keys.what(), hint);
    }
    return Optional.of(new ObjectWalk(object, path, keys, problems));
  }

  /** A key mistyped in its unit alone was likely given a figure in that unit: then the right unit is said in full. */
  private static String inItsUnit(String typed, String key) {
    if (!OTHER_UNITS.contains(typed.substring(typed.lastIndexOf('_') + 1).toLowerCase(Locale.ROOT))) return "";
    if (key.endsWith("_mm")) return ", in millimetres";
    return key.endsWith("_kg") ? ", in kilograms" : "";
  }

  boolean has(Key key) {
    return object.member(key.name()).isPresent();
  }

  String pathOf(Key key) {
    return Paths.child(path, key.name());
  }

  /** Reports a value that is right by itself and wrong beside the others. */
  void refuse(Key key, String right) {
    Json.At at = place(key);
    problems.add(at, pathOf(key), value(key).map(Json::shown).orElse("nothing"), right);
  }

  void refuse(Key key, String found, String right) {
    problems.add(place(key), pathOf(key), found, right);
  }

  /** Reports about the object as a whole. */
  void refuseWhole(String found, String right) {
    problems.add(object.at(), path, found, right);
  }

  /** Reports a key that has no meaning beside the others. */
  void notBeside(Key key, String why) {
    if (has(key)) refuse(key, why);
  }

  /** The number, its default when absent, NaN when refused or absent without a default. */
  double number(Key.Num key) {
    Optional<Json> value = valueOrMissing(key);
    if (value.isEmpty()) return key.initial().orElse(Double.NaN);
    if (value.get() instanceof Json.Num n && key.admits(n.value())) return n.value();
    boolean numeric = value.get() instanceof Json.Num n && !Double.isNaN(n.value());
    refuse(key, "must be " + (numeric || key.whole() ? "" : "a number ") + key.range() + ": " + key.about());
    return Double.NaN;
  }

  OptionalDouble maybe(Key.Num key) {
    return has(key) ? OptionalDouble.of(number(key)) : OptionalDouble.empty();
  }

  boolean flag(Key.Flag key, boolean initial) {
    Optional<Json> value = valueOrMissing(key);
    if (value.isEmpty()) return initial;
    if (value.get() instanceof Json.Bool b) return b.value();
    refuse(key, "must be true or false: " + key.about());
    return initial;
  }

  /** The constant of that word, nothing when it was refused. */
  <E> Optional<E> word(Key.Word key, E[] values) {
    Optional<Json> value = valueOrMissing(key);
    if (value.isEmpty()) {
      return key.required() ? Optional.empty() : Optional.of(values[key.words().indexOf(key.initial())]);
    }
    int at = value.get() instanceof Json.Str s ? key.words().indexOf(s.text()) : -1;
    if (at >= 0) return Optional.of(values[at]);
    refuse(key, "must be " + oneOf(key.words()) + nearest(value.get(), key.words()) + ": " + key.about());
    return Optional.empty();
  }

  /** The constants of the words, in the order of {@code values}. */
  <E> List<E> words(Key.Words key, E[] values) {
    Optional<Json> value = valueOrMissing(key);
    Set<String> given = new LinkedHashSet<>(key.initial());
    if (value.isPresent()) {
      given.clear();
      if (value.get() instanceof Json.Arr list) {
        for (int i = 0; i < list.items().size(); i++) {
          Json item = list.items().get(i);
          String itemPath = Paths.item(pathOf(key), i);
          if (!(item instanceof Json.Str s) || !key.words().contains(s.text())) {
            problems.add(item.at(), itemPath, item.shown(), "must be " + oneOf(key.words()) + nearest(item, key.words()));
          } else if (!given.add(s.text())) {
            problems.add(item.at(), itemPath, item.shown() + " a second time", "must be named once");
          }
        }
      } else {
        refuse(key, "must be a list of words out of " + String.join(", ", key.words()) + ": " + key.about());
      }
    }
    List<E> ordered = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      if (given.contains(key.words().get(i))) ordered.add(values[i]);
    }
    return ordered;
  }

  /** Words for people; empty when absent or refused. */
  String text(Key.Text key) {
    Optional<Json> value = valueOrMissing(key);
    if (value.isEmpty()) return "";
    if (value.get() instanceof Json.Str s && isPlain(s.text(), key.longest())) return s.text();
    refuse(key, "must be text of 1 to " + key.longest() + " characters on one line, without spaces at its ends: " + key.about());
    return "";
  }

  /** A list of two texts; what they name is for the caller to check. Nothing when refused. */
  Optional<List<Json.Str>> pair(Key.Pair key) {
    Optional<Json> value = valueOrMissing(key);
    if (value.isEmpty()) return Optional.empty();
    if (value.get() instanceof Json.Arr list && list.items().size() == 2
        && list.items().get(0) instanceof Json.Str a && list.items().get(1) instanceof Json.Str b) {
      return Optional.of(List.of(a, b));
    }
    refuse(key, "must be a list of two texts, " + key.about());
    return Optional.empty();
  }

  /** The numbers, nothing when absent or refused. */
  Optional<double[]> vector(Key.Vector key) {
    return valueOrMissing(key).flatMap(v -> vector(v, pathOf(key), key));
  }

  Optional<Vec3> vec3(Key.Vector key) {
    return vector(key).map(a -> new Vec3(a[0], a[1], a[2]));
  }

  private Optional<double[]> vector(Json value, String at, Key.Vector key) {
    if (!(value instanceof Json.Arr list) || list.items().size() != key.size()
        || !list.items().stream().allMatch(Json.Num.class::isInstance)) {
      problems.add(value.at(), at, value.shown(), "must be a list of " + key.range() + ": " + key.about());
      return Optional.empty();
    }
    double[] out = new double[key.size()];
    boolean right = true;
    for (int i = 0; i < out.length; i++) {
      Json.Num n = (Json.Num) list.items().get(i);
      out[i] = n.value();
      if (!(out[i] >= key.least() && out[i] <= key.most())) {
        right = false;
        problems.add(n.at(), Paths.item(at, i), n.shown(), "must be from " + JsonLayout.number(key.least()) + " to "
            + JsonLayout.number(key.most()) + (key.unit().isEmpty() ? "" : " " + key.unit()) + ": " + key.about());
      }
    }
    return right ? Optional.of(out) : Optional.empty();
  }

  /** The points of a cloud: one list, or one for each lobe. Nothing when any of it was refused. */
  Optional<List<List<Vec3>>> cloud(Key.Cloud key) {
    Optional<Json> value = valueOrMissing(key);
    if (value.isEmpty()) return Optional.empty();
    if (!key.lobes()) return points(value.get(), pathOf(key), key).map(List::of);
    if (!(value.get() instanceof Json.Arr list) || list.items().isEmpty() || list.items().size() > Key.Cloud.MOST_LOBES) {
      refuse(key, "must be a list of 1 to " + Key.Cloud.MOST_LOBES + " lobes, each a list of points");
      return Optional.empty();
    }
    List<List<Vec3>> lobes = new ArrayList<>();
    for (int i = 0; i < list.items().size(); i++) {
      points(list.items().get(i), Paths.item(pathOf(key), i), key).ifPresent(lobes::add);
    }
    return lobes.size() == list.items().size() ? Optional.of(lobes) : Optional.empty();
  }

  private Optional<List<Vec3>> points(Json value, String at, Key.Cloud key) {
    if (!(value instanceof Json.Arr list) || list.items().size() < Key.Cloud.FEWEST || list.items().size() > Key.Cloud.MOST) {
      problems.add(value.at(), at, value.shown(), "must be a list of " + Key.Cloud.FEWEST + " to " + Key.Cloud.MOST
          + " points [x, y, z] in " + key.unit());
      return Optional.empty();
    }
    Key.Vector point = new Key.Vector(key.name(), true, 3, -key.reach(), key.reach(), key.unit(), "a point x, y, z");
    List<Vec3> points = new ArrayList<>(list.items().size());
    for (int i = 0; i < list.items().size(); i++) {
      vector(list.items().get(i), Paths.item(at, i), point).ifPresent(p -> points.add(new Vec3(p[0], p[1], p[2])));
    }
    if (points.size() < list.items().size()) return Optional.empty();
    List<Vec3> metres = points.stream().map(p -> p.times(key.unit().equals("mm") ? 1e-3 : 1)).toList();
    return HullBuilder.build(metres).match(hull -> Optional.of(points), reason -> {
      problems.add(value.at(), at, "points without a volume (" + reason + ")", "must be the corners of a solid");
      return Optional.empty();
    });
  }

  /** The object under that key. */
  Optional<ObjectWalk> part(Key.Part key) {
    return valueOrMissing(key).flatMap(v -> over(v, pathOf(key), key.keys(), problems));
  }

  /** One walk for every item of the list that is an object. */
  List<ObjectWalk> parts(Key.Parts key) {
    Optional<Json> value = valueOrMissing(key);
    List<ObjectWalk> walks = new ArrayList<>();
    if (value.isEmpty()) return walks;
    if (!(value.get() instanceof Json.Arr list) || list.items().size() > key.most()) {
      refuse(key, "must be a list of at most " + key.most() + " objects: " + key.about());
      return walks;
    }
    for (int i = 0; i < list.items().size(); i++) {
      over(list.items().get(i), Paths.item(pathOf(key), i), key.keys(), problems).ifPresent(walks::add);
    }
    return walks;
  }

  Optional<Json> value(Key key) {
    return object.member(key.name()).map(Json.Member::value);
  }

  private Optional<Json> valueOrMissing(Key key) {
    assert keys.all().contains(key) : key.name() + " is no key of " + keys.what();
    Optional<Json> value = value(key);
    if (value.isEmpty() && key.required()) {
      problems.add(object.at(), pathOf(key), "nothing", "must be given: " + asked(key));
    }
    return value;
  }

  private static String asked(Key key) {
    if (key instanceof Key.Num n) return n.about() + ", " + n.range();
    if (key instanceof Key.Word w) return w.about() + ", " + oneOf(w.words());
    if (key instanceof Key.Vector v) return v.about() + ", " + v.range();
    return key.about();
  }

  private Json.At place(Key key) {
    return value(key).map(Json::at).orElse(object.at());
  }

  static boolean isPlain(String s, int longest) {
    return !s.isEmpty() && s.length() <= longest && s.equals(s.strip())
        && s.chars().noneMatch(c -> Character.isISOControl(c) || c == '\u2028' || c == '\u2029')
        && s.codePoints().noneMatch(c -> c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE);
  }

  static String oneOf(List<String> words) {
    int last = words.size() - 1;
    return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
  }

  static String nearest(Json value, List<String> known) {
    if (!(value instanceof Json.Str s)) return "";
    return Keys.nearest(s.text(), known).map(k -> " (did you mean " + k + "?)").orElse("");
  }
}
