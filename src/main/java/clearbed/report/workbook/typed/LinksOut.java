package clearbed.report.workbook.typed;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.openxml4j.opc.TargetMode;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * What leads from a workbook of somebody else to places outside of it: links of cells and drawings,
 * other workbooks, connections to data. It is cut off before the workbook is opened: relationships
 * are external by their mode (ECMA-376 part 2, 9.3.2), or of a type that fetches (part 1, 18.13 and
 * 18.14).
 */
public final class LinksOut {
  /** Parts that say where else data come from. */
  private static final Pattern PART =
      Pattern.compile("xl/(?:externalLinks|queryTables)/.*|xl/connections\\.xml");

  /** Values may hold a closing bracket, and nothing in well-formed XML an opening one. */
  private static final String ATTRIBUTES = "\\s(?:[^<>\"']|\"[^\"<]*+\"|'[^'<]*+')*+>";

  private static final Pattern RELATIONSHIP =
      Pattern.compile(
          "<(?:\\w+:)?Relationship" + ATTRIBUTES + "(?:\\s*</(?:\\w+:)?Relationship>)?");
  private static final Pattern OUTWARD =
      Pattern.compile(
          "TargetMode\\s*=\\s*[\"']External|/(?:externalLink\\w*|connections|queryTable)[\"']");
  private static final Pattern CONTENT_TYPE =
      Pattern.compile("<(?:\\w+:)?Override" + ATTRIBUTES + "(?:\\s*</(?:\\w+:)?Override>)?");
  private static final Pattern OF_PART =
      Pattern.compile("[\"']/xl/(?:externalLinks/|queryTables/|connections\\.xml)");
  private static final Pattern WORKBOOKS =
      Pattern.compile("<((?:\\w+:)?externalReferences)\\s*>.{0,100000}?</\\1\\s*>", Pattern.DOTALL);
  private static final Pattern CELL_LINK =
      Pattern.compile("<(?:\\w+:)?hyperlink" + ATTRIBUTES + "(?:\\s*</(?:\\w+:)?hyperlink>)?");
  private static final Pattern BY_RELATIONSHIP = Pattern.compile(":id\\s*=");
  private static final Pattern EMPTY_LINKS =
      Pattern.compile("<((?:\\w+:)?hyperlinks)\\s*+>\\s*+</\\1\\s*+>");
  private static final Pattern DRAWN_LINK =
      Pattern.compile(
          "<((?:\\w+:)?hlink(?:Click|Hover))\\s(?:[^<>\"']|\"[^\"<]*+\"|'[^'<]*+')*+(?:(?<=/)>|>.{0,10000}?</\\1\\s*>)",
          Pattern.DOTALL);
  private static final Pattern ATTRIBUTE =
      Pattern.compile("([\\w:]+)\\s*=\\s*(?:\"([^\"]*)\"|'([^']*)')");

  /**
   * A link that was cut off.
   *
   * @param part of the workbook that it stood in
   * @param cell its address there; empty when it belongs to no cell
   */
  record OutwardLink(String part, String cell, String target) {}

  private LinksOut() {}

  static boolean isPart(String name) {
    return PART.matcher(name).matches();
  }

  /** A part without what leads out of it. */
  static byte[] cut(String name, byte[] part) {
    if (name.endsWith(".rels")) return without(part, RELATIONSHIP, OUTWARD);
    if (name.equals("[Content_Types].xml")) return without(part, CONTENT_TYPE, OF_PART);
    if (name.equals("xl/workbook.xml")) return without(part, WORKBOOKS, null);
    if (name.startsWith("xl/drawings/")) return without(part, DRAWN_LINK, null);
    if (!name.startsWith("xl/worksheets/")) return part;
    return without(without(part, CELL_LINK, BY_RELATIONSHIP), EMPTY_LINKS, null);
  }

  /**
   * What was written in a way that is not known here.
   *
   * @throws IOException when anything still leads out
   */
  static void requireNone(XSSFWorkbook book) throws IOException {
    try {
      for (PackagePart part : book.getPackage().getParts()) {
        if (part.isRelationshipPart()) continue;
        for (PackageRelationship each : part.getRelationships())
          if (each.getTargetMode() == TargetMode.EXTERNAL)
            throw new IOException("it leads out of itself to " + each.getTargetURI());
      }
    } catch (InvalidFormatException damaged) {
      throw new IOException(damaged.getMessage(), damaged);
    }
  }

  /** Every byte stands for a character, so that no encoding is spoilt. */
  private static byte[] without(byte[] part, Pattern element, Pattern wanted) {
    String text = new String(part, StandardCharsets.ISO_8859_1);
    Matcher found = element.matcher(text);
    StringBuilder out = null;
    int from = 0;
    while (found.find()) {
      if (wanted != null && !wanted.matcher(found.group()).find()) continue;
      if (out == null) out = new StringBuilder(text.length());
      out.append(text, from, found.start());
      from = found.end();
    }
    if (out == null) return part;
    return out.append(text, from, text.length()).toString().getBytes(StandardCharsets.ISO_8859_1);
  }

  /** All that leads out of a workbook, in the order of its parts. */
  public static List<OutwardLink> of(byte[] workbook) throws IOException {
    Map<String, Map<String, String>> targets = new HashMap<>();
    Map<String, List<String[]>> cells = new HashMap<>();
    List<String> parts = new ArrayList<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        String name = e.getName();
        if (name.endsWith(".rels")) {
          parts.add(owner(name));
          targets.put(owner(name), targets(text(zip)));
        } else if (name.startsWith("xl/worksheets/")) {
          cells.put(name, cells(text(zip)));
        }
      }
    }
    List<OutwardLink> links = new ArrayList<>();
    for (String part : parts) {
      Map<String, String> open = targets.get(part);
      for (String[] cell : cells.getOrDefault(part, List.of())) {
        String target = open.remove(cell[1]);
        if (target != null) links.add(new OutwardLink(part, cell[0], target));
      }
      open.values().forEach(target -> links.add(new OutwardLink(part, "", target)));
    }
    return links;
  }

  private static String text(ZipInputStream zip) throws IOException {
    return new String(zip.readAllBytes(), StandardCharsets.UTF_8);
  }

  /** The part that a list of relationships belongs to. */
  private static String owner(String rels) {
    return rels.replaceFirst("_rels/([^/]*)\\.rels$", "$1");
  }

  private static Map<String, String> targets(String rels) {
    Map<String, String> targets = new LinkedHashMap<>();
    Matcher found = RELATIONSHIP.matcher(rels);
    while (found.find()) {
      if (!OUTWARD.matcher(found.group()).find()) continue;
      Map<String, String> said = attributes(found.group());
      targets.put(said.getOrDefault("Id", ""), said.getOrDefault("Target", ""));
    }
    return targets;
  }

  /** Address and relationship of each link of a cell. */
  private static List<String[]> cells(String sheet) {
    List<String[]> cells = new ArrayList<>();
    Matcher found = CELL_LINK.matcher(sheet);
    while (found.find()) {
      Map<String, String> said = attributes(found.group());
      cells.add(new String[] {said.getOrDefault("ref", ""), said.getOrDefault("id", "")});
    }
    return cells;
  }

  /** By their names, without prefixes. */
  private static Map<String, String> attributes(String element) {
    Map<String, String> said = new HashMap<>();
    Matcher found = ATTRIBUTE.matcher(element);
    while (found.find()) {
      String name = found.group(1).replaceFirst("^.*:", "");
      said.put(name, found.group(2) == null ? found.group(3) : found.group(2));
    }
    return said;
  }
}
