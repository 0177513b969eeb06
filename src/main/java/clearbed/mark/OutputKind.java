package clearbed.mark;

import java.util.Locale;

/** What the program writes. */
public enum OutputKind {
  /** The findings workbook, which people write into. */
  FINDINGS,
  /** The open questions, ready to send. */
  LETTER,
  /** A document with the findings written at their places. */
  COPY,
  /** The findings of a document that takes no marks. */
  LIST,
  JSON,
  SARIF,
  /** The page of documents and findings. */
  VIEW,
  /** The workbook over many projects. */
  SURVEY,
  /** What lies beside the tables of many projects. */
  TABLES;

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Null for a word that is none of ours. */
  static OutputKind of(String word) {
    for (OutputKind kind : values()) if (kind.word().equals(word)) return kind;
    return null;
  }
}
