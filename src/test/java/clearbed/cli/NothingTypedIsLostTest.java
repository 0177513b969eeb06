package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.output.Outputs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every output against everything that may lie where it is to go. */
class NothingTypedIsLostTest {
  @TempDir static Path once;
  private static byte[] logBytes;

  @TempDir Path folder;
  private Project project;

  @BeforeAll
  static void a_log() throws IOException {
    logBytes = Project.log(once);
  }

  @BeforeEach
  void a_project_with_a_log_that_people_typed_into() throws IOException {
    project = Project.in(folder, logBytes);
  }

  /** An option that writes one file. */
  enum ToFile {
    OUTPUT,
    JSON,
    SARIF,
    VIEW,
    LETTER_DOCX,
    LETTER_MD;

    private boolean isLetter() {
      return this == LETTER_DOCX || this == LETTER_MD;
    }
  }

  private Object[] command(ToFile option, Path target) {
    List<Object> words = new ArrayList<>();
    switch (option) {
      case LETTER_DOCX ->
          words.addAll(List.of("questions", project.log(), "--format=docx", "-o", target));
      case LETTER_MD ->
          words.addAll(List.of("questions", project.log(), "--format=md", "-o", target));
      case OUTPUT -> {
        words.addAll(check());
        words.addAll(List.of("-o", target));
      }
      default -> {
        words.addAll(check());
        words.addAll(List.of("-o", folder.resolve("free.xlsx")));
        words.addAll(List.of("--" + option.name().toLowerCase(Locale.ROOT), target));
      }
    }
    return words.toArray();
  }

  private List<Object> check() {
    return List.of(
        "check",
        project.documents(),
        project.archive(),
        "--rules",
        project.rules(),
        "--carry",
        project.typed(),
        "--quiet",
        "--jobs=1");
  }

  static Stream<Arguments> everyOptionOverEveryObstacle() {
    return pairs(obstacle -> obstacle != Obstacle.THE_LOG_ITSELF, obstacle -> true);
  }

  /** What is an input of the check is a file like others to the command that writes letters. */
  static Stream<Arguments> everyOptionOverEveryObstacleToIt() {
    int own = Obstacle.THE_LOG_ITSELF.ordinal();
    return pairs(obstacle -> obstacle.ordinal() != own, obstacle -> obstacle.ordinal() >= own);
  }

  private static Stream<Arguments> pairs(Predicate<Obstacle> check, Predicate<Obstacle> letter) {
    return Stream.of(ToFile.values())
        .flatMap(
            option ->
                Stream.of(Obstacle.values())
                    .filter(option.isLetter() ? letter : check)
                    .map(there -> Arguments.of(option, there)));
  }

  @ParameterizedTest
  @MethodSource("everyOptionOverEveryObstacle")
  void what_is_in_the_way_stays_and_nothing_is_done(ToFile option, Obstacle obstacle)
      throws Exception {
    Path target = project.place(obstacle);
    Map<String, String> before = Tree.of(folder);

    refusedWithOneLine(Shell.run(command(option, target)), target);

    assertThat(Tree.of(folder)).isEqualTo(before);
  }

  @ParameterizedTest
  @MethodSource("everyOptionOverEveryObstacleToIt")
  void overwrite_replaces_what_is_no_input_and_nothing_else(ToFile option, Obstacle obstacle)
      throws Exception {
    Path target = project.place(obstacle);
    Map<String, String> before = Tree.of(folder);
    List<Object> words = new ArrayList<>(List.of(command(option, target)));
    words.add("--overwrite");

    Shell shell = Shell.run(words.toArray());

    Map<String, String> after = Tree.of(folder);
    if (obstacle.isForEver()) {
      refusedWithOneLine(shell, target);
      assertThat(after).isEqualTo(before);
      return;
    }
    assertThat(shell.code()).as(shell.err()).isLessThan(2);
    String replaced = folder.relativize(target.toRealPath()).toString();
    assertThat(after.remove(replaced)).isNotEqualTo(before.remove(replaced));
    after.keySet().retainAll(before.keySet());
    assertThat(after).isEqualTo(before);
  }

  private static void refusedWithOneLine(Shell shell, Path target) {
    assertThat(shell.code()).as(shell.err()).isEqualTo(2);
    assertThat(shell.out()).isEmpty();
    assertThat(shell.err().lines()).hasSize(1);
    assertThat(shell.err()).startsWith("clearbed: --").contains(target.toString() + ": ");
    assertThat(shell.err()).doesNotContain("Exception").doesNotContain("java.");
    assertThat(shell.err()).containsAnyOf("name another file", "name a file", "name it so");
  }

  @ParameterizedTest
  @EnumSource
  void an_untouched_earlier_output_is_replaced_as_it_always_was(ToFile option) throws Exception {
    Path target = folder.resolve("again.xlsx");
    Shell first = Shell.run(command(option, target));
    assertThat(first.code()).as(first.err()).isLessThan(2);
    Files.writeString(project.documents().resolve("more.csv"), "Tag,Material\nGT-2,Glass tile\n");
    Shell second = Shell.run(command(option, target));
    assertThat(second).isEqualTo(first);
  }

  @Test
  void a_log_with_answers_under_the_usual_name_asks_for_carry() throws Exception {
    Path usual = Files.copy(project.typed(), folder.resolve("clearbed-findings.xlsx"));
    byte[] before = Files.readAllBytes(usual);

    Shell refused = Shell.run("check", project.documents(), "-o", usual);
    assertThat(refused.code()).isEqualTo(2);
    assertThat(refused.err()).contains("--carry " + usual).contains("--overwrite");
    assertThat(usual).hasBinaryContent(before);

    Path next = folder.resolve("next.xlsx");
    Shell carried =
        Shell.run("check", project.documents(), "--carry", usual, "-o", next, "--quiet");
    assertThat(carried.code()).as(carried.err()).isEqualTo(1);
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(next))) {
      assertThat(book.getSheet("Questions").getRow(1).getCell(7).getStringCellValue())
          .isEqualTo(Project.ANSWER);
    }
  }

  @Test
  void a_document_that_is_named_itself_is_no_place_for_an_output() {
    Shell shell = Shell.run("check", project.schedule(), "-o", project.schedule(), "--overwrite");
    refusedWithOneLine(shell, project.schedule());
    assertThat(shell.err()).contains("one of the documents to check");
  }

  @Test
  void two_outputs_do_not_go_to_one_file() throws Exception {
    Map<String, String> before = Tree.of(folder);
    Path one = folder.resolve("one.xlsx");
    List<Path> spellings =
        List.of(one, folder.resolve("documents/../one.xlsx"), folder.resolve("ONE.xlsx"));
    for (Path other : spellings) {
      refusedWithOneLine(
          Shell.run("check", project.documents(), "-o", one, "--json", other), other);
      Shell sarif =
          Shell.run(
              "check",
              project.documents(),
              "-o",
              folder.resolve("f.xlsx"),
              "--json",
              one,
              "--sarif",
              other);
      refusedWithOneLine(sarif, other);
    }
    assertThat(Tree.of(folder)).isEqualTo(before);
  }

  /** Found by watching the log while a long run went on. */
  @Test
  void what_is_typed_while_the_run_goes_on_stays() throws Exception {
    Outputs outputs = new Outputs(false).writes("--output", project.log());
    outputs.requireFree();
    assertThat(outputs.isStillFree(project.log())).isTrue();
    Project.type(project.log());
    assertThat(outputs.isStillFree(project.log())).isFalse();
  }

  /** An option that is added must be tried here, or be one that is only read. */
  @Test
  void every_option_that_names_a_path_is_known_to_this_test() {
    Set<String> written =
        Set.of(
            "--output",
            "--json",
            "--sarif",
            "--annotate",
            "--cache",
            "--csv",
            "--teach",
            "--view",
            "--version",
            "--help");
    Set<String> onlyRead = Set.of("--rules", "--carry", "--guideline", "--replies");
    Set<String> unknown = new TreeSet<>();
    Main.line("")
        .getSubcommands()
        .values()
        .forEach(
            command ->
                command.getCommandSpec().options().stream()
                    .filter(o -> o.type() == Path.class || o.auxiliaryTypes()[0] == Path.class)
                    .map(o -> o.longestName())
                    .filter(name -> !written.contains(name) && !onlyRead.contains(name))
                    .forEach(unknown::add));
    assertThat(unknown)
        .as("options to be tried in this test, or named among those that are only read")
        .isEmpty();
  }
}
