package holdfast.app.edit;

/**
 * Something that mends a finding and can be done at a press.
 *
 * @param words what it does, in millimetres, short enough for a button
 * @param edit the change; one step to undo
 */
public record Remedy(String words, Edit edit) {}
