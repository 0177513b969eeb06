package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

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
        "check|PATH is missing",
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
}
