/**
 * The build sheet: the day's work on paper, as a PDF of vectors and selectable text, and the same content as JSON.
 *
 * <p>{@link holdfast.app.report.sheet.SheetContent} gathers everything once; {@link holdfast.app.report.sheet.Sheet} lays
 * it out page by page; {@link holdfast.app.report.sheet.SheetJson} writes it for programs. Below these,
 * {@link holdfast.app.report.sheet.Canvas} draws on a page in millimetres and {@link holdfast.app.report.sheet.Drawing}
 * works out which lines of the rocks are seen and which are hidden.
 */
package holdfast.app.report.sheet;
