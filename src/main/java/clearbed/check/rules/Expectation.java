package clearbed.check.rules;

import clearbed.model.value.Content;
import java.util.List;

/** What a rule accepts. */
public sealed interface Expectation {
  /** In words, for people. */
  String words();

  /** Any statement will do. */
  record AnyStatement() implements Expectation {
    @Override
    public String words() {
      return "stated";
    }
  }

  /** Every value stated is one of these. */
  record AnyOf(List<String> accepted) implements Expectation {
    @Override
    public String words() {
      return String.join(" or ", accepted);
    }
  }

  /** All of these are stated. */
  record AllOf(List<String> wanted) implements Expectation {
    @Override
    public String words() {
      return String.join(", ", wanted);
    }
  }

  /** No value stated is one of these. */
  record NoneOf(List<String> refused) implements Expectation {
    @Override
    public String words() {
      return "not " + String.join(", not ", refused);
    }
  }

  /** A figure with a bound: what is stated guarantees it. */
  record Limit(Content.Amount amount) implements Expectation {
    @Override
    public String words() {
      return amount.text();
    }
  }

  /** A range that what is stated stays inside. */
  record Within(Content.Amount amount) implements Expectation {
    @Override
    public String words() {
      return "within " + amount.text();
    }
  }

  /** The same as another attribute of the entry. */
  record AgreesWith(String attribute) implements Expectation {
    @Override
    public String words() {
      return "the same as " + attribute;
    }
  }

  /** Worked out by code of that name. */
  record Computed(String name) implements Expectation {
    @Override
    public String words() {
      return "as computed";
    }
  }
}
