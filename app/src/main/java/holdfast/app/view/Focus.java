package holdfast.app.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which control the keyboard is on, and how it walks from one to the next: by the places where the controls were drawn in
 * the latest frame, panel after panel in the order of drawing. A list or a row of choices is one stop; arrows walk within it.
 * Over an open sheet only its own controls are reached.
 */
final class Focus {
  /** The panel of the sheets. */
  static final String SHEET = "sheet";

  /** How much more a step aside counts than a step ahead, when an arrow key looks for the next control. */
  private static final double ASIDE = 3;

  /** Frames that the panels' library takes to open a field for typing. */
  private static final int OPENING_FRAMES = 3;

  /** What keys do on a control. */
  enum Kind {
    /** Pressed with Enter or Space. */
    PRESS,
    /** Chosen as soon as an arrow key comes to it, pressed with Enter or Space. */
    CHOICE,
    /** Typed into. */
    FIELD,
    /** Moved with the left and the right arrow. */
    LEVER
  }

  /**
   * A control that the keyboard reaches.
   *
   * @param id one of its kind in the window
   * @param panel where it is
   * @param group the list or row that it belongs to; empty when it stands alone
   * @param on it is the one in force of its group
   */
  record Stop(String id, String panel, String group, boolean on, Kind kind, Ui.Place place) {}

  private final Map<String, String> latestOfGroup = new LinkedHashMap<>();
  private List<Stop> stops = List.of();
  private List<Stop> coming = new ArrayList<>();
  private Optional<Stop> at = Optional.empty();
  private Optional<Stop> beforeSheet = Optional.empty();
  /** Where the pointer pressed last: the walk begins there. */
  private Optional<Stop> touched = Optional.empty();
  private Optional<String> pressed = Optional.empty();
  private Optional<String> left = Optional.empty();
  private int pulled;
  private boolean arrived;
  private int opening;

  // -- drawing ------------------------------------------------------------------------------------------------------

  void newFrame() {
    coming = new ArrayList<>();
  }

  /** The control of the present frame that {@code words} name; those with the same words in a panel are told apart. */
  String id(String panel, String words) {
    String id = panel + "/" + words;
    int n = 1;
    while (drawn(n == 1 ? id : id + " " + n)) n++;
    return n == 1 ? id : id + " " + n;
  }

  private boolean drawn(String id) {
    return coming.stream().anyMatch(s -> s.id.equals(id));
  }

  /** A control was drawn; true when the keyboard pressed it. */
  boolean add(Stop stop) {
    coming.add(stop);
    return pressed.filter(stop.id::equals).isPresent();
  }

  /** The mark belongs on it. */
  boolean on(String id) {
    return at.filter(s -> s.id.equals(id)).isPresent();
  }

  /** The keyboard has just come to it: it has to come in sight, and a field is opened. */
  boolean comesTo(String id) {
    return arrived && on(id);
  }

  /** The keyboard has just left this field: what was typed counts. */
  boolean leaves(String id) {
    return left.filter(id::equals).isPresent();
  }

  /** Steps that a lever was moved by. */
  int pulled(String id) {
    return on(id) ? pulled : 0;
  }

  /** All controls are drawn. {@code steady}: nothing is being worked out, so what is not there will not come back. */
  void endFrame(boolean steady) {
    boolean sheetBefore = stops.stream().anyMatch(s -> s.panel.equals(SHEET));
    boolean sheet = coming.stream().anyMatch(s -> s.panel.equals(SHEET));
    stops = List.copyOf(coming);
    pressed = Optional.empty();
    left = Optional.empty();
    pulled = 0;
    arrived = false;
    if (opening > 0) opening--;
    if (sheet && !sheetBefore) {
      beforeSheet = at;
      at = Optional.empty();
      touched = touched.filter(s -> s.panel.equals(SHEET));
    }
    if (!sheet && sheetBefore) at = beforeSheet;
    // Its place and state as they are now; what is gone hands on to what is nearest in its panel.
    at = at.flatMap(s -> stops.stream().filter(o -> o.id.equals(s.id)).findFirst()
        .or(() -> steady ? nearest(s) : Optional.of(s)));
  }

  private Optional<Stop> nearest(Stop gone) {
    return stops.stream().filter(s -> s.panel.equals(gone.panel)).min(Comparator.comparingDouble(s ->
        Math.hypot(s.place.x() - gone.place.x(), s.place.y() - gone.place.y())));
  }

  // -- keys ---------------------------------------------------------------------------------------------------------

  Optional<Stop> at() {
    return at;
  }

  /** A field is about to be opened: letters are meant for it. */
  boolean awaitsText() {
    return opening > 0;
  }

  /** The next stop, or the one before. */
  void walk(boolean back) {
    List<Stop> all = walked();
    if (all.isEmpty()) return;
    Optional<Stop> from = at.or(() -> touched);
    int i = from.map(f -> index(all, f)).orElse(-1);
    int next = i < 0 ? (back ? all.size() - 1 : 0) : Math.floorMod(i + (back ? -1 : 1), all.size());
    go(from, all.get(next));
  }

  /** The first stop of the next panel, or of the one before. */
  void walkPanels(boolean back) {
    List<Stop> all = walked();
    List<String> panels = all.stream().map(Stop::panel).distinct().toList();
    if (panels.isEmpty()) return;
    Optional<Stop> from = at.or(() -> touched);
    int i = from.map(f -> panels.indexOf(f.panel)).orElse(-1);
    int next = i < 0 ? (back ? panels.size() - 1 : 0) : Math.floorMod(i + (back ? -1 : 1), panels.size());
    go(from, all.stream().filter(s -> s.panel.equals(panels.get(next))).findFirst().orElseThrow());
  }

  /** The nearest control to that side, within the list or row or else within the panel; a lever is moved along. */
  void arrow(int right, int down) {
    if (at.isEmpty()) return;
    Stop from = at.get();
    if (from.kind == Kind.LEVER && right != 0) {
      pulled += right;
      return;
    }
    reached().filter(s -> !s.id.equals(from.id) && s.panel.equals(from.panel) && s.group.equals(from.group))
        .filter(s -> ahead(from.place, s.place, right, down) >= 0)
        .min(Comparator.comparingDouble(s -> ahead(from.place, s.place, right, down) + ASIDE * aside(from.place, s.place, right)))
        .ifPresent(s -> {
          go(at, s);
          if (s.kind == Kind.CHOICE) press();
        });
  }

  /** The first or the last of the list or row. */
  void end(boolean last) {
    if (at.isEmpty() || at.get().group.isEmpty()) return;
    List<Stop> group = reached().filter(s -> s.group.equals(at.get().group)).toList();
    if (group.isEmpty()) return;
    Stop to = group.get(last ? group.size() - 1 : 0);
    go(at, to);
    if (to.kind == Kind.CHOICE) press();
  }

  /** Does what a click does; a field is opened for typing. */
  void press() {
    if (at.isEmpty()) return;
    if (at.get().kind == Kind.FIELD) go(Optional.empty(), at.get());
    else pressed = at.map(Stop::id);
  }

  /** The mark goes; keys are for the picture again. */
  void letGo() {
    touched = at;
    at = Optional.empty();
  }

  /** The pointer pressed here: the mark goes, and the walk begins at what lies there. */
  void touch(double x, double y) {
    at = Optional.empty();
    touched = reached().filter(s -> x >= s.place.x0() && x < s.place.x1() && y >= s.place.y0() && y < s.place.y1())
        .reduce((first, second) -> second);
  }

  /** The walk begins at the control with these words, without a mark. */
  void beginAt(Stop stop) {
    touched = Optional.of(stop);
  }

  private void go(Optional<Stop> from, Stop to) {
    left = from.filter(s -> s.kind == Kind.FIELD).map(Stop::id);
    at = Optional.of(to);
    arrived = true;
    if (to.kind == Kind.FIELD) opening = OPENING_FRAMES;
    if (!to.group.isEmpty()) latestOfGroup.put(to.group, to.id);
  }

  private java.util.stream.Stream<Stop> reached() {
    boolean sheet = stops.stream().anyMatch(s -> s.panel.equals(SHEET));
    return stops.stream().filter(s -> !sheet || s.panel.equals(SHEET));
  }

  /** One stop of every list or row, and whatever stands alone. */
  private List<Stop> walked() {
    List<Stop> all = reached().toList();
    return all.stream().filter(s -> s.group.isEmpty() || s.id.equals(standing(all, s.group).id)).toList();
  }

  /** Where one enters a list or row: where one is in it, what is in force, where one was last, its first. */
  private Stop standing(List<Stop> all, String group) {
    List<Stop> members = all.stream().filter(s -> s.group.equals(group)).toList();
    return members.stream().filter(s -> on(s.id)).findFirst()
        .or(() -> members.stream().filter(Stop::on).findFirst())
        .or(() -> members.stream().filter(s -> s.id.equals(latestOfGroup.get(group))).findFirst())
        .orElse(members.get(0));
  }

  /** Where a stop, or the list that it belongs to, comes in the walk. */
  private static int index(List<Stop> all, Stop stop) {
    for (int i = 0; i < all.size(); i++) {
      Stop s = all.get(i);
      if (s.id.equals(stop.id) || !s.group.isEmpty() && s.group.equals(stop.group)) return i;
    }
    return -1;
  }

  /** Pixels from one to the other that way; negative when it is not there. */
  private static double ahead(Ui.Place from, Ui.Place to, int right, int down) {
    if (right != 0) return right > 0 ? to.x() - from.x() - 1 : from.x() - to.x() - 1;
    return down > 0 ? to.y() - from.y() - 1 : from.y() - to.y() - 1;
  }

  private static double aside(Ui.Place from, Ui.Place to, int right) {
    double gap = right != 0 ? Math.max(to.y0() - from.y1(), from.y0() - to.y1())
        : Math.max(to.x0() - from.x1(), from.x0() - to.x1());
    return Math.max(0, gap);
  }
}
