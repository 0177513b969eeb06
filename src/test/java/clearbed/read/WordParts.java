package clearbed.read;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Word files out of their parts by hand, for what the library offers no way to make. */
public final class WordParts {
  private static final String SPACES =
      "xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\""
          + " xmlns:r=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships\""
          + " xmlns:mc=\"http://schemas.openxmlformats.org/markup-compatibility/2006\""
          + " xmlns:w14=\"http://schemas.microsoft.com/office/word/2010/wordml\""
          + " xmlns:w15=\"http://schemas.microsoft.com/office/word/2012/wordml\""
          + " xmlns:v=\"urn:schemas-microsoft-com:vml\"";

  private static final String LINK =
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships/";

  private final Map<String, String> parts = new LinkedHashMap<>();

  public static String p(String... runs) {
    return "<w:p>" + String.join("", runs) + "</w:p>";
  }

  public static String run(String text) {
    return run("", text);
  }

  /**
   * @param properties of the run, as markup
   */
  public static String run(String properties, String text) {
    return "<w:r><w:rPr>"
        + properties
        + "</w:rPr><w:t xml:space=\"preserve\">"
        + text
        + "</w:t></w:r>";
  }

  public static String struck(String text) {
    return run("<w:strike/>", text);
  }

  public static String reference(String kind, int id) {
    return "<w:r><w:" + kind + "Reference w:id=\"" + id + "\"/></w:r>";
  }

  public static String table(String... rows) {
    return "<w:tbl>" + String.join("", rows) + "</w:tbl>";
  }

  public static String row(String properties, String... cells) {
    StringBuilder row = new StringBuilder("<w:tr><w:trPr>" + properties + "</w:trPr>");
    for (String cell : cells) row.append("<w:tc>").append(cell).append("</w:tc>");
    return row.append("</w:tr>").toString();
  }

  /** The body, or another part such as {@code footnotes}. */
  public WordParts part(String name, String content) {
    parts.put(name, content);
    return this;
  }

  public Path write(Path file) throws IOException {
    try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
      add(zip, "[Content_Types].xml", types());
      add(zip, "_rels/.rels", relations(relation("r0", "officeDocument", "word/document.xml")));
      StringBuilder links = new StringBuilder();
      for (String name : parts.keySet()) {
        if (name.equals("document")) continue;
        links.append(relation("r" + name, name.replaceAll("\\d+$", ""), name + ".xml"));
      }
      add(zip, "word/_rels/document.xml.rels", relations(links.toString()));
      for (Map.Entry<String, String> part : parts.entrySet()) {
        add(zip, "word/" + part.getKey() + ".xml", whole(part.getKey(), part.getValue()));
      }
    }
    return file;
  }

  private static String whole(String name, String content) {
    return switch (name) {
      case "document" -> "<w:document " + SPACES + "><w:body>" + content + "</w:body></w:document>";
      case "commentsExtended" -> "<w15:commentsEx " + SPACES + ">" + content + "</w15:commentsEx>";
      default -> {
        String root = "w:" + name.replaceAll("header\\d", "hdr").replaceAll("footer\\d", "ftr");
        yield "<" + root + " " + SPACES + ">" + content + "</" + root + ">";
      }
    };
  }

  private String types() {
    StringBuilder types =
        new StringBuilder(
            "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\">"
                + "<Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/>");
    for (String name : parts.keySet()) {
      String kind = name.equals("document") ? "document.main" : name.replaceAll("\\d+$", "");
      types
          .append("<Override PartName=\"/word/" + name + ".xml\" ContentType=\"")
          .append("application/vnd.openxmlformats-officedocument.wordprocessingml.")
          .append(kind + "+xml\"/>");
    }
    return types.append("</Types>").toString();
  }

  private static String relation(String id, String kind, String target) {
    return "<Relationship Id=\""
        + id
        + "\" Type=\""
        + LINK
        + kind
        + "\" Target=\""
        + target
        + "\"/>";
  }

  private static String relations(String links) {
    return "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
        + links
        + "</Relationships>";
  }

  private static void add(ZipOutputStream zip, String name, String content) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(content.getBytes(UTF_8));
  }
}
