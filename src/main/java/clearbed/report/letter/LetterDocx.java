package clearbed.report.letter;

import clearbed.base.io.AtomicFile;
import clearbed.base.io.FixedZip;
import clearbed.base.io.TemporaryFolder;
import clearbed.mark.LetterWords;
import clearbed.mark.OutputKind;
import clearbed.mark.PackageMark;
import clearbed.model.report.ProjectNames;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.SafeText;
import clearbed.report.workbook.cell.Styles;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigInteger;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.apache.poi.wp.usermodel.HeaderFooterType;
import org.apache.poi.xwpf.usermodel.ParagraphAlignment;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFStyle;
import org.apache.poi.xwpf.usermodel.XWPFStyles;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.apache.poi.xwpf.usermodel.XWPFTableRow;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTFonts;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTStyle;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STStyleType;

/** Questions as a Word file, ready to send. */
public final class LetterDocx {
  private static final String FACE = "Arial";
  private static final String TITLE = "Title";
  private static final String GROUP = "Heading1";
  private static final String QUESTION = "Heading2";

  /** Twentieths of a point: room for three lines. */
  private static final int ROOM = 900;

  private static final int HEAD_STOP = 1100;

  private final XWPFDocument word;

  private LetterDocx(XWPFDocument word) {
    this.word = word;
  }

  /**
   * Writes the file whole or not at all; the same letter gives the same bytes.
   *
   * @throws IOException with one line that names the file and the reason
   */
  public static void write(Letter letter, Path file) throws IOException {
    AtomicFile.write(file, out -> write(letter, out));
  }

  private static void write(Letter letter, OutputStream out) throws IOException {
    try (TemporaryFolder folder = new TemporaryFolder();
        XWPFDocument word = new XWPFDocument()) {
      new LetterDocx(word).fill(letter);
      Path raw = folder.newFile("docx");
      try (OutputStream to = Files.newOutputStream(raw)) {
        word.write(to);
      }
      FixedZip.copy(raw, out, new PackageMark());
    }
  }

  private void fill(Letter letter) {
    properties(letter);
    XWPFStyles styles = word.createStyles();
    CTFonts fonts = CTFonts.Factory.newInstance();
    fonts.setAscii(FACE);
    fonts.setHAnsi(FACE);
    styles.setDefaultFonts(fonts);
    styles.addStyle(style(TITLE, "Title", -1, 32));
    styles.addStyle(style(GROUP, "heading 1", 0, 26));
    styles.addStyle(style(QUESTION, "heading 2", 1, 22));
    heading(TITLE, letter.title());
    letter.head().forEach(each -> head(each.getKey(), each.getValue()));
    word.getParagraphArray(word.getParagraphs().size() - 1).setSpacingAfter(240);
    paragraph("", letter.opening());
    paragraph("", Deferral.LINE);
    letter.byAddressee().forEach((who, questions) -> group(letter.over(who), questions));
    footer(letter);
  }

  /** Label and words at a common stop. */
  private void head(String label, String text) {
    if (text.isBlank()) return;
    XWPFParagraph paragraph = word.createParagraph();
    paragraph.setSpacingAfter(0);
    paragraph.setIndentationLeft(HEAD_STOP);
    paragraph.setIndentationHanging(HEAD_STOP);
    XWPFRun run = paragraph.createRun();
    run.setBold(true);
    run.setText(label + ":");
    run.addTab();
    write(paragraph.createRun(), text);
  }

  private void group(String who, List<Letter.Question> questions) {
    if (!who.isEmpty()) heading(GROUP, who);
    for (Letter.Question question : questions) {
      heading(QUESTION, question.heading());
      question(question.words());
      question.particulars().forEach(each -> paragraph(each.getKey(), each.getValue()));
      if (question.isAnswerable()) answer();
    }
  }

  private void heading(String style, String text) {
    XWPFParagraph paragraph = word.createParagraph();
    paragraph.setStyle(style);
    paragraph.setKeepNext(true);
    write(paragraph.createRun(), text);
  }

  private void paragraph(String label, String text) {
    if (text.isBlank()) return;
    XWPFParagraph paragraph = word.createParagraph();
    paragraph.setSpacingAfter(80);
    paragraph.setKeepNext(true);
    if (!label.isEmpty()) {
      XWPFRun run = paragraph.createRun();
      run.setBold(true);
      run.setText(label + ": ");
    }
    write(paragraph.createRun(), text);
  }

  private void question(String text) {
    XWPFParagraph paragraph = word.createParagraph();
    paragraph.setSpacingAfter(80);
    paragraph.setKeepNext(true);
    XWPFRun run = paragraph.createRun();
    run.setBold(true);
    write(run, text);
  }

  /** A box to write in, which grows. */
  private void answer() {
    XWPFTable box = word.createTable(1, 1);
    box.setWidth("100%");
    XWPFTableRow row = box.getRow(0);
    row.setHeight(ROOM);
    row.setCantSplitRow(true);
    XWPFParagraph paragraph = row.getCell(0).getParagraphArray(0);
    XWPFRun run = paragraph.createRun();
    run.setBold(true);
    run.setText(LetterWords.ANSWER + ": ");
  }

  private static void write(XWPFRun run, String text) {
    String[] lines = SafeText.xml(text).split("\n", -1);
    for (int i = 0; i < lines.length; i++) {
      if (i > 0) run.addBreak();
      run.setText(lines[i]);
    }
  }

  private void footer(Letter letter) {
    XWPFParagraph paragraph = word.createFooter(HeaderFooterType.DEFAULT).createParagraph();
    paragraph.setAlignment(ParagraphAlignment.RIGHT);
    String project = letter.names().project();
    String title = project.isEmpty() ? "" : SafeText.xml(project) + ", ";
    paragraph.createRun().setText(title + "page ");
    paragraph.getCTP().addNewFldSimple().setInstr("PAGE");
    paragraph.createRun().setText(" of ");
    paragraph.getCTP().addNewFldSimple().setInstr("NUMPAGES");
  }

  private static XWPFStyle style(String id, String name, int outline, int halfPoints) {
    CTStyle style = CTStyle.Factory.newInstance();
    style.setType(STStyleType.PARAGRAPH);
    style.setStyleId(id);
    style.addNewName().setVal(name);
    style.addNewQFormat();
    var paragraph = style.addNewPPr();
    paragraph.addNewKeepNext();
    var spacing = paragraph.addNewSpacing();
    spacing.setBefore(BigInteger.valueOf(240));
    spacing.setAfter(BigInteger.valueOf(120));
    if (outline >= 0) {
      paragraph.addNewOutlineLvl().setVal(BigInteger.valueOf(outline));
    }
    var run = style.addNewRPr();
    run.addNewB();
    run.addNewColor().setVal(Styles.BAND);
    run.addNewSz().setVal(BigInteger.valueOf(halfPoints));
    return new XWPFStyle(style);
  }

  private void properties(Letter letter) {
    var core = word.getProperties().getCoreProperties();
    core.setTitle(letter.title());
    core.setCreator("Clearbed");
    ProjectNames names = letter.names();
    if (!names.project().isEmpty()) core.setSubjectProperty(SafeText.xml(names.project()));
    if (!names.to().isEmpty()) core.setDescription(SafeText.xml("To " + names.to()));
    if (!names.from().isEmpty()) {
      word.getProperties()
          .getExtendedProperties()
          .getUnderlyingProperties()
          .setCompany(SafeText.xml(names.from()));
    }
    Optional<Date> issued = Optional.of(date(letter.issue()));
    core.setCreated(issued);
    core.getUnderlyingProperties().setModifiedProperty(issued);
    word.getProperties()
        .getExtendedProperties()
        .getUnderlyingProperties()
        .setApplication("Clearbed");
    PackageMark.announce(word.getProperties().getCustomProperties(), OutputKind.LETTER);
  }

  private static Date date(String issue) {
    try {
      return Date.from(LocalDate.parse(issue).atStartOfDay(ZoneOffset.UTC).toInstant());
    } catch (DateTimeParseException undated) {
      return new Date(0);
    }
  }
}
