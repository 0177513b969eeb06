package clearbed.corpus;

import clearbed.samples.Clause;
import clearbed.samples.Outline;
import clearbed.samples.Schedule;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/** A defect in the making: edits a set and remembers which entries the edits touched. */
final class Defect {
  /** Bookkeeping of citations follows from most edits and is judged by operators of its own. */
  private static final List<String> BOOKKEEPING = List.of("unused-standard", "unlisted-standard");

  private final DraftSet before;
  private DraftSet after;
  private final Set<String> changed = new LinkedHashSet<>();
  private final List<Expected> expected = new ArrayList<>();
  private final Set<String> aside = new LinkedHashSet<>(BOOKKEEPING);
  private final Set<String> strangers = new LinkedHashSet<>();

  private Defect(DraftSet set) {
    before = set;
    after = set;
  }

  static Defect in(DraftSet set) {
    return new Defect(set);
  }

  /** Edits the words of every statement of a label, in clauses and cells. */
  Defect edit(String label, UnaryOperator<String> words) {
    return editWhere(statement -> statement.label().equals(label), words);
  }

  Defect editWhere(Predicate<Statement> which, UnaryOperator<String> words) {
    after =
        after.edit(
            statement -> {
              if (!which.test(statement)) return statement;
              String text = words.apply(statement.text());
              if (text.equals(statement.text())) return statement;
              changed.addAll(statement.tags());
              return statement.withText(text);
            });
    return this;
  }

  Defect delete(String label) {
    return edit(label, words -> "");
  }

  /** Puts these words in place of the first statement of a label and removes the others. */
  Defect rewrite(String label, String words) {
    boolean[] placed = {false};
    return editWhere(
        statement -> statement.label().equals(label) && !statement.isCell(),
        text -> {
          if (placed[0]) return "";
          placed[0] = true;
          return words;
        });
  }

  /** Edits the first cell of a label that the words change. */
  Defect firstCell(String label, Predicate<Statement> which, UnaryOperator<String> words) {
    boolean[] placed = {false};
    after =
        after.edit(
            statement -> {
              if (placed[0] || !statement.isCell() || !statement.label().equals(label)) {
                return statement;
              }
              String text = words.apply(statement.text());
              if (!which.test(statement) || text.equals(statement.text())) return statement;
              placed[0] = true;
              changed.addAll(statement.tags());
              return statement.withText(text);
            });
    return this;
  }

  /** Takes words out of everything that is written in clauses, marked or not. */
  Defect everywhere(UnaryOperator<String> words) {
    after = after.withFiles(after.files().stream().map(file -> clauses(file, words)).toList());
    return this;
  }

  private static DraftFile clauses(DraftFile file, UnaryOperator<String> words) {
    if (file instanceof DraftFile.SectionFile section) {
      return section.with(clauses(section.outline(), words));
    }
    if (file instanceof DraftFile.NotesFile notes)
      return notes.with(clauses(notes.outline(), words));
    if (file instanceof DraftFile.ScheduleFile schedule) {
      Schedule sheet = schedule.schedule();
      return schedule.with(sheet.withNotes(sheet.notes().stream().map(words).toList()));
    }
    return file;
  }

  private static Outline clauses(Outline outline, UnaryOperator<String> words) {
    return outline.withClauses(
        outline.clauses().stream()
            .map(clause -> clause.isTable() ? clause : clause.withText(words.apply(clause.text())))
            .toList());
  }

  /** Adds a clause at the end of the last section or notes sheet, or a note under a schedule. */
  Defect append(String words) {
    return replaceLast(
        outline -> {
          List<Clause> clauses = new ArrayList<>(outline.clauses());
          clauses.add(new Clause(1, "ADDITIONAL NOTES", List.of()));
          clauses.add(new Clause(2, words, List.of()));
          return outline.withClauses(clauses);
        },
        sheet -> {
          List<String> notes = new ArrayList<>(sheet.notes());
          notes.add(words);
          return sheet.withNotes(notes);
        });
  }

  /** Adds a clause at the end of the references article, where a section has one. */
  Defect appendReference(String words) {
    after = after.withFiles(after.files().stream().map(file -> reference(file, words)).toList());
    return this;
  }

  private static DraftFile reference(DraftFile file, String words) {
    if (!(file instanceof DraftFile.SectionFile section)) return file;
    List<Clause> clauses = new ArrayList<>(section.outline().clauses());
    for (int i = 0; i < clauses.size(); i++) {
      if (clauses.get(i).depth() == 1 && clauses.get(i).text().equalsIgnoreCase("references")) {
        clauses.add(i + 1, new Clause(2, words, List.of()));
        return section.with(section.outline().withClauses(clauses));
      }
    }
    return file;
  }

  /** Adds a copy of the first glass row under another tag. */
  Defect addRow(String tag) {
    after =
        after.withFiles(
            after.files().stream()
                .map(
                    file ->
                        file instanceof DraftFile.ScheduleFile schedule
                            ? withRow(schedule, tag)
                            : file)
                .toList());
    strangers.add(tag);
    return this;
  }

  private DraftFile withRow(DraftFile.ScheduleFile file, String tag) {
    List<List<String>> rows = new ArrayList<>(file.schedule().rows());
    for (int i = 0; i < rows.size(); i++) {
      if (!before.glass().contains(rows.get(i).get(0)) || rows.get(i).size() < 2) continue;
      List<String> copy = new ArrayList<>(rows.get(i));
      copy.set(0, tag);
      rows.add(i + 1, copy);
      return file.with(file.schedule().withRows(rows));
    }
    return file;
  }

  private Defect replaceLast(UnaryOperator<Outline> outline, UnaryOperator<Schedule> schedule) {
    List<DraftFile> files = new ArrayList<>(after.files());
    for (int i = files.size() - 1; i >= 0; i--) {
      DraftFile file = files.get(i);
      if (file instanceof DraftFile.NotesFile notes) {
        files.set(i, notes.with(outline.apply(notes.outline())));
      } else if (file instanceof DraftFile.SectionFile section) {
        files.set(i, section.with(outline.apply(section.outline())));
      } else {
        continue;
      }
      after = after.withFiles(files);
      return this;
    }
    for (int i = files.size() - 1; i >= 0; i--) {
      if (files.get(i) instanceof DraftFile.ScheduleFile sheet) {
        files.set(i, sheet.with(schedule.apply(sheet.schedule())));
        after = after.withFiles(files);
        return this;
      }
    }
    return this;
  }

  /** The check must report every entry that the edits touched. */
  Defect expect(String check) {
    return expect(check, changed);
  }

  /** The check must report these entries, or the set when there are none. */
  Defect expect(String check, Set<String> tags) {
    expected.add(new Expected(check, tags));
    return this;
  }

  /** The check must report those of the touched entries that need what was taken away. */
  Defect expectAmong(String check, Set<String> needing) {
    Set<String> tags = new LinkedHashSet<>(changed);
    tags.retainAll(needing);
    if (!tags.isEmpty()) expected.add(new Expected(check, tags));
    return this;
  }

  Defect aside(String... checks) {
    aside.addAll(List.of(checks));
    return this;
  }

  Defect stranger(String tag) {
    strangers.add(tag);
    return this;
  }

  Set<String> changed() {
    return changed;
  }

  /** The mutant, or nothing when the edits found nothing to change. */
  Optional<Mutant> mutant() {
    if (after.equals(before) || expected.isEmpty()) return Optional.empty();
    return Optional.of(new Mutant(after, expected, aside, strangers));
  }
}
