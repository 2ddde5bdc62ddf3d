package holdfast.engine.build;

import holdfast.model.geom.Quat;

/**
 * Where a body is on its way through an opening. What it does sideways is left open: it is free as long as it has room.
 *
 * @param turn from the upright pose as built
 * @param heightM of the body's centre above the rim, metres
 */
public record GatePose(Quat turn, double heightM) {}
