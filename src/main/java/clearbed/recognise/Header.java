package clearbed.recognise;

import clearbed.base.Memo;
import clearbed.model.Table;
import clearbed.model.Unit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * The header of a schedule: what each column holds.
 *
 * @param columns by column number from 0
 * @param rows how many rows it takes up, 1 or 2
 */
record Header(Map<Integer, Column> columns, int rows) {

  private static final Pattern AT =
      Pattern.compile("(?:at|@|every|at every)(?: \\W.*)?", Pattern.CASE_INSENSITIVE);
  private static final Pattern JOINTS_AT =
      Pattern.compile(
          "joints?,? (?:at|every|at every)(?:,? [(\\[]?(?:mm|m|in|ft)[)\\]]?)?$",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern BED = Pattern.compile("\\bsetting bed\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern FIGURES = Pattern.compile("[\\d\\s.,-]*\\d[\\d\\s.,-]*");
  private static final Pattern BLANKS = Pattern.compile("\\s+");
  private static final Pattern STOPS = Pattern.compile("[.:*#,?]+");
  private static final Pattern UNIT_BEHIND =
      Pattern.compile(
          ",\\s*(?:mm|in|psi|mpa|ft|m|%|in\\.|(?:milli)?(?:met(?:re|er)s?)|inch(?:es)?|feet|°?\\s?[cf]|deg\\.? ?[cf])\\s*$"
              + "|\\s(?:mm|cm|m|ft|psi|mpa|°\\s?[cf]|sf|sq\\.? ?ft|sqft|m2|sqm|sq\\.? ?m)\\.?$");
  private static final Pattern BRACKETS =
      Pattern.compile("\\((?![^)]*\\b(?:wet|dry)\\b)[^)]*\\)|\\[[^\\]]*\\]");

  /** What a column can hold. */
  enum Role {
    TAG,
    MATERIAL,
    ATTRIBUTE,
    SURFACE,
    OTHER
  }

  /**
   * @param attribute for {@link Role#ATTRIBUTE}
   * @param surface term for {@link Role#SURFACE}
   * @param unit named in the header, or null
   * @param mark that its figures have before their decimals
   */
  record Column(
      int index,
      String text,
      Role role,
      Attribute attribute,
      String surface,
      Unit unit,
      DecimalMark mark) {
    Column(int index, String text, Role role, Attribute attribute, String surface, Unit unit) {
      this(index, text, role, attribute, surface, unit, DecimalMark.UNKNOWN);
    }

    /** True where its cells are figures. */
    boolean measures() {
      return attribute != null
          && (attribute.kind() == Attribute.Kind.AMOUNT
              || attribute.kind() == Attribute.Kind.SIZE
              || attribute.kind() == Attribute.Kind.FLATNESS);
    }

    Column with(DecimalMark now) {
      return new Column(index, text, role, attribute, surface, unit, now);
    }

    /** True where the words of a cell say what the tile is. */
    boolean describes() {
      return role == Role.MATERIAL || role == Role.TAG;
    }

    Column at(int place) {
      return place == index ? this : new Column(place, text, role, attribute, surface, unit, mark);
    }
  }

  /**
   * With these units for every column of lengths that names none.
   *
   * @param noted for sizes and widths
   * @param centres for spacings
   */
  Header withDefault(Unit noted, Unit centres) {
    Map<Integer, Column> out = new LinkedHashMap<>();
    columns.forEach(
        (index, c) -> {
          boolean length =
              c.unit() == null
                  && c.attribute() != null
                  && (c.attribute().kind() == Attribute.Kind.SIZE
                      || c.attribute().dimension() == noted.dimension()
                      || c.attribute().id().equals("movement.guideline"));
          boolean spacing = length && c.attribute().id().endsWith(".spacing");
          Unit unit = spacing ? centres : noted;
          out.put(
              index,
              length
                  ? new Column(
                      c.index(), c.text(), c.role(), c.attribute(), c.surface(), unit, c.mark())
                  : c);
        });
    return new Header(out, rows);
  }

  /** In a table of movement joints the width of a joint is not that of a grout joint. */
  Header ofMovementJoints(Vocabulary vocabulary) {
    Map<Integer, Column> out = new LinkedHashMap<>(columns);
    out.replaceAll(
        (index, c) -> {
          boolean grout = c.text().toLowerCase(Locale.ROOT).contains("grout");
          return isOf(c, "grout.width") && !grout ? as(vocabulary, c, "movement.width") : c;
        });
    return new Header(out, rows);
  }

  boolean has(Role role) {
    return columns.values().stream().anyMatch(c -> c.role() == role);
  }

  List<Column> all(Role role) {
    return columns.values().stream()
        .filter(c -> c.role() == role)
        .sorted(Comparator.comparingInt(Column::index))
        .toList();
  }

  /** How many columns are understood. */
  private long understood() {
    return columns.values().stream().filter(c -> c.role() != Role.OTHER).count();
  }

  /**
   * The header that starts at a row, or null when none does.
   *
   * @param seen columns by their words, kept from table to table
   */
  static Header at(
      Vocabulary vocabulary, Table.Row row, Table.Row next, Memo<String, Column> seen) {
    if (row.cells().stream().filter(c -> !c.text().isBlank()).count() < 2) return null;
    if (row.cells().stream().anyMatch(c -> c.text().length() > 90)) return null;
    boolean mayBeTwo =
        next != null && sub(row, next) && mayBePlausible(vocabulary, row, next, seen);
    if (!mayBeTwo && !mayBePlausible(vocabulary, row, null, seen)) return null;
    Header one = new Header(columns(vocabulary, row, null, seen), 1);
    Header two = mayBeTwo ? new Header(columns(vocabulary, row, next, seen), 2) : null;
    if (two != null && two.plausible() && two.understood() > one.understood()) return two;
    return one.plausible() ? one : null;
  }

  /**
   * False as soon as so many columns are not understood that the others cannot make it plausible.
   * Short words are asked first: figures are no headings, and a row of data is known by its figures
   * before its descriptions are looked at.
   */
  private static boolean mayBePlausible(
      Vocabulary vocabulary, Table.Row row, Table.Row next, Memo<String, Column> seen) {
    List<String[]> heads = new ArrayList<>();
    for (int index : indexes(row, next)) {
      String top = textAt(row, index);
      String bottom = next == null ? "" : textAt(next, index);
      if (overColumns(row, next, index, bottom)) continue;
      heads.add(new String[] {top.equals(bottom) ? "" : top, bottom, top});
    }
    heads.sort(Comparator.comparingInt(head -> head[0].length() + head[1].length()));
    int known = heads.size();
    for (String[] head : heads) {
      // What stands below nothing may yet be joined with a group.
      if (head[2].isEmpty()) continue;
      if (column(vocabulary, head[0], head[1], seen).role() == Role.OTHER) known--;
      if (known < 2 || known < 3 && known * 2 < heads.size()) return false;
    }
    return true;
  }

  /** A second header line has no long words, no figures of its own and no tag. */
  private static boolean sub(Table.Row row, Table.Row next) {
    return next.number() == row.number() + 1
        && next.cells().stream()
            .noneMatch(
                c ->
                    !c.continued()
                        && (c.text().length() > 40 || ScheduleFinder.looksLikeTag(c.text())));
  }

  private boolean plausible() {
    long known = understood();
    long all = columns.size();
    boolean surfaces = columns.values().stream().filter(c -> c.role() == Role.SURFACE).count() >= 2;
    // "No. | Note" heads numbered notes.
    boolean notesAlone =
        known == 2
            && all(Role.ATTRIBUTE).stream().anyMatch(c -> c.attribute().id().equals("notes"));
    boolean enough =
        known >= 3 || (known >= 2 && !notesAlone && (has(Role.TAG) || has(Role.MATERIAL)));
    return (enough && known * 2 >= all) || surfaces && known >= 3;
  }

  private static Map<Integer, Column> columns(
      Vocabulary vocabulary, Table.Row row, Table.Row next, Memo<String, Column> seen) {
    Map<Integer, Column> out = new LinkedHashMap<>();
    String group = "";
    for (int index : indexes(row, next)) {
      String top = textAt(row, index);
      if (!top.isEmpty()) group = top;
      String bottom = next == null ? "" : textAt(next, index);
      if (overColumns(row, next, index, bottom)) continue;
      Column column = column(vocabulary, top.equals(bottom) ? "" : top, bottom, seen);
      boolean bare = column.role() == Role.OTHER && top.isEmpty() && !bottom.isEmpty();
      Column placed = column.at(index);
      out.put(index, bare ? underGroup(vocabulary, placed, group) : placed);
    }
    beside(vocabulary, out);
    return out;
  }

  private static List<Integer> indexes(Table.Row row, Table.Row next) {
    List<Integer> indexes = new ArrayList<>();
    for (Table.Row r : next == null ? List.of(row) : List.of(row, next)) {
      r.cells()
          .forEach(
              c -> {
                if (!c.text().isBlank() && !indexes.contains(c.column())) indexes.add(c.column());
              });
    }
    indexes.sort(Comparator.naturalOrder());
    return indexes;
  }

  /**
   * A merged heading over several columns starts none of them by itself when a second line names
   * each.
   */
  private static boolean overColumns(Table.Row row, Table.Row next, int index, String bottom) {
    return next != null
        && bottom.isEmpty()
        && row.at(index) != null
        && row.at(index).columnSpan() > 1;
  }

  private static Column column(
      Vocabulary vocabulary, String upper, String bottom, Memo<String, Column> seen) {
    String words = upper + "\n" + bottom;
    // The rows of a bill of quantities: figures head nothing, and no two pairs of them are alike.
    if (FIGURES.matcher(words).matches()) {
      return new Column(0, words.trim(), Role.OTHER, null, "", null);
    }
    return seen.get(words, () -> column(vocabulary, 0, upper, bottom));
  }

  /**
   * What a heading means beside others: "At" behind the width of a joint is its spacing, as is
   * "Movement joints at".
   */
  private static void beside(Vocabulary vocabulary, Map<Integer, Column> columns) {
    Column before = null;
    for (Map.Entry<Integer, Column> entry : columns.entrySet()) {
      Column c = entry.getValue();
      boolean at = ofMovement(before) && AT.matcher(c.text()).matches();
      if (at || isOf(c, "movement.width") && JOINTS_AT.matcher(c.text()).find()) {
        entry.setValue(as(vocabulary, c, "movement.spacing"));
      }
      if (isBed(c) && bedIsMortar(columns)) entry.setValue(as(vocabulary, c, "mortar.standard"));
      before = c;
    }
  }

  /** A setting bed beside a substrate, where no other column gives the mortar. */
  private static boolean bedIsMortar(Map<Integer, Column> columns) {
    return columns.values().stream().anyMatch(c -> isOf(c, "substrate.type") && !isBed(c))
        && columns.values().stream().noneMatch(c -> isOf(c, "mortar.standard"));
  }

  private static boolean isBed(Column column) {
    return isOf(column, "substrate.type") && BED.matcher(column.text()).find();
  }

  private static boolean ofMovement(Column column) {
    return isOf(column, "movement.width") || isOf(column, "movement.guideline");
  }

  private static boolean isOf(Column column, String attribute) {
    return column != null
        && column.attribute() != null
        && column.attribute().id().equals(attribute);
  }

  private static Column as(Vocabulary vocabulary, Column c, String id) {
    Attribute attribute = vocabulary.attribute(id).orElse(c.attribute());
    return new Column(c.index(), c.text(), Role.ATTRIBUTE, attribute, "", c.unit(), c.mark());
  }

  /** Saved as text, a heading merged over several columns stands over the first of them alone. */
  private static Column underGroup(Vocabulary vocabulary, Column column, String group) {
    boolean own = group.isEmpty() || onlyFiller(vocabulary, clean(vocabulary, column.text()));
    Column joined = own ? column : column(vocabulary, column.index(), group, column.text());
    return joined.role() == Role.ATTRIBUTE ? joined : column;
  }

  private static String textAt(Table.Row row, int index) {
    Table.Cell cell = row.at(index);
    return cell == null ? "" : PlainText.line(cell.text());
  }

  /** The column of an attribute that these words would head, or null. */
  static Column named(Vocabulary vocabulary, String words) {
    Column column = column(vocabulary, 0, "", words.trim());
    return column.role() == Role.ATTRIBUTE ? column : null;
  }

  private static Column column(Vocabulary vocabulary, int index, String top, String bottom) {
    String text = (top + " " + bottom).trim();
    Unit unit = Quantities.unitOfHeader(text);
    String full = clean(vocabulary, text);
    for (String candidate :
        bottom.isEmpty() ? List.of(full) : List.of(full, clean(vocabulary, bottom))) {
      Column column = exact(vocabulary, index, text, candidate, unit);
      if (column != null) return column;
    }
    for (String candidate :
        bottom.isEmpty() ? List.of(full) : List.of(full, clean(vocabulary, bottom))) {
      Attribute loose = loose(vocabulary, candidate);
      if (loose != null) {
        return new Column(index, text, Role.ATTRIBUTE, fitting(vocabulary, loose, unit), "", unit);
      }
    }
    Attribute any = vocabulary.headerWords().inAnyOrder(full, vocabulary.list("schedule.filler"));
    if (any != null)
      return new Column(index, text, Role.ATTRIBUTE, fitting(vocabulary, any, unit), "", unit);
    Column half = eitherHalf(vocabulary, index, text, full, unit);
    return half != null ? half : new Column(index, text, Role.OTHER, null, "", unit);
  }

  /** "Chip or tile size" is a size when either half of it is. */
  private static Column eitherHalf(
      Vocabulary vocabulary, int index, String text, String name, Unit unit) {
    for (String half : name.split("\\s+(?:or|and)\\s+|\\s*[/&]\\s*")) {
      if (half.equals(name)) return null;
      Column column = exact(vocabulary, index, text, half.trim(), unit);
      if (column != null && column.role() == Role.ATTRIBUTE) return column;
    }
    return null;
  }

  private static Column exact(
      Vocabulary vocabulary, int index, String text, String name, Unit unit) {
    for (Attribute a : vocabulary.attributes()) {
      if (a.words().headers().matches(name))
        return new Column(index, text, Role.ATTRIBUTE, fitting(vocabulary, a, unit), "", unit);
    }
    if (vocabulary.list("schedule.tag").matches(name))
      return new Column(index, text, Role.TAG, null, "", unit);
    if (vocabulary.list("schedule.material").matches(name))
      return new Column(index, text, Role.MATERIAL, null, "", unit);
    for (Map.Entry<String, Phrases> surface : vocabulary.surfaceHeaders().entrySet()) {
      if (surface.getValue().matches(name))
        return new Column(index, text, Role.SURFACE, null, surface.getKey(), unit);
    }
    return null;
  }

  /** "Area" in square feet is no room, and "movement joint" in inches is a width, no guideline. */
  static Attribute fitting(Vocabulary vocabulary, Attribute named, Unit unit) {
    boolean measured =
        named.kind() == Attribute.Kind.AMOUNT
            || named.kind() == Attribute.Kind.SIZE
            || named.kind() == Attribute.Kind.FLATNESS;
    if (unit == null || measured) return named;
    Attribute best = named;
    for (Attribute a : vocabulary.attributes()) {
      boolean fits =
          a.kind() == Attribute.Kind.AMOUNT
              && a.family().equals(named.family())
              && a.dimension() == unit.dimension();
      if (fits && (best == named || a.id().endsWith(".width"))) best = a;
    }
    return best;
  }

  /** The attribute whose header phrase, with fillers, makes up the whole text. */
  private static Attribute loose(Vocabulary vocabulary, String name) {
    Attribute best = null;
    int longest = 3;
    for (Attribute a : vocabulary.attributes()) {
      for (Phrases.Hit hit : a.words().headers().all(name)) {
        String rest = name.substring(0, hit.start()) + " " + name.substring(hit.end());
        int length = hit.end() - hit.start();
        boolean again = a.words().headers().matches(rest.trim());
        if (length > longest && (again || onlyFiller(vocabulary, rest))) {
          best = a;
          longest = length;
        }
      }
    }
    return best;
  }

  private static boolean onlyFiller(Vocabulary vocabulary, String rest) {
    for (String word : rest.trim().split("[\\s/-]+")) {
      if (!word.isEmpty() && !vocabulary.list("schedule.filler").matches(word)) return false;
    }
    return true;
  }

  /** Lower case, short forms spelt out, without units, brackets, full stops and line breaks. */
  private static String clean(Vocabulary vocabulary, String text) {
    String out = BRACKETS.matcher(text.toLowerCase(Locale.ROOT)).replaceAll(" ");
    out = UNIT_BEHIND.matcher(out).replaceAll(" ");
    out = STOPS.matcher(out).replaceAll(" ");
    return vocabulary.headerWords().spelt(BLANKS.matcher(out).replaceAll(" ").trim());
  }
}
