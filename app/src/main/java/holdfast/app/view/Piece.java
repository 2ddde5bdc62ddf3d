package holdfast.app.view;

import holdfast.engine.build.Modules;
import holdfast.engine.contact.Planar;
import holdfast.model.geom.Hull;
import holdfast.model.geom.Vec3;
import holdfast.model.scene.Scene;
import holdfast.model.scene.Setting;
import holdfast.model.scene.Tank;
import holdfast.model.shape.PlacedRock;
import java.util.ArrayList;
import java.util.List;

/**
 * What goes in and out in one lift: a rock, or rocks that were fixed together before.
 *
 * @param module its mass and its way through the opening
 * @param corners of all its rocks in place, metres
 * @param centre of its mass as it is lifted out wet, metres; cement is left out
 */
record Piece(Modules.Module module, List<Vec3> corners, Vec3 centre) {
  Piece {
    corners = List.copyOf(corners);
  }

  static List<Piece> all(Scene scene, List<PlacedRock> placed) {
    List<Piece> out = new ArrayList<>();
    for (Modules.Module m : Modules.of(scene, placed.stream().map(PlacedRock::body).toList())) {
      List<Vec3> corners = new ArrayList<>();
      Vec3 moment = Vec3.ZERO;
      double kg = 0;
      for (PlacedRock p : placed) {
        if (!m.rocks().contains(p.rock().name())) continue;
        for (Hull h : p.lobes()) corners.addAll(h.corners());
        double wet = p.body().dryMassKg() + p.body().poreWaterKg();
        moment = moment.plusTimes(wet, p.centre());
        kg += wet;
      }
      out.add(new Piece(m, corners, moment.times(1 / kg)));
    }
    return out;
  }

  double topM() {
    return corners.stream().mapToDouble(Vec3::z).max().orElseThrow();
  }

  /** The opening that leaves the most room, less the room for fingers on each side: low and high corner at the rim, metres. */
  List<Vec3> freeOpening(Scene scene) {
    Tank.Opening o = Modules.openings(scene.tank()).get(module.opening());
    double clear = scene.settings().get(Setting.OPENING_CLEAR_MM);
    double z = scene.tank().heightMm();
    return List.of(new Vec3(o.xMm() + clear, o.yMm() + clear, z).times(1e-3),
        new Vec3(o.xMm() + o.lengthMm() - clear, o.yMm() + o.widthMm() - clear, z).times(1e-3));
  }

  /** The piece's outline as it fits that opening best, seen along its way and in the opening's middle: flat, metres. */
  double[] section(Scene scene) {
    Vec3 along = module.passage().along();
    Vec3 across = module.passage().up().cross(along);
    double[] flat = new double[2 * corners.size()];
    for (int i = 0; i < corners.size(); i++) {
      flat[2 * i] = corners.get(i).dot(along);
      flat[2 * i + 1] = corners.get(i).dot(across);
    }
    double[] outline = Planar.hull(flat, 0);
    List<Vec3> free = freeOpening(scene);
    Vec3 middle = free.get(0).plus(free.get(1)).times(0.5);
    for (int axis = 0; axis < 2; axis++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int i = axis; i < outline.length; i += 2) {
        low = Math.min(low, outline[i]);
        high = Math.max(high, outline[i]);
      }
      double shift = (axis == 0 ? middle.x() : middle.y()) - (low + high) / 2;
      for (int i = axis; i < outline.length; i += 2) outline[i] += shift;
    }
    return outline;
  }
}
