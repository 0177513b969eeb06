package clearbed.check.judge;

import clearbed.base.DisplayText;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.State;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Words a finding from its rule. */
public final class FindingWriter {

  private static final int MOST_WORDS = 10_000;

  private final Map<String, String> said = new ConcurrentHashMap<>();

  /**
   * What a finding says beyond its rule.
   *
   * @param subject second part of the id: tag, section or clause words
   */
  public record Case(
      String subject,
      String attribute,
      FindingKind kind,
      Level level,
      List<String> tags,
      FoundAt at,
      FindingWords words) {}

  /** The finding of a rule in one case, in the words of both. */
  public Finding write(Rule rule, Case c) {
    Rule.RuleWording w = rule.wording();
    String expected =
        !c.words().expected().isEmpty()
            ? c.words().expected()
            : w.expected().isEmpty() ? rule.expectation().words() : w.expected();
    Finding.FindingWording wording =
        new Finding.FindingWording(
            once(filled(c.words().message(), c, expected)),
            once(
                filled(
                    c.words().question().isEmpty() ? w.question() : c.words().question(),
                    c,
                    expected)));
    return new Finding(
        id(rule, c),
        rule.reportedAs(),
        c.kind(),
        c.level(),
        State.NEW,
        c.tags(),
        c.attribute(),
        c.at().origin(),
        c.at().others(),
        TagWords.of(wording.message(), c.tags()),
        once(Inches.written(c.words().found())),
        once(Inches.written(expected)),
        c.words().steps().stream().map(this::once).toList(),
        TagWords.of(wording.question(), c.tags()),
        w.clause(),
        once(rule.sourceWithMark()),
        once(w.why()),
        "",
        wording);
  }

  /** Findings on a long schedule say few things over and over: each is held once. */
  private String once(String words) {
    if (said.size() > MOST_WORDS) said.clear();
    return said.computeIfAbsent(words, same -> same);
  }

  private static String id(Rule rule, Case c) {
    String id = rule.reportedAs() + "/" + slug(c.subject());
    return c.attribute().isEmpty() || c.attribute().equals(rule.attribute()) && !rule.ownId()
        ? id
        : id + "/" + c.attribute();
  }

  /** All but the tags, which may be those of other findings, too. */
  private static String filled(String template, Case c, String expected) {
    return Inches.written(
        template
            .replace("{found}", DisplayText.shortened(c.words().found(), LONGEST_FOUND))
            .replace("{expected}", expected));
  }

  private static final int LONGEST_FOUND = 160;

  /** Letters, digits and the marks of tags and numbers; anything else becomes one hyphen. */
  static String slug(String subject) {
    String s =
        subject
            .trim()
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^\\p{L}\\p{N}./]+", "-")
            .replaceAll("^-|-$", "");
    if (s.length() <= 60) return s;
    return s.substring(0, 50) + "-" + Integer.toHexString(s.hashCode());
  }
}
