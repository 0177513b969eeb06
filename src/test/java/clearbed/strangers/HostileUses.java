package clearbed.strangers;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.strangers.Attempt.Wanted;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Layers that are added to, names and words on their way to outputs. */
final class HostileUses {

  static final String[] SCRIPTS = {
    "<script>alert(1)</script>",
    "</script><script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "\"><svg onload=alert(1)>",
    "' onmouseover='alert(1)",
    "\" autofocus onfocus=alert(1) x=\"",
    "javascript:alert(1)//",
    "&lt;script&gt;alert(1)&lt;/script&gt;",
    "&#x3c;script&#x3e;alert(1)",
    "<!--<script>",
    "--><script>alert(1)</script>",
    "]]><script>alert(1)</script>",
    "</title><script>alert(1)</script>",
    "</style><script>alert(1)</script>",
    "</textarea><iframe srcdoc='<script>alert(1)</script>'>",
    "<base href=http://x.invalid/>",
    "<meta http-equiv=refresh content='0;url=http://x.invalid/'>",
    "<link rel=stylesheet href=http://x.invalid/>",
    "<form action=http://x.invalid/><input name=a>",
    "<a href=\"data:text/html,<script>alert(1)</script>\">x</a>",
    "${alert(1)} {{alert(1)}} @{alert(1)} <%= 1 %>",
    "\u2028alert(1)\u2029",
    "\ufeff<script\u00a0>alert(1)</script\u00a0>",
    "+ADw-script+AD4-alert(1)+ADw-/script+AD4-",
    "<ScRiPt/x>alert(1)</sCrIpT>",
    "<math><mtext><style><img src=x onerror=alert(1)></style>",
    "<noscript><p title=\"</noscript><img src=x onerror=alert(1)>\">",
    "<plaintext>",
    "<template><script>alert(1)</script></template>",
    "\\\"><script>alert(1)</script>"
  };

  private HostileUses() {}

  static List<Attempt> all() throws IOException {
    List<Attempt> out = new ArrayList<>();
    addLayers(out);
    addScripts(out);
    addNames(out);
    addCaches(out);
    return out;
  }

  /** A layer that lines are added to is somebody's file, and may be anything. */
  private static void addLayers(List<Attempt> out) throws IOException {
    String head = "layer: office\nover: north-america\n";
    List<String> layers =
        List.of(
            "",
            "\ufeff" + head,
            head + "words:\n",
            head + "words: {}\n",
            head + "words: {columns: {}}\n",
            head + "words:\n  columns:\n",
            head + "words: [a]\n",
            head + "words: &a {columns: *a}\n",
            head + "# words:\n",
            head + "words:\r\n  columns:\r\n    Zylk: grout.colour\r\n",
            head + "words:\n\tcolumns: x\n",
            head + "...\n---\n" + head,
            head + "words:\n  columns: |\n    text\n",
            head + "\u0000",
            head + "\u001b[2J: 1\n",
            head + "words:\n  tags: ['(a+)+$']\n",
            head + "#" + "x".repeat(2_000_000) + "\n",
            head + "words:\n  columns:\n" + "    # zylk\n".repeat(50_000),
            "not a layer",
            "PK\u0003\u0004");
    String odd =
        "Tag,Material,%s,Grout\nGT-5,Glass tile,\"%s\",white\nGT-6,Glass tile,\"%s\",grey\n";
    for (int i = 0; i < layers.size(); i++) {
      String layer = layers.get(i);
      out.add(teach("layers to add to", "layer-" + i, layer, odd.formatted("Zylk", "qux", "7")));
    }
    List<String> words = new ArrayList<>(HostileDocuments.SPEAKING);
    words.addAll(
        List.of(
            "a: b",
            "# a",
            "- a",
            "'",
            "''",
            "\\",
            "&a",
            "*a",
            "!!java.net.URL x",
            "{",
            "[",
            "|",
            ">",
            "%YAML",
            "@a",
            "`a`",
            "null",
            "~",
            "yes",
            "1e3",
            "0x1",
            "a\nb: c",
            "? a",
            "x".repeat(100_000),
            "\u0085",
            "\ufeff",
            "\ud83d",
            "---",
            "..."));
    for (int i = 0; i < words.size(); i++) {
      String word = words.get(i).replace("\"", "\"\"");
      out.add(
          teach(
              "words that a layer might obey",
              "taught-" + i,
              head,
              odd.formatted("\"" + word + "\"", word, word)));
    }
  }

  private static Attempt teach(String kind, String name, String layer, String schedule) {
    return new Attempt(
        kind,
        name,
        Wanted.ANSWER,
        (good, folder) -> {
          Path file =
              Files.writeString(folder.resolve("office.yaml"), layer.replace("\ud83d", "?"));
          Path table = folder.resolve("odd.csv");
          Files.write(table, schedule.getBytes(UTF_8));
          return List.of(
              "read",
              good.toString(),
              table.toString(),
              "--teach",
              file.toString(),
              "--document-timeout",
              "" + Trial.DOCUMENT_SECONDS);
        });
  }

  /** In a heading, a tag, a cell, a clause and a name. */
  private static void addScripts(List<Attempt> out) throws IOException {
    for (int i = 0; i < SCRIPTS.length; i++) {
      String script = SCRIPTS[i];
      String cell = "\"" + script.replace("\"", "\"\"") + "\"";
      String table =
          "Tag,Material,Mortar,Grout,%s\nGT-91,Glass tile,%s,TBD,%s\n%s,Glass tile,TBD,%s,x\n"
              .formatted(cell, cell, cell, cell, cell);
      String clause =
          "SECTION 09 30 00\nPART 2 - PRODUCTS\n2.1 "
              + script
              + "\nA. GT-92: glass tile, mortar "
              + script
              + ", grout TBD.\n";
      String kind = "scripts on their way to outputs";
      out.add(
          Attempt.document(
              kind, "script-%02d.csv".formatted(i), Wanted.ANSWER, () -> table.getBytes(UTF_8)));
      String format = List.of("txt", "html", "docx", "odt").get(i % 4);
      out.add(
          Attempt.document(
              kind,
              "script-%02d.%s".formatted(i, format),
              Wanted.ANSWER,
              () -> HostileDocuments.paragraph(format, clause)));
    }
  }

  /** Names of files and folders that have marked copies and links. */
  private static void addNames(List<Attempt> out) {
    List<String> names =
        new ArrayList<>(
            List.of(
                "-rf.csv",
                "--help.csv",
                "@file.csv",
                "a?b#c.csv",
                "a%2e%2e%2fb.csv",
                "%41.csv",
                "a b.csv",
                "a'b.csv",
                "=1+1.csv",
                "[x].csv",
                "a:b.csv",
                "a|b.csv",
                "a;b.csv",
                "~$a.csv",
                ".a.csv",
                "a..csv",
                "CON.csv",
                "é.csv",
                "e\u0301.csv",
                "😀.csv",
                "\u202evsc.a",
                "a\tb.csv",
                "a\nb.csv",
                "$(id).csv",
                "`id`.csv",
                "javascript:x.csv",
                "http:x.csv",
                "file:x.csv",
                "x".repeat(240) + ".csv",
                "é".repeat(120) + ".csv",
                " a .csv",
                "a.csv.csv",
                "a.xlsx.csv",
                "#.csv",
                "&amp;.csv",
                "<b>.csv",
                "\"a\".csv",
                "a\\b.csv",
                "..\\a.csv",
                "\u2024\u2024.csv",
                "findings.xlsx.csv",
                "a.findings.txt.csv",
                "](http:x).csv",
                "**a**.csv",
                "{0}.csv"));
    for (String name : names)
      out.add(
          Attempt.document(
              "names on their way to outputs",
              name,
              Wanted.ANSWER,
              () -> "Tag,Material,Mortar\nGT-93,Glass tile,TBD\n".getBytes(UTF_8)));
  }

  /** A cache that somebody else has written into. */
  private static void addCaches(List<Attempt> out) {
    for (int i = 0; i < 12; i++) {
      int seed = i;
      out.add(
          new Attempt(
              "caches",
              "cache-" + i,
              Wanted.ANSWER,
              (good, folder) -> {
                Path cache = Files.createDirectories(folder.resolve("cache"));
                List<String> words = List.of("check", good.toString(), "--cache", cache.toString());
                Trial.filled(words, folder);
                spoil(cache, new Random(seed));
                return words;
              }));
    }
  }

  private static void spoil(Path cache, Random random) throws IOException {
    List<Path> files;
    try (var all = Files.walk(cache)) {
      files = all.filter(Files::isRegularFile).sorted().toList();
    }
    for (Path file : files) {
      byte[] bytes = Files.readAllBytes(file);
      switch (random.nextInt(5)) {
        case 0 -> Files.write(file, new byte[0]);
        case 1 -> Files.write(file, Arrays.copyOf(bytes, bytes.length / 2));
        case 2 -> {
          for (int n = 0; n < 9 && bytes.length > 0; n++)
            bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
          Files.write(file, bytes);
        }
        case 3 -> {
          Files.delete(file);
          Files.createSymbolicLink(file, Path.of("/etc/hostname"));
        }
        default -> {
          Files.delete(file);
          Files.createDirectory(file);
        }
      }
    }
  }
}
