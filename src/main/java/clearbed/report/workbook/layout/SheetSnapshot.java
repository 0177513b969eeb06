package clearbed.report.workbook.layout;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * All that an issue wrote on a sheet, so that the next can tell what people typed there; packed as
 * it comes, for there may be millions of cells.
 */
public final class SheetSnapshot {
  private static final JsonFactory JSON = new JsonFactory();
  private static final String NOT_WHOLE = "what the earlier issue noted of a sheet is not whole";

  private final ByteArrayOutputStream packed = new ByteArrayOutputStream();
  private final JsonGenerator json;

  public SheetSnapshot() {
    try {
      json = JSON.createGenerator(PackedText.packing(packed), JsonEncoding.UTF8);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** Notes a row; to be called from top to bottom. */
  public void add(SheetRow row) {
    try {
      json.writeStartArray();
      json.writeNumber(row.at());
      json.writeBoolean(row.isHeading());
      for (CellContent cell : row.cells()) {
        json.writeNumber(cell.column());
        json.writeNumber(cell.kind().ordinal());
        json.writeString(cell.text());
      }
      json.writeEndArray();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** All rows as text for cells; none can be added any more. */
  public String packed() {
    try {
      json.close();
      return packed.toString(StandardCharsets.ISO_8859_1);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /**
   * Begins to read.
   *
   * @param packed as {@link #packed} gave it
   * @throws IOException when it is no longer whole
   */
  public static SnapshotRows rows(String packed) throws IOException {
    return new SnapshotRows(JSON.createParser(PackedText.unpacking(packed)));
  }

  /** The rows, one by one. */
  public static final class SnapshotRows implements SheetRowSource {
    private final JsonParser json;

    private SnapshotRows(JsonParser json) {
      this.json = json;
    }

    @Override
    public SheetRow next() throws IOException {
      if (json.nextToken() != JsonToken.START_ARRAY) return null;
      int at = json.nextIntValue(-1);
      boolean heading = Boolean.TRUE.equals(json.nextBooleanValue());
      List<CellContent> cells = new ArrayList<>();
      while (json.nextToken() == JsonToken.VALUE_NUMBER_INT) {
        int column = json.getIntValue();
        CellContent.Type kind = kind(json.nextIntValue(-1));
        String text = json.nextTextValue();
        if (text == null) throw new IOException(NOT_WHOLE);
        cells.add(new CellContent(column, kind, text, CellContent.NO_STYLE));
      }
      return new SheetRow(at, heading, cells);
    }

    private static CellContent.Type kind(int ordinal) throws IOException {
      CellContent.Type[] kinds = CellContent.Type.values();
      if (ordinal < 0 || ordinal >= kinds.length) throw new IOException(NOT_WHOLE);
      return kinds[ordinal];
    }

    @Override
    public void close() throws IOException {
      json.close();
    }
  }
}
