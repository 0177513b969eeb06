package clearbed.strangers;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.read.FaultCorpus;
import clearbed.read.HostileFiles;
import clearbed.strangers.Attempt.Wanted;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.CRC32;

/** Zip files whose names, places, sizes or kinds of entries play tricks. */
final class HostileArchives {
  private static final int DRAWN = 30;
  private static final int LINK = 0xA1FF;
  private static final int FIFO = 0x11A4;
  private static final int DEVICE = 0x61A4;

  /** One entry as its two headers tell it, which need not agree. */
  private record Item(String local, String central, byte[] bytes, int mode, int flags, int extra) {
    static Item of(String name, String words) {
      return new Item(name, name, words.getBytes(UTF_8), 0x81A4, 0x800, 0);
    }

    Item mode(int other) {
      return new Item(local, central, bytes, other, flags, extra);
    }

    Item flags(int other) {
      return new Item(local, central, bytes, mode, other, extra);
    }

    Item central(String other) {
      return new Item(local, other, bytes, mode, flags, extra);
    }

    /** Bytes of an extra field that says nothing. */
    Item extra(int length) {
      return new Item(local, central, bytes, mode, flags, length);
    }
  }

  private HostileArchives() {}

  static List<Attempt> all() throws IOException {
    List<Attempt> out = new ArrayList<>();
    named().forEach((name, items) -> out.add(attempt("names in archives", name, () -> zip(items))));
    for (Map.Entry<String, byte[]> odd : odd().entrySet())
      out.add(attempt("odd archives", odd.getKey(), odd::getValue));
    byte[] docx = FaultCorpus.sound().get("docx");
    for (String part :
        List.of(
            "word/document.xml",
            "WORD/DOCUMENT.XML",
            "word/document.xml ",
            "word\\document.xml",
            "/word/document.xml",
            "./word/document.xml",
            "word//document.xml",
            "word/../word/document.xml",
            "word/document.xml/",
            "[Content_Types].xml",
            "[content_types].xml"))
      out.add(
          Attempt.document(
              "two parts of a name",
              "twice-%02d.docx".formatted(out.size()),
              Wanted.ANSWER_ALONE,
              () -> zip(twice(docx, part))));
    for (int i = 0; i < DRAWN; i++) {
      Random random = new Random(3100 + i);
      List<Item> items = new ArrayList<>();
      for (int n = random.nextInt(30); n >= 0; n--) items.add(drawn(random));
      out.add(attempt("archives by lot", "drawn-%02d".formatted(i), () -> zip(items)));
    }
    return out;
  }

  private static Attempt attempt(String kind, String name, Attempt.Content content) {
    return Attempt.document(kind, name + ".zip", Wanted.ANSWER_ALONE, content);
  }

  private static List<Item> twice(byte[] docx, String name) throws IOException {
    List<Item> items = new ArrayList<>();
    for (Map.Entry<String, byte[]> part : Zips.parts(docx).entrySet())
      items.add(new Item(part.getKey(), part.getKey(), part.getValue(), 0x81A4, 0x800, 0));
    String other = HostileFiles.WORD.formatted("<w:p><w:r><w:t>Bore</w:t></w:r></w:p>");
    items.add(Item.of(name, other));
    return items;
  }

  private static Map<String, List<Item>> named() {
    String note = "Lay pipe to falls.";
    String other = "Lay gutters to falls.";
    Map<String, List<Item>> out = new LinkedHashMap<>();
    out.put("case", List.of(Item.of("note.txt", note), Item.of("NOTE.TXT", other)));
    out.put("same", List.of(Item.of("note.txt", note), Item.of("note.txt", other)));
    out.put("same-often", java.util.Collections.nCopies(500, Item.of("note.txt", note)));
    out.put("dots-at-end", List.of(Item.of("note.txt", note), Item.of("note.txt...", other)));
    out.put("blank-at-end", List.of(Item.of("note.txt", note), Item.of("note.txt ", other)));
    out.put("composed", List.of(Item.of("é.txt", note), Item.of("e\u0301.txt", other)));
    out.put("ligature", List.of(Item.of("ﬁ.txt", note), Item.of("fi.txt", other)));
    out.put("slashes", List.of(Item.of("a/note.txt", note), Item.of("a\\note.txt", other)));
    out.put("file-and-folder", List.of(Item.of("a", note), Item.of("a/note.txt", other)));
    out.put("folder-with-words", List.of(Item.of("a/", note), Item.of("a/note.txt", other)));
    out.put("dots", List.of(Item.of("./note.txt", note), Item.of("a/./b/../note.txt", other)));
    for (String device : List.of("CON", "nul.txt", "COM1.txt", "LPT9", "aux.docx", "prn .txt"))
      out.put("device-" + device.strip(), List.of(Item.of(device, note)));
    for (String path :
        List.of(
            "/tmp/note.txt",
            "//x.invalid/share/note.txt",
            "\\\\x.invalid\\c$\\note.txt",
            "C:note.txt",
            "file:///etc/note.txt",
            "~/note.txt",
            "$HOME/note.txt",
            "`id`.txt",
            "a:b.txt",
            "note.txt::$DATA",
            "note.txt:stream",
            "..",
            "...",
            "....//note.txt",
            "..%2f..%2fnote.txt",
            "%2e%2e/note.txt",
            "\u2025/note.txt",
            "\uff0e\uff0e/note.txt",
            "a\tb.txt",
            "a\rb.txt",
            "\u0085.txt",
            "\u2028.txt",
            "\ufeffnote.txt",
            "-o.txt",
            "--carry=x.txt",
            "@note.txt",
            "note.txt\u0000.exe",
            "*.txt",
            "?.txt",
            "<b>.txt",
            "\"note\".txt",
            "'.txt",
            "|note.txt",
            "note.txt/../../../up.txt",
            "😀.txt",
            "\ud83d.txt",
            "x".repeat(255) + ".txt",
            "é".repeat(200) + ".txt",
            "a/".repeat(200) + "note.txt"))
      out.put("path-%02d".formatted(out.size()), List.of(Item.of(path, note)));
    out.put("link", List.of(Item.of("note.txt", "/etc/passwd").mode(LINK)));
    out.put("link-folder", List.of(Item.of("a", "/tmp").mode(LINK), Item.of("a/note.txt", note)));
    out.put("pipe", List.of(Item.of("note.txt", "").mode(FIFO)));
    out.put("device-file", List.of(Item.of("note.txt", note).mode(DEVICE)));
    out.put("all-may", List.of(Item.of("note.txt", note).mode(0x8FFF)));
    out.put("other-name-inside", List.of(Item.of("note.txt", note).central("../up.txt")));
    out.put("other-kind-inside", List.of(Item.of("note.exe", note).central("note.txt")));
    out.put("no-utf-8", List.of(Item.of("nöte.txt", note).flags(0)));
    out.put("locked-flag", List.of(Item.of("note.txt", note).flags(0x801)));
    out.put("all-flags", List.of(Item.of("note.txt", note).flags(0xFFFF)));
    out.put("extra", List.of(Item.of("note.txt", note).extra(60_000)));
    return out;
  }

  private static Map<String, byte[]> odd() throws IOException {
    Map<String, byte[]> out = new LinkedHashMap<>();
    byte[] sound = zip(List.of(Item.of("note.txt", "Lay pipe to falls.")));
    out.put("words-before", joined("#!/bin/sh\n".repeat(900).getBytes(UTF_8), sound));
    out.put("words-after", joined(sound, "trailing".repeat(9_000).getBytes(UTF_8)));
    out.put("two-in-a-row", joined(sound, sound));
    out.put("pdf-first", joined("%PDF-1.4\n".getBytes(UTF_8), sound));
    out.put("ends-often", joined(sound, "PK\5\6".repeat(20_000).getBytes(ISO_8859_1)));
    out.put("starts-often", joined("PK\3\4".repeat(20_000).getBytes(ISO_8859_1), sound));
    out.put("comment-of-an-end", comment(sound, "PK\5\6" + "\0".repeat(18)));
    int[] ends = {8, 10, 12, 16};
    for (int at : ends)
      for (int value : new int[] {0, 0x7FFF, -1})
        out.put("end-%d-%d".formatted(at, value), end(sound, at, value));
    byte[] many = zip(java.util.Collections.nCopies(9_000, Item.of("n.dwg", "")));
    out.put("same-9000", many);
    List<Item> empties = new ArrayList<>();
    for (int i = 0; i < 9_000; i++) empties.add(Item.of("d" + i + "/", ""));
    out.put("folders-9000", zip(empties));
    for (int method : new int[] {1, 6, 8, 9, 12, 14, 93, 95, 99, 255})
      out.put("method-" + method, method(sound, method));
    out.put("bytes-of-itself", joined(sound, sound, sound, sound));
    return out;
  }

  private static byte[] joined(byte[]... pieces) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte[] piece : pieces) out.writeBytes(piece);
    return out.toByteArray();
  }

  private static byte[] comment(byte[] zip, String words) {
    byte[] out = joined(zip, words.getBytes(ISO_8859_1));
    ByteBuffer.wrap(out)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort(zip.length - 2, (short) words.length());
    return out;
  }

  private static byte[] end(byte[] zip, int at, int value) {
    byte[] out = zip.clone();
    ByteBuffer.wrap(out)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort(out.length - 22 + at, (short) value);
    return out;
  }

  private static byte[] method(byte[] zip, int method) {
    byte[] out = zip.clone();
    ByteBuffer bytes = ByteBuffer.wrap(out).order(ByteOrder.LITTLE_ENDIAN);
    bytes.putShort(8, (short) method);
    bytes.putShort(bytes.getInt(out.length - 6) + 10, (short) method);
    return out;
  }

  /** Stored, as the tricks are in the headers. */
  private static byte[] zip(List<Item> items) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream directory = new ByteArrayOutputStream();
    for (Item item : items) {
      int at = out.size();
      out.writeBytes(header(item, item.local(), 0x04034b50, 0));
      out.writeBytes(item.bytes());
      directory.writeBytes(header(item, item.central(), 0x02014b50, at));
    }
    ByteBuffer end = ByteBuffer.allocate(22).order(ByteOrder.LITTLE_ENDIAN);
    end.putInt(0x06054b50).putInt(0).putShort((short) items.size()).putShort((short) items.size());
    end.putInt(directory.size()).putInt(out.size()).putShort((short) 0);
    out.writeBytes(directory.toByteArray());
    out.writeBytes(end.array());
    return out.toByteArray();
  }

  private static byte[] header(Item item, String named, int sign, int at) {
    boolean central = at > 0 || sign == 0x02014b50;
    byte[] name = named.getBytes(UTF_8);
    int extra = item.extra() == 0 ? 0 : item.extra() + 4;
    ByteBuffer out =
        ByteBuffer.allocate((central ? 46 : 30) + name.length + extra)
            .order(ByteOrder.LITTLE_ENDIAN);
    CRC32 sum = new CRC32();
    sum.update(item.bytes());
    out.putInt(sign);
    if (central) out.putShort((short) 0x314);
    out.putShort((short) 20).putShort((short) item.flags()).putShort((short) 0).putInt(0x5A210000);
    out.putInt((int) sum.getValue()).putInt(item.bytes().length).putInt(item.bytes().length);
    out.putShort((short) name.length).putShort((short) extra);
    if (central)
      out.putShort((short) 0)
          .putShort((short) 0)
          .putShort((short) 0)
          .putInt(item.mode() << 16)
          .putInt(at);
    out.put(name);
    if (extra > 0) out.putShort((short) 0x7777).putShort((short) item.extra());
    return out.array();
  }

  private static Item drawn(Random random) {
    String[] pieces = {"a", "..", "/", "\\", ".txt", ".zip", ".docx", " ", ":", "\u0301", "A", "."};
    StringBuilder name = new StringBuilder();
    for (int i = random.nextInt(8); i >= 0; i--) name.append(pieces[random.nextInt(pieces.length)]);
    Item item = Item.of(name.toString(), "Lay pipe to falls " + random.nextInt(4));
    return switch (random.nextInt(8)) {
      case 0 -> item.mode(random.nextInt(0x10000));
      case 1 -> item.flags(random.nextInt(0x10000) & ~1);
      case 2 -> item.central(".." + name);
      case 3 -> item.extra(random.nextInt(300));
      default -> item;
    };
  }
}
