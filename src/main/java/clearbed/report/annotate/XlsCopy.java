package clearbed.report.annotate;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import org.apache.poi.hpsf.CustomProperties;
import org.apache.poi.hpsf.DocumentSummaryInformation;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** Excel 97 to 2003 workbooks. */
final class XlsCopy implements MarkedCopy {

  @Override
  public void write(Job job, OutputStream out) throws IOException {
    try (InputStream in = Files.newInputStream(job.source());
        POIFSFileSystem files = new POIFSFileSystem(in);
        HSSFWorkbook workbook = new HSSFWorkbook(files, true)) {
      new WorkbookMarks(workbook).mark(job);
      sign(workbook);
      workbook.write(out);
    }
  }

  private static void sign(HSSFWorkbook workbook) {
    if (workbook.getDocumentSummaryInformation() == null) workbook.createInformationProperties();
    DocumentSummaryInformation about = workbook.getDocumentSummaryInformation();
    CustomProperties custom = about.getCustomProperties();
    if (custom == null) custom = new CustomProperties();
    custom.put(PROPERTY, "1");
    about.setCustomProperties(custom);
  }
}
