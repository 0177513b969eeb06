package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.value.Unit;
import clearbed.recognise.schedule.cell.CellFigures;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text that nobody would write: nothing is thrown at it, and it takes no more than its length. */
class HostileTextTest {
  /** About the longest that a cell of a workbook can hold. */
  private static final int LONG = 32_000;

  private static final Recogniser RECOGNISER = new Recogniser(vocabulary());

  private static Vocabulary vocabulary() {
    try {
      return Vocabulary.standard();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static final String[] PIECES = {
    "0",
    "1",
    "9",
    "16",
    "400",
    "1e9",
    "-",
    "\u2013",
    "/",
    "\"",
    "'",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "<",
    ".",
    ",",
    ";",
    ":",
    "%",
    "\u00b0",
    "\u00bd",
    "\u2153",
    "\u00d7",
    "x",
    " ",
    "\t",
    "\n",
    "\u00a0",
    "\u0000",
    "\ud800",
    "\udc00",
    "\u202e",
    "in",
    "ft",
    "mm",
    "psi",
    "MPa",
    "\u00b0F",
    "ANSI",
    "ASTM",
    "ISO",
    "EN",
    "A118",
    "A118.",
    "A118.15",
    "C920",
    "13007",
    "Section",
    "09 30 00",
    "1.1",
    "2.3",
    "A.",
    "1.",
    "a)",
    "PART",
    "TBD",
    "verify",
    "except",
    "not",
    "or",
    "and",
    "to",
    "GT-",
    "GT-1",
    "glass",
    "tile",
    "mortar",
    "at least",
    "minimum",
    "between",
    "99999999999999999"
  };

  @Property(tries = 1500)
  void figuresAreFoundOrNotButNothingIsThrown(@ForAll("texts") String text) {
    assertThat(Quantities.find(text)).isNotNull();
    assertThat(Quantities.size(text, null)).isNotNull();
    Quantities.unitOfHeader(text);
  }

  @Property(tries = 1500)
  void citationsAreFoundOrNotButNothingIsThrown(@ForAll("texts") String text) {
    assertThat(Citations.find(text)).isNotNull();
  }

  @Property(tries = 400)
  void documentsOfNonsenseHaveFactsOrNoneButNothingIsThrown(@ForAll("blocks") List<String> texts) {
    assertThat(RECOGNISER.recognise(document(texts))).isNotNull();
  }

  @Property(tries = 400)
  void cellsOfNonsenseStateFiguresOrNoneButNothingIsThrown(@ForAll("texts") String text) {
    for (String heading : List.of("Area (sq ft)", "Size (mm)", "Mortar coverage"))
      assertThat(FigureCellsTest.read("csv", heading, List.of(text))).isNotNull();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1",
        "1 ",
        "1/",
        "1 1/2 ",
        "1-",
        "- ",
        " ",
        "1,",
        "1.",
        "(",
        "((1",
        "[",
        "[1]",
        "] ",
        "/",
        "1 x ",
        "1\" x ",
        "1'-",
        "\u00bd",
        "1 to ",
        "1 in ",
        "1 psi (",
        "A118.",
        "ANSI A",
        "ANSI ",
        "ASTM C920, ",
        "GT-1, ",
        "GT-1 to ",
        "GT-",
        "1.1 ",
        "A. ",
        "a",
        "a ",
        "a-",
        "a, ",
        "a and ",
        "not ",
        "except ",
        "at least ",
        ". ",
        "\n",
        "\t",
        "TBD ",
        "_",
        "_ ",
        "...",
        "Section 09 ",
        "glass tile ",
        "or ",
        "mortar: ",
        ": ",
        "1:",
        "for GT-1 ",
        "walls and ",
        "1 250",
        " 250",
        "'250",
        ".250",
        "1 + ",
        "1 \u00b1 ",
        "1+/-",
        "12 psi + ",
        "6/8 ",
        "note 1, "
      })
  @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
  void repetitionsTakeNoMoreThanTheirLength(String piece) {
    String text = piece.repeat(LONG / piece.length());
    assertThat(Quantities.find(text)).isNotNull();
    assertThat(Quantities.size(text, null)).isNotNull();
    Quantities.unitOfHeader(text);
    assertThat(Citations.find(text)).isNotNull();
    assertThat(RECOGNISER.recognise(document(List.of(text)))).isNotNull();
    Attribute area = Checked.vocabulary().attribute("location.area").orElseThrow();
    CellFigures cells = new CellFigures(Checked.vocabulary().list("schedule.besideFigures"));
    assertThat(cells.read(text, area, Unit.SQUARE_FOOT, DecimalMark.UNKNOWN)).isNotNull();
  }

  @ParameterizedTest
  @ValueSource(strings = {" ", "\t", "-", " -", "\u00a0", ". ", "(", "0", ",000"})
  @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
  void gapsBetweenTheHalvesOfAFigureTakeNoMoreThanTheirLength(String gap) {
    for (String start : List.of("1", "1 x", "1 to", "4 ft", "ANSI", "A118", "GT-1", "1 in (")) {
      String text = start + gap.repeat(LONG / 4 / gap.length()) + "2";
      assertThat(Quantities.find(text)).isNotNull();
      assertThat(Quantities.size(text, null)).isNotNull();
      assertThat(Citations.find(text)).isNotNull();
    }
  }

  private static Document document(List<String> texts) {
    List<Block> blocks = new ArrayList<>();
    List<Table.Row> rows = new ArrayList<>();
    int number = 0;
    for (String text : texts) {
      number++;
      Origin origin = new Origin("a.docx", null, null, null, number, null, text);
      blocks.add(Paragraph.body(origin, text));
      rows.add(
          new Table.Row(
              number,
              List.of(Table.Cell.of(number, 0, "GT-" + number), Table.Cell.of(number, 1, text)),
              false));
    }
    blocks.add(new Table(Origin.ofDocument("a.docx"), rows, false));
    return Document.read("a.docx", "docx", blocks, List.of());
  }

  @Provide
  Arbitrary<List<String>> blocks() {
    return texts().list().ofMaxSize(6);
  }

  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.oneOf(
        Arbitraries.of(PIECES).list().ofMaxSize(25).map(pieces -> String.join("", pieces)),
        Arbitraries.of(PIECES).list().ofMaxSize(25).map(pieces -> String.join(" ", pieces)),
        Arbitraries.strings().all().ofMaxLength(60));
  }
}
