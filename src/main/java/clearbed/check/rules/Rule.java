package clearbed.check.rules;

import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import java.util.List;
import java.util.Map;

/**
 * One check, as a rule file gives it.
 *
 * @param when each map is one way for the check to apply: attribute to accepted terms; empty
 *     applies always
 * @param unless the check does not apply where one of these holds
 * @param instead attributes that satisfy the check by being stated
 * @param level of what is inadequate
 * @param missingLevel of what is missing
 * @param emptyCellLevel of what is missing where its column is there and its cell is empty
 * @param unlikeOthersLevel of what is missing where most glass tile of the set has a value of its
 *     own: the documents ask for it themselves
 * @param whereOthersHaveIt true when the check applies only where another glass tile of the set has
 *     a value of its own
 * @param everywhere true when whatever is said of the entry counts, not only what governs
 * @param emptyCellIsMissing true when an empty cell under its header is a gap, whatever sections
 *     list
 * @param partOf the check that its findings are reported under; empty for its own id
 * @param ownId true when its findings carry the attribute in their id, as the check they are part
 *     of looks at another one
 * @param bySection true when the section is where the words belong, so that one gap serves all
 *     entries
 */
public record Rule(
    String id,
    boolean off,
    String title,
    String group,
    String attribute,
    List<Map<String, List<String>>> when,
    List<Map<String, List<String>>> unless,
    Expectation expectation,
    List<String> instead,
    Mistaken mistaken,
    Level level,
    Level missingLevel,
    Level emptyCellLevel,
    Level unlikeOthersLevel,
    boolean whereOthersHaveIt,
    FindingKind kind,
    boolean bySection,
    boolean silentWhenMissing,
    boolean everywhere,
    boolean emptyCellIsMissing,
    String partOf,
    boolean ownId,
    RuleWording wording) {

  private static final Map<String, String> MARKS =
      Map.of(
          "reported", "as reported, verify against the edition specified",
          "common practice", "common practice, no source",
          "from memory", "from memory, verify");

  /** A figure that is often given in place of the right one. */
  public record Mistaken(String attribute, String message) {}

  /** What people read. {@code {tag}}, {@code {found}} and {@code {expected}} are filled in. */
  public record RuleWording(
      String missing,
      String inadequate,
      String expected,
      String why,
      String source,
      String mark,
      String question,
      String clause,
      String answer) {}

  /** The id that findings carry. */
  public String reportedAs() {
    return partOf.isEmpty() ? id : partOf;
  }

  /** The source with its mark, as findings carry it. */
  public String sourceWithMark() {
    String mark = wording.mark();
    if (mark.equals("standard") || mark.isEmpty()) return wording.source();
    String plain = MARKS.getOrDefault(mark, mark);
    return wording.source().isEmpty() ? plain : wording.source() + " (" + plain + ")";
  }

  /** True for a check of the whole set, which no attribute of one entry decides. */
  public boolean ofTheSet() {
    return group.equals("set");
  }
}
