package clearbed.track;

import clearbed.samples.Outline;
import clearbed.samples.Rendering;
import clearbed.samples.Schedule;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The documents of a project before they are written, so that they can still be edited. */
record Papers(List<Paper> papers) {
  Papers {
    papers = List.copyOf(papers);
  }

  /** One document. */
  sealed interface Paper {
    /** Under the folder of the set, {@code /} as separator; the ending tells the format. */
    String path();

    Paper at(String path);

    byte[] bytes();
  }

  record Table(String path, String sheet, Schedule schedule) implements Paper {
    @Override
    public Paper at(String other) {
      return new Table(other, sheet, schedule);
    }

    @Override
    public byte[] bytes() {
      return Rendering.schedule(schedule, sheet, path);
    }

    Table with(Schedule other) {
      return new Table(path, sheet, other);
    }
  }

  record Prose(String path, Outline outline) implements Paper {
    @Override
    public Paper at(String other) {
      return new Prose(other, outline);
    }

    @Override
    public byte[] bytes() {
      return Rendering.outline(outline, path);
    }
  }

  /** The draft of the sample projects: one schedule in tables, sections, notes on a drawing. */
  static Papers sample() {
    return new Papers(
        List.of(
            table("A-651-tile-schedule.xlsx", "Tile Schedule", "samples/draft/tile-schedule"),
            table("A-652-room-finish-schedule.csv", "Rooms", "samples/draft/room-finishes"),
            prose("A-650-interior-finish-notes.pdf", "samples/draft/finish-notes"),
            prose("09-30-00-tiling.docx", "samples/draft/tiling"),
            prose("07-92-00-joint-sealants.txt", "samples/draft/joint-sealants")));
  }

  /** Faults that look alike: two rows, two clauses, two sections with the same one. */
  static Papers twins() {
    return new Papers(
        List.of(
            table("F-1 finishes.xlsx", "Finishes", "ids/finishes"),
            prose("09 30 00 Tiling.docx", "ids/tiling"),
            prose("07 92 00 Joint Sealants.docx", "ids/sealants"),
            prose("A-601 Finish Notes.pdf", "ids/notes")));
  }

  private static Table table(String path, String sheet, String resource) {
    return new Table(path, sheet, Schedule.parse(text(resource + ".sheet")));
  }

  private static Prose prose(String path, String resource) {
    return new Prose(path, Outline.parse(text(resource + ".outline")));
  }

  private static String text(String resource) {
    try (InputStream in = Papers.class.getResourceAsStream("/" + resource)) {
      if (in == null) throw new IllegalStateException("no resource " + resource);
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException wrong) {
      throw new UncheckedIOException(wrong);
    }
  }

  Papers replaced(int index, Paper paper) {
    List<Paper> all = new ArrayList<>(papers);
    all.set(index, paper);
    return new Papers(all);
  }

  void write(Path folder) throws IOException {
    for (Paper paper : papers) {
      Path file = folder.resolve(paper.path());
      Files.createDirectories(file.getParent());
      Files.write(file, paper.bytes());
    }
  }
}
