package clearbed.model.value;

/**
 * What a unit measures. A temperature difference is not a temperature: 10 °C warmer is 18 °F
 * warmer, not 50 °F.
 */
public enum Dimension {
  LENGTH,
  AREA,
  VOLUME,
  PRESSURE,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  EXPANSION,
  RATIO,
  PERMEANCE,
  MASS,
  TIME,
  COUNT
}
