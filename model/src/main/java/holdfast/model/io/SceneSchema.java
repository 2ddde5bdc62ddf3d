package holdfast.model.io;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The JSON Schema (draft 2020-12) of {@code holdfast-scene/1}, made from the table of keys. What a schema can't say (a rock
 * placed that there is, a rock inside the tank, points that enclose a volume) only the reader checks; whatever the schema
 * refuses, the reader refuses too.
 */
public final class SceneSchema {
  private static final String DEFS = "#/$defs/";

  /** One of the shapes that an object can take: some keys must be there, some may, the others must not. */
  private record Variant(List<Key> needed, List<Key> allowed) {}

  /** Objects whose keys exclude each other. Joints depend on a word and are written apart. */
  private static final Map<Keys, List<Variant>> VARIANTS = Map.of(
      SceneKeys.FORM, List.of(
          new Variant(List.of(SceneKeys.LOOK, SceneKeys.ROCK_LENGTH, SceneKeys.ROCK_WIDTH, SceneKeys.ROCK_HEIGHT),
              List.of(SceneKeys.SEED)),
          new Variant(List.of(SceneKeys.POINTS), List.of()),
          new Variant(List.of(SceneKeys.LOBES), List.of()),
          new Variant(List.of(SceneKeys.MESH_FILE), List.of(SceneKeys.MESH_UNIT))),
      SceneKeys.MASS, List.of(
          new Variant(List.of(SceneKeys.WEIGHED), List.of(SceneKeys.WEIGHING, SceneKeys.HELD_WATER)),
          new Variant(List.of(SceneKeys.BULK), List.of())));

  /** Definitions by the object they describe, in the order in which they are met. */
  private final Map<String, JsonOut> defs = new LinkedHashMap<>();

  private SceneSchema() {}

  /** The schema's text in the layout of {@link SceneWriter}. */
  public static String text() {
    SceneSchema schema = new SceneSchema();
    JsonOut root = new JsonOut()
        .text("$schema", "https://json-schema.org/draft/2020-12/schema")
        .text("title", SceneKeys.FORMAT_NAME)
        .text("description", "A marine tank, the rocks in it and how they lie. Lengths are inner lengths in millimetres; x points"
            + " right, y back and z up from the front-left corner of the inner bottom."
            + " Settings are flat keys: group, dot, name.");
    schema.describe(root, SceneKeys.SCENE);
    JsonOut defs = new JsonOut();
    schema.defs.forEach(defs::object);
    return root.object("$defs", defs).written();
  }

  private void describe(JsonOut out, Keys keys) {
    out.text("type", "object");
    JsonOut properties = new JsonOut();
    for (Key key : keys.all()) properties.object(key.name(), schemaOf(key));
    out.object("properties", properties);
    boolean depends = VARIANTS.containsKey(keys) || keys.equals(SceneKeys.JOINT);
    List<String> required = keys.all().stream().filter(Key::required).map(Key::name).toList();
    if (!depends && !required.isEmpty()) out.texts("required", required);
    out.flag("additionalProperties", false);
    if (VARIANTS.containsKey(keys)) out.objects("oneOf", VARIANTS.get(keys).stream().map(v -> variant(keys, v)).toList());
    if (keys.equals(SceneKeys.MASS)) heldWater(out);
    if (keys.equals(SceneKeys.JOINT)) joint(out);
    if (keys.equals(SceneKeys.PLACEMENT)) {
      out.object("not", new JsonOut().texts("required", List.of(SceneKeys.TURN.name(), SceneKeys.TURN_DEG.name())));
    }
    if (keys.equals(SceneKeys.FLOOR)) floor(out);
  }

  private static JsonOut variant(Keys keys, Variant v) {
    List<Key> others = keys.all().stream().filter(k -> !v.needed().contains(k) && !v.allowed().contains(k)).toList();
    JsonOut out = new JsonOut().texts("required", v.needed().stream().map(Key::name).toList());
    return without(out, others);
  }

  private static JsonOut without(JsonOut out, List<? extends Key> keys) {
    JsonOut none = new JsonOut();
    keys.forEach(k -> none.flag(k.name(), false));
    return out.object("properties", none);
  }

  private static void heldWater(JsonOut out) {
    out.object("if", new JsonOut().texts("required", List.of(SceneKeys.HELD_WATER.name())))
        .object("then", equal(SceneKeys.WEIGHING, "damp").texts("required", List.of(SceneKeys.WEIGHING.name())));
  }

  private static void joint(JsonOut out) {
    List<Key> rod = List.of(SceneKeys.ROD_DIAMETER, SceneKeys.ROD_DEPTH, SceneKeys.ROD_GLUED);
    List<Key> always = List.of(SceneKeys.BETWEEN, SceneKeys.BOND);
    List<JsonOut> shapes = new ArrayList<>();
    shapes.add(bonded(List.of("none"), always,
        Stream.concat(Stream.of(SceneKeys.AMOUNT, SceneKeys.MADE_IN), rod.stream()).toList()));
    shapes.add(bonded(List.of("mortar", "putty", "gel"), join(always, SceneKeys.AMOUNT), rod));
    shapes.add(bonded(List.of("rod"), join(always, SceneKeys.ROD_DIAMETER, SceneKeys.ROD_DEPTH), List.of(SceneKeys.AMOUNT)));
    out.objects("oneOf", shapes);
  }

  private static List<Key> join(List<Key> some, Key... more) {
    return Stream.concat(some.stream(), Stream.of(more)).toList();
  }

  private static JsonOut bonded(List<String> bonds, List<Key> needed, List<Key> excluded) {
    JsonOut properties = new JsonOut().object(SceneKeys.BOND.name(), new JsonOut().texts("enum", bonds));
    excluded.forEach(k -> properties.flag(k.name(), false));
    return new JsonOut().object("properties", properties).texts("required", needed.stream().map(Key::name).toList());
  }

  private static void floor(JsonOut out) {
    JsonOut sheet = equal(SceneKeys.FLOOR_KIND, "sheet").texts("required", List.of(SceneKeys.FLOOR_KIND.name()));
    JsonOut bare = equal(SceneKeys.FLOOR_KIND, "bare").texts("required", List.of(SceneKeys.FLOOR_KIND.name()));
    out.objects("allOf", List.of(
        new JsonOut().object("if", sheet).object("then", without(new JsonOut(), List.of(SceneKeys.WALL))),
        new JsonOut().object("if", bare).object("then", without(new JsonOut(),
            List.of(SceneKeys.WALL, SceneKeys.FLOOR_THICKNESS, SceneKeys.MARGIN, SceneKeys.EXTENT)))));
  }

  private static JsonOut equal(Key key, String word) {
    return new JsonOut().object("properties", new JsonOut().object(key.name(), new JsonOut().text("const", word)));
  }

  private JsonOut schemaOf(Key key) {
    JsonOut out = new JsonOut();
    if (key instanceof Key.Num n) {
      out.text("type", n.whole() ? "integer" : "number").number("minimum", n.least()).number("maximum", n.most());
      n.initial().ifPresent(v -> out.number("default", v));
      return out.text("description", n.about() + (n.unit().isEmpty() ? "" : ", " + n.unit()));
    }
    if (key instanceof Key.Flag f) {
      out.text("type", "boolean");
      return out.text("description", f.about() + "; absent: " + f.initial());
    }
    if (key instanceof Key.Word w) {
      out.texts("enum", w.words());
      if (!w.required()) out.text("default", w.initial());
    } else if (key instanceof Key.Words w) {
      out.text("type", "array").object("items", new JsonOut().texts("enum", w.words())).flag("uniqueItems", true)
          .texts("default", w.initial());
    } else if (key instanceof Key.Text t) {
      text(out, t.longest());
    } else if (key instanceof Key.Format f) {
      out.text("const", f.value());
    } else if (key instanceof Key.Pair) {
      list(out, 2, 2).object("items", text(new JsonOut(), SceneKeys.ROCK_NAME.longest())).flag("uniqueItems", true);
    } else if (key instanceof Key.Vector v) {
      vector(out, v.size(), v.least(), v.most());
    } else if (key instanceof Key.Cloud c) {
      cloud(out, c);
    } else if (key instanceof Key.Part p) {
      out.text("$ref", reference(p.keys()));
    } else if (key instanceof Key.Parts p) {
      list(out, 0, p.most()).object("items", new JsonOut().text("$ref", reference(p.keys())));
    }
    return out.text("description", key.about());
  }

  private static JsonOut list(JsonOut out, int fewest, int most) {
    out.text("type", "array");
    if (fewest > 0) out.number("minItems", fewest);
    return out.number("maxItems", most);
  }

  private static JsonOut text(JsonOut out, int longest) {
    // One line without spaces at its ends; the reader also refuses control characters.
    return out.text("type", "string").number("minLength", 1).number("maxLength", longest).text("pattern", "^\\S(.*\\S)?$");
  }

  private static JsonOut vector(JsonOut out, int size, double least, double most) {
    return list(out, size, size)
        .object("items", new JsonOut().text("type", "number").number("minimum", least).number("maximum", most));
  }

  private static void cloud(JsonOut out, Key.Cloud c) {
    if (!c.lobes()) {
      points(out, c);
    } else {
      list(out, 1, Key.Cloud.MOST_LOBES).object("items", points(new JsonOut(), c));
    }
  }

  private static JsonOut points(JsonOut out, Key.Cloud c) {
    return list(out, Key.Cloud.FEWEST, Key.Cloud.MOST).object("items", vector(new JsonOut(), 3, -c.reach(), c.reach()));
  }

  private String reference(Keys keys) {
    String name = keys.what().replaceFirst("^(?:an?|the) ", "");
    if (!defs.containsKey(name)) {
      JsonOut def = new JsonOut();
      // Put in first: it keeps its place in the order while the definitions inside it are met.
      defs.put(name, def);
      describe(def, keys);
    }
    return DEFS + name;
  }
}
