package clearbed.recognise;

import clearbed.model.document.Table;
import clearbed.model.document.ThinList;
import clearbed.recognise.schedule.row.LaterSchedule;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.limit.Statement;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

/**
 * Facts as they are kept from run to run: rows that nobody has asked yet are kept as cells, for to
 * read them takes longer than to read all else.
 *
 * @param facts unread rows state nothing in it
 * @param schedules that unread rows stand in
 * @param unread in the order of their rows
 */
public record KeptFacts(Facts facts, List<LaterSchedule.Marks> schedules, List<UnreadRow> unread) {

  /**
   * @param at among the rows of the facts, from 0
   * @param schedule among the schedules, from 0
   */
  record UnreadRow(int at, int schedule, Table.Row row) {}

  public static KeptFacts of(Facts facts) {
    List<ScheduleRow> rows = new ArrayList<>();
    List<UnreadRow> unread = new ArrayList<>();
    Map<LaterSchedule, Integer> schedules = new IdentityHashMap<>();
    List<LaterSchedule.Marks> marks = new ArrayList<>();
    for (ScheduleRow row : facts.rows()) {
      if (!(ThinList.making(row.statements()) instanceof LaterSchedule.LateRow late)) {
        rows.add(row);
        continue;
      }
      Integer schedule = schedules.putIfAbsent(late.schedule(), marks.size());
      if (schedule == null) {
        schedule = marks.size();
        marks.add(late.schedule().marks());
      }
      unread.add(new UnreadRow(rows.size(), schedule, late.row()));
      rows.add(row.withStatements(List.of()));
    }
    return new KeptFacts(facts.withRows(rows), marks, unread);
  }

  /**
   * The facts again.
   *
   * @param recogniser of the vocabulary that they were taken with
   * @throws RuntimeException when this holds what cannot be
   */
  public Facts facts(Recogniser recogniser) {
    if (unread.isEmpty()) return facts;
    List<LaterSchedule> later = recogniser.later(schedules, unread.size());
    List<ScheduleRow> rows = new ArrayList<>(facts.rows());
    for (UnreadRow row : unread) {
      List<Statement> late = later.get(row.schedule).statements(row.row);
      rows.set(row.at, rows.get(row.at).withStatements(late));
    }
    return facts.withRows(rows);
  }
}
