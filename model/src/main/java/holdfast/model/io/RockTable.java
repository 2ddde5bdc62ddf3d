package holdfast.model.io;

import holdfast.model.scene.Rock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The rocks of a file by name, also those whose other parts were refused, so that naming them is no further problem. */
final class RockTable {
  private final Map<String, Optional<Rock>> byName = new LinkedHashMap<>();

  /** False when the name is taken. */
  boolean add(String name, Optional<Rock> rock) {
    return byName.putIfAbsent(name, rock) == null;
  }

  boolean knows(String name) {
    return byName.containsKey(name);
  }

  Optional<Rock> rock(String name) {
    return byName.getOrDefault(name, Optional.empty());
  }

  List<Rock> rocks() {
    return byName.values().stream().flatMap(Optional::stream).toList();
  }

  /** What would be right in place of a name that no rock has. */
  String hint(String name) {
    if (byName.isEmpty()) return "must be the name of a rock, and there are none in $.rocks";
    List<String> names = new ArrayList<>(byName.keySet());
    return "must be the name of a rock in $.rocks" + Keys.nearest(name, names)
        .map(n -> "; did you mean " + JsonLayout.quoted(n) + "?").orElse("");
  }
}
