package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;

/** How long a paragraph of a tile section takes. */
public final class TimeOfText {
  private TimeOfText() {}

  /** Seconds of processor time. */
  public static double seconds(Recogniser recogniser, String text) {
    List<Block> blocks = new ArrayList<>();
    for (String line : List.of("SECTION 09 30 00 GLASS TILING", "2.1 GLASS TILE", text))
      blocks.add(
          Paragraph.body(
              new Origin("a.docx", null, null, null, blocks.size() + 1, null, line), line));
    Document document = Document.read("a.docx", "docx", blocks, List.of());
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    assertThat(recogniser.facts(document).sections()).isNotEmpty();
    return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9;
  }
}
