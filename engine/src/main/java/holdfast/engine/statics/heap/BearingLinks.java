package holdfast.engine.statics.heap;

import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.Solid;
import holdfast.engine.contact.TankSolids;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Bare contacts as links, whatever is fixed beside them. */
final class BearingLinks {
  /** A link and what it stands for. */
  record Made(Link.Bearing link, SceneHeap.Seat seat) {}

  /** By the very contact: one that was carried over has carried its link with it. */
  private final Map<Contact, Optional<Made>> known = new IdentityHashMap<>();

  /**
   * @param before those of a scene with the same settings, from whose search {@code contacts} has what has not changed
   */
  BearingLinks(Scene scene, List<Solid> solids, ContactMap contacts, Optional<BearingLinks> before) {
    int[] number = HeapAssembly.numbers(solids);
    for (Contact c : contacts.contacts()) {
      Optional<Made> same = before.isPresent() ? before.get().known.get(c) : null;
      known.put(c, same != null ? same : made(scene, solids, number, c));
    }
  }

  /** The link of one of the contacts; none where it bears nothing. */
  Optional<Made> of(Contact contact) {
    return known.get(contact);
  }

  private static Optional<Made> made(Scene scene, List<Solid> solids, int[] number, Contact c) {
    SceneHeap.Kind kind = kind(scene, solids, c);
    if (kind == null) return Optional.empty();
    Solid p = solids.get(c.a());
    Solid q = solids.get(c.b());
    double friction = kind == SceneHeap.Kind.PANE ? 0 : Frictions.between(p.surface(), q.surface(), scene.settings());
    double inset = scene.settings().get(Setting.CONTACT_INSET_MM) * 1e-3;
    return Optional.of(new Made(HeapAssembly.bearing(c, number, friction, inset),
        new SceneHeap.Seat(kind, c.a(), q.name(), c.areaM2(), c.distanceM())));
  }

  private static SceneHeap.Kind kind(Scene scene, List<Solid> solids, Contact c) {
    return switch (TankSolids.part(scene, solids, c.b())) {
      case ROCK -> SceneHeap.Kind.JOINT;
      case FLOOR -> SceneHeap.Kind.FLOOR;
      case PANE -> SceneHeap.Kind.PANE;
      case DEVICE -> null;
    };
  }
}
