#pragma once
// The words that all media share, so that terminal, HTML, CSV and JSON cannot disagree.
//
// Nothing here computes an outcome: results are put into words.  Printed words are quoted as they
// stand; sentences have no final full stop unless told otherwise.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/collation/collation.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/redetermination/keyout.hpp"
#include "keydrift/redetermination/outcome.hpp"

namespace keydrift::reports {

[[nodiscard]] char const* truth_word(Truth truth);  // "holds", "fails", "unknown"

// --- small change ----------------------------------------------------------------------------

[[nodiscard]] std::string grouped(std::uint64_t number);  // "12,345"
// "1 couplet", "2 couplets"; `plural` where adding an s will not do.
[[nodiscard]] std::string counted(std::uint64_t number, std::string_view singular,
                                  std::string_view plural = {});
// "66.5 %"; "< 0.1 %" and "> 99.9 %" where rounding would say none or all; "–" of nothing.
[[nodiscard]] std::string share(std::uint64_t part, std::uint64_t whole);
[[nodiscard]] std::string in_curly_quotes(std::string_view words);  // “words”
// "a", "a and b", "a, b and c".
[[nodiscard]] std::string enumerated(std::span<std::string const> items,
                                     std::string_view last = "and");
// "Words" with the first letter in upper case.
[[nodiscard]] std::string capitalised(std::string_view words);
// The words with a full stop, unless they already end a sentence.
[[nodiscard]] std::string sentence(std::string_view words);

// --- editions --------------------------------------------------------------------------------

// How a report calls its two editions: their short labels, or "old edition" / "new edition" where
// these would be the same.
struct EditionNames {
  std::string old_name;
  std::string new_name;
};
[[nodiscard]] EditionNames edition_names(Edition const& old_edition, Edition const& new_edition);

// "8", "Aus bus", "Aus bus, Aus cus", "Key B", as printed where the destination is unresolved.
[[nodiscard]] std::string destination_words(Edition const& edition, Lead const& lead);
// As destination_words, but as printed where the edition prints something.
[[nodiscard]] std::string printed_destination(Edition const& edition, Lead const& lead);
// Names joined by `separator`, in the order given.
[[nodiscard]] std::string taxon_names(Edition const& edition, std::span<TaxonId const> taxa,
                                      std::string_view separator = " | ");
// The printed words of a statement; "" where the id is absent.
[[nodiscard]] std::string statement_words(Edition const& edition,
                                          std::optional<StatementId> const& statement);
// "7a", "" where absent.
[[nodiscard]] std::string name_of(Edition const& edition, std::optional<LeadId> const& lead);
[[nodiscard]] std::string name_of(Edition const& edition, std::optional<CoupletId> const& couplet);

// What people call the characters of a collation, or of a lexicon.  Look-ups are by id.  Borrows
// from it.
class CharacterLabels {
 public:
  CharacterLabels() = default;
  explicit CharacterLabels(std::span<CharacterUse const> characters);
  explicit CharacterLabels(Lexicon const& lexicon);
  // The label; the id where there is none; an opaque character is its words (or what was measured)
  // in quotation marks.
  [[nodiscard]] std::string operator()(std::string_view id) const;

 private:
  std::unordered_map<std::string_view, std::string_view> by_id_;  // labels
};

// --- collation -------------------------------------------------------------------------------

// The typographic mark of an event, and what it stands for.
//   *  new   †  gone   §  says something else   ‡  leads or hangs elsewhere   ¶  split or merged
//   ·  words, numbers or order only
// "" for kept.
[[nodiscard]] std::string_view mark_of(CoupletEvent event);
struct MarkMeaning {
  std::string_view mark;
  std::string_view meaning;
};
[[nodiscard]] std::span<MarkMeaning const> mark_legend();
// The marks of a change, the weightiest first, at most three; "·" only when alone.
[[nodiscard]] std::string marks_of(CoupletChange const& change);
[[nodiscard]] std::string_view mark_of(RouteStep const& step);

// "couplet 7 of 1974, couplet 9 of 1998", "couplet 3 of both editions".
[[nodiscard]] std::string couplets_in_words(CoupletChange const& change, Edition const& old_edition,
                                            Edition const& new_edition);
// "renumbered, restated, a lead added".
[[nodiscard]] std::string events_in_words(std::span<CoupletEvent const> events);
[[nodiscard]] std::string events_in_words(std::span<TaxonEvent const> events);
// "Aus bus", "Aus bus, now Cus bus", "part of Aus bus, now Aus cus", "Aus bus, now narrower",
// "Aus bus, divided into Aus bus and Aus cus", …
[[nodiscard]] std::string taxa_in_words(TaxonChange const& change, Edition const& old_edition,
                                        Edition const& new_edition);

// On what the two taxa are held to be related: "by its name", "by the concept map".
[[nodiscard]] std::string basis_in_words(MatchBasis basis);

// What people call the character of a change: its label, or the printed words in quotation marks.
[[nodiscard]] std::string character_of(RoleChange const& role, CharacterLabels const& label,
                                       Edition const& old_edition, Edition const& new_edition);
// "became an exception note for Aus bus", "limits changed, 5 mm → 4 mm".
[[nodiscard]] std::string role_in_words(RoleChange const& role);

// --- specimens -------------------------------------------------------------------------------

// One line on what an outcome means.
[[nodiscard]] std::string_view meaning_of(Outcome outcome);
// "Rest on understood statements only", as a line of a table.
[[nodiscard]] std::string_view meaning_of(Footing footing);

// Columns whose words were taken for characters of the key: "leaf-margin: leaf margin: rough /
// smooth; confidence high", most certain first.
struct ColumnTies {
  std::string what;  // the column, and what it was taken for
  std::uint64_t records{};
};
[[nodiscard]] std::vector<ColumnTies> ties_in_words(Redetermination const& result);

// Where the ways part: the old lead's name (or where the old route ends), the new couplet's.
[[nodiscard]] std::string old_couplet_of(Verdict const& verdict, Edition const& old_edition);
[[nodiscard]] std::string new_couplet_of(Verdict const& verdict, Edition const& new_edition);

// Why the outcome is what it is, with both editions' words.  Depends on nothing but the verdict.
[[nodiscard]] std::string reason(Verdict const& verdict, Edition const& old_edition,
                                 Edition const& new_edition);
// "look at utricle beak (hand lens): bifid → stands; entire → Aus bus"; "" when there is nothing to
// ask.
[[nodiscard]] std::string look_at(Verdict const& verdict, Edition const& new_edition);
// The first thing asked, in short: "utricle beak: bifid → stands; entire → Aus bus"; where no
// character decides, what to do instead.  Equal for all specimens of a WorkGroup.
[[nodiscard]] std::string question_in_words(Verdict const& verdict, Edition const& new_edition);
// What follows from an answer: "stands", "Aus bus", "Aus bus | Aus cus", "then utricle length".
[[nodiscard]] std::string follows(Verdict const& verdict, Answer const& answer,
                                  Edition const& new_edition);
// The outcomes that remain possible once the questions are answered, joined by " | ".
[[nodiscard]] std::string possible_outcomes(Verdict const& verdict);

// Names joined by " | ", as FromTo has them: more than four become the first three "and 9 more".
[[nodiscard]] std::string few_names(std::string_view joined);

// "HLVN 0012", else the occurrence id, else "line 7".
[[nodiscard]] std::string specimen_name(Specimen const& specimen);
// "holotype of Aus bus", "voucher", "holotype of Aus bus, voucher", "".
[[nodiscard]] std::string type_or_voucher(Specimen const& specimen);
// "lead 9a of 1998: “beak bifid” holds, “spike over 2 cm” does not".
[[nodiscard]] std::string partial_fit_in_words(PartialFit const& fit, Edition const& old_edition,
                                               Edition const& new_edition);

// The caution that every report on specimens bears, in full sentences.
[[nodiscard]] std::string_view caution();
// "Name updated" and "specimen examined" are not the same: in full sentences.
[[nodiscard]] std::string_view not_examined();

}  // namespace keydrift::reports
