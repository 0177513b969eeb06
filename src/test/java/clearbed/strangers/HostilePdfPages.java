package clearbed.strangers;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Pages whose boxes, words or lines are odd or absurd. */
final class HostilePdfPages {
  private HostilePdfPages() {}

  /** What is in the page's dictionary, and what is drawn. */
  static Map<String, String[]> all() {
    Map<String, String[]> out = new LinkedHashMap<>();
    String letter = "/MediaBox[0 0 612 792]";
    String words = "BT /F1 12 Tf 72 700 Td (Lay pipe to falls.) Tj ET\n";
    for (String box :
        List.of(
            "[0 0 0 0]",
            "[0 0 1e30 1e30]",
            "[9 9 -9 -9]",
            "[]",
            "[(a)(b)(c)(d)]",
            "7",
            "[0 0 99999999 99999999]"))
      out.put("box-" + out.size(), new String[] {"/MediaBox" + box, words});
    for (String turn : List.of("90", "-90", "45", "2147483647", "(x)", "1e99"))
      out.put(
          "rotate-" + turn.replace("(", "").replace(")", ""),
          new String[] {letter + "/Rotate " + turn, words});
    for (String unit : List.of("0", "-1", "1e30"))
      out.put("unit-" + unit, new String[] {letter + "/UserUnit " + unit, words});
    StringBuilder tiny = new StringBuilder("BT /F1 8 Tf\n");
    StringBuilder turned = new StringBuilder("BT /F1 8 Tf\n");
    StringBuilder rules = new StringBuilder();
    StringBuilder crossing = new StringBuilder();
    Random random = new Random(31);
    for (int i = 0; i < 40_000; i++) {
      tiny.append("1 0 0 1 %d %d Tm (d) Tj%n".formatted(random.nextInt(600), random.nextInt(780)));
      double a = random.nextDouble() * 7;
      turned.append(
          "%.3f %.3f %.3f %.3f 300 400 Tm (drain) Tj%n"
              .formatted(Math.cos(a), Math.sin(a), -Math.sin(a), Math.cos(a)));
      rules.append(
          "%d %d m %d %d l S%n"
              .formatted(random.nextInt(600), i % 780, random.nextInt(600), i % 780));
      if (i < 1_500)
        crossing.append(
            "0 %f m 612 %f l S %f 0 m %f 792 l S%n".formatted(i * 0.5, i * 0.5, i * 0.4, i * 0.4));
    }
    out.put("letters-strewn", new String[] {letter, tiny + "ET"});
    out.put("turned-words", new String[] {letter, turned + "ET"});
    out.put("rules-40000", new String[] {letter, rules + words});
    out.put("grid-1500", new String[] {letter, crossing + words});
    out.put("cells-drawn", new String[] {letter, "0 0 9 9 re S\n".repeat(100_000) + words});
    out.put("words-over-each-other", new String[] {letter, words.repeat(20_000)});
    out.put("states-never-given-back", new String[] {letter, "q\n".repeat(200_000) + words});
    out.put("states-given-back-often", new String[] {letter, "Q\n".repeat(200_000) + words});
    out.put("array-deep", new String[] {letter, "[".repeat(100_000) + words});
    out.put("dictionary-deep", new String[] {letter, "<</A ".repeat(20_000) + words});
    out.put("string-never-ends", new String[] {letter, "BT (" + "x".repeat(200_000)});
    out.put(
        "brackets-in-a-string",
        new String[] {letter, "BT /F1 9 Tf (" + "(".repeat(100_000) + ") Tj ET"});
    out.put("numbers-long", new String[] {letter, "9".repeat(100_000) + " 0 Td " + words});
    out.put("font-0", new String[] {letter, words.replace("12 Tf", "0 Tf")});
    out.put("font-huge", new String[] {letter, words.replace("12 Tf", "1e30 Tf")});
    out.put("font-minus", new String[] {letter, words.replace("12 Tf", "-12 Tf")});
    out.put("spread", new String[] {letter, words.replace("BT", "BT 1e9 Tc -1e9 Tw 1e9 TL")});
    out.put("invisible", new String[] {letter, words.replace("BT", "BT 3 Tr")});
    out.put("far-away", new String[] {letter, words.replace("72 700", "1e7 -1e7").repeat(500)});
    out.put("columns-of-points", new String[] {letter, columns()});
    return out;
  }

  /** A leader of dots in each of many columns. */
  private static String columns() {
    StringBuilder out = new StringBuilder("BT /F1 4 Tf\n");
    for (int x = 0; x < 60; x++)
      for (int y = 0; y < 150; y++)
        out.append("1 0 0 1 %d %d Tm (....) Tj%n".formatted(x * 10, y * 5));
    return out + "ET";
  }
}
