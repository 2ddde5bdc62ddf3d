package holdfast.app.command;

import holdfast.app.report.Json;
import holdfast.app.report.Words;
import holdfast.model.io.DefaultsTable;
import holdfast.model.io.DefaultsTable.Row;
import holdfast.model.scene.Grade;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Lists what is taken where a scene says nothing. */
@Command(description = {
  "",
  "Shows what is taken where a scene file says nothing: value, unit, the range that makes sense, how the figure is known, "
      + "and what it is. Every one can be set in the scene. Figures are in the units of the file.",
  "",
  "  holdfast defaults",
  "  holdfast defaults friction",
  ""})
final class DefaultsCommand extends Subcommand {
  @Parameters(arity = "0..1", paramLabel = "WORD", description = "Only those with this word in their name or meaning.")
  private String word;

  @Override
  protected ExitCode run() {
    List<Row> rows = DefaultsTable.rows().stream().filter(this::wanted).toList();
    if (rows.isEmpty()) {
      List<String> words = DefaultsTable.rows().stream()
          .flatMap(r -> Stream.of(r.key().split("[._\\[\\]]+"))).filter(w -> w.length() > 2).distinct().toList();
      throw new InputProblem("no default has '" + word + "' in its name or meaning.",
          Nearest.to(word, words).map(n -> List.of("Did you mean " + n + "?")).orElse(List.of()));
    }
    print(format == Format.JSON ? json(rows) : text(rows));
    return ExitCode.FINE;
  }

  private boolean wanted(Row r) {
    return word == null || (r.part() + "." + r.key() + " " + r.about()).toLowerCase(java.util.Locale.ROOT)
        .contains(word.toLowerCase(java.util.Locale.ROOT));
  }

  private static String text(List<Row> rows) {
    Map<String, List<Row>> parts = new LinkedHashMap<>();
    rows.forEach(r -> parts.computeIfAbsent(r.part(), p -> new ArrayList<>()).add(r));
    int name = rows.stream().mapToInt(r -> r.key().length()).max().orElse(0);
    int value = rows.stream().mapToInt(r -> valued(r).length()).max().orElse(0);
    StringBuilder b = new StringBuilder();
    b.append("  ").append(Words.padded("name", name, false)).append("  ").append(Words.padded("default", value, false))
        .append("  may be  [known from]\n");
    parts.forEach((part, inside) -> {
      b.append('\n').append(part.isEmpty() ? "scene" : part).append('\n');
      for (Row r : inside) {
        b.append("  ").append(Words.padded(r.key(), name, false)).append("  ").append(Words.padded(valued(r), value, false))
            .append("  ").append(r.range());
        r.grade().ifPresent(g -> b.append("  [").append(g.word()).append(']'));
        b.append('\n');
        Words.wrap(r.about() + (r.source().isEmpty() ? "" : " (" + r.source() + ")"), 94)
            .forEach(l -> b.append("      ").append(l).append('\n'));
      }
    });
    return b.toString();
  }

  private static String valued(Row r) {
    return r.unit().isEmpty() || r.value().contains(" ") ? r.value() : r.value() + " " + r.unit();
  }

  private static String json(List<Row> rows) {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("format", "holdfast-defaults/1");
    root.put("defaults", rows.stream().map(r -> {
      Map<String, Object> m = new LinkedHashMap<>();
      m.put("part", r.part());
      m.put("key", r.key());
      m.put("default", r.value());
      m.put("unit", r.unit());
      m.put("range", r.range());
      m.put("grade", r.grade().map(Grade::word).orElse(null));
      m.put("about", r.about());
      m.put("source", r.source());
      return m;
    }).toList());
    return Json.text(root);
  }
}
