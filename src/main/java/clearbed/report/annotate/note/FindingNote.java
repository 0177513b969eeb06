package clearbed.report.annotate.note;

import clearbed.mark.OwnNotes;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.State;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.SafeText;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What is to be written at one place of one document.
 *
 * @param place one of the places of the finding
 * @param first true for the first note of its document, which says who decides
 */
public record FindingNote(Finding finding, Origin place, boolean first) {
  /** Who the comments are by. */
  public static final String AUTHOR = OwnNotes.AUTHOR;

  private static final int OTHER_PLACES_NAMED = 4;
  private static final Pattern DESIGNATION = Pattern.compile("[A-Z]{1,2}[0-9]+(?:\\.[0-9]+)?");
  private static final Pattern FIGURE = Pattern.compile("[0-9]+(?:\\.[0-9]+)?");

  public Level level() {
    return finding.level();
  }

  /** Level, check and tags: {@code ERROR mortar-class (GT-4)}. */
  public String heading() {
    String tags = finding.tags().isEmpty() ? "" : " (" + String.join(", ", finding.tags()) + ")";
    boolean plain = finding.state() == State.NEW || finding.state() == State.OPEN;
    String state = plain ? "" : ", " + finding.state().word();
    String level = level().word().toUpperCase(Locale.ROOT);
    return SafeText.xml(level + " " + finding.check() + tags + state);
  }

  /** What to read under the heading, a paragraph each. */
  public List<String> body() {
    List<String> lines = new ArrayList<>();
    lines.add(finding.message());
    if (!finding.question().isBlank()) lines.add(OwnNotes.QUESTION + finding.question());
    String elsewhere = otherPlaces();
    if (!elsewhere.isEmpty()) lines.add(OwnNotes.ELSEWHERE + elsewhere);
    if (first) lines.add(Deferral.LINE);
    return lines.stream().map(SafeText::xml).toList();
  }

  /**
   * The words that it is about, the narrowest known first: what was found, its figure with the word
   * before or after, the words of the place.
   */
  public List<String> words() {
    List<String> words = new ArrayList<>();
    boolean main = place.equals(finding.origin());
    if (main && !finding.found().isBlank()) {
      words.add(finding.found());
      Matcher standard = DESIGNATION.matcher(finding.found());
      if (standard.find()) words.add(standard.group());
      Matcher figure = FIGURE.matcher(finding.found());
      if (figure.find() && place.text() != null) {
        Matcher there =
            Pattern.compile(
                    "(?<![\\d.])" + Pattern.quote(figure.group()) + "(?![\\d])[\\s-]*[\\p{L}%]*")
                .matcher(place.text());
        if (there.find()) words.add(there.group());
      }
    }
    if (place.text() != null) words.add(place.text());
    return words;
  }

  /** Heading and body, a line each. */
  public String text() {
    return heading() + "\n" + String.join("\n", body());
  }

  /** The first few: a finding may hold at hundreds of places, and every one has its own note. */
  private String otherPlaces() {
    List<String> others = new ArrayList<>();
    places(finding)
        .filter(origin -> !origin.equals(place) && !origin.document().isEmpty())
        .map(Origin::place)
        .filter(words -> !words.equals(place.place()))
        .distinct()
        .forEach(others::add);
    int more = others.size() - OTHER_PLACES_NAMED;
    if (more <= 0) return String.join("; ", others);
    return String.join("; ", others.subList(0, OTHER_PLACES_NAMED)) + "; and " + more + " more";
  }

  /** Every place of a finding, each once, the main one first. */
  public static Stream<Origin> places(Finding finding) {
    Origin main = finding.origin();
    return Stream.concat(Stream.ofNullable(main), finding.places().stream()).distinct();
  }
}
