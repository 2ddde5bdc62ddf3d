package holdfast.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The app's packages in order, and the window libraries kept where they are. */
class ArchitectureTest {
  private static final List<String> ORDER = List.of(
      "holdfast.app.report", "holdfast.app.edit", "holdfast.app.view", "holdfast.app.command", "holdfast.app");

  private static final JavaClasses CLASSES = new ClassFileImporter()
      .withImportOption(new ImportOption.DoNotIncludeTests())
      .importPackages("holdfast.app");

  @Test
  void nothingImportsAgainstTheOrder() {
    TreeSet<String> against = new TreeSet<>();
    for (JavaClass c : CLASSES) {
      assertThat(place(c)).as(c.getName()).isNotNegative();
      c.getDirectDependenciesFromSelf().forEach(d -> {
        JavaClass to = d.getTargetClass().getBaseComponentType();
        if (to.getPackageName().startsWith("holdfast.app") && place(to) > place(c)) against.add(c.getName() + " -> " + to.getName());
      });
    }
    assertThat(against).isEmpty();
  }

  @Test
  void noCycles() {
    slices().matching("holdfast.app.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void onlyTheViewKnowsTheWindowLibraries() {
    noClasses().that().resideOutsideOfPackage("holdfast.app.view..")
        .should().dependOnClassesThat().resideInAnyPackage("org.lwjgl..", "imgui..", "org.joml..")
        .check(CLASSES);
  }

  @Test
  void noToolkitOfTheJavaDesktopAnywhere() {
    noClasses().should().dependOnClassesThat().resideInAnyPackage("javax.swing..", "javafx..").check(CLASSES);
  }

  private static int place(JavaClass c) {
    for (int i = 0; i < ORDER.size(); i++) {
      String p = c.getPackageName();
      if (p.equals(ORDER.get(i)) || i < ORDER.size() - 1 && p.startsWith(ORDER.get(i) + ".")) return i;
    }
    return -1;
  }
}
