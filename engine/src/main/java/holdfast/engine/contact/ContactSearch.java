package holdfast.engine.contact;

import java.util.ArrayList;
import java.util.List;

/**
 * A search for all that bears on anything, with what the next one can take from it: bodies laid out, contacts and fits
 * found. After some bodies have moved only their pairs are sought; what is found is what a search of everything finds, to
 * the last bit, as a pair's contact depends on the two bodies alone. Immutable.
 */
public final class ContactSearch {
  private final ContactRules rules;
  private final List<Laid> bodies;
  private final ContactMap found;

  private ContactSearch(ContactRules rules, List<Laid> bodies, ContactMap found) {
    this.rules = rules;
    this.bodies = bodies;
    this.found = found;
  }

  /** Searches everything. */
  public static ContactSearch of(List<Solid> solids, ContactRules rules) {
    List<Laid> bodies = solids.stream().map(Laid::of).toList();
    return new ContactSearch(rules, bodies, ContactFinder.all(bodies, rules));
  }

  /**
   * Searches anew where something is not as it was.
   *
   * @param solids all bodies as they are now
   * @param carried which of them are what and where they were in this search
   */
  public ContactSearch after(List<Solid> solids, Carried carried) {
    List<Laid> now = new ArrayList<>(solids.size());
    for (int i = 0; i < solids.size(); i++) {
      now.add(carried.has(i) ? bodies.get(carried.before(i)) : Laid.of(solids.get(i)));
    }
    List<Contact> contacts = new ArrayList<>(found.contacts().size());
    for (Contact c : found.contacts()) {
      int a = carried.now(c.a());
      int b = carried.now(c.b());
      if (a != Carried.NONE && b != Carried.NONE) contacts.add(c.between(a, b));
    }
    List<PairFit> fits = new ArrayList<>(found.fits().size());
    for (PairFit f : found.fits()) {
      int a = carried.now(f.a());
      int b = carried.now(f.b());
      if (a != Carried.NONE && b != Carried.NONE) fits.add(f.between(a, b));
    }
    return new ContactSearch(rules, now, ContactFinder.around(now, rules, new ContactMap(contacts, fits), i -> !carried.has(i)));
  }

  /** What was found. */
  public ContactMap found() {
    return found;
  }

  /** {@link Solid#sizeM} of a body. */
  public double sizeM(int body) {
    return bodies.get(body).sizeM();
  }
}
