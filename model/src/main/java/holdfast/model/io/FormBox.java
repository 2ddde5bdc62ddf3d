package holdfast.model.io;

import holdfast.model.geom.Vec3;
import holdfast.model.scene.Rock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is known of a rock's extent before its shape is built, millimetres in its own frame.
 *
 * @param cornersMm points of which the rock is the hull, or the corners of the box that it fills
 * @param exact the rock reaches each of the corners
 */
record FormBox(List<Vec3> cornersMm, boolean exact) {
  FormBox {
    cornersMm = List.copyOf(cornersMm);
  }

  /** Nothing for a mesh, which is not read here. */
  static Optional<FormBox> of(Rock.Form form) {
    if (form instanceof Rock.Measured m) {
      List<Vec3> corners = new ArrayList<>();
      for (int i = 0; i < 8; i++) {
        corners.add(new Vec3(
            ((i & 1) == 0 ? -0.5 : 0.5) * m.lengthMm(), ((i & 2) == 0 ? -0.5 : 0.5) * m.widthMm(),
                (i & 4) == 0 ? 0 : m.heightMm()));
      }
      return Optional.of(new FormBox(corners, m.look() == Rock.Look.BOX));
    }
    if (form instanceof Rock.Points p) return Optional.of(new FormBox(p.pointsMm(), true));
    if (form instanceof Rock.Lobes l) {
      return Optional.of(new FormBox(l.lobesMm().stream().flatMap(List::stream).toList(), true));
    }
    return Optional.empty();
  }

  Vec3 sizeMm() {
    return most(cornersMm).minus(least(cornersMm));
  }

  static Vec3 least(List<Vec3> points) {
    return new Vec3(
        points.stream().mapToDouble(Vec3::x).min().orElse(0),
        points.stream().mapToDouble(Vec3::y).min().orElse(0),
        points.stream().mapToDouble(Vec3::z).min().orElse(0));
  }

  static Vec3 most(List<Vec3> points) {
    return new Vec3(
        points.stream().mapToDouble(Vec3::x).max().orElse(0),
        points.stream().mapToDouble(Vec3::y).max().orElse(0),
        points.stream().mapToDouble(Vec3::z).max().orElse(0));
  }
}
