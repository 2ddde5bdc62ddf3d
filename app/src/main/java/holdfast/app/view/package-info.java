/**
 * The viewport and the picture command, the only packages that load a graphics library. {@code gl} holds the library at
 * arm's length, {@code draw} draws a scene; here are the window, its panels and its tools.
 *
 * <p>{@link holdfast.app.view.Viewport} opens a window on a scene. {@code ViewWindow} takes the events of the display and
 * draws a frame when something changed; {@code Workbench} is all that it works on: the document of {@code app.edit}, its file
 * ({@code Filing}), what is chosen and opened, the camera, and the {@code Judgement} of the scene as it is now, which comes
 * from the {@code Judge} on a thread of his own. Longer jobs go to {@code Chores}.
 *
 * <p>The panels round the picture: {@code TopBar}, {@code RocksPanel} with {@code RockSheet}, {@code FindingsPanel} with
 * {@code JointsPage} and {@code ShowPage}, {@code FootStrip}; {@code Sheets} are the dialogues over it. {@code Ui} has the
 * controls of all of them, {@code Focus} walks these by keyboard, and {@code RemedyButtons} mend what was found.
 * {@code Hands} and {@code Keyboard} turn pointer and keys into edits and {@code Commands}.
 *
 * <p>The picture is put together by {@code ScenePainter}: what was measured on the scene ({@code Survey}, {@code Handling}) and
 * found by the judge becomes drawings, those of the Show page in {@code PushRose}, {@code SceneMarks} and {@code MapMarks},
 * those of one opened finding in {@code FindingMarks}; {@code SceneMarksChoice} says which kind of finding has which, and
 * {@code MapKeys} what they mean. {@code Player} plays bumps and first movements, {@code Stages} the order of building.
 *
 * <p>Without a window: {@link holdfast.app.view.ScenePictures}, and without OpenGL {@link holdfast.app.view.PanePicture} and
 * {@link holdfast.app.view.FallPicture}.
 */
package holdfast.app.view;
