#include "keydrift/reports/wording_proof.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "keydrift/characters/contrast.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift::reports {
namespace {

constexpr std::array kGroups{
    FindingGroup{Severity::error, "Errors", "error", "errors"},
    FindingGroup{Severity::warning, "Warnings", "warning", "warnings"},
    FindingGroup{Severity::information, "For information", "remark for information",
                 "remarks for information"},
};

// Taxa named as those most often named wrongly.
constexpr std::size_t kWorstTaxa = 5;

constexpr FigureSource kHuffman{
    "huffmanBound",
    "D. A. Huffman 1952, A method for the construction of minimum-redundancy codes, Proceedings of "
    "the IRE 40: 1098-1101"};
constexpr FigureSource kShannon{
    "entropyBound",
    "C. E. Shannon 1948, A mathematical theory of communication, Bell System Technical Journal 27: "
    "379-423"};
constexpr FigureSource kColless{
    "colless", "D. H. Colless 1982, review of Phylogenetics, Systematic Zoology 31: 100-104"};
constexpr FigureSource kOsborne{
    "expectedRight",
    "Osborne 1963, Some aspects of the theory of dichotomous keys, New Phytologist 62: 144-160"};

bool is_style(Finding const& finding) {
  auto const kinds = style_finding_kinds();
  return std::any_of(kinds.begin(), kinds.end(),
                     [&](FindingKind const& kind) { return kind.code == finding.code; });
}

std::string percent(double share) { return fmt::format("{:.1f} %", 100 * share); }
// A rate as it was stated: "2 %", "0.5 %".
std::string rate_in_words(double rate) { return fmt::format("{:g} %", 100 * rate); }
std::string decimal(double number) { return fmt::format("{:.2f}", number); }
std::string of_all(std::size_t part, std::size_t all) {
  return fmt::format("{} of {}", grouped(part), grouped(all));
}

std::vector<std::string> key_sentences(KeyNumbers const& n) {
  std::string polytomies;
  if (n.polytomies == 1) polytomies = ", one of three or more leads";
  if (n.polytomies > 1) polytomies = fmt::format(", {} of three or more leads", n.polytomies);
  auto first =
      fmt::format("{}{}, with {} in all, key out {}", counted(n.couplets, "couplet"), polytomies,
                  counted(n.leads, "lead"), counted(n.terminals, "taxon", "taxa"));
  if (n.terminal_ends > n.terminals && n.beyond_start == 0) {
    first += fmt::format(" at {} ends, so that some key out in more than one place",
                         grouped(n.terminal_ends));
  }
  std::vector<std::string> sentences{sentence(first)};
  if (n.beyond_start > 0) {
    sentences.push_back(fmt::format(
        "{} in this file cannot be reached from its first couplet; the figures leave {} out.",
        counted(n.beyond_start, "more taxon", "more taxa"), n.beyond_start == 1 ? "it" : "them"));
  }
  if (n.behind_circles > 0) {
    sentences.push_back(fmt::format(
        "Leads go round in a circle on the way to {} of the taxa that key out, so that ways have "
        "no greatest and no average length; figures that hang on one, and on how often an answer "
        "is wrong, are left out until the circle is mended.",
        grouped(n.behind_circles)));
  }
  if (n.unparted_ends > 0 && n.mean_route) {
    sentences.push_back(fmt::format(
        "{} as one where the figures say what is least, and how even the key is.",
        n.unparted_ends == 1
            ? std::string{"One end names several taxa, which the key does not part; it counts"}
            : grouped(n.unparted_ends) +
                  " ends name several taxa, which the key does not part; each counts"));
  }
  if (n.reticulations > 0) {
    sentences.push_back(fmt::format(
        "Ways run together again {}.",
        n.reticulations == 1 ? std::string{"once"} : grouped(n.reticulations) + " times"));
  }
  return sentences;
}

FigureGroup key_figures(EditionProof const& proof) {
  FigureGroup group{.heading = "The key in numbers", .before = {}, .figures = {}, .after = {}};
  if (!proof.numbers) {
    group.before = {"There are none: no taxon can be reached from the first couplet."};
    return group;
  }
  auto const& n = *proof.numbers;
  group.before = key_sentences(n);
  auto const add = [&group](std::string what, std::string number, unsigned level = 0) {
    group.figures.push_back({std::move(what), std::move(number), level});
  };
  auto const add_bounds = [&](double huffman, double entropy) {
    add("least of any key of two leads (Huffman)", decimal(huffman), 2);
    add("least by entropy (Shannon), couplets on average as wide", decimal(entropy), 2);
  };
  add("Couplets answered on the shortest way", grouped(n.shortest_route));
  if (n.longest_route) add("on the longest", grouped(*n.longest_route), 1);
  if (n.mean_route) {
    add("on the average, all taxa equally frequent", decimal(*n.mean_route), 1);
    add_bounds(n.huffman_bound, n.entropy_bound);
  }
  if (proof.frequencies) {
    auto const& f = *proof.frequencies;
    add(fmt::format("on the average, {} by the frequencies given",
                    counted(f.taxa, "taxon", "taxa")),
        decimal(f.mean_route), 1);
    add_bounds(f.huffman_bound, f.entropy_bound);
  }
  if (n.evenness) {
    add("Evenness: 1 where couplets part evenly, 0 for a comb", decimal(*n.evenness));
  }
  if (n.colless) add("Imbalance (Colless): 0 even, 1 a comb", decimal(*n.colless));
  add("Taxa on the smaller side of the first couplet", fmt::format("{:.0f} %", 100 * n.root_share));
  add("Couplets that take off a single taxon", of_all(n.comb_couplets, n.couplets));
  add("Couplets whose leads rest on one statement each",
      of_all(n.single_statement_couplets, n.couplets));
  std::vector<std::string_view> references;
  for (auto const& source : figure_sources(proof)) {
    if (source.figure != kOsborne.figure) references.push_back(source.reference);
  }
  if (!references.empty()) {
    group.after = fmt::format("After {} (references from memory).", fmt::join(references, "; "));
  }
  return group;
}

// What it takes to use the key, by the lexicon.
FigureGroup difficulty_figures(DifficultyNumbers const& n) {
  static constexpr std::array<char const*, kDifficulties> kBy{
      "Couplets answered with the naked eye", "with a hand lens", "with a microscope",
      "by dissection"};
  FigureGroup group{.heading = "What must be seen", .before = {}, .figures = {}, .after = {}};
  for (std::size_t i = 0; i < kDifficulties; ++i) {
    group.figures.push_back({kBy[i], grouped(n.couplets[i]), i == 0 ? 0U : 1U});
  }
  group.figures.push_back({"by characters that the lexicon does not know", grouped(n.unrated), 1});
  group.figures.push_back(
      {"Couplets for microscope or dissection above easier ones", grouped(n.hard_early)});
  if (n.taxa_behind_hard) {
    group.figures.push_back({"Taxa that no route leads to without microscope or dissection",
                             of_all(*n.taxa_behind_hard, n.taxa)});
  }
  if (n.mean_cost) {
    group.figures.push_back(
        {"Trouble on the average way: eye 1, lens 2, microscope 4, dissection 8",
         decimal(*n.mean_cost)});
  }
  return group;
}

FigureGroup right_figures(Edition const& edition, ExpectedRight const& right) {
  static constexpr std::array<std::string_view, kDifficulties> kAt{"the naked eye", "a hand lens",
                                                                   "a microscope", "dissection"};
  std::vector<std::string> rates{
      fmt::format("{} of the answers at a couplet", rate_in_words(right.rates.rate))};
  for (std::size_t i = 0; i < kDifficulties; ++i) {
    auto const& rate = right.rates.by_difficulty[i];
    if (rate) rates.push_back(fmt::format("{} where it takes {}", rate_in_words(*rate), kAt[i]));
  }
  FigureGroup group{
      .heading = "Determinations that come out right",
      .before = {fmt::format("If {} are wrong, independently of each other, the share that comes "
                             "out right is",
                             enumerated(rates))},
      .figures = {},
      .after = fmt::format(
          "The product of the right answers along each route ({}; formula and reference "
          "from memory). A wrong turn is taken never to come back to the right name; "
          "people who cross-check do better.",
          kOsborne.reference)};
  group.figures.push_back({"all taxa equally frequent", percent(right.mean), 1});
  if (right.frequency_mean) {
    group.figures.push_back({"by the frequencies given", percent(*right.frequency_mean), 1});
  }
  auto const worst = std::min(kWorstTaxa, right.taxa.size());
  for (std::size_t i = 0; i < worst; ++i) {
    auto const& [taxon, chance] = right.taxa[i];
    group.figures.push_back(
        {(i == 0 ? "lowest: " : "then ") + edition[taxon].name, percent(chance), 2});
  }
  return group;
}

}  // namespace

std::span<FindingGroup const> finding_groups() { return kGroups; }

std::vector<Finding const*> of_severity(std::span<Finding const> findings, Severity severity) {
  std::vector<Finding const*> found;
  for (auto const& finding : findings) {
    if (finding.severity == severity && !is_style(finding)) found.push_back(&finding);
  }
  return found;
}

std::string finding_counts(std::span<Finding const> findings) {
  std::vector<std::string> counts;
  auto left = findings.size();
  for (auto const& group : kGroups) {
    auto const count = of_severity(findings, group.severity).size();
    left -= count;
    if (count > 0) counts.push_back(counted(count, group.singular, group.plural));
  }
  if (left > 0) counts.push_back(counted(left, "remark on style", "remarks on style"));
  return counts.empty() ? "Nothing was found wrong." : sentence(enumerated(counts));
}

std::string scope_in_words(Edition const& edition) {
  std::vector<std::string> parts;
  auto const& front = edition.front;
  auto const add = [&parts](std::string_view label, std::string_view text) {
    if (!text.empty()) parts.push_back(fmt::format("{}{}", label, text));
  };
  if (!front.authors.empty()) add("by ", enumerated(front.authors));
  add("region ", front.scope.region);
  add("life stage ", front.scope.life_stage);
  add("sex ", front.scope.sex);
  add("material ", front.scope.material);
  return fmt::format("{}", fmt::join(parts, "; "));
}

std::vector<FigureSource> figure_sources(EditionProof const& proof) {
  std::vector<FigureSource> sources;
  if (proof.numbers && proof.numbers->mean_route) {
    sources.push_back(kHuffman);
    sources.push_back(kShannon);
  }
  if (proof.numbers && proof.numbers->colless) sources.push_back(kColless);
  if (proof.right) sources.push_back(kOsborne);
  return sources;
}

std::vector<FigureGroup> proof_figures(Edition const& edition, EditionProof const& proof) {
  std::vector<FigureGroup> groups{key_figures(proof)};
  if (proof.numbers && proof.difficulties)
    groups.push_back(difficulty_figures(*proof.difficulties));
  if (proof.right) groups.push_back(right_figures(edition, *proof.right));
  return groups;
}

}  // namespace keydrift::reports
