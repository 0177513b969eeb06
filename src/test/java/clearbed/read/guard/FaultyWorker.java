package clearbed.read.guard;

import clearbed.read.Faults;

/** A worker whose parser misbehaves on request. */
public final class FaultyWorker {
  public static final WorkerCommand COMMAND = new WorkerCommand(FaultyWorker.class.getName());

  private FaultyWorker() {}

  public static void main(String[] arguments) {
    Worker.run(arguments, Faults::reader);
  }
}
