package clearbed.read;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.samples.Outline;
import clearbed.samples.Rendering;
import clearbed.samples.Schedule;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.poi.hwpf.HWPFDocument;

/**
 * Damaged and hostile files of every format, made anew for each run from a seed. What can still be
 * read of them speaks of drains, so that it states nothing of tile.
 */
public final class FaultCorpus {
  private static final long SEED = 20_260_101;
  private static final int CUTS = 16;
  private static final int FLIPPED_COPIES = 24;

  private static final String SECTION =
      """
      @project Quarry Lane Car Park
      @number 33 40 00
      @title Storm Drainage
      @date 2026-01-01
      @scheme csi
      # GENERAL
      ## SUMMARY
      - Section includes gutters, downpipes and soakaways.
      - Rodding eyes stand at every bend.
      # PRODUCTS
      ## PIPE
      - Pipe: Ductile iron, 6 in diameter.
      # EXECUTION
      ## INSTALLATION
      - Lay pipe to falls of 1 in 80.
      """;

  private static final String SCHEDULE =
      """
      @title
      Drain schedule
      @columns
      mark | | Mark | 10
      kind | | Drain | 24
      bore | | Bore | 10
      @rows
      D-1 | Gutter | 6 in
      D-2 | Downpipe | 4 in
      D-3 | Soakaway | 8 in
      """;

  private FaultCorpus() {}

  /** A sound file of each format, by extension. */
  public static Map<String, byte[]> sound() throws IOException {
    Outline section = Outline.parse(SECTION);
    Schedule schedule = Schedule.parse(SCHEDULE);
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (String format : new String[] {"docx", "pdf", "txt", "html", "rtf", "odt"}) {
      files.put(format, Rendering.outline(section, "section." + format));
    }
    for (String format : new String[] {"xlsx", "xls", "csv", "ods"}) {
      files.put(format, Rendering.schedule(schedule, "Drains", "schedule." + format));
    }
    files.put("doc", HostileFiles.doc("Lay pipe to falls of 1 in 80."));
    files.put("zip", HostileFiles.zip("note.txt", "Lay pipe to falls.".getBytes(UTF_8)));
    return files;
  }

  /** Every bad file by its name. */
  public static Map<String, byte[]> bad() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    for (Map.Entry<String, byte[]> sound : sound().entrySet()) {
      addCut(files, sound.getKey(), sound.getValue());
      addFlipped(files, sound.getKey(), sound.getValue());
    }
    files.putAll(HostileFiles.all());
    return files;
  }

  private static void addCut(Map<String, byte[]> files, String format, byte[] bytes) {
    for (int i = 0; i < CUTS; i++) {
      int length = (int) ((long) bytes.length * i / CUTS);
      files.put("cut-%02d.%s".formatted(i, format), Arrays.copyOf(bytes, length));
    }
  }

  /** From one flipped bit to a few hundred, anywhere in the file. */
  private static void addFlipped(Map<String, byte[]> files, String format, byte[] bytes) {
    Random random = new Random(SEED + format.hashCode());
    for (int i = 0; i < FLIPPED_COPIES; i++) {
      byte[] copy = bytes.clone();
      for (int n = 1 << i % 9; n > 0; n--) {
        copy[random.nextInt(copy.length)] ^= (byte) (1 << random.nextInt(8));
      }
      files.put("flip-%02d.%s".formatted(i, format), copy);
    }
  }

  public static void write(Map<String, byte[]> files, Path folder) throws IOException {
    Files.createDirectories(folder);
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Files.write(folder.resolve(file.getKey()), file.getValue());
    }
  }

  /** Copies of the sample projects, 54 files that are read without a fault. */
  static void writeGood(Path folder) throws IOException {
    for (int copy = 1; copy <= 6; copy++) {
      for (String set : new String[] {"draft", "issued"}) {
        Path into = Files.createDirectories(folder.resolve(copy + "/" + set));
        try (Stream<Path> samples = Files.list(Path.of("sample-specs", set))) {
          for (Path file : samples.toList()) Files.copy(file, into.resolve(file.getFileName()));
        }
      }
    }
  }

  /** A Word 97 file is only to be had by changing one. */
  public static byte[] changed(byte[] doc, String text) throws IOException {
    try (HWPFDocument document = new HWPFDocument(new ByteArrayInputStream(doc))) {
      document.getRange().replaceText(text, false);
      var out = new java.io.ByteArrayOutputStream();
      document.write(out);
      return out.toByteArray();
    }
  }
}
