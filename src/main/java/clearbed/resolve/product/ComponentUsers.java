package clearbed.resolve.product;

import clearbed.model.value.Content;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.RowReader;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.ClauseNumbers;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds the tiles that call for the marks of parts of the work. */
final class ComponentUsers {
  /** The number of a clause, of the form of a mark. */
  private static final Pattern COUNTED = Pattern.compile("\\s*[A-Z]{1,3}-?\\d{1,2}\\.\\s");

  private final Vocabulary vocabulary;
  private final Map<String, Draft> drafts;
  private final ComponentMarks marks;

  /** Keys of the tiles that call for a mark, by its key. */
  private final Map<String, Set<String>> users = new HashMap<>();

  /** Parts of the work for which tiles call by a mark, by their keys. */
  private final Map<String, Set<String>> called = new HashMap<>();

  ComponentUsers(Vocabulary vocabulary, Map<String, Draft> drafts, ComponentMarks marks) {
    this.vocabulary = vocabulary;
    this.drafts = drafts;
    this.marks = marks;
  }

  /** Keys of the tiles that call for a mark. */
  Set<String> of(String mark) {
    return users.getOrDefault(mark, Set.of());
  }

  /** The letters of the marks that tiles call for. */
  Set<String> letters() {
    return users.keySet().stream().map(Tags::prefix).collect(Collectors.toSet());
  }

  /** Keys of the tiles that call for a part of the work by some mark. */
  Set<String> ofWork(String work) {
    return called.getOrDefault(work, Set.of());
  }

  /** Finds the tiles that call for the marks, once all tiles are known. */
  void gather(List<Facts> facts) {
    if (marks.works.isEmpty()) return;
    drafts.values().forEach(this::scheduled);
    marks.parts.values().forEach(this::listed);
    for (Facts f : facts) {
      for (Section section : f.sections()) section.clauses().forEach(this::named);
    }
    Map<String, Set<String>> further = new TreeMap<>();
    marks.parts.values().forEach(part -> passedOn(part, further));
    for (Facts f : facts)
      for (Section section : f.sections())
        for (Clause clause : section.clauses()) passedOn(clause, further);
    further.forEach((mark, tiles) -> uses(tiles, mark));
  }

  /** "D1 | dry walls | 20 ft | JS-1": who calls for the joint D1 calls for its sealant as well. */
  private void passedOn(Draft part, Map<String, Set<String>> further) {
    for (ScheduleRow row : part.rows)
      for (Statement s : row.statements())
        if (s.attribute().equals(RowReader.MARK))
          passOn(part.key, Tags.key(s.content().text()), further);
  }

  /** The same in words: "D1: 20 ft apart; sealant JS-1". */
  private void passedOn(Clause clause, Map<String, Set<String>> further) {
    String text = PlainText.of(clause.text());
    TagFinder.TagsAt opening = TagFinder.firstTags(text, vocabulary);
    if (opening == null || opening.start() > 0 || opening.tags().size() > 1) return;
    String by = Tags.key(opening.tags().get(0));
    if (of(by).isEmpty()) return;
    for (String tag : TagFinder.tags(text.substring(opening.end()), vocabulary))
      passOn(by, Tags.key(tag), further);
  }

  private void passOn(String by, String mark, Map<String, Set<String>> further) {
    String work = marks.works.get(mark);
    if (work == null || mark.equals(by)) return;
    Set<String> left = new TreeSet<>(of(by));
    left.removeAll(ofWork(work));
    if (!left.isEmpty()) further.computeIfAbsent(mark, any -> new TreeSet<>()).addAll(left);
  }

  private void scheduled(Draft draft) {
    if (!draft.glass && draft.rows.stream().anyMatch(ScheduleRow::decided)) return;
    for (ScheduleRow row : draft.rows) {
      for (Statement s : row.statements()) {
        if (s.attribute().equals(RowReader.MARK) && s.content() instanceof Content.Words mark)
          uses(Set.of(draft.key), Tags.key(mark.text()));
      }
    }
  }

  /** "K1 | Cement adhesive | GM 01, GM 05": the tiles that a row on a part of the work is for. */
  private void listed(Draft part) {
    for (ScheduleRow row : part.rows) {
      for (Statement s : row.statements()) {
        boolean mark = s.attribute().equals(RowReader.MARK) && s.content() instanceof Content.Words;
        if (!mark || isExcepted(s.asWritten())) continue;
        Set<String> tile = glass(Set.of(s.content().text()));
        if (!tile.isEmpty()) uses(tile, part.key);
      }
    }
  }

  private boolean isExcepted(String text) {
    return vocabulary.list("except").in(text) || vocabulary.list("negation.before").in(text);
  }

  /** "GT-1: fused glass, set in MB-1". */
  private void named(Clause clause) {
    Set<String> numbers = ComponentMarks.keys(ClauseNumbers.in(clause.text()));
    if (!clause.subject().specified() && numbers.isEmpty()) return;
    Set<String> tiles = glass(clause.subject().tags());
    if (tiles.isEmpty()) usedBy(clause);
    if (tiles.isEmpty() && numbers.isEmpty()) return;
    for (Sentences.Sentence sentence : Sentences.of(PlainText.of(clause.text()))) {
      Set<String> all = ComponentMarks.keys(TagFinder.tags(sentence.text(), vocabulary));
      all.addAll(ComponentMarks.keys(ClauseNumbers.in(sentence.text())));
      if (all.stream().noneMatch(marks.works::containsKey)) continue;
      Set<String> own = new HashSet<>(all);
      own.retainAll(drafts.keySet());
      own.removeAll(marks.works.keySet());
      // "GT-1: MB-1. GT-2: MB-2" is of one tile in each sentence.
      Set<String> callers = own.isEmpty() ? tiles : own;
      if (!callers.isEmpty()) for (String mark : all) uses(callers, mark);
    }
  }

  /** "MB-1: white mortar; for GT-1, GT-3" calls itself. */
  private void usedBy(Clause clause) {
    Set<String> own = ComponentMarks.keys(clause.subject().tags());
    if (own.size() != 1 || !marks.works.keySet().containsAll(own)) return;
    String text = PlainText.of(clause.text());
    // "B-2. Deflection ..." is counted so; "MB-1 is white. EP-1 is epoxy, for GT-1" names two.
    if (COUNTED.matcher(text).lookingAt()) return;
    Set<String> tags = TagFinder.tags(text, vocabulary);
    Set<String> named = ComponentMarks.keys(tags);
    named.retainAll(marks.works.keySet());
    if (!named.equals(own)) return;
    Set<String> tiles = glass(tags);
    tiles.removeAll(clause.limits().except().tags());
    boolean refuses = clause.statements().stream().anyMatch(s -> !s.limits().except().isEmpty());
    if (!tiles.isEmpty() && !refuses) uses(tiles, own.iterator().next());
  }

  private void uses(Set<String> tiles, String mark) {
    String work = marks.works.get(mark);
    if (work == null) return;
    users.computeIfAbsent(mark, any -> new TreeSet<>()).addAll(tiles);
    called.computeIfAbsent(work, any -> new TreeSet<>()).addAll(tiles);
    Draft part = marks.parts.get(mark);
    if (part == null) return;
    for (ScheduleRow row : part.rows)
      for (Statement s : row.statements())
        if (ComponentMarks.WORKS.contains(s.family()))
          called.computeIfAbsent(s.family(), any -> new TreeSet<>()).addAll(tiles);
  }

  Set<String> glass(Collection<String> tags) {
    return tags.stream()
        .map(Tags::key)
        .filter(key -> drafts.containsKey(key) && drafts.get(key).glass)
        .collect(Collectors.toSet());
  }
}
