package clearbed.strangers;

import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.strangers.Attempt.Wanted;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Rule files of strangers. */
final class HostileRules {
  private static final int DAMAGED = 40;
  private static final String HEAD = "layer: ours\n";
  private static final String CHECK = "checks:\n  - {id: translucency, level: note}\n";

  private HostileRules() {}

  static List<Attempt> all() throws IOException {
    List<Attempt> out = new ArrayList<>();
    for (Map.Entry<String, String> file : wrong().entrySet())
      out.add(
          rules("wrong rule files", file.getKey(), Wanted.NAMED, file.getValue().getBytes(UTF_8)));
    for (Map.Entry<String, String> file : large().entrySet())
      out.add(
          rules("large rule files", file.getKey(), Wanted.ANSWER, file.getValue().getBytes(UTF_8)));
    byte[] sound = Files.readAllBytes(Path.of("sample-specs/office-layer.yaml"));
    Random random = new Random(4);
    for (int i = 0; i < DAMAGED; i++) {
      byte[] copy = i % 2 == 0 ? sound.clone() : Arrays.copyOf(sound, sound.length * i / DAMAGED);
      for (int n = 1 << i % 6; n > 0 && copy.length > 0; n--)
        copy[random.nextInt(copy.length)] = (byte) random.nextInt(256);
      out.add(rules("damaged rule files", "damaged-" + i, Wanted.ANSWER, copy));
    }
    return out;
  }

  private static Attempt rules(String kind, String name, Wanted wanted, byte[] bytes) {
    return new Attempt(
        kind,
        name,
        wanted,
        (good, folder) -> {
          Path file = Files.write(folder.resolve("office.yaml"), bytes);
          return name.hashCode() % 2 == 0
              ? List.of("rules", file.toString())
              : List.of("check", good.toString(), "--rules", file.toString());
        });
  }

  /** Each is wrong in one way. */
  private static Map<String, String> wrong() {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("two checks keys", HEAD + CHECK + CHECK);
    files.put("two layer keys", HEAD + HEAD + CHECK);
    files.put("a check twice", HEAD + CHECK + "  - {id: translucency, off: true}\n");
    files.put(
        "a key twice in a check",
        HEAD + "checks:\n  - {id: translucency, level: note, level: error}\n");
    files.put(
        "a taught word twice",
        HEAD + "words:\n  columns:\n    Zylk: grout.colour\n    Zylk: mortar.bond\n");
    files.put("a cycle", HEAD + "checks: &a\n  - *a\n");
    files.put("a cycle of maps", HEAD + "words: &a\n  columns: *a\n");
    files.put("an alias", HEAD + "project: {name: &a x, from: *a}\n");
    files.put("a merge key", HEAD + "checks:\n  - {id: translucency, <<: {level: note}}\n");
    files.put("a merge of itself", HEAD + "project: &p\n  <<: *p\n");
    files.put("a binary tag", HEAD + "project: {name: !!binary aGVsbG8=}\n");
    files.put("a set tag", HEAD + "checks: !!set {a, b}\n");
    files.put("an omap tag", HEAD + "checks: !!omap [a: b]\n");
    files.put("a class tag", HEAD + "project: !!javax.script.ScriptEngineManager [a]\n");
    files.put("a url tag", HEAD + "project: !!java.net.URL [\"http://127.0.0.1:9/\"]\n");
    files.put("a local tag", HEAD + "project: {name: !own x}\n");
    files.put("laughs", HEAD + "a: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\n");
    files.put("escape codes in a key", HEAD + "\"\\e[2J\\e]0;own\\a\": 1\n");
    files.put(
        "escape codes in a value", HEAD + "checks:\n  - {id: \"\\e[31mred\\e[0m\", off: true}\n");
    files.put("bidi in a key", HEAD + "\"\u202eevil\": 1\n");
    files.put("a null in a key", HEAD + "\"a\\0b\": 1\n");
    files.put("a raw escape", HEAD + "\u001b[2J: 1\n");
    files.put("a key of 200,000", HEAD + "k".repeat(200_000) + ": 1\n");
    files.put(
        "an id of 200,000", HEAD + "checks:\n  - {id: " + "i".repeat(200_000) + ", off: true}\n");
    files.put(
        "a level of 200,000",
        HEAD + "checks:\n  - {id: translucency, level: " + "e".repeat(200_000) + "}\n");
    files.put("deep lists", HEAD + "checks: " + "[".repeat(20_000) + "]".repeat(20_000) + "\n");
    files.put("deep maps", HEAD + "checks: " + "{a: ".repeat(20_000) + "}".repeat(20_000) + "\n");
    files.put("deep blocks", HEAD + deepBlocks(900));
    files.put("a list as key", HEAD + "? [a, b]\n: c\n");
    files.put("a map as key", HEAD + "? {a: b}\n: c\n");
    files.put("two documents", HEAD + CHECK + "---\n" + HEAD);
    files.put("a directive", "%YAML 9.9\n---\n" + HEAD);
    files.put("nothing", "");
    files.put("only a comment", "# nothing\n");
    files.put("a list", "- a\n");
    files.put("a word", "word\n");
    files.put("tabs", HEAD + "checks:\n\t- {id: translucency}\n");
    files.put("an unknown check", HEAD + "checks:\n  - {id: nothing-like-it, level: note}\n");
    files.put("an unknown key", HEAD + "chekcs: []\n");
    files.put("an expression that never ends", HEAD + "words:\n  tags: ['(a+)+$']\n");
    files.put("a set elsewhere", "ruleSet: x\nover: ../../etc/passwd\nchecks: []\n");
    files.put("a guideline elsewhere", HEAD + "guideline: ../../../etc/passwd.yaml\n");
    files.put("a template in a message", HEAD + "checks:\n  - {id: backing, missing: '{0} {x}'}\n");
    files.put("no reason", HEAD + "suppress:\n  - {check: backing}\n");
    return files;
  }

  private static String deepBlocks(int deep) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < deep; i++) out.append(" ".repeat(i)).append("a:\n");
    return out.toString();
  }

  private static Map<String, String> large() {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("a scalar of 5 MB", HEAD + "project: {name: \"" + "a b ".repeat(5 << 18) + "\"}\n");
    files.put("a comment of 5 MB", HEAD + "#" + "x".repeat(5 << 20) + "\n");
    files.put("comments of 5 MB", HEAD + "# x\n".repeat(5 << 18));
    files.put("blank lines of 5 MB", HEAD + "\n".repeat(5 << 20));
    files.put("a scalar of 900 KB", HEAD + "project: {name: \"" + "a b ".repeat(225_000) + "\"}\n");
    files.put("a comment of 900 KB", HEAD + "#" + "x".repeat(900_000) + "\n");
    files.put(
        "taught words of 900 KB", HEAD + "words:\n  glass:\n" + numbered("    - zylk", 50_000));
    files.put(
        "columns of 900 KB",
        HEAD + "words:\n  columns:\n" + numbered("    zylk", 25_000, ": grout.colour"));
    files.put(
        "suppressions of 900 KB",
        HEAD + "suppress:\n" + "  - {check: backing, tag: GT-8, reason: on file}\n".repeat(18_000));
    files.put(
        "facts of 900 KB",
        HEAD
            + "facts:\n"
            + "  - {attribute: location.temperatureRange, value: 130 °F, reason: sun}\n"
                .repeat(12_000));
    return files;
  }

  private static String numbered(String start, int count, String... end) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < count; i++)
      out.append(start).append(i).append(String.join("", end)).append('\n');
    return out.toString();
  }
}
