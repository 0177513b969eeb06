package clearbed.model.report;

import clearbed.model.document.Origin;
import java.util.List;

/**
 * One thing that is missing, inadequate, incompatible, conflicting, unresolved or unreadable.
 *
 * @param id stable from run to run: check, tag or clause, attribute; never a row number
 * @param check name of the check
 * @param tags the entries it holds for; empty for a finding about the set
 * @param attribute the attribute it speaks of, or empty
 * @param origin the place to look first
 * @param places further places (the other side of a conflict)
 * @param message one sentence
 * @param found what the documents say; empty when nothing
 * @param expected what would satisfy the check
 * @param steps the arithmetic, a line each; empty when none
 * @param question for the design team
 * @param clause suggested wording
 * @param source of the requirement, with its mark
 * @param why what goes wrong where the requirement is not met; empty when its rule does not say
 * @param suppressed the reason given in a rule file for not reporting it; empty when reported
 * @param wording message and question as they can be said of other entries, too
 */
public record Finding(
    String id,
    String check,
    FindingKind kind,
    Level level,
    State state,
    List<String> tags,
    String attribute,
    Origin origin,
    List<Origin> places,
    String message,
    String found,
    String expected,
    List<String> steps,
    String question,
    String clause,
    String source,
    String why,
    String suppressed,
    FindingWording wording) {

  /**
   * Message and question with {@code {tag}} where the entries stand; empty where they cannot be
   * said of others.
   */
  public record FindingWording(String message, String question) {
    public static final String TAG = "{tag}";
    public static final FindingWording NONE = new FindingWording("", "");
  }

  public Finding {
    // Workbooks of earlier issues do not have them.
    why = why == null ? "" : why;
    wording = wording == null ? FindingWording.NONE : wording;
    tags = List.copyOf(tags);
    places = List.copyOf(places);
    steps = List.copyOf(steps);
  }

  /**
   * What findings have in common that one question can ask of all their entries: the check and its
   * words, and the place of what is wrong; where something is missing, it is missing everywhere.
   * Empty when the question is of this finding alone.
   */
  public String cause() {
    if (tags.isEmpty() || !wording.question().contains(FindingWording.TAG)) return "";
    String place = kind == FindingKind.MISSING ? "" : origin.place() + "\n" + origin.text();
    return String.join("\n", check, attribute, kind.word(), wording.question(), place);
  }

  /** True while somebody still has to act: what letter, summary and exit code count. */
  public boolean isOpen() {
    return suppressed.isEmpty() && state.isOpen();
  }

  public Finding withState(State now) {
    return with(id, now, suppressed);
  }

  public Finding withId(String now) {
    return with(now, state, suppressed);
  }

  public Finding withSuppressed(String reason) {
    return with(id, state, reason);
  }

  private Finding with(String otherId, State otherState, String reason) {
    return new Finding(
        otherId,
        check,
        kind,
        level,
        otherState,
        tags,
        attribute,
        origin,
        places,
        message,
        found,
        expected,
        steps,
        question,
        clause,
        source,
        why,
        reason,
        wording);
  }
}
