package clearbed.report.workbook.log;

import clearbed.check.judge.TagWords;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.State;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.BinaryOperator;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Findings that share the number of their question as one line: what the question says of all. */
public final class AskedTogether {
  private final QuestionLog.LogLine first;
  private final List<QuestionLog.LogLine> all;

  /** Those that the question speaks of now: the open ones, else those still found, else all. */
  private final List<QuestionLog.LogLine> spokenOf;

  private AskedTogether(List<QuestionLog.LogLine> all) {
    this.all = all;
    this.first = all.get(0);
    List<QuestionLog.LogLine> open = all.stream().filter(line -> line.finding().isOpen()).toList();
    List<QuestionLog.LogLine> found = all.stream().filter(AskedTogether::isFound).toList();
    this.spokenOf = !open.isEmpty() ? open : !found.isEmpty() ? found : all;
  }

  /**
   * The questions of a log. The row of a question has the id of the finding that got its number
   * first, whatever becomes of that.
   *
   * @param lines with the states that replies give them, in the order of the log
   * @return by the id of their row, in the order of the log
   */
  public static Map<String, QuestionLog.LogLine> of(Collection<QuestionLog.LogLine> lines) {
    Map<Integer, List<QuestionLog.LogLine>> byNumber = new LinkedHashMap<>();
    for (QuestionLog.LogLine line : lines) {
      if (line.number() > 0)
        byNumber.computeIfAbsent(line.number(), number -> new ArrayList<>(1)).add(line);
    }
    Map<String, QuestionLog.LogLine> rows = new LinkedHashMap<>();
    for (List<QuestionLog.LogLine> same : byNumber.values()) {
      rows.put(same.get(0).finding().id(), new AskedTogether(same).line());
    }
    return rows;
  }

  /** The places of a question: all where something is missing, shortly named after the first. */
  public static String places(Finding question) {
    StringBuilder out = new StringBuilder(question.origin().place());
    Origin before = question.origin();
    for (Origin place : question.places()) {
      out.append("; ").append(shortly(place, before));
      before = place;
    }
    return out.toString();
  }

  private static String shortly(Origin place, Origin before) {
    boolean same = place.document().equals(before.document());
    boolean cells = place.cell() != null && place.page() == null && before.cell() != null;
    if (same && cells && Objects.equals(place.sheet(), before.sheet())) return place.cell();
    String document = Origin.ofDocument(place.document()).place() + ", ";
    String whole = place.place();
    return same && whole.startsWith(document) ? whole.substring(document.length()) : whole;
  }

  private static boolean isFound(QuestionLog.LogLine line) {
    return line.finding().suppressed().isEmpty() && line.finding().state() != State.RESOLVED;
  }

  private QuestionLog.LogLine line() {
    QuestionLog.LogLine now = spokenOf.get(0);
    boolean gone = now.finding().state() == State.RESOLVED;
    return new QuestionLog.LogLine(
        finding(),
        first.number(),
        day(QuestionLog.LogLine::firstSeen, BinaryOperator.minBy(Comparator.naturalOrder())),
        day(QuestionLog.LogLine::lastSeen, BinaryOperator.maxBy(Comparator.naturalOrder())),
        gone
            ? day(QuestionLog.LogLine::goneOn, BinaryOperator.maxBy(Comparator.naturalOrder()))
            : "",
        now.remark(),
        now.refuted(),
        first.reply(),
        first.answers());
  }

  private Finding finding() {
    Finding now = spokenOf.get(0).finding();
    List<Finding> findings = spokenOf.stream().map(QuestionLog.LogLine::finding).toList();
    Set<String> tags = new LinkedHashSet<>();
    Set<Origin> places = new LinkedHashSet<>();
    for (Finding finding : findings) {
      tags.addAll(finding.tags());
      places.add(finding.origin());
    }
    places.remove(now.origin());
    return new Finding(
        first.finding().id(),
        now.check(),
        now.kind(),
        findings.stream().map(Finding::level).min(Comparator.naturalOrder()).orElse(Level.ERROR),
        state(),
        List.copyOf(tags),
        now.attribute(),
        now.origin(),
        List.copyOf(places),
        said(findings, Finding::message, Finding.FindingWording::message),
        same(findings, Finding::found),
        same(findings, Finding::expected),
        List.of(),
        said(findings, Finding::question, Finding.FindingWording::question),
        distinct(findings, Finding::clause),
        now.source(),
        now.why(),
        now.suppressed(),
        now.wording());
  }

  private State state() {
    List<State> states = spokenOf.stream().map(line -> line.finding().state()).toList();
    if (states.contains(State.REOPENED)) return State.REOPENED;
    return states.stream().distinct().count() == 1 ? states.get(0) : State.OPEN;
  }

  /** Sentences that differ in their tags alone are said once, of all of these. */
  private static String said(
      List<Finding> findings,
      Function<Finding, String> own,
      Function<Finding.FindingWording, String> ofAny) {
    if (findings.size() == 1) return own.apply(findings.get(0));
    Map<String, List<String>> tags = new LinkedHashMap<>();
    for (Finding finding : findings) {
      String sentence = ofAny.apply(finding.wording());
      String key = sentence.contains(Finding.FindingWording.TAG) ? sentence : own.apply(finding);
      tags.computeIfAbsent(key, words -> new ArrayList<>()).addAll(finding.tags());
    }
    return tags.entrySet().stream()
        .map(each -> TagWords.of(each.getKey(), each.getValue()))
        .collect(Collectors.joining(" "));
  }

  /** What is the same of all; of what differs, each sentence speaks for itself. */
  private static String same(List<Finding> findings, Function<Finding, String> of) {
    return findings.stream().map(of).distinct().count() == 1 ? of.apply(findings.get(0)) : "";
  }

  private static String distinct(List<Finding> findings, Function<Finding, String> of) {
    return findings.stream().map(of).distinct().collect(Collectors.joining(" "));
  }

  private String day(Function<QuestionLog.LogLine, String> of, BinaryOperator<String> which) {
    return all.stream().map(of).filter(day -> !day.isEmpty()).reduce(which).orElse("");
  }
}
