package clearbed.strangers;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Attribute;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** What a program that opens our outputs would call for or run. */
final class Effects {
  private static final Pattern LINK =
      Pattern.compile(
          "Target=\"([^\"]*)\"[^>]*TargetMode=\"External\"|TargetMode=\"External\"[^>]*Target=\"([^\"]*)\"");

  private static final String ELSEWHERE = "(?i)[a-z][a-z0-9+.-]*:.*|[/\\\\].*";

  /** Of Markdown, in a message of SARIF; what an escape stands before is none. */
  private static final Pattern MESSAGE_LINK =
      Pattern.compile("(?<!\\\\)(?:\\\\\\\\)*\\[(?:[^\\]\\\\]|\\\\.)*\\]\\(");

  private static final Pattern OBEYED =
      Pattern.compile("[\\p{Cc}&&[^\\n\\t]]|[\\u061c\\u200e\\u200f\\u202a-\\u202e\\u2066-\\u2069]");

  /**
   * Elements that act, by name; the page has its own, and no more of them than without strangers.
   */
  private static final List<String> ACTING =
      List.of(
          "script",
          "style",
          "iframe",
          "object",
          "embed",
          "base",
          "link",
          "meta",
          "form",
          "img",
          "svg",
          "math",
          "frame",
          "video",
          "audio",
          "template",
          "noscript",
          "plaintext",
          "textarea");

  /** All that a run may leave in its folder. */
  private static final Set<String> OURS =
      Set.of(
          "findings.xlsx",
          "findings.json",
          "findings.sarif",
          "look.html",
          "marked",
          "strange",
          "earlier.xlsx",
          "office.yaml",
          "log.xlsx",
          "back.md",
          "back.txt",
          "back.docx",
          "odd.csv",
          "cache",
          "first");

  private final Document page;

  /**
   * @param before outputs of a run over good documents alone
   */
  Effects(Path before) throws IOException {
    page = Jsoup.parse(before.resolve("look.html"), "UTF-8");
  }

  /** What is wrong with the outputs in a folder, or nothing. */
  String of(Path folder) throws IOException {
    String wrong = left(folder);
    if (wrong.isEmpty()) wrong = workbook(folder.resolve("findings.xlsx"));
    Path view = folder.resolve("look.html");
    if (wrong.isEmpty() && Files.exists(view)) wrong = page(Jsoup.parse(view, "UTF-8"));
    Path sarif = folder.resolve("findings.sarif");
    if (wrong.isEmpty() && Files.exists(sarif)) wrong = messages(sarif);
    return wrong;
  }

  private static String left(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      Set<String> names = new TreeSet<>();
      files.forEach(file -> names.add(file.getFileName().toString()));
      names.removeAll(OURS);
      return names.isEmpty() ? "" : "files that nobody asked for: " + names;
    }
  }

  private static String workbook(Path file) throws IOException {
    try (ZipFile zip = new ZipFile(file.toFile())) {
      String book = text(zip, "xl/workbook.xml");
      for (ZipEntry entry : Collections.list(zip.entries())) {
        String name = entry.getName();
        if (name.startsWith("xl/externalLinks/")) return "links to other workbooks";
        String link = name.endsWith(".rels") ? elsewhere(text(zip, name)) : "";
        if (!link.isEmpty()) return link;
        if (name.matches("xl/worksheets/sheet\\d+\\.xml")
            && text(zip, name).matches("(?s).*<f[ >].*")) {
          String sheet = sheetName(zip, book, name);
          if (!sheet.startsWith("Calculations")) return "a live formula on " + sheet;
        }
      }
    }
    return "";
  }

  private static String elsewhere(String relations) {
    Matcher link = LINK.matcher(relations);
    while (link.find()) {
      String target = link.group(1) == null ? link.group(2) : link.group(1);
      if (target.matches(ELSEWHERE)) return "a link to " + target;
    }
    return "";
  }

  private static String sheetName(ZipFile zip, String book, String part) throws IOException {
    String links = text(zip, "xl/_rels/workbook.xml.rels");
    for (String link : links.split("<Relationship ")) {
      if (!link.contains("Target=\"" + part.substring(3) + "\"")
          && !link.contains("Target=\"/" + part + "\"")) continue;
      String id = link.replaceAll("(?s).*\\bId=\"([^\"]*)\".*", "$1");
      for (String sheet : book.split("<sheet "))
        if (sheet.contains("\"" + id + "\""))
          return sheet.replaceAll("(?s).*?name=\"([^\"]*)\".*", "$1");
    }
    return part;
  }

  private static String text(ZipFile zip, String name) throws IOException {
    return new String(
        zip.getInputStream(zip.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
  }

  private String page(Document view) {
    for (String name : ACTING)
      if (!view.select(name).eachAttr("src").equals(page.select(name).eachAttr("src"))
          || view.select(name).size() != page.select(name).size()
          || !view.select(name).stream()
              .map(Element::data)
              .toList()
              .equals(page.select(name).stream().map(Element::data).toList()))
        return "the page has another " + name;
    for (Element element : view.getAllElements())
      for (Attribute attribute : element.attributes()) {
        String key = attribute.getKey();
        String value = attribute.getValue();
        if (key.startsWith("on")) return "the page acts: " + element.tagName() + " " + key;
        boolean leads = List.of("href", "src", "action", "formaction", "xlink:href").contains(key);
        if (leads && value.strip().matches("(?s)" + ELSEWHERE)) return "the page links to " + value;
      }
    return "";
  }

  private static String messages(Path sarif) throws IOException {
    for (JsonNode message : new ObjectMapper().readTree(sarif.toFile()).findValues("message")) {
      String text = message.path("text").asText();
      if (MESSAGE_LINK.matcher(text).find()) return "a link in a message: " + text;
      if (OBEYED.matcher(text).find()) return "a message that is obeyed";
    }
    return "";
  }
}
