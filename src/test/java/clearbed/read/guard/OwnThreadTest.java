package clearbed.read.guard;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import clearbed.base.Cancellation;
import clearbed.base.Waits;
import clearbed.read.source.ReadingLimits;
import java.time.Duration;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.junit.jupiter.api.Test;

class OwnThreadTest {
  private static final OwnThread SHORT = new OwnThread(ReadingLimits.of(Duration.ofMillis(100)));
  private static final OwnThread LONG = new OwnThread(ReadingLimits.of(Duration.ofMinutes(1)));

  @Test
  void workThatTakesTooLongIsInterruptedAndEndsAtItsNextCheck() {
    CompletableFuture<Throwable> end = new CompletableFuture<>();
    assertThatExceptionOfType(TimeoutException.class)
        .isThrownBy(() -> SHORT.run("endless", () -> endless(end), ""));
    assertThat(end.orTimeout(10, TimeUnit.SECONDS).join())
        .isInstanceOf(CancellationException.class);
  }

  @Test
  void whatIsWaitedForInVainIsAddedUp() throws Exception {
    Waits waits = new Waits();
    OwnThread own = new OwnThread(ReadingLimits.of(Duration.ofMillis(100), waits));
    own.run("sound", () -> "read", "");
    assertThat(waits.times()).isZero();
    for (int i = 0; i < 2; i++) {
      CompletableFuture<Throwable> end = new CompletableFuture<>();
      assertThatExceptionOfType(TimeoutException.class)
          .isThrownBy(() -> own.run("endless", () -> endless(end), ""));
    }
    assertThat(waits.times()).isEqualTo(2);
    assertThat(waits.seconds()).isPositive();
  }

  private static String endless(CompletableFuture<Throwable> end) {
    try {
      while (true) Cancellation.check();
    } catch (CancellationException e) {
      end.complete(e);
      throw e;
    }
  }

  @Test
  void aLackOfMemoryOrStackReachesTheCallerAndNobodyElse() throws Exception {
    assertThat(
            LONG.<String>run("large", () -> "" + new long[Integer.MAX_VALUE].length, "no memory"))
        .isEqualTo("no memory");
    assertThatExceptionOfType(ExecutionException.class)
        .isThrownBy(() -> LONG.run("deep", () -> deep(0), 0))
        .withCauseInstanceOf(StackOverflowError.class);
    assertThat(LONG.run("sound", () -> "read", "no memory")).isEqualTo("read");
  }

  private static int deep(int level) {
    return deep(level + 1) + level;
  }
}
