/**
 * From a rock as its owner knows it to a {@link holdfast.model.shape.RockBody}: convex lobes, mass, centre, inertia.
 * {@link holdfast.model.shape.Shapes} does a whole scene, {@link holdfast.model.shape.RockShapes} one rock. Generated
 * stones are thought up in {@code StoneLooks}, cut in {@code StoneCutter} and fitted to their box in {@code Stones};
 * scans come through a {@link holdfast.model.shape.MeshLoader} as a {@link holdfast.model.shape.TriangleMesh} and are
 * divided into lobes by {@code MeshSplitter}. {@link holdfast.model.shape.Submerged} tells how much of a rock is under
 * water. Metres and kilograms throughout; what cannot be done comes back as a reason for people.
 */
package holdfast.model.shape;
