package clearbed.check.rules;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import clearbed.base.config.StandardFiles;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.model.report.ProjectNames;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.NationalPractice;
import clearbed.resolve.ProjectFact;
import java.io.IOException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Loads a standard rule set and lays rule files over it. */
public final class RuleSets {
  private final Vocabulary vocabulary;
  private final RuleReader ruleReader;
  private final FactReader factReader;

  /**
   * @param computations names of what a rule may ask to have computed
   */
  public RuleSets(Vocabulary vocabulary, Set<String> computations) {
    this.vocabulary = vocabulary;
    this.ruleReader = new RuleReader(vocabulary, computations);
    this.factReader = new FactReader(vocabulary);
  }

  /**
   * @param set name of a bundled set, such as {@code north-america}
   * @param layers rule files, the later over the earlier
   * @throws IOException naming file, line and reason
   */
  public RuleSet load(String set, List<Path> layers) throws IOException {
    List<ConfigFile> files = new ArrayList<>(withBase(bundled(set, ConfigException::new)));
    for (Path layer : layers) files.add(file(StandardFiles.given(layer)));
    return merge(files);
  }

  /**
   * Validates one file by itself; a layer is tried over its own or the standard set.
   *
   * @throws IOException naming file, line and reason
   */
  public RuleSet validate(Path path, String set) throws IOException {
    ConfigFile file = file(StandardFiles.given(path));
    return file.root().has("ruleSet") ? merge(withBase(file)) : load(set, List.of(path));
  }

  /** A set may build on another one and say only what differs. */
  private static List<ConfigFile> withBase(ConfigFile file) throws IOException {
    ConfigNode over = file.root().get("over");
    return file.root().has("over")
        ? List.of(bundled(over.text(), none -> over.fault(none)), file)
        : List.of(file);
  }

  private static ConfigFile bundled(String set, Function<String, ConfigException> refused)
      throws IOException {
    String none = "no rule set named " + set + "; there are north-america and iso-en";
    if (!set.matches("[a-z0-9-]+")) throw refused.apply(none);
    return file(StandardFiles.find(set + ".yaml").orElseThrow(() -> refused.apply(none)));
  }

  private static ConfigFile file(StandardFiles.FileSource source) throws IOException {
    ConfigFile file = ConfigFile.read(source, "ruleset");
    ConfigNode root = file.root();
    if (root.has("ruleSet") == root.has("layer"))
      throw root.fault("give either 'layer' with a name for these rules, or 'ruleSet'");
    if (root.has("ruleSet") && root.has("words"))
      throw root.get("words").fault("'words' are taught by a layer, not by a rule set");
    if (root.has("ruleSet") && !root.has("checks")) throw root.fault("'checks' is missing");
    return file;
  }

  private RuleSet merge(List<ConfigFile> files) throws IOException {
    Map<String, LayeredCheck> checks = new LinkedHashMap<>();
    List<RuleSet.Suppression> suppressions = new ArrayList<>();
    List<ProjectFact> facts = new ArrayList<>();
    List<ProjectFact> assumptions = new ArrayList<>();
    List<String> changes = new ArrayList<>();
    for (ConfigFile file : files) {
      if (file.root().has("layer")) changes.addAll(LayerChanges.of(file, checks));
      lay(file, checks);
    }
    List<Rule> rules = new ArrayList<>();
    for (LayeredCheck check : checks.values()) rules.add(ruleReader.read(check, checks));
    for (LayeredCheck check : checks.values()) {
      if (check.has("partOf")) known(check.get("partOf"), check.text("partOf"), checks);
    }
    for (ConfigFile file : files) {
      suppressions.addAll(suppressions(file, checks));
      facts.addAll(factReader.facts(file));
      assumptions.addAll(factReader.assumptions(file));
    }
    ConfigNode base = last(files, "ruleSet");
    Measure units = base.get("units").text().equals("metric") ? Measure.METRIC_ALONE : Measure.INCH;
    List<String> layers =
        files.stream()
            .filter(f -> f.root().has("layer"))
            .map(f -> f.root().get("layer").text() + " (" + f.name() + ")")
            .toList();
    return new RuleSet(
        base.get("ruleSet").text(),
        base.get("title").text(),
        digest(files),
        layers,
        rules,
        suppressions,
        facts,
        assumptions,
        guideline(last(files, "guideline").get("guideline")),
        national(files, base),
        units,
        YieldsReader.read(files, units),
        names(files),
        changes,
        vocabulary);
  }

  /** Of each name the one that the last file gives. */
  private static ProjectNames names(List<ConfigFile> files) {
    ProjectNames names = ProjectNames.NONE;
    for (ConfigFile file : files) {
      ConfigNode given = file.root().get("project");
      names =
          new ProjectNames(
                  given.get("name").text(), given.get("from").text(), given.get("to").text())
              .or(names);
    }
    return names;
  }

  private static void lay(ConfigFile file, Map<String, LayeredCheck> checks)
      throws ConfigException {
    Set<String> here = new HashSet<>();
    for (ConfigNode check : file.root().get("checks").items()) {
      String id = check.get("id").text();
      if (!here.add(id)) throw check.fault("check " + id + " stands twice in this file");
      checks.computeIfAbsent(id, name -> new LayeredCheck()).lay(check);
    }
  }

  private static ConfigNode last(List<ConfigFile> files, String key) throws ConfigException {
    return files.stream()
        .map(ConfigFile::root)
        .filter(root -> root.has(key))
        .reduce((earlier, later) -> later)
        .orElseThrow(() -> files.get(0).root().fault("'" + key + "' is missing"));
  }

  private static MovementGuideline guideline(ConfigNode path) throws IOException {
    return MovementGuideline.read(
        StandardFiles.find(path.text())
            .orElseThrow(() -> path.fault("there is no rulesets/" + path.text())));
  }

  /** A layer with a guideline of its own means that one, whatever the country. */
  private static Map<NationalPractice, MovementGuideline> national(
      List<ConfigFile> files, ConfigNode set) throws IOException {
    Map<NationalPractice, MovementGuideline> out = new EnumMap<>(NationalPractice.class);
    boolean own = files.stream().anyMatch(f -> f.root().has("layer") && f.root().has("guideline"));
    if (own) return out;
    for (ConfigNode one : set.get("guidelines").entries()) {
      out.put(NationalPractice.of(one.key()).orElseThrow(), guideline(one));
    }
    return out;
  }

  private static void known(ConfigNode place, String check, Map<String, LayeredCheck> checks)
      throws ConfigException {
    if (!checks.containsKey(check))
      throw place.unknown(check, "no check named " + check, checks.keySet());
  }

  private static List<RuleSet.Suppression> suppressions(
      ConfigFile file, Map<String, LayeredCheck> checks) throws ConfigException {
    List<RuleSet.Suppression> out = new ArrayList<>();
    for (ConfigNode s : file.root().get("suppress").items()) {
      if (!s.has("check") && !s.has("id")) throw s.fault("'check' or 'id' is missing");
      if (s.has("check")) known(s.get("check"), s.get("check").text(), checks);
      if (s.has("id")) known(s.get("id"), s.get("id").text().replaceFirst("/.*", ""), checks);
      out.add(
          new RuleSet.Suppression(
              s.get("check").text(),
              s.get("id").text(),
              s.get("tag").text(),
              s.get("reason").text(),
              file.name()));
    }
    return out;
  }

  private static String digest(List<ConfigFile> files) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      for (ConfigFile file : files) sha.update(file.bytes());
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
