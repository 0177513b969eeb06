package clearbed.track;

import clearbed.model.report.QuestionLog;
import clearbed.model.report.State;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Says where what people wrote beside questions does not do what they may have meant. */
final class ReplyRemarks {
  private static final int MOST_NAMED = 20;

  private ReplyRemarks() {}

  static List<String> of(Collection<QuestionLog.LogLine> lines) {
    List<QuestionLog.LogLine> open = lines.stream().filter(QuestionLog.LogLine::isOpen).toList();
    List<String> remarks = new ArrayList<>();
    say(
        remarks,
        "an answer but not the status \"answered\"; they count as open",
        open.stream().filter(line -> line.isAsked() && hasAnswer(line) && !line.isOutdated()));
    say(
        remarks,
        "a status that is none of the words offered; they count as open",
        open.stream().filter(line -> line.reply().isStrange()));
    say(
        remarks,
        "a reply from before they came back or spread to more tiles; they count as open until status or answer is changed",
        open.stream().filter(QuestionLog.LogLine::isOutdated));
    say(
        remarks,
        "the status \"answered\" and no answer; they count as answered",
        lines.stream().filter(line -> line.state() == State.ANSWERED && !hasAnswer(line)));
    return remarks;
  }

  private static boolean hasAnswer(QuestionLog.LogLine line) {
    return !line.reply().answer().isBlank();
  }

  private static void say(List<String> remarks, String what, Stream<QuestionLog.LogLine> lines) {
    List<Integer> numbers = lines.map(QuestionLog.LogLine::number).distinct().sorted().toList();
    if (numbers.isEmpty()) return;
    String named =
        numbers.stream().limit(MOST_NAMED).map(String::valueOf).collect(Collectors.joining(", "));
    String more = numbers.size() > MOST_NAMED ? ", and others" : "";
    remarks.add("Questions with " + what + ": " + named + more + ".");
  }
}
