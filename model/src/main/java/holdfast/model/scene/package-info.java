/**
 * What a person knows of a tank, in millimetres and kilograms as in the file. A {@link holdfast.model.scene.Scene} holds the
 * {@link holdfast.model.scene.Tank} with its floor, sand, water, devices and lamps, the {@link holdfast.model.scene.Rock}s with
 * their forms and masses, their {@link holdfast.model.scene.Placement}s and the {@link holdfast.model.scene.JointSpec}s that
 * fix them to each other. {@link holdfast.model.scene.Setting} is every figure that a scene may set otherwise, with its
 * default, its range and the {@link holdfast.model.scene.Grade} of what it is known from.
 *
 * <p>Beside it lies what is looked up: {@link holdfast.model.scene.SeaWater} and {@link holdfast.model.scene.UsualGlass}; and
 * how people name places and sizes: {@link holdfast.model.scene.GridCells}, {@link holdfast.model.scene.Side},
 * {@link holdfast.model.scene.UsMeasure}.
 */
package holdfast.model.scene;
