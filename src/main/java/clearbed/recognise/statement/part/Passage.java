package clearbed.recognise.statement.part;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.ClassCodes;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.SpelledNumbers;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** One part of a text with all that is known of it before it is read. */
public final class Passage {
  /** "RG grout:", "Class C2TE adhesive:" */
  private static final Pattern OF_CLASS =
      Pattern.compile(
          "\\s*(?:[Cc]lass )?(?:C[12]|R[12]|D[12]|CG[12]|RG)[A-Z0-9 ]* (?:grouts?|adhesives?|mortars?)\\s*:?\\s*");

  private static final int FEW = 300;

  private static final int NEGATION_NEAR = 70;

  /** "Without paint, foil or metal" denies all three. */
  private static final Pattern LISTED =
      Pattern.compile("[\\w-]+(?: [\\w-]+)?(?:, [\\w-]+(?: [\\w-]+)?){0,4},? n?or ");

  private final Vocabulary vocabulary;
  private final Map<Phrases.Hit, String> cues = new LinkedHashMap<>();
  private final Origin origin;
  private final List<Said> said = new ArrayList<>();
  // As written, and with open items blanked out and numbers in digits.
  public final String whole;
  public final String text;
  public final Context context;
  // A lead-in names what its paragraph is about, however far the figure stands behind it.
  public final int leadEnd;
  public final Carried carried;

  /** True when it stands behind a semicolon rather than a full stop. */
  public final boolean goesOn;

  private final boolean deniedTwice;

  public Passage(
      Vocabulary vocabulary,
      Parts.Part part,
      String closed,
      Context context,
      Origin origin,
      Carried carried) {
    this.vocabulary = vocabulary;
    this.leadEnd = Math.min(part.lead().length(), part.text().length());
    this.whole = part.text();
    this.text = SpelledNumbers.inDigits(closed);
    this.context = context;
    this.origin = origin;
    this.carried = carried;
    this.goesOn = !part.sentence() && part.lead().isEmpty() && !part.exception();
    this.deniedTwice = vocabulary.list("negation.twice").in(closed);
    vocabulary
        .families()
        .forEach((family, phrases) -> phrases.all(whole).forEach(hit -> cues.put(hit, family)));
    // "Joint mortar" is no mortar.
    Set<Phrases.Hit> all = Set.copyOf(cues.keySet());
    if (all.size() <= FEW)
      cues.keySet().removeIf(hit -> all.stream().anyMatch(longer -> within(hit, longer)));
    for (Citations.Found f : Citations.find(whole))
      vocabulary
          .standards()
          .of(f.standard().designation())
          .filter(info -> info.states().size() == 1)
          .flatMap(info -> vocabulary.attribute(info.states().get(0)))
          // A standard for its material shows a part of the work as well as its name.
          .filter(a -> WorkFamilies.MATERIALS.contains(a.family()))
          .ifPresent(a -> cues.put(new Phrases.Hit(f.start(), f.end()), a.family()));
  }

  /**
   * "RG grout: not more than 2 m2 open at once" says what holds for such grout, and of no tile that
   * it has it.
   *
   * @param end of a class
   */
  public boolean isSubject(int end) {
    if (leadEnd == 0 || end > leadEnd) return false;
    if (!OF_CLASS.matcher(text.substring(0, leadEnd)).matches()) return false;
    String behind = text.substring(leadEnd);
    return TagFinder.tags(text).isEmpty()
        && vocabulary.families().values().stream().noneMatch(f -> f.in(behind))
        && ClassCodes.unmistakable(behind).isEmpty()
        && Citations.find(behind).isEmpty()
        && !Quantities.find(behind).isEmpty();
  }

  private static boolean within(Phrases.Hit hit, Phrases.Hit longer) {
    return longer.start() <= hit.start()
        && hit.end() <= longer.end()
        && longer.end() - longer.start() > hit.end() - hit.start();
  }

  /** What the text is about, by what stands over it or runs in before it; or empty. */
  public String title() {
    if (context.title().isEmpty() || carried.title().isEmpty())
      return context.title() + carried.title();
    return context.title() + ". " + carried.title();
  }

  public Origin origin() {
    return origin;
  }

  /** Something is left open there of which it is not known what. */
  public void addOpen(String words, int start, int end) {
    said.add(new Said("text", new Content.Open(words), false, start, end));
  }

  /**
   * @param start of the words that give the value
   * @param end behind them
   */
  public void add(Attribute attribute, Content content, boolean excluded, int start, int end) {
    if (!context.mayStateFamily(attribute.family())) return;
    said.add(new Said(attribute.id(), content, excluded, start, end));
  }

  /** A value of the whole text rather than of some of its words. */
  public void add(Attribute attribute, Content content, boolean excluded) {
    add(attribute, content, excluded, 0, text.length());
  }

  /** True for what no words of its own give. */
  boolean isWhole(Said value) {
    return value.start() == 0
        && value.end() == text.length()
        && value.content() instanceof Content.Required;
  }

  /** In the order in which they were found. */
  public List<Said> said() {
    return said;
  }

  /**
   * @param its what the value is limited to
   */
  void state(List<Statement> out, Said value, Limits its) {
    Statement statement =
        new Statement(value.attribute(), value.content(), value.excluded(), whole, origin, its);
    boolean known =
        out.stream()
            .anyMatch(
                s ->
                    s.attribute().equals(value.attribute())
                        && s.content().equals(value.content())
                        && s.excluded() == value.excluded()
                        && s.limits().equals(its));
    if (!known) out.add(statement);
  }

  public String familyNear(int start, int end) {
    String best = "";
    int distance = Integer.MAX_VALUE;
    for (Map.Entry<Phrases.Hit, String> cue : cues.entrySet()) {
      if (Set.of("tile", "substrate").contains(cue.getValue())
          && !context.family().equals(cue.getValue())) continue;
      Phrases.Hit hit = cue.getKey();
      int d = hit.distanceTo(start, end);
      String between =
          hit.end() <= start
              ? whole.substring(hit.end(), start)
              : hit.start() >= end ? whole.substring(end, hit.start()) : "";
      if (between.contains(",")) d += 15;
      // A lead-in speaks for all that follows it; the tile in it is what the rest is for.
      boolean leads = between.contains(":") || hit.end() <= start;
      if (leads && !cue.getValue().equals("tile")) d -= 10;
      if (d < distance) {
        distance = d;
        best = cue.getValue();
      }
    }
    return best.isEmpty() ? context.family() : best;
  }

  public int familyPenalty(Attribute a, int start, int end) {
    String family = familyNear(start, end);
    if (family.isEmpty() || family.equals(a.family())) return 0;
    boolean kin =
        Set.of("sealant", "movement").contains(family)
            && Set.of("sealant", "movement").contains(a.family());
    return kin ? 5 : 30;
  }

  public boolean negated(int start, int end) {
    if (deniedTwice) return false;
    String before = text.substring(0, start);
    String near = before.substring(Math.max(0, before.length() - NEGATION_NEAR));
    boolean listed = LISTED.matcher(text).region(start, text.length()).lookingAt();
    if (!listed && vocabulary.list("negation.butThis").endsAt(near, near.length())) return false;
    if (vocabulary.list("negation.directly").endsAt(near, near.length())) return true;
    Phrases.Hit last = null;
    for (Phrases.Hit hit : vocabulary.list("negation.before").all(before)) last = hit;
    if (last != null
        && before.length() - last.end() < NEGATION_NEAR
        && !(before.indexOf(',', last.end()) >= 0
            && vocabulary.list("negation.affirmed").startsAt(text, end))
        && !(before.indexOf(',', last.end()) >= 0
            && vocabulary.list("negation.lacks").startsAt(text, last.start()))
        && !vocabulary.list("negation.ends").startsAt(before, last.end())) return true;
    return vocabulary.list("negation.after").in(text.substring(end));
  }
}
