package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.Numbers;
import clearbed.recognise.text.PlainText;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.text.ParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/**
 * Figures written the way a country writes them, by the Java library, are read as that number or
 * not at all.
 */
class FiguresOfLocalesTest {
  private static final List<Locale> ENGLISH = List.of(Locale.US, Locale.UK, Locale.CANADA);

  private static final List<Locale> OTHERS =
      List.of(
          Locale.GERMANY,
          Locale.FRANCE,
          Locale.ITALY,
          Locale.forLanguageTag("de-CH"),
          Locale.forLanguageTag("fr-CH"),
          Locale.forLanguageTag("de-AT"),
          Locale.forLanguageTag("es-ES"),
          Locale.forLanguageTag("nl-NL"),
          Locale.forLanguageTag("sv-SE"),
          Locale.forLanguageTag("fi-FI"),
          Locale.forLanguageTag("pl-PL"),
          Locale.forLanguageTag("pt-BR"));

  /** How the cells of one column are written. */
  record Column(Locale locale, boolean grouped, List<BigDecimal> numbers) {
    List<String> cells() {
      NumberFormat format = NumberFormat.getNumberInstance(locale);
      format.setGroupingUsed(grouped);
      List<String> out = new ArrayList<>();
      for (BigDecimal number : numbers) {
        format.setMinimumFractionDigits(number.scale());
        format.setMaximumFractionDigits(number.scale());
        out.add(format.format(number));
      }
      return out;
    }
  }

  @Property(tries = 1000)
  void an_english_column_is_read_as_written_or_not_understood(
      @ForAll("english") Column column, @ForAll("formats") String format) {
    neverAnother(column, format, "Area (m²)", Unit.SQUARE_METRE);
  }

  @Property(tries = 1000)
  void an_english_column_in_customary_units_is_read_as_written_or_not_understood(
      @ForAll("english") Column column, @ForAll("formats") String format) {
    neverAnother(column, format, "Area (sq ft)", Unit.SQUARE_FOOT);
  }

  /**
   * A comma between three digits alone is a thousand to whoever reads English; a column shows
   * another habit by one other figure.
   */
  @Property(tries = 1000)
  void a_column_of_another_habit_is_read_as_written_or_not_understood(
      @ForAll("other") Column column, @ForAll("formats") String format) {
    neverAnother(column, format, "Area (m²)", Unit.SQUARE_METRE);
  }

  private static void neverAnother(Column column, String format, String heading, Unit unit) {
    neverAnother(column.cells(), column.numbers(), format, heading, unit);
  }

  private static void neverAnother(
      List<String> cells, List<BigDecimal> numbers, String format, String heading, Unit unit) {
    Facts facts = FigureCellsTest.read(format, heading, cells);
    // A column of nothing but "1.000" may be thousands or thousandths: it is not understood whole.
    boolean whole = facts.account().cells().notUnderstood() == cells.size();
    for (int i = 0; i < cells.size(); i++) {
      List<Content> figures = FigureCellsTest.figures(facts, i + 2);
      if (whole && figures.isEmpty()) continue;
      assertThat(figures).as("%s of %s", cells.get(i), cells).hasSize(1);
      if (figures.get(0) instanceof Content.NotUnderstood) continue;
      Quantity expected = Quantity.of(numbers.get(i).doubleValue(), unit);
      assertThat(figures.get(0))
          .as("%s of %s", cells.get(i), cells)
          .isEqualTo(Content.Amount.exact(expected));
    }
  }

  /**
   * A spreadsheet holds numbers, which the reader shows in the American way, beside typed words.
   */
  @Property(tries = 1000)
  void numbers_of_a_workbook_are_not_taken_for_words_of_another_habit(
      @ForAll("other") Column typed, @ForAll("english") Column numbers) {
    List<String> cells = new ArrayList<>(typed.cells());
    List<BigDecimal> all = new ArrayList<>(typed.numbers());
    cells.addAll(new Column(Locale.US, numbers.grouped(), numbers.numbers()).cells());
    all.addAll(numbers.numbers());
    neverAnother(cells, all, "xlsx", "Area (m²)", Unit.SQUARE_METRE);
  }

  /** Numbers with decimals of which one at least cannot be taken for thousands are all read. */
  @Property(tries = 300)
  void two_figures_with_two_decimals_show_how_a_column_is_written(
      @ForAll("anyLocale") Locale locale, @ForAll("twoDecimals") List<BigDecimal> numbers) {
    List<String> cells = new Column(locale, true, numbers).cells();
    Facts facts = FigureCellsTest.read("csv", "Area (m²)", cells);
    for (int i = 0; i < cells.size(); i++) {
      Quantity expected = Quantity.of(numbers.get(i).doubleValue(), Unit.SQUARE_METRE);
      assertThat(FigureCellsTest.figures(facts, i + 2))
          .as("%s of %s in %s", cells.get(i), cells, locale)
          .containsExactly(Content.Amount.exact(expected));
    }
  }

  @Property(tries = 1000)
  void what_the_library_parses_wholly_is_what_is_read(
      @ForAll("anyLocale") Locale locale, @ForAll("twoDecimals") List<BigDecimal> numbers)
      throws ParseException {
    for (String cell : new Column(locale, true, numbers).cells()) {
      double library = NumberFormat.getNumberInstance(locale).parse(cell).doubleValue();
      double ours = Numbers.read(PlainText.of(cell), DecimalMark.UNKNOWN, false);
      assertThat(ours).as("%s in %s", cell, locale).isEqualTo(library);
    }
  }

  @Provide
  Arbitrary<Locale> anyLocale() {
    List<Locale> all = new ArrayList<>(ENGLISH);
    all.addAll(OTHERS);
    return Arbitraries.of(all);
  }

  @Provide
  Arbitrary<Column> english() {
    return columns(Arbitraries.of(ENGLISH), numbers().list().ofMinSize(1).ofMaxSize(6));
  }

  @Provide
  Arbitrary<Column> other() {
    Arbitrary<List<BigDecimal>> all =
        Combinators.combine(twoDecimals(), numbers().list().ofMinSize(1).ofMaxSize(6))
            .as(
                (shown, more) -> {
                  List<BigDecimal> out = new ArrayList<>(more);
                  out.add(shown.get(0));
                  return out;
                });
    return columns(Arbitraries.of(OTHERS), all);
  }

  private static Arbitrary<Column> columns(
      Arbitrary<Locale> locales, Arbitrary<List<BigDecimal>> numbers) {
    return Combinators.combine(locales, Arbitraries.of(true, false), numbers).as(Column::new);
  }

  @Provide
  Arbitrary<String> formats() {
    return Arbitraries.of("csv", "docx", "xlsx");
  }

  private static Arbitrary<BigDecimal> numbers() {
    Arbitrary<Integer> scales = Arbitraries.of(0, 0, 0, 1, 2, 3, 3, 4);
    Arbitrary<BigDecimal> values =
        Arbitraries.oneOf(between(1, 999), between(1_000, 9_999), between(10_000, 2_000_000));
    return Combinators.combine(values, scales)
        .as((value, scale) -> value.setScale(scale, RoundingMode.HALF_UP));
  }

  private static Arbitrary<BigDecimal> between(int low, int high) {
    return Arbitraries.bigDecimals()
        .between(BigDecimal.valueOf(low), BigDecimal.valueOf(high))
        .ofScale(4);
  }

  @Provide
  Arbitrary<List<BigDecimal>> twoDecimals() {
    return between(1, 99_999)
        .map(value -> value.setScale(2, RoundingMode.HALF_UP))
        .list()
        .ofMinSize(2)
        .ofMaxSize(5);
  }
}
