package clearbed;

import clearbed.check.Checker;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.report.Finding;
import clearbed.model.report.Verdict;
import clearbed.model.value.Entry;
import clearbed.read.ReadAll;
import clearbed.recognise.Facts;
import clearbed.recognise.LearnedMarks;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Lessons;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What the whole tool makes of a folder of documents, for tests to look at. */
public record Checked(List<Document> documents, Project project, Checker.CheckedProject outcome) {

  private static final Vocabulary VOCABULARY = load();
  private static final RuleSet RULES = rules(VOCABULARY);

  /** Reads, recognises, resolves and checks with the standard set and the layers over it. */
  public static Checked of(Path folder, Path... layers) {
    return by(rules(vocabulary(), layers), folder);
  }

  /** The same of files that are written into the folder first: a name, a text, and so on. */
  public static Checked ofFiles(Path folder, String... namesAndTexts) {
    return of(written(folder, namesAndTexts));
  }

  /** The same, read anew by what the files teach. */
  public static Checked taughtByFiles(Path folder, String... namesAndTexts) {
    return taught(written(folder, namesAndTexts));
  }

  private static Path written(Path folder, String... namesAndTexts) {
    try {
      for (int i = 0; i < namesAndTexts.length; i += 2)
        Files.writeString(folder.resolve(namesAndTexts[i]), namesAndTexts[i + 1]);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return folder;
  }

  /** The same by the standard set of this name. */
  public static Checked by(String ruleSet, Path folder) {
    return by(rules(vocabulary(), ruleSet), folder);
  }

  /** The same as of a folder, read anew by what its documents teach. */
  public static Checked taught(Path folder, Path... layers) {
    Recogniser first = new Recogniser(vocabulary());
    List<Document> documents = ReadAll.of(folder);
    Lessons lessons =
        LearnedMarks.in(documents.stream().map(first::recognise).toList(), vocabulary());
    Vocabulary vocabulary = vocabulary(lessons, layers);
    return of(documents, vocabulary, rules(vocabulary));
  }

  private static Vocabulary vocabulary(Lessons lessons, Path... layers) {
    try {
      return Vocabulary.standard(List.of(layers), lessons);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Checked by(RuleSet rules, Path folder) {
    return of(ReadAll.of(folder), vocabulary(), rules);
  }

  private static Checked of(List<Document> documents, Vocabulary vocabulary, RuleSet rules) {
    Recogniser recogniser = new Recogniser(vocabulary);
    Project project =
        new Resolver(vocabulary)
            .resolve(documents.stream().map(recogniser::recognise).toList(), rules.facts());
    return new Checked(
        documents, project, new Checker(vocabulary, rules).check(project, documents));
  }

  /** Recognises and resolves a text document of these paragraphs; checks nothing. */
  public static Checked ofLines(String name, List<String> lines) {
    List<Block> blocks = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      Origin at = new Origin(name, null, null, null, i + 1, null, line);
      blocks.add(Paragraph.body(at, line));
    }
    Document document = Document.read(name, "txt", blocks, List.of());
    Facts facts = new Recogniser(VOCABULARY).recognise(document);
    Project project = new Resolver(VOCABULARY).resolve(List.of(facts), List.of());
    return new Checked(List.of(document), project, null);
  }

  public static Vocabulary vocabulary() {
    return VOCABULARY;
  }

  private static Vocabulary load() {
    try {
      return Vocabulary.standard();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static RuleSet rules(Vocabulary vocabulary, Path... layers) {
    return rules(vocabulary, "north-america", layers);
  }

  private static RuleSet rules(Vocabulary vocabulary, String ruleSet, Path... layers) {
    try {
      return Checker.ruleSets(vocabulary).load(ruleSet, List.of(layers));
    } catch (IOException e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  /** Findings of a check that people get to see. */
  public List<Finding> findings(String check) {
    return outcome.findings().stream()
        .filter(f -> of(check, f) && f.suppressed().isEmpty())
        .toList();
  }

  /** Reported under its id; what is part of another check is known by the entries it is about. */
  private boolean of(String check, Finding f) {
    Rule rule = RULES.rule(check).orElse(null);
    if (rule != null && !rule.partOf().isEmpty()) return isPart(rule, f);
    return f.check().equals(check) && RULES.rules().stream().noneMatch(r -> isPart(r, f));
  }

  private boolean isPart(Rule rule, Finding f) {
    return f.check().equals(rule.partOf())
        && f.attribute().equals(rule.attribute())
        && !f.tags().isEmpty()
        && f.tags().stream().allMatch(tag -> fails(rule.id(), tag));
  }

  private boolean fails(String check, String tag) {
    return verdicts(check).stream()
        .anyMatch(
            v ->
                v.tag().equals(tag)
                    && (v.outcome() == Verdict.Outcome.FINDING
                        || v.outcome() == Verdict.Outcome.UNREAD));
  }

  public List<Verdict> verdicts(String check) {
    return outcome.verdicts().stream().filter(v -> v.check().equals(check)).toList();
  }

  /** True when the tag is a glass tile entry; a tag without a row is none. */
  public boolean hasGlass(String tag) {
    return project.glass().stream().anyMatch(e -> e.tag().equals(tag));
  }

  public Entry entry(String tag) {
    return project.entries().stream()
        .filter(e -> e.tag().equals(tag))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no entry " + tag + " in " + project.entries()));
  }

  /** The words of one attribute of one entry, as the checks would take them. */
  public List<String> governing(String tag, String attribute) {
    return entry(tag).governing(attribute).stream().map(v -> v.content().text()).toList();
  }
}
