package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OptionFaultsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "check --date 01/02/2026 x|--date 01/02/2026: give year, month and day, such as 2026-03-31",
        "check --jobs two x|--jobs two: give a whole number",
        "check --caryr old.xlsx x|there is no option --caryr here; perhaps --carry",
        "check --vew=x.html x|there is no option --vew=x.html here; perhaps --view",
        "check --fail-on erorr x|--fail-on erorr: give one of error, warning, note, never",
        "check|PATH is missing",
        "--vresion|there is no option --vresion here; perhaps --version",
        "chekc x|there is no argument chekc here; perhaps check",
        "questions|WORKBOOK is missing",
      })
  void a_wrong_command_line_is_one_plain_line_and_the_usage_comes_on_request(
      String line, String words) {
    Shell run = Shell.run((Object[]) line.split(" "));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).startsWith("clearbed: " + words).contains("--help");
  }

  @Test
  void without_a_command_the_commands_are_named() {
    Shell run = Shell.run();
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).startsWith("clearbed: say what to do: check, read, explain,");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mortar-clas|no check named mortar-clas; did you mean 'mortar-class'? (",
        "zzz|no check named zzz (",
      })
  void a_check_that_is_not_there_is_one_line_with_the_nearest(String check, String words) {
    Shell run = Shell.run("explain", check);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).startsWith("clearbed: " + words);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ZZ-1|--tag ZZ-1: these documents have no such entry (",
        "GT-21|--tag GT-21: these documents have no such entry; did you mean 'GT-2'? (",
      })
  void a_tag_that_no_document_has_is_one_line_and_nothing_is_shown(
      String tag, String words, @TempDir Path folder) throws Exception {
    Path schedule = folder.resolve("schedule.csv");
    Files.writeString(schedule, "Tag,Material,Size\nGT-2,Glass mosaic,1 x 1 in\n");
    Shell run = Shell.run("read", "--tag", tag, schedule);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1);
    assertThat(run.err()).startsWith("clearbed: " + words);
  }
}
