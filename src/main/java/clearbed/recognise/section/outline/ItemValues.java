package clearbed.recognise.section.outline;

import clearbed.base.Memo;
import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.schedule.row.RowReader;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.limit.PlaceSentences;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.part.Parts;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Items of lists under a tag, read as cells under the column heading that their lead-in is. */
public final class ItemValues {
  private static final int LONGEST_VALUE = 60;

  /** "Place: penthouse balconies, planter wall. Exterior, wet, freezing and sun." */
  private static final Set<String> TOLD_AT_LENGTH = Set.of("location", "substrate");

  /** "Goes on: cast concrete wall" speaks of no cast tile, nor of mortar. */
  private static final Pattern OF_NO_SUBSTRATE =
      Pattern.compile("mortar\\.(?!membraneUse)|tile\\.kind|tile\\.backing");

  private static final Set<String> NAMES_A_MORTAR = Set.of("mortar.standard", "mortar.isoClass");

  private static final int LONGEST_TOLD = 400;

  private static final Pattern FIRST_ITEM = Pattern.compile("(?s)(?:;|\\.\\s).*$");

  /** "Face size: 2 by 6 inches" in a list under a tag. */
  private record Property(Header.Column column, String value) {}

  private final Vocabulary vocabulary;
  private final RowReader rowReader;
  private final PlaceSentences places;

  /** As a column of a schedule is headed that says where each tile is. */
  private final Header.Column exposure;

  private final Memo<String, Optional<Property>> properties = Memo.ofTexts();

  public ItemValues(Vocabulary vocabulary, StatementFinder finder) {
    this.vocabulary = vocabulary;
    this.rowReader = new RowReader(vocabulary, finder);
    this.places = new PlaceSentences(vocabulary);
    this.exposure = HeadingWords.named(vocabulary, "exposure");
  }

  /**
   * Adds the value that the lead-in of an item names.
   *
   * @param item the words of the item, or what a change makes of them
   */
  public void addNamed(
      String item, OutlineNode own, Origin at, DecimalMark mark, List<Statement> out) {
    Property property = property(item);
    if (property == null) return;
    // "Set on: cement mortar bed" speaks of no mortar.
    boolean substrate = property.column().attribute().family().equals("substrate");
    // "Bed: white mortar, ANSI A118.15" speaks of one.
    if (substrate && out.stream().anyMatch(s -> NAMES_A_MORTAR.contains(s.attribute()))) return;
    if (substrate) out.removeIf(s -> OF_NO_SUBSTRATE.matcher(s.attribute()).lookingAt());
    for (Statement s : rowReader.property(property.column().with(mark), property.value(), at)) {
      // "Bed: at least 95 % contact" is no substrate that nobody knows.
      if (s.content() instanceof Content.Words && !out.isEmpty()) continue;
      boolean said = out.stream().anyMatch(o -> o.attribute().equals(s.attribute()));
      if (!said) out.add(s.within(own.limits()));
    }
  }

  /** "Permanently under water." and "Outside, open to frost: ..." say of a tile where it is. */
  public void addPlaces(String text, OutlineNode own, Origin at, List<Statement> out) {
    for (Sentences.Sentence sentence : Sentences.of(PlainText.of(text))) {
      String lead = Parts.lead(sentence.text());
      String where = lead.isEmpty() ? sentence.text() : lead;
      if (exposure == null || !places.isOne(where)) continue;
      // "Showers: ... Hammam: ..." in rules for several tiles says where each of them holds.
      if (!lead.isEmpty() && own.limits().tags().size() > 1) continue;
      for (Statement s : rowReader.property(exposure, where, at)) {
        if (!says(out, s)) out.add(s.within(own.limits()));
      }
    }
  }

  private static boolean says(List<Statement> out, Statement s) {
    return out.stream()
        .anyMatch(o -> o.attribute().equals(s.attribute()) && o.content().equals(s.content()));
  }

  /** What a list item gives the value of by its lead-in; null when it is none. */
  private Property property(String item) {
    return properties.get(item, () -> Optional.ofNullable(propertyIn(item))).orElse(null);
  }

  private Property propertyIn(String item) {
    String lead = Parts.lead(item);
    String value = lead.isEmpty() ? "" : item.substring(lead.length() + 1).trim();
    if (value.isEmpty()) return null;
    Header.Column column = HeadingWords.named(vocabulary, lead);
    if (column == null) {
      // "GT-4: Ground: cement board" names the tile first.
      if (namesTags(lead)) return propertyIn(value);
      value = FIRST_ITEM.matcher(value).replaceFirst("");
      column = HeadingWords.byValue(vocabulary, lead, value);
    }
    if (column == null) return null;
    boolean told = TOLD_AT_LENGTH.contains(column.attribute().family());
    if (value.length() > (told ? LONGEST_TOLD : LONGEST_VALUE)) return null;
    return new Property(column, value.replaceFirst("\\.$", ""));
  }

  /** "GT-4: epoxy, ANSI A118.3" under "Grout" is no property by the name of GT-4. */
  static boolean namesTags(String lead) {
    TagFinder.TagsAt tags = TagFinder.opening(lead);
    return tags != null && tags.end() == lead.length();
  }
}
