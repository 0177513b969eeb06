package clearbed.resolve;

import clearbed.recognise.Clause;
import clearbed.recognise.Facts;
import clearbed.recognise.Section;
import clearbed.recognise.Tags;
import clearbed.recognise.Vocabulary;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Finds what clauses make of tags: glass tiles that no schedule has, or of which the schedule does
 * not say what they are, and tags that clauses and schedule make different things of.
 */
final class Products {
  private static final int OPENING = 120;
  private static final int CALLED = 60;
  private static final Pattern ELSEWHERE =
      Pattern.compile(
          "\\b(?:excluded|not part of|by others|specified elsewhere|separate section)\\b",
          Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final List<Facts> facts;
  private final Map<String, Draft> drafts;
  private final boolean schedules;
  private final Map<String, Set<String>> inHeading = new HashMap<>();

  /**
   * @param drafts what schedules have; products are added to them
   */
  Products(Vocabulary vocabulary, List<Facts> facts, Map<String, Draft> drafts) {
    this.vocabulary = vocabulary;
    this.facts = facts;
    this.drafts = drafts;
    this.schedules = facts.stream().anyMatch(f -> !f.rows().isEmpty());
  }

  void add() {
    for (Facts f : facts) {
      for (Section section : f.sections()) {
        for (Clause clause : section.clauses()) {
          tagged(section, clause);
          headed(section, clause);
        }
      }
    }
    if (drafts.values().stream().noneMatch(d -> d.glass)) untagged();
  }

  /** Tags that only a product article on glass tile gives. */
  private void tagged(Section section, Clause clause) {
    boolean adds = Tags.adds(clause.text());
    if (!adds && (!section.article() || section.notes() || clause.number().isEmpty())) return;
    if (!section.article() && !section.notes() || outsideProducts(section, clause)) return;
    for (String tag : Tags.inOpening(clause.text())) {
      if (known(tag)) {
        scheduled(drafts.get(Tags.key(tag)), clause, tag);
      } else if ((adds || !unlikeScheduled(tag)) && product(clause, tag)) {
        add(Tags.asWritten(Tags.key(tag), clause.text()), clause);
      }
    }
  }

  /** "GT-1: cast glass tile" holds although the schedule calls it "Aqua blend 12" alone. */
  private void scheduled(Draft draft, Clause clause, String tag) {
    if (!Tags.opens(tag, clause.text())) return;
    String opening = opening(clause);
    if (vocabulary.describesGlassTile(opening) && vocabulary.assertsGlassTile(clause.text())) {
      specifiedAsGlass(draft, clause);
    } else if (draft.glass && otherTile(opening)) {
      draft.asOther.add(clause);
    }
  }

  /** What it is called stands at the beginning; further on other tile may be what it is set by. */
  private boolean otherTile(String opening) {
    String called = opening.substring(0, Math.min(CALLED, opening.length()));
    return vocabulary.describesOtherTile(called).isPresent();
  }

  private static void specifiedAsGlass(Draft draft, Clause clause) {
    draft.asGlass.add(clause);
    if (draft.glass) return;
    draft.glass = true;
    draft.evidence = clause.text();
    draft.places.add(clause.origin());
  }

  /** "GLS-A, SHOP COUNTER" over paragraphs of which one says that it is a glass tile. */
  private void headed(Section section, Clause clause) {
    if (!section.article() || outsideProducts(section, clause)) return;
    String heading = clause.heading();
    Set<String> tags = inHeading.computeIfAbsent(heading, Tags::inOpening);
    if (tags.isEmpty() || heading.equals(clause.text())) return;
    if (!vocabulary.describesGlassTile(opening(clause))) return;
    if (!vocabulary.assertsGlassTile(clause.text())) return;
    if (ELSEWHERE.matcher(clause.text()).find()) return;
    for (String tag : tags) {
      if (!Tags.opens(tag, heading)) continue;
      if (known(tag)) {
        specifiedAsGlass(drafts.get(Tags.key(tag)), clause);
      } else if (!unlikeScheduled(tag)) {
        Draft draft = add(Tags.asWritten(Tags.key(tag), heading), clause);
        section.clauses().stream()
            .filter(c -> c.heading().equals(heading) && c != clause)
            .forEach(draft.about::add);
      }
    }
  }

  /** Part 1 and Part 3 of a three-part section speak of tiles; only Part 2 specifies them. */
  private static boolean outsideProducts(Section section, Clause clause) {
    return !section.number().isEmpty()
        && !clause.number().startsWith("2.")
        && clause.number().contains(".");
  }

  private boolean known(String tag) {
    return drafts.containsKey(Tags.key(tag));
  }

  /** A tag unlike those that the schedules give to glass tile. */
  private boolean unlikeScheduled(String tag) {
    return schedules
        && drafts.values().stream()
            .noneMatch(d -> d.glass && Tags.prefix(d.key).equals(Tags.prefix(Tags.key(tag))));
  }

  /** The clause, or the article it stands in, makes this tag a glass tile. */
  private boolean product(Clause clause, String tag) {
    boolean opens = Tags.opens(tag, clause.text());
    if (clause.limits().glass()) return opens || vocabulary.speaksOfGlassTile(clause.text());
    return opens && vocabulary.describesGlassTile(clause.text());
  }

  /** A section that specifies glass tile without tag or schedule is one entry. */
  private void untagged() {
    for (Facts f : facts) {
      for (Section section : f.sections()) {
        if (section.notes()) continue;
        for (Clause clause : section.clauses()) {
          boolean product =
              clause.number().startsWith("2.")
                  || section.article() && !clause.number().contains(".");
          if (!product || clause.listsReferences()) continue;
          boolean names =
              vocabulary.speaksOfGlassTile(opening(clause))
                  && vocabulary.assertsGlassTile(clause.text());
          if (!names || ELSEWHERE.matcher(clause.text()).find()) continue;
          if (!known("Glass tile")) add("Glass tile", clause);
        }
      }
    }
  }

  private static String opening(Clause clause) {
    String text = clause.text();
    return text.length() > OPENING ? text.substring(0, OPENING) : text;
  }

  private Draft add(String tag, Clause clause) {
    Draft draft = new Draft(tag, Tags.key(tag), clause.origin());
    draft.glass = true;
    draft.evidence = clause.text();
    draft.places.add(clause.origin());
    drafts.put(draft.key, draft);
    return draft;
  }
}
