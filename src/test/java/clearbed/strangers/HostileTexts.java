package clearbed.strangers;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import clearbed.strangers.Attempt.Wanted;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** RTF, HTML and plain text whose marks are odd or drawn by lot. */
final class HostileTexts {
  private static final int DRAWN = 40;

  private static final String[] WORDS = {
    "{",
    "{",
    "}",
    "}",
    "\\par ",
    "\\cell ",
    "\\row ",
    "\\trowd ",
    "\\cellx999999999 ",
    "\\cellx-5 ",
    "\\intbl ",
    "\\itap9999 ",
    "\\nestcell ",
    "\\nestrow ",
    "{\\*\\nesttableprops ",
    "\\u-10179 ?",
    "\\u65536 ?",
    "\\u99999999999 ?",
    "\\uc999999 ",
    "\\uc-1 ",
    "\\'zz",
    "\\'",
    "\\bin5 abc",
    "\\bin-7 ",
    "\\bin99999999 ",
    "\\ansicpg99999 ",
    "\\fs-1 ",
    "\\deff9999 ",
    "{\\fonttbl{\\f0 x;}",
    "{\\field{\\*\\fldinst HYPERLINK x}{\\fldrslt drain}}",
    "{\\listtext 1.\\tab}",
    "\\ls99999 ",
    "\\pn ",
    "{\\pict abcdef}",
    "{\\object\\objdata 00}",
    "{\\footnote drain}",
    "{\\annotation drain}",
    "\\strike ",
    "\\v ",
    "\\deleted ",
    "drain ",
    "6 in ",
    "\u0000",
    "\n",
    "\\",
    "{\\upr{a}{\\*\\ud{b}}}",
    "\\sect\\page\\column "
  };
  private static final String[] TAGS = {
    "table",
    "tr",
    "td",
    "th",
    "ul",
    "ol",
    "li",
    "p",
    "div",
    "del",
    "s",
    "ins",
    "span",
    "h1",
    "h9",
    "pre",
    "script",
    "style",
    "template",
    "svg",
    "math",
    "iframe",
    "select",
    "option",
    "textarea",
    "title",
    "noscript",
    "plaintext",
    "body",
    "html",
    "a",
    "img",
    "base",
    "meta",
    "br",
    "hr",
    "b"
  };
  private static final String[] ATTRIBUTES = {
    " colspan=99999999999",
    " colspan=-1",
    " rowspan=2147483647",
    " rowspan=0",
    " colspan=1000",
    " start=99999999999",
    " value=x",
    " style=\"display:none\"",
    " style=\"text-decoration:",
    " onclick=alert(1)",
    " href='javascript:x'",
    " src=http://x.invalid/",
    " hidden",
    " x='",
    "<"
  };

  private HostileTexts() {}

  static List<Attempt> all() {
    List<Attempt> out = new ArrayList<>();
    rich().forEach((name, text) -> out.add(odd(name + ".rtf", text.getBytes(ISO_8859_1))));
    web().forEach((name, text) -> out.add(odd(name + ".html", text.getBytes(UTF_8))));
    plain().forEach((name, text) -> out.add(odd(name, text.getBytes(UTF_8))));
    for (int i = 0; i < DRAWN; i++) {
      Random random = new Random(3000 + i);
      StringBuilder rich = new StringBuilder("{\\rtf1\\ansi ");
      StringBuilder web = new StringBuilder("<!DOCTYPE html><html><body>");
      for (int n = random.nextInt(600); n >= 0; n--) {
        rich.append(WORDS[random.nextInt(WORDS.length)]);
        web.append('<')
            .append(random.nextInt(3) == 0 ? "/" : "")
            .append(TAGS[random.nextInt(TAGS.length)]);
        if (random.nextInt(4) == 0) web.append(ATTRIBUTES[random.nextInt(ATTRIBUTES.length)]);
        web.append('>').append(random.nextInt(2) == 0 ? "drain " : "");
      }
      out.add(drawn("drawn-%02d.rtf".formatted(i), rich.toString().getBytes(UTF_8)));
      out.add(drawn("drawn-%02d.html".formatted(i), web.toString().getBytes(UTF_8)));
    }
    return out;
  }

  private static Attempt odd(String name, byte[] bytes) {
    return Attempt.document("odd RTF, HTML and text", name, Wanted.ANSWER_ALONE, () -> bytes);
  }

  private static Attempt drawn(String name, byte[] bytes) {
    return Attempt.document("RTF and HTML by lot", name, Wanted.ANSWER_ALONE, () -> bytes);
  }

  private static Map<String, String> rich() {
    Map<String, String> out = new LinkedHashMap<>();
    Map<String, String> insides = new LinkedHashMap<>();
    insides.put("groups-20000", "{".repeat(20_000) + "drain" + "}".repeat(20_000));
    insides.put("groups-open", "{".repeat(300_000));
    insides.put("groups-closed", "}".repeat(300_000) + "drain");
    insides.put("bin-all", "\\bin2147483647 drain");
    insides.put("bin-minus", "\\bin-2147483648 drain");
    insides.put("bin-often", "\\bin1 x".repeat(100_000));
    insides.put("unicode", "\\u8364 ?".repeat(50_000));
    insides.put("unicode-skips", "\\uc2147483647\\u8364 drain");
    insides.put("hex", "\\'e9".repeat(100_000));
    insides.put("word-long", "\\" + "a".repeat(1_000_000) + " drain");
    insides.put("number-long", "\\fs" + "9".repeat(1_000_000) + " drain");
    insides.put("cells-50000", "\\trowd " + "drain\\cell ".repeat(50_000) + "\\row");
    insides.put("rows-50000", "\\trowd\\cellx99\\intbl drain\\cell\\row\n".repeat(50_000));
    insides.put("nested-tables", "\\trowd\\itap9\\intbl drain\\nestcell ".repeat(2_000));
    insides.put("fonts-20000", "{\\fonttbl" + "{\\f0\\fcharset999 x;}".repeat(20_000) + "}drain");
    insides.put(
        "lists-20000",
        "{\\*\\listtable" + "{\\list{\\listlevel\\levelstartat-9}}".repeat(20_000) + "}drain");
    insides.put("picture", "{\\pict\\pngblip " + "00".repeat(1_000_000) + "}drain");
    insides.put(
        "fields-3000",
        "{\\field{\\*\\fldinst A}{\\fldrslt ".repeat(3_000) + "drain" + "}}".repeat(3_000));
    insides.put("code-page", "\\ansicpg65001 dr\u00e4in \\'ff\\'fe");
    insides.put("styles-loop", "{\\stylesheet{\\s1\\sbasedon2 a;}{\\s2\\sbasedon1 b;}}\\s1 drain");
    insides.forEach((name, text) -> out.put(name, "{\\rtf1\\ansi " + text + "}"));
    out.put("no-version", "{\\rtf drain}");
    out.put("version-999", "{\\rtf999 drain}");
    out.put("two-files", "{\\rtf1 drain}{\\rtf1 bore}");
    return out;
  }

  private static Map<String, String> web() {
    Map<String, String> out = new LinkedHashMap<>();
    String row = "<tr><td>Gutter<td>6 in";
    for (String span : List.of("0", "-1", "1000", "99999999", "99999999999", "x"))
      out.put(
          "spans-" + span,
          "<table><tr><td colspan="
              + span
              + " rowspan="
              + span
              + ">Drain"
              + row.repeat(20)
              + "</table>");
    out.put(
        "rowspans-crossing",
        "<table>" + "<tr><td rowspan=65534 colspan=1000>x".repeat(400) + "</table>");
    out.put("wide-spans", "<table><tr>" + "<td colspan=1000>x".repeat(1_000) + "</table>");
    out.put("tables-in-a-row", "<table><tr><td>x</table>".repeat(20_000));
    out.put("never-closed", "<b><i><u><s>".repeat(5_000) + "drain");
    out.put("misnested", "<p><table><b><tr><i><td><p>".repeat(2_000) + "drain");
    out.put("attributes", "<p " + "a=b ".repeat(200_000) + ">drain");
    out.put("attribute-long", "<p title=\"" + "x".repeat(2_000_000) + "\">drain");
    out.put("comment-open", "drain<!--" + "-".repeat(1_000_000));
    out.put("entities", "&#x110000;&#0;&#xD800;&nosuch;&amp".repeat(20_000));
    out.put("data", "<![CDATA[" + "<".repeat(500_000));
    out.put(
        "lists-start", "<ol start=2147483647 type=I><li>a<li>b</ol><ol start=-5 type=a><li>c</ol>");
    out.put("list-400", "<ul><li>".repeat(400) + "drain");
    out.put("script", "<script>" + "x".repeat(500_000) + "</script>drain");
    out.put("encoding", "<meta charset=\"x-no-such\"><p>drain");
    out.put("encoding-utf-16", "<meta charset=\"utf-16\"><p>drain");
    out.put(
        "frames",
        "<iframe src='file:///etc/passwd'></iframe><object data='http://x.invalid/'>drain</object>");
    return out;
  }

  private static Map<String, String> plain() {
    Map<String, String> out = new LinkedHashMap<>();
    out.put(
        "pipes.md",
        "|" + "a|".repeat(20_000) + "\n|" + "-|".repeat(20_000) + "\n|" + "b|".repeat(20_000));
    out.put("pipes-rows.md", "| a | b |\n|---|---|\n" + "| c | d |\n".repeat(30_000));
    out.put("emphasis.md", "*".repeat(200_000) + "drain");
    out.put("emphasis-open.md", "**_~~`".repeat(30_000) + "drain");
    out.put("links.md", "[drain](".repeat(30_000));
    out.put("fences.md", "```\n".repeat(30_001) + "drain");
    out.put("numbers.txt", "1.1.1.1.1.1.".repeat(20_000) + " drain");
    out.put("outline-deep.txt", outline(3_000));
    out.put("leaders.txt", ("drain " + ".".repeat(300) + " 6 in\n").repeat(2_000));
    out.put("rules.txt", ("+" + "-".repeat(200) + "+\n|" + " ".repeat(200) + "|\n").repeat(2_000));
    out.put("columns.txt", ("drain" + " ".repeat(9)).repeat(200).concat("\n").repeat(300));
    out.put("ragged.txt", ragged());
    out.put("roman.txt", "MMMMMMMMMMMMMMMMMMMCCCXXXIII. drain\n".repeat(5_000));
    out.put("parts.txt", "PART 1 - GENERAL\n1.1 SUMMARY\nA. drain\n".repeat(8_000));
    out.put(
        "addenda.txt",
        "ADDENDUM NO. 99999999999\nItem 1: Delete \"drain\" and replace with \"bore\".\n"
            .repeat(3_000));
    out.put("strikes.txt", "s\u0336t\u0336r\u0336u\u0336c\u0336k\u0336 ".repeat(20_000));
    out.put("right-to-left.txt", "\u05d0\u05d1\u202e\u2067drain\u2069 ".repeat(20_000));
    out.put("wide.txt", "ＤＲＡＩＮ　１２ｍｍ ".repeat(10_000));
    out.put("fractions.txt", "1\u20443 \u00bd 3\u00bd/4\u2044 in x ".repeat(20_000));
    out.put("quotes.txt", "6\" x 4\" x 2' - 3\" ".repeat(20_000));
    return out;
  }

  private static String outline(int deep) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < deep; i++) out.append(" ".repeat(i)).append("a. drain\n");
    return out.toString();
  }

  private static String ragged() {
    Random random = new Random(32);
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < 3_000; i++) {
      for (int c = random.nextInt(9); c >= 0; c--)
        out.append("drain").append(" ".repeat(1 + random.nextInt(12)));
      out.append('\n');
    }
    return out.toString();
  }
}
