package clearbed.corpus;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Measures the tool on the corpus: recall, precision and false alarms of every check. */
@Command(name = "corpus", mixinStandardHelpOptions = true)
public final class CorpusRun implements Callable<Integer> {
  @Option(names = "--command", description = "the program to measure, if not this process")
  private Path command;

  @Option(names = "--rules", description = "rule file laid over the set; repeatable")
  private List<Path> layers = new ArrayList<>();

  @Option(names = "--without", description = "measure with this check switched off")
  private String without;

  @Option(names = "--set", description = "only this set; repeatable")
  private List<String> sets = new ArrayList<>();

  @Option(names = "--operator", description = "only this operator; repeatable")
  private List<String> operators = new ArrayList<>();

  @Option(names = "--tuned-only", description = "leave out what is held back or unseen")
  private boolean tunedOnly;

  @Option(names = "--unseen-only", description = "only the unseen sets, with every operator")
  private boolean unseenOnly;

  @Option(names = "--fresh-only", description = "only the unseen sets of the second seven")
  private boolean freshOnly;

  @Option(
      names = "--newest-only",
      description = "only the unseen sets that were written last of all")
  private boolean newestOnly;

  @Option(names = "--last-only", description = "only the unseen sets written last")
  private boolean lastOnly;

  @Option(names = "--json", description = "write the figures here too")
  private Path json;

  @Option(names = "--log", description = "write misses and false alarms here")
  private Path log;

  @Option(
      names = "--write",
      description =
          "write the clean sets, and those of chosen operators, into this folder and stop")
  private Path write;

  @Option(names = "--list", description = "list sets and operators and what fits what, and stop")
  private boolean list;

  @Option(names = "--show", description = "show what each operator changes and expects, and stop")
  private boolean show;

  public static void main(String[] arguments) {
    System.exit(new CommandLine(new CorpusRun()).execute(arguments));
  }

  @Override
  public Integer call() throws IOException {
    if (write != null) return writeSets();
    if (list) return list();
    if (show) return show();
    List<Path> over = new ArrayList<>(layers);
    Path off = without == null ? null : SwitchedOff.layer(without);
    if (off != null) over.add(off);
    try {
      return measure(
          command == null ? new InProcessChecker(over) : new CommandChecker(command, over));
    } finally {
      if (off != null) Files.delete(off);
    }
  }

  private int writeSets() throws IOException {
    for (DraftSet set : chosenSets()) {
      set.write(write.resolve(set.name()));
      if (operators.isEmpty()) continue;
      for (Operator operator : chosenOperators()) {
        var mutant = operator.on(set);
        if (mutant.isEmpty()) continue;
        mutant.get().set().write(write.resolve(set.name() + "-" + operator.id()));
      }
    }
    return 0;
  }

  private int list() {
    for (DraftSet set : chosenSets()) {
      System.out.printf(
          "%-20s %-10s %2d glass, %2d other, %d files, %s%n",
          set.name(),
          set.unseen() ? "unseen" : set.heldBack() ? "held back" : "tuned",
          set.glass().size(),
          set.other().size(),
          set.files().size(),
          set.rules());
    }
    for (Operator operator : chosenOperators()) {
      List<DraftSet> fits =
          chosenSets().stream().filter(set -> operator.on(set).isPresent()).toList();
      System.out.printf(
          "%-36s %-10s fits %2d: %s%n",
          operator.id(), operator.heldBack() ? "held back" : "tuned", fits.size(), operator.what());
    }
    return 0;
  }

  private int show() {
    for (DraftSet set : chosenSets()) {
      for (Operator operator : chosenOperators()) {
        operator.on(set).ifPresent(mutant -> show(set, operator, mutant));
      }
    }
    return 0;
  }

  private static void show(DraftSet clean, Operator operator, Mutant mutant) {
    System.out.println(clean.name() + ", " + operator.id());
    List<String> before = words(clean);
    List<String> after = words(mutant.set());
    before.stream()
        .filter(line -> !after.contains(line))
        .forEach(l -> System.out.println("  - " + l));
    after.stream()
        .filter(line -> !before.contains(line))
        .forEach(l -> System.out.println("  + " + l));
    for (Expected due : mutant.expected()) {
      System.out.println("  = " + due.check() + " " + new TreeSet<>(due.tags()));
    }
  }

  private static List<String> words(DraftSet set) {
    return set.files().stream().flatMap(file -> file.words().stream()).toList();
  }

  private int measure(Checker checker) throws IOException {
    List<String> lines = new ArrayList<>();
    Trial.Result result = new Trial(checker, chosenSets(), chosenOperators(), lines::add).run();
    boolean apart = unseenOnly || freshOnly || lastOnly || newestOnly;
    if (!apart) print("tuned", result.tuned());
    if (!tunedOnly && !apart) print("held back", result.heldBack());
    if (!tunedOnly) print("unseen", result.unseen());
    System.out.println(result.mutants() + " sets with one defect");
    result.entries().forEach(System.out::println);
    if (log != null) Files.write(log, lines);
    if (json != null) writeJson(result);
    if (without == null) return 0;
    Tally.Line line =
        result
            .tuned()
            .line(without)
            .plus(result.heldBack().line(without))
            .plus(result.unseen().line(without));
    System.out.printf(
        Locale.ROOT, "%s switched off: %d of %d found%n", without, line.found(), line.due());
    return line.due() > 0 && line.found() == 0 && line.partly() == 0 ? 0 : 1;
  }

  private List<DraftSet> chosenSets() {
    return Corpus.sets().stream()
        .filter(set -> sets.isEmpty() || sets.contains(set.name()))
        .filter(set -> !tunedOnly || !(set.heldBack() || set.unseen()))
        .filter(set -> !unseenOnly || set.unseen())
        .filter(set -> !freshOnly || Corpus.fresh(set.name()))
        .filter(set -> !newestOnly || Corpus.newest(set.name()))
        .filter(set -> !lastOnly || Corpus.last(set.name()))
        .toList();
  }

  private List<Operator> chosenOperators() {
    return Operators.all().stream()
        .filter(operator -> operators.isEmpty() || operators.contains(operator.id()))
        .filter(operator -> !tunedOnly || !operator.heldBack())
        .toList();
  }

  private static void print(String name, Tally tally) {
    System.out.printf(
        Locale.ROOT,
        "%n%-22s %5s %6s %7s %6s %7s %10s%n",
        name,
        "due",
        "found",
        "partly",
        "false",
        "recall",
        "precision");
    Set<String> checks = new TreeSet<>(tally.lines().keySet());
    for (String check : checks) print(check, tally.line(check));
    print("all checks", tally.total());
  }

  private static void print(String check, Tally.Line line) {
    System.out.printf(
        Locale.ROOT,
        "%-22s %5d %6d %7d %6d %7s %10s%n",
        check,
        line.due(),
        line.found(),
        line.partly(),
        line.falseAlarms(),
        line.due() == 0 ? "-" : percent(line.recall()),
        percent(line.precision()));
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.1f %%", share * 100);
  }

  private void writeJson(Trial.Result result) throws IOException {
    ObjectMapper mapper = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    ObjectNode root = mapper.createObjectNode();
    root.put("mutants", result.mutants());
    result.entries().forEach(root.putArray("entries")::add);
    Map<String, Tally> parts = new TreeMap<>();
    parts.put("tuned", result.tuned());
    parts.put("heldBack", result.heldBack());
    parts.put("unseen", result.unseen());
    for (var part : parts.entrySet()) {
      ObjectNode node = root.putObject(part.getKey());
      for (String check : new TreeSet<>(part.getValue().lines().keySet())) {
        figures(node.putObject(check), part.getValue().line(check));
      }
      figures(node.putObject("all"), part.getValue().total());
    }
    mapper.writeValue(json.toFile(), root);
  }

  private static void figures(ObjectNode node, Tally.Line line) {
    node.put("due", line.due());
    node.put("found", line.found());
    node.put("partly", line.partly());
    node.put("falseAlarms", line.falseAlarms());
    node.put("recall", line.recall());
    node.put("precision", line.precision());
  }
}
