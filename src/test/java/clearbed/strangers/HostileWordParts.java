package clearbed.strangers;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Styles, numbering and links of Word files that are odd or absurd. */
final class HostileWordParts {
  private HostileWordParts() {}

  /** Name of a part, and what is in it. */
  static Map<String, String[]> all() {
    Map<String, String[]> out = new LinkedHashMap<>();
    String w = " xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\"";
    StringBuilder loop = new StringBuilder("<w:styles" + w + ">");
    StringBuilder chain = new StringBuilder("<w:styles" + w + ">");
    for (int i = 0; i < 20_000; i++)
      chain.append(
          "<w:style w:styleId=\"s%d\"><w:basedOn w:val=\"s%d\"/></w:style>".formatted(i, i + 1));
    for (String[] pair : new String[][] {{"a", "b"}, {"b", "a"}, {"c", "c"}})
      loop.append(
          "<w:style w:styleId=\"%s\"><w:basedOn w:val=\"%s\"/></w:style>"
              .formatted(pair[0], pair[1]));
    for (String id : List.of("Normal", "Heading1", "ListParagraph"))
      for (StringBuilder styles : List.of(loop, chain))
        styles.append(
            "<w:style w:styleId=\"%s\"><w:basedOn w:val=\"%s\"/></w:style>"
                .formatted(id, styles == loop ? "a" : "s0"));
    out.put("styles-loop", new String[] {"word/styles.xml", loop + "</w:styles>"});
    out.put("styles-chain", new String[] {"word/styles.xml", chain + "</w:styles>"});
    String level =
        "<w:lvl w:ilvl=\"%s\"><w:start w:val=\"%s\"/><w:numFmt w:val=\"%s\"/>"
            + "<w:lvlText w:val=\"%s\"/></w:lvl>";
    List<String[]> odd =
        List.of(
            new String[] {"0", "2147483647", "upperRoman", "%1"},
            new String[] {"0", "-7", "upperRoman", "%1%1%1%1"},
            new String[] {"0", "1000000000", "upperLetter", "%1"},
            new String[] {"0", "99999999999", "decimal", "%9%8%7"},
            new String[] {"0", "x", "cardinalText", "%0%-1%a%"},
            new String[] {"0", "1", "bullet", "%1".repeat(20_000)},
            new String[] {"0", "30000", "lowerRoman", "\u202e%1"},
            new String[] {"77", "1", "chicago", ""});
    for (int i = 0; i < odd.size(); i++) {
      String[] o = odd.get(i);
      String numbering =
          "<w:numbering"
              + w
              + "><w:abstractNum w:abstractNumId=\"0\">"
              + level.formatted((Object[]) o)
              + "</w:abstractNum><w:num w:numId=\"1\"><w:abstractNumId w:val=\"0\"/></w:num>"
              + "</w:numbering>";
      out.put("numbering-" + i, new String[] {"word/numbering.xml", numbering});
    }
    out.put(
        "numbering-of-nothing",
        new String[] {
          "word/numbering.xml",
          "<w:numbering"
              + w
              + "><w:num w:numId=\"1\"><w:abstractNumId w:val=\"5\"/></w:num></w:numbering>"
        });
    out.put(
        "numbering-50000",
        new String[] {
          "word/numbering.xml",
          "<w:numbering"
              + w
              + ">"
              + "<w:num w:numId=\"1\"><w:abstractNumId w:val=\"0\"/></w:num>".repeat(50_000)
              + "</w:numbering>"
        });
    String links =
        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
            + "%s</Relationships>";
    String link =
        "<Relationship Id=\"rId1\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/"
            + "relationships/%s\" Target=\"%s\"%s/>";
    for (String target :
        List.of(
            "../../../../etc/passwd", "/", "", "document.xml", "%00", "http://x.invalid/", "a b"))
      out.put(
          "leads-to-" + out.size(),
          new String[] {
            "word/_rels/document.xml.rels", links.formatted(link.formatted("styles", target, ""))
          });
    out.put(
        "links-20000",
        new String[] {
          "word/_rels/document.xml.rels",
          links.formatted(
              link.formatted("hyperlink", "http://x.invalid/", " TargetMode=\"External\"")
                  .repeat(20_000))
        });
    out.put("types-of-nothing", new String[] {"[Content_Types].xml", "<Types/>"});
    return out;
  }
}
