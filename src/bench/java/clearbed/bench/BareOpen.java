package clearbed.bench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.xwpf.extractor.XWPFWordExtractor;
import org.apache.poi.xwpf.usermodel.XWPFDocument;

/** The least that a program with the same libraries can do: open each file and take its text. */
public final class BareOpen {
  private BareOpen() {}

  public static void main(String[] args) throws Exception {
    java.util.logging.LogManager.getLogManager().reset();
    long characters = 0;
    for (Path file : files(Path.of(args[1]))) {
      characters += args[0].equals("tika") ? BareTika.characters(file) : byLibrary(file);
    }
    System.out.println(characters);
    System.out.flush();
    Runtime.getRuntime().halt(0);
  }

  static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).sorted().collect(Collectors.toList());
    }
  }

  /** POI and PDFBox by name, without Tika's detection and service loading. */
  private static long byLibrary(Path file) throws IOException {
    String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
    switch (name.substring(name.lastIndexOf('.') + 1)) {
      case "xlsx", "xls":
        return cells(file);
      case "docx":
        try (InputStream in = Files.newInputStream(file);
            XWPFWordExtractor text = new XWPFWordExtractor(new XWPFDocument(in))) {
          return text.getText().length();
        }
      case "pdf":
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
          return new PDFTextStripper().getText(document).length();
        }
      default:
        return Files.readString(file).length();
    }
  }

  private static long cells(Path file) throws IOException {
    try (Workbook workbook = WorkbookFactory.create(file.toFile(), null, true)) {
      long characters = 0;
      for (var sheet : workbook) {
        for (var row : sheet) {
          for (var cell : row) characters += cell.toString().length();
        }
      }
      return characters;
    }
  }
}
