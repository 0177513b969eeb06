package clearbed.read.xml;

import clearbed.read.source.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.poi.ooxml.util.DocumentHelper;
import org.apache.poi.openxml4j.exceptions.InvalidFormatException;
import org.apache.poi.openxml4j.opc.OPCPackage;
import org.apache.poi.openxml4j.opc.PackageAccess;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.apache.poi.openxml4j.opc.PackagePartName;
import org.apache.poi.openxml4j.opc.PackageRelationship;
import org.apache.poi.openxml4j.opc.PackagingURIHelper;
import org.apache.poi.openxml4j.opc.TargetMode;
import org.apache.poi.util.XMLHelper;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.XMLReader;
import org.xml.sax.helpers.DefaultHandler;

/**
 * The parts of an Office Open XML file. Relationships are told by the last word of their type, so
 * that the strict and the transitional variant of the standard read alike.
 */
public final class OfficePackage implements AutoCloseable {
  private final OPCPackage opc;

  private OfficePackage(OPCPackage opc) {
    this.opc = opc;
  }

  public static OfficePackage open(Path file) throws InvalidFormatException {
    return new OfficePackage(OPCPackage.open(file.toFile(), PackageAccess.READ));
  }

  public PackagePart mainPart() throws InvalidFormatException, Unreadable {
    for (PackageRelationship link : opc.getRelationships()) {
      if (link.getRelationshipType().endsWith("/officeDocument")) return target(link);
    }
    throw new Unreadable("an Office file without its main part; open and save it again");
  }

  /** Parts linked from a part, in the order of the links; dangling links are left out. */
  public List<PackagePart> linked(PackagePart from, String type) throws InvalidFormatException {
    List<PackagePart> parts = new ArrayList<>();
    for (PackageRelationship link : from.getRelationships()) {
      if (!link.getRelationshipType().endsWith("/" + type)) continue;
      PackagePart part = link.getTargetMode() == TargetMode.INTERNAL ? target(link) : null;
      if (part != null) parts.add(part);
    }
    return parts;
  }

  public PackagePart first(PackagePart from, String type) throws InvalidFormatException {
    List<PackagePart> parts = linked(from, type);
    return parts.isEmpty() ? null : parts.get(0);
  }

  /** The part behind a relationship id, or null. */
  public PackagePart byId(PackagePart from, String id) throws InvalidFormatException {
    PackageRelationship link = id == null ? null : from.getRelationship(id);
    return link == null || link.getTargetMode() != TargetMode.INTERNAL ? null : target(link);
  }

  private PackagePart target(PackageRelationship link) throws InvalidFormatException {
    PackagePartName name = PackagingURIHelper.createPartName(link.getTargetURI());
    return opc.getPart(name);
  }

  /** Entities and document types are refused by the parser's settings. */
  public static void parse(PackagePart part, DefaultHandler handler)
      throws IOException, SAXException {
    try (InputStream in = part.getInputStream()) {
      XMLReader reader = XMLHelper.newXMLReader();
      reader.setContentHandler(handler);
      reader.setErrorHandler(handler);
      reader.parse(new InputSource(in));
    } catch (ParserConfigurationException e) {
      throw new SAXException(e);
    }
  }

  public static Element tree(PackagePart part) throws IOException, SAXException {
    try (InputStream in = part.getInputStream()) {
      return DocumentHelper.readDocument(in).getDocumentElement();
    }
  }

  @Override
  public void close() {
    opc.revert();
  }
}
