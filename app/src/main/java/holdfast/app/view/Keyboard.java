package holdfast.app.view;

import static org.lwjgl.glfw.GLFW.*;

import holdfast.app.view.draw.Camera;
import holdfast.model.geom.Vec3;
import java.util.Optional;

/** What the keys do when no field is being typed in. */
final class Keyboard {
  private final Workbench bench;
  private final Commands commands;
  private final FindingsPanel findings;
  private final Stages stages;

  Keyboard(Workbench bench, Commands commands, FindingsPanel findings, Stages stages) {
    this.bench = bench;
    this.commands = commands;
    this.findings = findings;
    this.stages = stages;
  }

  void press(int key, int mods) {
    boolean shift = (mods & GLFW_MOD_SHIFT) != 0;
    boolean control = (mods & (GLFW_MOD_CONTROL | GLFW_MOD_SUPER)) != 0;
    if (control) {
      switch (key) {
        case GLFW_KEY_Z -> {
          if (shift) bench.redo();
          else bench.undo();
        }
        case GLFW_KEY_Y -> bench.redo();
        case GLFW_KEY_S -> commands.save();
        case GLFW_KEY_E -> commands.openSheet(Sheets.Kind.GIVE_OUT);
        case GLFW_KEY_N -> commands.openSheet(Sheets.Kind.FIRST);
        case GLFW_KEY_O -> commands.openSheet(Sheets.Kind.SCENES);
        case GLFW_KEY_Q -> commands.quit();
        default -> { }
      }
      return;
    }
    if (!view(key) && !stage(key)) rock(key, shift);
  }

  /** While one goes through the stages of building, the arrow keys do that, and nothing moves a rock. */
  private boolean stage(int key) {
    if (bench.mode() != Workbench.Mode.STAGES) return false;
    if (key == GLFW_KEY_LEFT) stages.step(-1);
    if (key == GLFW_KEY_RIGHT) stages.step(1);
    return true;
  }

  private boolean view(int key) {
    switch (key) {
      case GLFW_KEY_1 -> bench.sight().flyTo(Camera.View.FRONT);
      case GLFW_KEY_2 -> bench.sight().flyTo(Camera.View.LEFT);
      case GLFW_KEY_3 -> bench.sight().flyTo(Camera.View.TOP);
      case GLFW_KEY_4 -> bench.sight().flyTo(Camera.View.CORNER);
      case GLFW_KEY_F -> bench.sight().fit();
      case GLFW_KEY_F1 -> commands.openSheet(Sheets.Kind.HELP);
      case GLFW_KEY_A -> commands.openSheet(Sheets.Kind.ADD_ROCK);
      case GLFW_KEY_B -> commands.mode(bench.mode() == Workbench.Mode.BUMP ? Workbench.Mode.ARRANGE : Workbench.Mode.BUMP);
      case GLFW_KEY_G -> commands.mode(bench.mode() == Workbench.Mode.STAGES ? Workbench.Mode.ARRANGE : Workbench.Mode.STAGES);
      case GLFW_KEY_J -> {
        flip(Shown.Layer.JOINTS);
        if (bench.shown().has(Shown.Layer.JOINTS)) findings.turnTo(FindingsPanel.Page.JOINTS);
      }
      case GLFW_KEY_N -> flip(Shown.Layer.NAMES);
      case GLFW_KEY_C -> {
        Shown.CutWay[] ways = Shown.CutWay.values();
        bench.shown().cut(ways[(bench.shown().cutWay().ordinal() + 1) % ways.length], bench.shown().cutShare());
      }
      case GLFW_KEY_ESCAPE -> escape();
      default -> {
        return false;
      }
    }
    return true;
  }

  private void flip(Shown.Layer l) {
    bench.shown().set(l, !bench.shown().has(l));
  }

  private void escape() {
    if (bench.mode() != Workbench.Mode.ARRANGE) commands.mode(Workbench.Mode.ARRANGE);
    else if (bench.opened().isPresent()) bench.open(bench.opened().get());
    else bench.choose(Optional.empty());
  }

  private void rock(int key, boolean shift) {
    double step = shift ? bench.scene().floor().cellMm() : 1;
    switch (key) {
      case GLFW_KEY_T -> commands.chooseNext(shift ? -1 : 1);
      case GLFW_KEY_LEFT -> commands.nudge(-step, 0, 0);
      case GLFW_KEY_RIGHT -> commands.nudge(step, 0, 0);
      case GLFW_KEY_UP -> commands.nudge(0, step, 0);
      case GLFW_KEY_DOWN -> commands.nudge(0, -step, 0);
      case GLFW_KEY_PAGE_UP -> commands.nudge(0, 0, step);
      case GLFW_KEY_PAGE_DOWN -> commands.nudge(0, 0, -step);
      case GLFW_KEY_COMMA -> commands.turn(Vec3.Z, shift ? 1 : 5);
      case GLFW_KEY_PERIOD -> commands.turn(Vec3.Z, shift ? -1 : -5);
      case GLFW_KEY_SPACE -> commands.drop();
      case GLFW_KEY_R -> commands.steadyRest();
      case GLFW_KEY_P -> bench.chosen().ifPresent(commands::setDown);
      case GLFW_KEY_D -> commands.duplicate();
      case GLFW_KEY_L -> commands.lock();
      case GLFW_KEY_BACKSPACE -> commands.takeOut();
      case GLFW_KEY_DELETE -> commands.remove();
      default -> { }
    }
  }
}
