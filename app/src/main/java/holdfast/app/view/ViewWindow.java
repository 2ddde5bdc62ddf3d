package holdfast.app.view;

import static org.lwjgl.glfw.GLFW.*;
import static org.lwjgl.opengl.GL11.*;

import holdfast.app.report.sheet.PaperNames;
import holdfast.app.view.draw.Brush;
import holdfast.app.view.draw.Lettering;
import holdfast.app.view.draw.Palette;
import holdfast.app.view.draw.Projector;
import holdfast.app.view.draw.Renderer;
import holdfast.app.view.gl.GlContext;
import holdfast.app.view.gl.Target;
import imgui.ImGui;
import imgui.gl3.ImGuiImplGl3;
import java.util.Optional;

/**
 * The window: takes what the pointer and the keyboard do, draws panels and picture, and only when something changed.
 * Everything but {@link #run} works on a window that nobody sees as well.
 */
final class ViewWindow implements AutoCloseable {
  /** The panels' library needs a few frames to answer an event: hover, press, release. */
  private static final int FRAMES_AFTER_EVENT = 3;

  private static final long SHADE_NANOS = 350_000_000L;

  /**
   * How finely the picture is drawn.
   *
   * @param samples a pixel
   * @param shadowMap pixels along a side of the shadow map
   * @param patienceMs where a picture takes longer than this, one sample a pixel must do while things move
   */
  record Quality(int samples, int shadowMap, double patienceMs) {
    static final Quality USUAL = new Quality(4, 2048, 25);
  }

  private final GlContext gl;
  private final Quality quality;
  private final Workbench bench;
  private final Ui ui;
  private final PanelInput panelInput;
  private final ImGuiImplGl3 panelDrawing;
  private final Renderer renderer;
  private final Lettering letters;
  private final Brush brush;
  private final Commands commands;
  private final Hands hands;
  private final Hints hints;
  private final Keyboard keyboard;
  private final FocusKeys walk;
  private final TopBar top;
  private final RocksPanel rocks;
  private final FindingsPanel findings;
  private final FootStrip foot;
  private final Sheets sheets;
  private final ScenePainter painter;
  private ScenePicture scene;
  private Target screen;
  private Layout layout;
  private Optional<Sheets.Kind> sheetBefore = Optional.empty();
  private long sheetSince;
  private int due = FRAMES_AFTER_EVENT;
  private double pointerX = -1;
  private double pointerY = -1;
  /** A button went down over a panel and is still held. */
  private boolean heldFromPanel;
  /** The latest key was a command: its letter must not fall into a field that the command opens. */
  private boolean command;
  private long frames;
  private long scenesPainted;

  ViewWindow(GlContext gl, Workbench bench, Quality quality) {
    this(gl, bench, quality, gl.scale());
  }

  /** Everything is drawn {@code scale} times as large as on an ordinary screen. */
  ViewWindow(GlContext gl, Workbench bench, Quality quality, float scale) {
    this.gl = gl;
    this.quality = quality;
    this.bench = bench;
    ImGui.createContext();
    ui = new Ui(scale);
    panelInput = new PanelInput();
    panelInput.init(gl.window(), false);
    panelDrawing = new ImGuiImplGl3();
    panelDrawing.init("#version 330 core");
    renderer = new Renderer(quality.shadowMap());
    letters = new Lettering(scale);
    brush = new Brush(letters);
    commands = new Commands(bench);
    hands = new Hands(bench);
    hands.setScale(scale);
    hints = new Hints(bench, bench.filing().userFolder());
    top = new TopBar(bench, ui, commands);
    rocks = new RocksPanel(bench, ui, commands);
    findings = new FindingsPanel(bench, ui);
    foot = new FootStrip(bench, ui, hints);
    painter = new ScenePainter(bench, hands, renderer, brush, findings.joints());
    keyboard = new Keyboard(bench, commands, findings, painter.stages());
    walk = new FocusKeys(ui.focus());
    sheets = new Sheets(bench, ui, commands, hints, painter);
    resize();
    bench.sight().set(bench.sight().fitted(holdfast.app.view.draw.Camera.View.CORNER));
  }

  Commands commands() {
    return commands;
  }

  Ui ui() {
    return ui;
  }

  Layout layout() {
    return layout;
  }

  Hands hands() {
    return hands;
  }

  Hints hints() {
    return hints;
  }

  Optional<Survey> survey() {
    return painter.survey();
  }

  Player player() {
    return painter.player();
  }

  Stages stages() {
    return painter.stages();
  }

  FindingsPanel findings() {
    return findings;
  }

  long frames() {
    return frames;
  }

  long scenesPainted() {
    return scenesPainted;
  }

  // -- the loop -----------------------------------------------------------------------------------------------------

  /** Runs until the window is closed. */
  void run() {
    DisplayEvents.listen(gl.window(), this);
    while (!commands.wantsToQuit()) {
      if (due > 0 || bench.sight().moving() || painter.moving()) glfwPollEvents();
      else glfwWaitEventsTimeout(0.5);
      if (glfwWindowShouldClose(gl.window())) {
        glfwSetWindowShouldClose(gl.window(), false);
        commands.quit();
        due = FRAMES_AFTER_EVENT;
      }
      if (frame(System.nanoTime())) {
        screen.show();
        glfwSwapBuffers(gl.window());
      }
    }
  }

  /** Draws a frame if something changed; true when it did. */
  boolean frame(long now) {
    bench.judgement().hold(hands.carrying());
    if (bench.tick(now) | painter.tick(now)) due = Math.max(due, 1);
    if (!commands.sheet().equals(sheetBefore)) {
      sheetBefore = commands.sheet();
      sheetSince = System.nanoTime();
      due = FRAMES_AFTER_EVENT;
    }
    // The shade behind a sheet comes on gradually, by the panels' library's own clock: it must not stop half way.
    if (commands.sheet().isPresent() && System.nanoTime() - sheetSince < SHADE_NANOS) due = Math.max(due, 1);
    resize();
    if (due == 0 && !bench.sight().moving() && !painter.moving()) return false;
    due = Math.max(0, due - 1);
    frames++;
    hints.watch();
    if (commands.sheet().filter(Sheets.Kind.GIVE_OUT::equals).isPresent()) hints.learnt(Hints.Lesson.GIVE_OUT);
    ui.newFrame();
    ui.call(PaperNames.of(bench.scene(), letters::draws)::written);
    panelDrawing.newFrame();
    panelInput.newFrame();
    ImGui.newFrame();
    top.draw(layout);
    rocks.draw(layout);
    findings.draw(layout);
    foot.draw(layout);
    painter.panel(layout, ui);
    sheets.draw(layout);
    ui.endFrame(bench.judgementSettled());
    ImGui.render();
    if (scene.paint(painter, inMotion())) scenesPainted++;
    screen.bind();
    glDisable(GL_DEPTH_TEST);
    glDisable(GL_STENCIL_TEST);
    glClearColor(Palette.PANEL.r(), Palette.PANEL.g(), Palette.PANEL.b(), 1);
    glClear(GL_COLOR_BUFFER_BIT);
    scene.copyInto(screen, layout.sceneX(), layout.height() - layout.sceneY() - layout.sceneHeight());
    screen.bind();
    panelDrawing.renderDrawData(ImGui.getDrawData());
    screen.bind();
    return true;
  }

  /** Something is being dragged, flown to or played: another picture comes at once. */
  private boolean inMotion() {
    return !hands.idle() || bench.sight().moving() || painter.moving();
  }

  /** The latest picture was drawn with one sample a pixel, since things moved. */
  boolean sketched() {
    return scene.sketched();
  }

  private void resize() {
    int[] size = gl.pixels();
    if (size[0] < 1 || size[1] < 1) return;
    Layout now = new Layout(size[0], size[1], ui.scale(), bench.mode() == Workbench.Mode.STAGES);
    if (now.equals(layout)) return;
    layout = now;
    double fineMs = scene == null ? 0 : scene.fineMs();
    if (scene != null) scene.close();
    if (screen != null) screen.close();
    scene = new ScenePicture(layout.sceneWidth(), layout.sceneHeight(), quality, fineMs);
    screen = new Target(size[0], size[1], 1);
    bench.sight().setAspect(layout.sceneWidth() / (double) layout.sceneHeight());
    due = FRAMES_AFTER_EVENT;
  }

  /** The window's picture, top row first, 0xRRGGBB. */
  int[] pixels() {
    return screen.read();
  }

  // -- events -------------------------------------------------------------------------------------------------------

  /** The whole picture is asked for anew. */
  void refresh() {
    due = FRAMES_AFTER_EVENT;
  }

  void focused(boolean on) {
    panelInput.windowFocusCallback(gl.window(), on);
    due = FRAMES_AFTER_EVENT;
  }

  void dropped(java.nio.file.Path file) {
    commands.dropped(file);
  }

  void pointerIn(boolean in) {
    panelInput.cursorEnterCallback(gl.window(), in);
    due = FRAMES_AFTER_EVENT;
  }

  /** The pointer is at this place of the window; {@code pixelsPerUnit} where the screen counts in larger units. */
  void pointer(double x, double y, double pixelsPerUnit) {
    panelInput.cursorPosCallback(gl.window(), x, y);
    pointerX = x * pixelsPerUnit;
    pointerY = y * pixelsPerUnit;
    if (overPanel() && hands.idle()) {
      if (bench.hover(Optional.empty())) due = Math.max(due, 1);
      due = Math.max(due, 2);
      return;
    }
    if (commands.sheet().isEmpty() && hands.move(sceneX(), sceneY(), eye(), keys())) due = Math.max(due, 1);
  }

  /** By where things are: what the panels' library knows is a frame old, and a tap brings place and press at once. */
  private boolean overPanel() {
    return heldFromPanel || !layout.inScene(pointerX, pointerY) || painter.overPanel(layout, ui, pointerX, pointerY);
  }

  private double sceneX() {
    return pointerX - layout.sceneX();
  }

  private double sceneY() {
    return pointerY - layout.sceneY();
  }

  private Projector eye() {
    return new Projector(bench.sight().camera(), layout.sceneWidth(), layout.sceneHeight());
  }

  private int heldMods;

  private Hands.Keys keys() {
    return new Hands.Keys((heldMods & GLFW_MOD_SHIFT) != 0, (heldMods & GLFW_MOD_ALT) != 0);
  }

  void button(int button, boolean pressed, int mods) {
    heldMods = mods;
    panelInput.mouseButtonCallback(gl.window(), button, pressed ? GLFW_PRESS : GLFW_RELEASE, mods);
    due = FRAMES_AFTER_EVENT;
    if (!pressed) {
      heldFromPanel = false;
      if (hands.carrying()) hints.learnt(hands.turning() ? Hints.Lesson.TURN : Hints.Lesson.DRAG);
      if (hands.circling()) hints.learnt(Hints.Lesson.CIRCLE);
      hands.release(sceneX(), sceneY());
      hands.takeReleased().ifPresent(painter::bump);
      return;
    }
    ui.focus().touch(pointerX, pointerY);
    heldFromPanel = commands.sheet().isPresent() || overPanel();
    if (heldFromPanel) return;
    if (button == GLFW_MOUSE_BUTTON_LEFT && painter.pressJoint(sceneX(), sceneY(), eye())) {
      findings.turnTo(FindingsPanel.Page.JOINTS);
      return;
    }
    hands.press(button == GLFW_MOUSE_BUTTON_LEFT ? Hands.Button.MAIN
        : button == GLFW_MOUSE_BUTTON_RIGHT ? Hands.Button.OTHER : Hands.Button.MIDDLE, sceneX(), sceneY(), eye(), keys());
    if (bench.chosen().isPresent()) hints.learnt(Hints.Lesson.CHOOSE);
  }

  void scroll(double dx, double dy) {
    panelInput.scrollCallback(gl.window(), dx, dy);
    due = FRAMES_AFTER_EVENT;
    if (commands.sheet().isEmpty() && layout.inScene(pointerX, pointerY)) {
      hands.scroll(dy);
      hints.learnt(Hints.Lesson.CIRCLE);
    }
  }

  void key(int key, int code, int action, int mods) {
    heldMods = mods;
    due = FRAMES_AFTER_EVENT;
    command = false;
    boolean typing = ImGui.getIO().getWantTextInput() || ui.focus().awaitsText();
    if (action != GLFW_RELEASE && walk.press(key, mods, typing, commands.sheet().isPresent())) {
      command = true;
      return;
    }
    panelInput.keyCallback(gl.window(), key, code, action, mods);
    if (action == GLFW_RELEASE || typing) return;
    if (commands.sheet().isPresent()) {
      if (key == GLFW_KEY_ESCAPE) commands.stay();
      return;
    }
    command = true;
    keyboard.press(key, mods);
    if (key == GLFW_KEY_F1) hints.learnt(Hints.Lesson.HELP);
  }

  void letter(int code) {
    if (command) return;
    panelInput.charCallback(gl.window(), code);
    due = FRAMES_AFTER_EVENT;
  }

  @Override
  public void close() {
    scene.close();
    screen.close();
    brush.close();
    letters.close();
    renderer.close();
    panelDrawing.shutdown();
    panelInput.shutdown();
    ImGui.destroyContext();
    bench.close();
  }
}
