#include "keydrift/reports/wording.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <variant>

#include "keydrift/reports/page.hpp"

namespace keydrift::reports {
namespace {

std::vector<std::string> names(Edition const& edition, std::span<TaxonId const> taxa) {
  std::vector<std::string> out;
  out.reserve(taxa.size());
  for (auto const taxon : taxa) out.push_back(edition[taxon].name);
  return out;
}

std::string labels(Edition const& edition, std::span<CoupletId const> couplets) {
  std::vector<std::string> out;
  for (auto const couplet : couplets) out.push_back(edition[couplet].label);
  return fmt::format("{} {}", couplets.size() == 1 ? "couplet" : "couplets", enumerated(out));
}

}  // namespace

char const* truth_word(Truth truth) {
  switch (truth) {
    case Truth::holds:
      return "holds";
    case Truth::fails:
      return "fails";
    case Truth::unknown:
      return "unknown";
  }
  return "unknown";
}

std::string grouped(std::uint64_t number) {
  auto digits = std::to_string(number);
  for (auto at = digits.size(); at > 3;) {
    at -= 3;
    digits.insert(at, ",");
  }
  return digits;
}

std::string counted(std::uint64_t number, std::string_view singular, std::string_view plural) {
  if (number == 1) return fmt::format("1 {}", singular);
  if (plural.empty()) return fmt::format("{} {}s", grouped(number), singular);
  return fmt::format("{} {}", grouped(number), plural);
}

std::string share(std::uint64_t part, std::uint64_t whole) {
  if (whole == 0) return "–";
  auto const percent = 100.0 * static_cast<double>(part) / static_cast<double>(whole);
  if (part > 0 && percent < 0.05) return "< 0.1 %";
  if (part < whole && percent >= 99.95) return "> 99.9 %";
  return fmt::format("{:.1f} %", percent);
}

std::string in_curly_quotes(std::string_view words) { return fmt::format("“{}”", words); }

std::string enumerated(std::span<std::string const> items, std::string_view last) {
  std::string out;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0) out += i + 1 == items.size() ? fmt::format(" {} ", last) : std::string{", "};
    out += items[i];
  }
  return out;
}

std::string capitalised(std::string_view words) {
  if (words.empty()) return {};
  std::size_t first = 1;
  while (first < words.size() && (static_cast<unsigned char>(words[first]) & 0xC0U) == 0x80U) {
    ++first;
  }
  return upper_case(words.substr(0, first)).append(words.substr(first));
}

std::string sentence(std::string_view words) {
  std::string out{words};
  for (std::string_view const end : {".", "!", "?", "…", ".”"}) {
    if (out.ends_with(end)) return out;
  }
  if (!out.empty()) out += '.';
  return out;
}

EditionNames edition_names(Edition const& old_edition, Edition const& new_edition) {
  EditionNames names{short_label(old_edition), short_label(new_edition)};
  if (names.old_name == names.new_name || names.old_name.empty() || names.new_name.empty()) {
    return {"old edition", "new edition"};
  }
  return names;
}

std::string destination_words(Edition const& edition, Lead const& lead) {
  if (auto const* couplet = std::get_if<ToCouplet>(&lead.destination)) {
    return edition[couplet->couplet].label;
  }
  if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
    return taxon_names(edition, taxa->taxa, ", ");
  }
  if (auto const* key = std::get_if<ToKey>(&lead.destination)) return key->key;
  return std::get<Unresolved>(lead.destination).printed;
}

std::string printed_destination(Edition const& edition, Lead const& lead) {
  if (!lead.destination_printed.empty()) return lead.destination_printed;
  return destination_words(edition, lead);
}

std::string taxon_names(Edition const& edition, std::span<TaxonId const> taxa,
                        std::string_view separator) {
  return fmt::format("{}", fmt::join(names(edition, taxa), separator));
}

std::string statement_words(Edition const& edition, std::optional<StatementId> const& statement) {
  if (!statement) return {};
  auto const& statements = edition[statement->lead].statements;
  return statement->ordinal < statements.size() ? statements[statement->ordinal].text
                                                : std::string{};
}

std::string name_of(Edition const& edition, std::optional<LeadId> const& lead) {
  return lead ? lead_name(edition, *lead) : std::string{};
}

std::string name_of(Edition const& edition, std::optional<CoupletId> const& couplet) {
  return couplet ? edition[*couplet].label : std::string{};
}

CharacterLabels::CharacterLabels(std::span<CharacterUse const> characters) {
  for (auto const& use : characters) {
    // What an opaque character is called without a label.
    bool const as_without = use.character.starts_with("~") && !use.character.starts_with("~n:") &&
                            !use.label.starts_with("“") &&
                            std::string_view{use.character}.substr(1) == use.label;
    if (!as_without) by_id_.emplace(use.character, use.label);
  }
}

CharacterLabels::CharacterLabels(Lexicon const& lexicon) {
  by_id_.reserve(lexicon.characters.size());
  for (auto const& character : lexicon.characters) {
    by_id_.emplace(character.id, character.label);
  }
}

std::string CharacterLabels::operator()(std::string_view id) const {
  auto const found = by_id_.find(id);
  bool const opaque = id.starts_with('~');
  if (found != by_id_.end() && !found->second.empty()) {
    auto const label = found->second;
    return opaque && !label.starts_with("“") ? in_curly_quotes(label) : std::string{label};
  }
  // "~n:spike|mm": a number, by what was measured.
  if (id.starts_with("~n:")) return in_curly_quotes(id.substr(3, id.rfind('|') - 3));
  return opaque ? in_curly_quotes(id.substr(1)) : std::string{id};
}

// --- collation -------------------------------------------------------------------------------

std::string_view mark_of(CoupletEvent event) {
  switch (event) {
    case CoupletEvent::kept:
      return "";
    case CoupletEvent::renumbered:
    case CoupletEvent::leads_swapped:
    case CoupletEvent::reworded:
      return "·";
    case CoupletEvent::restated:
      return "§";
    case CoupletEvent::redirected:
    case CoupletEvent::moved:
      return "‡";
    case CoupletEvent::lead_added:
    case CoupletEvent::inserted:
      return "*";
    case CoupletEvent::lead_dropped:
    case CoupletEvent::removed:
      return "†";
    case CoupletEvent::split:
    case CoupletEvent::merged:
      return "¶";
  }
  return "";
}

std::span<MarkMeaning const> mark_legend() {
  static constexpr std::array kLegend{
      MarkMeaning{"*", "new"},
      MarkMeaning{"†", "gone"},
      MarkMeaning{"§", "says something else"},
      MarkMeaning{"‡", "leads or hangs elsewhere"},
      MarkMeaning{"¶", "divided or united"},
      MarkMeaning{"·", "words, numbers or order only"},
  };
  return kLegend;
}

std::string marks_of(CoupletChange const& change) {
  std::string marks;
  std::size_t count = 0;
  for (auto const& entry : mark_legend()) {
    if (entry.mark == "·" && count > 0) break;
    if (count == 3) break;
    bool const has = std::any_of(change.events.begin(), change.events.end(),
                                 [&](CoupletEvent event) { return mark_of(event) == entry.mark; });
    if (!has) continue;
    marks += entry.mark;
    ++count;
  }
  return marks;
}

std::string_view mark_of(RouteStep const& step) {
  if (!step.old_lead) return "*";
  if (!step.new_lead) return "†";
  if (!step.aligned || !step.same_lead) return "‡";
  return step.restated ? "§" : "";
}

std::string couplets_in_words(CoupletChange const& change, Edition const& old_edition,
                              Edition const& new_edition) {
  auto const called = edition_names(old_edition, new_edition);
  if (change.old_couplets.size() == 1 && change.new_couplets.size() == 1 &&
      old_edition[change.old_couplets.front()].label ==
          new_edition[change.new_couplets.front()].label) {
    return fmt::format("{} of both editions", labels(old_edition, change.old_couplets));
  }
  std::vector<std::string> sides;
  if (!change.old_couplets.empty()) {
    sides.push_back(
        fmt::format("{} of {}", labels(old_edition, change.old_couplets), called.old_name));
  }
  if (!change.new_couplets.empty()) {
    sides.push_back(
        fmt::format("{} of {}", labels(new_edition, change.new_couplets), called.new_name));
  }
  return fmt::format("{}", fmt::join(sides, ", "));
}

std::string events_in_words(std::span<CoupletEvent const> events) {
  std::vector<std::string> words;
  for (auto const event : events) {
    if (event == CoupletEvent::kept && events.size() > 1) continue;
    words.emplace_back(to_word(event));
  }
  return fmt::format("{}", fmt::join(words, ", "));
}

std::string events_in_words(std::span<TaxonEvent const> events) {
  std::vector<std::string> words;
  for (auto const event : events) {
    if (event == TaxonEvent::same_route && events.size() > 1) continue;
    words.emplace_back(to_word(event));
  }
  return fmt::format("{}", fmt::join(words, ", "));
}

std::string taxa_in_words(TaxonChange const& change, Edition const& old_edition,
                          Edition const& new_edition) {
  auto const before = names(old_edition, change.old_taxa);
  auto const after = names(new_edition, change.new_taxa);
  if (before.empty()) return enumerated(after);
  if (after.empty()) return enumerated(before);
  if (before.size() == 1 && after.size() > 1) {
    return fmt::format("{}, divided into {}", before.front(), enumerated(after));
  }
  if (before.size() > 1 && after.size() == 1) {
    return fmt::format("{}, united as {}", enumerated(before), after.front());
  }
  bool const same = before == after;
  auto const was = enumerated(before);
  auto const is = enumerated(after);
  switch (change.relation) {
    case Relation::congruent:
    case Relation::disjoint:
      return same ? is : fmt::format("{}, now {}", was, is);
    case Relation::includes:
      return same ? fmt::format("{}, now narrower", is)
                  : fmt::format("part of {}, now {}", was, is);
    case Relation::included_in:
      return same ? fmt::format("{}, now wider", is) : fmt::format("{}, now within {}", was, is);
    case Relation::overlaps:
      return same ? fmt::format("{}, now within other limits", is)
                  : fmt::format("{}, now overlapping {}", was, is);
  }
  return is;
}

std::string basis_in_words(MatchBasis basis) {
  switch (basis) {
    case MatchBasis::same_name:
      return "by its name";
    case MatchBasis::spelling:
      return "by the spelling of its name";
    case MatchBasis::synonymy:
      return "by synonymy";
    case MatchBasis::concept_map:
      return "by the concept map";
    case MatchBasis::containment:
      return "one lying within the other";
  }
  return "";
}

std::string role_in_words(RoleChange const& role) {
  std::string text = to_word(role.transition);
  if (!role.numbers.empty()) text += ", " + role.numbers;
  if (!role.exceptions_added.empty()) text += " for " + enumerated(role.exceptions_added);
  if (!role.exceptions_removed.empty()) {
    text += ", no longer for " + enumerated(role.exceptions_removed);
  }
  return text;
}

std::string character_of(RoleChange const& role, CharacterLabels const& label,
                         Edition const& old_edition, Edition const& new_edition) {
  if (role.character.starts_with('~')) {
    // An opaque character is its words: the printed ones, not the normalised ones of its id.
    for (auto const& words : {statement_words(old_edition, role.old_statement),
                              statement_words(new_edition, role.new_statement)}) {
      if (!words.empty()) return in_curly_quotes(words);
    }
  }
  return label(role.character);
}

}  // namespace keydrift::reports
