package clearbed.read.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A line of dashes below headings shows where the columns of plain text begin. */
class DashedColumnsTest {
  @Test
  void lines_are_cut_where_the_dashes_begin() {
    assertThat(
            DashedColumns.drawn(
                List.of(
                    "TILE",
                    "",
                    "MARK   BODY      RM",
                    "-----  --------  ----",
                    "MOS-1  Glass     Pool")))
        .containsExactly(
            "TILE",
            "",
            "| MARK | BODY | RM |",
            "| ----- | -------- | ---- |",
            "| MOS-1 | Glass | Pool |");
  }

  @Test
  void words_that_reach_over_a_column_leave_the_lines_as_they_are() {
    List<String> lines =
        List.of("A heading of many words", "---  ---  ---", "Words all the way along");
    assertThat(DashedColumns.drawn(lines)).isEqualTo(lines);
  }

  @Test
  void a_line_of_dashes_alone_is_no_table() {
    List<String> lines = List.of("TITLE", "-----------", "Words");
    assertThat(DashedColumns.drawn(lines)).isEqualTo(lines);
  }
}
