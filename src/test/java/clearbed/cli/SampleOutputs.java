package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.read.ReadAll;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;

/**
 * The sample project with every output of it.
 *
 * @param folder with the documents in {@code documents} and the outputs beside them
 */
record SampleOutputs(Path folder) {
  static final String OWN = "own output, not read";

  static SampleOutputs in(Path folder) throws IOException {
    Path documents = copied(Path.of("sample-specs/draft"), folder.resolve("documents"));
    Path log = folder.resolve("log.xlsx");
    Shell shell =
        Shell.run(
            "check",
            documents,
            "--quiet",
            "-o",
            log,
            "--json",
            folder.resolve("f.json"),
            "--sarif",
            folder.resolve("f.sarif"),
            "--annotate",
            folder.resolve("marked"));
    assertThat(shell.code()).as(shell.err()).isEqualTo(1);
    assertThat(Shell.run("questions", log, "-o", folder.resolve("q.docx")).code()).isZero();
    assertThat(Shell.run("questions", log, "-o", folder.resolve("q.md")).code()).isZero();
    Files.writeString(folder.resolve("q.txt"), Shell.run("questions", log).out());
    return new SampleOutputs(folder);
  }

  static Path copied(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path each : all.toList()) {
        Path target = to.resolve(from.relativize(each).toString());
        if (Files.isDirectory(each)) Files.createDirectories(target);
        else Files.copy(each, target);
      }
    }
    return to;
  }

  /** Puts one of the files into a folder. */
  Path put(String file, Path into) throws IOException {
    return Files.copy(folder.resolve(file), into.resolve(Path.of(file).getFileName()));
  }

  Document original(String name) {
    return all(folder.resolve("documents").resolve(name)).get(0);
  }

  static List<Document> all(Path path) {
    return ReadAll.of(path);
  }

  /** One of the documents of a folder. */
  static Document read(Path folder, String name) {
    return all(folder).stream().filter(d -> d.path().equals(name)).findFirst().orElseThrow();
  }

  static void assertOwn(Document document) {
    assertThat(document.status()).as(document.path()).isEqualTo(Status.IGNORED);
    assertThat(document.reason()).startsWith(OWN);
  }

  static void schedule(Sheet sheet) {
    String[][] rows = {
      {"Tag", "Material", "Mortar"}, {"GT-1", "Glass tile, translucent", "ANSI A118.1"}
    };
    for (int r = 0; r < rows.length; r++) {
      Row row = sheet.createRow(r);
      for (int c = 0; c < rows[r].length; c++) row.createCell(c).setCellValue(rows[r][c]);
    }
  }

  static void save(Workbook book, Path file) throws IOException {
    try (OutputStream out = Files.newOutputStream(file)) {
      book.write(out);
    }
  }

  static List<String> texts(Document document) {
    List<String> texts = new ArrayList<>();
    for (Block block : document.blocks()) {
      if (block instanceof Paragraph paragraph) texts.add(paragraph.text());
    }
    cells(document).forEach(cell -> texts.add(cell.text()));
    return texts;
  }

  static List<String> remarks(Document document) {
    return cells(document).stream().map(Table.Cell::remark).filter(r -> !r.isEmpty()).toList();
  }

  private static List<Table.Cell> cells(Document document) {
    List<Table.Cell> cells = new ArrayList<>();
    for (Block block : document.blocks()) {
      if (!(block instanceof Table table)) continue;
      for (Table.Row row : table.rows()) cells.addAll(row.cells());
    }
    return cells;
  }
}
