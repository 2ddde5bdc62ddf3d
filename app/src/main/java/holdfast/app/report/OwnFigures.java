package holdfast.app.report;

import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.List;
import java.util.Map;

/**
 * The figures of a judgement that a scene sets itself. What a verdict is worth depends on them: a heap that passes with twice
 * the friction of wet stone is not one that stands, so every report names them beside what is usual. Prices and what is
 * bought judge nothing and are left out.
 */
public final class OwnFigures {
  private static final List<String> NO_JUDGEMENT = List.of("price.", "supply.");

  private OwnFigures() {}

  /**
   * One of them.
   *
   * @param setting which
   * @param value what the scene says, in the file's unit
   */
  public record Own(Setting setting, double value) {
    /** "friction.rock_rock 0.9 (usual 0.6)". */
    public String words(Units units) {
      return setting.key() + " " + SettingUnits.shown(setting, value, units) + " (usual "
          + SettingUnits.shown(setting, setting.initial(), units) + ")" + unit(units);
    }

    /** A space and the unit's sign; nothing where the figure has none. */
    private String unit(Units units) {
      return setting.unit().isEmpty() ? "" : " " + SettingUnits.sign(setting, units);
    }

    /** What it is, without where the default comes from. */
    public String about() {
      return setting.about().split("[:;]", 2)[0];
    }
  }

  /** Those that differ from the defaults, in the table's order. */
  public static List<Own> of(Settings settings) {
    return settings.given().entrySet().stream()
        .filter(e -> e.getValue() != e.getKey().initial())
        .filter(e -> NO_JUDGEMENT.stream().noneMatch(e.getKey().key()::startsWith))
        .map((Map.Entry<Setting, Double> e) -> new Own(e.getKey(), e.getValue())).toList();
  }

  /** "1 figure of its own", "3 figures of its own". */
  public static String count(List<Own> own) {
    return own.size() + (own.size() == 1 ? " figure" : " figures") + " of its own";
  }
}
