package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.recognise.schedule.cell.TwoUnits;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.part.Context;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a cell of a schedule says, whatever it stands under. */
final class CellStatements {
  private static final Pattern BARE_WIDTH =
      Pattern.compile("(?<![\\w./,-])(\\d{1,2}(?:[.,]\\d)?|\\d/\\d{1,2}) (wide|joints?)\\b");

  /** Type, grade, class or use in the words of ASTM C920, whatever the column is called. */
  private static final Pattern DESIGNATION =
      Pattern.compile(
          "(?:(?:type [SM]|grade (?:NS|P)|class \\d{2,3}(?:/\\d{2})?|use (?:NT|T|I|M|G|A|O)),?\\s*)+",
          Pattern.CASE_INSENSITIVE);

  /** Longer cells are descriptions, in characters. */
  private static final int LONGEST_CALL = 120;

  /** "Points, compatible with K1": what the mark stands for is not called for there. */
  private static final Pattern FITTING =
      Pattern.compile("\\bcompatib\\w+ (?:with|to)\\b[^;.]*", Pattern.CASE_INSENSITIVE);

  private static final Pattern FIRST = Pattern.compile("\\s*[,;(].*$", Pattern.DOTALL);

  /** Its first group is there where the width comes first. */
  private static final Pattern WIDTH_AND_DEPTH =
      Pattern.compile(
          "\\b(?:(w(?:idth|ide)?)\\W{0,3}(?:x|by|and)?\\W{0,3}d(?:epth|eep)?|d(?:epth|eep)?\\W{0,3}(?:x|by|and)?\\W{0,3}w(?:idth|ide)?)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern SIDES = Pattern.compile("\\d\\s?[x×X]\\s?\\d");

  /** So many words are no figure with its unit. */
  private static final int SENTENCE = 5;

  /** A cell that says so many things of a tile is no chance. */
  private static final int DESCRIBED = 2;

  private final Vocabulary vocabulary;
  private final HeadedCells headed;

  CellStatements(Vocabulary vocabulary, HeadedCells headed) {
    this.vocabulary = vocabulary;
    this.headed = headed;
  }

  List<Statement> of(Origin origin, Table.Cell cell, Header.Column column) {
    List<Statement> out = new ArrayList<>();
    TwoUnits pair = TwoUnits.of(column.text());
    String plain = PlainText.of(cell.text()).trim();
    String text = measured(column, pair == null ? plain : pair.spelt(plain));
    Attribute attribute = headed.meant(column, text);
    if (DESIGNATION.matcher(text).matches()) {
      out.addAll(headed.find(origin, text, column, Context.running("sealant", Set.of(), false)));
    } else if (attribute == null) {
      boolean material = column.describes();
      String family = material ? "tile" : vocabulary.family(column.text());
      List<Statement> told = widthAndDepth(origin, text, column);
      if (told.isEmpty() && !material && family.isEmpty()) told = ofTile(origin, text, column);
      if (!told.isEmpty()) {
        out.addAll(told);
      } else {
        out.addAll(headed.find(origin, text, column, Context.running(family, Set.of(), material)));
        // "S1" under "Sealant" is the mark of one, and no class of an adhesive.
        if (WorkFamilies.MATERIALS.contains(family) && Tags.isMark(text))
          out.removeIf(s -> isOfAnother(s, family));
        if (!material && family.isEmpty()) out.addAll(opening(origin, text, column));
      }
      if (material && column.unit() != null) describedSize(out, origin, text, column);
    } else if (attribute.id().equals("notes")) {
      out.addAll(headed.find(origin, text, column, Context.running("", Set.of(), true)));
    } else if (!headed.empty(attribute, text)) {
      headed.attribute(out, origin, text, column, attribute);
    }
    marks(out, origin, text, column);
    return out;
  }

  /** "3 wide; CG2 WA" under "Joint, grout", in the unit that is noted for the whole document. */
  private static String measured(Header.Column column, String text) {
    boolean noted =
        column.unit() != null
            && column.attribute() != null
            && column.attribute().family().equals("grout")
            && column.attribute().kind() != Attribute.Kind.AMOUNT;
    return noted ? BARE_WIDTH.matcher(text).replaceAll("joint $1 " + column.unit().symbol()) : text;
  }

  /** A size in a unit that is noted for the whole of the document. */
  private void describedSize(
      List<Statement> out, Origin origin, String text, Header.Column column) {
    Attribute size = vocabulary.attribute("tile.size").orElseThrow();
    if (out.stream().anyMatch(s -> s.attribute().equals(size.id())) || !SIDES.matcher(text).find())
      return;
    Quantities.size(text, column.unit(), column.mark())
        .filter(found -> found.sides().size() > 1)
        .ifPresent(found -> out.add(HeadedCells.statement(size, found, text, origin)));
  }

  /** "8 x 5 mm" under "Width x depth of sealant" is of the joint and of what fills it. */
  private static List<Statement> widthAndDepth(Origin origin, String text, Header.Column column) {
    Matcher heading = WIDTH_AND_DEPTH.matcher(column.text());
    if (!heading.find()) return List.of();
    Content.Size pair =
        Quantities.size(text, column.unit(), column.mark())
            .filter(size -> size.sides().size() == 2)
            .orElse(null);
    if (pair == null) return List.of();
    boolean turned = heading.group(1) == null;
    Quantity width = pair.sides().get(turned ? 1 : 0);
    Quantity depth = pair.sides().get(turned ? 0 : 1);
    return List.of(
        HeadedCells.statement("movement.width", Content.Amount.exact(width), text, origin),
        HeadedCells.statement("sealant.depth", Content.Amount.exact(depth), text, origin));
  }

  /**
   * "Kiln-formed glass, 6 in. x 24 in., no backing": words that say this and that of a tile
   * describe it, whatever they stand under. Empty where they do not.
   */
  private List<Statement> ofTile(Origin origin, String text, Header.Column column) {
    if (text.split("\\s+", SENTENCE).length < SENTENCE) return List.of();
    List<Statement> told =
        headed.find(origin, text, column, Context.running("tile", Set.of(), true));
    long said =
        told.stream()
            .map(Statement::attribute)
            .filter(a -> a.startsWith("tile."))
            .distinct()
            .count();
    return said < DESCRIBED ? List.of() : told;
  }

  /** "Translucent, aqua" under "Look": its first words say what the tile is. */
  private List<Statement> opening(Origin origin, String text, Header.Column column) {
    String first = FIRST.matcher(text).replaceFirst("");
    return headed.find(origin, first, column, Context.running("tile", Set.of(), true)).stream()
        .filter(s -> s.attribute().equals("tile.translucency"))
        .map(s -> HeadedCells.asWritten(s, text))
        .toList();
  }

  private void marks(List<Statement> out, Origin origin, String written, Header.Column column) {
    if (written.length() > LONGEST_CALL) return;
    String text = FITTING.matcher(written).replaceAll(" ");
    Set<String> called = new TreeSet<>(TagFinder.tags(text));
    called.addAll(ClauseNumbers.in(text));
    for (Phrases.Hit taught : vocabulary.taught().tagsIn(text))
      called.add(text.substring(taught.start(), taught.end()));
    if (column.role() == Header.Role.CALLS && called.isEmpty()) called.add(text);
    for (String mark : called)
      out.add(
          new Statement(
              RowReader.MARK, new Content.Words(mark), false, written, origin, Limits.NONE));
  }

  /** A comment on a cell is what a person says of it: what it leaves open is open. */
  List<Statement> leftOpen(Table table, Table.Cell cell, Header.Column column) {
    if (cell.remark().isBlank()) return List.of();
    Attribute attribute = column.attribute();
    boolean any = attribute == null || attribute.id().equals("notes");
    Context context = any ? Context.running("", Set.of(), true) : Context.column(attribute);
    Origin origin = table.origin(cell).withPart("comment");
    return headed.find(origin, PlainText.of(cell.remark()), column, context).stream()
        .filter(Statement::isOpen)
        .toList();
  }

  /**
   * The same of a card, whose names are the office's own: "Movement joint | 16 ft most" is a
   * sentence with its name, and says by it what the cell does not say by itself.
   */
  List<Statement> withWords(
      List<Statement> said, Origin origin, Table.Cell cell, Header.Column column) {
    boolean place = column.attribute() != null && column.attribute().family().equals("location");
    if (place || column.describes() || column.text().isBlank()) return said;
    List<Statement> sentence = inWords(origin, cell, column);
    if (sentence.isEmpty()) return said;
    List<Statement> out = new ArrayList<>(said);
    out.removeIf(
        s -> isUnread(s) && sentence.stream().anyMatch(o -> o.family().equals(s.family())));
    for (Statement s : sentence)
      if (said.stream().noneMatch(o -> !isUnread(o) && o.attribute().equals(s.attribute())))
        out.add(s);
    return out;
  }

  private List<Statement> inWords(Origin origin, Table.Cell cell, Header.Column column) {
    String text = PlainText.of(cell.text()).trim();
    String sentence = column.text() + ": " + text;
    // A name that speaks of no part of the work speaks of the tile.
    String family = vocabulary.family(column.text()).isEmpty() ? "tile" : "";
    return headed.find(origin, sentence, column, Context.running(family, Set.of(), true)).stream()
        .map(s -> HeadedCells.asWritten(s, text))
        .toList();
  }

  /** Words that were kept in the place of a figure, a standard or a term. */
  private boolean isUnread(Statement s) {
    if (s.content() instanceof Content.NotUnderstood) return true;
    return s.content() instanceof Content.Words
        && vocabulary
            .attribute(s.attribute())
            .filter(a -> a.kind() != Attribute.Kind.WORDS)
            .isPresent();
  }

  private static boolean isOfAnother(Statement s, String family) {
    return WorkFamilies.MATERIALS.contains(s.family()) && !s.family().equals(family);
  }

  /** What a line over the items of a bill says of the tile of each. */
  List<Statement> described(String text, Origin origin) {
    Header.Column none = new Header.Column(-1, "", Header.Role.MATERIAL, null, "", null);
    return headed.find(
        origin, PlainText.line(text).strip(), none, Context.running("", Set.of(), true));
  }
}
