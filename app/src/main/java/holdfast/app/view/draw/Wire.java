package holdfast.app.view.draw;

import holdfast.model.geom.Vec3;

/** A line in space; its width is in pixels at scale 1, whatever the distance. */
public record Wire(Vec3 a, Vec3 b, double widthPx, Colour colour) {}
