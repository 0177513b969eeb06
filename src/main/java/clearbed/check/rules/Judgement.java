package clearbed.check.rules;

import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Calculation;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Verdict;
import clearbed.model.report.Verdict.Outcome;
import clearbed.model.value.Content;
import clearbed.model.value.Value;
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

  /** What is said will not do. */
  record Failed(FindingKind kind, FindingWords words, FoundAt at, List<Calculation> calculations)
      implements Judgement {
    public Failed(FindingKind kind, FindingWords words, FoundAt at) {
      this(kind, words, at, List.of());
    }

    /** A figure is stated, and nobody can say which: neither missing nor enough. */
    public static Failed unread(String label, Value value) {
      Content.NotUnderstood figure = (Content.NotUnderstood) value.content();
      String question =
          "Which figure is meant by '%s' for the %s of {tag}?"
              .formatted(figure.written(), label.toLowerCase(Locale.ROOT));
      return new Failed(
          FindingKind.UNREAD,
          new FindingWords(label + " of {tag} is {found}.", figure.text(), "", List.of(), question),
          FoundAt.at(value.origin()));
    }

    @Override
    public Verdict verdict(String check, String tag) {
      Outcome outcome = kind == FindingKind.UNREAD ? Outcome.UNREAD : Outcome.FINDING;
      return new Verdict(check, tag, outcome, words.found(), at.origin());
    }
  }
}
