package clearbed.report.annotate.office;

import clearbed.mark.CompoundMark;
import clearbed.mark.OutputKind;
import clearbed.report.annotate.note.Job;
import clearbed.report.annotate.note.MarkedCopy;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;

/** Excel 97 to 2003 workbooks. */
public final class XlsCopy implements MarkedCopy {

  @Override
  public void write(Job job, OutputStream out) throws IOException {
    try (InputStream in = Files.newInputStream(job.source());
        POIFSFileSystem files = new POIFSFileSystem(in);
        HSSFWorkbook workbook = new HSSFWorkbook(files, true)) {
      new WorkbookMarks(workbook).mark(job);
      ByteArrayOutputStream marked = new ByteArrayOutputStream();
      workbook.write(marked);
      CompoundMark.write(marked.toByteArray(), OutputKind.COPY, out);
    }
  }
}
