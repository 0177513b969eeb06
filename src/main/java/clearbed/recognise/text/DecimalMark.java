package clearbed.recognise.text;

/** Which mark figures have before their decimals, as far as the figures around them show it. */
public enum DecimalMark {
  /** Typed for this program: {@code 1,250} is a thousand and {@code 1.250} is not. */
  TYPED(Three.THOUSANDS, Three.DECIMALS, true),
  /** Nothing shows it; a comma between groups of three is an English thousand. */
  UNKNOWN(Three.THOUSANDS, Three.UNCLEAR, true),
  POINT(Three.THOUSANDS, Three.DECIMALS, false),
  /** One figure shows a comma: enough to part thousands by the point, not to turn a comma round. */
  COMMA_ONCE(Three.UNCLEAR, Three.THOUSANDS, true),
  COMMA(Three.DECIMALS, Three.THOUSANDS, true),
  /** In a spreadsheet, numbers are shown in the American way whatever the words around them do. */
  COMMA_BESIDE_NUMBERS(Three.UNCLEAR, Three.UNCLEAR, true),
  /** The figures around contradict each other. */
  MIXED(Three.UNCLEAR, Three.UNCLEAR, false);

  /** What three digits behind a lone mark are. */
  enum Three {
    THOUSANDS,
    DECIMALS,
    UNCLEAR
  }

  private final Three behindComma;
  private final Three behindPoint;
  private final boolean commaMayBeDecimal;

  DecimalMark(Three behindComma, Three behindPoint, boolean commaMayBeDecimal) {
    this.behindComma = behindComma;
    this.behindPoint = behindPoint;
    this.commaMayBeDecimal = commaMayBeDecimal;
  }

  /**
   * @param mark comma or point, alone in a figure such as {@code 1,250}
   * @param customary true for a US customary unit, which goes with the point
   */
  Three behind(char mark, boolean customary) {
    if (mark == '.') return behindPoint;
    return customary && behindComma == Three.DECIMALS ? Three.UNCLEAR : behindComma;
  }

  /** True when figures around have a decimal comma. */
  public boolean showsComma() {
    return this == COMMA || this == COMMA_ONCE || this == COMMA_BESIDE_NUMBERS;
  }

  /** True when {@code 12,50} is twelve and a half. */
  boolean hasDecimalComma(boolean customary) {
    return commaMayBeDecimal && !(customary && this == UNKNOWN);
  }
}
