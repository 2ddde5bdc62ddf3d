/**
 * What the engine found, written for people as text and for programs as JSON, in the units that they ask for.
 *
 * <p>{@link holdfast.app.report.TextReport} and {@link holdfast.app.report.JsonReport} write a check; {@code BumpText},
 * {@code DropText}, {@code SettleText} and {@code PaneText} what the other commands and the pane have to tell.
 * {@link holdfast.app.report.Quantity} and {@link holdfast.app.report.Units} turn figures into text, always with a direction
 * of rounding; {@link holdfast.app.report.SettingUnits} does so for the figures of a scene.
 * {@link holdfast.app.report.SeverityLook} is how a severity looks wherever it is shown, and
 * {@link holdfast.app.report.JointNumbers} the one numbering of joints. {@code Table} and {@code Words} lay text out.
 */
package holdfast.app.report;
