package clearbed.mark;

import clearbed.base.io.FixedZip;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.poi.ooxml.POIXMLProperties;
import org.openxmlformats.schemas.officeDocument.x2006.customProperties.CTProperties;

/**
 * The mark of an Office Open XML file: a custom property that holds a digest over the name, length
 * and CRC-32 of every other part. How and when the zip was packed does not count.
 */
public final class PackageMark implements FixedZip.LastEntry {
  /** The part that holds the mark, and so cannot be under it. */
  public static final String PROPERTIES = "docProps/custom.xml";

  /** Far more than any list of properties or sheets needs. */
  private static final int LONGEST_PART = 4 << 20;

  private final Map<String, String> parts = new TreeMap<>();

  /** Puts the mark of a kind of output among the properties, its digest to be filled in later. */
  public static void announce(POIXMLProperties.CustomProperties custom, OutputKind kind) {
    CTProperties all = custom.getUnderlyingProperties();
    for (int i = all.sizeOfPropertyArray() - 1; i >= 0; i--) {
      if (all.getPropertyArray(i).getName().equals(Seal.PROPERTY)) all.removeProperty(i);
    }
    custom.addProperty(Seal.PROPERTY, new Seal(kind, Seal.UNKNOWN).text());
  }

  @Override
  public String name() {
    return PROPERTIES;
  }

  /** Takes a part under the digest. */
  @Override
  public void add(String name, long size, long crc) {
    if (name.equalsIgnoreCase(PROPERTIES) || name.endsWith("/")) return;
    parts.put(name, size + "\t" + Long.toHexString(crc));
  }

  /** The part of the properties with the digest of all other parts filled in. */
  @Override
  public byte[] content(byte[] properties) {
    String xml = new String(properties, StandardCharsets.UTF_8);
    return xml.replace(Seal.ALGORITHM + Seal.UNKNOWN, Seal.ALGORITHM + digest())
        .getBytes(StandardCharsets.UTF_8);
  }

  private String digest() {
    MessageDigest digest = Sha256.begun();
    parts.forEach(
        (name, is) -> digest.update((name + "\t" + is + "\n").getBytes(StandardCharsets.UTF_8)));
    return Sha256.hex(digest);
  }

  /** What the file is of ours, or null. */
  public static OwnOutput of(ZipFile zip) throws IOException {
    Map<String, String> properties = properties(zip);
    Seal seal = Seal.of(properties.get(Seal.PROPERTY));
    if (seal != null && seal.digest().equals(digest(zip))) return seal.over(seal.digest());
    if (seal == null && !holdsFindings(zip, properties)) return null;
    return new OwnOutput(seal == null ? OutputKind.FINDINGS : seal.kind(), false);
  }

  /** True when its sheets tell a findings workbook, whatever was done to it. */
  public static boolean holdsFindings(ZipFile zip) throws IOException {
    return holdsFindings(zip, properties(zip));
  }

  private static boolean holdsFindings(ZipFile zip, Map<String, String> properties)
      throws IOException {
    return FindingsSheets.areIn(text(zip, "xl/workbook.xml"), properties.keySet());
  }

  private static String digest(ZipFile zip) {
    PackageMark mark = new PackageMark();
    for (ZipEntry entry : Collections.list(zip.entries())) {
      mark.add(entry.getName(), entry.getSize(), entry.getCrc());
    }
    return mark.digest();
  }

  private static Map<String, String> properties(ZipFile zip) throws IOException {
    String xml = text(zip, PROPERTIES);
    Map<String, String> found = new TreeMap<>();
    if (!xml.contains("Clearbed")) return found;
    String[] name = {""};
    XmlElements.each(
        xml,
        (element, attributes, text) -> {
          if (element.equals("property")) name[0] = attributes.getOrDefault("name", "");
          else if (element.equals("lpwstr")) found.put(name[0], text);
        });
    return found;
  }

  private static String text(ZipFile zip, String name) throws IOException {
    ZipEntry entry = zip.getEntry(name);
    if (entry == null) return "";
    try (InputStream in = zip.getInputStream(entry)) {
      return new String(in.readNBytes(LONGEST_PART), StandardCharsets.UTF_8);
    }
  }
}
