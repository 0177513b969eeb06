package clearbed.recognise.statement.part;

import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.vocabulary.Attribute;
import java.util.Set;

/**
 * What is known of a text before it is read.
 *
 * @param family the part of the work that headings, lead-ins or the column speak of; empty when
 *     unknown
 * @param attribute the attribute of the column it stands in; empty for running text
 * @param families parts of the work that the text may speak for; empty for all
 * @param describesTile true where words on the tile's own nature describe it (a schedule row, a
 *     product article), false where they limit the clause ({@code translucent glass: white mortar})
 * @param mark that its figures have before their decimals
 * @param title of the article that it stands in, or empty
 * @param introduction the line over the list that it is an item of, without its colon, or empty
 */
public record Context(
    String family,
    String attribute,
    Set<String> families,
    boolean describesTile,
    DecimalMark mark,
    String title,
    String introduction) {
  public static Context running(String family, Set<String> families, boolean describesTile) {
    return new Context(family, "", families, describesTile, DecimalMark.UNKNOWN, "", "");
  }

  public static Context column(Attribute attribute) {
    return new Context(
        attribute.family(), attribute.id(), Set.of(), true, DecimalMark.UNKNOWN, "", "");
  }

  public Context with(DecimalMark now) {
    return new Context(family, attribute, families, describesTile, now, title, introduction);
  }

  public Context under(String now) {
    return new Context(family, attribute, families, describesTile, mark, now, introduction);
  }

  public Context introducedBy(String now) {
    return new Context(family, attribute, families, describesTile, mark, title, now);
  }

  public boolean mayStateFamily(String wanted) {
    return families.isEmpty() || families.contains(wanted);
  }

  public Context withFamily(String now) {
    return new Context(now, attribute, families, describesTile, mark, title, introduction);
  }
}
