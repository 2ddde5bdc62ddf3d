package holdfast.engine.contact;

import java.util.List;

/**
 * Everything that bears on anything.
 *
 * @param contacts all patches, ordered by bodies, then lobes
 * @param fits one entry a pair of bodies that bear on each other or nearly do, ordered by bodies
 */
public record ContactMap(List<Contact> contacts, List<PairFit> fits) {
  public ContactMap {
    contacts = List.copyOf(contacts);
    fits = List.copyOf(fits);
  }

  /** The patches between two bodies, whichever is named first. */
  public List<Contact> between(int p, int q) {
    int a = Math.min(p, q);
    int b = Math.max(p, q);
    return contacts.stream().filter(c -> c.a() == a && c.b() == b).toList();
  }

  /** The pairs that fit in one way. */
  public List<PairFit> fits(PairFit.Kind kind) {
    return fits.stream().filter(f -> f.kind() == kind).toList();
  }
}
