package clearbed.report;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.report.Report;
import java.util.List;
import org.junit.jupiter.api.Test;

class ConsoleSummaryTest {
  private static final String NEXT = "Written to clearbed-findings.xlsx; start with its Questions.";

  @Test
  void totals_come_first_then_the_worst_entry_and_last_the_next_step() {
    List<String> lines =
        ConsoleSummary.text(DemoReport.report(), 80, 24, false, NEXT).lines().toList();
    assertThat(lines.get(0)).isEqualTo("4 documents, 8 glass tiles.");
    assertThat(lines.get(1)).isEqualTo("Open: 17 errors, 6 warnings, 1 note.");
    assertThat(lines.get(2)).isEqualTo("Besides: 1 not reported by a rule file's wish.");
    assertThat(lines.get(3)).startsWith("not read  Moorhen Baths/details.pdf: pages 1 to 4");
    assertThat(lines.get(4)).isEqualTo("Not read (ignored): 1 file: Moorhen Baths/logo.png");
    assertThat(lines.get(5))
        .startsWith("Partly read: 1 document: Moorhen Baths/finish")
        .endsWith("; see the sheet Documents");
    assertThat(lines.get(7)).startsWith("GT-4").contains("3 errors, 1 warning: bond-strength");
    assertThat(lines.get(lines.size() - 1)).isEqualTo(NEXT);
  }

  @Test
  void without_colour_there_is_no_control_character_even_from_the_documents() {
    Report demo = DemoReport.report();
    Report nasty =
        new Report(
            demo.run(),
            List.of(
                new Report.DocumentSummary(
                    "a\u001b[2J.pdf",
                    "pdf",
                    clearbed.model.document.Document.Status.UNREADABLE,
                    "torn\u0007",
                    0,
                    0,
                    List.of())),
            demo.entries(),
            demo.findings(),
            demo.verdicts(),
            demo.calculations(),
            demo.checks());
    assertThat(ConsoleSummary.text(nasty, 80, 24, false, "").replace("\n", ""))
        .doesNotContainPattern("\\p{Cntrl}");
    assertThat(ConsoleSummary.text(nasty, 80, 24, true, "")).contains("\u001b[1;31m17 errors");
  }

  @Test
  void no_line_is_wider_than_the_terminal_and_it_fits_the_screen() {
    String text = ConsoleSummary.text(DemoReport.report(), 50, 12, false, NEXT);
    assertThat(text.lines()).allMatch(line -> line.length() <= 50);
    assertThat(text.lines().count()).isLessThanOrEqualTo(13);
    assertThat(text).containsPattern("and \\d+ tiles more with findings");
  }

  @Test
  void a_clean_set_says_so() {
    Report clean = DemoReport.report("2026-03-02", finding -> false);
    assertThat(ConsoleSummary.text(clean, 80, 24, false, "")).contains("Nothing open.");
  }
}
