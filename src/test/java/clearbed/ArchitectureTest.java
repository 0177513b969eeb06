package clearbed;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.conditions.ArchConditions;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.util.List;

/** The one-way flow from documents to findings. */
@AnalyzeClasses(packages = "clearbed", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  /** Each may use those before it. */
  private static final List<String> FLOW =
      List.of(
          "base",
          "model",
          "mark",
          "read",
          "recognise",
          "cache",
          "batch",
          "resolve",
          "calc",
          "check",
          "report",
          "track",
          "cli");

  @ArchTest static final ArchRule a_package_uses_only_those_before_it = flow();

  @ArchTest
  static final ArchRule no_two_packages_use_each_other =
      slices().matching("clearbed.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule the_base_uses_nothing_of_ours =
      noClasses()
          .that()
          .resideInAPackage("clearbed.base..")
          .should()
          .dependOnClassesThat(
              JavaClass.Predicates.resideInAPackage("clearbed..")
                  .and(
                      DescribedPredicate.not(
                          JavaClass.Predicates.resideInAPackage("clearbed.base.."))));

  @ArchTest
  static final ArchRule the_model_uses_only_the_base =
      classes()
          .that()
          .resideInAPackage("clearbed.model..")
          .should()
          .onlyDependOnClassesThat(
              JavaClass.Predicates.resideInAnyPackage(
                  "clearbed.base", "clearbed.model..", "java.."));

  @ArchTest
  static final ArchRule every_class_has_a_place_in_the_flow =
      classes()
          .should()
          .resideInAnyPackage(
              FLOW.stream().map(name -> "clearbed." + name + "..").toArray(String[]::new));

  @ArchTest
  static final ArchRule only_the_command_line_ends_the_process =
      classes()
          .that(
              DescribedPredicate.describe(
                  "are not the entry point",
                  (JavaClass c) -> !c.getName().startsWith("clearbed.cli.Main")))
          .should(ArchConditions.not(ArchConditions.callMethod(System.class, "exit", int.class)));

  private static ArchRule flow() {
    LayeredArchitecture architecture = layeredArchitecture().consideringOnlyDependenciesInLayers();
    for (String name : FLOW)
      architecture = architecture.optionalLayer(name).definedBy("clearbed." + name + "..");
    for (int i = 0; i < FLOW.size(); i++) {
      String name = FLOW.get(i);
      String[] later = FLOW.subList(i + 1, FLOW.size()).toArray(String[]::new);
      architecture =
          later.length == 0
              ? architecture.whereLayer(name).mayNotBeAccessedByAnyLayer()
              : architecture.whereLayer(name).mayOnlyBeAccessedByLayers(later);
    }
    return architecture;
  }
}
