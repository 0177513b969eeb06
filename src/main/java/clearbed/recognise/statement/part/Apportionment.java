package clearbed.recognise.statement.part;

import clearbed.model.value.Content;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Gives each value of a part of a text the limits that stand beside it: "8 ft at exterior work and
 * 20 ft elsewhere, 3/8 in wide" has three values, and the place is that of the first. A part that
 * gives every attribute one value is limited as a whole.
 */
final class Apportionment {
  private static final Pattern ALL =
      Pattern.compile(
          "[,;] (?:and )?(?:all|each|both)(?: of them)?(?: joints?)?(?: at| to)? $"
              + "|[,;)] (?:and )?(?:all|each|both)(?: of (?:them|which|these))?(?: shall| must| to)?"
              + " (?:meet|compl|conform|satisf|certifi|manufactured|made|test)\\w*(?: [a-z]+){0,4} $");

  private static final Pattern WITH_CLASS =
      Pattern.compile("[^,;:.]{0,25} and ", Pattern.CASE_INSENSITIVE);

  private static final int ALL_REACH = 70;

  private final Passage p;
  private final Vocabulary vocabulary;
  private final List<Said> values;
  private final List<Named> groups;

  /** Values that something else is said of beside them. */
  private final Set<Said> twins = new HashSet<>();

  private final Map<Said, List<Named>> own = new IdentityHashMap<>();
  private final List<Named> shared = new ArrayList<>();

  /**
   * @param groups what is named that may limit, from left to right, none inside another
   */
  Apportionment(Passage p, Vocabulary vocabulary, List<Named> groups) {
    this.p = p;
    this.vocabulary = vocabulary;
    this.values =
        p.said().stream()
            .filter(s -> !s.anywhere() && !p.isWhole(s))
            .sorted(Comparator.comparingInt(Said::start))
            .toList();
    this.groups = groups;
    for (Said a : values) {
      for (Said b : values) if (a.start() != b.start() && apart(a, b)) twins.add(a);
    }
    if (!twins.isEmpty()) attach();
  }

  /** "Grout GT-1 with CG2WA and GT-2 with RG" names one standard twice, of two grouts. */
  private boolean apart(Said a, Said b) {
    return a.differs(b)
        || groups.size() > 1 && a.attribute().equals(b.attribute()) && namedBetween(a, b);
  }

  /** "Modified dry-set mortar, ANSI A118.4, white for GT-1" names one standard of one mortar. */
  private boolean namedBetween(Said a, Said b) {
    int from = Math.min(a.end(), b.end());
    int to = Math.max(a.start(), b.start());
    return groups.stream().anyMatch(g -> g.start() >= from && g.end() <= to);
  }

  /**
   * The values in the order in which they were found, with their limits.
   *
   * @param whole what all the words of the part limit it to
   */
  Map<Said, Limits> of(Surroundings around, Limits whole) {
    Map<Said, Limits> out = new IdentityHashMap<>();
    Limits all = Limits.NONE;
    for (Named one : shared) all = all.and(one.limits());
    boolean others = groups.stream().anyMatch(Named::complement);
    for (Said value : p.said()) {
      boolean apart = divides(value);
      boolean elsewhere = apart ? complement(value) : others;
      if (!elsewhere)
        out.put(value, apart ? own(value).within(around.settle(all)) : around.settle(whole));
    }
    for (Said value : p.said()) {
      if (out.containsKey(value)) continue;
      Limits its = divides(value) ? own(value).and(all) : whole.kind();
      out.put(value, around.elsewhere(its, named(value, out)));
    }
    return out;
  }

  /** What values of the same attribute are limited to here and were before. */
  private List<Limits> named(Said value, Map<Said, Limits> known) {
    List<Limits> out = new ArrayList<>(p.carried.of(value.attribute()));
    if (!divides(value)) groups.forEach(group -> out.add(group.limits()));
    for (Said other : p.said()) {
      boolean same = other.attribute().equals(value.attribute());
      if (same && known.containsKey(other)) out.add(known.get(other));
    }
    return out;
  }

  private boolean divides(Said value) {
    return !own.isEmpty() && !value.anywhere() && !p.isWhole(value);
  }

  private boolean complement(Said value) {
    return own.getOrDefault(value, List.of()).stream().anyMatch(Named::complement);
  }

  private Limits own(Said value) {
    Limits its = Limits.NONE;
    for (Named one : own.getOrDefault(value, List.of())) its = its.and(one.limits());
    return its;
  }

  private void attach() {
    boolean trailing = !groups.isEmpty() && !valuesIn(0, groups.get(0).start()).isEmpty();
    boolean[] right = new boolean[groups.size()];
    for (int i = 0; i < groups.size(); i++) right[i] = standsBefore(groups.get(i), trailing);
    for (int i = 0; i < groups.size(); i++) if (!right[i]) claimLeft(i);
    for (int i = 0; i < groups.size(); i++) if (right[i]) claimRight(i, right);
    for (Said s : values) if (ofAll(s)) spread(s);
    if (liesOnEach()) own.put(values.get(0), new ArrayList<>(groups));
  }

  /** "A118.10 goes behind GT-1, on the mortar bed behind GT-2": one thing on several grounds. */
  private boolean liesOnEach() {
    boolean first = !groups.isEmpty() && values.get(0).end() <= groups.get(0).start();
    return first
        && !isGround(values.get(0))
        && groups.stream().noneMatch(Named::complement)
        && values.stream().skip(1).allMatch(Apportionment::isGround);
  }

  private static boolean isGround(Said s) {
    return s.attribute().startsWith("substrate.");
  }

  /** Whether what is named limits the values behind it rather than those before. */
  private boolean standsBefore(Named g, boolean trailing) {
    List<Said> before = valuesIn(0, g.start());
    List<Said> behind = valuesIn(g.end(), p.text.length());
    if (before.isEmpty() || behind.isEmpty()) return before.isEmpty();
    int end = before.stream().mapToInt(Said::end).max().orElse(0);
    String gapLeft = p.text.substring(Math.min(end, g.start()), g.start());
    String gapRight = p.text.substring(g.end(), behind.get(0).start());
    if (gapRight.stripLeading().startsWith(":")) return true;
    boolean apartLeft = vocabulary.list("clause.separator").in(gapLeft);
    boolean apartRight = vocabulary.list("clause.separator").in(gapRight);
    return apartLeft == apartRight ? !trailing : apartLeft;
  }

  private List<Said> valuesIn(int from, int to) {
    return values.stream().filter(s -> s.start() >= from && s.end() <= to).toList();
  }

  /** "3/8 in. wide and 8 ft apart outdoors": back to what stands before, one of each attribute. */
  private void claimLeft(int i) {
    Named g = groups.get(i);
    int from = i == 0 ? 0 : groups.get(i - 1).end();
    List<Said> left = valuesIn(from, g.start());
    List<Said> had = new ArrayList<>();
    Said last = null;
    for (int k = left.size() - 1; k >= 0; k--) {
      Said s = left.get(k);
      boolean first = last == null;
      String between = first ? "" : p.text.substring(Math.min(s.end(), last.start()), last.start());
      boolean choice =
          !first
              && (vocabulary.list("clause.choice").matches(between.trim())
                  || bothAsked(last, between));
      boolean repeats = had.stream().anyMatch(s::differs) && !choice;
      if (repeats) return;
      boolean apart = between.indexOf(',') >= 0;
      if (!first && apart && !twins.contains(s)) return;
      take(s, g);
      had.add(s);
      last = s;
    }
  }

  /** "To EN 14891 class CM and ANSI A118.10, under GT-1": of one place both are said. */
  private boolean bothAsked(Said behind, String between) {
    return groups.size() == 1
        && behind.content() instanceof Content.Standard
        && WITH_CLASS.matcher(between).matches();
  }

  /** "Exterior 3 m, 8 mm": on to the next that is named, one of each attribute. */
  private void claimRight(int i, boolean[] right) {
    Named g = groups.get(i);
    int to = p.text.length();
    for (int k = i + 1; k < groups.size() && to == p.text.length(); k++) {
      if (right[k]) to = groups.get(k).start();
    }
    List<Said> behind = valuesIn(g.end(), to);
    boolean allOwned = !behind.isEmpty() && behind.stream().allMatch(own::containsKey);
    boolean head = i == 0 && valuesIn(0, g.start()).isEmpty();
    if (head && (allOwned || behind.stream().filter(twins::contains).allMatch(own::containsKey))) {
      shared.add(g);
      return;
    }
    List<Said> had = new ArrayList<>();
    Said last = null;
    for (Said s : behind) {
      if (own.containsKey(s)) return;
      String between =
          last == null ? "" : p.text.substring(Math.min(last.end(), s.start()), s.start());
      boolean choice = last != null && vocabulary.list("clause.choice").matches(between.trim());
      boolean repeats = had.stream().anyMatch(s::differs);
      if (repeats && !choice) return;
      take(s, g);
      had.add(s);
      last = s;
    }
  }

  /** "GT-1 every 20 ft, GT-2 every 12 ft, all 1/4 in wide". */
  private boolean ofAll(Said s) {
    String before = p.text.substring(Math.max(0, s.start() - ALL_REACH), s.start());
    return ALL.matcher(before).find();
  }

  private void spread(Said s) {
    List<Named> before = groups.stream().filter(g -> g.end() <= s.start()).toList();
    if (before.size() > 1) own.put(s, new ArrayList<>(before));
  }

  private void take(Said s, Named g) {
    own.computeIfAbsent(s, k -> new ArrayList<>()).add(g);
  }
}
