package clearbed.recognise.statement.part;

import clearbed.recognise.statement.limit.LimitFinder;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.PlaceFinder;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Finds what a part of a text names that may limit its values, each where it stands. */
final class NamedFinder {
  /** Between the members of a list, in characters. */
  private static final int LIST_GAP = 30;

  /** Between a value and a place that no preposition brings, in words. */
  private static final int BESIDE = 2;

  /** Nobody divides a sentence into more; what is longer is limited as a whole. */
  private static final int MOST = 60;

  private static final Pattern OTHER_PART = Pattern.compile("^.*[;:]");

  private record Raw(int start, int end, boolean complement) {}

  private final Vocabulary vocabulary;
  private final LimitFinder limits;
  private final PlaceFinder places;
  private final TileProperties properties;

  NamedFinder(Vocabulary vocabulary, LimitFinder limits) {
    this.vocabulary = vocabulary;
    this.limits = limits;
    this.places = new PlaceFinder(vocabulary);
    this.properties = new TileProperties(vocabulary);
  }

  /** From left to right, behind the lead-in; lists are one. */
  List<Named> in(Passage p) {
    List<Said> values = p.said().stream().filter(s -> !s.anywhere() && !p.isWhole(s)).toList();
    if (values.size() < 2 && p.said().isEmpty() || values.size() > MOST) return List.of();
    List<Raw> all = raw(p, values);
    if (all.size() > MOST) return List.of();
    List<Raw> raw = free(all);
    List<Named> out = new ArrayList<>();
    for (int i = 0; i < raw.size(); i++) {
      Raw first = raw.get(i);
      if (first.complement()) {
        boolean adds = i > 0 && addsTo(p, raw.get(i - 1), first, values);
        if (!adds) out.add(new Named(first.start(), first.end(), Limits.NONE, true));
        continue;
      }
      int end = first.end();
      while (i + 1 < raw.size() && listed(p, first, end, raw.get(i + 1), values))
        end = raw.get(++i).end();
      out.add(new Named(first.start(), end, of(p, first.start(), end), false));
    }
    return out;
  }

  /**
   * "Wet rooms and GT-12: 8 ft" is said of both, and not of GT-12 where it is in a wet room: the
   * places that are meant beside the marks, or nothing where there are none.
   *
   * @param its what the text limits a value to
   */
  Optional<Limits> placesBesideTags(String text, Limits its) {
    if (its.tags().isEmpty()) return Optional.empty();
    for (Phrases.Hit tag : limits.tagPlaces(text)) {
      for (PlaceFinder.Place place : places.named(text)) {
        boolean before = place.end() <= tag.start();
        int from = before ? place.end() : tag.end();
        int to = before ? tag.start() : place.start();
        if (from > to || to - from > LIST_GAP) continue;
        if (!vocabulary.list("clause.bothOf").matches(text.substring(from, to).strip())) continue;
        String listed = before ? text.substring(0, tag.start()) : text.substring(place.start());
        Limits all = limits.of(OTHER_PART.matcher(listed).replaceFirst(""), true);
        if (all.exposures().isEmpty()) continue;
        return Optional.of(all.withTags(Set.of()).withExcept(its.except()));
      }
    }
    return Optional.empty();
  }

  /** "Pools and other wet areas" takes nothing away. */
  private boolean addsTo(Passage p, Raw before, Raw complement, List<Said> values) {
    boolean never = vocabulary.list("clause.elsewhere").matches(words(p, complement));
    String between = p.text.substring(before.end(), complement.start());
    return !never
        && none(values, before.end(), complement.start())
        && vocabulary.list("clause.join").endsAt(between, between.length());
  }

  private static String words(Passage p, Raw raw) {
    return p.text.substring(raw.start(), raw.end());
  }

  private Limits of(Passage p, int start, int end) {
    Limits own = limits.of(p.text.substring(start, end), true);
    Map<String, Set<String>> with = new LinkedHashMap<>();
    if (!p.context.describesTile()) {
      for (TileProperties.PropertyHit hit : properties.in(p.text)) {
        if (hit.start() >= start && hit.end() <= end)
          with.computeIfAbsent(hit.attribute(), a -> new TreeSet<>()).add(hit.term());
      }
    }
    return own.supposing(with);
  }

  private List<Raw> raw(Passage p, List<Said> values) {
    String text = p.text;
    List<Raw> out = new ArrayList<>();
    for (Phrases.Hit hit : vocabulary.list("clause.complement").all(text))
      out.add(new Raw(hit.start(), hit.end(), true));
    for (Phrases.Hit hit : vocabulary.list("clause.elsewhere").all(text))
      out.add(new Raw(hit.start(), hit.end(), true));
    for (Phrases.Hit hit : limits.tagPlaces(text)) out.add(new Raw(hit.start(), hit.end(), false));
    for (Phrases.Hit hit : limits.tilePlaces(text)) out.add(new Raw(hit.start(), hit.end(), false));
    if (!p.context.describesTile()) {
      for (TileProperties.PropertyHit hit : properties.in(text))
        out.add(new Raw(hit.start(), hit.end(), false));
    }
    boolean fragment = !vocabulary.list("clause.verb").in(text);
    for (PlaceFinder.Place place : places.named(text)) {
      if (place.introduced() || fragment && besideValue(p, place, values))
        out.add(new Raw(place.start(), place.end(), false));
    }
    out.removeIf(r -> r.start() < p.leadEnd && !r.complement());
    return out;
  }

  /** Of those that overlap what takes others away, else the longest. */
  private static List<Raw> free(List<Raw> raw) {
    List<Raw> order = new ArrayList<>(raw);
    order.sort(
        Comparator.comparing((Raw r) -> !r.complement())
            .thenComparingInt(r -> r.start() - r.end())
            .thenComparingInt(Raw::start));
    List<Raw> out = new ArrayList<>();
    for (Raw r : order) {
      if (out.stream().noneMatch(o -> o.start() < r.end() && r.start() < o.end())) out.add(r);
    }
    out.sort(Comparator.comparingInt(Raw::start));
    return out;
  }

  /** "Steam room 15 to 55 °C", "95 % dry, 100 % wet": a place right beside a figure limits it. */
  private boolean besideValue(Passage p, PlaceFinder.Place place, List<Said> values) {
    String before = p.text.substring(0, place.start());
    String behind = p.text.substring(place.end());
    boolean opens =
        before.isBlank() || vocabulary.list("clause.opens").endsAt(before, before.length());
    boolean ends = behind.isBlank() || vocabulary.list("clause.closes").startsAt(behind, 0);
    for (Said s : values) {
      if (s.attribute().startsWith("tile.")) continue;
      if (opens && s.start() >= place.end() && near(p.text.substring(place.end(), s.start())))
        return true;
      if (ends && s.end() <= place.start() && near(p.text.substring(s.end(), place.start())))
        return true;
    }
    return false;
  }

  private static boolean near(String between) {
    String words = between.trim();
    return words.chars().noneMatch(c -> ";:".indexOf(c) >= 0)
        && (words.isEmpty() || words.split("\\s+").length <= BESIDE);
  }

  /** Whether two things named are of one list: "exterior and steam room work". */
  private boolean listed(Passage p, Raw first, int end, Raw next, List<Said> values) {
    if (next.complement() || next.start() - end > LIST_GAP) return false;
    if (!none(values, end, next.start())) return false;
    String between = p.text.substring(end, next.start());
    if (!vocabulary.list("clause.join").endsAt(between, between.length())) return false;
    return !apart(p, first, end, next, values);
  }

  /** "8 ft at exterior, and in dry areas 20 ft": the second goes with the figure behind it. */
  private boolean apart(Passage p, Raw first, int end, Raw next, List<Said> values) {
    Said left = null;
    Said right = null;
    for (Said s : values) {
      if (s.end() <= first.start() && (left == null || s.end() > left.end())) left = s;
      if (s.start() >= next.end() && (right == null || s.start() < right.start())) right = s;
    }
    if (left == null || right == null || !left.attribute().equals(right.attribute())) return false;
    Phrases separator = vocabulary.list("clause.separator");
    return !separator.in(p.text.substring(left.end(), first.start()))
        && !separator.in(p.text.substring(next.end(), right.start()));
  }

  private static boolean none(List<Said> values, int from, int to) {
    return values.stream().noneMatch(s -> s.start() >= from && s.end() <= to);
  }
}
