package holdfast.app.command;

import holdfast.app.report.Json;
import holdfast.engine.statics.LooseBlocksSolver;
import holdfast.engine.statics.LooseBlocksSolver.Answer;
import holdfast.engine.statics.LooseBlocksSolver.Outcome;
import holdfast.engine.statics.LooseBlocksSolver.Result;
import holdfast.model.io.LooseBlocks;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Judges a bare heap of blocks, for comparison with textbooks and other solvers. */
@Command(description = {
  "",
  "Judges a bare heap of convex blocks, a file of format loose-blocks/1, and prints JSON unless --format says text: "
      + "equilibrium (some admissible contact forces balance the weights), stays (the heap also remains, placed without "
      + "pre-load) and, where the file has a load, the largest load factor by balance of forces (associative) and the largest "
      + "that was confirmed to stay (non_associative). What could not be decided is null. Exit 1 unless the heap stays.",
  "",
  "  holdfast solve blocks.json",
  ""})
final class SolveCommand extends Subcommand {
  @Parameters(paramLabel = "BLOCKS", description = "The file of blocks.")
  private Path file;

  SolveCommand() {
    format = Format.JSON;
  }

  @Override
  protected ExitCode run() {
    LooseBlocks blocks = Inputs.looseBlocks(file);
    Outcome outcome = telling("Solving " + file.getFileName(), () -> LooseBlocksSolver.solve(blocks));
    if (outcome instanceof Outcome.NoSolid n) {
      throw new InputProblem(file + ": block '" + n.block() + "' is no solid: " + n.reason() + ".");
    }
    Result r = ((Outcome.Solved) outcome).result();
    print(format == Format.TEXT ? text(blocks, r) : json(blocks, r));
    return r.equilibrium() == Answer.YES && r.stays() == Answer.YES ? ExitCode.FINE : ExitCode.FAILS;
  }

  private static String json(LooseBlocks blocks, Result r) {
    Map<String, Object> m = new LinkedHashMap<>();
    m.put("format", "holdfast-solve/1");
    m.put("name", blocks.name());
    m.put("equilibrium", decided(r.equilibrium()));
    m.put("stays", decided(r.stays()));
    if (!r.reason().isEmpty()) m.put("reason", r.reason());
    if (blocks.load().isPresent()) {
      Map<String, Object> load = new LinkedHashMap<>();
      load.put("associative", boxed(r.associative()));
      load.put("non_associative", boxed(r.nonAssociative()));
      m.put("load_factor", load);
    }
    return Json.text(m);
  }

  private static String text(LooseBlocks blocks, Result r) {
    StringBuilder b = new StringBuilder();
    if (!blocks.name().isEmpty()) b.append(blocks.name()).append('\n');
    line(b, "equilibrium", word(r.equilibrium()));
    line(b, "stays", word(r.stays()));
    if (blocks.load().isPresent()) {
      line(b, "load factor, balance of forces", factor(r.associative()));
      line(b, "load factor, confirmed to stay", factor(r.nonAssociative()));
    }
    if (!r.reason().isEmpty()) line(b, "reason", r.reason());
    return b.toString();
  }

  private static void line(StringBuilder b, String what, String is) {
    b.append("  ").append(what).append(" ".repeat(Math.max(1, 32 - what.length()))).append(is).append('\n');
  }

  private static String word(Answer a) {
    return switch (a) {
      case YES -> "yes";
      case NO -> "no";
      case UNDECIDED -> "undecided";
    };
  }

  private static String factor(OptionalDouble f) {
    return f.isEmpty() ? "none" : new BigDecimal(f.getAsDouble()).round(new MathContext(6, RoundingMode.DOWN)).toPlainString();
  }

  private static Boolean decided(Answer a) {
    return switch (a) {
      case YES -> Boolean.TRUE;
      case NO -> Boolean.FALSE;
      case UNDECIDED -> null;
    };
  }

  private static Double boxed(OptionalDouble d) {
    return d.isPresent() ? (Double) d.getAsDouble() : null;
  }
}
