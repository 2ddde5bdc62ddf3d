package holdfast.app.report;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Map;

/**
 * JSON text of plain maps, lists, words and numbers, the same bytes for the same content on every system. An object or
 * list without another inside it stays on one line where that fits. Figures carry nine significant digits, rounded
 * toward zero, so that a margin is never written above what was found.
 */
public final class Json {
  private static final MathContext DIGITS = new MathContext(9, RoundingMode.DOWN);
  private static final int LINE = 140;

  private Json() {}

  /** JSON that is already written, to be put in as it is. */
  public record Raw(String json) {}

  public static Raw raw(String json) {
    return new Raw(json.strip());
  }

  /** The text, ending in a newline. */
  public static String text(Map<String, Object> root) {
    StringBuilder b = new StringBuilder();
    write(b, root, 0);
    return b.append('\n').toString();
  }

  private static void write(StringBuilder b, Object value, int depth) {
    if (value == null) {
      b.append("null");
    } else if (value instanceof Map<?, ?> map) {
      writeAll(b, map.entrySet(), '{', '}', depth);
    } else if (value instanceof Collection<?> list) {
      writeAll(b, list, '[', ']', depth);
    } else if (value instanceof Map.Entry<?, ?> entry) {
      write(b, String.valueOf(entry.getKey()), depth);
      b.append(": ");
      write(b, entry.getValue(), depth);
    } else if (value instanceof Double d) {
      number(b, d);
    } else if (value instanceof Integer || value instanceof Long || value instanceof Boolean) {
      b.append(value);
    } else if (value instanceof Raw raw) {
      b.append(raw.json().replace("\n", "\n" + "  ".repeat(depth)));
    } else if (value instanceof String s) {
      b.append('"').append(JsonStringEncoder.getInstance().quoteAsString(s)).append('"');
    } else {
      throw new IllegalArgumentException("no JSON for a " + value.getClass().getSimpleName());
    }
  }

  private static void number(StringBuilder b, double d) {
    if (Double.isNaN(d) || Double.isInfinite(d)) {
      b.append("null");
      return;
    }
    BigDecimal n = new BigDecimal(Double.toString(d)).round(DIGITS).stripTrailingZeros();
    b.append(n.signum() == 0 ? "0" : n.precision() - n.scale() > 15 || n.scale() > 15 ? n.toString() : n.toPlainString());
  }

  private static void writeAll(StringBuilder b, Collection<?> parts, char open, char close, int depth) {
    boolean flat = parts.stream().noneMatch(p -> holdsMore(p instanceof Map.Entry<?, ?> e ? e.getValue() : p));
    if (flat) {
      StringBuilder line = new StringBuilder();
      String gap = "";
      for (Object p : parts) {
        line.append(gap);
        write(line, p, depth);
        gap = ", ";
      }
      if (depth > 0 && 2 * depth + line.length() <= LINE) {
        b.append(open).append(line).append(close);
        return;
      }
    }
    if (parts.isEmpty()) {
      b.append(open).append(close);
      return;
    }
    b.append(open).append('\n');
    int left = parts.size();
    for (Object p : parts) {
      b.append("  ".repeat(depth + 1));
      write(b, p, depth + 1);
      b.append(--left > 0 ? ",\n" : "\n");
    }
    b.append("  ".repeat(depth)).append(close);
  }

  private static boolean holdsMore(Object value) {
    return value instanceof Raw || value instanceof Map<?, ?> m && !m.isEmpty()
        || value instanceof Collection<?> c && !c.isEmpty();
  }
}
