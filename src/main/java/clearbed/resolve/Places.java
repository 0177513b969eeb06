package clearbed.resolve;

import clearbed.model.Content;
import clearbed.model.Scope;
import clearbed.model.Value;
import clearbed.recognise.TermReader;
import clearbed.recognise.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Works out exposure and surface from room names where the documents do not state them. */
final class Places {
  // "Place: pool walls, submerged."
  private static final Pattern LABELLED =
      Pattern.compile(
          "\\b(?:places?|locations?|exposures?|where used|used (?:in|at|on)|areas?|rooms?)\\s*:\\s*([^.;]+)",
          Pattern.CASE_INSENSITIVE);

  private final TermReader terms;

  Places(Vocabulary vocabulary) {
    this.terms = new TermReader(vocabulary);
  }

  void derive(Draft draft) {
    List<Value> words = new ArrayList<>();
    for (Value v : List.copyOf(draft.values)) {
      boolean place =
          v.attribute().startsWith("location.")
              && (v.content() instanceof Content.Words || v.attribute().equals("location.surface"));
      if (place) words.add(v);
    }
    for (String attribute : List.of("location.exposure", "location.surface")) {
      if (!draft.terms(attribute).isEmpty()) continue;
      for (Value v : words) {
        for (String term : terms.in(attribute, v.asWritten()))
          draft.add(draft.derived(attribute, term, v));
      }
      if (!draft.scheduled) product(draft, attribute);
    }
  }

  /** A tile that no schedule places may be placed by the opening of its product clause. */
  private void product(Draft draft, String attribute) {
    if (!draft.terms(attribute).isEmpty()) return;
    String opening = draft.evidence.split("(?<=[a-z)])\\.\\s|;", 2)[0];
    Set<String> named = new LinkedHashSet<>(terms.places(attribute, opening));
    Matcher labelled = LABELLED.matcher(draft.evidence);
    while (labelled.find()) named.addAll(terms.in(attribute, labelled.group(1)));
    for (String term : named) {
      draft.add(
          new Value(
              attribute, new Content.Term(term), false, draft.evidence, draft.origin, Scope.ENTRY));
    }
  }
}
