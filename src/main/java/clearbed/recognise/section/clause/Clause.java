package clearbed.recognise.section.clause;

import clearbed.model.document.Origin;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A paragraph of a section, or a note.
 *
 * @param number as people cite it: {@code 2.3 B.1}; empty in notes
 * @param heading title of the article it stands under
 * @param limits its own and those of what it stands under
 * @param listed true when it stands in a list of references or related work
 * @param subject the tiles that it is about
 * @param amendment what it changes of what others say
 */
public record Clause(
    String number,
    String heading,
    Origin origin,
    String text,
    Limits limits,
    List<Statement> statements,
    boolean listed,
    Subject subject,
    Amendment amendment) {
  private static final Pattern REFERENCES =
      Pattern.compile("[rs](?<!\\w.)(?:eferences?|tandards)\\b", Pattern.CASE_INSENSITIVE);

  public Clause {
    statements = List.copyOf(statements);
  }

  /** The number that people call its article by; empty where it has none. */
  public String article() {
    return number.split(" ", 2)[0];
  }

  /** Those of its statements that leave something open. */
  public List<Statement> leftOpen() {
    return statements.stream().filter(Statement::isOpen).toList();
  }

  /** As what people say of a document, whose words ask and require nothing. */
  public Clause asRemark() {
    return new Clause(number, heading, origin, "", limits, leftOpen(), listed, subject, amendment);
  }

  Clause withStatements(List<Statement> now) {
    return new Clause(number, heading, origin, text, limits, now, listed, subject, amendment);
  }

  /** True when it stands in a list of references, by the titles above it. */
  public boolean listsReferences() {
    return listed || REFERENCES.matcher(heading).find();
  }
}
