/**
 * The document behind the viewport, without a window. Every change of a scene is an {@link holdfast.app.edit.Edit} that
 * goes through {@link holdfast.app.edit.Document#apply}, which keeps what was before, so that every change can be undone.
 * {@link holdfast.app.edit.Remedies} are the edits that mend a finding where the scene itself determines them.
 * {@link holdfast.app.edit.Rescue} keeps a side copy of unsaved work, {@link holdfast.app.edit.FileMark} notices a file
 * changed by another, {@link holdfast.app.edit.RecentScenes} remembers what was open.
 */
package holdfast.app.edit;
