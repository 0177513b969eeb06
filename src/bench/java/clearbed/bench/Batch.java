package clearbed.bench;

import clearbed.samples.Clause;
import clearbed.samples.Outline;
import clearbed.samples.Rendering;
import clearbed.samples.Schedule;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * An archive of one project in all formats that are read: schedules, sections and notes from issue
 * to issue, amid letters and minutes. The same seed gives the same files.
 */
final class Batch {
  /** Of a hundred files, so many of each format; what they hold is drawn apart from that. */
  private static final List<String> FORMATS =
      formats("xlsx 24 csv 14 docx 16 pdf 14 txt 14 xls 6 rtf 4 html 3 odt 3 ods 2");

  /** Tags go round, as they do from issue to issue. */
  private static final int TAGS = 60;

  private static final Path SOURCES = Path.of("src/test/resources/samples/draft");
  private static final List<String> WORDS =
      List.of(
          ("the contractor architect owner meeting schedule delivery door frame paint ceiling floor"
                  + " wall light drawing revised issued noted agreed week site access crane concrete"
                  + " steel duct pump tender price allowance programme survey level grid stair lift"
                  + " roof drain window order sample approved returned pending see attached and of to"
                  + " for with by on at in is was will be are")
              .split(" "));

  private final Random random;
  private final Schedule tiles;
  private final Schedule rooms;
  private final Outline tiling;
  private final Outline sealants;
  private final Outline notes;

  Batch(long seed) throws IOException {
    random = new Random(seed);
    tiles = Schedule.parse(source("tile-schedule.sheet"));
    rooms = Schedule.parse(source("room-finishes.sheet"));
    tiling = Outline.parse(source("tiling.outline"));
    sealants = Outline.parse(source("joint-sealants.outline"));
    notes = Outline.parse(source("finish-notes.outline"));
  }

  private static String source(String name) throws IOException {
    return Files.readString(SOURCES.resolve(name));
  }

  private static List<String> formats(String shares) {
    List<String> out = new ArrayList<>();
    String[] words = shares.split(" ");
    for (int i = 0; i < words.length; i += 2) {
      for (int n = Integer.parseInt(words[i + 1]); n > 0; n--) out.add(words[i]);
    }
    return out;
  }

  /** Writes so many files into the folder, a hundred to a subfolder. */
  void write(Path folder, int files) throws IOException {
    for (int i = 0; i < files; i++) {
      String format = FORMATS.get(random.nextInt(FORMATS.size()));
      String name = String.format(Locale.ROOT, "issue-%03d/document-%05d.%s", i / 100, i, format);
      Path file = folder.resolve(name);
      Files.createDirectories(file.getParent());
      Files.write(file, document(format, file.getFileName().toString()));
    }
  }

  private byte[] document(String format, String name) {
    boolean table = List.of("xlsx", "xls", "csv", "ods").contains(format);
    boolean aside = random.nextInt(100) < 40;
    if (table) {
      Schedule schedule =
          aside ? quantities(20 + random.nextInt(200)) : tileSchedule(10 + random.nextInt(90));
      return Rendering.schedule(random.nextInt(5) == 0 ? rooms : schedule, "Sheet 1", name);
    }
    return Rendering.outline(aside ? letter(5 + random.nextInt(60)) : specified(), name);
  }

  private Outline specified() {
    return switch (random.nextInt(4)) {
      case 0 -> tiling;
      case 1 -> sealants;
      default -> notes;
    };
  }

  /** A tile schedule of so many rows. */
  Schedule tileSchedule(int rows) {
    return tiles.withRows(rows(rows, TAGS));
  }

  /** Rows of the sample under new tags, and of new sizes, so that no two are equal. */
  private List<List<String>> rows(int count, int tags) {
    List<List<String>> samples = tiles.rows().stream().filter(row -> row.size() > 1).toList();
    int tag = tiles.column("tag");
    List<List<String>> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      List<String> row = new ArrayList<>(samples.get(random.nextInt(samples.size())));
      int number = 1 + (count > tags ? i % tags : random.nextInt(tags));
      row.set(tag < 0 ? 0 : tag, row.get(tag < 0 ? 0 : tag).replaceAll("\\d+", "" + number));
      out.add(row);
    }
    return out;
  }

  private Schedule quantities(int rows) {
    List<Schedule.Column> columns = new ArrayList<>();
    for (String heading : List.of("Item", "Description", "Unit", "Quantity", "Rate", "Remark")) {
      columns.add(new Schedule.Column("", "", heading, 14));
    }
    List<List<String>> cells = new ArrayList<>();
    for (int i = 0; i < rows; i++) {
      String number = String.valueOf(1 + random.nextInt(900));
      cells.add(List.of("" + i, words(6), "each", number, number + ".50", words(3)));
    }
    return new Schedule(List.of("BILL OF QUANTITIES"), columns, cells, List.of());
  }

  private Outline letter(int paragraphs) {
    List<Clause> clauses = new ArrayList<>();
    clauses.add(new Clause(1, "MINUTES", List.of()));
    for (int i = 0; i < paragraphs; i++) clauses.add(new Clause(2, words(30) + ".", List.of()));
    return notes.withClauses(clauses);
  }

  private String words(int count) {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < count; i++) {
      if (i > 0) out.append(' ');
      out.append(WORDS.get(random.nextInt(WORDS.size())));
    }
    return out.toString();
  }

  /** One schedule whose every row is a tile of its own, as CSV. */
  void writeLong(Path file, int rows) throws IOException {
    Files.createDirectories(file.getParent());
    Schedule schedule = tiles.withRows(rows(rows, Integer.MAX_VALUE - 1)).withNotes(List.of());
    Files.write(
        file, Rendering.schedule(numbered(schedule), "Tile", file.getFileName().toString()));
  }

  private Schedule numbered(Schedule schedule) {
    int tag = Math.max(0, schedule.column("tag"));
    List<List<String>> out = new ArrayList<>();
    for (List<String> row : schedule.rows()) {
      List<String> own = new ArrayList<>(row);
      own.set(tag, row.get(tag).replaceAll("\\d+", "") + (out.size() + 1));
      out.add(own);
    }
    return schedule.withRows(out);
  }
}
