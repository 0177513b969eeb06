package clearbed.report.view;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.report.wording.Phrasing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The documents as text and tables. */
final class Papers {
  /** Pieces of a text without pages that are laid out together. */
  private static final int TOGETHER = 40;

  private final Anchors anchors;
  private final FindingPlaces findings;
  private final TextLimit limit = new TextLimit();
  private final TableGrids tables;

  Papers(Anchors anchors, FindingPlaces findings) {
    this.anchors = anchors;
    this.findings = findings;
    this.tables = new TableGrids(anchors, findings, limit);
  }

  Page.ShownDocument of(Viewed viewed) {
    Document document = viewed.document();
    List<String> remarks = new ArrayList<>();
    if (!document.reason().isEmpty()) remarks.add(Shown.line(document.reason()));
    for (Document.Gap gap : document.gaps())
      remarks.add(
          Phrasing.of(gap.fate())
              + ": "
              + Shown.line(gap.origin().place())
              + ": "
              + Shown.line(gap.reason()));
    List<Page.Chunk> chunks = new ArrayList<>();
    if (!limit.isReached()) chunks(document, new Endings(viewed.endings()), chunks);
    else if (!document.blocks().isEmpty())
      remarks.add(
          "its text is left out here, as the page would grow too large; give fewer documents");
    return new Page.ShownDocument(
        anchors.document(document.path()),
        Shown.line(document.path()),
        Phrasing.of(document.status()),
        remarks,
        chunks);
  }

  private void chunks(Document document, Endings endings, List<Page.Chunk> chunks) {
    List<Page.ShownPiece> pieces = new ArrayList<>();
    Integer page = null;
    for (Block block : document.blocks()) {
      Integer of = block.origin().page();
      boolean full = of == null ? pieces.size() >= TOGETHER : !of.equals(page);
      if (full && !pieces.isEmpty()) {
        chunks.add(new Page.Chunk(name(page), List.copyOf(pieces)));
        pieces.clear();
      }
      page = of;
      if (block instanceof Paragraph p) pieces.add(paragraph(p, endings));
      else if (block instanceof Table t) {
        for (Page.ShownPiece part : tables.of(t, endings)) {
          // Each part of a long table by itself, with the findings on it.
          if (TableGrids.isFull(part) && !pieces.isEmpty()) {
            chunks.add(new Page.Chunk(name(page), List.copyOf(pieces)));
            pieces.clear();
          }
          pieces.add(part);
        }
      }
    }
    if (!pieces.isEmpty()) chunks.add(new Page.Chunk(name(page), pieces));
  }

  private static String name(Integer page) {
    return page == null ? "" : "Page " + page;
  }

  private Page.ShownPiece paragraph(Paragraph p, Endings endings) {
    limit.count(p.text().length());
    String part =
        switch (p.region()) {
          case BODY -> "";
          default -> p.region().name().toLowerCase(Locale.ROOT);
        };
    return new Page.ShownPiece(
        anchors.at(p.origin()),
        Math.min(p.headingLevel(), 3),
        Shown.line(p.label()),
        part,
        endings.runs(p.text(), p.origin()),
        null,
        findings.taken(p.origin()));
  }
}
