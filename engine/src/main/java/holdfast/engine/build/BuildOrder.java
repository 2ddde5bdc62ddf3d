package holdfast.engine.build;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.TreeSet;

/**
 * An order of placing in which every stage stands, dry or, at the end, after filling, with uncured joints carrying nothing; or
 * the one that asks for the least help.
 *
 * <p>The problem: a shortest path over sets of placed rocks. A step places one rock whose supports are in place. A stage
 * that does not stand must be held: by hand for at most {@value #MOST_HELD} stages in a row, or by a prop until the joints
 * made so far have set, after which these bear. The cost counts such waits first, then stages held, then pairs of which the
 * one of a later rank comes first: what stands on the floor goes before the sand and what stands on it, living rock last.
 * Among equal costs the search goes deep first, base before upper rock, one module after the other, so that when a plain
 * order exists it is found with one question a stage. A stage is asked only when the search comes to it (lazy evaluation, as
 * in lazy A*), and each set once.
 *
 * <p>A stage that is held only to be propped later is propped from the start: what the next rock does not relieve, hands
 * cannot hold.
 *
 * <p>The order found has the least cost when the search ended within its questions; otherwise it says so.
 */
public final class BuildOrder {
  /** Stages in a row that a pair of hands can hold what would fall; common practice. */
  static final int MOST_HELD = 2;

  private static final int PROP = 1_000_000;
  private static final int HAND = 1_000;

  private final Supports supports;
  private final List<Joint> joints;
  private final int[] rank;
  private final BitSet onSand = new BitSet();
  private final BitSet leftOut = new BitSet();
  private final BitSet wet = new BitSet();
  private final int all;
  private final int[] module;
  private final Stander stander;
  private final int mostQuestions;
  private final Map<Asked, Boolean> asked = new HashMap<>();

  private BuildOrder(Task task, Stander stander, int mostQuestions) {
    supports = task.supports;
    joints = task.joints;
    rank = task.rank.stream().mapToInt(i -> i).toArray();
    module = task.module.stream().mapToInt(i -> i).toArray();
    task.onSand.forEach(onSand::set);
    task.leftOut.forEach(leftOut::set);
    task.wet.forEach(wet::set);
    all = supports.rocks() - leftOut.cardinality();
    this.stander = stander;
    this.mostQuestions = mostQuestions;
  }

  /**
   * What is to be built. Its rocks may be pieces of several rocks fixed together before.
   *
   * @param supports what rests on what
   * @param joints to be fixed on the way
   * @param rank for each rock: those of a lower rank are better placed before those of a higher
   * @param module for each rock a number that rocks share which are better placed one after the other
   * @param onSand rocks that are placed on sand: it is laid before the first of them
   * @param leftOut rocks that are not placed here; nothing else may rest on them
   * @param wet rocks that can be set after filling: what of them comes at the end, is, and is judged in water
   */
  public record Task(
      Supports supports, List<Joint> joints, List<Integer> rank, List<Integer> module, Set<Integer> onSand,
      Set<Integer> leftOut, Set<Integer> wet) {
    public Task {
      wet = Collections.unmodifiableSet(new TreeSet<>(wet));
      leftOut = Collections.unmodifiableSet(new TreeSet<>(leftOut));
      joints = List.copyOf(joints);
      rank = List.copyOf(rank);
      module = List.copyOf(module);
      onSand = Collections.unmodifiableSet(new TreeSet<>(onSand));
    }
  }

  /** A joint to be fixed: its number among the scene's joints, and the two rocks; the same twice for one inside a piece. */
  public record Joint(int number, int a, int b) {}

  /** What a stage needs until the next. */
  public enum Help { NONE, HAND, PROP }

  /**
   * One stage: a rock is placed.
   *
   * @param rock its number
   * @param joints numbers of the joints made now
   * @param stands the heap stays without help
   * @param help what holds it when it does not
   * @param until the stage, counted from 0, after which the help may go; -1 when none was found that relieves it
   * @param curedHere after this stage the joints made so far are left to set before going on
   * @param bearing numbers of the joints that have set before this stage
   */
  public record Stage(
      int rock, List<Integer> joints, boolean stands, Help help, int until, boolean curedHere, Set<Integer> bearing) {
    public Stage {
      joints = List.copyOf(joints);
      bearing = Collections.unmodifiableSet(new TreeSet<>(bearing));
    }
  }

  /**
   * The order found.
   *
   * @param stages in order
   * @param complete every stage stands or is held, and the whole stands at the end; otherwise the last stages do not stand
   *     even with all joints set
   * @param least no order asks for less help
   * @param questions number of stages that were judged
   */
  public record Order(List<Stage> stages, boolean complete, boolean least, int questions) {
    public Order {
      stages = List.copyOf(stages);
    }

    /** Every stage stands by itself. */
    public boolean unaided() {
      return complete && stages.stream().allMatch(Stage::stands);
    }
  }

  /**
   * Searches the order.
   *
   * @param living for each rock whether it is living rock
   * @param module for each rock the number of its module
   * @param mostQuestions stages to be judged at most
   */
  public static Order search(
      Supports supports, List<Joint> joints, List<Boolean> living, List<Integer> module, Stander stander, int mostQuestions) {
    List<Integer> rank = living.stream().map(l -> l ? 1 : 0).toList();
    return search(new Task(supports, joints, rank, module, Set.of(), Set.of(), Set.of()), stander, mostQuestions);
  }

  /** Searches the order of a task. */
  public static Order search(Task task, Stander stander, int mostQuestions) {
    return new BuildOrder(task, stander, mostQuestions).run();
  }

  /** A partial order: what is placed, what has set, and how it came about. */
  private record Node(
      BitSet placed, BitSet cured, int cost, int held, int rock, Node from, boolean judged, boolean stands, boolean prop,
          int number) {
    int depth() {
      return placed.cardinality();
    }
  }

  private Order run() {
    int n = all;
    PriorityQueue<Node> queue = new PriorityQueue<>(Comparator.comparingInt(Node::cost)
        .thenComparing(Comparator.comparingInt(Node::depth).reversed())
        .thenComparingInt(Node::number));
    // Two nodes that agree in all of this have the same future.
    record Key(BitSet placed, BitSet cured, int held) {}

    Set<Key> done = new HashSet<>();
    int made = 0;
    Node deepest = new Node(new BitSet(), new BitSet(), 0, 0, -1, null, true, true, false, made++);
    queue.add(deepest);
    while (!queue.isEmpty()) {
      Node node = queue.poll();
      if (!node.judged) {
        if (asked.size() >= mostQuestions) return finish(deepest, false);
        if (stays(node, node.cured)) {
          queue.add(new Node(node.placed, node.cured, node.cost, 0, node.rock, node.from, true, true, false, node.number));
          continue;
        }
        if (node.held < MOST_HELD && node.depth() < n) {
          queue.add(new Node(
              node.placed, node.cured, node.cost + HAND, node.held + 1, node.rock, node.from, true, false, false, node.number));
        }
        BitSet set = jointsOf(node.placed);
        if (!set.equals(node.cured) && stays(node, set)) {
          queue.add(new Node(node.placed, set, node.cost + PROP, 0, node.rock, node.from, true, false, true, node.number));
        }
        continue;
      }
      if (!done.add(new Key(node.placed, node.cured, node.held))) continue;
      if (node.depth() > deepest.depth()) deepest = node;
      if (node.depth() == n) return new Order(stages(node), true, true, asked.size());
      for (int rock : next(node)) {
        BitSet placed = (BitSet) node.placed.clone();
        placed.set(rock);
        int late = (int) node.placed.stream().filter(p -> rank[p] > rank[rock]).count();
        queue.add(new Node(placed, node.cured, node.cost + late, node.held, rock, node, false, false, false, made++));
      }
    }
    return finish(deepest, true);
  }

  /** Goes on from the deepest sound stage in the plain order, telling truly what does not stand. */
  private Order finish(Node deepest, boolean searched) {
    Node node = deepest;
    while (node.depth() < all) {
      int rock = next(node).get(0);
      BitSet placed = (BitSet) node.placed.clone();
      placed.set(rock);
      boolean stands = stays(placed, rock, node.cured);
      BitSet set = jointsOf(placed);
      boolean prop = !stands && stays(placed, rock, set);
      node = new Node(placed, prop ? set : node.cured, 0, stands || prop ? 0 : node.held + 1, rock, node, true, stands, prop, 0);
    }
    boolean complete = true;
    for (Node at = node; at != null; at = at.from) complete &= at.stands || at.prop || at.held <= MOST_HELD;
    complete &= node.stands || node.prop;
    return new Order(stages(node), complete, searched && complete, asked.size());
  }

  /** Rocks that may come next, the plainest choice first. */
  private List<Integer> next(Node node) {
    List<Integer> out = new ArrayList<>();
    int n = supports.rocks();
    for (int i = 0; i < n; i++) {
      if (!node.placed.get(i) && !leftOut.get(i) && supports.below().get(i).stream().allMatch(node.placed::get)) out.add(i);
    }
    if (out.isEmpty()) {
      // Rocks that rest on each other in a ring: any may be the first.
      for (int i = 0; i < n; i++) if (!node.placed.get(i) && !leftOut.get(i)) out.add(i);
    }
    int current = node.rock < 0 ? -1 : module[node.rock];
    out.sort(Comparator.<Integer>comparingInt(i -> rank[i])
        .thenComparingInt(i -> module[i] == current ? 0 : 1)
        .thenComparingDouble(i -> Math.rint(supports.bottomM().get(i) * 200))
        .thenComparingInt(i -> i));
    return out;
  }

  private BitSet jointsOf(BitSet placed) {
    BitSet out = new BitSet();
    for (Joint j : joints) if (placed.get(j.a()) && placed.get(j.b())) out.set(j.number());
    return out;
  }

  private record Asked(BitSet placed, BitSet cured, boolean filled) {}

  private boolean stays(Node node, BitSet cured) {
    return stays(node.placed, node.rock, cured);
  }

  private boolean stays(BitSet placed, int last, BitSet cured) {
    Asked key = new Asked((BitSet) placed.clone(), (BitSet) cured.clone(), afterFilling(placed, last));
    Boolean known = asked.get(key);
    if (known == null) {
      Stander judge = placed.intersects(onSand) ? stander.withSand() : stander;
      known = (key.filled ? judge.filled() : judge).stays(asSet(placed), asSet(cured));
      asked.put(key, known);
    }
    return known;
  }

  /** The tank is filled once nothing is left to place but what can be set after that. */
  private boolean afterFilling(BitSet placed, int last) {
    if (last < 0 || !wet.get(last)) return false;
    for (int i = 0; i < supports.rocks(); i++) if (!placed.get(i) && !leftOut.get(i) && !wet.get(i)) return false;
    return true;
  }

  private static Set<Integer> asSet(BitSet bits) {
    Set<Integer> out = new TreeSet<>();
    bits.stream().forEach(out::add);
    return Collections.unmodifiableSet(out);
  }

  private List<Stage> stages(Node last) {
    List<Node> nodes = new ArrayList<>();
    for (Node node = last; node.from != null; node = node.from) nodes.add(node);
    Collections.reverse(nodes);
    List<Stage> out = new ArrayList<>();
    for (int i = 0; i < nodes.size(); i++) {
      Node node = nodes.get(i);
      BitSet before = node.from.placed;
      List<Integer> made = new ArrayList<>();
      for (Joint j : joints) {
        boolean now = j.a() == node.rock && (before.get(j.b()) || j.b() == j.a()) || j.b() == node.rock && before.get(j.a());
        if (now) made.add(j.number());
      }
      int until = i;
      while (until < nodes.size() && !nodes.get(until).stands && !nodes.get(until).prop) until++;
      boolean relieved = until < nodes.size();
      Help help = node.stands ? Help.NONE : relieved && nodes.get(until).prop ? Help.PROP : Help.HAND;
      out.add(new Stage(node.rock, made, node.stands, help, relieved ? until : -1, node.prop, asSet(node.from.cured)));
    }
    return out;
  }
}
