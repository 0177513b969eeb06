package clearbed.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class ProjectFinderTest {

  @Test
  void projects_stand_at_the_least_depth_at_which_documents_stand_in_a_folder() throws Exception {
    assertThat(names("2019/Mill/a.xlsx", "2019/Weir/specs/b.docx", "2020/Quay/c.pdf"))
        .containsExactly("2019/Mill", "2019/Weir", "2020/Quay");
  }

  @Test
  void a_zip_file_is_a_project_unless_it_lies_in_one() throws Exception {
    assertThat(names("2019/Mill/a.xlsx", "2019/Mill/bundle.zip", "2018.zip", "2019/Old.ZIP"))
        .containsExactly("2018.zip", "2019/Mill", "2019/Old.ZIP");
    assertThat(names("a/one.zip", "two.zip")).containsExactly("a/one.zip", "two.zip");
  }

  @Test
  void the_depth_that_is_given_holds_whatever_stands_there() throws Exception {
    assertThat(found(1, "Mill/specs/a.docx", "Mill/plans/b.pdf", "Weir/specs/c.docx").projects())
        .extracting(ProjectFinder.FoundProject::name)
        .containsExactly("Mill", "Weir");
  }

  @Test
  void parts_of_projects_that_look_like_projects_are_said_to() throws Exception {
    ProjectFinder.FoundProjects found =
        found(0, "Mill/specs/a.docx", "Mill/plans/b.pdf", "Weir/specs/c.docx", "Weir/plans/d.pdf");
    assertThat(found.projects()).hasSize(4);
    assertThat(found.alike()).containsExactly("plans", "specs");
    assertThat(found(0, "2019/Mill/a.docx", "2019/Weir/b.docx", "2020/Quay/c.docx").alike())
        .isEmpty();
  }

  @Test
  void documents_beside_the_projects_are_named_and_no_project() throws Exception {
    ProjectFinder.FoundProjects found =
        found(0, "list.xlsx", "photo.jpg", "Mill/a.xlsx", ".git/x.txt");
    assertThat(found.projects())
        .extracting(ProjectFinder.FoundProject::name)
        .containsExactly("Mill");
    assertThat(found.aside()).containsExactly("list.xlsx");
  }

  @Test
  void a_folder_of_nothing_but_documents_is_one_project() throws Exception {
    ProjectFinder.FoundProjects found = found(0, "a.xlsx", "b.docx");
    assertThat(found.projects()).containsExactly(new ProjectFinder.FoundProject(".", false));
    assertThat(found.depth()).isZero();
  }

  @Test
  void a_folder_without_documents_beside_projects_is_one_all_the_same() throws Exception {
    assertThat(names("Mill/a.xlsx", "Weir/photo.jpg")).containsExactly("Mill", "Weir");
  }

  @Test
  void a_year_is_a_folder_that_is_called_so_and_nothing_else_is_made_out() {
    Groups groups = new Groups(List.of());
    assertThat(groups.of("North/2019/Mill")).containsEntry("Year", "2019");
    assertThat(groups.of("North/2019/Mill")).containsEntry("Folder 1", "North");
    assertThat(groups.of("2050 Main Street/x")).doesNotContainKey("Year");
    assertThat(groups.of("2019/2020/Mill")).doesNotContainKey("Year");
    assertThat(groups.of("2019-034 Mill")).isEmpty();
    assertThat(new Groups(List.of("office", "year")).of("North/19/Mill"))
        .containsExactlyInAnyOrderEntriesOf(java.util.Map.of("office", "North", "year", "19"));
  }

  private static List<String> names(String... files) throws IOException {
    return found(0, files).projects().stream().map(ProjectFinder.FoundProject::name).toList();
  }

  private static ProjectFinder.FoundProjects found(int depth, String... files) throws IOException {
    ProjectFinder.Listing listing =
        folder -> {
          TreeSet<String> names = new TreeSet<>();
          for (String file : files) {
            if (!file.startsWith(folder)) continue;
            String rest = file.substring(folder.length());
            int slash = rest.indexOf('/');
            names.add(slash < 0 ? rest : rest.substring(0, slash + 1));
          }
          return List.copyOf(names);
        };
    return ProjectFinder.find(listing, depth);
  }
}
