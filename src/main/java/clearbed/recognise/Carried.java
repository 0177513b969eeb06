package clearbed.recognise;

/**
 * What the parts before have spoken of: "coverage: 100 percent behind clear tile; 95 percent
 * elsewhere". One text long.
 */
final class Carried {
  Attribute amount;
  boolean flatness;
}
