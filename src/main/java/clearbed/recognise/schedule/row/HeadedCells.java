package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.recognise.schedule.cell.BothSystems;
import clearbed.recognise.schedule.cell.CellFigures;
import clearbed.recognise.schedule.cell.CellValues;
import clearbed.recognise.schedule.cell.ShortTerms;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.statement.StatementFinder;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.statement.part.Context;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** What a cell says under a heading that is understood. */
final class HeadedCells {
  private static final Pattern FIELD =
      Pattern.compile("\\d[\\d.,]*\\s?\\p{L}{0,4}\\s?[x×X]\\s?\\d[\\d.,]*\\s?\\p{L}{0,4}\\.?");

  /** So many words are no figure with its unit. */
  private static final int SENTENCE = 5;

  private static final Pattern SEPARATORS = Pattern.compile("^\\s*[/,;:|]\\s*");

  /** "NT I M G". */
  private static final Pattern CODES = Pattern.compile("\\p{Lu}{1,3}\\d?(?:\\s+\\p{Lu}{1,3}\\d?)+");

  private static final Pattern BLANKS = Pattern.compile("\\s+");

  private static final Pattern LISTED = Pattern.compile("\\s*[,;/+&]\\s*|\\s+and\\s+");

  private final Vocabulary vocabulary;
  private final StatementFinder finder;
  private final CellFigures figures;
  private final ShortTerms shorts;
  private final CellValues values;

  HeadedCells(Vocabulary vocabulary, StatementFinder finder, ShortTerms shorts) {
    this.vocabulary = vocabulary;
    this.finder = finder;
    this.shorts = shorts;
    this.figures = new CellFigures(vocabulary.list("schedule.besideFigures"));
    this.values = new CellValues(vocabulary);
  }

  void attribute(
      List<Statement> out, Origin origin, String text, Header.Column column, Attribute headed) {
    Attribute attribute = measured(headed, text, column.mark());
    if (!isMeasured(attribute)) {
      out.addAll(stated(origin, text, text, column, attribute));
      return;
    }
    // "3,0 x 3,0" under "Field at most (m)": the joints stand at its longer side.
    if (attribute.id().equals("movement.spacing") && FIELD.matcher(text).matches()) {
      Quantities.size(text, column.unit(), column.mark())
          .map(field -> field.sides().stream().max(Quantity::compareTo).orElseThrow())
          .map(side -> new Content.Amount(side, side, Bound.EXACT))
          .ifPresent(spacing -> out.add(statement(attribute, spacing, text, origin)));
      if (out.stream().anyMatch(s -> s.attribute().equals(attribute.id()))) return;
    }
    String told =
        attribute.dimension() == Dimension.LENGTH || attribute.kind() == Attribute.Kind.SIZE
            ? BothSystems.told(behindMark(text), column.mark())
            : text;
    CellFigures.FigureReading reading = figures.read(told, attribute, column.unit(), column.mark());
    if (!reading.plain()) {
      out.add(statement(attribute, new Content.NotUnderstood(text), text, origin));
      for (Statement s : find(origin, text, column, Context.column(attribute)))
        if (!isFigure(s)) out.add(s);
      if (text.split("\\s+", SENTENCE).length == SENTENCE)
        beside(out, origin, text, column, attribute);
      return;
    }
    out.addAll(stated(origin, text, reading.text(), column, attribute));
    if (!reading.text().equals(text)) terms(out, origin, text, column, attribute);
  }

  /** "1/16" of "GR-2 / 1/16": which product, and a figure of it. */
  private static String behindMark(String text) {
    TagFinder.TagsAt mark = TagFinder.opening(text);
    if (mark == null || mark.start() > 0) return text;
    String rest = SEPARATORS.matcher(text.substring(mark.end())).replaceFirst("");
    return rest.isEmpty() || !Character.isDigit(rest.charAt(0)) ? text : rest;
  }

  /** "PTV 38, slider 57": beside its figure a cell may have a term of the same thing. */
  private void terms(
      List<Statement> out, Origin origin, String text, Header.Column column, Attribute attribute) {
    for (Statement s : find(origin, text, column, Context.column(attribute))) {
      boolean more = out.stream().noneMatch(o -> o.attribute().equals(s.attribute()));
      if (more && s.content() instanceof Content.Term) out.add(s);
    }
  }

  /** "White mortar on cement board. Joint 1/8": a sentence says more than what it stands under. */
  private void beside(
      List<Statement> out, Origin origin, String text, Header.Column column, Attribute attribute) {
    String own = attribute.family();
    for (Statement s : find(origin, text, column, Context.running("", Set.of(), true))) {
      boolean more = out.stream().noneMatch(o -> o.attribute().equals(s.attribute()));
      if (more && !s.attribute().startsWith(own + ".") && !isFigure(s)) out.add(s);
    }
  }

  private static boolean isMeasured(Attribute attribute) {
    return attribute.kind() == Attribute.Kind.AMOUNT || attribute.kind() == Attribute.Kind.SIZE;
  }

  private static boolean isFigure(Statement s) {
    return s.content() instanceof Content.Amount
        || s.content() instanceof Content.Size
        || s.content() instanceof Content.NotUnderstood;
  }

  /**
   * What a cell whose figures are plain states; its own words where nothing was found in it.
   *
   * @param read the same text with the unit of the heading
   */
  private List<Statement> stated(
      Origin origin, String text, String read, Header.Column column, Attribute attribute) {
    List<Statement> found = new ArrayList<>();
    boolean size = attribute.kind() == Attribute.Kind.SIZE;
    if (size) {
      Quantities.size(read, column.unit(), column.mark())
          .ifPresent(s -> found.add(statement(attribute, s, text, origin)));
    }
    for (Statement s : find(origin, read, column, Context.column(attribute))) {
      boolean again = size && s.attribute().equals(attribute.id()) && !found.isEmpty();
      if (!again) found.add(asWritten(s, text));
    }
    boolean said = found.stream().anyMatch(s -> says(attribute, s));
    if (said) return found;
    List<String> terms = terms(column, attribute, text);
    for (String term : terms) found.add(statement(attribute, new Content.Term(term), text, origin));
    if (!terms.isEmpty()) return found;
    Optional<Content> test = passed(column, attribute, text);
    if (test.isPresent()) {
      found.add(statement(attribute, test.get(), text, origin));
      return found;
    }
    // A figure that the attribute cannot have is best called by its words, if it is but one.
    boolean other =
        isMeasured(attribute) && CellFigures.mayBeTwo(text)
            || values.unread(attribute, read, found);
    // "Setting: by ANSI A108.5" names no mortar and misses none.
    if (attribute.kind() == Attribute.Kind.STANDARD && Citations.sayHowToSet(text, vocabulary))
      return found;
    // "W41/340" under "Adhesive" calls a clause and is no standard.
    if (attribute.kind() == Attribute.Kind.STANDARD && ClauseNumbers.isOne(text)) return found;
    // "BS 5385-4" under "Installed to": one standard by itself is what its heading is about.
    List<Citations.Found> cited = Citations.find(text);
    if (attribute.kind() == Attribute.Kind.STANDARD
        && cited.size() == 1
        && cited.get(0).asWritten().equals(text)) {
      found.add(statement(attribute, cited.get(0).standard(), text, origin));
      return found;
    }
    Content words = other ? new Content.NotUnderstood(text) : new Content.Words(text);
    // "None, dry room" under "Membrane" is as plain as a standard there.
    boolean none =
        !other
            && attribute.kind() == Attribute.Kind.STANDARD
            && vocabulary.list("schedule.denied").matches(text);
    found.add(statement(attribute, none ? new Content.Absent(text) : words, text, origin));
    return found;
  }

  /** "NT, G" under "Use" is two of them; empty where one is none. */
  private List<String> terms(Header.Column column, Attribute attribute, String text) {
    Pattern between = CODES.matcher(text.strip()).matches() ? BLANKS : LISTED;
    List<Optional<String>> each =
        Arrays.stream(between.split(text.strip())).map(t -> term(column, attribute, t)).toList();
    if (each.size() > 1 && each.stream().allMatch(Optional::isPresent))
      return each.stream().map(Optional::orElseThrow).distinct().toList();
    return term(column, attribute, text).stream().toList();
  }

  private Optional<String> term(Header.Column column, Attribute attribute, String text) {
    return shorts.of(attribute.id(), text).or(() -> headed(column, attribute, text));
  }

  /** "50" under "Class" is "Class 50". */
  private static Optional<String> headed(Header.Column column, Attribute attribute, String text) {
    if (column.text().isEmpty()) return Optional.empty();
    return HeadingWords.classed(attribute, column.text(), text);
  }

  /** "Passed" under "Frost EN ISO 10545-12" is that test. */
  private Optional<Content> passed(Header.Column column, Attribute attribute, String text) {
    if (attribute.kind() != Attribute.Kind.STANDARD) return Optional.empty();
    // "100 cycles, no damage"
    if (Arrays.stream(text.split("[,;]\\s*"))
        .noneMatch(vocabulary.list("schedule.passed")::matches)) return Optional.empty();
    return Citations.find(PlainText.of(column.text())).stream()
        .filter(f -> vocabulary.standards().states(f.standard().designation(), attribute.id()))
        .<Content>map(Citations.Found::standard)
        .findFirst();
  }

  static Statement statement(Attribute attribute, Content content, String text, Origin origin) {
    return statement(attribute.id(), content, text, origin);
  }

  static Statement statement(String attribute, Content content, String text, Origin origin) {
    return new Statement(attribute, content, false, text, origin, Limits.NONE);
  }

  private boolean says(Attribute column, Statement s) {
    return s.attribute().equals(column.id())
        || vocabulary.attribute(s.attribute()).filter(column::mayGive).isPresent();
  }

  /** A length under "movement joint" is a width, whether the header names the unit or the cell. */
  private Attribute measured(Attribute attribute, String text, DecimalMark mark) {
    if (attribute.kind() != Attribute.Kind.STANDARD) return attribute;
    List<Quantities.Found> found = Quantities.find(text, mark);
    boolean length =
        Quantities.parse(text, Dimension.LENGTH, mark).isPresent()
            || !found.isEmpty() && found.get(0).content() instanceof Content.NotUnderstood;
    return length ? HeadingWords.fitting(vocabulary, attribute, found.get(0).unit()) : attribute;
  }

  static Statement asWritten(Statement s, String text) {
    return new Statement(s.attribute(), s.content(), s.excluded(), text, s.origin(), s.limits());
  }

  /** "Floor" alone is a surface, whether its column is called "face" or "applied to". */
  Attribute meant(Header.Column column, String text) {
    Attribute attribute = column.attribute();
    boolean place = attribute != null && attribute.family().equals("location");
    if (column.describes() || place) return attribute;
    if (attribute != null && attribute.isTerm(text)) return attribute;
    Attribute other = attribute == null ? null : namedInstead(attribute, text);
    if (other != null) return other;
    return vocabulary
        .attribute("location.surface")
        .filter(surface -> surface.isTerm(text))
        .orElse(attribute);
  }

  /** "Tensile, 1.0 N/mm2" under "Adhesion" is no shear bond; null where the cell names no other. */
  private Attribute namedInstead(Attribute headed, String text) {
    boolean denied = headed.kind() == Attribute.Kind.AMOUNT && headed.words().not().in(text);
    if (!denied) return null;
    return vocabulary.attributes().stream()
        .filter(a -> a.kind() == headed.kind() && a.dimension() == headed.dimension())
        .filter(a -> a.family().equals(headed.family()) && a.words().cues().in(text))
        .filter(a -> !a.words().not().in(text))
        .findFirst()
        .orElse(null);
  }

  boolean empty(Attribute attribute, String text) {
    if (vocabulary.list("schedule.elsewhere").in(text)) return true;
    return vocabulary.list("empty").matches(text) && !attribute.isTerm(text);
  }

  /** A row is about its own tile: places and kinds named in its cells limit nothing. */
  List<Statement> find(Origin origin, String text, Header.Column column, Context context) {
    Context own = context.with(column.mark()).under(column.text());
    return finder.find(text, origin, own).stream().map(s -> s.withLimits(Limits.NONE)).toList();
  }
}
