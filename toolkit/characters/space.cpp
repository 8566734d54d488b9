#include "keydrift/characters/space.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <map>
#include <set>

#include "keydrift/characters/coincidence.hpp"
#include "keydrift/characters/limit_words.hpp"
#include "keydrift/characters/reading.hpp"
#include "keydrift/characters/space_words.hpp"
#include "keydrift/characters/units.hpp"

namespace keydrift {
namespace {

constexpr std::string_view kSex = "@sex";
constexpr std::string_view kLifeStage = "@life stage";
constexpr std::string_view kMaterial = "@material";
constexpr std::string_view kSeason = "@season";
constexpr std::string_view kOther = "@other limit";

std::string_view id_of(LimitKind kind) {
  switch (kind) {
    case LimitKind::sex:
      return kSex;
    case LimitKind::life_stage:
      return kLifeStage;
    case LimitKind::material:
      return kMaterial;
    case LimitKind::season:
      return kSeason;
    case LimitKind::other:
      return kOther;
  }
  return kOther;
}

// What the editions say about one character, before it is given cells.
struct Collected {
  bool numeric{false};
  std::string unit;
  std::set<std::string> states;
  std::set<double> cuts;
};

void collect_cuts(Interval const& interval, std::set<double>& cuts) {
  if (std::isfinite(interval.low)) cuts.insert(interval.low);
  if (std::isfinite(interval.high)) cuts.insert(interval.high);
}

void collect(Atom const& atom, std::map<std::string, Collected>& all) {
  auto& character = all[atom.character];
  character.states.insert(atom.states.begin(), atom.states.end());
  for (auto const& range : atom.ranges) {
    character.numeric = true;
    character.unit = atom.unit;
    collect_cuts(range.usual, character.cuts);
    collect_cuts(range.extreme, character.cuts);
  }
}

bool contains(Interval const& interval, double x) {
  if (x < interval.low || (interval.low_open && x <= interval.low)) return false;
  return x < interval.high || (!interval.high_open && x <= interval.high);
}

// A whole number inside the interval, if there is one.
std::optional<double> whole_number_in(Interval const& interval) {
  double const from = std::isfinite(interval.low) ? std::ceil(interval.low) : 0;
  for (double n = from; n <= from + 1; ++n) {
    if (contains(interval, n)) return n;
  }
  return std::nullopt;
}

// A value inside a cell; any does, since no limit runs through one.
double representative(Interval const& cell, CharacterKind kind) {
  if (kind == CharacterKind::count) {
    if (auto const n = whole_number_in(cell)) return *n;
  }
  if (!cell.low_open && std::isfinite(cell.low)) return cell.low;
  if (!std::isfinite(cell.high)) return std::isfinite(cell.low) ? cell.low + 1 : 0;
  if (!std::isfinite(cell.low)) return cell.high - 1;
  return cell.low + (cell.high - cell.low) / 2;
}

std::vector<Interval> cut_into_cells(std::set<double> const& cuts, CharacterKind kind) {
  std::vector<Interval> cells;
  auto const keep = [&](Interval const& cell) {
    if (kind == CharacterKind::count && !whole_number_in(cell)) return;
    cells.push_back(cell);
  };
  // Lengths, counts and ratios start at nought; only a negative limit says otherwise (temperature).
  bool const signed_values = !cuts.empty() && *cuts.begin() < 0;
  Interval next;
  if (!signed_values) next.low = 0;
  for (double const cut : cuts) {
    next.high = cut;
    next.high_open = true;
    if (next.low < cut) keep(next);
    keep({.low = cut, .high = cut});
    next = {.low = cut, .low_open = true};
  }
  keep(next);
  return cells;
}

// What "the same words" are compared by.  A lone "a" is an article in prose but a state in a table.
std::string words_key(std::string_view text) {
  auto key = normalised_words(text);
  if (!key.empty()) return key;
  auto const first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return key;
  return std::string{text.substr(first, text.find_last_not_of(' ') - first + 1)};
}

std::vector<std::string> split_states(std::string_view value) {
  std::vector<std::string> parts;
  for (auto const item : alternatives_in(value)) {
    auto words = words_key(item);
    if (!words.empty()) parts.push_back(std::move(words));
  }
  return parts;
}

bool says_unknown(std::string_view value) {
  static constexpr std::string_view kUnknown[] = {
      "", "?", "-", "–", "NULL", "\\N", "unknown", "not recorded", "missing", "not seen", "n.r."};
  return std::find(std::begin(kUnknown), std::end(kUnknown), value) != std::end(kUnknown);
}

bool leaves_open(LexiconCharacter const& character) {
  return std::any_of(character.states.begin(), character.states.end(),
                     [](LexiconState const& state) { return !state.not_told_from.empty(); });
}

bool says_inapplicable(std::string_view value) {
  auto const words = normalised_words(value);
  return words == "inapplicable" || words == "not applicable" || value == "n/a" || value == "N/A";
}

}  // namespace

bool is_empty(std::span<std::uint64_t const> cells) {
  return std::all_of(cells.begin(), cells.end(), [](auto word) { return word == 0; });
}
bool is_subset(std::span<std::uint64_t const> a, std::span<std::uint64_t const> b) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    if ((a[i] & ~b[i]) != 0) return false;
  }
  return true;
}
bool meets(std::span<std::uint64_t const> a, std::span<std::uint64_t const> b) {
  for (std::size_t i = 0; i < a.size(); ++i) {
    if ((a[i] & b[i]) != 0) return true;
  }
  return false;
}
std::size_t count_cells(std::span<std::uint64_t const> cells) {
  std::size_t count = 0;
  for (auto const word : cells) count += static_cast<std::size_t>(std::popcount(word));
  return count;
}
void intersect(std::span<std::uint64_t> a, std::span<std::uint64_t const> b) {
  for (std::size_t i = 0; i < a.size(); ++i) a[i] &= b[i];
}
void remove(std::span<std::uint64_t> a, std::span<std::uint64_t const> b) {
  for (std::size_t i = 0; i < a.size(); ++i) a[i] &= ~b[i];
}

void Domain::add_state(std::span<std::uint64_t> to, std::uint32_t state) const {
  add_cell(to, state);
  for (std::uint32_t i = 0; i < together.size(); ++i) {
    if (std::binary_search(together[i].begin(), together[i].end(), state)) {
      add_cell(to, static_cast<std::uint32_t>(states.size()) + i);
    }
  }
}

CharacterSpace::CharacterSpace(std::span<Edition const* const> editions, Lexicon const& lexicon) {
  std::map<std::string, Collected> all;
  for (auto const& character : lexicon.characters) {
    auto& entry = all[character.id];
    entry.numeric = character.kind != CharacterKind::categorical;
    entry.unit = character.unit;
    for (auto const& state : character.states) entry.states.insert(state.id);
  }
  for (auto const* edition : editions) {
    for (auto const& couplet : edition->couplets) {
      for (auto const& lead : couplet.leads) {
        for (auto const& statement : lead.statements) {
          for (auto const& atom : statement.any_of) collect(atom, all);
          for (auto const& limit : statement.limits) {
            all[std::string{id_of(limit.kind)}].states.insert(limit.value);
          }
        }
      }
    }
  }
  if (auto const sex = all.find(std::string{kSex}); sex != all.end()) {
    sex->second.states.insert({"female", "male"});
  }

  auto const contrasts = opaque_contrasts(editions);
  for (auto const& [id, entry] : all) {
    Domain domain;
    domain.id = id;
    domain.opaque = id.starts_with('~');
    domain.unit = entry.unit;
    auto const* known = lexicon.find(id);
    if (known != nullptr && known->id != id) known = nullptr;
    domain.label = known != nullptr && !known->label.empty() ? known->label : id;
    if (id.starts_with('@')) domain.label = id.substr(1);
    if (domain.opaque) domain.label = id.substr(id.starts_with("~n:") ? 3 : 1);
    if (known != nullptr) domain.difficulty = known->difficulty;
    if (entry.numeric) {
      bool const count = known != nullptr ? known->kind == CharacterKind::count : entry.unit == "1";
      domain.kind = count ? CharacterKind::count : CharacterKind::measurement;
      domain.intervals = cut_into_cells(entry.cuts, domain.kind);
      domain.cells = static_cast<std::uint32_t>(domain.intervals.size() + 1);
    } else {
      domain.states.assign(entry.states.begin(), entry.states.end());
      if (domain.opaque) {
        auto const found = contrasts.find(id);
        domain.together =
            states_together(domain.states, found == contrasts.end() ? StatePairs{} : found->second);
      } else if (known != nullptr && leaves_open(*known)) {
        domain.together = states_together(domain.states, exclusive_states(*known));
      }
      domain.cells = static_cast<std::uint32_t>(domain.states.size() + domain.together.size() + 2);
    }
    by_id_.emplace(id, static_cast<std::uint32_t>(domains_.size()));
    domains_.push_back(std::move(domain));
  }

  // Phrases by which a record may name a state, and names by which a column names a character.
  phrases_.resize(domains_.size());
  std::set<std::string> columns;
  for (std::uint32_t i = 0; i < domains_.size(); ++i) {
    auto const& domain = domains_[i];
    if (domain.id.starts_with('@')) continue;
    for (auto const& name : {domain.id, domain.label}) {
      by_column_.emplace(words_key(name), i);
      columns.insert(name);
    }
    for (std::uint32_t s = 0; s < domain.states.size(); ++s) {
      phrases_[i].emplace(words_key(domain.states[s]), s);
    }
  }
  column_names_.assign(columns.begin(), columns.end());
  for (auto const& character : lexicon.characters) {
    auto const found = by_id_.find(character.id);
    auto& domain = domains_[found->second];
    for (auto const& state : character.states) {
      auto const cell = std::lower_bound(domain.states.begin(), domain.states.end(), state.id);
      for (auto const& phrase : state.phrases) {
        phrases_[found->second].emplace(words_key(phrase.text),
                                        static_cast<std::uint32_t>(cell - domain.states.begin()));
      }
    }
    if (!character.applicable_if) continue;
    auto const on = by_id_.find(character.applicable_if->character);
    if (on == by_id_.end() || on->second == found->second) continue;  // check_lexicon reports it
    auto const& base = domains_[on->second];
    Cells cells((base.cells + 63) / 64);
    for (auto const& state : character.applicable_if->states) {
      auto const at = std::lower_bound(base.states.begin(), base.states.end(), state);
      if (at != base.states.end() && *at == state) {
        base.add_state(cells, static_cast<std::uint32_t>(at - base.states.begin()));
      }
    }
    if (is_empty(cells)) continue;  // a condition that nothing can meet is no condition
    // A draft knows when a structure is absent; whatever else is seen of it, it is there.
    if (lexicon.drafted && base.other()) add_cell(cells, *base.other());
    domain.condition = CharacterIndex{on->second};
    domain.condition_cells = std::move(cells);
    conditional_.push_back(found->second);
  }
  std::sort(conditional_.begin(), conditional_.end());
  lay_out();
}

void CharacterSpace::lay_out() {
  std::uint32_t offset = 0;
  for (auto& domain : domains_) {
    domain.offset = offset;
    domain.words = (domain.cells + 63) / 64;
    offset += domain.words;
  }
  words_ = offset;
  anything_.assign(words_, 0);
  for (std::uint32_t i = 0; i < domains_.size(); ++i) {
    auto const& domain = domains_[i];
    auto const cells = part(anything_, CharacterIndex{i});
    auto const possible = domain.condition ? domain.cells : domain.inapplicable();
    for (std::uint32_t cell = 0; cell < possible; ++cell) add_cell(cells, cell);
  }
}

std::optional<CharacterIndex> CharacterSpace::find(std::string_view id) const {
  auto const found = by_id_.find(std::string{id});
  if (found == by_id_.end()) return std::nullopt;
  return CharacterIndex{found->second};
}

std::optional<CharacterIndex> CharacterSpace::find_column(std::string_view header) const {
  auto const found = by_column_.find(words_key(header));
  if (found == by_column_.end()) return std::nullopt;
  return CharacterIndex{found->second};
}

std::vector<std::string> CharacterSpace::column_names() const { return column_names_; }

Cells CharacterSpace::cells_of(Atom const& atom, bool usual) const {
  auto const index = by_id_.at(atom.character);
  auto const& domain = domains_[index];
  Cells cells(domain.words);
  if (domain.kind == CharacterKind::categorical) {
    for (auto const& state : atom.states) {
      auto const at = std::lower_bound(domain.states.begin(), domain.states.end(), state);
      domain.add_state(cells, static_cast<std::uint32_t>(at - domain.states.begin()));
    }
  } else {
    for (std::uint32_t cell = 0; cell < domain.intervals.size(); ++cell) {
      double const value = representative(domain.intervals[cell], domain.kind);
      for (auto const& range : atom.ranges) {
        if (contains(usual ? range.usual : range.extreme, value)) add_cell(cells, cell);
      }
    }
  }
  if (atom.negated) {
    Cells complement(domain.words);
    for (std::uint32_t cell = 0; cell < domain.inapplicable(); ++cell) {
      if (!has_cell(cells, cell)) add_cell(complement, cell);
    }
    return complement;
  }
  return cells;
}

// Precondition of both: the atom belongs to an edition that the space was built from.
Cells CharacterSpace::allowed(Atom const& atom) const {
  // "not (3-)4-6(-8)" refutes what the usual range would support, no more.
  return cells_of(atom, atom.negated);
}
Cells CharacterSpace::supported(Atom const& atom) const { return cells_of(atom, !atom.negated); }

std::optional<CharacterIndex> CharacterSpace::limit_character(LimitKind kind) const {
  return find(id_of(kind));
}

Cells CharacterSpace::limit_cells(Limit const& limit) const {
  auto const character = limit_character(limit.kind);
  if (!character) return {};
  auto const& domain = (*this)[*character];
  Cells cells(domain.words);
  auto const at = std::lower_bound(domain.states.begin(), domain.states.end(), limit.value);
  if (at != domain.states.end() && *at == limit.value) {
    add_cell(cells, static_cast<std::uint32_t>(at - domain.states.begin()));
  }
  return cells;
}

ObservedCells CharacterSpace::observe_limit(LimitKind kind, std::string_view value) const {
  auto const character = limit_character(kind);
  if (!character || says_unknown(value)) return {};
  auto const& domain = (*this)[*character];
  auto const word = canonical_limit(kind, value);
  if (word.empty()) return {};
  Cells cells(domain.words);
  auto const at = std::lower_bound(domain.states.begin(), domain.states.end(), word);
  add_cell(cells, at != domain.states.end() && *at == word
                      ? static_cast<std::uint32_t>(at - domain.states.begin())
                      : *domain.other());
  return {.cells = std::move(cells), .problem = ""};
}

ObservedCells CharacterSpace::observe(CharacterIndex character, std::string_view value,
                                      std::string_view unit) const {
  while (!value.empty() && value.front() == ' ') value.remove_prefix(1);
  while (!value.empty() && value.back() == ' ') value.remove_suffix(1);
  if (says_unknown(value)) return {};
  auto const& domain = (*this)[character];
  Cells cells(domain.words);
  if (says_inapplicable(value)) {
    add_cell(cells, domain.inapplicable());
    return {.cells = std::move(cells), .problem = ""};
  }
  if (domain.kind != CharacterKind::categorical) {
    auto const number = read_number(value, unit.empty() ? std::string_view{domain.unit} : unit);
    if (!number) {
      return {.cells = {},
              .problem = "\"" + std::string{value} + "\" is not a number; write it as 4.5, " +
                         with_unit("4.5", domain) + " or 4.5-6"};
    }
    if (number->unit != domain.unit) {
      return {
          .cells = {},
          .problem =
              "the unit of \"" + std::string{value} + "\" does not measure " + domain.label +
              (domain.unit.empty() ? ", which is a ratio" : ", which is given in " + domain.unit)};
    }
    for (std::uint32_t cell = 0; cell < domain.intervals.size(); ++cell) {
      auto const& interval = domain.intervals[cell];
      bool const below =
          interval.high < number->low || (interval.high_open && interval.high <= number->low);
      bool const above =
          interval.low > number->high || (interval.low_open && interval.low >= number->high);
      if (!below && !above) add_cell(cells, cell);
    }
    if (is_empty(cells)) {
      return {.cells = {}, .problem = "no " + domain.label + " can be " + std::string{value}};
    }
    return {.cells = std::move(cells), .problem = ""};
  }
  for (auto const& state : split_states(value)) {
    auto const found = phrases_[character.index].find(state);
    if (found == phrases_[character.index].end()) {
      return {.cells = {},
              .problem = "\"" + state + "\" is not a state of " + domain.label +
                         "; its states are " + join_or(domain.states)};
    }
    domain.add_state(cells, found->second);
  }
  if (is_empty(cells)) {
    return {.cells = {},
            .problem = "\"" + std::string{value} + "\" names no state of " + domain.label};
  }
  return {.cells = std::move(cells), .problem = ""};
}

bool CharacterSpace::settle(Box& box) const {
  // Conditions form a forest over characters (check_lexicon refuses cycles), so drawing the
  // conclusions pair by pair until nothing moves is exact: what remains has a completion.
  bool moved = true;
  while (moved) {
    moved = false;
    for (auto const index : conditional_) {
      auto const& domain = domains_[index];
      auto const own = part(box, CharacterIndex{index});
      auto const base = part(box, *domain.condition);
      bool const may_apply = meets(base, domain.condition_cells);
      bool const must_apply = is_subset(base, domain.condition_cells);
      bool const can_be_inapplicable = has_cell(own, domain.inapplicable());
      bool const only_inapplicable = can_be_inapplicable && count_cells(own) == 1;
      if (must_apply && can_be_inapplicable) {
        own[domain.inapplicable() / 64] &= ~(std::uint64_t{1} << (domain.inapplicable() % 64));
        moved = true;
      }
      if (!may_apply && !only_inapplicable) {
        Cells inapplicable(domain.words);
        add_cell(inapplicable, domain.inapplicable());
        intersect(own, inapplicable);
        moved = true;
      }
      if (!can_be_inapplicable && !must_apply) {
        intersect(base, domain.condition_cells);
        moved = true;
      }
      if (only_inapplicable && may_apply) {
        remove(base, domain.condition_cells);
        moved = true;
      }
      if (is_empty(own) || is_empty(base)) return false;
    }
  }
  return true;
}

}  // namespace keydrift
