package clearbed.cli.option;

import clearbed.check.rules.RuleSet;
import clearbed.cli.terminal.UsageFailure;
import clearbed.project.CitedSet;
import clearbed.project.Rulebook;
import clearbed.recognise.EarlierFacts;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** A rulebook that is being loaded while something else is done. */
public final class ComingRulebook {
  private final CompletableFuture<Recogniser> recogniser = new CompletableFuture<>();
  private final CompletableFuture<Rulebook> whole = new CompletableFuture<>();
  private final RuleOptions options;
  private Rulebook chosen;

  public ComingRulebook(RuleOptions options) {
    this.options = options;
    Thread thread = new Thread(() -> load(options), "rules");
    thread.setDaemon(true);
    thread.start();
  }

  /**
   * Waits for it.
   *
   * @throws UsageFailure when a rule file is wrong
   */
  public Rulebook get() {
    if (chosen != null) return chosen;
    try {
      return whole.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof RuntimeException failure) throw failure;
      throw e;
    }
  }

  /** Takes the rules that the documents call for, where the command line names none. */
  public Rulebook chooseFor(List<Facts> facts) {
    Rulebook loaded = get();
    CitedSet set = options.choice().forDocuments(facts);
    RuleSet rules =
        set.name().equals(loaded.rules().name())
            ? loaded.rules()
            : options.load(loaded.vocabulary(), set.name());
    chosen = new Rulebook(loaded.vocabulary(), rules, set.why());
    return chosen;
  }

  /**
   * Takes marks that the schedules of the set have.
   *
   * @param facts that were read without them
   * @return what reads by them
   */
  public Recogniser learn(Lessons lessons, List<Facts> facts) {
    Vocabulary vocabulary = options.vocabulary(lessons);
    chosen = new Rulebook(vocabulary, options.load(vocabulary), "");
    return new Recogniser(vocabulary, new EarlierFacts(facts, lessons));
  }

  /** Of the words only, which are there before the rules. */
  public CompletableFuture<Recogniser> recogniser() {
    return recogniser;
  }

  private void load(RuleOptions options) {
    try {
      Vocabulary vocabulary = options.vocabulary();
      recogniser.complete(new Recogniser(vocabulary));
      whole.complete(new Rulebook(vocabulary, options.load(vocabulary), ""));
    } catch (RuntimeException | Error e) {
      recogniser.completeExceptionally(e);
      whole.completeExceptionally(e);
    }
  }
}
