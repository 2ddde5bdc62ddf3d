package holdfast.engine.statics.heap;

import holdfast.engine.contact.Carried;
import holdfast.engine.contact.Contact;
import holdfast.engine.contact.ContactFinder;
import holdfast.engine.contact.ContactMap;
import holdfast.engine.contact.ContactRules;
import holdfast.engine.contact.Solid;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.JointSpec;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Settings;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Bonds and rods as links. A paste fills the joint where the two surfaces are within its reach of each other, at most its
 * volume over that reach; a patch that it does not fill is shrunk about its middle. A rod crosses the largest patch along
 * its normal.
 */
final class BondLinks {
  private final Settings settings;
  private final List<Solid> solids;
  private final ContactMap contacts;
  private final Map<JointSpec, List<Made>> known = new ConcurrentHashMap<>();

  BondLinks(Settings settings, List<Solid> solids, ContactMap contacts) {
    this.settings = settings;
    this.solids = solids;
    this.contacts = contacts;
  }

  /**
   * The same after an edit: what was made of {@code joints} between rocks that are what and where they were is kept.
   *
   * @param before numbers of the rocks before, by name
   */
  BondLinks next(
      List<JointSpec> joints, List<Solid> now, ContactMap found, Carried carried, Map<String, Integer> before) {
    BondLinks out = new BondLinks(settings, now, found);
    for (JointSpec joint : joints) {
      List<Made> made = known.get(joint);
      if (made == null) continue;
      int a = carried.now(before.get(joint.a()));
      int b = carried.now(before.get(joint.b()));
      if (a == Carried.NONE || b == Carried.NONE) continue;
      out.known.put(joint, made.stream().map(m -> m.between(Math.min(a, b), Math.max(a, b))).toList());
    }
    return out;
  }

  /** A link and what it was made from. */
  record Made(Link link, double areaM2, double distanceM) {
    Made between(int a, int b) {
      return link.a() == a && link.b() == b ? this : new Made(link.between(a, b), areaM2, distanceM);
    }
  }

  /** The links of one fixed joint between rocks {@code a < b}; none where nothing is within reach. */
  List<Made> make(JointSpec joint, int a, int b) {
    return known.computeIfAbsent(joint, j -> made(j, a, b));
  }

  private List<Made> made(JointSpec joint, int a, int b) {
    double reach = settings.get(Setting.BOND_REACH_MM) * 1e-3;
    List<Contact> near = near(a, b, reach);
    if (near.isEmpty()) return List.of();
    if (joint.bond() == JointSpec.Bond.ROD) return rod(joint, near);
    double room = near.stream().mapToDouble(Contact::areaM2).sum();
    double filled = Math.min(room, joint.amountMl() * 1e-6 / reach);
    List<Made> out = new ArrayList<>();
    for (Contact c : near) {
      double area = c.areaM2() / room * filled;
      if (!(area > Tolerances.LEAST_BOND_M2)) continue;
      double strength = strengthN_m2(joint.bond());
      Link.Bond bond = new Link.Bond(
          c.a(), c.b(), c.normal(), shrunk(c.polygon(), Math.sqrt(area / c.areaM2())), area, strength, strength,
          settings.get(Setting.ROCK_STRENGTH_N_MM2) * 1e6, joint.bond() != JointSpec.Bond.GEL);
      out.add(new Made(bond, area, c.distanceM()));
    }
    return out;
  }

  private List<Contact> near(int a, int b, double reachM) {
    ContactRules wide = new ContactRules(reachM, 0, reachM, 0, reachM, 1);
    return ContactFinder.find(List.of(solids.get(a), solids.get(b)), wide).contacts().stream()
        .map(c -> new Contact(a, b, c.lobeA(), c.lobeB(), c.normal(), c.polygon(), c.distanceM()))
        .filter(c -> c.areaM2() > Tolerances.LEAST_BOND_M2)
        .toList();
  }

  private double strengthN_m2(JointSpec.Bond bond) {
    return 1e6 * switch (bond) {
      case MORTAR -> settings.get(Setting.BOND_MORTAR_N_MM2);
      case PUTTY -> settings.get(Setting.BOND_PUTTY_N_MM2);
      case GEL -> settings.get(Setting.BOND_GEL_N_MM2);
      case NONE, ROD -> 0.0;
    };
  }

  /**
   * Shear: the section's, 4/3 mean shear at 0.6 of the bending strength, or the rock crushed along half the depth; bending:
   * the section's d^3 pi / 32, or the rock crushed in a couple over the depth (derived). Pull: the paste round the rod.
   */
  private List<Made> rod(JointSpec joint, List<Contact> near) {
    List<Contact> touching = contacts.between(near.get(0).a(), near.get(0).b());
    Contact seat = (touching.isEmpty() ? near : touching).stream()
        .max(Comparator.comparingDouble(Contact::areaM2)).orElseThrow();
    double d = joint.rodDiameterMm() * 1e-3;
    double depth = joint.rodDepthMm() * 1e-3;
    double section = settings.get(Setting.ROD_STRENGTH_N_MM2) * 1e6;
    double rock = settings.get(Setting.ROCK_STRENGTH_N_MM2) * 1e6;
    double shear = Math.min(0.6 * section * Math.PI * d * d / 4 * 0.75, rock * d * depth / 2);
    double bending = Math.min(section * Math.PI * d * d * d / 32, rock * d * depth * depth / 6);
    double pull = joint.rodGlued() ? Math.PI * d * depth * settings.get(Setting.BOND_MORTAR_N_MM2) * 1e6 : 0;
    Vec3 at = new Patch(seat.normal(), seat.polygon()).centroid;
    return List.of(new Made(new Link.Rod(seat.a(), seat.b(), seat.normal(), at, d, shear, bending, pull),
        Math.PI * d * d / 4, seat.distanceM()));
  }

  private static List<Vec3> shrunk(List<Vec3> polygon, double factor) {
    Vec3 middle = new Patch(polygon.get(1).minus(polygon.get(0)).cross(polygon.get(2).minus(polygon.get(0))).unit(), polygon)
        .centroid;
    return polygon.stream().map(p -> middle.plusTimes(factor, p.minus(middle))).toList();
  }
}
