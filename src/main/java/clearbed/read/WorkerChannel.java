package clearbed.read;

import clearbed.read.Outcome.Ending;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/** One end of the talk between a process and the worker that reads for it. */
final class WorkerChannel {
  /** Raised whenever requests or replies change; a document has its own version. */
  private static final int VERSION = 1;

  /** More than any document that fits into the memory of either process. */
  private static final int LONGEST = Integer.MAX_VALUE - 64;

  private final DataInputStream in;
  private final OutputStream out;

  record Request(int id, Source source) {}

  record Reply(int id, Outcome outcome) {}

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
    PackedOutput packed = new PackedOutput();
    packed.number(request.id());
    packed.text(source.path());
    // As a URI, for the bytes of a name may be no text in this machine's encoding.
    packed.text(source.file().toUri().toString());
    packed.flag(source.named());
    send(packed.sealed(VERSION), new byte[0]);
  }

  Request request() throws IOException, DamagedDocument {
    PackedInput packed = PackedInput.open(in.readNBytes(length()), VERSION);
    int id = packed.number();
    String path = packed.text();
    Path file = Path.of(URI.create(packed.text()));
    return new Request(id, new Source(path, file, packed.flag(), false));
  }

  void reply(int id, Outcome outcome) throws IOException {
    byte[] head =
        ByteBuffer.allocate(2 * Integer.BYTES)
            .putInt(id)
            .putInt(outcome.ending().ordinal())
            .array();
    send(head, DocumentCodec.encode(outcome.document()));
  }

  Reply reply() throws IOException, DamagedDocument {
    int length = length();
    if (length < 2 * Integer.BYTES) throw new DamagedDocument("is cut short");
    int id = in.readInt();
    int ending = in.readInt();
    byte[] document = in.readNBytes(length - 2 * Integer.BYTES);
    if (ending < 0 || ending >= Ending.values().length) throw new DamagedDocument("is no reply");
    return new Reply(id, new Outcome(Ending.values()[ending], DocumentCodec.decode(document)));
  }

  private int length() throws IOException, DamagedDocument {
    int length = in.readInt();
    if (length < 0 || length > LONGEST) throw new DamagedDocument("is no message");
    return length;
  }

  private synchronized void send(byte[] head, byte[] body) throws IOException {
    byte[] length =
        ByteBuffer.allocate(Integer.BYTES).putInt(Math.addExact(head.length, body.length)).array();
    out.write(length);
    out.write(head);
    out.write(body);
    out.flush();
  }
}
