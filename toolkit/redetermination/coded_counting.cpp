#include "keydrift/redetermination/coded_counting.hpp"

#include <array>
#include <utility>

#include "keydrift/redetermination/number_table.hpp"
#include "keydrift/redetermination/redeterminer_counts.hpp"
#include "keydrift/redetermination/region_sums.hpp"

namespace keydrift {
namespace {

// Names as judged that are kept; beyond that all are forgotten and found again.
constexpr std::size_t kNamesKept = 200'000;
// Pairs of a cited work and a date, likewise.
constexpr std::size_t kUsesKept = 100'000;

// What a word of a character's column means.
struct Meaning {
  enum class Kind : std::uint8_t { unread, nothing, cells, refused };
  Kind kind{Kind::unread};
  bool replaces{false};  // taken at its word, whatever else is known of the character
  std::uint32_t offset{};
  std::uint32_t words{};
  std::uint64_t first{};  // the cells, where one word holds them
  Cells cells{};          // else
};

template <class Value>
inline Value& at(std::vector<Value>& values, std::size_t index) {
  if (index >= values.size()) [[unlikely]] {
    values.resize(std::max(index + 1, values.size() * 2));
  }
  return values[index];
}

// What a specimen of a verdict counts as.
struct Facts {
  std::uint64_t specimens{};    // not yet told to the table
  std::uint64_t first_place{};  // of the first of them
  std::uint8_t outcome{};
  bool look{}, relabel{};
};

// What a word says about the scopes of both editions.
struct ScopeWord {
  bool known{false};
  ScopeAnswer in_old{ScopeAnswer::unknown};
  ScopeAnswer in_new{ScopeAnswer::unknown};
};
struct PlaceWord {
  bool known{false};
  bool any{false};
  bool in_old{false};
  bool in_new{false};
};

}  // namespace

struct CodedCounting::State {
  State(RedeterminationGround const& the_ground, Redeterminer::Counts& the_counts,
        CodedWords const& the_words)
      : ground{the_ground},
        counts{the_counts},
        words{the_words},
        asks_scope{counts.in_old.asks() || counts.in_new.asks()},
        by_region{counts.by_region} {
    for (auto const& column : words.characters()) {
      characters.push_back(ground.space.find_column(column.character));
    }
    meanings.resize(characters.size());
    brief.resize(characters.size());
    if (ground.space.box_words() == 0) {
      for (auto& kept : brief) kept.cells[kNoWord] = 0;
    }
  }

  // --- evidence ---

  [[nodiscard]] Meaning read_character(std::size_t column, WordCode code) const {
    Meaning meaning;
    meaning.kind = Meaning::Kind::nothing;
    auto const character = characters[column];
    if (!character) return meaning;
    auto observed = ground.space.observe(*character, words.character(column, code),
                                         words.characters()[column].unit);
    if (!observed.problem.empty()) {
      meaning.kind = Meaning::Kind::refused;
    } else if (!observed.cells.empty()) {
      auto const& domain = ground.space[*character];
      meaning.kind = Meaning::Kind::cells;
      // Recorded as inapplicable where nothing says when it applies: taken at its word.
      meaning.replaces = !domain.condition && has_cell(observed.cells, domain.inapplicable());
      set_cells(meaning, *character, std::move(observed.cells));
    }
    return meaning;
  }

  [[nodiscard]] Meaning read_limit(LimitKind kind, std::string_view word) const {
    Meaning meaning;
    meaning.kind = Meaning::Kind::nothing;
    auto observed = ground.space.observe_limit(kind, std::string{word});
    auto const character = ground.space.limit_character(kind);
    if (observed.cells.empty() || !character) return meaning;
    meaning.kind = Meaning::Kind::cells;
    set_cells(meaning, *character, std::move(observed.cells));
    return meaning;
  }

  void set_cells(Meaning& meaning, CharacterIndex character, Cells cells) const {
    auto const& domain = ground.space[character];
    meaning.offset = domain.offset;
    meaning.words = domain.words;
    meaning.first = cells.front();
    if (domain.words > 1) meaning.cells = std::move(cells);
  }

  // False: nothing is left of the character.
  bool apply(Meaning const& meaning) {
    if (meaning.words == 1) {
      auto& word = box[meaning.offset];
      word = meaning.replaces ? meaning.first : word & meaning.first;
      return word != 0;
    }
    std::span const cells{box.data() + meaning.offset, meaning.words};
    if (meaning.replaces) {
      std::copy(meaning.cells.begin(), meaning.cells.end(), cells.begin());
    } else {
      intersect(cells, meaning.cells);
    }
    return !is_empty(cells);
  }

  // What the first words of each column mean, where it is the cells of one word and no more: that
  // is nearly all that archives hold.
  struct BriefMeanings {
    static constexpr std::uint64_t kNothing = ~std::uint64_t{};
    std::size_t offset{};
    std::array<std::uint64_t, 16> cells{kNothing};  // by code; 0: to be asked of `meanings`
  };

  void keep_brief(std::size_t column, WordCode code, Meaning const& meaning) {
    auto& kept = brief[column];
    if (code >= kept.cells.size() || ground.space.box_words() == 0) return;
    if (meaning.kind == Meaning::Kind::nothing) kept.cells[code] = BriefMeanings::kNothing;
    if (meaning.kind != Meaning::Kind::cells || meaning.words != 1 || meaning.replaces) return;
    if (meaning.first == BriefMeanings::kNothing) return;
    kept.offset = meaning.offset;
    kept.cells[code] = meaning.first;
  }

  // False: the record holds what has to be told.
  bool read_evidence(CodedSpecimen const& specimen) {
    box = ground.space.anything();
    any = false;
    bool left = true;
    for (std::size_t column = 0; column < specimen.characters.size(); ++column) {
      auto const code = specimen.characters[column];
      if (auto const& kept = brief[column]; code < kept.cells.size() && kept.cells[code] != 0) {
        auto const cells = kept.cells[code];
        auto& word = box[kept.offset];
        word &= cells;
        left = left & (word != 0);
        any = any | (cells != BriefMeanings::kNothing);
        continue;
      }
      if (code == kNoWord) continue;
      Meaning const* meaning = nullptr;
      if (code == kUnnumbered) {
        unnumbered = read_character(column, code);
        meaning = &unnumbered;
      } else {
        auto& known = at(meanings[column], code);
        if (known.kind == Meaning::Kind::unread) {
          known = read_character(column, code);
          keep_brief(column, code, known);
        }
        meaning = &known;
      }
      if (meaning->kind == Meaning::Kind::nothing) continue;
      if (meaning->kind == Meaning::Kind::refused || !apply(*meaning)) return false;
      any = true;
    }
    if (!left) return false;
    constexpr std::array kLimits{std::pair{LimitKind::sex, CodedTerm::sex},
                                 std::pair{LimitKind::life_stage, CodedTerm::life_stage},
                                 std::pair{LimitKind::material, CodedTerm::reproductive_condition}};
    for (std::size_t i = 0; i < kLimits.size(); ++i) {
      auto const [kind, term] = kLimits[i];
      auto const code = specimen.term(term);
      if (code == kNoWord) continue;
      if (code == kUnnumbered) {
        unnumbered = read_limit(kind, words.term(term, code));
        if (unnumbered.kind == Meaning::Kind::cells) (void)apply(unnumbered);
        continue;
      }
      auto& known = at(limits[i], code);
      if (known.kind == Meaning::Kind::unread) known = read_limit(kind, words.term(term, code));
      if (known.kind == Meaning::Kind::cells) (void)apply(known);
    }
    return !any || ground.space.settle(box);
  }

  // --- the name ---

  std::uint32_t number_of_name(std::string const& name) {
    auto const [at, fresh] =
        name_numbers.try_emplace(name, static_cast<std::uint32_t>(names.size()));
    if (fresh) names.push_back(name);
    return at->second;
  }

  std::uint32_t name_of(CodedSpecimen const& specimen) {
    if (names.size() >= kNamesKept) {
      names.clear();
      name_numbers.clear();
      by_name_code.clear();
      by_author.clear();
      by_qualifier.clear();
      verdict_of.clear();
    }
    auto const name = specimen.term(CodedTerm::scientific_name);
    auto const qualifier = specimen.term(CodedTerm::qualifier);
    auto const author = specimen.term(CodedTerm::authorship);
    auto const read = [&] {
      return number_of_name(judged_name(words.term(CodedTerm::scientific_name, name),
                                        words.term(CodedTerm::qualifier, qualifier),
                                        words.term(CodedTerm::authorship, author)));
    };
    if (name == kUnnumbered || qualifier == kUnnumbered || author == kUnnumbered) return read();
    if (qualifier != kNoWord && author != kNoWord) return read();  // rare
    if (qualifier != kNoWord || author != kNoWord) {
      auto& known = author != kNoWord ? by_author : by_qualifier;
      auto const key = std::uint64_t{name} << 32 | (author != kNoWord ? author : qualifier);
      auto number = known.find(key);
      if (number == NumberTable::kNone) {
        number = read();
        known.insert(key, number);
      }
      return number;
    }
    auto& known = at(by_name_code, name);
    if (known == 0) known = read() + 1;
    return known - 1;
  }

  // --- the edition that it was determined with ---

  struct Use {
    EditionUse use;
    std::string references;
    std::uint64_t specimens{};  // counted by number
  };

  Use& use_of(CodedSpecimen const& specimen) {
    auto const references = specimen.term(CodedTerm::identification_references);
    auto const date = specimen.term(CodedTerm::date_identified);
    auto const read = [&] {
      std::string work{words.term(CodedTerm::identification_references, references)};
      std::string const day{words.term(CodedTerm::date_identified, date)};
      auto const& use = counts.editions.of(work, day);
      return Use{.use = use, .references = std::move(work)};
    };
    if (references == kUnnumbered || date == kUnnumbered) {
      settle_use(last_use);
      last_use = read();
      return last_use;
    }
    auto const key = std::uint64_t{references} << 32 | date;
    auto number = use_by_codes.find(key);
    if (number == NumberTable::kNone) {
      if (uses.size() >= kUsesKept) {
        for (auto& use : uses) settle_use(use);
        uses.clear();
        use_by_codes.clear();
      }
      number = static_cast<std::uint32_t>(uses.size());
      uses.push_back(read());
      use_by_codes.insert(key, number);
    }
    return uses[number];
  }

  void settle_use(Use& use) {
    if (use.specimens > 0) counts.used.add(use.use, use.references, use.specimens);
    use.specimens = 0;
  }

  // --- the scopes ---

  ScopeWord scope_word(CodedTerm term, WordCode code) {
    std::string const word{words.term(term, code)};
    bool const sex = term == CodedTerm::sex;
    auto const answer = [&](ScopeMemo& memo) {
      return sex ? memo.sex(word) : memo.life_stage(word);
    };
    return {.known = true, .in_old = answer(counts.in_old), .in_new = answer(counts.in_new)};
  }

  ScopeWord scope_of(CodedTerm term, WordCode code, std::vector<ScopeWord>& known) {
    if (code == kUnnumbered) return scope_word(term, code);
    auto& word = at(known, code);
    if (!word.known) word = scope_word(term, code);
    return word;
  }

  PlaceWord place_word(std::size_t column, WordCode code) {
    PlaceWord word{.known = true};
    for (auto const& place : words.places(column, code)) {
      word.any = true;
      word.in_old = counts.in_old.lists(place) || word.in_old;
      word.in_new = counts.in_new.lists(place) || word.in_new;
    }
    return word;
  }

  void read_scopes(CodedSpecimen const& specimen) {
    if (!asks_scope) return;
    auto const sex = scope_of(CodedTerm::sex, specimen.term(CodedTerm::sex), sexes);
    auto const stage =
        scope_of(CodedTerm::life_stage, specimen.term(CodedTerm::life_stage), stages);
    PlaceWord all;
    places.resize(std::max(places.size(), specimen.places.size()));
    for (std::size_t column = 0; column < specimen.places.size(); ++column) {
      auto const code = specimen.places[column];
      if (code == kNoWord) continue;
      PlaceWord word;
      if (code == kUnnumbered) {
        word = place_word(column, code);
      } else {
        auto& known = at(places[column], code);
        if (!known.known) known = place_word(column, code);
        word = known;
      }
      all.any = all.any || word.any;
      all.in_old = all.in_old || word.in_old;
      all.in_new = all.in_new || word.in_new;
    }
    old_scope = counts.in_old.together(sex.in_old, stage.in_old, all.any, all.in_old);
    new_scope = counts.in_new.together(sex.in_new, stage.in_new, all.any, all.in_new);
  }

  // --- the verdict ---

  // Nothing: there are too many editions for a number.
  std::optional<std::size_t> verdict(std::uint32_t name, EditionUse const& use) {
    auto& path = counts.verdicts.path();
    auto const number = path.number_of(box);
    if (path.forgotten() != forgotten) {
      forgotten = path.forgotten();
      verdict_of.clear();
    }
    // Only a table of citations makes the edition tell.
    bool const tells = ground.editions.has_table() && use.role != EditionRole::old_edition;
    auto const edition = tells ? use.edition + 1 : 0;
    if (edition > 0xFF) return std::nullopt;
    auto const scopes =
        static_cast<std::uint64_t>(static_cast<int>(old_scope) * 3 + static_cast<int>(new_scope));
    auto const key = std::uint64_t{number} << 32 | std::uint64_t{name} << 13 | edition << 5 |
                     scopes << 1 | (any ? 1U : 0U);
    auto const known = verdict_of.find(key);
    if (known != NumberTable::kNone) return known;
    evidence.recorded.box = box;
    evidence.recorded.any = any;
    evidence.recorded.contradictory = false;
    evidence.name = names[name];
    evidence.use = use;
    evidence.old_scope = old_scope;
    evidence.new_scope = new_scope;
    auto const index = counts.verdicts.find(evidence);
    verdict_of.insert(key, static_cast<std::uint32_t>(index));
    auto const& judged = counts.verdicts[index];
    auto& one = at(facts, index);
    one.outcome = static_cast<std::uint8_t>(judged.outcome);
    one.look = judged.look;
    one.relabel = judged.relabel;
    return index;
  }

  // --- sums ---

  // By the codes of one column; the words are told at the end.
  using Sums = std::vector<OutcomeTotals>;

  template <class ToWord>
  void add(Sums& sums, TotalsByWord& by_word, WordCode code, std::size_t outcome, ToWord to_word) {
    if (code == kUnnumbered) {
      ++by_word[to_word()][outcome];
    } else {
      ++at(sums, code)[outcome];
    }
  }

  void add_to_sums(CodedSpecimen const& specimen, std::size_t outcome) {
    auto const word = [&](CodedTerm term) {
      return std::string{words.term(term, specimen.term(term))};
    };
    add(by_storage, counts.by_storage, specimen.term(CodedTerm::storage), outcome,
        [&] { return word(CodedTerm::storage); });
    add(by_person, counts.by_person, specimen.term(CodedTerm::identified_by), outcome,
        [&] { return word(CodedTerm::identified_by); });
    add(by_date, counts.by_decade, specimen.term(CodedTerm::date_identified), outcome,
        [&] { return decade_of(word(CodedTerm::date_identified)); });
    add(by_collector, counts.by_collector, specimen.term(CodedTerm::recorded_by), outcome,
        [&] { return word(CodedTerm::recorded_by); });
    by_region.add(specimen, words, outcome);
  }

  void settle_accounts() {
    auto const settle = [&](Sums& sums, TotalsByWord& by_word, auto const& to_word) {
      for (WordCode code = 0; code < sums.size(); ++code) {
        OutcomeTotals* totals = nullptr;
        for (std::size_t i = 0; i < kOutcomes; ++i) {
          if (sums[code][i] == 0) continue;
          if (totals == nullptr) totals = &by_word[to_word(code)];
          (*totals)[i] += sums[code][i];
        }
      }
      sums.clear();
    };
    auto const term = [&](CodedTerm which) {
      return [this, which](WordCode code) { return std::string{words.term(which, code)}; };
    };
    settle(by_storage, counts.by_storage, term(CodedTerm::storage));
    settle(by_person, counts.by_person, term(CodedTerm::identified_by));
    settle(by_date, counts.by_decade, [this](WordCode code) {
      return decade_of(words.term(CodedTerm::date_identified, code));
    });
    settle(by_collector, counts.by_collector, term(CodedTerm::recorded_by));
    for (auto& use : uses) settle_use(use);
    settle_use(last_use);
    settle_verdicts();
  }

  void settle_verdicts() {
    for (std::size_t i = 0; i < facts.size(); ++i) {
      if (facts[i].specimens > 0) counts.add(i, facts[i].specimens, facts[i].first_place);
    }
    facts.clear();
    verdict_of.clear();
  }

  RedeterminationGround const& ground;
  Redeterminer::Counts& counts;
  CodedWords const& words;
  bool asks_scope;
  std::vector<std::optional<CharacterIndex>> characters;  // by column
  std::vector<std::vector<Meaning>> meanings;             // by column, then code
  std::vector<BriefMeanings> brief;                       // by column
  std::array<std::vector<Meaning>, 3> limits;             // sex, life stage, material
  Meaning unnumbered;
  std::vector<ScopeWord> sexes, stages;
  std::vector<std::vector<PlaceWord>> places;

  std::vector<std::string> names;  // as judged, by number
  std::unordered_map<std::string, std::uint32_t> name_numbers;
  std::vector<std::uint32_t> by_name_code;  // number + 1; 0: not read yet
  NumberTable by_author, by_qualifier;      // by two codes, that of the name first

  // Of the specimen at hand.
  Box box;
  bool any{false};
  ScopeAnswer old_scope{ScopeAnswer::unknown};
  ScopeAnswer new_scope{ScopeAnswer::unknown};
  SpecimenEvidence evidence;

  NumberTable verdict_of;
  std::uint64_t forgotten{};
  std::vector<Facts> facts;  // by verdict

  NumberTable use_by_codes;
  std::vector<Use> uses;
  Use last_use;

  Sums by_storage, by_person, by_date, by_collector;
  RegionSums by_region;
};

CodedCounting::CodedCounting(RedeterminationGround const& ground, Redeterminer::Counts& counts,
                             CodedWords const& words)
    : state_{std::make_unique<State>(ground, counts, words)} {}
CodedCounting::~CodedCounting() = default;

void CodedCounting::settle_accounts() { state_->settle_accounts(); }
void CodedCounting::settle_verdicts() { state_->settle_verdicts(); }

std::optional<Redeterminer::Counted> CodedCounting::count(CodedSpecimen const& specimen,
                                                          std::uint64_t place) {
  auto& state = *state_;
  state.counts.make_room();
  if (!state.read_evidence(specimen)) return std::nullopt;
  state.read_scopes(specimen);
  auto& use = state.use_of(specimen);
  auto const found = state.verdict(state.name_of(specimen), use.use);
  if (!found) return std::nullopt;
  auto const verdict = *found;
  ++use.specimens;
  auto& facts = state.facts[verdict];
  auto& counts = state.counts;
  if (facts.specimens++ == 0) facts.first_place = place;
  state.add_to_sums(specimen, facts.outcome);
  bool const type = specimen.term(CodedTerm::type_status) != kNoWord;
  Redeterminer::Counted counted{.verdict = verdict,
                                .look = facts.look,
                                .relabel = facts.relabel,
                                .expected = type || specimen.voucher};
  auto const storage = state.words.term(CodedTerm::storage, specimen.term(CodedTerm::storage));
  counts.enlist(counted, type, specimen.voucher, storage, place);
  return counted;
}

}  // namespace keydrift
