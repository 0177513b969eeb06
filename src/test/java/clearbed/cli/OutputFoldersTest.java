package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.report.annotate.AnnotatedCopies;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Folders that a run fills, and the documents that it reads. */
class OutputFoldersTest {
  private static final String FAULTY = "Tag,Material,Mortar\nGT-1,Glass tile,ANSI A118.1\n";

  @TempDir Path folder;
  private Path project;
  private Path schedule;
  private Path workbook;

  @BeforeEach
  void a_project_with_a_faulty_schedule() throws IOException {
    project = Files.createDirectories(folder.resolve("project/issue"));
    schedule = Files.writeString(project.resolve("schedule.csv"), FAULTY);
    workbook = folder.resolve("log.xlsx");
  }

  private Shell check(Object... more) {
    List<Object> words = new ArrayList<>(List.of("check", project, "--quiet", "-o", workbook));
    words.addAll(List.of(more));
    return Shell.run(words.toArray());
  }

  private void refused(Shell shell, String why) {
    assertThat(shell.code()).as(shell.err()).isEqualTo(2);
    assertThat(shell.err().lines()).hasSize(1);
    assertThat(shell.err()).startsWith("clearbed: --").contains(why);
    assertThat(workbook).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"--annotate", "--cache"})
  void a_folder_of_the_documents_or_one_above_it_is_not_filled(String option) throws Exception {
    Map<String, String> before = Tree.of(folder);
    Path linked = Files.createSymbolicLink(folder.resolve("linked"), project);
    before.put("linked", "-> " + project);
    for (Path place :
        List.of(project, project.getParent(), folder, project.resolve("../issue/."), linked)) {
      refused(check(option, place), "holds the documents to check");
      refused(check(option, place, "--overwrite"), "holds the documents to check");
      refused(
          Shell.run("check", schedule, "-o", workbook, option, place),
          "holds the documents to check");
    }
    assertThat(Tree.of(folder)).isEqualTo(before);
  }

  @Test
  void reading_alone_does_not_fill_it_either() {
    refused(Shell.run("read", project, "--cache", project), "holds the documents to check");
  }

  @ParameterizedTest
  @CsvSource({"--annotate, drawings", "--cache, drawings"})
  void a_folder_within_that_holds_a_document_is_not_filled(String option, String name)
      throws Exception {
    Path within = Files.createDirectories(project.resolve(name + "/deep"));
    Files.writeString(within.resolve("more.csv"), FAULTY);
    Map<String, String> before = Tree.of(folder);
    refused(check(option, within.getParent()), "holds a document to check, drawings/deep/more.csv");
    assertThat(Tree.of(folder)).isEqualTo(before);
  }

  @ParameterizedTest
  @ValueSource(strings = {"--annotate", "--cache"})
  void a_file_or_a_dead_link_is_no_folder(String option) throws Exception {
    refused(check(option, Files.writeString(folder.resolve("notes"), "x")), "is a file");
    Path dead = Files.createSymbolicLink(folder.resolve("dead"), folder.resolve("gone"));
    refused(check(option, dead), "leads nowhere");
    refused(check(option, folder.resolve("c"), "--json", folder.resolve("c")), "writes too");
  }

  @Test
  void copies_and_cache_within_the_documents_are_no_documents_of_the_next_run() throws Exception {
    Path json = folder.resolve("f.json");
    Path marked = project.resolve("marked");
    Path cache = project.resolve("kept");
    Object[] all = {"--annotate", marked, "--cache", cache, "--json", json};
    assertThat(check(all).code()).isEqualTo(1);
    String first = findings(json);
    assertThat(first).contains("mortar-class");
    assertThat(marked.resolve("schedule.csv.findings.txt")).isRegularFile();

    assertThat(check(all).code()).isEqualTo(1);
    assertThat(findings(json)).isEqualTo(first);
    Shell bare = check("--json", json);
    assertThat(bare.code()).as(bare.err()).isEqualTo(1);
    assertThat(findings(json)).isEqualTo(first);
    assertThat(reasons(json))
        .containsEntry("schedule.csv", "")
        .containsEntry("marked/schedule.csv.findings.txt", "own output, not read")
        .hasEntrySatisfying("kept/CACHEDIR.TAG", reason -> assertThat(reason).isNotEmpty())
        .hasSize(4);
  }

  @Test
  void an_output_file_in_the_folder_of_the_documents_is_as_usual() throws Exception {
    Path log = project.resolve("log.xlsx");
    Path json = project.resolve("log.json");
    for (int run = 0; run < 2; run++) {
      Shell shell = Shell.run("check", project, "-o", log, "--json", json);
      assertThat(shell.code()).as(shell.err()).isEqualTo(1);
      if (run == 1)
        assertThat(shell.out()).contains("Not read, 2 own outputs: log.json, log.xlsx\n");
    }
    assertThat(reasons(json))
        .containsEntry("log.xlsx", "own output, not read")
        .containsEntry("log.json", "own output, not read");
  }

  @Test
  void a_copy_does_not_take_the_place_of_anything_but_an_untouched_copy() throws Exception {
    Path copies = folder.resolve("copies");
    Path list = copies.resolve("schedule.csv" + AnnotatedCopies.LIST_ENDING);
    assertThat(check("--annotate", copies).code()).isEqualTo(1);
    assertThat(check("--annotate", copies).code()).isEqualTo(1);
    Files.delete(workbook);

    Files.writeString(list, Files.readString(list).replace("1. ERROR", "1. settled, ERROR"));
    byte[] worked = Files.readAllBytes(list);
    refused(check("--annotate", copies), "was changed since clearbed wrote it");
    assertThat(list).hasBinaryContent(worked);

    Files.writeString(list, "minutes of the meeting");
    refused(check("--annotate", copies), "is there already and no output of clearbed");
    assertThat(check("--annotate", copies, "--overwrite").code()).isEqualTo(1);
    assertThat(Files.readString(list)).contains("1. ERROR");
    Files.delete(workbook);

    Files.delete(list);
    Files.createLink(list, schedule);
    refused(check("--annotate", copies, "--overwrite"), "among the documents to check");
    Files.delete(list);
    Files.createSymbolicLink(list, schedule);
    refused(check("--annotate", copies, "--overwrite"), "is a link");
    Files.delete(list);
    refused(
        Shell.run("check", project, "-o", workbook, "--json", list, "--annotate", copies),
        "is where --json writes too");
    assertThat(schedule).hasContent(FAULTY.strip());
  }

  @Test
  void what_is_typed_into_a_copy_while_the_run_goes_on_stays() throws Exception {
    Path copies = folder.resolve("copies");
    Path list = copies.resolve("schedule.csv" + AnnotatedCopies.LIST_ENDING);
    assertThat(check("--annotate", copies).code()).isEqualTo(1);
    Files.writeString(list, "minutes of the meeting");
    var checked = clearbed.Checked.of(project);
    assertThat(checked.outcome().findings()).isNotEmpty();
    // What stands between the command and the copies is not asked again: the copies ask themselves.
    var report =
        new clearbed.model.report.Report(
            clearbed.report.DemoReport.report().run(),
            List.of(),
            List.of(),
            checked.outcome().findings(),
            List.of(),
            List.of(),
            List.of());
    AnnotatedCopies.WrittenCopies result =
        AnnotatedCopies.write(report, document -> project.resolve(document), copies);
    assertThat(result.failures()).singleElement().asString().contains("changed since");
    assertThat(list).hasContent("minutes of the meeting");
  }

  private static String findings(Path json) throws IOException {
    return new ObjectMapper().readTree(json.toFile()).get("findings").toString();
  }

  private static Map<String, String> reasons(Path json) throws IOException {
    Map<String, String> reasons = new TreeMap<>();
    for (JsonNode document : new ObjectMapper().readTree(json.toFile()).get("documents")) {
      reasons.put(document.get("path").asText(), document.get("reason").asText());
    }
    return reasons;
  }
}
