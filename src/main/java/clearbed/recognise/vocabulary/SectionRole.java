package clearbed.recognise.vocabulary;

import java.util.List;

/** What a section may say of glass tile. */
public record SectionRole(
    String number, boolean article, List<String> families, List<String> only) {}
