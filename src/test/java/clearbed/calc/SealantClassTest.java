package clearbed.calc;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.calc.joint.SealantClass;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SealantClassTest {

  // ASTM C920 classes 12 1/2, 25, 35, 50, 100/50; ISO 11600 classes 7.5, 12.5, 20, 25 with the
  // sub-classes LM and HM, E and P (guide of a national sealants association, 1999).
  @ParameterizedTest
  @CsvSource({
    "Class 25, 25",
    "25, 25",
    "class 35, 35",
    "Class 12-1/2, 12.5",
    "12 1/2, 12.5",
    "12.5E, 12.5",
    "100/50, 50",
    "+100/-50, 50",
    "100-50, 50",
    "Class 100/50, 50",
    "25LM, 25",
    "F-25HM, 25",
    "G-20LM, 20",
    "7.5P, 7.5",
    "'ASTM C920, Type S, Grade NS, Class 50', 50",
    "ISO 11600 F 20HM, 20",
    "±25 %, 25",
    "+/-25%, 25",
  })
  void isReadAsWritten(String words, double percent) {
    assertThat(SealantClass.of(words))
        .hasValueSatisfying(
            found -> assertThat(found.capability()).isEqualTo(Quantity.of(percent, Unit.PERCENT)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "0",
        "40",
        "-25",
        "250",
        "Class",
        "50LM",
        "7.5E",
        "35P",
        "25E",
        "1000/50",
        "NS",
        "2 5",
        "100/50LM",
        "Class A"
      })
  void whatNoStandardHasIsNoClass(String words) {
    assertThat(SealantClass.of(words)).isEmpty();
  }

  @Test
  void theLesserSideOfAnUnequalClassIsReckonedWith() {
    SealantClass unequal = SealantClass.of("100/50").orElseThrow();

    assertThat(unequal.extension()).isEqualTo(100);
    assertThat(unequal.compression()).isEqualTo(50);
    assertThat(unequal.words()).isEqualTo("Class 100/50 (+100/-50 % of the joint width)");
  }

  @Test
  void knowsTheStandardOfAClass() {
    assertThat(SealantClass.of("20").orElseThrow().standards()).containsExactly("ISO 11600");
    assertThat(SealantClass.of("35").orElseThrow().standards()).containsExactly("ASTM C920");
    assertThat(SealantClass.of("25").orElseThrow().standards())
        .containsExactly("ASTM C920", "ISO 11600");
  }
}
