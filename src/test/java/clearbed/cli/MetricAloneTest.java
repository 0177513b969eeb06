package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.check.Checker;
import clearbed.check.rules.Rule;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Who reads what comes of the ISO and EN rules finds metric figures and no American standard. The
 * documents here have neither inches nor such standards, so that whatever is found is ours.
 */
class MetricAloneTest {
  private static final Pattern AMERICAN =
      Pattern.compile(
          "\\bANSI\\b|\\bASTM\\b|\\bTCNA\\b|\\bTCA\\b|\\bEJ ?171\\b|\\bA1[0-4]\\d\\.\\d|\\bA326|\\bC920\\b|\\bC1472\\b|\\bOSHA\\b"
              + "|\\bDCOF\\b|\\bpsi\\b|\\binch(?:es)?\\b|\\d ?feet\\b|°F|\\bperms?\\b|\\bsq ft\\b|\\bgal\\b|\\blbs?\\b"
              + "|(?<![\\w-])[\\d./]+ ?(?:in|ft)\\b(?! \\d)|^(?:in|ft|gal|lb)$",
          Pattern.MULTILINE);

  private static final String SCHEDULE =
      """
      Ref,Material,Room,Surface,Exposure,Size,Area,Joint,Substrate,Backing,Translucency,Mounting
      GM1,Glass mosaic,Communal showers,Floor,Wet,20 x 20 mm,40 m2,2 mm,Screed on concrete slab,None,Opaque,Mesh backed
      GM2,Glass tile,Foyer,Wall,Dry,300 x 600 mm,25 m2,2 mm,Gypsum board,Painted,Translucent,Loose
      GM3,Glass mosaic,Terrace,Floor,"External, frost",48 x 48 mm,60 m2,1 mm,Concrete,None,Opaque,Paper faced
      GM4,Glass mosaic,Pool,Floor and walls,Submerged,25 x 25 mm,120 m2,2 mm,Concrete,None,Opaque,Paper faced
      GM5,Glass mosaic,Steam bath,Walls,Steam,25 x 25 mm,30 m2,2 mm,Render,None,Transparent,Mesh backed
      GM6,Glass tile,Pool steps,Steps,Wet,48 x 48 mm,,2 mm,Concrete,None,Opaque,Loose
      """;

  private static final String SECTION =
      """
      TILING

      1 MATERIALS
      Adhesive: GM1: C2TE to EN 12004-1. GM2: C1 to EN 12004-1, cementitious. GM3: C2 to EN 12004:2007.
      Tensile adhesion: not less than 0.5 N/mm2.
      Grout: CG1 to EN 13888, sanded; the size variation of the tile is 1.5 mm.
      Membrane: to EN 14891 behind GM1, GM4 and GM5.
      Slip resistance: GM1: R10. GM3: R10 to EN 16165.
      2 WORK
      Flatness of backgrounds: 8 mm under a 2 m straightedge. Deflection not more than L/240.
      Movement joints: 4 mm wide at 9 m centres, sealant 2 mm deep, class 12.5.
      Tile surface temperature: -10 to 50 °C. Fix tile above 0 °C. Clean with hydrochloric acid.
      """;

  @TempDir Path folder;

  @Test
  void no_text_of_a_rule_speaks_american() throws IOException {
    List<String> texts = new ArrayList<>();
    for (Rule rule : Checker.ruleSets(Checked.vocabulary()).load("iso-en", List.of()).rules()) {
      if (rule.off()) continue;
      Rule.RuleWording w = rule.wording();
      Stream.of(
              rule.title(),
              w.missing(),
              w.inadequate(),
              w.expected().isEmpty() ? rule.expectation().words() : w.expected(),
              w.why(),
              w.source(),
              w.question(),
              w.clause(),
              w.answer(),
              rule.mistaken() == null ? "" : rule.mistaken().message())
          .forEach(text -> texts.add(rule.id() + ": " + text));
    }
    assertThat(texts).hasSizeGreaterThan(500);
    assertThat(american(texts.stream())).isEmpty();
  }

  @Test
  void neither_the_workbook_nor_the_letter_speaks_american() throws Exception {
    Path documents = Files.createDirectory(folder.resolve("tender"));
    Files.writeString(documents.resolve("schedule.csv"), SCHEDULE);
    Files.writeString(documents.resolve("09 30 00 Tiling.txt"), SECTION);
    Path workbook = folder.resolve("findings.xlsx");
    Path json = folder.resolve("findings.json");
    Shell check =
        Shell.run("check", documents, "-o", workbook, "--json", json, "--fail-on", "never");
    assertThat(check.out()).contains("Rules: iso-en, chosen");
    List<String> ours = strings(workbook);
    assertThat(ours).hasSizeGreaterThan(1000);
    // All that is computed is among it.
    assertThat(String.join("\n", ours))
        .contains("Evenness of the substrate")
        .contains("Width of a movement joint")
        .contains("Depth of sealant in a joint")
        .contains("Deflection of the substrate")
        .contains("Width of grout joints")
        .contains("Bags of mortar");
    assertThat(american(ours.stream())).isEmpty();
    assertThat(american(Files.readString(json).lines())).isEmpty();
    Shell letter = Shell.run("questions", workbook);
    assertThat(letter.out().lines()).hasSizeGreaterThan(50);
    assertThat(american(letter.out().lines())).isEmpty();
  }

  private static List<String> american(Stream<String> texts) {
    return texts.filter(AMERICAN.asPredicate()).toList();
  }

  /** Every text of every sheet. */
  private static List<String> strings(Path file) throws IOException {
    List<String> out = new ArrayList<>();
    try (InputStream in = Files.newInputStream(file);
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      for (Sheet sheet : book) {
        for (Row row : sheet) {
          for (Cell cell : row) {
            boolean text =
                cell.getCellType() == CellType.STRING
                    || cell.getCellType() == CellType.FORMULA
                        && cell.getCachedFormulaResultType() == CellType.STRING;
            if (text && !cell.getStringCellValue().isEmpty()) out.add(cell.getStringCellValue());
          }
        }
      }
    }
    return out;
  }
}
