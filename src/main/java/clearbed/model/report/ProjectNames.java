package clearbed.model.report;

/**
 * Whose documents these are and who writes to whom about them; each empty where nobody said.
 *
 * @param project its name
 * @param from who sends the questions
 * @param to whom they are sent to
 */
public record ProjectNames(String project, String from, String to) {
  public static final ProjectNames NONE = new ProjectNames("", "", "");

  public ProjectNames {
    project = plain(project);
    from = plain(from);
    to = plain(to);
  }

  /** On one line. */
  private static String plain(String text) {
    return text == null ? "" : text.strip().replaceAll("\\s+", " ");
  }

  public boolean isEmpty() {
    return equals(NONE);
  }

  /** These, and where they say nothing, those. */
  public ProjectNames or(ProjectNames others) {
    return new ProjectNames(or(project, others.project), or(from, others.from), or(to, others.to));
  }

  private static String or(String own, String other) {
    return own.isEmpty() ? other : own;
  }
}
