package clearbed.check.judge;

import clearbed.check.rules.Judgement;
import clearbed.model.document.Origin;
import clearbed.model.value.Entry;
import clearbed.model.value.Scope;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Tags;
import clearbed.resolve.Project;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Names what a finding is about, for its id: by what stays when documents are moved, sorted,
 * renumbered or joined by other tile. The number of entries that a clause fails is not such a
 * thing.
 */
public final class Subjects {
  private static final Pattern ENDING = Pattern.compile("\\.[A-Za-z]+$");

  private final Project project;

  public Subjects(Project project) {
    this.project = project;
  }

  /** An entry by its tag, however a document spells it. */
  public String of(Entry entry) {
    return Tags.key(entry.tag());
  }

  /** The section on tile work, or the set where there is none. */
  public String ofTileWork() {
    return project.sections().stream()
        .filter(Section::article)
        .min(Comparator.comparing((Section s) -> s.number().isEmpty()).thenComparing(Section::name))
        .map(Section::name)
        .orElse("set");
  }

  /** What a value that will not do belongs to: an entry, the tags of a clause, or the clause. */
  public String of(Judgement.Failed failed, List<Entry> entries) {
    Origin origin = failed.at().origin();
    boolean alone = entries.size() == 1;
    if (alone && (!failed.words().steps().isEmpty() || origin.cell() != null))
      return of(entries.get(0));
    for (Section section : project.sections()) {
      for (Clause clause : section.clauses()) {
        if (!clause.origin().equals(origin)) continue;
        List<String> named = entriesNamed(clause);
        if (!named.isEmpty()) return tags(named);
        if (entries.stream().allMatch(entry -> isOfEntry(entry, origin))) break;
        // Of two clauses of a section, what they say tells them apart; their numbers change.
        return (section.notes() ? "notes" : section.name()) + " " + failed.words().found();
      }
    }
    if (alone || entries.stream().allMatch(entry -> isOfEntry(entry, origin))) {
      return tags(entries.stream().map(Entry::tag).toList());
    }
    return document(origin) + " " + failed.words().found();
  }

  /** A clause names sealants and mortars by tags, too. */
  private List<String> entriesNamed(Clause clause) {
    return clause.limits().tags().stream()
        .filter(tag -> project.tags().contains(Tags.key(tag)))
        .toList();
  }

  private static boolean isOfEntry(Entry entry, Origin origin) {
    return entry.values().stream()
        .anyMatch(value -> value.scope() == Scope.ENTRY && value.origin().equals(origin));
  }

  public static String tags(Collection<String> tags) {
    return tags.stream().map(Tags::key).sorted().collect(Collectors.joining(" "));
  }

  /**
   * A document by its name without folder and ending: those change when it is moved or exported.
   */
  public static String document(Origin origin) {
    String path = origin.document();
    return ENDING.matcher(path.substring(path.lastIndexOf('/') + 1)).replaceFirst("");
  }
}
