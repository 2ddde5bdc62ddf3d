package holdfast.engine.contact;

import holdfast.model.geom.Vec3;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

/**
 * Finds everything that bears on anything.
 *
 * <p>Upright boxes are sorted along x and swept; what comes near is searched lobe by lobe ({@code Separation}, then
 * {@code PatchFinder}). Two bodies share one patch a pair of lobes at most, since two convex bodies meet in one convex
 * patch. Pairs of fixed bodies are left out. The answer does not depend on the order of the search; after a move {@link
 * ContactSearch} seeks only the pairs of what has moved.
 *
 * <p>The patch is where the gap exceeds the least gap by at most the patch tolerance, also when the lobes overlap: as
 * if they had been parted just so far that they touch. An overlap never makes a patch larger than that.
 */
public final class ContactFinder {
  /** Where fewer than one piece in so many has moved, each is held against all others without sorting. */
  private static final int FEW = 8;

  private ContactFinder() {}

  /** One lobe of one body. */
  private record Piece(int body, int lobe, Laid of, Polytope shape) {}

  /** What one pair of lobes gave. */
  private record Meeting(PairFit fit, Optional<Contact> contact) {}

  /** All contacts and fits of bodies in place. */
  public static ContactMap find(List<Solid> solids, ContactRules rules) {
    return ContactSearch.of(solids, rules).found();
  }

  /** The same of bodies laid out. */
  static ContactMap all(List<Laid> bodies, ContactRules rules) {
    return found(bodies, rules, swept(pieces(bodies), marginM(bodies, rules)), new ContactMap(List.of(), List.of()));
  }

  /**
   * The same where the contacts and fits of some pairs are known: sought are those of bodies that have moved.
   *
   * @param known all contacts and fits of pairs that have not
   */
  static ContactMap around(List<Laid> bodies, ContactRules rules, ContactMap known, IntPredicate moved) {
    List<Piece> pieces = pieces(bodies);
    List<Piece> some = pieces.stream().filter(p -> moved.test(p.body)).toList();
    double margin = marginM(bodies, rules);
    // Sorting pays where many have moved.
    if (some.size() * FEW > pieces.size()) {
      List<Piece[]> pairs = swept(pieces, margin);
      pairs.removeIf(p -> !moved.test(p[0].body) && !moved.test(p[1].body));
      return found(bodies, rules, pairs, known);
    }
    List<Piece[]> pairs = new ArrayList<>();
    for (Piece p : some) {
      for (Piece o : pieces) {
        // Two that have moved meet once.
        if (o.body < p.body && moved.test(o.body)) continue;
        if (near(p, o, margin)) pairs.add(ordered(p, o));
      }
    }
    return found(bodies, rules, pairs, known);
  }

  private static ContactMap found(List<Laid> bodies, ContactRules rules, List<Piece[]> pairs, ContactMap known) {
    pairs.sort(Comparator.<Piece[]>comparingInt(p -> p[0].body).thenComparingInt(p -> p[1].body)
        .thenComparingInt(p -> p[0].lobe).thenComparingInt(p -> p[1].lobe));
    List<Contact> contacts = new ArrayList<>(known.contacts());
    List<PairFit> fits = new ArrayList<>(known.fits());
    PairFit last = null;
    for (Piece[] pair : pairs) {
      Meeting m = meet(pair[0], pair[1], rules).orElse(null);
      if (m == null) continue;
      m.contact.ifPresent(contacts::add);
      // Of several lobes the nearest pair counts, of equally near ones the first.
      boolean samePair = last != null && last.a() == m.fit.a() && last.b() == m.fit.b();
      if (samePair && last.distanceM() <= m.fit.distanceM()) continue;
      if (samePair) fits.remove(fits.size() - 1);
      last = m.fit;
      fits.add(last);
    }
    contacts.sort(Comparator.comparingInt(Contact::a).thenComparingInt(Contact::b)
        .thenComparingInt(Contact::lobeA).thenComparingInt(Contact::lobeB));
    fits.sort(Comparator.comparingInt(PairFit::a).thenComparingInt(PairFit::b));
    return new ContactMap(contacts, fits);
  }

  private static List<Piece> pieces(List<Laid> bodies) {
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < bodies.size(); i++) {
      Laid body = bodies.get(i);
      for (int k = 0; k < body.lobes().size(); k++) pieces.add(new Piece(i, k, body, body.lobes().get(k)));
    }
    return pieces;
  }

  /** No pair is farther apart than this and of interest. */
  private static double marginM(List<Laid> bodies, ContactRules rules) {
    double largest = rules.nearM();
    for (Laid b : bodies) largest = Math.max(largest, rules.jointToleranceM(b.sizeM(), b.sizeM()));
    return largest;
  }

  /** Pairs whose boxes come near. */
  private static List<Piece[]> swept(List<Piece> pieces, double marginM) {
    List<Piece> sorted = new ArrayList<>(pieces);
    sorted.sort(Comparator.<Piece>comparingDouble(p -> p.shape.low[0])
        .thenComparingInt(Piece::body).thenComparingInt(Piece::lobe));
    List<Piece[]> pairs = new ArrayList<>();
    List<Piece> open = new ArrayList<>();
    for (Piece p : sorted) {
      open.removeIf(o -> o.shape.high[0] + marginM < p.shape.low[0]);
      for (Piece o : open) if (near(o, p, marginM)) pairs.add(ordered(o, p));
      open.add(p);
    }
    return pairs;
  }

  private static boolean near(Piece p, Piece q, double marginM) {
    return p.body != q.body && !(p.of.fixed() && q.of.fixed()) && p.shape.boxNear(q.shape, marginM);
  }

  private static Piece[] ordered(Piece p, Piece q) {
    return p.body < q.body ? new Piece[] {p, q} : new Piece[] {q, p};
  }

  private static Optional<Meeting> meet(Piece p, Piece q, ContactRules rules) {
    double joint = rules.jointToleranceM(p.of.sizeM(), q.of.sizeM());
    double patch = rules.patchToleranceM(p.of.sizeM(), q.of.sizeM());
    double near = Math.max(joint, rules.nearM());
    Separation s = Separation.of(p.shape, q.shape, near, Tolerances.FACE_PREFERENCE_PATCHES * patch);
    if (s == null) return Optional.empty();
    Vec3 normal = s.normals().get(0);
    List<Vec3> corners = List.of();
    if (s.distanceM() <= joint) {
      double height = Math.min(joint, s.distanceM() + patch);
      // Rules that reach far, as for what a paste fills, do not make a broad strip an edge.
      double fine = Math.min(patch, ContactRules.DEFAULT.patchToleranceM(p.of.sizeM(), q.of.sizeM()));
      for (Vec3 n : s.normals()) {
        corners = PatchFinder.patch(p.shape, q.shape, n, height, Tolerances.SLIVER_PATCHES * fine);
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
