package clearbed.cli;

/** What may lie where a file is to go. */
enum Obstacle {
  DOCUMENT(true),
  DOCUMENT_SPELT_OTHERWISE(true),
  DOCUMENT_IN_OTHER_CAPITALS(true),
  DOCUMENT_THROUGH_A_LINK(true),
  DOCUMENT_BY_A_HARD_LINK(true),
  DOCUMENT_IN_A_LINKED_FOLDER(true),
  ARCHIVE(true),
  RULE_FILE(true),
  CARRIED_WORKBOOK(true),
  CARRIED_WORKBOOK_BY_A_HARD_LINK(true),
  THE_LOG_ITSELF(true),
  TYPED_INTO(false),
  TYPED_INTO_THROUGH_A_LINK(false),
  TYPED_INTO_WITHOUT_PROPERTIES(false),
  WORKBOOK_OF_OTHERS(false),
  TEXT_OF_OTHERS(false),
  EMPTY_FILE(false),
  LETTER_THAT_WAS_CHANGED(false),
  OPEN_IN_EXCEL(true),
  OPEN_IN_LIBREOFFICE(true),
  OPEN_ELSEWHERE_THROUGH_A_LINK(true),
  WRITE_PROTECTED(true),
  DEVICE(true),
  FOLDER(true),
  DEAD_LINK(true);

  private final boolean forEver;

  Obstacle(boolean forEver) {
    this.forEver = forEver;
  }

  /** True when no option replaces it. */
  boolean isForEver() {
    return forEver;
  }
}
