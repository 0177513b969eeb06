package clearbed.check.computed.reference;

import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.value.Entry;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Citation;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.vocabulary.StandardInfo;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** The references article of the tile section and its requirements name the same standards. */
public final class ReferencesCheck implements SetComputation {
  /** So many standards that are missed together are no slip of the writer. */
  private static final int LOST = 4;

  private static final String HANDBOOK = "TCNA";
  private static final Set<String> NOT_OF_TILE = Set.of("", "substrate");

  private final boolean unused;

  /**
   * @param unused true to look for standards listed and not used, false for standards used and not
   *     listed
   */
  public ReferencesCheck(boolean unused) {
    this.unused = unused;
  }

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    List<Finding> out = new ArrayList<>();
    if (scene.project().glass().isEmpty()) return out;
    // Issue after issue says the same words.
    Map<String, List<Citations.Found>> cited = new HashMap<>();
    Set<String> required = new TreeSet<>();
    for (Citation c : scene.project().citations()) {
      if (!c.listed()) required.add(c.standard().designation());
    }
    Set<String> implied = unused ? implied(scene) : Set.of();
    // A list by itself is that of the whole set.
    boolean ofTheSet =
        !unused
            && scene.project().sections().stream()
                    .filter(s -> s.clauses().stream().anyMatch(c -> lists(c, cited)))
                    .count()
                == 1;
    for (Section section : scene.project().sections()) {
      if (!section.article() && !section.notes()) continue;
      Map<String, Citation> listed = new LinkedHashMap<>();
      Map<String, Citation> used = new LinkedHashMap<>();
      for (Clause clause : section.clauses()) {
        boolean list = clause.listsReferences();
        for (Citations.Found f : cited.computeIfAbsent(clause.text(), Citations::find))
          (list ? listed : used)
              .putIfAbsent(
                  f.standard().designation(),
                  new Citation(f.standard(), f.asWritten(), clause.origin(), list));
      }
      if (listed.isEmpty()) continue;
      if (ofTheSet) ofTiles(scene, used);
      Set<String> elsewhere = new TreeSet<>(used.keySet());
      elsewhere.addAll(required);
      Map<String, Citation> from = unused ? listed : used;
      Set<String> known = unused ? elsewhere : listed.keySet();
      List<Citation> missed = new ArrayList<>();
      from.forEach(
          (designation, citation) -> {
            boolean family =
                known.stream()
                    .anyMatch(
                        k ->
                            k.startsWith(designation + ".")
                                || designation.startsWith(k + ".")
                                || k.startsWith(designation + "-")
                                || designation.startsWith(k + "-"));
            boolean handbook =
                designation.startsWith(HANDBOOK)
                    && known.stream().anyMatch(k -> k.startsWith(HANDBOOK));
            boolean byClass = unused && implied.contains(subject(scene, designation));
            if (!known.contains(designation) && !family && !handbook && !byClass)
              missed.add(citation);
          });
      // Where most are missed, the list or its use stands somewhere that was not read as such.
      boolean lost = missed.size() >= LOST && missed.size() * 3 > from.size();
      for (Citation c : missed) out.add(finding(rule, lost, scene, section, c));
    }
    return out;
  }

  private static boolean lists(Clause clause, Map<String, List<Citations.Found>> cited) {
    return clause.listsReferences()
        && !cited.computeIfAbsent(clause.text(), Citations::find).isEmpty();
  }

  /** What schedules, cards and addenda ask of glass tile by its standards. */
  private static void ofTiles(Scene scene, Map<String, Citation> used) {
    Set<String> looked = new HashSet<>();
    for (Entry entry : scene.project().glass()) {
      for (Value v : entry.values()) {
        if (v.excluded() || v.open() || v.scope() != Scope.ENTRY) continue;
        if (!looked.add(v.asWritten())) continue;
        for (Citations.Found f : Citations.find(v.asWritten()))
          // The handbook is called by many names.
          if (!f.standard().designation().startsWith(HANDBOOK))
            used.putIfAbsent(
                f.standard().designation(),
                new Citation(f.standard(), f.asWritten(), v.origin(), false));
      }
    }
  }

  /** Subjects of the standards that glass tile calls by their classes alone: "C2TE S1". */
  private static Set<String> implied(Scene scene) {
    Set<String> out = new TreeSet<>();
    for (Entry entry : scene.project().glass()) {
      for (Value value : entry.values()) {
        boolean standard = value.attribute().endsWith(".standard") && !value.excluded();
        boolean byClass = standard && !value.open() && Citations.find(value.asWritten()).isEmpty();
        if (byClass) out.add(subject(scene, value.content().text()));
      }
    }
    out.remove("");
    return out;
  }

  private static String subject(Scene scene, String designation) {
    return scene.vocabulary().standards().of(designation).map(StandardInfo::subject).orElse("");
  }

  /** Of a standard of tile work; those of granite and boards bear on no glass tile. */
  private static boolean bears(Scene scene, Citation c) {
    return scene
        .vocabulary()
        .standards()
        .of(c.standard().designation())
        .filter(
            info ->
                !info.states().isEmpty()
                    || !NOT_OF_TILE.contains(scene.vocabulary().family(info.subject())))
        .isPresent();
  }

  private Finding finding(Rule rule, boolean lost, Scene scene, Section section, Citation c) {
    String designation = c.standard().designation();
    String message =
        unused
            ? designation + " is listed in the references and required nowhere."
            : designation + " is required and not listed in the references.";
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                section.name() + " " + designation,
                "",
                unused ? FindingKind.UNRESOLVED : FindingKind.MISSING,
                !lost && (unused || bears(scene, c)) ? rule.level() : Level.NOTE,
                List.of(),
                FoundAt.at(c.origin()),
                FindingWords.of(message, c.asWritten(), "")));
  }
}
