package clearbed.recognise.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Schedules of the continent: headings in its languages, figures with a decimal comma. */
class ContinentalSchedulesTest {
  @TempDir Path folder;

  private Checked table(String lines) throws IOException {
    Files.writeString(folder.resolve("list.csv"), lines.replace(" // ", "\n") + "\n");
    return Checked.by("iso-en", folder);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Pos.;Raum;Bauteil;Belag;Format;Dicke;Fläche;Fugenbreite;Kleber;Fugenmörtel;Rutschhemmung;Untergrund;Beanspruchung"
            + " // M1;Duschen;Boden;Glasmosaik;20 x 20 mm;4,5 mm;1.250,50 m²;2,5 mm;C2TE S1;CG2 WA;B;Zementestrich;nass",
        "Rep.;Local;Paroi;Matériau;Format;Épaisseur;Quantité;Largeur de joint;Colle;Mortier de joint;Classe de glissance;Support;Exposition"
            + " // M1;Douches;Sol;Mosaïque de verre;20 x 20 mm;4,5 mm;1 250,50 m²;2,5 mm;C2TE S1;CG2 WA;B;Chape ciment;humide",
        "Nr.;Ruimte;Vlak;Materiaal;Formaat;Dikte;Oppervlakte;Voegbreedte;Lijm;Voegmortel;Slipweerstand;Ondergrond;Belasting"
            + " // M1;Douches;Vloer;Glasmozaïek;20 x 20 mm;4,5 mm;1.250,50 m²;2,5 mm;C2TE S1;CG2 WA;B;Zandcement dekvloer;nat",
        "Rif.;Locale;Superficie;Materiale;Formato;Spessore;Area;Fuga;Adesivo;Stucco;Antiscivolo;Supporto;Esposizione"
            + " // M1;Docce;Pavimento;Mosaico di vetro;20 x 20 mm;4,5 mm;1.250,50 m²;2,5 mm;C2TE S1;CG2 WA;B;Massetto cementizio;bagnato",
        "Ref.;Local;Superficie;Material;Formato;Espesor;Área;Junta;Adhesivo;Rejuntado;Resbaladicidad;Soporte;Exposición"
            + " // M1;Duchas;Suelo;Mosaico de vidrio;20 x 20 mm;4,5 mm;1.250,50 m²;2,5 mm;C2TE S1;CG2 WA;B;Solera;húmedo",
      })
  void a_schedule_is_read_in_each_language(String lines) throws IOException {
    Checked read = table(lines);
    assertThat(read.hasGlass("M1")).isTrue();
    assertThat(read.governing("M1", "tile.size")).containsExactly("20 mm x 20 mm");
    assertThat(read.governing("M1", "tile.thickness")).containsExactly("4.5 mm");
    assertThat(read.governing("M1", "location.area")).containsExactly("1250.5 m²");
    assertThat(read.governing("M1", "grout.width")).containsExactly("2.5 mm");
    assertThat(read.governing("M1", "location.surface")).containsExactly("floor");
    assertThat(read.governing("M1", "location.exposure")).contains("wet");
    assertThat(read.governing("M1", "mortar.isoClass")).containsExactly("C2");
    assertThat(read.governing("M1", "mortar.deformability")).containsExactly("S1");
    assertThat(read.governing("M1", "grout.isoClass")).containsExactly("CG2");
    assertThat(read.governing("M1", "tile.rampBarefoot")).containsExactly("B");
    assertThat(read.governing("M1", "substrate.type")).containsExactly("mortar bed");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Wand | wall",
        "Boden und Wände | floor, wall",
        "Sol et murs | floor, wall",
        "Pareti | wall",
        "Decke | ceiling",
        "Vloer en wand | floor, wall",
        "Suelo y paredes | floor, wall",
        "Treppe | stair",
      })
  void a_place_is_a_surface_in_each_language(String cell, String surfaces) throws IOException {
    Checked read =
        table("Tag;Material;Room;Surface;Size // M1;Glass mosaic;Foyer;" + cell + ";20 x 20 mm");
    assertThat(read.governing("M1", "location.surface"))
        .containsExactlyInAnyOrder(surfaces.split(", "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "M1: movement joints 8,0 mm wide at 3,0 m centres. | movement.spacing | 3 m",
        "M1: movement joints 8,5 mm wide at 3,0 m centres. | movement.width | 8.5 mm",
        "M1: tensile adhesion of the adhesive 1,0 N/mm². | mortar.tensile | 1 N/mm²",
        "M1: tensile adhesion of the adhesive 1,5 N/mm2. | mortar.tensile | 1.5 N/mm²",
        "M1: the tiled area of M1 is 1.250,50 m². | location.area | 1250.5 m²",
      })
  void a_decimal_comma_is_read_in_clauses(String clause, String attribute, String value)
      throws IOException {
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"), "TILING\n\n1 WORK\n\n" + clause + "\n");
    Checked read = table("Tag;Material;Room;Surface;Size // M1;Glass mosaic;Foyer;Wall;20 x 20 mm");
    assertThat(read.governing("M1", attribute)).containsExactly(value);
  }
}
