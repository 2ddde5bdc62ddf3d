package holdfast.engine;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The way of the data, held: each package knows only those before it, and none knows a screen. */
class ArchitectureTest {
  /** From scene file to findings; a package imports from earlier lines only, and from its own. */
  private static final List<String> ORDER = List.of(
      "holdfast.model.geom",
      "holdfast.model.scene",
      "holdfast.model.io",
      "holdfast.model.shape",
      "holdfast.engine.work",
      "holdfast.engine.contact",
      "holdfast.engine.statics.solver",
      "holdfast.engine.statics.heap",
      "holdfast.engine.statics.balance",
      "holdfast.engine.statics.rest",
      "holdfast.engine.statics",
      "holdfast.engine.bonding",
      "holdfast.engine.pane",
      "holdfast.engine.gap",
      "holdfast.engine.light",
      "holdfast.engine.motion",
      "holdfast.engine.build",
      "holdfast.engine.supply",
      "holdfast.engine.check");

  private static final JavaClasses CLASSES = new ClassFileImporter()
      .withImportOption(new ImportOption.DoNotIncludeTests())
      .importPackages("holdfast.model", "holdfast.engine");

  @Test
  void everyPackageHasItsPlaceInTheOrder() {
    assertThat(CLASSES).isNotEmpty().allSatisfy(c -> assertThat(place(c)).as(c.getName()).isNotNegative());
  }

  @Test
  void nothingImportsAgainstTheOrder() {
    TreeSet<String> against = new TreeSet<>();
    for (JavaClass c : CLASSES) {
      c.getDirectDependenciesFromSelf().forEach(d -> {
        JavaClass to = d.getTargetClass().getBaseComponentType();
        if (to.getPackageName().startsWith("holdfast.") && place(to) > place(c)) against.add(c.getName() + " -> " + to.getName());
      });
    }
    assertThat(against).isEmpty();
  }

  @Test
  void noCycles() {
    slices().matching("holdfast.(*).(*)..").should().beFreeOfCycles().check(CLASSES);
    slices().matching("holdfast.engine.statics.(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  /** How the statics solve is theirs alone: the others ask heaps, not matrices. */
  @Test
  void onlyTheStaticsKnowTheirSolver() {
    noClasses().that().resideOutsideOfPackage("holdfast.engine.statics..")
        .should().dependOnClassesThat().resideInAPackage("holdfast.engine.statics.solver..").check(CLASSES);
  }

  @Test
  void noScreenNoConsole() {
    NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS.check(CLASSES);
    noClasses().should().dependOnClassesThat().resideInAnyPackage(
        "java.awt..", "javax.swing..", "javafx..", "picocli..", "org.lwjgl..", "imgui..", "org.joml..", "org.apache.pdfbox..")
        .check(CLASSES);
    noClasses().should().dependOnClassesThat().haveFullyQualifiedName("java.io.Console").check(CLASSES);
    noClasses().should().callMethod(System.class, "exit", int.class).check(CLASSES);
  }

  private static int place(JavaClass c) {
    for (int i = 0; i < ORDER.size(); i++) {
      String p = c.getPackageName();
      if (p.equals(ORDER.get(i)) || p.startsWith(ORDER.get(i) + ".")) return i;
    }
    return -1;
  }
}
