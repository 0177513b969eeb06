package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Classes of flatness that a publication gives figures for.
 *
 * @param name of the class, in its first group
 * @param figures millimetres in metres, by that name
 */
public record FlatnessClass(Pattern name, Map<String, List<Content.Deviation>> figures) {

  static FlatnessClass of(ConfigNode node, String regex) throws ConfigException {
    Pattern name = Pattern.compile(regex, Pattern.CASE_INSENSITIVE);
    if (name.matcher("").groupCount() < 1)
      throw node.get("name").fault("a group, in brackets, is to hold the class");
    Map<String, List<Content.Deviation>> figures = new LinkedHashMap<>();
    for (ConfigNode of : node.get("figures").entries()) {
      List<Content.Deviation> all = new ArrayList<>();
      for (String figure : of.texts()) all.add(deviation(figure.split(" ")));
      figures.put(of.key(), List.copyOf(all));
    }
    return new FlatnessClass(name, figures);
  }

  /** Of "4 mm in 1 m", which is all that the schema allows. */
  private static Content.Deviation deviation(String[] words) {
    return new Content.Deviation(
        Quantity.of(Integer.parseInt(words[0]), Unit.MILLIMETRE),
        Quantity.of(Integer.parseInt(words[3]), Unit.METRE));
  }
}
