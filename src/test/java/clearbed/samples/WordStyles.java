package clearbed.samples;

import java.math.BigInteger;
import org.apache.poi.xwpf.usermodel.XWPFAbstractNum;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFNumbering;
import org.apache.poi.xwpf.usermodel.XWPFStyle;
import org.apache.poi.xwpf.usermodel.XWPFStyles;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTAbstractNum;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTLvl;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTNumPr;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTPPrGeneral;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTRPr;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTStyle;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STNumberFormat;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STStyleType;

/** The paragraph styles and the multilevel numbering of a section. */
final class WordStyles {
  private static final int LEVELS = 6;

  private WordStyles() {}

  /** Style of a clause: built-in headings for parts and articles, list styles below. */
  static String idOf(int depth) {
    return depth < 2 ? "Heading" + (depth + 1) : "Clause" + (depth - 1);
  }

  /** Adds a multilevel numbering and gives its id. */
  static BigInteger number(XWPFDocument document, Numbering scheme) {
    CTAbstractNum levels = CTAbstractNum.Factory.newInstance();
    levels.setAbstractNumId(BigInteger.ONE);
    for (int depth = 0; depth < LEVELS; depth++) level(levels.addNewLvl(), depth, scheme);
    XWPFNumbering numbering = document.createNumbering();
    return numbering.addNum(numbering.addAbstractNum(new XWPFAbstractNum(levels)));
  }

  private static void level(CTLvl level, int depth, Numbering scheme) {
    level.setIlvl(BigInteger.valueOf(depth));
    level.addNewStart().setVal(BigInteger.ONE);
    level.addNewNumFmt().setVal(format(depth, scheme));
    level.addNewPStyle().setVal(idOf(depth));
    level.addNewLvlText().setVal(text(depth, scheme));
    var indent = level.addNewPPr().addNewInd();
    int left = depth < 2 ? 0 : 540 * (depth - 1);
    indent.setLeft(BigInteger.valueOf(depth < 2 ? 720 : left + 360));
    indent.setHanging(BigInteger.valueOf(depth < 2 ? 720 : 450));
  }

  private static STNumberFormat.Enum format(int depth, Numbering scheme) {
    if (scheme == Numbering.DECIMAL || depth < 2) return STNumberFormat.DECIMAL;
    if (scheme == Numbering.NOTES) {
      return depth == 2 ? STNumberFormat.DECIMAL : STNumberFormat.LOWER_LETTER;
    }
    if (depth == 2) return STNumberFormat.UPPER_LETTER;
    return depth == 3 ? STNumberFormat.DECIMAL : STNumberFormat.LOWER_LETTER;
  }

  private static String text(int depth, Numbering scheme) {
    if (scheme == Numbering.DECIMAL) {
      StringBuilder out = new StringBuilder("%1");
      for (int level = 1; level <= depth; level++) out.append(".%").append(level + 1);
      return out.toString();
    }
    return switch (depth) {
      case 0 -> "PART %1 -";
      case 1 -> "%1.%2";
      default -> "%" + (depth + 1) + ".";
    };
  }

  /**
   * Adds the styles; with a numbering id they carry the numbers, so that paragraphs need not.
   *
   * @param numbers id of the numbering, or null
   */
  static void styles(XWPFDocument document, BigInteger numbers) {
    XWPFStyles styles = document.createStyles();
    styles.addStyle(new XWPFStyle(style("Normal", "Normal", false, 0)));
    for (int depth = 0; depth < LEVELS; depth++) {
      String name = depth < 2 ? "heading " + (depth + 1) : "Clause " + (depth - 1);
      CTStyle style = style(idOf(depth), name, depth < 2, depth < 2 ? 240 : 60);
      style.addNewBasedOn().setVal("Normal");
      if (depth < 2) style.getPPr().addNewOutlineLvl().setVal(BigInteger.valueOf(depth));
      if (numbers != null) numbered(style.getPPr(), numbers, depth);
      styles.addStyle(new XWPFStyle(style));
    }
  }

  private static void numbered(CTPPrGeneral properties, BigInteger numbers, int depth) {
    CTNumPr number = properties.addNewNumPr();
    if (depth > 0) number.addNewIlvl().setVal(BigInteger.valueOf(depth));
    number.addNewNumId().setVal(numbers);
  }

  private static CTStyle style(String id, String name, boolean bold, int before) {
    CTStyle style = CTStyle.Factory.newInstance();
    style.setStyleId(id);
    style.setType(STStyleType.PARAGRAPH);
    if (id.equals("Normal")) style.setDefault(true);
    style.addNewName().setVal(name);
    style.addNewQFormat();
    var spacing = style.addNewPPr().addNewSpacing();
    spacing.setBefore(BigInteger.valueOf(before));
    spacing.setAfter(BigInteger.valueOf(40));
    CTRPr run = style.addNewRPr();
    var fonts = run.addNewRFonts();
    fonts.setAscii("Arial");
    fonts.setHAnsi("Arial");
    if (bold) run.addNewB();
    run.addNewSz().setVal(BigInteger.valueOf(20));
    return style;
  }
}
