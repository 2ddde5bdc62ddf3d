package holdfast.model.io;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.List;

/**
 * JSON on its way out, in the canonical layout: two spaces of indent, keys in the order in which they were put, line feeds;
 * whatever holds no object and fits into {@value #WIDTH} columns stands on one line.
 */
final class JsonOut {
  static final int WIDTH = 120;

  private sealed interface Node {}

  private record Leaf(String text) implements Node {}

  private record Items(List<Node> items) implements Node {}

  private record Members(List<String> keys, List<Node> values) implements Node {}

  private final List<String> keys = new ArrayList<>();
  private final List<Node> values = new ArrayList<>();

  JsonOut text(String key, String value) {
    return put(key, new Leaf(JsonLayout.quoted(value)));
  }

  JsonOut number(String key, double value) {
    return put(key, new Leaf(JsonLayout.number(value)));
  }

  JsonOut flag(String key, boolean value) {
    return put(key, new Leaf(String.valueOf(value)));
  }

  JsonOut vector(String key, double... values) {
    return put(key, numbers(values));
  }

  JsonOut texts(String key, List<String> texts) {
    return put(key, new Items(texts.stream().map(t -> (Node) new Leaf(JsonLayout.quoted(t))).toList()));
  }

  JsonOut points(String key, List<Vec3> points) {
    return put(key, cloud(points));
  }

  JsonOut clouds(String key, List<List<Vec3>> clouds) {
    return put(key, new Items(clouds.stream().map(JsonOut::cloud).toList()));
  }

  JsonOut object(String key, JsonOut value) {
    return put(key, value.members());
  }

  JsonOut objects(String key, List<JsonOut> all) {
    return put(key, new Items(all.stream().map(o -> (Node) o.members()).toList()));
  }

  boolean isEmpty() {
    return keys.isEmpty();
  }

  /** The whole text, ended by a line feed. */
  String written() {
    StringBuilder out = new StringBuilder();
    // The outermost object is always spread out.
    spread(members(), "", out);
    return out.append('\n').toString();
  }

  private JsonOut put(String key, Node value) {
    keys.add(key);
    values.add(value);
    return this;
  }

  private Members members() {
    return new Members(List.copyOf(keys), List.copyOf(values));
  }

  private static Node cloud(List<Vec3> points) {
    return new Items(points.stream().map(p -> numbers(p.x(), p.y(), p.z())).toList());
  }

  private static Node numbers(double... values) {
    List<Node> items = new ArrayList<>(values.length);
    for (double v : values) items.add(new Leaf(JsonLayout.number(v)));
    return new Items(items);
  }

  /** {@code column}: where on its line the node starts. */
  private static void write(Node node, String indent, int column, StringBuilder out) {
    StringBuilder line = new StringBuilder();
    // One column is kept for a comma after it.
    if (onOneLine(node, true, WIDTH - 1 - column, line)) {
      out.append(line);
    } else {
      spread(node, indent, out);
    }
  }

  private static void spread(Node node, String indent, StringBuilder out) {
    String inner = indent + "  ";
    if (node instanceof Leaf leaf) {
      out.append(leaf.text());
    } else if (node instanceof Items list) {
      out.append("[\n");
      for (int i = 0; i < list.items().size(); i++) {
        out.append(inner);
        write(list.items().get(i), inner, inner.length(), out);
        out.append(i + 1 < list.items().size() ? ",\n" : "\n");
      }
      out.append(indent).append(']');
    } else {
      Members m = (Members) node;
      out.append("{\n");
      for (int i = 0; i < m.keys().size(); i++) {
        String key = inner + JsonLayout.quoted(m.keys().get(i)) + ": ";
        out.append(key);
        write(m.values().get(i), inner, key.length(), out);
        out.append(i + 1 < m.keys().size() ? ",\n" : "\n");
      }
      out.append(indent).append('}');
    }
  }

  /** Writes the node on one line; false, with the line in an undefined state, when it holds an object or gets too long. */
  private static boolean onOneLine(Node node, boolean objectAllowed, int room, StringBuilder line) {
    if (node instanceof Leaf leaf) {
      line.append(leaf.text());
      return true;
    }
    if (node instanceof Items list) {
      line.append('[');
      for (int i = 0; i < list.items().size(); i++) {
        if (i > 0) line.append(", ");
        if (!onOneLine(list.items().get(i), false, room, line) || line.length() > room) return false;
      }
      line.append(']');
      return line.length() <= room;
    }
    if (!objectAllowed) return false;
    Members m = (Members) node;
    line.append("{ ");
    for (int i = 0; i < m.keys().size(); i++) {
      line.append(i > 0 ? ", " : "").append(JsonLayout.quoted(m.keys().get(i))).append(": ");
      if (!onOneLine(m.values().get(i), false, room, line) || line.length() > room) return false;
    }
    line.append(" }");
    return line.length() <= room;
  }
}
