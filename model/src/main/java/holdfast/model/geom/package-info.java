/**
 * Solid geometry in metres, z up. Points, turns and poses are plain records; {@link holdfast.model.geom.HullBuilder}
 * turns points into a {@link holdfast.model.geom.Hull}, whose faces are whole polygons;
 * {@link holdfast.model.geom.Polyhedra} measures and cuts hulls; overlapping hulls count once in
 * {@link holdfast.model.geom.Unions}. Nothing here throws on bad geometry: it answers by value. Every length that
 * decides between "equal" and "not equal" stands in {@link holdfast.model.geom.Tolerances}.
 */
package holdfast.model.geom;
