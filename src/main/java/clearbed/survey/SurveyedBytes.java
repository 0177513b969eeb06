package clearbed.survey;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordCodec;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.cache.ResultCache;
import clearbed.model.document.Origin;
import clearbed.model.value.Content;

/** Projects as bytes, in which they go to disk and from machine to machine; safe for threads. */
public final class SurveyedBytes {
  /** Version of the layout. */
  static final int LAYOUT = 0x53560001;

  private static final RecordCodec CODEC = new RecordCodec(Content.class, Origin.class);

  private SurveyedBytes() {}

  /** The same project gives the same bytes. */
  public static byte[] of(Surveyed project) {
    RecordOutput out = new RecordOutput();
    write(out, project);
    return out.toBytes(LAYOUT);
  }

  /**
   * @throws DamagedRecord when the bytes are cut, changed, or of another version
   */
  public static Surveyed read(byte[] bytes) throws DamagedRecord {
    return read(RecordInput.open(bytes, LAYOUT));
  }

  /** How the cache keeps projects. */
  static final ResultCache.ResultForm<Surveyed> FORM =
      new ResultCache.ResultForm<>() {
        @Override
        public int layout() {
          return LAYOUT;
        }

        @Override
        public void write(RecordOutput out, Surveyed project) {
          SurveyedBytes.write(out, project);
        }

        @Override
        public Surveyed read(RecordInput in) throws DamagedRecord {
          return SurveyedBytes.read(in);
        }
      };

  private static void write(RecordOutput out, Surveyed project) {
    CODEC.write(out, project, Surveyed.class);
  }

  private static Surveyed read(RecordInput in) throws DamagedRecord {
    Surveyed project = CODEC.read(in, Surveyed.class);
    in.requireEnd();
    return project;
  }
}
