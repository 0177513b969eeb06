package clearbed.samples;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigInteger;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.apache.poi.wp.usermodel.HeaderFooterType;
import org.apache.poi.xwpf.usermodel.ParagraphAlignment;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTPageMar;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTPageSz;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTSectPr;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STPageOrientation;

/** An outline, or a schedule, as a Word document. */
public final class WordFile {
  private static final Date WRITTEN = Date.from(Instant.parse("2026-01-15T09:00:00Z"));

  private WordFile() {}

  /** A section; its clauses are numbered by Word unless the outline asks for typed numbers. */
  public static byte[] section(Outline outline) {
    try (XWPFDocument document = new XWPFDocument()) {
      Numbering scheme = Numbering.of(outline);
      boolean typed = outline.about("numbers").equals("typed");
      BigInteger numbers = typed ? null : WordStyles.number(document, scheme);
      boolean byStyle = outline.about("numbers").equals("style");
      WordStyles.styles(document, byStyle ? numbers : null);
      heading(document, outline);
      List<String> labels = scheme.labels(outline.clauses());
      for (int i = 0; i < outline.clauses().size(); i++) {
        Clause clause = outline.clauses().get(i);
        if (clause.isTable()) table(document, clause.table());
        else
          paragraph(document, clause, scheme, typed ? labels.get(i) : "", byStyle ? null : numbers);
      }
      centred(document, "END OF SECTION " + outline.about("number"), false);
      margins(document, outline);
      return bytes(document);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** A schedule as one table on landscape pages. */
  public static byte[] schedule(Schedule schedule) {
    try (XWPFDocument document = new XWPFDocument()) {
      WordStyles.styles(document, null);
      for (String line : schedule.titles()) centred(document, line, true);
      table(document, Grid.of(schedule));
      for (String line : schedule.notes()) document.createParagraph().createRun().setText(line);
      landscape(document);
      return bytes(document);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  private static void heading(XWPFDocument document, Outline outline) {
    if (!outline.about("number").isEmpty()) {
      centred(document, "SECTION " + outline.about("number"), true);
    }
    centred(document, outline.about("title"), true);
    XWPFParagraph top = document.createHeader(HeaderFooterType.DEFAULT).createParagraph();
    top.createRun().setText(outline.about("project"));
    XWPFParagraph foot = document.createFooter(HeaderFooterType.DEFAULT).createParagraph();
    foot.setAlignment(ParagraphAlignment.RIGHT);
    String name = (outline.about("title") + "  " + outline.about("number")).strip();
    foot.createRun().setText(outline.about("date") + "    " + name + " - ");
    foot.getCTP().addNewFldSimple().setInstr("PAGE");
  }

  private static void centred(XWPFDocument document, String text, boolean bold) {
    XWPFParagraph paragraph = document.createParagraph();
    paragraph.setAlignment(ParagraphAlignment.CENTER);
    paragraph.setSpacingAfter(120);
    XWPFRun run = paragraph.createRun();
    run.setBold(bold);
    run.setText(text);
  }

  private static void paragraph(
      XWPFDocument document, Clause clause, Numbering scheme, String typed, BigInteger numbers) {
    XWPFParagraph paragraph = document.createParagraph();
    paragraph.setStyle(WordStyles.idOf(clause.depth()));
    if (numbers != null
        && scheme != Numbering.NONE
        && (scheme != Numbering.NOTES || clause.depth() > 1)) {
      paragraph.setNumID(numbers);
      paragraph.setNumILvl(BigInteger.valueOf(clause.depth()));
    }
    XWPFRun run = paragraph.createRun();
    if (!typed.isEmpty()) {
      run.setText(typed);
      if (clause.depth() == 0) run.setText(" ");
      else run.addTab();
    }
    run.setText(clause.text());
  }

  private static void table(XWPFDocument document, List<List<String>> rows) {
    XWPFTable table = document.createTable(rows.size(), rows.get(0).size());
    table.setWidth("100%");
    for (int r = 0; r < rows.size(); r++) {
      for (int c = 0; c < rows.get(r).size(); c++) {
        XWPFParagraph paragraph = table.getRow(r).getCell(c).getParagraphs().get(0);
        paragraph.setSpacingAfter(0);
        XWPFRun run = paragraph.createRun();
        run.setText(rows.get(r).get(c));
        run.setFontSize(9);
        run.setBold(r == 0);
      }
    }
    document.createParagraph().setSpacingAfter(60);
  }

  private static void margins(XWPFDocument document, Outline outline) {
    CTSectPr section = section(document);
    CTPageSz size = section.addNewPgSz();
    boolean metric = outline.about("paper").equals("a4");
    size.setW(BigInteger.valueOf(metric ? 11906 : 12240));
    size.setH(BigInteger.valueOf(metric ? 16838 : 15840));
    margin(section, 1440);
  }

  private static void landscape(XWPFDocument document) {
    CTSectPr section = section(document);
    CTPageSz size = section.addNewPgSz();
    size.setW(BigInteger.valueOf(24480));
    size.setH(BigInteger.valueOf(15840));
    size.setOrient(STPageOrientation.LANDSCAPE);
    margin(section, 720);
  }

  private static void margin(CTSectPr section, int twips) {
    CTPageMar margin = section.addNewPgMar();
    margin.setTop(BigInteger.valueOf(twips));
    margin.setBottom(BigInteger.valueOf(twips));
    margin.setLeft(BigInteger.valueOf(twips));
    margin.setRight(BigInteger.valueOf(twips));
    margin.setHeader(BigInteger.valueOf(720));
    margin.setFooter(BigInteger.valueOf(720));
    margin.setGutter(BigInteger.ZERO);
  }

  private static CTSectPr section(XWPFDocument document) {
    var body = document.getDocument().getBody();
    return body.isSetSectPr() ? body.getSectPr() : body.addNewSectPr();
  }

  private static byte[] bytes(XWPFDocument document) throws IOException {
    var properties = document.getProperties().getCoreProperties();
    properties.setCreated(Optional.of(WRITTEN));
    properties.setModified(Optional.of(WRITTEN));
    properties.setCreator("");
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    document.write(bytes);
    return FixedZip.normalise(bytes.toByteArray());
  }
}
