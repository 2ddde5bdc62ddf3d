package holdfast.model.io;

import holdfast.model.scene.Grade;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Every default of a scene file, in the order of the file: what is taken where the file says nothing, in what range it may
 * be changed, and how far it can be trusted. The rows of {@code holdfast defaults}.
 */
public final class DefaultsTable {
  /**
   * One default.
   *
   * @param part the part of the file it belongs to: {@code floor}, {@code rocks[].form}, {@code settings}
   * @param key the key in that part
   * @param value the default as the file would spell it; in words where it depends on other values
   * @param unit empty where there is none
   * @param range the values that are taken
   * @param grade how the default is known; absent where it is only the plain case and no figure of the world
   * @param about what it is
   * @param source where the default comes from; empty where the grade says all
   */
  public record Row(
      String part, String key, String value, String unit, String range, Optional<Grade> grade, String about, String source) {}

  private DefaultsTable() {}

  /** The rows; the settings come last. */
  public static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    collect("", SceneKeys.SCENE, rows);
    return List.copyOf(rows);
  }

  private static void collect(String part, Keys keys, List<Row> rows) {
    for (Key key : keys.all()) {
      row(part, key).ifPresent(rows::add);
      if (key instanceof Key.Part p) collect(inside(part, p.name()), p.keys(), rows);
      if (key instanceof Key.Parts p) collect(inside(part, p.name() + "[]"), p.keys(), rows);
    }
  }

  private static String inside(String part, String name) {
    return part.isEmpty() ? name : part + "." + name;
  }

  private static Optional<Row> row(String part, Key key) {
    if (key.equals(SceneKeys.LEVEL)) {
      return Optional.of(new Row(part, key.name(), JsonLayout.number(SceneKeys.WATER_BELOW_RIM_MM) + " below the rim", "mm",
          range(SceneKeys.LEVEL), Optional.of(Grade.COMMON_PRACTICE),
              "height of the full tank's water above the inner bottom", ""));
    }
    if (key instanceof Key.Num n && n.initial().isPresent()) {
      boolean setting = part.equals("settings");
      return Optional.of(new Row(part, n.name(), JsonLayout.number(n.initial().getAsDouble()), n.unit(), range(n),
          n.source().map(Key.Source::grade), n.about(), setting ? "" : n.source().map(Key.Source::from).orElse("")));
    }
    if (key instanceof Key.Word w && !w.required()) {
      return Optional.of(new Row(part, w.name(), w.initial(), "", ObjectWalk.oneOf(w.words()), Optional.empty(), w.about(), ""));
    }
    if (key instanceof Key.Words w) {
      String value = w.initial().isEmpty() ? "none" : String.join(", ", w.initial());
      return Optional.of(new Row(part, w.name(), value, "", "any of " + String.join(", ", w.words()), Optional.empty(),
          w.about(), ""));
    }
    if (key instanceof Key.Flag f) {
      return Optional.of(new Row(part, f.name(), f.initial(), "", "true or false", Optional.empty(), f.about(), ""));
    }
    return Optional.empty();
  }

  private static String range(Key.Num n) {
    return JsonLayout.number(n.least()) + " to " + JsonLayout.number(n.most());
  }
}
