package clearbed.strangers;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.read.FaultCorpus;
import clearbed.read.HostileFiles;
import clearbed.samples.Outline;
import clearbed.samples.Rendering;
import clearbed.samples.Schedule;
import clearbed.strangers.Attempt.Wanted;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/** Files of every format that are flipped, cut, spliced, or changed behind their checksums. */
final class DamagedDocuments {
  private static final int FLIPS = 20;
  private static final int CUTS = 14;
  private static final int SPLICES = 6;
  private static final int CHANGED_PARTS = 12;

  private static final String SECTION =
      """
      @project Quarry Lane
      @number 09 30 00
      @title Tiling
      @date 2026-01-01
      @scheme csi
      # PRODUCTS
      ## TILE
      - GT-61: Glass tile, 4 x 4 in, set in ANSI A118.15 mortar.
      """;

  private static final String SCHEDULE =
      """
      @title
      Tile schedule
      @columns
      tag | | Tag | 10
      material | | Material | 24
      mortar | | Mortar | 14
      @rows
      GT-61 | Glass tile | ANSI A118.15
      """;

  private DamagedDocuments() {}

  static List<Attempt> all() throws IOException {
    List<Attempt> out = new ArrayList<>();
    Random random = new Random(41);
    for (Map.Entry<String, byte[]> sound : FaultCorpus.sound().entrySet()) {
      String format = sound.getKey();
      byte[] bytes = sound.getValue();
      for (int i = 0; i < FLIPS; i++) out.add(flipped(format, i, bytes, random));
      for (int i = 0; i < CUTS; i++) out.add(cut(format, i, bytes));
      for (int i = 0; i < SPLICES; i++) out.add(spliced(format, i, bytes, random));
    }
    for (String format : List.of("docx", "odt"))
      addChanged(out, format, Rendering.outline(Outline.parse(SECTION), "section." + format));
    for (String format : List.of("xlsx", "ods"))
      addChanged(
          out, format, Rendering.schedule(Schedule.parse(SCHEDULE), "Tile", "schedule." + format));
    addChanged(
        out,
        "zip",
        HostileFiles.zip("note.txt", "GT-61: glass tile in ANSI A118.15 mortar.".getBytes(UTF_8)));
    return out;
  }

  private static Attempt flipped(String format, int i, byte[] bytes, Random random) {
    byte[] copy = bytes.clone();
    for (int n = 1 << i % 10; n > 0; n--)
      copy[random.nextInt(copy.length)] ^= (byte) (1 << random.nextInt(8));
    return Attempt.document(
        "bits flipped", "flip-%02d.%s".formatted(i, format), alone(format), () -> copy);
  }

  private static Attempt cut(String format, int i, byte[] bytes) {
    byte[] copy = Arrays.copyOf(bytes, (int) ((long) bytes.length * (2 * i + 1) / (2 * CUTS)));
    boolean plain = List.of("txt", "csv", "html").contains(format);
    return Attempt.document(
        "cut short",
        "cut-%02d.%s".formatted(i, format),
        plain ? Wanted.ANSWER_ALONE : Wanted.NAMED,
        () -> copy);
  }

  /**
   * The .doc file bears the title of a section of tile, and a text may come to bear any: what the
   * good documents lack as a set is then asked of that section.
   */
  private static Wanted alone(String format) {
    return format.equals("doc") || format.equals("txt") ? Wanted.ANSWER : Wanted.ANSWER_ALONE;
  }

  /** A stretch of the file comes again elsewhere in it. */
  private static Attempt spliced(String format, int i, byte[] bytes, Random random) {
    byte[] copy = bytes.clone();
    int length = 1 + random.nextInt(Math.max(1, copy.length / 4));
    int from = random.nextInt(copy.length - length + 1);
    int to = random.nextInt(copy.length - length + 1);
    System.arraycopy(bytes, from, copy, to, length);
    return Attempt.document(
        "spliced", "splice-%02d.%s".formatted(i, format), alone(format), () -> copy);
  }

  /** Other words in a part, whose checksum stays what it was. */
  private static void addChanged(List<Attempt> out, String format, byte[] zip) throws IOException {
    for (int i = 0; i < CHANGED_PARTS; i++) {
      String other = "A118." + (20 + i);
      out.add(
          Attempt.document(
              "changed behind its checksum",
              "changed-%02d.%s".formatted(i, format),
              Wanted.NAMED,
              () -> changed(zip, "A118.15", other)));
    }
  }

  static byte[] changed(byte[] zip, String words, String others) throws IOException {
    byte[] changed = zip;
    for (String name : names(zip)) {
      String before = content(zip, name);
      if (!before.contains(words)) continue;
      String after = before.replace(words, others);
      changed = HostileFiles.part(changed, name, text -> after);
      replace(changed, crc(after), crc(before));
    }
    return changed;
  }

  private static List<String> names(byte[] zip) throws IOException {
    List<String> names = new ArrayList<>();
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry()) names.add(e.getName());
    }
    return names;
  }

  private static String content(byte[] zip, String name) throws IOException {
    try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
      for (ZipEntry e = in.getNextEntry(); e != null; e = in.getNextEntry())
        if (e.getName().equals(name)) return new String(in.readAllBytes(), UTF_8);
    }
    throw new IOException(name);
  }

  private static byte[] crc(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(UTF_8));
    return ByteBuffer.allocate(4)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putInt((int) sum.getValue())
        .array();
  }

  private static void replace(byte[] in, byte[] words, byte[] others) {
    for (int i = 0; i + 4 <= in.length; i++)
      if (Arrays.equals(in, i, i + 4, words, 0, 4)) System.arraycopy(others, 0, in, i, 4);
  }
}
