package clearbed.recognise.schedule;

import clearbed.model.Content;
import clearbed.model.Origin;
import clearbed.recognise.statement.Limits;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.TermReader;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a row with one text says of the rows below it: {@code LAP POOL WALLS, SUBMERGED}, {@code
 * SUPERSEDED}.
 */
final class GroupRows {
  /** A floor of a building is no surface. */
  private static final Pattern STOREY =
      Pattern.compile(
          "\\b(?:ground|first|second|third|fourth|upper|lower|main|top|\\d+(?:st|nd|rd|th)?)\\s+floor\\b|\\bfloor\\s+\\d",
          Pattern.CASE_INSENSITIVE);

  /**
   * @param statements for rows that do not say so themselves
   * @param former true when the rows below are no longer in force
   */
  record Group(List<Statement> statements, boolean former) {
    static final Group NOTHING = new Group(List.of(), false);

    /** The statements of a row and what it does not say itself. */
    List<Statement> with(List<Statement> row) {
      if (statements.isEmpty()) return row;
      Set<String> said = new HashSet<>();
      row.forEach(s -> said.add(s.attribute()));
      List<Statement> out = new ArrayList<>(row);
      for (Statement s : statements) if (!said.contains(s.attribute())) out.add(s);
      return out;
    }
  }

  private final Vocabulary vocabulary;
  private final TermReader terms;

  GroupRows(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.terms = new TermReader(vocabulary);
  }

  /**
   * @param origin of the row
   */
  Group of(String text, Origin origin) {
    String plain = PlainText.line(text).trim();
    boolean former = isFormer(plain);
    List<Statement> out = new ArrayList<>();
    String places = STOREY.matcher(plain).replaceAll(" ");
    for (String attribute : List.of("location.exposure", "location.surface")) {
      for (String term : terms.in(attribute, places))
        out.add(statement(attribute, new Content.Term(term), plain, origin));
    }
    if (!out.isEmpty())
      out.add(statement("location.room", new Content.Words(plain), plain, origin));
    return new Group(List.copyOf(out), former);
  }

  /** True for words that put what they stand over or beside out of force. */
  boolean isFormer(String words) {
    return vocabulary.list("schedule.struck").matches(words)
        || vocabulary.list("schedule.former").matches(words);
  }

  private static Statement statement(
      String attribute, Content content, String text, Origin origin) {
    return new Statement(attribute, content, false, text, origin, Limits.NONE);
  }
}
