package clearbed.project;

import clearbed.check.rules.RuleSet;
import clearbed.recognise.vocabulary.Vocabulary;

/**
 * The words and the rules that hold for a project.
 *
 * @param chosen why these rules, where the documents decided; empty where the user did
 */
public record Rulebook(Vocabulary vocabulary, RuleSet rules, String chosen) {}
