package clearbed.read.pdf;

import clearbed.base.Cancellation;
import clearbed.read.layout.Line;
import clearbed.read.layout.Ruling;
import java.io.IOException;
import java.io.Writer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorProcessor;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Takes the letters and drawn lines off every page in one pass over its content. */
final class PdfPages extends PDFTextStripper {
  /** Text drawn as outlines takes very many strokes. */
  private static final int STROKES_OF_OUTLINED_TEXT = 2_000;

  private static final int NESTED_FORMS = 4;

  private final List<PdfPage> pages = new ArrayList<>();
  private final Map<COSDictionary, Integer> numbers = new IdentityHashMap<>();
  private final Map<Integer, Integer> repeats = new TreeMap<>();
  private final Map<Integer, List<Glyph>> byDirection = new TreeMap<>();
  private final PathRulings paths = new PathRulings();
  private PDRectangle box;

  PdfPages() throws IOException {
    for (String name : PathRulings.OPERATORS) addOperator(new PathOperator(name));
  }

  List<PdfPage> of(PDDocument pdf) throws IOException {
    writeText(pdf, Writer.nullWriter());
    return pages;
  }

  /** How many times more a page stands in the file, by its number. */
  Map<Integer, Integer> repeats() {
    return repeats;
  }

  @Override
  public void processPage(PDPage page) throws IOException {
    Cancellation.check();
    Integer before = numbers.putIfAbsent(page.getCOSObject(), getCurrentPageNo());
    if (before != null) {
      repeats.merge(before, 1, Integer::sum);
      return;
    }
    byDirection.clear();
    box = page.getCropBox();
    paths.start(box.getLowerLeftX(), box.getLowerLeftY());
    String fault = "";
    try {
      super.processPage(page);
    } catch (IOException | RuntimeException e) {
      fault = "damaged: it could not be read to its end";
    }
    pages.add(finished(page, fault));
  }

  @Override
  protected void writePage() {
    // The letters are gathered as they come; nothing is written.
  }

  @Override
  protected void processTextPosition(TextPosition t) {
    Cancellation.check();
    String text = t.getUnicode();
    if (text == null || text.isEmpty()) return;
    double size = Math.max(1, Math.abs(t.getFontSizeInPt()));
    double x = t.getXDirAdj();
    byDirection
        .computeIfAbsent(Math.round(t.getDir()), d -> new ArrayList<>())
        .add(
            new Glyph(
                text,
                x,
                x + t.getWidthDirAdj(),
                t.getYDirAdj(),
                size,
                Math.max(0, t.getWidthOfSpace()),
                isBold(t),
                false));
  }

  private static boolean isBold(TextPosition t) {
    String name = t.getFont() == null ? null : t.getFont().getName();
    return name != null && name.contains("Bold");
  }

  private PdfPage finished(PDPage page, String fault) {
    int main =
        byDirection.entrySet().stream()
            .max(Comparator.comparingInt(e -> e.getValue().size()))
            .map(Map.Entry::getKey)
            .orElse(0);
    List<Ruling> areas = PdfStrikes.areas(page);
    PdfStrikes strikes = strikes(main, areas);
    List<Ruling> rulings = strikes.rest();
    List<Line> lines = new Lines(rulings).of(strikes.glyphs());
    List<String> struck = new ArrayList<>(strikes.words());
    List<Line> turned = new ArrayList<>();
    for (int direction : byDirection.keySet()) {
      if (direction == main) continue;
      PdfStrikes aside = strikes(direction, areas);
      turned.addAll(new Lines(List.of()).of(aside.glyphs()));
      struck.addAll(aside.words());
    }
    boolean upright = main == 0 || main == 180;
    return new PdfPage(
        getCurrentPageNo(),
        upright ? box.getWidth() : box.getHeight(),
        upright ? box.getHeight() : box.getWidth(),
        lines,
        turned,
        rulings,
        struck,
        paths.strokes() > STROKES_OF_OUTLINED_TEXT || hasPicture(page.getResources(), 0),
        fault);
  }

  private PdfStrikes strikes(int direction, List<Ruling> areas) {
    float width = box.getWidth();
    float height = box.getHeight();
    return new PdfStrikes(
        byDirection.getOrDefault(direction, List.of()),
        paths.turned(direction, width, height),
        areas.stream().map(a -> PathRulings.turned(a, direction, width, height)).toList());
  }

  private static boolean hasPicture(PDResources resources, int depth) {
    if (resources == null || depth > NESTED_FORMS) return false;
    for (COSName name : resources.getXObjectNames()) {
      if (resources.isImageXObject(name)) return true;
      try {
        if (resources.getXObject(name) instanceof PDFormXObject form
            && hasPicture(form.getResources(), depth + 1)) {
          return true;
        }
      } catch (IOException e) {
        // A broken picture is a picture none the less.
        return true;
      }
    }
    return false;
  }

  /** Hands a path operator of the content on, with the coordinate system in force. */
  private final class PathOperator extends OperatorProcessor {
    private final String name;

    PathOperator(String name) {
      super(PdfPages.this);
      this.name = name;
    }

    @Override
    public void process(Operator operator, List<COSBase> operands) {
      Cancellation.check();
      paths.operator(name, operands, getGraphicsState().getCurrentTransformationMatrix());
    }

    @Override
    public String getName() {
      return name;
    }
  }
}
