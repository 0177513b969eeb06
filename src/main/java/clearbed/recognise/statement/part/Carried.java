package clearbed.recognise.statement.part;

import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the parts before have spoken of: "coverage: 100 percent behind clear tile; 95 percent
 * elsewhere". One text long.
 */
public final class Carried {
  private Attribute amount;
  private List<Attribute> row = List.of();
  private boolean flatness;
  private boolean tagged;
  private Attribute awaited;
  private String title = "";
  private String label = "";
  private final Map<String, List<Limits>> limits = new HashMap<>();

  /** "Membrane WB-1", "Membrane M1:". */
  private static final Pattern MARKED =
      Pattern.compile("(?i:\\bmembranes?)\\s+([A-Z]{1,4}-?\\d{1,3})\\b");

  /** Behind the pronoun the sentence goes on or ends. */
  private static final Pattern ON_IT =
      Pattern.compile(
          "(?i)\\b(on|over|to|with|onto|accepts?|approves?|allows?|permits?|endorses?|for) (?:it|them|this|these)(?= |[.,;]|$)(?! tiles?\\b)");

  private static final Pattern PARTY =
      Pattern.compile(
          "\\b(?:(?:tile|glass|mortar|adhesive|grout|membrane|sealant) )?(?:maker|manufacturer|producer|supplier)s?\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern PRONOUN = Pattern.compile("^(?:He|She|They)(?= [a-z])");

  private String party = "";
  private final Set<String> membranes = new TreeSet<>();
  private boolean onMembrane;

  /** What the last figure was of. */
  public Attribute amount() {
    return amount;
  }

  public void amount(Attribute now) {
    amount = now;
  }

  /** What the figures of the part before were of, in order. */
  public List<Attribute> row() {
    return row;
  }

  public void row(List<Attribute> now) {
    row = now;
  }

  /** A part before has spoken of flatness. */
  public boolean flatness() {
    return flatness;
  }

  public void flatness(boolean now) {
    flatness = now;
  }

  /** What has been named without its figure, which has no unit and may come later. */
  public Attribute awaited() {
    return awaited;
  }

  public void awaited(Attribute now) {
    awaited = now;
  }

  /** Words that run in before the text and say what it is about: "Spacing and width." */
  public String title() {
    return title;
  }

  public void title(String now) {
    title = now;
  }

  /** Words before the colon that the text begins with: "Maker says: suited; may be ...". */
  public String label() {
    return label;
  }

  public void label(String now) {
    label = now;
  }

  /** A part before has named tags. */
  public boolean tagged() {
    return tagged;
  }

  public void tagged(boolean now) {
    tagged |= now;
  }

  /**
   * @param membrane words for membranes
   */
  public void heard(String part, Phrases membrane) {
    Matcher who = PARTY.matcher(part);
    if (who.find()) party = who.group();
    Matcher m = MARKED.matcher(part);
    while (m.find()) membranes.add(m.group(1));
    // "Membrane ... The tile maker accepts it. The adhesive maker accepts his adhesive on it."
    boolean stillOfIt = onMembrane && ON_IT.matcher(part).find();
    onMembrane = stillOfIt || membrane.in(part) || membranes.stream().anyMatch(part::contains);
  }

  /** "He also confirmed it": who was named before. */
  public String named(String part) {
    return party.isEmpty() ? part : PRONOUN.matcher(part).replaceFirst("The " + party);
  }

  /** The words, with what marks and pronouns stand for: "set over WB-1", "used on it". */
  public String spelt(String part) {
    String out = part;
    for (String mark : membranes) out = out.replace(mark, "membrane " + mark);
    return onMembrane ? ON_IT.matcher(out).replaceAll("$1 the membrane") : out;
  }

  /** A value of the attribute was limited so. */
  void note(String attribute, Limits its) {
    limits.computeIfAbsent(attribute, a -> new ArrayList<>()).add(its);
  }

  /** What values of the attribute were limited to, in order. */
  public List<Limits> of(String attribute) {
    return limits.getOrDefault(attribute, List.of());
  }
}
