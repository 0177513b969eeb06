package clearbed.cli.option;

import clearbed.model.report.ProjectNames;
import picocli.CommandLine.Option;

/** Whose documents these are, and who writes to whom about them. */
public final class NameOptions {
  @Option(
      names = "--project",
      paramLabel = "TEXT",
      description = "Name of the project, for workbook, letter and page.")
  String project = "";

  @Option(names = "--from", paramLabel = "TEXT", description = "Who sends the questions.")
  String from = "";

  @Option(names = "--to", paramLabel = "TEXT", description = "Who the questions are sent to.")
  String to = "";

  public ProjectNames names() {
    return new ProjectNames(project, from, to);
  }
}
