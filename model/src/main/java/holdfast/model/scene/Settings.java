package holdfast.model.scene;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * The values a scene gives to settings; every other setting has its default.
 * Only what differs from nothing is kept, so a file is written back with what it said and no more.
 */
public record Settings(Map<Setting, Double> given) {
  public static final Settings DEFAULT = new Settings(Map.of());

  public Settings {
    Map<Setting, Double> sorted = new EnumMap<>(Setting.class);
    sorted.putAll(given);
    sorted.forEach((s, v) -> {
      if (!s.admits(v)) {
        throw new IllegalArgumentException(s.key() + " must be from " + s.least() + " to " + s.most() + " " + s.unit()
            + ", was " + v);
      }
    });
    given = Collections.unmodifiableMap(sorted);
  }

  public double get(Setting setting) {
    Double v = given.get(setting);
    return v == null ? setting.initial() : v;
  }

  public Settings with(Setting setting, double value) {
    Map<Setting, Double> next = new EnumMap<>(Setting.class);
    next.putAll(given);
    next.put(setting, value);
    return new Settings(next);
  }
}
