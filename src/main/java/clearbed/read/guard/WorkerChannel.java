package clearbed.read.guard;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.codec.RecordCodec;
import clearbed.base.codec.RecordInput;
import clearbed.base.codec.RecordOutput;
import clearbed.read.source.Source;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/** One end of the talk between a process and the worker that reads for it. */
final class WorkerChannel {
  /** Raised whenever requests or replies change. */
  private static final int VERSION = 2;

  /** More than any document that fits into the memory of either process. */
  private static final int LONGEST = Integer.MAX_VALUE - 64;

  private final RecordCodec codec = new RecordCodec();
  private final DataInputStream in;
  private final OutputStream out;

  record Request(int id, Source source) {}

  record WorkerReply(int id, ReadOutcome outcome) {}

  WorkerChannel(DataInputStream in, OutputStream out) {
    this.in = in;
    this.out = out;
  }

  void greet() throws IOException {
    new DataOutputStream(out).writeInt(VERSION);
    out.flush();
  }

  void awaitGreeting() throws IOException {
    if (in.readInt() != VERSION) throw new IOException("a worker of another version");
  }

  void ask(Request request) throws IOException {
    Source source = request.source();
    RecordOutput packed = new RecordOutput();
    packed.number(request.id());
    packed.text(source.path());
    // As a URI, for the bytes of a name may be no text in this machine's encoding.
    packed.text(source.file().toUri().toString());
    packed.flag(source.named());
    send(packed.toBytes(VERSION));
  }

  Request request() throws IOException, DamagedRecord {
    RecordInput packed = RecordInput.open(in.readNBytes(length()), VERSION);
    int id = packed.number();
    String path = packed.text();
    Path file = Path.of(URI.create(packed.text()));
    return new Request(id, new Source(path, file, packed.flag(), false));
  }

  void reply(int id, ReadOutcome outcome) throws IOException {
    RecordOutput packed = new RecordOutput();
    codec.write(packed, new WorkerReply(id, outcome), WorkerReply.class);
    send(packed.toBytes(VERSION));
  }

  WorkerReply reply() throws IOException, DamagedRecord {
    RecordInput packed = RecordInput.open(in.readNBytes(length()), VERSION);
    WorkerReply reply = codec.read(packed, WorkerReply.class);
    packed.requireEnd();
    return reply;
  }

  private int length() throws IOException, DamagedRecord {
    int length = in.readInt();
    if (length < 0 || length > LONGEST) throw new DamagedRecord("is no message");
    return length;
  }

  private synchronized void send(byte[] message) throws IOException {
    out.write(ByteBuffer.allocate(Integer.BYTES).putInt(message.length).array());
    out.write(message);
    out.flush();
  }
}
