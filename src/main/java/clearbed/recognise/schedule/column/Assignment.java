package clearbed.recognise.schedule.column;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jgrapht.Graph;
import org.jgrapht.alg.matching.MaximumWeightBipartiteMatching;
import org.jgrapht.alg.util.UnionFind;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;

/** Which of its meanings each column of a table has, chosen for all columns together. */
final class Assignment {
  /**
   * That a column may hold something.
   *
   * @param meaning an attribute, or a role
   * @param copy that one column can take: some meanings may be had by several
   * @param score greater than 0
   */
  record Claim(int column, String meaning, int copy, double score) {
    private String place() {
      return meaning + "#" + copy;
    }

    private boolean alike(Claim other) {
      return other != null && column == other.column && meaning.equals(other.meaning);
    }
  }

  /**
   * What was chosen for a column.
   *
   * @param margin by how much the scores of all columns together would fall without it
   */
  record Choice(String meaning, double score, double margin) {}

  private Assignment() {}

  /** The choice of greatest sum, each copy taken at most once; columns without any are not in. */
  static Map<Integer, Choice> of(List<Claim> claims) {
    Map<Integer, Choice> out = new TreeMap<>();
    for (List<Claim> rivals : rivals(claims)) {
      Map<Integer, Claim> best = matched(rivals, null);
      double sum = sum(best);
      best.forEach(
          (column, claim) -> {
            double without = sum(matched(rivals, claim));
            out.put(column, new Choice(claim.meaning(), claim.score(), sum - without));
          });
    }
    return out;
  }

  /** The claims that bear on each other: of one column, to one place, or through others that do. */
  private static Collection<List<Claim>> rivals(List<Claim> claims) {
    Set<Object> all = new LinkedHashSet<>();
    for (Claim claim : claims) {
      all.add(claim.column());
      all.add(claim.place());
    }
    UnionFind<Object> together = new UnionFind<>(all);
    for (Claim claim : claims) together.union(claim.column(), claim.place());
    Map<Object, List<Claim>> out = new LinkedHashMap<>();
    for (Claim claim : claims)
      out.computeIfAbsent(together.find(claim.column()), any -> new ArrayList<>()).add(claim);
    return out.values();
  }

  private static double sum(Map<Integer, Claim> matched) {
    return matched.values().stream().mapToDouble(Claim::score).sum();
  }

  private static Map<Integer, Claim> matched(List<Claim> claims, Claim barred) {
    Graph<Object, DefaultWeightedEdge> graph = new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
    Set<Object> columns = new LinkedHashSet<>();
    Set<Object> places = new LinkedHashSet<>();
    Map<DefaultWeightedEdge, Claim> meant = new LinkedHashMap<>();
    for (Claim claim : claims) {
      if (claim.alike(barred)) continue;
      columns.add(claim.column());
      places.add(claim.place());
      graph.addVertex(claim.column());
      graph.addVertex(claim.place());
      DefaultWeightedEdge edge = graph.addEdge(claim.column(), claim.place());
      if (edge == null) continue;
      graph.setEdgeWeight(edge, claim.score());
      meant.put(edge, claim);
    }
    Map<Integer, Claim> out = new LinkedHashMap<>();
    if (meant.isEmpty()) return out;
    var matching = new MaximumWeightBipartiteMatching<>(graph, columns, places).getMatching();
    meant.forEach(
        (edge, claim) -> {
          if (matching.getEdges().contains(edge)) out.put(claim.column(), claim);
        });
    return out;
  }
}
