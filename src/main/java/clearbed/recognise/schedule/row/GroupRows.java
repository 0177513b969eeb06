package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.limit.TermReader;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a row with one text says of the rows below it: {@code LAP POOL WALLS, SUBMERGED}, {@code
 * SUPERSEDED}.
 */
public final class GroupRows {
  /** A floor of a building is no surface. */
  private static final Pattern STOREY =
      Pattern.compile(
          "\\b(?:ground|first|second|third|fourth|upper|lower|main|top|\\d+(?:st|nd|rd|th)?)\\s+floor\\b|\\bfloor\\s+\\d|\\b(?:guest|office|typical|hotel|residential|apartment|patient|ward|parking|podium|tower|amenity|retail)\\s+floors?\\b",
          Pattern.CASE_INSENSITIVE);

  private static final List<String> OF_PLACES = List.of("location.exposure", "location.surface");

  private static final Set<String> INSIDE = Set.of("dry", "damp", "wet", "steam");

  private static final Pattern JOINED =
      Pattern.compile("\\b(?:and|or)\\b|[&/]", Pattern.CASE_INSENSITIVE);

  /**
   * @param statements for rows that do not say so themselves
   * @param former true when the rows below are no longer in force
   * @param terms tells places that rows name
   */
  public record Group(List<Statement> statements, boolean former, TermReader terms) {
    public static final Group NOTHING = new Group(List.of(), false, null);

    /** The statements of a row and what it does not say itself. */
    public List<Statement> with(List<Statement> row) {
      if (statements.isEmpty()) return row;
      Set<String> said = new HashSet<>();
      row.forEach(s -> said.add(s.attribute()));
      // What its own place says stands against the group: "Guest bath, shower walls".
      for (Statement s : row) {
        boolean place = s.attribute().startsWith("location.");
        for (String attribute : place ? OF_PLACES : List.<String>of())
          if (!terms.in(attribute, s.asWritten()).isEmpty()) said.add(attribute);
      }
      List<Statement> out = new ArrayList<>(row);
      for (Statement s : statements) if (!said.contains(s.attribute())) out.add(s);
      return out;
    }
  }

  private final Vocabulary vocabulary;
  private final TermReader terms;

  public GroupRows(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.terms = new TermReader(vocabulary);
  }

  /** What a description over items says of each that does not say so itself. */
  public Group describing(List<Statement> statements) {
    return new Group(List.copyOf(statements), false, terms);
  }

  /**
   * @param origin of the row
   */
  public Group of(String text, Origin origin) {
    String plain = PlainText.line(text).trim();
    boolean former = isFormer(plain);
    List<Statement> out = new ArrayList<>();
    String places = STOREY.matcher(plain).replaceAll(" ");
    for (String attribute : OF_PLACES) {
      for (String term : terms.in(attribute, places))
        out.add(statement(attribute, new Content.Term(term), plain, origin));
    }
    if (JOINED.matcher(plain).find() && isInAndOut(out)) out.clear();
    if (!out.isEmpty())
      out.add(statement("location.room", new Content.Words(plain), plain, origin));
    return new Group(List.copyOf(out), former, terms);
  }

  /** "Wet, water and exterior": of which rows each place is meant is not said. */
  private static boolean isInAndOut(List<Statement> places) {
    Set<String> terms =
        places.stream().map(s -> ((Content.Term) s.content()).text()).collect(Collectors.toSet());
    return terms.stream().anyMatch(INSIDE::contains)
        && terms.stream().anyMatch(term -> term.startsWith("exterior"));
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
