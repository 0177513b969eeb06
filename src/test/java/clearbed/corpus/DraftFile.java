package clearbed.corpus;

import clearbed.samples.Outline;
import clearbed.samples.Rendering;
import clearbed.samples.Schedule;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/** A file of a set before it is rendered, so that it can still be edited. */
sealed interface DraftFile {
  String path();

  byte[] render();

  /** What a reader sees, a clause or row a line. */
  List<String> words();

  /** The file with every statement passed through the edit. */
  DraftFile edit(Set<String> glass, UnaryOperator<Statement> edit);

  /** A schedule in any table format. */
  record ScheduleFile(String path, String sheet, Schedule schedule) implements DraftFile {
    @Override
    public byte[] render() {
      List<String> notes = schedule.notes().stream().map(Spans::strip).toList();
      return Rendering.schedule(schedule.withNotes(notes), sheet, path);
    }

    @Override
    public DraftFile edit(Set<String> glass, UnaryOperator<Statement> edit) {
      List<String> labels = schedule.columns().stream().map(Schedule.Column::key).toList();
      List<List<String>> rows =
          schedule.rows().stream().map(row -> Rows.edit(row, labels, glass, edit)).toList();
      List<String> notes =
          schedule.notes().stream().map(note -> Spans.edit(note, glass, edit)).toList();
      return new ScheduleFile(path, sheet, schedule.withRows(rows).withNotes(notes));
    }

    @Override
    public List<String> words() {
      Stream<String> rows = schedule.rows().stream().map(row -> String.join(" | ", row));
      return Stream.concat(rows, schedule.notes().stream().map(Spans::strip)).toList();
    }

    ScheduleFile with(Schedule other) {
      return new ScheduleFile(path, sheet, other);
    }
  }

  /** A section of a specification. */
  record SectionFile(String path, Outline outline) implements DraftFile {
    @Override
    public byte[] render() {
      return Rendering.outline(Clauses.stripped(outline), path);
    }

    @Override
    public DraftFile edit(Set<String> glass, UnaryOperator<Statement> edit) {
      return with(Clauses.edit(outline, glass, edit));
    }

    @Override
    public List<String> words() {
      return Clauses.words(outline);
    }

    SectionFile with(Outline other) {
      return new SectionFile(path, other);
    }
  }

  /** Notes on a drawing sheet. */
  record NotesFile(String path, Outline outline) implements DraftFile {
    @Override
    public byte[] render() {
      return Rendering.outline(Clauses.stripped(outline), path);
    }

    @Override
    public DraftFile edit(Set<String> glass, UnaryOperator<Statement> edit) {
      return with(Clauses.edit(outline, glass, edit));
    }

    @Override
    public List<String> words() {
      return Clauses.words(outline);
    }

    NotesFile with(Outline other) {
      return new NotesFile(path, other);
    }
  }

  /**
   * A file in a format that nothing here writes, kept as bytes. No operator edits it.
   *
   * @param source the words it was made of
   */
  record FrozenFile(String path, byte[] render, Outline source) implements DraftFile {
    @Override
    public DraftFile edit(Set<String> glass, UnaryOperator<Statement> edit) {
      return this;
    }

    @Override
    public List<String> words() {
      return Clauses.words(source);
    }
  }
}
