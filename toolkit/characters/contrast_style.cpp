// Remarks on style: common practice that a good key may well depart from.
//
// Sources, beside the checks: "UW" the handouts on keys of the University of Wisconsin's Botany
// 400; "FOC" the guidelines of the Flora of China (1994), section 6; both as read for this project.

#include <algorithm>
#include <array>
#include <optional>

#include "keydrift/characters/contrast_words.hpp"
#include "keydrift/characters/difficulty.hpp"
#include "keydrift/key/prose.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::contrast {
namespace {

constexpr std::array<std::string_view, 26> kNegations{
    "not",   "without", "lacking", "absent",   "never",  "no",    "none",    "neither", "nor",
    "nicht", "ohne",    "kein",    "keine",    "keinen", "fehlt", "fehlend", "nie",     "sans",
    "pas",   "absents", "absente", "absentes", "sin",    "sem",   "não",     "sine"};
constexpr std::array<std::string_view, 18> kSizes{
    "large", "small", "big",    "little", "tiny",   "huge",    "minute",  "groß",    "gross",
    "klein", "grand", "grande", "petit",  "petite", "pequeño", "pequeña", "pequeno", "pequena"};

class StyleCheck {
 public:
  explicit StyleCheck(ContrastContext& context)
      : context_{context}, edition_{context.edition}, graph_{context.graph} {}

  void run() {
    for (CoupletId c; c.index < edition_.couplets.size(); ++c.index) {
      check_negation(c);
      check_sizes(c);
      check_beginnings(c);
      check_sides(c);
    }
    check_hard_early();
  }

 private:
  [[nodiscard]] Statement const* first_of(LeadId id) const {
    auto const& statements = edition_[id].statements;
    auto const found = std::find_if(statements.begin(), statements.end(), decides);
    return found == statements.end() ? nullptr : &*found;
  }

  Finding& remark(std::string_view code, Place const& place, std::string printed,
                  std::string message, std::string remedy) {
    Finding finding;
    finding.code = code;
    finding.severity = Severity::information;
    finding.file = edition_.name;
    finding.place = place;
    finding.printed = std::move(printed);
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    context_.findings.push_back(std::move(finding));
    return context_.findings.back();
  }
  Finding& remark(std::string_view code, Statement const& statement, std::string message,
                  std::string remedy) {
    return remark(code, statement.place, statement.text, std::move(message), std::move(remedy));
  }

  // UW 4: say first what is present.
  void check_negation(CoupletId id) {
    auto const negative = [](Statement const* statement) {
      if (statement == nullptr) return false;
      auto const words = words_of(*statement);
      return std::any_of(words.begin(), words.end(),
                         [](std::string const& word) { return is_one_of(kNegations, word); });
    };
    if (edition_[id].leads.size() < 2) return;
    auto const* first = first_of({id, 0});
    if (!negative(first) || negative(first_of({id, 1}))) return;
    remark("first-lead-negative", *first,
           "lead " + context_.lead({id, 0}) + " begins with what is not there, and lead " +
               context_.lead({id, 1}) + " with what is",
           "print the positive lead first");
  }

  // UW 7: measurements, not "large" and "small".
  void check_sizes(CoupletId id) {
    for (std::uint32_t i = 0; i < edition_[id].leads.size(); ++i) {
      for (auto const& statement : edition_[{id, i}].statements) {
        if (!decides(statement) || statement.origin != Origin::opaque) continue;
        auto const words = words_of(statement);
        if (words.empty()) continue;
        auto const& size = is_one_of(kSizes, words.back()) ? words.back() : words.front();
        if (!is_one_of(kSizes, size)) continue;
        remark("size-without-measure", statement,
               "lead " + context_.lead({id, i}) + " says " + quoted(size) + " without a measure",
               "give the measurement");
      }
    }
  }

  // UW 5: both leads begin with the same word; UW 6: the next couplet does not.
  void check_beginnings(CoupletId id) {
    std::optional<std::string> word;
    bool alike = true;
    auto const count = static_cast<std::uint32_t>(edition_[id].leads.size());
    for (std::uint32_t i = 0; i < count; ++i) {
      auto const* statement = first_of({id, i});
      auto const words = statement == nullptr ? std::vector<std::string>{} : words_of(*statement);
      if (words.empty()) {
        alike = false;
      } else if (!word) {
        word = words.front();
      } else if (!same_stem(*word, words.front())) {
        remark("leads-begin-differently", *statement,
               "lead " + context_.lead({id, i}) + " begins with " + quoted(words.front()) +
                   ", and lead " + context_.lead({id, 0}) + " with " + quoted(*word),
               "begin both with the same structure");
        alike = false;
        break;
      }
    }
    if (!alike || !word) {
      last_beginning_.reset();
      return;
    }
    if (last_beginning_ && same_stem(*last_beginning_, *word)) {
      remark("same-beginning-again", *first_of({id, 0}),
             "couplet " + quoted(edition_[id].label) + " begins with " + quoted(*word) +
                 " as the couplet before it does",
             "begin with another structure, so that readers do not slip a couplet");
    }
    last_beginning_ = word;
  }

  // FOC 6.2: when the sides hold unequal numbers of taxa, the smaller one is printed first.
  void check_sides(CoupletId id) {
    if (edition_[id].leads.size() != 2 || !graph_.reachable(id)) return;
    auto const taxa = [&](std::uint32_t ordinal) {
      std::size_t count = 0;
      for (auto const run : graph_.taxa_below(LeadId{id, ordinal})) count += run.end - run.begin;
      return count;
    };
    auto const first = taxa(0), second = taxa(1);
    if (second == 0 || first <= second) return;
    remark("larger-side-first", edition_[id].place, edition_[id].leads.front().text,
           "lead " + context_.lead({id, 0}) + " takes " + std::to_string(first) +
               " taxa and lead " + context_.lead({id, 1}) + " " + std::to_string(second),
           "print the lead of the fewer taxa first");
  }

  void check_hard_early() {
    if (context_.options.lexicon == nullptr) return;
    auto const difficulties = couplet_difficulties(edition_, *context_.options.lexicon);
    for (auto const& early : hard_early(edition_, graph_, difficulties)) {
      auto const& couplet = edition_[early.couplet];
      auto const& easier = edition_[early.easier];
      auto& finding = remark(
          "hard-to-see-early", couplet.place, couplet.leads.front().text,
          "couplet " + quoted(couplet.label) + " takes " +
              (early.difficulty == Difficulty::dissection ? "a dissection" : "a microscope") +
              ", and couplet " + quoted(easier.label) + " below it does with less",
          "ask for what is easy to see first, where that parts the taxa");
      finding.related.push_back({easier.place, "couplet " + quoted(easier.label) + " is here"});
    }
  }

  ContrastContext& context_;
  Edition const& edition_;
  KeyGraph const& graph_;
  std::optional<std::string> last_beginning_;
};

}  // namespace

void check_style(ContrastContext& context) { StyleCheck{context}.run(); }

}  // namespace keydrift::contrast
