package holdfast.model.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Turns text into a {@link Json} tree. Strict JSON (RFC 8259), with two leniencies that exist only to give better
 * messages: NaN and infinities are let through, for the reader to refuse with their path, and of a key given twice the
 * first value is kept and the second reported. Depth, length of numbers and size of the text are bounded.
 */
final class JsonText {
  /** Most characters of text taken, about thirty large scans; keeps a wrong file from filling the memory. */
  static final int MAX_CHARS = 32_000_000;
  /** Deepest nesting taken; the formats need seven levels. */
  static final int MAX_DEPTH = 32;
  /** Most digits of one number. */
  static final int MAX_DIGITS = 400;

  private static final JsonFactory FACTORY = JsonFactory.builder()
      .streamReadConstraints(StreamReadConstraints.builder()
          // Our own bounds come first and have a message of their own; these are the net beneath.
          .maxNestingDepth(2 * MAX_DEPTH)
          .maxNumberLength(MAX_DIGITS)
          .maxStringLength(MAX_CHARS)
          .build())
      .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
      .build();

  private final JsonParser parser;
  private final Problems problems;
  private int order;

  private JsonText(JsonParser parser, Problems problems) {
    this.parser = parser;
    this.problems = problems;
  }

  /** The tree, or nothing when the text is no JSON (the problem is then reported). */
  static Optional<Json> parse(String text, Problems problems) {
    Json.At start = new Json.At(0, -1);
    if (text.length() > MAX_CHARS) {
      problems.add(start, "$", text.length() + " characters", "must have at most " + MAX_CHARS);
      return Optional.empty();
    }
    // A byte order mark is no part of the text.
    String body = text.startsWith("\uFEFF") ? text.substring(1) : text;
    if (body.isBlank()) {
      problems.add(start, "$", "an empty file", "must hold a JSON object");
      return Optional.empty();
    }
    try (JsonParser parser = FACTORY.createParser(body)) {
      JsonText reader = new JsonText(parser, problems);
      try {
        parser.nextToken();
        Json root = reader.value(1);
        if (parser.nextToken() != null) {
          problems.add(reader.here(), "$", "more text after the end at column " + reader.column(),
              "must hold one JSON object and nothing after it");
          return Optional.empty();
        }
        return Optional.of(root);
      } catch (TooDeep e) {
        problems.add(reader.here(), "$", "more than " + MAX_DEPTH + " levels of nesting",
            "must nest no deeper than the format, about seven levels");
      } catch (JsonProcessingException e) {
        reader.reportSyntax(e);
      }
    } catch (IOException e) {
      throw new IllegalStateException("reading from memory failed", e);
    }
    return Optional.empty();
  }

  private Json value(int depth) throws IOException {
    if (depth > MAX_DEPTH) throw new TooDeep();
    JsonToken token = parser.currentToken();
    Json.At at = here();
    return switch (token) {
      case START_OBJECT -> object(at, depth);
      case START_ARRAY -> array(at, depth);
      case VALUE_STRING -> new Json.Str(at, parser.getText());
      // Adding zero makes of -0.0 the plain zero that is written back.
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> new Json.Num(at, parser.getText(), number(parser.getText()) + 0.0);
      case VALUE_TRUE -> new Json.Bool(at, true);
      case VALUE_FALSE -> new Json.Bool(at, false);
      default -> new Json.Null(at);
    };
  }

  private Json array(Json.At at, int depth) throws IOException {
    List<Json> items = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      items.add(value(depth + 1));
    }
    return new Json.Arr(at, List.copyOf(items));
  }

  private Json object(Json.At at, int depth) throws IOException {
    List<Json.Member> members = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    while (parser.nextToken() != JsonToken.END_OBJECT) {
      Json.At keyAt = here();
      String key = parser.currentName();
      String path = pathHere(parser.getParsingContext());
      parser.nextToken();
      Json value = value(depth + 1);
      if (seen.add(key)) {
        members.add(new Json.Member(keyAt, key, value));
      } else {
        problems.add(keyAt, path, "the key a second time", "must be given once");
      }
    }
    return new Json.Obj(at, List.copyOf(members));
  }

  /** Doubles beyond their range come out infinite, the words for infinity and NaN as what they say. */
  private static double number(String digits) {
    if (digits.endsWith("NaN")) return Double.NaN;
    if (digits.contains("INF") || digits.contains("Infinity")) {
      return digits.startsWith("-") ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }
    return Double.parseDouble(digits);
  }

  private Json.At here() {
    return new Json.At(parser.currentTokenLocation().getLineNr(), order++);
  }

  private int column() {
    return parser.currentTokenLocation().getColumnNr();
  }

  private void reportSyntax(JsonProcessingException e) {
    JsonLocation where = e.getLocation() != null ? e.getLocation() : parser.currentLocation();
    String why = plain(e.getOriginalMessage());
    problems.add(new Json.At(where.getLineNr(), order), pathHere(parser.getParsingContext()),
        "no valid JSON at column " + where.getColumnNr(), "must be JSON: " + why);
  }

  /** The parser's own words without what speaks of its inside. */
  private static String plain(String message) {
    String why = message
        .replaceAll("\\s*\\(start marker at \\[Source:.*?line: (\\d+), column: \\d+\\]\\)", " opened in line $1")
        .replaceAll("\\(code \\d+(?: / 0x[0-9a-fA-F]+)?\\)", "")
        .replaceAll(" \\(or 'NaN'[^)]*\\)", "")
        .replaceAll("maybe a \\(non-standard\\) comment\\? \\(.*\\)", "JSON has no comments")
        .replace("(('", "('")
        .replace("' )", "')")
        .replaceAll("\\s+", " ")
        .replace("character ('}'): was expecting double-quote to start field name",
            "character ('}'): an entry was expected, and JSON has no comma after the last one")
        .replaceAll("character \\(']'[^:]*: expected a valid value.*",
            "character (']'): a value was expected, and JSON has no comma after the last one")
        .strip();
    return why.isEmpty() ? "not understood" : Character.toLowerCase(why.charAt(0)) + why.substring(1);
  }

  private static String pathHere(JsonStreamContext context) {
    if (context == null || context.inRoot()) return "$";
    String parent = pathHere(context.getParent());
    if (context.inArray()) return context.hasCurrentIndex() ? Paths.item(parent, context.getCurrentIndex()) : parent;
    return context.hasCurrentName() ? Paths.child(parent, context.getCurrentName()) : parent;
  }

  /** Carries the end of a parse that went too deep out of the recursion; never leaves this class. */
  private static final class TooDeep extends RuntimeException {
    private static final long serialVersionUID = 1;

    TooDeep() {
      super("too deep", null, false, false);
    }
  }
}
