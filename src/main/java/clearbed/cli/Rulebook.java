package clearbed.cli;

import clearbed.check.rules.RuleSet;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** The words and the rules of a run. */
record Rulebook(Vocabulary vocabulary, RuleSet rules) {

  /** A rulebook that is being loaded while something else is done. */
  static final class Coming {
    private final CompletableFuture<Recogniser> recogniser = new CompletableFuture<>();
    private final CompletableFuture<Rulebook> whole = new CompletableFuture<>();

    Coming(RuleOptions options) {
      Thread thread = new Thread(() -> load(options), "rules");
      thread.setDaemon(true);
      thread.start();
    }

    /**
     * Waits for it.
     *
     * @throws UsageFailure when a rule file is wrong
     */
    Rulebook get() {
      try {
        return whole.join();
      } catch (CompletionException e) {
        if (e.getCause() instanceof RuntimeException failure) throw failure;
        throw e;
      }
    }

    /** Of the words only, which are there before the rules. */
    CompletableFuture<Recogniser> recogniser() {
      return recogniser;
    }

    private void load(RuleOptions options) {
      try {
        Vocabulary vocabulary = options.vocabulary();
        recogniser.complete(new Recogniser(vocabulary));
        whole.complete(new Rulebook(vocabulary, options.load(vocabulary)));
      } catch (RuntimeException | Error e) {
        recogniser.completeExceptionally(e);
        whole.completeExceptionally(e);
      }
    }
  }
}
