package clearbed.recognise.schedule;

import clearbed.model.value.Unit;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.vocabulary.Attribute;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The header of a schedule: what each column holds.
 *
 * @param columns by column number from 0
 * @param rows how many rows it takes up; 0 for a table without
 */
public record Header(Map<Integer, Column> columns, int rows) {
  /** What a column can hold. */
  enum Role {
    TAG,
    MATERIAL,
    ATTRIBUTE,
    SURFACE,
    /** What was required before, and is no more. */
    FORMER,
    /** Codes of rows elsewhere that say more: of a system, a product. */
    CALLS,
    /** Prices, dates, who drew it: nothing that is asked for. */
    UNASKED,
    OTHER
  }

  /**
   * Why a column was taken for what it is.
   *
   * @param heading how far its heading alone says so, from 0 to 1
   * @param score of all evidence
   * @param could attributes that a column not understood might hold
   */
  record Evidence(String why, double heading, double score, List<String> could) {
    static final Evidence NONE = new Evidence("heading", 1, 0, List.of());

    Evidence {
      could = List.copyOf(could);
    }
  }

  /**
   * @param attribute for {@link Role#ATTRIBUTE}
   * @param surface term for {@link Role#SURFACE}
   * @param unit named in the header, or null
   * @param mark that its figures have before their decimals
   * @param evidence on which it was taken for what it is
   */
  public record Column(
      int index,
      String text,
      Role role,
      Attribute attribute,
      String surface,
      Unit unit,
      DecimalMark mark,
      Evidence evidence) {
    Column(int index, String text, Role role, Attribute attribute, String surface, Unit unit) {
      this(index, text, role, attribute, surface, unit, DecimalMark.UNKNOWN, Evidence.NONE);
    }

    /** True where its cells are figures. */
    public boolean measures() {
      return attribute != null
          && (attribute.kind() == Attribute.Kind.AMOUNT
              || attribute.kind() == Attribute.Kind.SIZE
              || attribute.kind() == Attribute.Kind.FLATNESS);
    }

    public Column with(DecimalMark now) {
      return new Column(index, text, role, attribute, surface, unit, now, evidence);
    }

    Column by(Evidence now) {
      return new Column(index, text, role, attribute, surface, unit, mark, now);
    }

    /** True where the words of a cell say what the tile is. */
    boolean describes() {
      return role == Role.MATERIAL || role == Role.TAG;
    }

    Column at(int place) {
      return place == index
          ? this
          : new Column(place, text, role, attribute, surface, unit, mark, evidence);
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
          // "23 x 23 x 4, sea green" describes a tile by its size.
          boolean described = c.unit() == null && c.attribute() == null && c.describes();
          boolean length =
              described
                  || c.unit() == null
                      && c.attribute() != null
                      && (c.attribute().kind() == Attribute.Kind.SIZE
                          || c.attribute().dimension() == noted.dimension()
                          || c.attribute().family().equals("grout")
                          || c.attribute().id().equals("movement.guideline"));
          boolean spacing = length && !described && c.attribute().id().endsWith(".spacing");
          Unit unit = spacing ? centres : noted;
          out.put(
              index,
              length
                  ? new Column(
                      c.index(),
                      c.text(),
                      c.role(),
                      c.attribute(),
                      c.surface(),
                      unit,
                      c.mark(),
                      c.evidence())
                  : c);
        });
    return new Header(out, rows);
  }

  /**
   * With the marks in another column, as that which was taken for them calls other rows.
   *
   * @param tags column of the marks
   * @param calls column that was taken for it
   */
  Header marked(int tags, int calls) {
    Map<Integer, Column> out = new LinkedHashMap<>(columns);
    Column of = columns.get(tags);
    out.put(tags, new Column(tags, of == null ? "" : of.text(), Role.TAG, null, "", null));
    return new Header(out, rows).calling(calls);
  }

  /** With a column of codes that call other rows. */
  Header calling(int calls) {
    Map<Integer, Column> out = new LinkedHashMap<>(columns);
    Column to = columns.get(calls);
    if (to != null) out.put(calls, new Column(calls, to.text(), Role.CALLS, null, "", null));
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
}
