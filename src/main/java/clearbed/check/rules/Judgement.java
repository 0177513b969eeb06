package clearbed.check.rules;

import clearbed.model.Account;
import clearbed.model.Calculation;
import clearbed.model.Content;
import clearbed.model.FindingKind;
import clearbed.model.Origin;
import clearbed.model.Value;
import clearbed.model.Verdict;
import clearbed.model.Verdict.Outcome;
import java.util.List;
import java.util.Locale;

/** How a rule came out for one entry. */
public sealed interface Judgement {

  /** As a cell of the coverage matrix. */
  Verdict verdict(String check, String tag);

  /** What was worked out for it. */
  default List<Calculation> calculations() {
    return List.of();
  }

  record Satisfied(String found, Origin origin, List<Calculation> calculations)
      implements Judgement {
    public Satisfied(String found, Origin origin) {
      this(found, origin, List.of());
    }

    @Override
    public Verdict verdict(String check, String tag) {
      return new Verdict(check, tag, Outcome.SATISFIED, found, origin);
    }
  }

  record NotApplicable(String reason) implements Judgement {
    @Override
    public Verdict verdict(String check, String tag) {
      return new Verdict(check, tag, Outcome.NOT_APPLICABLE, reason, null);
    }
  }

  /** Another finding has to be answered first. */
  record Undecided(String reason, Origin origin) implements Judgement {
    @Override
    public Verdict verdict(String check, String tag) {
      return new Verdict(check, tag, Outcome.UNDECIDED, reason, origin);
    }
  }

  /**
   * Nothing that was read says it, and some words that were not understood might.
   *
   * @param words none of them alone has to be it
   */
  record NotRead(List<Account.Unread> words) implements Judgement {
    @Override
    public Verdict verdict(String check, String tag) {
      Account.Unread first = words.get(0);
      return new Verdict(
          check, tag, Outcome.UNREAD, "not understood: " + first.text(), first.origin());
    }
  }

  /** Nothing is said. */
  record Missing() implements Judgement {
    @Override
    public Verdict verdict(String check, String tag) {
      return new Verdict(check, tag, Outcome.FINDING, "not stated", null);
    }
  }

  /**
   * What is said will not do.
   *
   * @param message in place of the rule's own; empty to use that
   * @param expected in place of the rule's own; empty to use that
   * @param question in place of the rule's own; empty to use that
   */
  record Failed(
      FindingKind kind,
      String message,
      String found,
      String expected,
      Origin origin,
      List<Origin> places,
      List<String> steps,
      List<Calculation> calculations,
      String question)
      implements Judgement {
    public Failed(
        FindingKind kind,
        String message,
        String found,
        String expected,
        Origin origin,
        List<Origin> places,
        List<String> steps,
        List<Calculation> calculations) {
      this(kind, message, found, expected, origin, places, steps, calculations, "");
    }

    /** A figure is stated, and nobody can say which: neither missing nor enough. */
    public static Failed unread(String label, Value value) {
      Content.NotUnderstood figure = (Content.NotUnderstood) value.content();
      String question =
          "Which figure is meant by '%s' for the %s of {tag}?"
              .formatted(figure.written(), label.toLowerCase(Locale.ROOT));
      return new Failed(
          FindingKind.UNREAD,
          label + " of {tag} is {found}.",
          figure.text(),
          "",
          value.origin(),
          List.of(),
          List.of(),
          List.of(),
          question);
    }

    public Failed(FindingKind kind, String message, String found, String expected, Origin origin) {
      this(kind, message, found, expected, origin, List.of(), List.of(), List.of());
    }

    public Failed(
        FindingKind kind, String message, String found, Origin origin, List<Origin> places) {
      this(kind, message, found, "", origin, places, List.of(), List.of());
    }

    @Override
    public Verdict verdict(String check, String tag) {
      Outcome outcome = kind == FindingKind.UNREAD ? Outcome.UNREAD : Outcome.FINDING;
      return new Verdict(check, tag, outcome, found, origin);
    }
  }
}
