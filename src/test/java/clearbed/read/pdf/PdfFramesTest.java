package clearbed.read.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.read.ReadAll;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words with a frame around them, in the order in which a person reads the page. */
class PdfFramesTest {
  @TempDir Path folder;

  private static final float[] ACROSS = {72, 540};

  private List<String> texts(PdfSheet pdf) throws IOException {
    Path file = folder.resolve("framed.pdf");
    pdf.save(file);
    Document document = ReadAll.of(file).get(0);
    return document.blocks().stream()
        .filter(Paragraph.class::isInstance)
        .map(b -> ((Paragraph) b).text())
        .toList();
  }

  @Test
  void a_heading_in_a_frame_is_read_where_it_stands() throws IOException {
    try (PdfSheet pdf = new PdfSheet()) {
      pdf.page()
          .text(72, 80, "These notes are for the tiler.")
          .grid(ACROSS, new float[] {100, 120})
          .text(PdfSheet.BOLD, 11, 76, 114, "Bedding")
          .text(72, 140, "White mortar to ANSI A118.15 is used behind all glass.")
          .grid(ACROSS, new float[] {160, 180})
          .text(PdfSheet.BOLD, 11, 76, 174, "Jointing")
          .text(72, 200, "Unsanded grout to ANSI A118.7 fills the joints.");
      assertThat(texts(pdf))
          .containsExactly(
              "These notes are for the tiler.",
              "Bedding",
              "White mortar to ANSI A118.15 is used behind all glass.",
              "Jointing",
              "Unsanded grout to ANSI A118.7 fills the joints.");
    }
  }

  @Test
  void a_note_in_a_frame_beside_running_text_does_not_break_into_it() throws IOException {
    try (PdfSheet pdf = new PdfSheet()) {
      pdf.page();
      for (int i = 0; i < 4; i++)
        pdf.text(72, 100 + 14 * i, i + 1 + ". The tiler shows sample number " + i + " first.");
      pdf.grid(new float[] {400, 540}, new float[] {90, 150})
          .text(404, 108, "HOLD until the")
          .text(404, 122, "pool is drained");
      assertThat(texts(pdf))
          .hasSize(5)
          .startsWith("1. The tiler shows sample number 0 first.")
          .endsWith("HOLD until the pool is drained");
    }
  }
}
