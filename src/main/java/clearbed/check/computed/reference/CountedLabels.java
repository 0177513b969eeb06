package clearbed.check.computed.reference;

import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The numbers of counted notes, {@code N1} to {@code N25}, and what refers to others. */
final class CountedLabels {
  /** So many count something. */
  private static final int FEWEST = 5;

  private static final Pattern LABEL = Pattern.compile("([A-Z]{1,2}[-.]?)(\\d{1,2})");

  private static final Pattern NAMED =
      Pattern.compile("(?<![A-Za-z0-9.-])([A-Z]{1,2}[-.]?)(\\d{1,2})(?![A-Za-z0-9.-]\\w|\\d)");

  private final Map<String, Set<Integer>> numbers;

  private CountedLabels(Map<String, Set<Integer>> numbers) {
    this.numbers = numbers;
  }

  static CountedLabels of(Section section) {
    Map<String, Set<Integer>> numbers = new HashMap<>();
    for (Clause clause : section.clauses()) {
      Matcher m = LABEL.matcher(clause.number());
      if (m.matches())
        numbers
            .computeIfAbsent(m.group(1), any -> new TreeSet<>())
            .add(Integer.parseInt(m.group(2)));
    }
    numbers.values().removeIf(all -> all.size() < FEWEST);
    return new CountedLabels(numbers);
  }

  /** Notes that a clause sends to and the section does not have, as written. */
  List<String> missedIn(Clause clause) {
    if (numbers.isEmpty()) return List.of();
    Set<String> missed = new TreeSet<>();
    Matcher m = NAMED.matcher(clause.text());
    while (m.find()) {
      Set<Integer> known = numbers.get(m.group(1));
      if (known != null && !known.contains(Integer.parseInt(m.group(2)))) missed.add(m.group());
    }
    return List.copyOf(missed);
  }
}
