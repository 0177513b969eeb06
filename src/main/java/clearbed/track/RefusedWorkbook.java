package clearbed.track;

/** An earlier workbook that cannot be carried on; the message says which, why and what to do. */
public final class RefusedWorkbook extends Exception {
  private static final long serialVersionUID = 1L;

  RefusedWorkbook(String message) {
    super(message);
  }

  RefusedWorkbook(String message, Throwable cause) {
    super(message, cause);
  }
}
