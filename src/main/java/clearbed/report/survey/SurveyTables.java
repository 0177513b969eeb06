package clearbed.report.survey;

import clearbed.base.io.AtomicFile;
import clearbed.mark.ClosingLine;
import clearbed.mark.OutputKind;
import clearbed.mark.Sha256;
import clearbed.mark.TablesMark;
import clearbed.report.wording.Cautions;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.SafeText;
import clearbed.survey.Groups;
import clearbed.survey.Overview;
import clearbed.survey.Surveys;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Writes a survey as tables: comma-separated values (RFC 4180) in UTF-8, and notes beside them. */
public final class SurveyTables {
  private static final String QUOTE = "'";

  private SurveyTables() {}

  /** The files that will be written into a folder. */
  public static List<Path> files(Path folder) {
    List<Path> out = new ArrayList<>();
    for (SurveyTable table : SurveyTable.values()) out.add(folder.resolve(table.file()));
    out.add(folder.resolve(TablesMark.NOTES));
    return out;
  }

  /**
   * Writes every table whole or not at all, and the notes last.
   *
   * @throws IOException with one line that names the file and the reason
   */
  public static void write(Surveys surveys, Groups groups, Overview overview, Path folder)
      throws IOException {
    Files.createDirectories(folder);
    List<String> sums = new ArrayList<>();
    for (SurveyTable table : SurveyTable.values()) {
      MessageDigest digest = Sha256.begun();
      AtomicFile.write(
          folder.resolve(table.file()),
          out -> table(table, surveys, groups, new DigestOutputStream(out, digest)));
      sums.add(TablesMark.line(Sha256.hex(digest), table.file()));
    }
    byte[] notes =
        ClosingLine.closed(notes(groups, overview, sums), OutputKind.TABLES)
            .getBytes(StandardCharsets.UTF_8);
    AtomicFile.write(folder.resolve(TablesMark.NOTES), out -> out.write(notes));
  }

  private static void table(SurveyTable table, Surveys surveys, Groups groups, OutputStream out)
      throws IOException {
    Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180);
    printer.printRecord(table.header());
    SurveyTable.Sink sink =
        cells -> {
          try {
            for (String cell : cells) printer.print(plain(cell));
            printer.println();
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        };
    try {
      for (int i = 0; i < surveys.size(); i++) table.rows(surveys.get(i), groups, sink);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    printer.flush();
  }

  /**
   * Text that a spreadsheet program would compute gets an apostrophe before it, and so does text
   * with an apostrophe there, so that who takes the first one off has the text again.
   */
  static String plain(String cell) {
    String text = SafeText.xml(cell == null ? "" : cell);
    return SafeText.looksLikeFormula(text) || text.startsWith(QUOTE) ? QUOTE + text : text;
  }

  private static String notes(Groups groups, Overview overview, List<String> sums) {
    StringBuilder out = new StringBuilder();
    out.append("Tables of a survey of glass tile projects, by Clearbed\n\n");
    out.append(Deferral.LINE).append("\n\n");
    out.append("Comma-separated values (RFC 4180), UTF-8, first line with the names of columns.\n");
    out.append(
        "Text that begins with = + - @ or an apostrophe has an apostrophe before it, so that\n");
    out.append("no spreadsheet program computes it; take one off to have the text as it stands.\n");
    out.append("Figures are numbers of things; units stand in the texts.\n");
    for (SurveyTable table : SurveyTable.values()) {
      out.append('\n').append(table.file()).append(": a row is ").append(table.row()).append("\n");
      for (SurveyTable.TableColumn column : table.columns())
        out.append("  %-24s%s%n".formatted(column.name(), column.meaning()));
    }
    out.append("\nGroups\n  ").append(groups.told()).append('\n');
    out.append("\nRules\n");
    for (String set : overview.ruleSets()) out.append("  ").append(set).append('\n');
    out.append("\nPlease mind\n");
    for (Cautions.Caution caution : Cautions.of(overview.ruleSets()))
      out.append("  ").append(caution.subject()).append(": ").append(caution.text()).append('\n');
    out.append("\nSHA-256\n");
    for (String sum : sums) out.append(sum).append('\n');
    return out.toString().replace(System.lineSeparator(), "\n");
  }
}
