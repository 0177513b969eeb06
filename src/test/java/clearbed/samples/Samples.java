package clearbed.samples;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * The two sample projects, by the path of each file under {@code sample-specs}.
 *
 * <p>{@code draft} has the faults that {@code samples/draft-labels.json} lists; {@code issued} has
 * none. The words are in {@code src/test/resources/samples}.
 */
final class Samples {
  private Samples() {}

  static Map<String, byte[]> all() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(
        "draft/A-651-tile-schedule.xlsx", schedule("draft/tile-schedule", "Tile Schedule", "xlsx"));
    files.put("draft/A-652-room-finish-schedule.csv", schedule("draft/room-finishes", "", "csv"));
    files.put("draft/A-650-interior-finish-notes.pdf", outline("draft/finish-notes", "pdf"));
    files.put("draft/09-30-00-tiling.docx", outline("draft/tiling", "docx"));
    files.put("draft/07-92-00-joint-sealants.txt", outline("draft/joint-sealants", "txt"));
    files.put("issued/finish-schedule.xlsx", schedule("issued/finish-schedule", "Tile", "xlsx"));
    files.put("issued/093000 Tiling.docx", outline("issued/tiling", "docx"));
    files.put("issued/079200 Joint Sealants.docx", outline("issued/sealants", "docx"));
    files.put("issued/A-710 Tile Layout Notes.pdf", outline("issued/layout-notes", "pdf"));
    return files;
  }

  private static byte[] outline(String name, String extension) {
    return Rendering.outline(Outline.parse(text(name + ".outline")), "file." + extension);
  }

  private static byte[] schedule(String name, String sheet, String extension) {
    return Rendering.schedule(Schedule.parse(text(name + ".sheet")), sheet, "file." + extension);
  }

  private static String text(String name) {
    try (InputStream in = Samples.class.getResourceAsStream("/samples/" + name)) {
      if (in == null) throw new IllegalStateException("no resource samples/" + name);
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }
}
