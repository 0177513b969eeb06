package clearbed.track;

import clearbed.samples.Clause;
import clearbed.samples.Outline;
import clearbed.samples.Schedule;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** What happens to documents between two issues and leaves the faults in them as they are. */
enum PaperEdit {
  /** A row of tile that is not glass, somewhere among its like. */
  INSERT_ROW_OF_OTHER_TILE {
    @Override
    Papers on(Papers papers, Random random) {
      return insertRow(papers, random, false, "CT-");
    }
  },
  /** A row of glass tile under a tag of its own. */
  INSERT_ROW_OF_GLASS_TILE {
    @Override
    Papers on(Papers papers, Random random) {
      return insertRow(papers, random, true, ADDED);
    }
  },
  DELETE_ROW_OF_OTHER_TILE {
    @Override
    Papers on(Papers papers, Random random) {
      return onSchedule(
          papers,
          random,
          schedule -> {
            List<List<String>> rows = new ArrayList<>(schedule.rows());
            List<Integer> other = rowsOf(schedule, row -> !glass(schedule, row));
            if (other.size() < 2) return schedule;
            rows.remove((int) pick(other, random));
            return schedule.withRows(rows);
          });
    }
  },
  /** Rows change places under their sub-heading. */
  SORT_ROWS {
    @Override
    Papers on(Papers papers, Random random) {
      return onSchedule(
          papers,
          random,
          schedule -> {
            List<List<String>> rows = new ArrayList<>(schedule.rows());
            for (int from = 0; from < rows.size(); from++) {
              int to = from;
              while (to < rows.size() && rows.get(to).size() > 1) to++;
              Collections.shuffle(rows.subList(from, to), random);
              from = to;
            }
            return schedule.withRows(rows);
          });
    }
  },
  RENAME_SHEET {
    @Override
    Papers on(Papers papers, Random random) {
      int index = pick(tables(papers), random);
      Papers.Table table = (Papers.Table) papers.papers().get(index);
      String name = pick(List.of("Tile", "Schedule of tile", "Sheet1", "Rev B"), random);
      return papers.replaced(index, new Papers.Table(table.path(), name, table.schedule()));
    }
  },
  /** Numbers of the paragraphs after it move on. */
  INSERT_PARAGRAPH {
    @Override
    Papers on(Papers papers, Random random) {
      return insertClause(
          papers,
          random,
          clause -> clause.depth() == 2 && !clause.isTable(),
          List.of(new Clause(2, pick(NEUTRAL, random), List.of())));
    }
  },
  /** Numbers of the articles after it move on. */
  INSERT_ARTICLE {
    @Override
    Papers on(Papers papers, Random random) {
      return insertClause(
          papers,
          random,
          clause -> clause.depth() == 1,
          List.of(
              new Clause(1, "COORDINATION", List.of()),
              new Clause(2, pick(NEUTRAL, random), List.of())));
    }
  },
  MOVE_FILE_TO_SUB_FOLDER {
    @Override
    Papers on(Papers papers, Random random) {
      int index = random.nextInt(papers.papers().size());
      Papers.Paper paper = papers.papers().get(index);
      String folder = pick(List.of("zz/", "drawings/", "0 issue B/", "a/b/"), random);
      return papers.replaced(index, paper.at(folder + paper.path()));
    }
  },
  EXPORT_SCHEDULE_ANEW {
    @Override
    Papers on(Papers papers, Random random) {
      int index = pick(tables(papers), random);
      boolean grouped = ((Papers.Table) papers.papers().get(index)).schedule().hasGroups();
      // The writer of OpenDocument sheets here has one line of header only.
      List<String> formats = grouped ? TABLE_FORMATS.subList(0, 4) : TABLE_FORMATS;
      return export(papers, index, random, formats);
    }
  },
  EXPORT_SECTION_ANEW {
    @Override
    Papers on(Papers papers, Random random) {
      List<Integer> sections =
          prose(papers).stream()
              .filter(
                  i -> ((Papers.Prose) papers.papers().get(i)).outline().about("sheet").isEmpty())
              .toList();
      return export(papers, pick(sections, random), random, SECTION_FORMATS);
    }
  },
  /** Columns under one heading stay together. */
  REORDER_COLUMNS {
    @Override
    Papers on(Papers papers, Random random) {
      return onSchedule(papers, random, schedule -> reordered(schedule, random));
    }
  },
  CHANGE_REMARKS {
    @Override
    Papers on(Papers papers, Random random) {
      return onSchedule(
          papers,
          random,
          schedule -> {
            int column = schedule.column("remarks");
            // A slope to the drain is a requirement; what takes it away does not leave the faults.
            int row =
                pick(rowsOf(schedule, cells -> !cells.get(column).startsWith("Slope")), random);
            List<List<String>> rows = new ArrayList<>(schedule.rows());
            List<String> cells = new ArrayList<>(rows.get(row));
            cells.set(column, pick(List.of("", "See elevation 4", "Level courses"), random));
            rows.set(row, cells);
            return schedule.withRows(rows);
          });
    }
  };

  private static final String ADDED = "GT-8";

  private static final List<String> NEUTRAL =
      List.of(
          "Coordinate deliveries with other trades.",
          "Keep access ways free at all times.",
          "Remove packaging from the site every week.");

  private static final List<String> TABLE_FORMATS = List.of("xlsx", "csv", "xls", "tsv", "ods");
  private static final List<String> SECTION_FORMATS = List.of("docx", "txt", "html", "rtf", "odt");

  /** True for the tag of a row of glass tile that an edit added. */
  static boolean isAdded(String tag) {
    return tag.matches(ADDED + "[0-9]{2}");
  }

  abstract Papers on(Papers papers, Random random);

  private static <T> T pick(List<T> from, Random random) {
    return from.get(random.nextInt(from.size()));
  }

  private static List<Integer> tables(Papers papers) {
    return IntStream.range(0, papers.papers().size())
        .filter(i -> papers.papers().get(i) instanceof Papers.Table)
        .boxed()
        .toList();
  }

  private static List<Integer> prose(Papers papers) {
    return IntStream.range(0, papers.papers().size())
        .filter(i -> papers.papers().get(i) instanceof Papers.Prose)
        .boxed()
        .toList();
  }

  private static boolean glass(Schedule schedule, List<String> row) {
    String material = row.get(schedule.column("tile.description"));
    return material.contains("glass") && !material.contains("block");
  }

  /** Rows of tile by their index; sub-headings are none. */
  private static List<Integer> rowsOf(Schedule schedule, Predicate<List<String>> which) {
    return IntStream.range(0, schedule.rows().size())
        .filter(i -> schedule.rows().get(i).size() > 1 && which.test(schedule.rows().get(i)))
        .boxed()
        .toList();
  }

  /** The tile schedule; the room schedule has rooms in its rows. */
  private static Papers onSchedule(
      Papers papers, Random random, java.util.function.UnaryOperator<Schedule> edit) {
    int index =
        tables(papers).stream()
            .filter(i -> ((Papers.Table) papers.papers().get(i)).schedule().column("tile.tag") >= 0)
            .findFirst()
            .orElseThrow();
    Papers.Table table = (Papers.Table) papers.papers().get(index);
    return papers.replaced(index, table.with(edit.apply(table.schedule())));
  }

  private static Papers insertRow(Papers papers, Random random, boolean glass, String prefix) {
    return onSchedule(
        papers,
        random,
        schedule -> {
          int tag = schedule.column("tile.tag");
          List<Integer> likes = rowsOf(schedule, row -> glass(schedule, row) == glass);
          int index = pick(likes, random);
          List<String> cells = new ArrayList<>(schedule.rows().get(index));
          cells.set(tag, prefix + (10 + random.nextInt(89)));
          List<List<String>> rows = new ArrayList<>(schedule.rows());
          if (rows.stream().anyMatch(row -> row.size() > 1 && row.get(tag).equals(cells.get(tag))))
            return schedule;
          rows.add(index + random.nextInt(2), cells);
          return schedule.withRows(rows);
        });
  }

  private static Papers insertClause(
      Papers papers, Random random, Predicate<Clause> before, List<Clause> added) {
    int index = pick(prose(papers), random);
    Papers.Prose paper = (Papers.Prose) papers.papers().get(index);
    List<Clause> clauses = new ArrayList<>(paper.outline().clauses());
    List<Integer> places =
        IntStream.range(0, clauses.size())
            .filter(i -> before.test(clauses.get(i)))
            .boxed()
            .toList();
    clauses.addAll(pick(places, random), added);
    Outline outline = paper.outline().withClauses(clauses);
    return papers.replaced(index, new Papers.Prose(paper.path(), outline));
  }

  private static Papers export(Papers papers, int index, Random random, List<String> formats) {
    Papers.Paper paper = papers.papers().get(index);
    String stem = paper.path().substring(0, paper.path().lastIndexOf('.') + 1);
    return papers.replaced(index, paper.at(stem + pick(formats, random)));
  }

  private static Schedule reordered(Schedule schedule, Random random) {
    List<List<Integer>> blocks = new ArrayList<>();
    for (int i = 0; i < schedule.columns().size(); i++) {
      String group = schedule.columns().get(i).group();
      boolean joins =
          i > 0 && !group.isEmpty() && group.equals(schedule.columns().get(i - 1).group());
      if (!joins) blocks.add(new ArrayList<>());
      blocks.get(blocks.size() - 1).add(i);
    }
    for (List<Integer> block : blocks) Collections.shuffle(block, random);
    Collections.shuffle(blocks, random);
    List<Integer> order = blocks.stream().flatMap(List::stream).toList();
    List<List<String>> rows =
        schedule.rows().stream()
            .map(row -> row.size() == 1 ? row : order.stream().map(row::get).toList())
            .toList();
    return schedule.withColumns(order.stream().map(schedule.columns()::get).toList(), rows);
  }
}
