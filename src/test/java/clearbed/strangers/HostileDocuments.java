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
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Documents made to take time, memory or the reader's trust. */
final class HostileDocuments {
  private static final int REPEATED = 20_000;
  private static final int PIECES = 200;
  private static final int CELLS = 60;
  private static final long SEED = 26;

  /** Names and words that mean something to a terminal, a browser, a sheet or a template. */
  static final List<String> SPEAKING =
      List.of(
          "[click](javascript:alert(1))",
          "{0} {1}",
          "=HYPERLINK(\"http://x.invalid\",\"GT\")",
          "+1+cmd|' /C calc'!A0",
          "@SUM(A1)",
          "-2+3",
          "<script>alert(1)</script>",
          "<img src=http://x.invalid/a>",
          "\u202eexe.xslx",
          "\u2066\u2069\u200f",
          "\u001b[2J\u001b]0;own\u0007",
          "%s%n%d",
          "${jndi:ldap://x.invalid}",
          "![](http://x.invalid/p.png)",
          "<http://x.invalid>",
          "http://x.invalid/",
          "\\\\x.invalid\\share",
          "](http://x.invalid)",
          "&#106;avascript:",
          "\\[click\\](javascript:alert(1))",
          "\u0000\u0001\ufffe");

  private HostileDocuments() {}

  static List<Attempt> all() throws IOException {
    List<Attempt> out = new ArrayList<>();
    for (Map.Entry<String, byte[]> file : HostileFiles.all().entrySet())
      out.add(
          Attempt.document(
              "entities, bombs, locks", file.getKey(), Wanted.ANSWER_ALONE, file::getValue));
    addRepeats(out);
    addTables(out);
    addArchives(out);
    addSpeaking(out);
    addDepths(out);
    return out;
  }

  private static void addRepeats(List<Attempt> out) throws IOException {
    List<String> pieces = OwnWords.pieces(PIECES, SEED);
    for (int i = 0; i < PIECES; i++) {
      String piece = pieces.get(i);
      String format = List.of("txt", "docx", "html", "odt").get(i % 4);
      String text = "GT-71: cast glass tile, " + piece.repeat(1 + REPEATED / piece.length());
      out.add(
          Attempt.document(
              "20,000 characters of one of our words",
              "repeat-%03d.%s".formatted(i, format),
              Wanted.ANSWER,
              () -> paragraph(format, text)));
    }
    for (int i = 0; i < CELLS; i++) {
      String piece = pieces.get(i * 3);
      String cell = "\"" + piece.repeat(1 + 5_000 / piece.length()).replace("\"", "\"\"") + "\"";
      String table = "Tag,Material,Mortar,Remarks\nGT-72,Glass tile," + cell + "," + cell + "\n";
      out.add(
          Attempt.document(
              "long cells",
              "cells-%02d.csv".formatted(i),
              Wanted.ANSWER,
              () -> table.getBytes(UTF_8)));
    }
    String line = "Lay pipe to falls of 1 in 80 and ";
    out.add(text("one line of 5 MB", line.repeat((5 << 20) / line.length())));
    out.add(text("one word of 5 MB", "a".repeat(5 << 20)));
    out.add(text("one figure of 1 MB", "9".repeat(1 << 20)));
    out.add(text("blanks of 5 MB", " ".repeat(5 << 20)));
    out.add(text("tabs of 1 MB", "x" + "\t".repeat(1 << 20) + "y"));
    out.add(text("brackets of 1 MB", "[".repeat(1 << 20)));
    out.add(text("a million lines", "1. Lay pipe\n".repeat(1_000_000)));
    out.add(text("a million short blanks", "a b\n\n".repeat(500_000)));
  }

  private static Attempt text(String name, String text) {
    return Attempt.document(
        "very long text",
        name.replace(' ', '-') + ".txt",
        Wanted.ANSWER,
        () -> text.getBytes(UTF_8));
  }

  static byte[] paragraph(String format, String text) throws IOException {
    String escaped = text.replace("&", "&amp;").replace("<", "&lt;");
    return switch (format) {
      case "docx" ->
          HostileFiles.part(
              FaultCorpus.sound().get("docx"),
              "word/document.xml",
              x ->
                  HostileFiles.WORD.formatted(
                      "<w:p><w:r><w:t xml:space=\"preserve\">" + escaped + "</w:t></w:r></w:p>"));
      case "odt" ->
          HostileFiles.part(
              FaultCorpus.sound().get("odt"),
              "content.xml",
              x ->
                  HostileFiles.ODF.formatted(
                      "<office:text><text:p>" + escaped + "</text:p></office:text>"));
      case "html" -> ("<p>" + escaped + "</p>").getBytes(UTF_8);
      default -> text.getBytes(UTF_8);
    };
  }

  private static void addTables(List<Attempt> out) {
    for (int columns : new int[] {100, 1_000, 16_384, 100_000}) {
      out.add(csv("columns-" + columns, columns, 4, c -> "Grout " + c));
      out.add(csv("empty-columns-" + columns, columns, 4, c -> c % 50 == 0 ? "Mortar" : ""));
      out.add(csv("figure-columns-" + columns, columns, 4, c -> c + " mm"));
    }
    out.add(csv("a million commas", 1_000_000, 1, c -> ""));
    for (int rows : new int[] {10_000, 100_000}) {
      out.add(csv("rows-" + rows, 4, rows, c -> List.of("GT-1", "Glass", "3 mm", "Pool").get(c)));
      out.add(sheet("rows-" + rows, 4, rows));
    }
    out.add(csv("a million rows", 3, 1_000_000, c -> "x" + c));
    out.add(sheet("columns-16384", 16_384, 3));
    out.add(sheet("columns-2000", 2_000, 20));
    out.add(csv("a million quotes", 1, 1, c -> "\"".repeat(1_000_000)));
    out.add(csv("an open quote", 4, 20_000, c -> c == 0 ? "\"GT" : "x"));
  }

  private static Attempt csv(String name, int columns, int rows, IntFunction<String> cell) {
    return Attempt.document(
        "tables wide and long",
        name.replace(' ', '-') + ".csv",
        Wanted.ANSWER,
        () -> {
          StringBuilder line = new StringBuilder("Tag");
          for (int c = 0; c < columns; c++) line.append(',').append(cell.apply(c));
          return (line + "\n").repeat(rows).getBytes(UTF_8);
        });
  }

  private static Attempt sheet(String name, int columns, int rows) {
    return Attempt.document(
        "tables wide and long",
        name + ".xlsx",
        Wanted.ANSWER,
        () -> {
          StringBuilder row = new StringBuilder("<row>");
          for (int c = 0; c < columns; c++)
            row.append("<c t=\"inlineStr\"><is><t>")
                .append(c % 7 == 0 ? "Glass tile" : "Grout " + c % 90)
                .append("</t></is></c>");
          String all = (row + "</row>").repeat(rows);
          return HostileFiles.part(
              FaultCorpus.sound().get("xlsx"),
              "xl/worksheets/sheet1.xml",
              x -> HostileFiles.SHEET.formatted("<sheetData>" + all + "</sheetData>"));
        });
  }

  private static void addArchives(List<Attempt> out) throws IOException {
    byte[] note = "Lay pipe to falls.".getBytes(UTF_8);
    for (String name :
        List.of(
            "../up.txt",
            "/etc/up.txt",
            "C:\\up.txt",
            "a/../../up.txt",
            "..\\up.txt",
            "con.txt",
            " ",
            ".",
            "..",
            "a//b.txt",
            "a\u0000b.txt",
            "a\nb.txt",
            "\u001b[2Jx.txt",
            "\u202etxt.x",
            "x".repeat(5_000) + ".txt",
            "d/".repeat(3_000) + "x.txt",
            "=1+1.txt",
            "-rf.txt",
            "~$x.docx",
            "__MACOSX/x.txt"))
      out.add(archive("name-" + out.size(), () -> HostileFiles.zip(name, note)));
    for (int deep = 1; deep <= 4; deep++) {
      int levels = deep;
      out.add(archive("deep-" + deep, () -> nested(note, levels)));
    }
    out.add(archive("overlapping", () -> overlapping(10 << 20, 60)));
    out.add(archive("many", () -> many(20_000)));
    out.add(archive("loops", HostileDocuments::loops));
    out.add(archive("bombs", () -> HostileFiles.zip("b.txt", new byte[200 << 20])));
    out.add(archive("twice", () -> twice(note)));
    out.add(archive("empty", () -> many(0)));
  }

  private static Attempt archive(String name, Attempt.Content content) {
    return Attempt.document("archives", "archive-" + name + ".zip", Wanted.ANSWER_ALONE, content);
  }

  private static byte[] nested(byte[] note, int levels) throws IOException {
    byte[] zip = HostileFiles.zip("note.txt", note);
    for (int i = 0; i < levels; i++) zip = HostileFiles.zip("inner.zip", zip);
    return zip;
  }

  private static byte[] many(int count) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (int i = 0; i < count; i++) {
        out.putNextEntry(new ZipEntry(i + ".dwg"));
        out.write(i);
      }
    }
    return bytes.toByteArray();
  }

  private static byte[] loops() throws IOException {
    byte[] loop = HostileFiles.all().get("loop.pdf");
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(bytes)) {
      for (int i = 0; i < 3; i++) {
        out.putNextEntry(new ZipEntry("loop-" + i + ".pdf"));
        out.write(loop);
      }
    }
    return bytes.toByteArray();
  }

  private static byte[] twice(byte[] note) throws IOException {
    byte[] zip = HostileFiles.zip("a.txt", note);
    return overlapped(zip, 2, false);
  }

  /** Many names for one entry. */
  static byte[] overlapping(int size, int names) throws IOException {
    byte[] text = "Lay pipe to falls of 1 in 80.\n".repeat(size / 30).getBytes(UTF_8);
    return overlapped(HostileFiles.zip("a.txt", text), names, true);
  }

  private static byte[] overlapped(byte[] zip, int names, boolean renamed) {
    int end = zip.length - 22;
    ByteBuffer last = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
    int start = last.getInt(end + 16);
    byte[] record = Arrays.copyOfRange(zip, start, end);
    ByteBuffer out =
        ByteBuffer.allocate(start + record.length * names + 22).order(ByteOrder.LITTLE_ENDIAN);
    out.put(zip, 0, start);
    for (int i = 0; i < names; i++) {
      byte[] copy = record.clone();
      if (renamed)
        copy[46] =
            (byte) ("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789".charAt(i));
      out.put(copy);
    }
    byte[] tail = Arrays.copyOfRange(zip, end, zip.length);
    ByteBuffer.wrap(tail)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort(8, (short) names)
        .putShort(10, (short) names)
        .putInt(12, record.length * names);
    return out.put(tail).array();
  }

  /** Words that some output or terminal may obey, in cells that findings quote. */
  private static void addSpeaking(List<Attempt> out) {
    for (int i = 0; i < SPEAKING.size(); i++) {
      String words = SPEAKING.get(i);
      String cell = "\"" + words.replace("\"", "\"\"") + "\"";
      String table =
          "Tag,Material,Mortar,Grout,Remarks\nGT-81,Glass tile "
              + words.replace("\"", "'").replace(",", " ")
              + ","
              + cell
              + ",TBD "
              + words.replace("\"", "'").replace(",", " ")
              + ","
              + cell
              + "\n";
      out.add(
          Attempt.document(
              "words that outputs might obey",
              "words-%02d.csv".formatted(i),
              Wanted.ANSWER,
              () -> table.getBytes(UTF_8)));
      String name = words.replace("/", "_").replace("\u0000", "");
      out.add(
          Attempt.document(
              "names that outputs might obey",
              name + ".txt",
              Wanted.ANSWER,
              () -> "GT-82: glass tile, mortar TBD.".getBytes(UTF_8)));
    }
  }

  private static void addDepths(List<Attempt> out) {
    for (int deep : new int[] {100, 10_000, 200_000}) {
      out.add(deep("table.html", deep, "<table><tr><td>", "</td></tr></table>", ""));
      out.add(deep("div.html", deep, "<div>", "</div>", ""));
      out.add(deep("list.html", deep, "<ul><li>", "</li></ul>", ""));
      out.add(deep("group.rtf", deep, "{", "}", "{\\rtf1 "));
      out.add(deep("quote.md", deep, "> ", "", ""));
      out.add(deep("list.md", deep, "- ", "", ""));
      out.add(deep("array.pdf", deep, "[", "]", "%PDF-1.4\n1 0 obj\n"));
      out.add(
          deep(
              "xml-2003.xml",
              deep,
              "<a>",
              "</a>",
              "<?xml version=\"1.0\"?><?mso-application progid=\"Word.Document\"?>"));
    }
  }

  private static Attempt deep(String name, int deep, String open, String close, String head) {
    return Attempt.document(
        "nested deep",
        deep + "-" + name,
        Wanted.ANSWER_ALONE,
        () -> (head + open.repeat(deep) + "drain" + close.repeat(deep)).getBytes(ISO_8859_1));
  }
}
