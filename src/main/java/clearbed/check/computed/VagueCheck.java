package clearbed.check.computed;

import clearbed.base.Memo;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.SetText;
import clearbed.check.rules.Rule;
import clearbed.model.Finding;
import clearbed.model.Kind;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Sentences;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** "Suitable", "approved" or "as required" stands where a requirement belongs. */
public final class VagueCheck implements SetComputation {
  private static final String WORDS =
      "suitable|appropriate|approved|adequate|proper|acceptable|good[- ]quality|high[- ]quality|sufficient";
  private static final String THINGS =
      "(?:tile )?(?:mortar|adhesive|thin-?set|setting material|setting bed|grout|sealant|membrane|waterproofing|tanking|substrate|background|primer|equipment|tools?|cleaners?|patching compound|levell?ing compound|filler|underlay|backing|backer board|screed|movement joints?|expansion joints?|caulk|bond strength|coverage|tile|cure|curing|time|period|interval|joint width|temperatures?|weather|spacings?|depth|thickness|width|tolerances?|flatness|strength)";
  private static final Pattern IN_A_CLAUSE =
      Pattern.compile(
          "\\b(?:(?:"
              + WORDS
              + ")\\s+(?:[\\w-]+\\s+){0,2}"
              + THINGS
              + "|"
              + THINGS
              + "\\b[^.;:]{0,40}\\b(?:as required|as necessary|as needed|as approved|as appropriate|where required))\\b",
          Pattern.CASE_INSENSITIVE);

  /** Behind a whole word a stop ends what is said, though a small letter follows. */
  private static final Pattern ITEM = Pattern.compile("(?:;|(?<=[a-z]{5})\\.)\\s+");

  private static final Pattern A_WHOLE_CELL =
      Pattern.compile(
          "(?:"
              + WORDS
              + "|as required|as necessary|as needed|as approved|as selected|good quality|per code|standard|typical|by contractor|contractor'?s (?:option|choice))(?:\\s+(?:type|mortar|grout|sealant|adhesive|membrane|substrate|product|material))?\\.?",
          Pattern.CASE_INSENSITIVE);

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    List<Finding> out = new ArrayList<>();
    // Issue after issue says the same words.
    Memo<String, String> cells = Memo.ofTexts();
    Memo<String, String> clauses = Memo.ofTexts();
    BiFunction<String, Boolean, String> vague =
        (text, cell) ->
            cell ? cells.get(text, () -> ofCell(text)) : clauses.get(text, () -> ofClause(text));
    scene
        .text()
        .each(
            (text, cell) -> !vague.apply(text, cell).isEmpty(),
            piece -> {
              String words = vague.apply(piece.text(), piece.origin().cell() != null);
              out.add(finding(rule, scene, piece, words));
            });
    return out;
  }

  private static String ofCell(String text) {
    Matcher whole = A_WHOLE_CELL.matcher(text.trim());
    return whole.matches() ? whole.group() : ofClause(text);
  }

  private static String ofClause(String text) {
    for (Sentences.Sentence sentence : Sentences.of(text)) {
      for (String item : ITEM.split(sentence.text())) {
        Matcher m = IN_A_CLAUSE.matcher(item);
        if (m.find() && !exact(item)) return m.group();
      }
    }
    return "";
  }

  /** A clause that also names a standard or a figure says what it wants. */
  private static boolean exact(String text) {
    return !Citations.find(text).isEmpty()
        || !Quantities.find(text).isEmpty()
        || text.matches(
            "(?is).*\\b(?:manufacturer|maker|supplier|written|confirm|letter|section \\d|scheduled?|submit\\w*|mock-?up|sample)\\b.*");
  }

  private static Finding finding(Rule rule, Scene scene, SetText.Piece piece, String words) {
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                piece.tag().isEmpty() ? piece.text() : piece.tag() + " " + piece.text(),
                "",
                Kind.INADEQUATE,
                rule.level(),
                piece.tags(),
                piece.origin(),
                List.of(),
                "\"" + words + "\" stands where a requirement belongs.",
                words,
                "a standard, a figure or a product",
                List.of()));
  }
}
