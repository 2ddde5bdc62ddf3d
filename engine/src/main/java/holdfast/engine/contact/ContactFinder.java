package holdfast.engine.contact;

import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntPredicate;

/**
 * Finds everything that bears on anything.
 *
 * <p>Upright boxes are sorted along x and swept; what comes near is searched lobe by lobe ({@code Separation}, then
 * {@code PatchFinder}). Two bodies share one patch a pair of lobes at most, since two convex bodies meet in one convex
 * patch. Pairs of fixed bodies are left out. The answer does not depend on the order of the search.
 *
 * <p>The patch is where the gap exceeds the least gap by at most the patch tolerance, also when the lobes overlap: as
 * if they had been parted just so far that they touch. An overlap never makes a patch larger than that.
 */
public final class ContactFinder {
  private ContactFinder() {}

  /** One lobe of one body. */
  private record Piece(int body, int lobe, Polytope shape) {}

  /** What one pair of lobes gave. */
  private record Meeting(PairFit fit, Optional<Contact> contact) {}

  /** All contacts and fits of bodies in place. */
  public static ContactMap find(List<Solid> solids, ContactRules rules) {
    return find(solids, rules, new ContactMap(List.of(), List.of()), i -> true);
  }

  /**
   * The same after some bodies have moved, from what was found before: only their pairs are searched.
   *
   * @param known what was found when the others were where they are
   * @param moved whether the body of this number has moved since
   */
  public static ContactMap find(List<Solid> solids, ContactRules rules, ContactMap known, IntPredicate moved) {
    double[] size = new double[solids.size()];
    double largestJoint = rules.nearM();
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < solids.size(); i++) {
      size[i] = solids.get(i).sizeM();
      largestJoint = Math.max(largestJoint, rules.jointToleranceM(size[i], size[i]));
      List<Hull> lobes = solids.get(i).lobes();
      for (int k = 0; k < lobes.size(); k++) pieces.add(new Piece(i, k, new Polytope(lobes.get(k))));
    }
    List<Contact> contacts = new ArrayList<>();
    Map<Long, PairFit> fits = new TreeMap<>();
    for (Contact c : known.contacts()) if (!moved.test(c.a()) && !moved.test(c.b())) contacts.add(c);
    for (PairFit f : known.fits()) if (!moved.test(f.a()) && !moved.test(f.b())) fits.put(key(f, solids), f);
    for (Piece[] pair : nearPairs(pieces, solids, largestJoint)) {
      if (!moved.test(pair[0].body) && !moved.test(pair[1].body)) continue;
      Meeting m = meet(pair[0], pair[1], size, rules).orElse(null);
      if (m == null) continue;
      m.contact.ifPresent(contacts::add);
      fits.merge(key(m.fit, solids), m.fit, (p, q) -> q.distanceM() < p.distanceM() ? q : p);
    }
    contacts.sort(Comparator.comparingInt(Contact::a).thenComparingInt(Contact::b)
        .thenComparingInt(Contact::lobeA).thenComparingInt(Contact::lobeB));
    return new ContactMap(contacts, List.copyOf(fits.values()));
  }

  private static long key(PairFit f, List<Solid> solids) {
    return (long) f.a() * solids.size() + f.b();
  }

  /** Pairs whose boxes come near, ordered by bodies and lobes. */
  private static List<Piece[]> nearPairs(List<Piece> pieces, List<Solid> solids, double marginM) {
    List<Piece> sorted = new ArrayList<>(pieces);
    sorted.sort(Comparator.<Piece>comparingDouble(p -> p.shape.low[0])
        .thenComparingInt(Piece::body).thenComparingInt(Piece::lobe));
    List<Piece[]> pairs = new ArrayList<>();
    List<Piece> open = new ArrayList<>();
    for (Piece p : sorted) {
      open.removeIf(o -> o.shape.high[0] + marginM < p.shape.low[0]);
      for (Piece o : open) {
        if (o.body == p.body || solids.get(o.body).fixed() && solids.get(p.body).fixed()) continue;
        if (o.shape.boxNear(p.shape, marginM)) pairs.add(o.body < p.body ? new Piece[] {o, p} : new Piece[] {p, o});
      }
      open.add(p);
    }
    pairs.sort(Comparator.<Piece[]>comparingInt(p -> p[0].body).thenComparingInt(p -> p[1].body)
        .thenComparingInt(p -> p[0].lobe).thenComparingInt(p -> p[1].lobe));
    return pairs;
  }

  private static Optional<Meeting> meet(Piece p, Piece q, double[] size, ContactRules rules) {
    double joint = rules.jointToleranceM(size[p.body], size[q.body]);
    double patch = rules.patchToleranceM(size[p.body], size[q.body]);
    double near = Math.max(joint, rules.nearM());
    Separation s = Separation.of(p.shape, q.shape, near, Tolerances.FACE_PREFERENCE_PATCHES * patch);
    if (s == null) return Optional.empty();
    Vec3 normal = s.normals().get(0);
    List<Vec3> corners = List.of();
    if (s.distanceM() <= joint) {
      double height = Math.min(joint, s.distanceM() + patch);
      for (Vec3 n : s.normals()) {
        corners = PatchFinder.patch(p.shape, q.shape, n, height, Tolerances.SLIVER_PATCHES * patch);
        if (!corners.isEmpty()) {
          normal = n;
          break;
        }
      }
    }
    Optional<Contact> contact = Optional.empty();
    if (!corners.isEmpty()) {
      requireOutOfBIntoA(p.shape, q.shape, normal, s.distanceM(), patch);
      contact = Optional.of(new Contact(p.body, q.body, p.lobe, q.lobe, normal, corners, s.distanceM()));
    }
    return Optional.of(new Meeting(fit(p, q, s, normal, corners, joint, rules), contact));
  }

  private static PairFit fit(
      Piece p, Piece q, Separation s, Vec3 normal, List<Vec3> corners, double joint, ContactRules rules) {
    Vec3 onA = s.onA();
    Vec3 onB = s.onB();
    if (onA == null || !corners.isEmpty()) {
      Vec3 middle = corners.isEmpty() ? p.shape.deepest(normal) : mean(corners);
      onA = middle.plusTimes(s.distanceM() / 2, normal);
      onB = middle.plusTimes(-s.distanceM() / 2, normal);
    }
    PairFit.Kind kind = s.distanceM() < -rules.overlapM() ? PairFit.Kind.OVERLAPS
        : s.distanceM() <= joint ? PairFit.Kind.TOUCHES : PairFit.Kind.HOVERS;
    return new PairFit(p.body, q.body, p.lobe, q.lobe, s.distanceM(), kind, normal, onA, onB);
  }

  private static Vec3 mean(List<Vec3> points) {
    Vec3 sum = Vec3.ZERO;
    for (Vec3 p : points) sum = sum.plus(p);
    return sum.times(1.0 / points.size());
  }

  /**
   * A sign once went wrong in another code and nothing noticed. Along the normal {@code a} lies above {@code b}: parting
   * them that way takes no more than the overlap.
   */
  private static void requireOutOfBIntoA(Polytope a, Polytope b, Vec3 normal, double distanceM, double patchM) {
    double forward = a.least(normal) - b.reach(normal);
    if (forward < distanceM - patchM - 1e-9 * Math.min(a.sizeM, b.sizeM)) {
      throw new IllegalStateException("contact normal does not part the bodies: " + forward + " m of " + distanceM + " m");
    }
  }
}
