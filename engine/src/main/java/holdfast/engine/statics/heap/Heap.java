package holdfast.engine.statics.heap;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A heap ready to be judged: free bodies and the links that can carry force between them and to the ground.
 * Loads come apart from it, since one heap is asked under many.
 */
public record Heap(List<Body> bodies, List<Link> links) {
  /** The number that stands for everything fixed. */
  public static final int GROUND = -1;

  public Heap {
    bodies = List.copyOf(bodies);
    links = List.copyOf(links);
    for (Link l : links) {
      if (l.a() < 0 || l.a() >= bodies.size() || l.b() < GROUND || l.b() >= bodies.size() || l.a() == l.b()) {
        throw new IllegalArgumentException("link joins bodies " + l.a() + " and " + l.b() + " of " + bodies.size());
      }
    }
  }

  /**
   * A free body.
   *
   * @param centre its centre of mass, metres; wrenches on it are about this point
   * @param sizeM its largest extent, metres
   * @param massKg its mass, to weigh accelerations by; loads are given apart
   */
  public record Body(String name, Vec3 centre, double sizeM, double massKg) {}

  /**
   * A part of a heap that shares no link with the rest: a problem of its own.
   *
   * @param bodies numbers of its bodies in the whole heap, in order
   * @param links places of its links in the whole heap, in order
   * @param heap the part, its bodies and links renumbered in that order
   */
  public record Part(List<Integer> bodies, List<Integer> links, Heap heap) {
    public Part {
      bodies = List.copyOf(bodies);
      links = List.copyOf(links);
    }

    /** The entries of a list over the whole heap's bodies that belong to this part. */
    public <T> List<T> of(List<T> whole) {
      return bodies.stream().map(whole::get).toList();
    }
  }

  /** Whether some link holds by strength, so that forces do not simply grow with the loads. */
  public boolean bonded() {
    return links.stream().anyMatch(l -> !(l instanceof Link.Bearing));
  }

  /** The separate heaps that this one consists of, ordered by their first body. */
  public List<Part> separate() {
    int[] group = new int[bodies.size()];
    for (int i = 0; i < group.length; i++) group[i] = i;
    for (Link l : links) {
      if (l.b() == GROUND) continue;
      int p = find(group, l.a());
      int q = find(group, l.b());
      group[Math.max(p, q)] = Math.min(p, q);
    }
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < group.length; i++) {
      if (find(group, i) != i) continue;
      int root = i;
      List<Integer> in = IntStream.range(0, group.length).filter(b -> find(group, b) == root).boxed().toList();
      parts.add(part(in));
    }
    return parts;
  }

  /** The bodies {@code in} with the links that join only them and the ground. */
  public Part part(List<Integer> in) {
    int[] number = new int[bodies.size()];
    Arrays.fill(number, -2);
    for (int k = 0; k < in.size(); k++) number[in.get(k)] = k;
    List<Integer> which = new ArrayList<>();
    List<Link> kept = new ArrayList<>();
    for (int i = 0; i < links.size(); i++) {
      Link l = links.get(i);
      if (number[l.a()] < 0 || l.b() != GROUND && number[l.b()] < 0) continue;
      which.add(i);
      kept.add(l.between(number[l.a()], l.b() == GROUND ? GROUND : number[l.b()]));
    }
    return new Part(in, which, new Heap(in.stream().map(bodies::get).toList(), kept));
  }

  private static int find(int[] group, int i) {
    int r = i;
    while (group[r] != r) r = group[r];
    return r;
  }
}
