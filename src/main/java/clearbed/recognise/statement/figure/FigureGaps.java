package clearbed.recognise.statement.figure;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;

/** Tells where figures stand that were not understood. */
public final class FigureGaps {
  private static final int LONGEST = 120;

  /** More of one table nobody reads one by one. */
  private static final int MOST = 200;

  private FigureGaps() {}

  /** A gap for each statement that was not understood. */
  public static List<Document.Gap> of(Vocabulary vocabulary, List<Statement> statements) {
    List<Document.Gap> out = List.of();
    for (Statement s : statements) {
      if (!(s.content() instanceof Content.NotUnderstood figure)) continue;
      if (out.isEmpty()) out = new ArrayList<>();
      out.add(new Document.Gap(s.origin(), reason(vocabulary, s.attribute(), figure)));
    }
    return out;
  }

  private static String reason(Vocabulary vocabulary, String id, Content.NotUnderstood figure) {
    String written = figure.written().replace('\n', ' ');
    String cut = written.length() > LONGEST ? written.substring(0, LONGEST) + "..." : written;
    Attribute attribute = vocabulary.attribute(id).orElseThrow();
    String label = attribute.label();
    String as = kind(attribute);
    // "As an area: Area" says it twice.
    String more = as.endsWith(label.toLowerCase(java.util.Locale.ROOT)) ? "" : ": " + label;
    return "not understood: '" + cut + "' as " + as + more;
  }

  private static String kind(Attribute attribute) {
    switch (attribute.kind()) {
      case SIZE:
        return "a size";
      case STANDARD:
        return "a standard";
      case TERM, REQUIRED:
        return "words";
      default:
        break;
    }
    if (attribute.dimension() == null) return "a figure";
    return switch (attribute.dimension()) {
      case AREA -> "an area";
      case LENGTH -> "a length";
      case VOLUME -> "a volume";
      case PRESSURE -> "a strength";
      case TEMPERATURE, TEMPERATURE_DIFFERENCE -> "a temperature";
      case TIME -> "a time";
      default -> "a number";
    };
  }

  /** The same, with those beyond what anybody would read counted in one. */
  public static List<Document.Gap> shortened(List<Document.Gap> gaps) {
    if (gaps.size() <= MOST) return gaps;
    List<Document.Gap> out = new ArrayList<>(gaps.subList(0, MOST));
    Origin next = gaps.get(MOST).origin();
    out.add(
        new Document.Gap(
            next, "and " + (gaps.size() - MOST) + " more places of this table, from here on"));
    return out;
  }
}
