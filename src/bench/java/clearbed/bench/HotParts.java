package clearbed.bench;

import clearbed.model.document.Document;
import clearbed.read.ReadAll;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The parts of a run that are called most, each on the sample documents. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class HotParts {
  private static final String CLAUSE =
      "Mortar for glass tile: ANSI A118.15 improved modified dry-set, white, shear bond strength 450"
          + " psi (3.10 MPa) at 28 days to ASTM C482, spread with a 1/4 in x 3/8 in notched trowel and"
          + " flattened; movement joints at 8 to 12 ft (2.4 to 3.7 m) to TCNA EJ171.";

  private Recogniser recogniser;
  private Resolver resolver;
  private Document section;
  private Document schedule;
  private List<Facts> facts;

  @Setup
  public void read() throws IOException {
    Vocabulary vocabulary = Vocabulary.standard();
    recogniser = new Recogniser(vocabulary);
    resolver = new Resolver(vocabulary);
    List<Document> documents = ReadAll.of(Path.of("sample-specs/draft"));
    section = named(documents, "09-30-00");
    schedule = named(documents, "A-651");
    facts = documents.stream().map(recogniser::recognise).toList();
  }

  private static Document named(List<Document> documents, String start) {
    return documents.stream().filter(d -> d.path().startsWith(start)).findFirst().orElseThrow();
  }

  @Benchmark
  public Object quantitiesOfAClause() {
    return Quantities.find(CLAUSE);
  }

  @Benchmark
  public Object citationsOfAClause() {
    return Citations.find(CLAUSE);
  }

  /** Outline, limits and statements of a section of some 150 clauses. */
  @Benchmark
  public Facts factsOfASection() {
    return recogniser.recognise(section);
  }

  /** Header, rows and statements of a schedule of 17 tiles. */
  @Benchmark
  public Facts factsOfASchedule() {
    return recogniser.recognise(schedule);
  }

  @Benchmark
  public Project joinOfTheSample() {
    return resolver.resolve(facts, List.of());
  }
}
