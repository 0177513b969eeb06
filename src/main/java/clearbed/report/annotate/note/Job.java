package clearbed.report.annotate.note;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * One document to be copied and marked.
 *
 * @param document its path in the report
 * @param source the file on disk; only ever read
 * @param notes what to write, in the order of the report
 * @param date that the marks bear
 * @param surroundings words that stand near a place, by place
 * @param shortfalls takes what could not be marked as it should
 * @param listed gathers the notes that the copy cannot hold, for a list beside it
 */
public record Job(
    String document,
    Path source,
    List<FindingNote> notes,
    Instant date,
    NearbyWords surroundings,
    Consumer<Shortfall> shortfalls,
    List<FindingNote> listed) {

  public Job {
    notes = List.copyOf(notes);
    listed = new ArrayList<>(listed);
  }

  /** The note is in the copy, but not quite where it belongs. */
  public void near(FindingNote note, String reason) {
    shortfalls.accept(shortfall(note, true, reason));
  }

  /** The copy cannot hold the note: it goes to the list beside it. */
  public void list(FindingNote note, String reason) {
    listed.add(note);
    shortfalls.accept(shortfall(note, false, reason));
  }

  public static Shortfall shortfall(FindingNote note, boolean marked, String reason) {
    return new Shortfall(note.finding().id(), note.place(), marked, reason);
  }
}
