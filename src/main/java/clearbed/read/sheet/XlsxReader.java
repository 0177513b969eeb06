package clearbed.read.sheet;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.Source;
import clearbed.read.source.Unreadable;
import clearbed.read.xml.OfficePackage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Excel workbooks since 2007, streamed so that long sheets fit in a small heap. What is hidden is
 * read like the rest, for a schedule is no less binding when a column is folded away, and said.
 */
public final class XlsxReader implements FormatReader {

  @Override
  public Document read(Source source)
      throws IOException, SAXException, OpenXML4JException, Unreadable {
    List<Block> blocks = new ArrayList<>();
    List<Gap> gaps = new ArrayList<>();
    try (OfficePackage parts = OfficePackage.open(source.file())) {
      PackagePart main = parts.mainPart();
      WorkbookPart workbook = new WorkbookPart();
      OfficePackage.parse(main, workbook);
      SharedStrings strings = new SharedStrings();
      parse(parts.first(main, "sharedStrings"), strings);
      CellStyles styles = new CellStyles();
      parse(parts.first(main, "styles"), styles);
      for (WorkbookPart.ListedSheet sheet : workbook.sheets()) {
        PackagePart part = parts.byId(main, sheet.link());
        Origin origin = Origin.ofCell(source.path(), sheet.name(), null, null);
        if (part == null) {
          gaps.add(new Gap(origin, "the sheet is missing from the file"));
        } else if (part.getContentType().contains("worksheet")) {
          SheetGrid grid = new SheetGrid(source.path(), sheet.name());
          if ("hidden".equals(sheet.state())) grid.hide(SheetNotes.HIDDEN);
          if ("veryHidden".equals(sheet.state())) grid.hide(SheetNotes.VERY_HIDDEN);
          OfficePackage.parse(
              part,
              new SheetPart(grid, strings, styles, workbook.from1904(), comments(parts, part)));
          blocks.add(grid.table());
          gaps.addAll(grid.gaps());
        }
        if (part == null) continue;
        addDrawings(source, sheet, parts, part, blocks);
        int objects = parts.linked(part, "oleObject").size() + parts.linked(part, "package").size();
        if (objects > 0) gaps.add(new Gap(origin, "embedded files (" + objects + ") are not read"));
      }
    }
    return Document.read(source.path(), Format.XLSX.shortName(), blocks, gaps);
  }

  private static void parse(PackagePart part, DefaultHandler handler)
      throws IOException, SAXException {
    if (part != null) OfficePackage.parse(part, handler);
  }

  private static Map<String, String> comments(OfficePackage parts, PackagePart sheet)
      throws IOException, SAXException, OpenXML4JException {
    SheetComments comments = new SheetComments();
    parse(parts.first(sheet, "comments"), comments);
    return comments.byCell();
  }

  private static void addDrawings(
      Source source,
      WorkbookPart.ListedSheet sheet,
      OfficePackage parts,
      PackagePart part,
      List<Block> blocks)
      throws IOException, SAXException, OpenXML4JException {
    for (PackagePart drawing : parts.linked(part, "drawing")) {
      SheetDrawing words = new SheetDrawing(source.path(), sheet.name());
      OfficePackage.parse(drawing, words);
      blocks.addAll(words.notes());
    }
  }
}
