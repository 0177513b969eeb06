package clearbed.check;

import clearbed.check.computed.reference.OpenReferences;
import clearbed.check.computed.reference.UnknownStandards;
import clearbed.check.rules.Rule;
import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.recognise.Facts;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The words of the set that were not understood, by the attributes that they likely state. */
final class UnreadWords {
  /** Of a sentence, where its subject stands, in characters. */
  private static final int SUBJECT = 40;

  /** "TM-1", "GR-E", "MB": a product by its code. */
  private static final Pattern CODE =
      Pattern.compile("\\p{Lu}{1,4}(?:[-./ ]?\\d{1,3}\\p{Lu}?|[-./]\\p{Lu}{1,3})?");

  private final Vocabulary vocabulary;
  private final LimitFinder limits;
  private final Map<String, String> glass = new LinkedHashMap<>();
  private final List<Account.Unread> all = new ArrayList<>();
  private final Map<String, List<Account.Unread>> byAttribute = new HashMap<>();

  /** By the words themselves: many sentences are alike. */
  private final Map<Account.Unread, Set<String>> about = new IdentityHashMap<>();

  /** What codes of products may stand for. */
  private final Map<Account.Unread, Set<String>> called = new IdentityHashMap<>();

  private final Set<String> components;

  private final Map<String, List<Account.Unread>> ofTheSet = new LinkedHashMap<>();

  UnreadWords(Project project, Vocabulary vocabulary, List<Document> documents) {
    this.vocabulary = vocabulary;
    this.limits = new LimitFinder(vocabulary);
    this.components = project.components();
    project.glass().forEach(e -> glass.put(Tags.key(e.tag()), e.tag()));
    for (Facts facts : project.facts()) {
      for (Account.Unread words : facts.account().unread()) {
        if (!concerns(words)) continue;
        all.add(words);
        about.put(words, glassIn(words));
        called.put(words, calledFor(words));
        Set<String> may = new LinkedHashSet<>(words.likely());
        may.addAll(called.get(words));
        for (String attribute : may) {
          // "The architect may request a mock-up" is understood: it answers nothing.
          if (vocabulary.asksNothing(attribute, words.text())) continue;
          byAttribute.computeIfAbsent(attribute, a -> new ArrayList<>()).add(words);
        }
      }
    }
    List<Account.Unread> standards = UnknownStandards.in(project, vocabulary);
    ofTheSet.put("dangling-reference", OpenReferences.in(project, documents, vocabulary));
    ofTheSet.put("withdrawn-standard", standards);
    ofTheSet.put("unlisted-standard", standards);
    ofTheSet.put("conflict", all.stream().filter(this::mayContradict).toList());
  }

  /**
   * "TM-1" under "Mortar", which stands for a product that nobody was understood to describe: it
   * may be all that is asked of a mortar.
   */
  private Set<String> calledFor(Account.Unread words) {
    String work = vocabulary.family(words.text());
    boolean calls =
        WorkFamilies.MATERIALS.contains(work)
            && !words.samples().isEmpty()
            && words.samples().stream().allMatch(this::isStray);
    if (!calls) return Set.of();
    return vocabulary.attributes().stream()
        .filter(a -> a.family().equals(work) && isOfProduct(a))
        .map(Attribute::id)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** What the sheet of a product says of it; how much of it goes where, no product tells. */
  private static boolean isOfProduct(Attribute a) {
    return a.kind() == Attribute.Kind.STANDARD
        || a.kind() == Attribute.Kind.TERM
        || a.dimension() == Dimension.PRESSURE;
  }

  /** True of the code of a product that nobody was understood to describe. */
  boolean isStray(String text) {
    String code = text.strip();
    return CODE.matcher(code).matches() && !components.contains(Tags.key(code));
  }

  /** One of two values that differ may be in it. */
  private boolean mayContradict(Account.Unread words) {
    return words.likely().stream()
        .anyMatch(id -> vocabulary.attribute(id).map(Attribute::single).orElse(false));
  }

  /** What a check of the whole set may look for without knowing it when it sees it. */
  List<Account.Unread> ofTheSet(Rule rule) {
    return ofTheSet.getOrDefault(rule.id(), List.of());
  }

  /** The first of them that may concern an entry, or null. */
  Account.Unread ofTheSet(Rule rule, Entry entry) {
    for (Account.Unread words : ofTheSet(rule)) {
      if (words.tags().isEmpty() || tags(words).contains(entry.tag())) return words;
    }
    return null;
  }

  List<Account.Unread> all() {
    return all;
  }

  /** What might state for an entry what a rule asks for; empty when nothing might. */
  List<Account.Unread> thatMightAnswer(Rule rule, Entry entry) {
    List<Account.Unread> out = new ArrayList<>();
    for (String attribute : attributes(rule)) {
      for (Account.Unread words : byAttribute.getOrDefault(attribute, List.of())) {
        if (reaches(words, entry) && !out.contains(words)) out.add(words);
      }
    }
    return out;
  }

  private static Set<String> attributes(Rule rule) {
    Set<String> out = new LinkedHashSet<>();
    if (!rule.attribute().isEmpty()) out.add(rule.attribute());
    out.addAll(rule.instead());
    return out;
  }

  private static boolean asks(Rule rule, Collection<String> attributes) {
    if (!rule.attribute().isEmpty() && attributes.contains(rule.attribute())) return true;
    for (String other : rule.instead()) if (attributes.contains(other)) return true;
    return false;
  }

  /** Words under the tag of some other tile are that tile's. */
  private boolean concerns(Account.Unread words) {
    return words.tags().isEmpty() || !tags(words).isEmpty() || glass.isEmpty();
  }

  private boolean reaches(Account.Unread words, Entry entry) {
    Set<String> tags = tags(words);
    return tags.isEmpty() || tags.contains(entry.tag());
  }

  /**
   * The glass tiles that the words are about: under whose name they stand, or that they open with.
   */
  Set<String> tags(Account.Unread words) {
    Set<String> known = about.get(words);
    return known != null ? known : glassIn(words);
  }

  private Set<String> glassIn(Account.Unread words) {
    Collection<String> named = words.tags().isEmpty() ? subject(words.text()) : words.tags();
    return named.stream()
        .map(tag -> glass.get(Tags.key(tag)))
        .filter(Objects::nonNull)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** "GT-4 has a mirror on its back" tells nothing of GT-5; "Except GT-4, all are plain" does. */
  private Set<String> subject(String sentence) {
    TagFinder.TagsAt first = TagFinder.firstTags(sentence);
    if (first == null || first.start() > SUBJECT || vocabulary.list("except").in(sentence))
      return Set.of();
    // "Walls as drawn, floor of GT-4 level" has another subject.
    boolean opens =
        sentence.substring(0, first.start()).chars().noneMatch(c -> ",;:".indexOf(c) >= 0);
    return opens ? new TreeSet<>(limits.of(sentence, false).tags()) : Set.of();
  }

  /** The checks that the words might answer. */
  List<String> couldAnswer(Account.Unread words, List<Rule> rules) {
    Set<String> out = new LinkedHashSet<>();
    for (Rule rule : rules) {
      boolean calls = asks(rule, called.getOrDefault(words, Set.of()));
      if (calls || asks(rule, words.attributes())) out.add(rule.reportedAs());
    }
    String text = words.text() + " " + String.join(" ", words.samples());
    boolean single =
        words.attributes().stream()
            .anyMatch(id -> vocabulary.attribute(id).map(Attribute::single).orElse(false));
    if (single) out.add("conflict");
    if (!words.tags().isEmpty() || !Tags.inOpening(text).isEmpty())
      out.addAll(List.of("unscheduled-tag", "unspecified-tag"));
    if (!Citations.find(text).isEmpty())
      out.addAll(List.of("withdrawn-standard", "unlisted-standard", "unused-standard"));
    return List.copyOf(out);
  }
}
