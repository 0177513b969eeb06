package clearbed.read.markup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.Set;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import org.xml.sax.helpers.AttributesImpl;

class MarkupBlocksTest {

  @Test
  void the_thread_of_a_document_that_was_given_up_ends_at_the_next_element() {
    MarkupBlocks blocks = new MarkupBlocks("endless.html", false, Set.of());
    blocks.startElement("", "br", "br", new AttributesImpl());
    Thread.currentThread().interrupt();
    try {
      assertThatExceptionOfType(CancellationException.class)
          .isThrownBy(() -> blocks.startElement("", "br", "br", new AttributesImpl()));
    } finally {
      assertThat(Thread.interrupted()).isTrue();
    }
  }
}
