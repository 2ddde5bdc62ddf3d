package holdfast.app.command;

import holdfast.model.scene.Setting;

/** Lists the settings. */
final class DefaultsCommand extends Subcommand {
  @Override
  protected ExitCode run() {
    for (Setting s : Setting.values()) print(s.key() + "\n");
    return ExitCode.FINE;
  }
}
