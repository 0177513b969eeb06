package clearbed.report.workbook.calculation;

import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A spreadsheet expression over names in braces. */
final class CellExpression {
  private static final Pattern NAME = Pattern.compile("\\{([^{}]+)\\}");

  private CellExpression() {}

  /**
   * The expression with every name replaced.
   *
   * @return null when it uses a name that the map does not have, or there is no expression
   */
  static String resolve(String expression, Map<String, String> names) {
    if (expression == null || expression.isBlank()) return null;
    Matcher uses = NAME.matcher(expression);
    StringBuilder out = new StringBuilder();
    while (uses.find()) {
      String to = names.get(uses.group(1));
      if (to == null) return null;
      uses.appendReplacement(out, Matcher.quoteReplacement(to));
    }
    return uses.appendTail(out).toString();
  }

  /** True when the name is used, directly or through the steps that it names. */
  static boolean uses(String expression, String name, UnaryOperator<String> expressionOf) {
    if (expression == null) return false;
    Matcher uses = NAME.matcher(expression);
    while (uses.find()) {
      if (uses.group(1).equals(name)) return true;
      if (uses(expressionOf.apply(uses.group(1)), name, expressionOf)) return true;
    }
    return false;
  }
}
