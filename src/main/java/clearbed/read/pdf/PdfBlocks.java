package clearbed.read.pdf;

import clearbed.model.document.Block;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.read.block.MarginText;
import clearbed.read.block.Mark;
import clearbed.read.block.Remarks;
import clearbed.read.layout.Line;
import clearbed.read.pdf.PageParts.PagePart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Turns the pages of a PDF into blocks; each paragraph and each table counts one in the ordinals.
 */
final class PdfBlocks {
  private final String document;
  private final List<PagePart> parts = new ArrayList<>();
  private final List<Gap> gaps = new ArrayList<>();

  /** Left edges of the columns of text found so far. */
  private final List<Double> columnEdges = new ArrayList<>();

  PdfBlocks(String document) {
    this.document = document;
  }

  List<Gap> gaps() {
    return gaps;
  }

  List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    for (PagePart part : parts) {
      Integer ordinal = blocks.size() + 1;
      if (part.table() != null) {
        Origin origin = new Origin(document, null, null, part.page(), ordinal, null, null);
        blocks.add(part.table().build(origin));
      } else {
        Origin origin = new Origin(document, null, null, part.page(), ordinal, null, part.text());
        blocks.add(new Paragraph(origin, "", 0, -1, part.text(), part.region()));
      }
    }
    return blocks;
  }

  void add(List<PdfPage> pages) {
    PageMargins margins = new PageMargins(pages);
    for (PdfPage page : pages) {
      if (!page.fault().isEmpty()) gap(page, page.fault());
      if (page.isScanned()) gap(page, "no text on this page: scanned; run text recognition first");
      for (String words : page.struck()) {
        Origin origin = new Origin(document, null, null, page.number(), null, null, words);
        gaps.add(new Gap(origin, Mark.STRUCK.reason(), Mark.STRUCK.fate()));
      }
      page(page, margins);
    }
    margins();
  }

  /** Each text of the margins once, whatever the number of its page. */
  private void margins() {
    Map<String, PagePart> seen = new LinkedHashMap<>();
    for (PagePart part : parts) {
      boolean margin = part.region() == Region.HEADER || part.region() == Region.FOOTER;
      if (margin) seen.putIfAbsent(part.region() + part.text().replaceAll("\\d+", "#"), part);
    }
    for (PagePart part : seen.values()) {
      if (part.text().chars().noneMatch(Character::isLetter)) continue;
      Origin page = new Origin(document, null, null, part.page(), null, null, part.text());
      String name = part.region() == Region.HEADER ? "header" : "footer";
      gaps.add(new Gap(page.withPart(name), MarginText.reason(name), GapFate.PASSED_OVER));
    }
  }

  /** One page that a file lists again and again says what it says once. */
  void addRepeats(Map<Integer, Integer> repeats) {
    repeats.forEach(
        (number, times) -> {
          Origin page = new Origin(document, null, null, number, null, null, null);
          String reason = "the same page stands in the file %d times more; read once";
          gaps.add(new Gap(page, reason.formatted(times), GapFate.READ));
        });
  }

  void addForms(PDDocument pdf) {
    for (PdfForms.Overlay remark : PdfForms.remarks(pdf)) {
      Origin origin = new Origin(document, null, null, remark.page(), null, null, remark.text());
      gaps.add(new Gap(origin.withPart("comment"), Remarks.PLAIN, GapFate.PASSED_OVER));
    }
    for (PdfForms.Overlay entry : PdfForms.of(pdf)) {
      parts.add(new PagePart(entry.page(), entry.region(), entry.text(), null));
    }
  }

  void addAttachments(int count) {
    if (count > 0)
      gaps.add(new Gap(Origin.ofDocument(document), "embedded files (" + count + ") are not read"));
  }

  private void gap(PdfPage page, String reason) {
    Origin origin = new Origin(document, null, null, page.number(), null, null, null);
    gaps.add(new Gap(origin, reason));
  }

  private void page(PdfPage page, PageMargins margins) {
    List<Line> body = new ArrayList<>();
    List<Line> footers = new ArrayList<>();
    for (Line line : page.lines()) {
      if (margins.isHeader(line, page)) parts.add(margin(page, Region.HEADER, line));
      else if (margins.isFooter(line, page)) footers.add(line);
      else body.add(line);
    }
    RuledTables ruled = new RuledTables(page, body);
    int bodyStart = parts.size();
    PageParts columns = new PageParts(page, columnEdges);
    parts.addAll(columns.of(ruled.rest(body), ruled.tables()));
    for (List<Line> box : ruled.boxes()) parts.addAll(columns.of(box, List.of()));
    joinToPageBefore(bodyStart);
    parts.addAll(columns.ofOneColumn(page.turned()));
    for (Line line : footers) parts.add(margin(page, Region.FOOTER, line));
  }

  private static PagePart margin(PdfPage page, Region region, Line line) {
    return new PagePart(page.number(), region, line.text(), null);
  }

  /** Joins a table, or a sentence, that goes on from the page before. */
  private void joinToPageBefore(int bodyStart) {
    if (bodyStart >= parts.size()) return;
    PagePart next = parts.get(bodyStart);
    int at = bodyStart - 1;
    while (at >= 0 && parts.get(at).region() != Region.BODY) at--;
    if (at < 0 || parts.get(at).page() == next.page()) return;
    PagePart last = parts.get(at);
    if (last.table() != null && next.table() != null) {
      if (!last.table().hasColumnsOf(next.table())) return;
      last.table().append(next.table());
      parts.remove(bodyStart);
    } else if (last.text() != null && next.text() != null && last.runsOnTo(next)) {
      parts.set(at, last.with(next));
      parts.remove(bodyStart);
    }
  }
}
