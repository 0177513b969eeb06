package clearbed.read;

import clearbed.read.guard.Worker;
import clearbed.read.guard.WorkerCommand;

/** Where a worker process starts: it reads with the readers of all formats. */
final class WorkerMain {
  static final WorkerCommand COMMAND = new WorkerCommand(WorkerMain.class.getName());

  private WorkerMain() {}

  public static void main(String[] arguments) {
    Worker.run(arguments, Readers::of);
  }
}
