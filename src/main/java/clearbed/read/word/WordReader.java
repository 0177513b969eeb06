package clearbed.read.word;

import clearbed.model.document.Document;
import clearbed.model.document.Paragraph.Region;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import clearbed.read.source.Unreadable;
import clearbed.read.xml.OfficePackage;
import clearbed.read.xml.Xml;
import java.io.IOException;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.w3c.dom.Element;
import org.xml.sax.SAXException;

/**
 * Word documents since 2007 as their reader sees them with all tracked changes accepted. Headers
 * come first, then the body and footers; each header or footer text is given once.
 */
public final class WordReader implements FormatReader {

  @Override
  public Document read(Source source)
      throws IOException, SAXException, OpenXML4JException, Unreadable {
    try (OfficePackage parts = OfficePackage.open(source.file())) {
      PackagePart main = parts.mainPart();
      Element body = Xml.child(OfficePackage.tree(main), "body");
      if (body == null) throw new Unreadable("a Word document without a body; save it again");
      WordStyles styles = WordStyles.of(tree(parts.first(main, "styles")));
      WordNumbering numbering = new WordNumbering(tree(parts.first(main, "numbering")), styles);
      WordAsides asides = WordAsides.of(parts, main);
      WordBlocks blocks = new WordBlocks(source.path(), styles, numbering, asides);
      for (PackagePart part : parts.linked(main, "header")) margin(blocks, part, Region.HEADER);
      blocks.body(body);
      for (PackagePart part : parts.linked(main, "footer")) margin(blocks, part, Region.FOOTER);
      blocks.looseComments();
      return Document.read(source.path(), Format.DOCX.shortName(), blocks.blocks(), blocks.gaps());
    }
  }

  private static Element tree(PackagePart part) throws IOException, SAXException {
    return part == null ? null : OfficePackage.tree(part);
  }

  private static void margin(WordBlocks blocks, PackagePart part, Region region)
      throws IOException, SAXException {
    blocks.margin(OfficePackage.tree(part), region);
  }
}
