package clearbed.cli;

import clearbed.check.RuleSet;
import clearbed.recognise.Recogniser;
import clearbed.recognise.Vocabulary;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** The words and the rules of a run. */
record Rulebook(Vocabulary vocabulary, RuleSet rules, Recogniser recogniser) {

  /** A rulebook that is being loaded while something else is done. */
  static final class Coming {
    private final CompletableFuture<Rulebook> loading;

    Coming(RuleOptions options) {
      loading = CompletableFuture.supplyAsync(() -> load(options), Coming::onOwnThread);
    }

    /**
     * Waits for it.
     *
     * @throws UsageFailure when a rule file is wrong
     */
    Rulebook get() {
      try {
        return loading.join();
      } catch (CompletionException e) {
        if (e.getCause() instanceof RuntimeException failure) throw failure;
        throw e;
      }
    }

    private static Rulebook load(RuleOptions options) {
      Vocabulary vocabulary = options.vocabulary();
      return new Rulebook(vocabulary, options.load(vocabulary), new Recogniser(vocabulary));
    }

    private static void onOwnThread(Runnable work) {
      Thread thread = new Thread(work, "rules");
      thread.setDaemon(true);
      thread.start();
    }
  }
}
