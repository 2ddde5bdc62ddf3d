/**
 * Reading and writing. Text becomes a small tree that remembers where everything stood ({@code JsonText}, {@code Json});
 * {@link holdfast.model.io.SceneReader} walks it against the table of keys ({@code SceneKeys}) and answers with a
 * {@link holdfast.model.scene.Scene} or with every {@link holdfast.model.io.Problem} of the file, in the order of the
 * file. {@link holdfast.model.io.SceneWriter} writes the one canonical text of a scene, and
 * {@link holdfast.model.io.SceneFiles} saves it so that a crash never leaves half a file.
 *
 * <p>The same table of keys yields the published schema ({@link holdfast.model.io.SceneSchema}) and the rows of
 * {@code holdfast defaults} ({@link holdfast.model.io.DefaultsTable}), so the three can't drift apart.
 * {@link holdfast.model.io.LooseBlocksReader} reads bare heaps of blocks, format {@code loose-blocks/1}.
 */
package holdfast.model.io;
