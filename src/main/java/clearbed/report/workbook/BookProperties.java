package clearbed.report.workbook;

import clearbed.mark.FindingsSheets;
import clearbed.mark.OutputKind;
import clearbed.mark.PackageMark;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.Report;
import clearbed.report.wording.SafeText;
import clearbed.report.workbook.layout.SheetLayout;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Date;
import java.util.Optional;
import org.apache.poi.ooxml.POIXMLProperties;

/** What a findings workbook says of itself: its title, its issue, the program that wrote it. */
final class BookProperties {
  private final Report.RunDetails run;

  BookProperties(Report.RunDetails run) {
    this.run = run;
  }

  void write(POIXMLProperties properties) {
    POIXMLProperties.CoreProperties core = properties.getCoreProperties();
    Optional<Date> issued = issued();
    core.setTitle(FindingsSheets.TITLE);
    ProjectNames names = run.names();
    String project = names.project().isEmpty() ? "" : names.project() + ", ";
    core.setSubjectProperty(SafeText.xml(project + "issue of " + run.date()));
    if (!names.to().isEmpty()) core.setDescription(SafeText.xml("To " + names.to()));
    core.setCreator("Clearbed " + run.version());
    core.setLastModifiedByUser("Clearbed " + run.version());
    core.setCreated(issued);
    core.getUnderlyingProperties().setModifiedProperty(issued);
    properties.getExtendedProperties().getUnderlyingProperties().setApplication("Clearbed");
    if (!names.from().isEmpty()) {
      properties
          .getExtendedProperties()
          .getUnderlyingProperties()
          .setCompany(SafeText.xml(names.from()));
    }
    POIXMLProperties.CustomProperties custom = properties.getCustomProperties();
    if (!custom.contains(FindingsWorkbook.MARK)) {
      custom.addProperty(FindingsWorkbook.MARK, SheetLayout.FORMAT);
    }
    PackageMark.announce(custom, OutputKind.FINDINGS);
  }

  private Optional<Date> issued() {
    try {
      LocalDate date = LocalDate.parse(run.date());
      return Optional.of(Date.from(date.atStartOfDay(ZoneOffset.UTC).toInstant()));
    } catch (DateTimeParseException undated) {
      return Optional.of(new Date(0));
    }
  }
}
