package holdfast.app.report.sheet;

import holdfast.model.scene.Rock;
import holdfast.model.scene.Scene;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntPredicate;

/**
 * What stands on paper, and in pictures, for the names of a scene that the font cannot write: the same name in plain letters
 * where that is still a name of its own, else the kind of thing and its number in the scene ("rock 3", from 1). No two things
 * are called alike that were not before.
 *
 * @param onPaper what is written instead of a name, longest name first; names that can be written are not in it
 * @param remark a line for the reader that tells which, when anything is called otherwise
 * @param shortRemark the same where there is no room for the first
 */
public record PaperNames(Map<String, String> onPaper, Optional<String> remark, Optional<String> shortRemark) {
  public static final PaperNames AS_THEY_ARE = new PaperNames(Map.of(), Optional.empty(), Optional.empty());

  public PaperNames {
    onPaper = Collections.unmodifiableMap(new LinkedHashMap<>(onPaper));
  }

  /** Something with a name: what it is, and its number among its like. */
  private record Named(String kind, int number, String name) {
    String byNumber() {
      return kind + " " + number;
    }
  }

  /** @param drawn whether a letter can be written */
  public static PaperNames of(Scene scene, IntPredicate drawn) {
    List<Named> all = new ArrayList<>();
    for (Rock r : scene.rocks()) all.add(new Named("rock", all.size() + 1, r.name()));
    int others = 1;
    for (Scene.Device d : scene.devices()) all.add(new Named("device", others++, d.name()));
    List<Named> strange = all.stream().filter(n -> !n.name.codePoints().allMatch(drawn)).toList();
    Set<String> taken = new HashSet<>(all.stream().map(Named::name).toList());
    Map<String, Integer> plainly = new LinkedHashMap<>();
    for (Named n : strange) plain(n.name, drawn).ifPresent(p -> plainly.merge(p, 1, Integer::sum));
    Map<String, String> given = new LinkedHashMap<>();
    List<Named> numbered = new ArrayList<>();
    List<String> written = new ArrayList<>();
    List<String> plain = new ArrayList<>();
    for (Named n : strange) {
      Optional<String> p = plain(n.name, drawn).filter(k -> plainly.get(k) == 1 && !taken.contains(k));
      if (p.isEmpty()) {
        numbered.add(n);
        continue;
      }
      given.putIfAbsent(n.name, p.get());
      written.add(n.byNumber() + " is called \u201c" + p.get() + "\u201d");
      plain.add(n.byNumber());
    }
    taken.addAll(given.values());
    List<String> byNumber = new ArrayList<>();
    for (Named n : numbered) {
      String called = n.byNumber();
      while (!taken.add(called)) called = "(" + called + ")";
      given.putIfAbsent(n.name, called);
      byNumber.add(called);
    }
    // The title is no name to tell things apart by: what can be written of it is.
    if (!scene.name().codePoints().allMatch(drawn)) given.putIfAbsent(scene.name(), title(scene.name(), drawn));
    Map<String, String> longestFirst = new LinkedHashMap<>();
    given.entrySet().stream().sorted(Comparator.comparingInt((Map.Entry<String, String> e) -> -e.getKey().length())
        .thenComparing(Map.Entry::getKey)).forEach(e -> longestFirst.put(e.getKey(), e.getValue()));
    if (strange.isEmpty()) return new PaperNames(longestFirst, Optional.empty(), Optional.empty());
    String numbers = byNumber.isEmpty() ? "" : String.join(", ", byNumber)
        + (byNumber.size() == 1 ? " is called by its number in the scene" : " are called by their numbers in the scene");
    String full = "Names with letters that this sheet cannot print: " + join(numbers, String.join(", ", written)) + ".";
    String brief = plain.isEmpty() ? full : "Names with letters that this sheet cannot print: "
        + join(numbers, String.join(", ", plain) + (plain.size() == 1 ? " is" : " are") + " written in plain letters") + ".";
    return new PaperNames(longestFirst, Optional.of(full), Optional.of(brief));
  }

  private static String join(String a, String b) {
    return a.isEmpty() ? b : b.isEmpty() ? a : a + "; " + b;
  }

  /** A text with every name as it stands on paper. */
  public String written(String text) {
    String s = text;
    for (Map.Entry<String, String> e : onPaper.entrySet()) s = s.replace(e.getKey(), e.getValue());
    return s;
  }

  private static String title(String name, IntPredicate drawn) {
    StringBuilder b = new StringBuilder();
    Normalizer.normalize(name, Normalizer.Form.NFC).codePoints().filter(drawn).forEach(b::appendCodePoint);
    String left = b.toString().strip().replaceAll("\\s+", " ");
    return left.codePoints().anyMatch(Character::isLetterOrDigit) ? left : "Build sheet";
  }

  /** The name in letters that can be written; empty where a letter has no plain form, or none is left. */
  private static Optional<String> plain(String name, IntPredicate drawn) {
    StringBuilder b = new StringBuilder();
    for (int c : Normalizer.normalize(name, Normalizer.Form.NFC).codePoints().toArray()) {
      if (drawn.test(c)) {
        b.appendCodePoint(c);
      } else if (c == '\t' || c == '\n' || Character.getType(c) == Character.SPACE_SEPARATOR) {
        b.append(' ');
      } else if (Character.getType(c) == Character.DASH_PUNCTUATION) {
        b.append('-');
      } else if (!ornament(c)) {
        String base = Normalizer.normalize(Character.toString(c), Normalizer.Form.NFKD).replaceAll("\\p{Mn}", "");
        if (base.isEmpty() || !base.codePoints().allMatch(drawn)) return Optional.empty();
        b.append(base);
      }
    }
    String s = b.toString().strip().replaceAll("\\s+", " ");
    return s.codePoints().anyMatch(Character::isLetterOrDigit) ? Optional.of(s) : Optional.empty();
  }

  /** What a name can be without and still be read: little pictures, and marks that are not seen. */
  private static boolean ornament(int c) {
    return switch (Character.getType(c)) {
      case Character.OTHER_SYMBOL, Character.MODIFIER_SYMBOL, Character.FORMAT, Character.CONTROL -> true;
      default -> c >= 0xFE00 && c <= 0xFE0F;
    };
  }
}
