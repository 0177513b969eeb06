package clearbed.docs;

import clearbed.check.Checker;
import clearbed.check.rules.Expectation;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.RuleSets;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes the rule sets out as one page for people, so that wording stays in the rule files. */
final class CheckCatalogue {
  private static final String HOW = "mvn -q test -Dtest=CheckCatalogueTest -Dcatalogue.write=true";
  private static final Map<String, String> GROUPS = groups();

  private final Vocabulary vocabulary;
  private final RuleSet standard;
  private final RuleSet metric;

  private CheckCatalogue(Vocabulary vocabulary, RuleSet standard, RuleSet metric) {
    this.vocabulary = vocabulary;
    this.standard = standard;
    this.metric = metric;
  }

  static CheckCatalogue ofTheRuleSets() throws IOException {
    Vocabulary vocabulary = Vocabulary.standard();
    RuleSets sets = Checker.ruleSets(vocabulary);
    return new CheckCatalogue(
        vocabulary, sets.load("north-america", List.of()), sets.load("iso-en", List.of()));
  }

  /** The page in Markdown; the same rule files give the same bytes. */
  String markdown() {
    StringBuilder page = new StringBuilder();
    page.append("<!-- Generated from rulesets/*.yaml. Do not edit; run: ").append(HOW);
    page.append(" -->\n\n# The checks\n\n");
    page.append(introduction());
    GROUPS.forEach((group, title) -> contents(page, group, title));
    GROUPS.forEach((group, title) -> group(page, group, title));
    return page.toString();
  }

  private String introduction() {
    long metricOnly = metric.rules().stream().filter(r -> standard.rule(r.id()).isEmpty()).count();
    return standard.rules().size()
        + " checks of the rule set `north-america`, and "
        + metricOnly
        + " that only `iso-en` has. Where `iso-en` differs, the check says so.\n"
        + "`clearbed explain CHECK` prints the same for the rules in force.\n\n"
        + "The mark behind a source tells how firm it is: *standard* is a published standard or"
        + " handbook, *reported* is what the publications named say of it, *common practice* has no"
        + " source, *from memory* has yet to be verified against the document named.\n"
        + "`{tag}`, `{found}` and `{expected}` are filled in for each finding.\n\n";
  }

  private void contents(StringBuilder page, String group, String title) {
    page.append("- ").append(title).append(": ");
    page.append(
        metric.rules().stream()
            .filter(r -> r.group().equals(group))
            .map(r -> "[" + r.id() + "](#" + r.id() + ")")
            .collect(java.util.stream.Collectors.joining(", ")));
    page.append('\n');
  }

  private void group(StringBuilder page, String group, String title) {
    page.append("\n## ").append(title).append('\n');
    for (Rule rule : metric.rules()) {
      if (rule.group().equals(group)) entry(page, rule);
    }
  }

  private void entry(StringBuilder page, Rule inMetric) {
    Rule rule = standard.rule(inMetric.id()).orElse(inMetric);
    page.append("\n### ").append(rule.id()).append("\n\n").append(rule.title()).append(".\n\n");
    Map<String, String> lines = lines(rule);
    lines.forEach((name, text) -> line(page, name, text));
    if (standard.rule(rule.id()).isEmpty()) {
      line(page, "In force", "in `iso-en` only");
    } else if (inMetric.off()) {
      line(page, "In `iso-en`", "switched off");
    } else {
      differences(page, lines, lines(inMetric));
    }
  }

  private static void differences(
      StringBuilder page, Map<String, String> standard, Map<String, String> metric) {
    metric.forEach(
        (name, text) -> {
          if (!text.equals(standard.get(name)))
            line(page, "In `iso-en`, " + name.toLowerCase(java.util.Locale.ROOT), text);
        });
  }

  private Map<String, String> lines(Rule rule) {
    Rule.RuleWording wording = rule.wording();
    Map<String, String> lines = new LinkedHashMap<>();
    lines.put("Level", level(rule));
    if (!rule.attribute().isEmpty())
      lines.put("Looks at", vocabulary.label(rule.attribute()) + " (`" + rule.attribute() + "`)");
    lines.put("Applies", new Conditions(vocabulary).of(rule));
    lines.put("Wanted", wanted(rule));
    if (!rule.instead().isEmpty())
      lines.put(
          "Or instead", String.join(", ", rule.instead().stream().map(vocabulary::label).toList()));
    lines.put("Why", wording.why());
    lines.put("Source", source(wording));
    lines.put("Question", wording.question());
    lines.put("Answer", wording.answer());
    lines.put("Clause", wording.clause());
    lines.values().removeIf(String::isEmpty);
    return lines;
  }

  private static String level(Rule rule) {
    String level = rule.level().word();
    return rule.missingLevel() == rule.level()
        ? level
        : level + ", " + rule.missingLevel().word() + " when missing";
  }

  private static String wanted(Rule rule) {
    String expected = rule.wording().expected();
    if (!expected.isEmpty()) return expected;
    return rule.expectation() instanceof Expectation.Computed ? "" : rule.expectation().words();
  }

  private static String source(Rule.RuleWording wording) {
    if (wording.source().isEmpty()) return "*" + wording.mark() + "*";
    return wording.source() + " (*" + wording.mark() + "*)";
  }

  private static void line(StringBuilder page, String name, String text) {
    page.append("- **").append(name).append("**: ").append(text.strip()).append('\n');
  }

  private static Map<String, String> groups() {
    Map<String, String> groups = new LinkedHashMap<>();
    groups.put("tile", "Tile");
    groups.put("mounting", "Mounting");
    groups.put("mortar", "Mortar");
    groups.put("substrate", "Substrate and membrane");
    groups.put("grout", "Grout");
    groups.put("movement", "Movement joints");
    groups.put("process", "Process");
    groups.put("set", "The set as a whole");
    return groups;
  }
}
