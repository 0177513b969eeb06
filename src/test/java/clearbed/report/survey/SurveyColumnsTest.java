package clearbed.report.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** {@code -Dsurvey.write=true} writes the columns of the page anew. */
class SurveyColumnsTest {
  private static final Path PAGE = Path.of("src/site/survey.md");
  private static final String BEGIN = "<!-- columns -->\n";
  private static final String END = "<!-- end of columns -->\n";

  @Test
  void the_page_has_every_column_and_what_it_means() throws Exception {
    String page = Files.readString(PAGE);
    int from = page.indexOf(BEGIN) + BEGIN.length();
    String today = page.substring(0, from) + columns() + page.substring(page.indexOf(END));
    if (Boolean.getBoolean("survey.write")) Files.writeString(PAGE, page = today);
    assertThat(page).isEqualTo(today);
  }

  @Test
  void text_that_a_spreadsheet_would_compute_can_be_had_back() {
    for (String text : new String[] {"=1", "+x", "-5", "@a", "'=1", "''", "plain", "", "a=b"}) {
      String cell = SurveyTables.plain(text);
      assertThat(cell).doesNotMatch("(?s)[=+@\\-].*");
      assertThat(cell.startsWith("'") ? cell.substring(1) : cell).isEqualTo(text);
    }
  }

  private static String columns() {
    StringBuilder out = new StringBuilder();
    for (SurveyTable table : SurveyTable.values()) {
      out.append("\n`").append(table.file()).append("`: a row is ").append(table.row());
      out.append(".\n\n| Column | What it holds |\n|---|---|\n");
      for (SurveyTable.TableColumn column : table.columns())
        out.append(
            "| `%s` | %s |\n".formatted(column.name(), column.meaning().replace("|", "\\|")));
    }
    return out.append('\n').toString();
  }
}
