package clearbed.recognise.statement.code;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CitationsTest {
  private static List<String> designations(String text) {
    return Citations.find(text).stream().map(f -> f.standard().designation()).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ANSI A118.4 | ANSI A118.4",
        "ANSI A 137.2 | ANSI A137.2",
        "ANSI-A118.4 | ANSI A118.4",
        "A118-4 | ANSI A118.4",
        "A118.4 | ANSI A118.4",
        "ansi a118.15 | ANSI A118.15",
        "ANSI A118.4E | ANSI A118.4",
        "ANSI/TCNA A137.2 | ANSI A137.2",
        "ANSI A108.01 | ANSI A108.1",
        "ANSI A118,4 | ANSI A118.4",
        "ANSI\u00A0A118.15 | ANSI A118.15",
        "ANSI A118\u00AD.15 | ANSI A118.15",
        "ASTM C920 | ASTM C920",
        "ASTM C-920 | ASTM C920",
        "ASTM C 920 | ASTM C920",
        "ASTM C–920 | ASTM C920",
        "ASTM C920-18 | ASTM C920",
        "C920 | ASTM C920",
        "ASTM C 1026 | ASTM C1026",
        "ASTM C484/C484M | ASTM C484",
        "ISO 13007-1 | ISO 13007-1",
        "EN 12004-1:2017 | EN 12004-1",
        "BS EN 14411 | EN 14411",
        "EN ISO 11600 | ISO 11600",
        "BS 5385-4 | BS 5385-4",
        "TCNA EJ171 | TCNA EJ171",
        "TCNA EJ-171 | TCNA EJ171",
        "TCNA Handbook Method EJ171 | TCNA EJ171",
        "EJ 171 | TCNA EJ171",
        "EJ171F | TCNA EJ171"
      })
  void reads_a_designation_however_it_is_typed(String text, String designation) {
    assertThat(designations(text.trim())).containsExactly(designation.trim());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ANSI A118.4-2019 | 2019",
        "ASTM C920-18 | 18",
        "EN 12004-1:2017 | 2017",
        "ASTM C920 | ''"
      })
  void keeps_the_edition(String text, String edition) {
    assertThat(Citations.find(text.trim()).get(0).standard().edition()).isEqualTo(edition);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ANSI A118.4 or A118.15 | ANSI A118.4;ANSI A118.15",
        "ANSI A118.1, .4 and .15 | ANSI A118.1;ANSI A118.4;ANSI A118.15",
        "ANSI A118.4/A118.11 | ANSI A118.4;ANSI A118.11",
        "ANSI A108.14, A108.15, or A108.16 | ANSI A108.14;ANSI A108.15;ANSI A108.16"
      })
  void reads_each_of_a_series(String text, String all) {
    assertThat(designations(text.trim())).containsExactly(all.trim().split(";"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Drawing A-118",
        "sheet A118",
        "Section 09 30 00",
        "detail 4/A-137",
        "GT-118.4 tile",
        "room 920",
        "phone 555-0136",
        "Class 25",
        "C-10 framing"
      })
  void takes_no_sheet_room_or_tag_for_a_standard(String text) {
    assertThat(designations(text)).as(text).isEmpty();
  }

  @Test
  void says_where_it_stands_and_how_it_was_typed() {
    Citations.Found found = Citations.find("Mortar: ANSI A 118.15, white").get(0);
    assertThat(found.asWritten()).isEqualTo("ANSI A 118.15");
    assertThat(found.start()).isEqualTo(8);
    assertThat(found.end()).isEqualTo(21);
  }

  @Property(tries = 300)
  void no_text_makes_it_throw(@ForAll String text) {
    assertThat(Citations.find(text)).allMatch(f -> f.start() < f.end());
    assertThat(Citations.find("ANSI A118." + text)).isNotNull();
  }
}
