package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.cell.GlassTest;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;

/** Whether a row of a schedule is glass tile: by its own words, then by those over it. */
final class RowGlass {
  /**
   * @param evidence the words that decide
   * @param own false when they stand over the row
   */
  record Judged(boolean is, boolean decided, String evidence, boolean own) {
    Judged(boolean is, boolean decided, String evidence) {
      this(is, decided, evidence, true);
    }
  }

  private static final Pattern TICK =
      Pattern.compile("[xX\u00d7\u2713\u2714\u2611\u2022\u25cf]|(?i:yes|y)");

  private static final Set<String> SET_AS_TILE = Set.of("mortar", "grout");

  private final ScheduleFinder means;

  RowGlass(ScheduleFinder means) {
    this.means = means;
  }

  Judged of(Header header, Table.Row row, String tag, String material, List<String> over) {
    String standard = means.rowWords.tileStandard(header, row);
    ScheduleFinder.Material known = means.known(material);
    GlassTest.Result own = known.result();
    // "Items that are not glass tile" stands over glass of other kinds.
    if (own.glass() && !TileWords.tile(material)) {
      for (String around : over) {
        if (means.vocabulary.list("notGlassTitle").in(around))
          return new Judged(false, true, around);
      }
    }
    // "Sintered from glass granulate, opaque": what it was made from is named.
    boolean told = own.glass() || own.another();
    String seen = told ? "" : seenThrough(header, row);
    Taught.Word letters = letters(row, tag);
    // "TG = glass tile" tells that the float glass of TG5 is tile.
    boolean named = letters != null && own.another() && isOfGlass(material);
    // "Float glass, cut, edges ground", bedded in C2 and grouted with CG2, is tile.
    if (own.another() && isSheetGlass(material) && isSetAsTile(header, row))
      return new Judged(true, true, known.words());
    // "Kiln-cast glass slabs to ANSI A137.2" are tile, whatever they are called.
    if (!own.glass() && !own.another() && isGlass(material))
      return new Judged(true, true, known.words());
    if (own.decided() && seen.isEmpty() && !named)
      return new Judged(own.glass(), true, known.words());
    if (letters != null) return new Judged(true, true, letters.words() + ": " + letters.evidence());
    if (isGlass(standard)) return new Judged(true, true, standard);
    if (standard.contains("A137.1")) return new Judged(false, true, standard);
    Judged ticked = ticked(header, row);
    if (ticked != null) return ticked;
    String kind = kindOfGlass(header, row);
    if (kind.isEmpty()) kind = seen;
    if (!kind.isEmpty()) return new Judged(true, true, kind);
    for (String around : over) {
      // "Glass that is not tile, and the rest" makes no tile of what stands below.
      if (means.vocabulary.list("notGlassTitle").in(around))
        return new Judged(false, true, around, false);
      GlassTest.Result said = means.known(around).result();
      // "K ceramic, V vitreous glass mosaic": over rows of several kinds it decides nothing.
      if (said.glass() && means.vocabulary.glass().namesOtherTile(around)) continue;
      // "Glass take-off" is no title of what is not glass tile.
      if (said.glass() || said.another()) return new Judged(said.glass(), true, around, false);
    }
    return new Judged(false, false, material.isBlank() ? "no material stated" : known.words());
  }

  /** A tick under "Glass", beside columns for "Porcelain" and "Stone"; null where there is none. */
  private Judged ticked(Header header, Table.Row row) {
    for (Header.Column column : header.columns().values()) {
      Table.Cell cell = row.at(column.index());
      if (cell == null || !TICK.matcher(cell.text().strip()).matches()) continue;
      boolean other = means.vocabulary.glass().namesOtherTile(column.text());
      if (!other && means.vocabulary.list("glassAlone").in(column.text()))
        return new Judged(true, true, column.text() + ": " + cell.text().strip());
      if (other) return new Judged(false, true, column.text() + ": " + cell.text().strip());
    }
    return null;
  }

  /** Glass that is no tile by its own words, and no tile of another kind. */
  private boolean isOfGlass(String material) {
    return means.vocabulary.list("glassAlone").in(material)
        && means.vocabulary.glass().describesOtherTile(material).isEmpty();
  }

  /** Float or sheet glass and nothing else that is no tile: no mirror, no block, no pane. */
  private boolean isSheetGlass(String material) {
    Attribute kind = means.vocabulary.attribute("tile.kind").orElseThrow();
    String plain = PlainText.of(material);
    String rest = kind.words().anyTerm().without(plain);
    return !rest.equals(plain)
        && isOfGlass(material)
        && !means.vocabulary.list("notTile").in(rest)
        && !means.vocabulary.list("otherFinish").in(rest);
  }

  /** True of what the row gives a mortar and a grout. */
  private boolean isSetAsTile(Header header, Table.Row row) {
    Set<String> parts = new HashSet<>();
    for (Header.Column column : header.columns().values()) {
      Table.Cell cell = row.at(column.index());
      boolean says =
          cell != null
              && !cell.text().isBlank()
              && !means.vocabulary.list("empty").matches(PlainText.line(cell.text()).strip());
      // "LM-1" under "Mortar" calls one.
      if (says)
        parts.add(
            column.attribute() == null
                ? means.vocabulary.family(column.text())
                : column.attribute().family());
    }
    return parts.containsAll(SET_AS_TILE);
  }

  /** What a legend says of the letters of the tag, or of a cell that holds such letters alone. */
  private Taught.Word letters(Table.Row row, String tag) {
    Taught taught = means.vocabulary.taught();
    Taught.Word word = taught.letters(tag);
    if (word != null) return word;
    return row.cells().stream()
        .map(cell -> taught.standsFor(cell.text()))
        .filter(Objects::nonNull)
        .findFirst()
        .orElse(null);
  }

  /** True of standards of which one is that of glass tile. */
  static boolean isGlass(String standards) {
    return standards.contains("A137.2");
  }

  /** "Kind of glass" over "fused": the heading says of what, the cell that it is tile. */
  private String kindOfGlass(Header header, Table.Row row) {
    for (Header.Column column : header.columns().values()) {
      Table.Cell cell = row.at(column.index());
      boolean made = column.describes() || is(column, "tile.kind");
      if (!made || cell == null || cell.text().isBlank()) continue;
      GlassTest.Result said = means.known(column.text() + " tile").result();
      boolean glass = means.vocabulary.list("glassAlone").in(column.text()) && said.glass();
      if (glass && (isKind(cell.text()) || TileWords.tile(cell.text())))
        return column.text() + ": " + cell.text().strip();
    }
    return "";
  }

  /** "Sintered" and "opaque": of what is made so only glass is asked whether one sees through. */
  private String seenThrough(Header header, Table.Row row) {
    String made = "";
    String seen = "";
    for (Header.Column column : header.columns().values()) {
      Table.Cell cell = row.at(column.index());
      if (cell == null || cell.text().isBlank()) continue;
      String text = cell.text().strip();
      if (is(column, "tile.kind") && isKind(text)) made = text;
      if (is(column, "tile.translucency") && column.attribute().words().anyTerm().in(text))
        seen = text;
    }
    return made.isEmpty() || seen.isEmpty() ? "" : made + ", " + seen;
  }

  private static boolean is(Header.Column column, String attribute) {
    return column.attribute() != null && column.attribute().id().equals(attribute);
  }

  /** "Pressed, through colour" is pressed glass. */
  private boolean isKind(String text) {
    return holdsKind(text) || holdsKind(text.split("[,;(]", 2)[0].strip() + " glass");
  }

  private boolean holdsKind(String text) {
    Attribute kind = means.vocabulary.attribute("tile.kind").orElseThrow();
    return kind.words().anyTerm().in(PlainText.of(text));
  }
}
