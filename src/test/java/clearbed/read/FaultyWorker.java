package clearbed.read;

/** A worker whose parser misbehaves on request. */
final class FaultyWorker {
  static final WorkerCommand COMMAND = new WorkerCommand(FaultyWorker.class.getName());

  private FaultyWorker() {}

  public static void main(String[] arguments) {
    Worker.run(arguments, Faults::reader);
  }
}
