// Do the leads of a couplet say something, and something of their own?

#include <algorithm>
#include <array>

#include "keydrift/key/fold.hpp"
#include "keydrift/key/proof_checks.hpp"

namespace keydrift::proofing {
namespace {

// Leads that only negate the other.  Fletcher, Jensen and others argued about them on the Taxacom
// list in 1995; common practice advises against them.  Folded.
constexpr std::array<std::string_view, 24> kNegations{
    "not as above",
    "not as in the above",
    "not with the above",
    "not with this combination",
    "not with that combination",
    "not this combination",
    "not that combination",
    "not in the above combination",
    "without the above combination",
    "without this combination",
    "without that combination",
    "lacking the above combination",
    "lacking this combination",
    "characters not combined as above",
    "not combined as above",
    "characters otherwise",
    "nicht wie oben",
    "nicht wie vorstehend",
    "merkmale anders",
    "pas comme ci-dessus",
    "pas ainsi",
    "no como arriba",
    "não como acima",
    "non ut supra",
};
// Each of them has one of these: most leads have none.
constexpr std::array<std::string_view, 11> kWordsOfNegations{
    "above",  "combination", "otherwise", "oben",  "vorstehend", "anders",
    "dessus", "ainsi",       "arriba",    "acima", "supra",
};
static_assert(std::all_of(kNegations.begin(), kNegations.end(), [](std::string_view phrase) {
  return std::any_of(
      kWordsOfNegations.begin(), kWordsOfNegations.end(),
      [&](std::string_view word) { return phrase.find(word) != std::string_view::npos; });
}));
// The letters that follow a first letter in these words, as bits: few places of a text begin so.
constexpr auto kSecondLetters = [] {
  std::array<std::uint32_t, 256> letters{};
  for (auto const word : kWordsOfNegations) {
    letters[static_cast<unsigned char>(word[0])] |= 1U << (word[1] - 'a');
  }
  return letters;
}();
// The same, but only as all that a lead says.
constexpr std::array<std::string_view, 10> kBareNegations{
    "not so",   "otherwise", "not thus",  "not",    "without these characters",
    "nicht so", "anders",    "autrement", "no así", "não assim",
};

std::string bare(std::string_view text) {
  auto folded = fold_words(text);
  while (!folded.empty() && std::string_view{" .,;:"}.find(folded.back()) != std::string::npos) {
    folded.pop_back();
  }
  return folded;
}

bool has_word_of_negations(std::string_view words) {
  for (std::size_t at = 0; at + 1 < words.size(); ++at) {
    auto const second = static_cast<unsigned>(static_cast<unsigned char>(words[at + 1])) - 'a';
    if (second >= 26 ||
        (kSecondLetters[static_cast<unsigned char>(words[at])] >> second & 1U) == 0) {
      continue;
    }
    auto const rest = words.substr(at);
    if (std::any_of(kWordsOfNegations.begin(), kWordsOfNegations.end(),
                    [&](std::string_view word) { return rest.starts_with(word); })) {
      return true;
    }
  }
  return false;
}

bool only_negates(std::string const& words) {
  auto const has = [&](std::string_view phrase) { return words.find(phrase) != std::string::npos; };
  return std::find(kBareNegations.begin(), kBareNegations.end(), words) != kBareNegations.end() ||
         (has_word_of_negations(words) && std::any_of(kNegations.begin(), kNegations.end(), has));
}

void check_exceptions(ProofContext& context, LeadId id) {
  for (auto const& statement : context.edition[id].statements) {
    if (statement.strength != Strength::excepted) continue;
    bool const names_some =
        std::any_of(statement.except.begin(), statement.except.end(),
                    [](std::string const& group) { return !bare(group).empty(); });
    if (names_some) continue;
    auto const& words = statement.exception_words;
    context.report("exception-names-nothing", statement.place,
                   words.empty() ? statement.text : words,
                   "lead " + context.lead(id) + " makes an exception without naming the group",
                   "name the taxa that it holds for");
  }
}

void check_couplet(ProofContext& context, CoupletId id) {
  auto const& couplet = context.edition[id];
  std::vector<std::pair<std::string, std::uint32_t>> words;
  words.reserve(couplet.leads.size());
  for (std::uint32_t ordinal = 0; ordinal < couplet.leads.size(); ++ordinal) {
    auto const& lead = couplet.leads[ordinal];
    LeadId const lead_id{id, ordinal};
    auto said = bare(lead.text);
    if (said.empty()) {
      context.report("lead-without-words", lead.place, printed_lead(lead),
                     "lead " + context.lead(lead_id) + " says nothing",
                     "print what a specimen must show to take it");
    } else if (only_negates(said)) {
      context.report("not-as-above", lead.place, printed_lead(lead),
                     "lead " + context.lead(lead_id) + " only negates its contrasting lead",
                     "say what its taxa show, character by character");
    }
    check_exceptions(context, lead_id);
    words.emplace_back(std::move(said), ordinal);
  }
  std::sort(words.begin(), words.end());
  for (std::size_t i = 1; i < words.size(); ++i) {
    if (words[i].first.empty() || words[i].first != words[i - 1].first) continue;
    auto const first = LeadId{id, words[i - 1].second};
    auto const second = LeadId{id, words[i].second};
    auto const& lead = context.edition[second];
    context
        .report("same-text", lead.place, printed_lead(lead),
                "leads " + context.lead(first) + " and " + context.lead(second) + " say the same",
                "contrast them")
        .related.push_back({context.edition[first].place, "the other lead is here"});
  }
}

}  // namespace

void check_words(ProofContext& context) {
  for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) check_couplet(context, c);
}

}  // namespace keydrift::proofing
