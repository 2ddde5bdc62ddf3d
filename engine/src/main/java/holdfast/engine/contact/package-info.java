/**
 * Where bodies bear on each other.
 *
 * <p>{@link holdfast.engine.contact.SceneSolids} puts the rocks of a scene and the parts of its tank
 * ({@link holdfast.engine.contact.TankSolids}) side by side as {@link holdfast.engine.contact.Solid}s. {@link
 * holdfast.engine.contact.ContactFinder} searches them: boxes first (sort and sweep), then per pair of lobes the signed
 * distance and its normal ({@code Separation}, {@code ClosestFeatures}) and the patch where the two surfaces lie within
 * a small gap of each other ({@code PatchFinder}, {@code Planar}). Out comes a {@link
 * holdfast.engine.contact.ContactMap}: the patches, and how well each pair of bodies fits. {@link
 * holdfast.engine.contact.SupportInset} draws a patch in, as real stone bears on less than its faces show.
 *
 * <p>Every length is relative to the smaller body, apart from the floors named in {@link
 * holdfast.engine.contact.ContactRules}; the numbers are in {@link holdfast.engine.contact.Tolerances}.
 */
package holdfast.engine.contact;
