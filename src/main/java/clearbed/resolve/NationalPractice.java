package clearbed.resolve;

import clearbed.recognise.statement.code.Citation;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Whose rules of the trade a set of documents follows, by the publishers of what it cites. */
public enum NationalPractice {
  BRITISH("BS|PD"),
  GERMAN("DIN"),
  AUSTRALIAN("AS/NZS|AS|NZS"),
  OTHER("$^");

  private final Pattern publisher;

  NationalPractice(String publishers) {
    this.publisher = Pattern.compile("(?:" + publishers + ")[^A-Za-z].*", Pattern.DOTALL);
  }

  /** The word for it in rule files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The practice of that word. */
  public static Optional<NationalPractice> of(String word) {
    return List.of(values()).stream().filter(one -> one.word().equals(word)).findFirst();
  }

  /** What most citations are published by; {@code OTHER} where none is national or two are even. */
  static NationalPractice of(List<Citation> citations) {
    Map<NationalPractice, Integer> count = new EnumMap<>(NationalPractice.class);
    for (Citation citation : citations) {
      for (NationalPractice one : values()) {
        if (one.publisher.matcher(citation.asWritten()).matches())
          count.merge(one, 1, Integer::sum);
      }
    }
    int most = count.values().stream().max(Integer::compare).orElse(0);
    List<NationalPractice> first =
        count.keySet().stream().filter(one -> count.get(one) == most).toList();
    return first.size() == 1 ? first.get(0) : OTHER;
  }
}
