package clearbed.base.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import clearbed.read.ReadAll;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.zip.CRC32C;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** Documents stand for records of every kind: texts, numbers, lists, enums, sealed interfaces. */
class RecordCodecTest {
  private static final int VERSION = 7;

  private final RecordCodec codec = new RecordCodec();

  private byte[] encode(Document document) {
    return encode(codec, document);
  }

  private static byte[] encode(RecordCodec codec, Document document) {
    RecordOutput out = new RecordOutput();
    codec.write(out, document, Document.class);
    return out.toBytes(VERSION);
  }

  private Document decode(byte[] bytes) throws DamagedRecord {
    return decode(codec, bytes);
  }

  private static Document decode(RecordCodec codec, byte[] bytes) throws DamagedRecord {
    RecordInput in = RecordInput.open(bytes, VERSION);
    Document document = codec.read(in, Document.class);
    in.requireEnd();
    return document;
  }

  @Property(tries = 300)
  void gives_back_an_equal_document(@ForAll("documents") Document document) throws Exception {
    assertThat(decode(encode(document))).isEqualTo(document);
  }

  @Property(tries = 50)
  void gives_the_same_bytes_for_the_same_document(@ForAll("documents") Document document)
      throws Exception {
    byte[] bytes = encode(document);
    assertThat(encode(decode(bytes))).isEqualTo(bytes);
  }

  @Property(tries = 100)
  void writes_equal_values_of_a_shared_type_once(@ForAll("documents") Document document)
      throws Exception {
    List<Block> twice = new ArrayList<>(document.blocks());
    twice.addAll(document.blocks());
    Document copied = Document.read("a.txt", "txt", twice, List.of());
    RecordCodec sharing = new RecordCodec(Block.class, Origin.class);
    byte[] bytes = encode(sharing, copied);
    assertThat(decode(sharing, bytes)).isEqualTo(copied);
    // Nothing but a reference for each block that came before.
    int once = encode(sharing, Document.read("a.txt", "txt", document.blocks(), List.of())).length;
    assertThat(bytes.length - once).isLessThanOrEqualTo(2 * document.blocks().size());
  }

  @Property(tries = 100)
  void refuses_a_changed_byte(
      @ForAll("documents") Document document, @ForAll Random where, @ForAll byte change) {
    byte[] bytes = encode(document);
    bytes[where.nextInt(bytes.length)] ^= change == 0 ? 1 : change;
    assertRefused(bytes);
  }

  @Property(tries = 100)
  void refuses_what_is_cut_or_goes_on(@ForAll("documents") Document document, @ForAll Random cut) {
    byte[] bytes = encode(document);
    assertRefused(Arrays.copyOf(bytes, cut.nextInt(bytes.length)));
    assertRefused(Arrays.copyOf(bytes, bytes.length + 1 + cut.nextInt(9)));
  }

  /** The checksum is made right again, so that the body's own checks are what is tried. */
  @Property(tries = 3000)
  void damage_that_the_checksum_does_not_show_ends_in_the_declared_exception_or_a_document(
      @ForAll("documents") Document document, @ForAll Random where) {
    byte[] bytes = encode(document);
    for (int n = 1 + where.nextInt(4); n > 0; n--) {
      int at = RecordOutput.HEAD + where.nextInt(bytes.length - RecordOutput.HEAD);
      bytes[at] = (byte) where.nextInt();
    }
    CRC32C sum = new CRC32C();
    sum.update(bytes, RecordOutput.HEAD, bytes.length - RecordOutput.HEAD);
    ByteBuffer.wrap(bytes).putInt(3 * Integer.BYTES, (int) sum.getValue());
    try {
      assertThat(decode(bytes)).isNotNull();
    } catch (DamagedRecord e) {
      assertThat(e).hasMessageMatching("[A-Za-z ]+");
    }
  }

  @Test
  void refuses_another_version() {
    byte[] bytes = encode(Document.unreadable("a.pdf", "pdf", "empty file"));
    ByteBuffer.wrap(bytes).putInt(Integer.BYTES, VERSION + 1);
    assertThatExceptionOfType(DamagedRecord.class)
        .isThrownBy(() -> decode(bytes))
        .withMessage("is of another version");
  }

  @Test
  void gives_back_every_sample_as_it_was_read() throws Exception {
    List<Document> samples = ReadAll.of(Path.of("sample-specs"));
    assertThat(samples).hasSizeGreaterThan(10);
    for (Document sample : samples) {
      assertThat(decode(encode(sample))).isEqualTo(sample);
    }
  }

  @Test
  void a_long_schedule_takes_few_bytes_for_each_row() throws Exception {
    List<Row> rows =
        IntStream.rangeClosed(1, 20_000)
            .mapToObj(
                n ->
                    new Row(
                        n,
                        List.of(
                            Cell.of(n, 0, "GT-" + n),
                            Cell.of(n, 1, "Cast glass mosaic, 1 x 1 in"),
                            Cell.of(n, 2, "ANSI A118.15")),
                        false))
            .toList();
    Table table = new Table(Origin.ofCell("a.xlsx", "Tile", null, null), rows, true);
    Document document = Document.read("a.xlsx", "xlsx", List.of(table), List.of());
    byte[] bytes = encode(document);
    assertThat(decode(bytes)).isEqualTo(document);
    assertThat(bytes.length).isLessThan(rows.size() * 50);
  }

  private void assertRefused(byte[] bytes) {
    assertThatExceptionOfType(DamagedRecord.class)
        .isThrownBy(() -> decode(bytes))
        .withMessageMatching("[A-Za-z ]+");
  }

  @Provide
  Arbitrary<Document> documents() {
    return Combinators.combine(
            texts(),
            texts(),
            Arbitraries.of(Document.Status.class),
            texts(),
            Arbitraries.<Block>oneOf(paragraphs(), tables()).list().ofMaxSize(5),
            Combinators.combine(
                    origins().injectNull(0.1), texts(), Arbitraries.of(Document.GapFate.class))
                .as(Gap::new)
                .list()
                .ofMaxSize(3))
        .as(Document::new);
  }

  /** Every UTF-16 unit, lone surrogates too, and few words so that some come twice. */
  private static Arbitrary<String> texts() {
    Arbitrary<String> any = Arbitraries.strings().all().ofMaxLength(12);
    Arbitrary<String> units =
        Arbitraries.chars().range('\uD700', '\uE010').list().ofMaxSize(4).map(RecordCodecTest::of);
    return Arbitraries.oneOf(Arbitraries.of("", "GT-1", "3/8\"", "Ünïcode → ∅"), any, units);
  }

  private static String of(List<Character> units) {
    StringBuilder out = new StringBuilder();
    units.forEach(out::append);
    return out.toString();
  }

  private static Arbitrary<Paragraph> paragraphs() {
    return Combinators.combine(
            origins(),
            texts(),
            Arbitraries.integers(),
            Arbitraries.integers(),
            texts(),
            Arbitraries.of(Paragraph.Region.class))
        .as(Paragraph::new);
  }

  private static Arbitrary<Table> tables() {
    Arbitrary<Row> rows =
        Combinators.combine(
                Arbitraries.integers(), cells().list().ofMaxSize(4), Arbitraries.of(true, false))
            .as(Row::new);
    return Combinators.combine(
            origins(),
            rows.list().ofMaxSize(4),
            Arbitraries.of(true, false),
            Arbitraries.of(true, false))
        .as(Table::new);
  }

  private static Arbitrary<Cell> cells() {
    return Combinators.combine(
            Arbitraries.integers(),
            Arbitraries.integers(),
            Arbitraries.of(true, false),
            texts(),
            texts().injectNull(0.1),
            Arbitraries.integers(),
            Arbitraries.integers())
        .as(Cell::new);
  }

  private static Arbitrary<Origin> origins() {
    Arbitrary<String> text = texts().injectNull(0.3);
    Arbitrary<Integer> number = Arbitraries.integers().injectNull(0.3);
    return Combinators.combine(texts(), text, text, number, number, text, text, text)
        .as(Origin::new);
  }
}
