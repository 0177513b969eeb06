package clearbed.recognise.schedule;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.TagCells;
import clearbed.recognise.schedule.row.ItemRows;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.TagList;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The marks of rows: those of their own cell, and those of other rows that they name. */
final class RowMarks {
  /** Rows whose tags others may name. */
  private static final int KEYS = 400;

  private final ScheduleFinder means;
  private final ItemRows items;
  private final List<Document.Gap> gaps;

  /** Of the tags of the first rows. */
  private final Set<String> keys = new HashSet<>();

  /**
   * @param gaps to which is added what was not understood
   */
  RowMarks(ScheduleFinder means, ItemRows items, List<Document.Gap> gaps) {
    this.means = means;
    this.items = items;
    this.gaps = gaps;
  }

  /** What the tag column calls the first rows. */
  void start(List<Table.Row> below, int tagColumn) {
    keys.clear();
    if (tagColumn < 0) return;
    for (Table.Row row : below.subList(0, Math.min(below.size(), KEYS))) {
      Table.Cell cell = row.at(tagColumn);
      if (cell != null && means.tagCells.isTag(cell.text()))
        keys.add(Tags.key(cell.text().strip()));
    }
  }

  /**
   * The tiles of the table that the other cells of a row name; "sample areas for GF-01 to GF-03" is
   * none itself.
   */
  Set<String> named(Table.Row row, Table.Cell own) {
    Set<String> out = new LinkedHashSet<>();
    if (keys.isEmpty()) return out;
    for (Table.Cell cell : row.cells())
      if (cell != own && !cell.text().isBlank())
        for (String tag : TagFinder.tags(PlainText.of(cell.text())))
          if (keys.contains(Tags.key(tag))) out.add(tag);
    return out;
  }

  /** One cell may hold several tags: {@code GT-1, GT-2}, {@code GT-5 thru GT-8}. */
  List<String> of(String written, String material, Origin origin) {
    String cell = TagCells.withoutRemark(written);
    // "M40 MG1" beside "Glass mosaic MG1": the section that it is in, and its mark.
    String last = cell.strip().replaceFirst("^.*\\s", "");
    boolean behind = !last.equals(cell.strip()) && Tags.isMark(last);
    if (behind && Tags.key(last).equals(Tags.key(items.named(material)))) return List.of(last);
    TagList.Found list = TagList.inCell(cell);
    if (list != null && list.tags().size() > 1) {
      if (!list.unspelt().isEmpty()) gaps.add(TagList.gap(list.unspelt(), origin));
      return list.tags();
    }
    return means.tagCells.in(cell);
  }

  static String shortened(String material) {
    String text = material.replaceAll("\\s+", " ").trim();
    return text.length() <= 40 ? text : text.substring(0, 40).trim();
  }
}
