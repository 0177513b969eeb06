package clearbed.recognise.statement.figure;

import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.text.BoundWords;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Whole numbers without a unit beside the words of their attribute: "PTV not less than 36", "36
 * PTV", "pendulum value wet (slider 96): 40 to 45".
 */
final class WholeNumbers {
  private static final Pattern NUMBER =
      Pattern.compile(
          "(?<![\\w.,/°-])(\\d{2,3})(?:\\s?(?:-|to)\\s?(\\d{2,3}))?(\\+)?(?![\\w/°%\"]|[.,]\\d)");

  /** What numbers behind it name: a rubber, a standard, an annex. */
  private static final Pattern NAMED_BEFORE =
      Pattern.compile(
          "\\b(?:slider|rubber|irhd|trr?l|4s|four s|annex|part|clause|table|type|no\\.?|en|bs|din|iso|as|nzs)\\s?[#:(]?\\s?$",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern NAMED_AFTER =
      Pattern.compile(
          "^\\s?(?:slider|rubber|irhd|mm\\b|days?\\b|h\\b|hours?\\b|no\\.)",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern VALUE =
      Pattern.compile("\\b(?:values?|readings?|results?)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern TAG = Pattern.compile("\\b[A-Z]{1,5}[ .]?$");

  private static final Pattern DRY =
      Pattern.compile("^[^,;.\\d]{0,12}\\bdry\\b(?! (?:and|or|&) wet)", Pattern.CASE_INSENSITIVE);
  private static final Pattern DRY_BEFORE =
      Pattern.compile("(?<!wet and )(?<!wet or )\\bdry\\W{0,2}$", Pattern.CASE_INSENSITIVE);
  private static final Pattern DRY_WORD =
      Pattern.compile(
          "\\b(?:(?:tested|measured|taken|when|while|kept) dry|dry (?:dcof|cof|coefficient|value|figure|surface|condition|state|test)|dcof,? \\(?dry)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern WET_WORD = Pattern.compile("\\bwet", Pattern.CASE_INSENSITIVE);
  private static final Pattern ENDS = Pattern.compile(";|[.?!](?=\\s|$)");
  private static final Pattern JOINED =
      Pattern.compile(
          "(\\d{2,3})\\+?\\s?\\(?(?:wet |minimum |min\\.? |on the |by (?:the )?)?$",
          Pattern.CASE_INSENSITIVE);

  private static final int REACH = 90;

  private final Vocabulary vocabulary;
  private final List<Attribute> attributes;

  WholeNumbers(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.attributes = vocabulary.attributes().stream().filter(WholeNumbers::isWhole).toList();
  }

  private static boolean isWhole(Attribute a) {
    return a.dimension() == Dimension.RATIO
        && a.plausible() != null
        && a.plausible().low().number() >= 2;
  }

  void addTo(Passage p) {
    Attribute column = vocabulary.attribute(p.context.attribute()).orElse(null);
    for (Attribute a : attributes) {
      if (!p.context.mayStateFamily(a.family())) continue;
      boolean found = false;
      List<Phrases.Hit> cues = a.words().cues().all(p.text);
      for (Phrases.Hit cue : cues) found |= beside(p, a, cue);
      // "Measured by the pendulum; the test value is not below 40."
      Matcher value = VALUE.matcher(p.text);
      if (a == p.carried.awaited() && !found && value.find()) found = after(p, a, value.end());
      if (!cues.isEmpty() || found) p.carried.awaited(found ? null : a);
      // Under "slip resistance" a number too great for a coefficient is a pendulum value.
      if (!found && column != null && column.mayGive(a)) after(p, a, 0);
    }
  }

  /** "DCOF 0.42, tested dry": no figure of a wet floor. */
  static boolean ofDry(String text) {
    return DRY_WORD.matcher(text).find() && !WET_WORD.matcher(text).find();
  }

  private static boolean beside(Passage p, Attribute a, Phrases.Hit cue) {
    String before = p.text.substring(0, cue.start());
    if (DRY_BEFORE.matcher(before).find()) return false;
    Matcher joined = JOINED.matcher(before);
    if (joined.find()) {
      Matcher number = NUMBER.matcher(p.text);
      if (number.find(joined.start(1))
          && number.start(1) == joined.start(1)
          && isFigure(p.text, number)
          && !isOfTag(p.text, number.start())) {
        return add(p, a, number);
      }
    }
    return after(p, a, cue.end());
  }

  private static boolean after(Passage p, Attribute a, int from) {
    Matcher end = ENDS.matcher(p.text);
    int to = Math.min(p.text.length(), from + REACH);
    if (end.find(from)) to = Math.min(to, end.start());
    Matcher number = NUMBER.matcher(p.text);
    int at = from;
    while (number.find(at) && number.end() <= to) {
      at = number.end();
      boolean tag = from > 0 && isOfTag(p.text, number.start());
      boolean dry = DRY.matcher(p.text.substring(number.end())).find();
      if (!tag && !dry && isFigure(p.text, number) && add(p, a, number)) return true;
    }
    return false;
  }

  private static boolean isFigure(String text, Matcher number) {
    String before = text.substring(0, number.start());
    return !NAMED_BEFORE.matcher(before).find()
        && !NAMED_AFTER.matcher(text.substring(number.end())).find();
  }

  /** "PTV for GM 12": a mark in capitals; where all is in capitals it cannot be told. */
  private static boolean isOfTag(String text, int start) {
    String before = text.substring(0, start);
    boolean capitals = text.chars().noneMatch(Character::isLowerCase);
    return !capitals
        && TAG.matcher(before).find()
        && !before.matches("(?s).*\\b(?:PTV|SRV|MIN|WET)[ .]?$");
  }

  private static boolean add(Passage p, Attribute a, Matcher number) {
    Quantity low = Quantity.of(Double.parseDouble(number.group(1)), Unit.ONE);
    Quantity high =
        number.group(2) == null ? low : Quantity.of(Double.parseDouble(number.group(2)), Unit.ONE);
    String before = p.text.substring(0, number.start());
    Bound bound = BoundWords.bound(before, p.text.substring(number.end()));
    if (number.group(3) != null) bound = Bound.AT_LEAST;
    boolean refused = p.negated(number.start(), number.end());
    if (refused && bound == Bound.BELOW) bound = Bound.AT_LEAST;
    Content.Amount amount = new Content.Amount(low, high, bound);
    if (!a.accepts(amount)) return false;
    p.add(a, amount, false, number.start(), number.end());
    return true;
  }
}
