package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A row that does not say what it is of is a row all the same. */
class UnscheduledRowsTest {
  @TempDir Path folder;

  @BeforeEach
  void schedule() throws IOException {
    Files.writeString(
        folder.resolve("finishes.csv"),
        "Code,Finish,Where\nVF-01,\"Glass mosaic, opaque\",Bar front\nF-02,Porcelain tile,Kitchen\n"
            + "F-03,Oak flooring,Lounge\nF-04,\"Cast glass tile, opaque\",Washroom\n");
  }

  private Checked withNote(String note) throws IOException {
    return Checked.ofFiles(
        folder,
        "09 30 00.txt",
        "SECTION 09 30 00 - GLASS TILING\nPART 3 - EXECUTION\n3.1 LAYING\nA. " + note + "\n");
  }

  @Test
  void an_undecided_row_among_rows_that_say_what_they_are_is_scheduled() throws IOException {
    Checked c = withNote("F-03 meets F-04 at a metal strip.");
    assertThat(c.findings("unscheduled-tag")).isEmpty();
  }

  @Test
  void a_mark_without_any_row_is_not() throws IOException {
    Checked c = withNote("F-09: glass tile laid on F-04.");
    assertThat(c.findings("unscheduled-tag"))
        .singleElement()
        .satisfies(f -> assertThat(f.tags()).containsExactly("F-09"));
  }

  @Test
  void a_row_in_a_table_of_grounds_that_comes_first_takes_nothing_from_the_schedule()
      throws IOException {
    Files.writeString(
        folder.resolve("beds.csv"),
        "Code,Substrate,Mortar\nVF-01,Cement board,ANSI A118.15\nF-03,Concrete slab,ANSI A118.4\n");
    Checked c = withNote("VF-01: opaque glass mosaic.");
    assertThat(c.findings("unscheduled-tag")).isEmpty();
  }
}
