package clearbed.strangers;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.strangers.Attempt.Wanted;
import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Tables as text whose bytes are in odd encodings or drawn by lot. */
final class HostileTables {
  private static final int DRAWN = 40;

  private HostileTables() {}

  static List<Attempt> all() {
    List<Attempt> out = new ArrayList<>();
    encoded().forEach((name, bytes) -> out.add(attempt("odd encodings", name, bytes)));
    for (int i = 0; i < DRAWN; i++)
      out.add(
          attempt(
              "tables by lot",
              "drawn-%02d.%s".formatted(i, i % 3 == 0 ? "tsv" : "csv"),
              drawnText(new Random(2800 + i))));
    return out;
  }

  private static Attempt attempt(String kind, String name, byte[] bytes) {
    return Attempt.document(kind, name, Wanted.ANSWER_ALONE, () -> bytes);
  }

  private static Map<String, byte[]> encoded() {
    Map<String, byte[]> out = new LinkedHashMap<>();
    String table = "Mark,Drain,Bore\nD-1,Gutter,6 in\nD-2,Rinne für Öl,4 in\n";
    Map<String, Charset> sets = new LinkedHashMap<>();
    sets.put("utf-16le", UTF_16LE);
    sets.put("utf-16be", UTF_16BE);
    sets.put("utf-32", Charset.forName("UTF-32BE"));
    sets.put("latin", ISO_8859_1);
    for (String name :
        List.of(
            "IBM037",
            "IBM1047",
            "Shift_JIS",
            "ISO-2022-JP",
            "GB18030",
            "EUC-KR",
            "x-MacRoman",
            "UTF-32LE"))
      if (Charset.isSupported(name))
        sets.put(name.toLowerCase(java.util.Locale.ROOT), Charset.forName(name));
    sets.forEach((name, set) -> out.put(name + ".csv", table.getBytes(set)));
    sets.forEach((name, set) -> out.put(name + ".txt", table.repeat(40).getBytes(set)));
    out.put("utf-16-cut.csv", (table + "x").substring(1).getBytes(UTF_16LE));
    byte[] odd = table.getBytes(UTF_16LE);
    out.put("utf-16-odd.csv", java.util.Arrays.copyOf(odd, odd.length - 1));
    out.put("nul-between.csv", table.replace(",", ",\0").getBytes(UTF_8));
    out.put("nul-at-end.csv", (table + "\0".repeat(100_000)).getBytes(UTF_8));
    out.put("nul-first.csv", ("\0" + table).getBytes(UTF_8));
    out.put("line-ends.csv", table.replace("D-2", "\r\r\n\n\rD-2\u0085\u2028").getBytes(UTF_8));
    out.put("old-line-ends.csv", table.replace('\n', '\r').getBytes(UTF_8));
    out.put("form-feeds.csv", table.replace("\n", "\n\f\u000b").getBytes(UTF_8));
    out.put("marks-twice.csv", ("\ufeff\ufeff" + table + "\ufeff").getBytes(UTF_8));
    out.put("broken-utf-8.csv", broken(table));
    out.put("overlong.csv", overlong(table));
    out.put("surrogates.csv", (table + "\ud83d").getBytes(Charset.forName("UTF-16")));
    out.put("end-of-file.csv", (table + "\u001a" + table).getBytes(UTF_8));
    out.put("quotes-amid.csv", table.replace("Gutter", "Gut\"ter\",\"\"\"").getBytes(UTF_8));
    out.put("sep.csv", ("sep=" + "x".repeat(10_000) + "\n" + table).getBytes(UTF_8));
    out.put("commas-as-marks.csv", table.replace(',', '\u001f').getBytes(UTF_8));
    return out;
  }

  private static byte[] broken(String table) {
    byte[] bytes = table.repeat(20).getBytes(UTF_8);
    for (int i = 7; i < bytes.length; i += 31) bytes[i] = (byte) (0x80 + i % 0x7f);
    return bytes;
  }

  private static byte[] overlong(String table) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    for (byte b : table.getBytes(UTF_8)) {
      if (b != ',') out.write(b);
      else out.writeBytes(new byte[] {(byte) 0xc0, (byte) 0xac});
    }
    return out.toByteArray();
  }

  /** Cells, marks and signs in any order, in some encoding. */
  private static byte[] drawnText(Random random) {
    String[] pieces = {
      "Mark", "Drain", "6 in", "1/2", ",", ",", ";", "\t", "|", "\n", "\n", "\r\n", "\"", "\"\"",
      "\0", "\ufeff", "\u2028", " ", "-", "....", "=1+1", "\u00a0", "D-1", "+-----+", "é"
    };
    StringBuilder out = new StringBuilder();
    for (int i = random.nextInt(4_000); i >= 0; i--)
      out.append(pieces[random.nextInt(pieces.length)]);
    Charset set = List.of(UTF_8, UTF_8, UTF_16LE, ISO_8859_1).get(random.nextInt(4));
    return out.toString().getBytes(set);
  }
}
