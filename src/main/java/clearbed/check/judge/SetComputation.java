package clearbed.check.judge;

import clearbed.check.rules.Rule;
import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.List;

/**
 * A check of the whole set of documents. An archive says the same words hundreds of times: what is
 * found in a text belongs in a {@link clearbed.base.Memo}.
 */
public interface SetComputation {

  /** What such a check looks at. */
  record Scene(
      Project project,
      List<Document> documents,
      Vocabulary vocabulary,
      FindingWriter writer,
      SetText text) {}

  List<Finding> find(Rule rule, Scene scene);
}
