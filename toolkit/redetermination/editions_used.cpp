#include "keydrift/redetermination/editions_used.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "keydrift/key/fold.hpp"
#include "keydrift/key/prose.hpp"
#include "keydrift/redetermination/digits.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kUnknown = 0;
constexpr std::size_t kOld = 1;
constexpr std::size_t kNew = 2;
// Citations with their dates kept; beyond that all are forgotten and resolved anew.
constexpr std::size_t kKept = 100'000;

// "1998" and "1998a".
bool is_year(std::string_view word) {
  return word.size() >= 4 && word.size() <= 5 &&
         std::all_of(word.begin(), word.begin() + 4, is_digit) &&
         (word.size() == 4 || (word[4] >= 'a' && word[4] <= 'z'));
}

// Dashes and quotes of the general punctuation, U+2000 to U+206F: E2 80 80 to E2 81 AF.
bool is_punctuation(std::string_view text, std::size_t at) {
  return at + 2 < text.size() && text[at] == '\xE2' &&
         (text[at + 1] == '\x80' || text[at + 1] == '\x81');
}

// The words of a citation that tell it from others.
std::vector<std::string> words_of(std::string_view citation) {
  constexpr std::array<std::string_view, 4> kBetweenAuthors{"and", "et", "al", "und"};
  auto const folded = fold_words(citation);
  std::vector<std::string> words;
  std::string word;
  auto const end_word = [&] {
    bool const idle = word.empty() || std::find(kBetweenAuthors.begin(), kBetweenAuthors.end(),
                                                word) != kBetweenAuthors.end();
    if (!idle) words.push_back(word);
    word.clear();
  };
  for (std::size_t i = 0; i < folded.size(); ++i) {
    auto const c = folded[i];
    if (is_punctuation(folded, i)) {
      end_word();
      i += 2;
    } else if (static_cast<unsigned char>(c) >= 0x80 || is_digit(c) || (c >= 'a' && c <= 'z')) {
      word += c;
    } else {
      end_word();
    }
  }
  end_word();
  return words;
}

enum class Fit { none, in_order, side_by_side, same };

bool stands_in_order(std::vector<std::string> const& words, std::vector<std::string> const& in) {
  auto at = in.begin();
  for (auto const& word : words) {
    at = std::find(at, in.end(), word);
    if (at == in.end()) return false;
    ++at;
  }
  return true;
}

bool stands_in(std::vector<std::string> const& words, std::vector<std::string> const& in) {
  return std::search(in.begin(), in.end(), words.begin(), words.end()) != in.end();
}

Fit fit_of_work(std::vector<std::string> const& words, bool has_year,
                std::vector<std::string> const& work) {
  if (words.empty()) return Fit::none;
  if (words == work) return Fit::same;
  if (stands_in(words, work)) return Fit::side_by_side;
  bool const tells = has_year && words.size() > 1;
  return tells && stands_in_order(words, work) ? Fit::in_order : Fit::none;
}

template <class Use>
void for_each_work(std::string_view references, Use use) {
  while (!references.empty()) {
    auto const bar = std::min(references.find('|'), references.size());
    auto const words = words_of(references.substr(0, bar));
    if (!words.empty()) use(words);
    references.remove_prefix(std::min(bar + 1, references.size()));
  }
}

std::string label_of(FrontMatter const& front, char const* otherwise) {
  if (!front.edition.empty()) return front.edition;
  return front.year ? std::to_string(*front.year) : otherwise;
}

std::optional<Period> year_of(FrontMatter const& front) {
  if (!front.year || *front.year < 1 || *front.year > 9999) return std::nullopt;
  auto const year = static_cast<Day>(*front.year);
  return Period{year * 10000 + 101, year * 10000 + 1231};
}

}  // namespace

char const* to_word(EditionBasis basis) {
  switch (basis) {
    case EditionBasis::cited:
      return "cited";
    case EditionBasis::by_date:
      return "presumed by date";
    case EditionBasis::unknown:
      return "not known";
    case EditionBasis::contradictory:
      return "citation and date contradict";
  }
  return "not known";
}

EditionsUsed::EditionsUsed(CitationTable const* table, FrontMatter const& old_front,
                           FrontMatter const& new_front)
    : has_table_{table != nullptr},
      labels_{"", label_of(old_front, "OLD"), label_of(new_front, "NEW")},
      editions_{{}, {year_of(old_front)}, {year_of(new_front)}} {
  for (auto const& label : labels_) folded_.push_back(fold_words(label));
  auto const add = [&](std::string_view citation, std::size_t edition) {
    Row row{.words = words_of(citation), .has_year = false, .edition = edition};
    row.has_year = std::any_of(row.words.begin(), row.words.end(), is_year);
    if (!row.words.empty()) rows_.push_back(std::move(row));
  };
  if (table == nullptr) {
    for (auto const edition : {kOld, kNew}) {
      auto const& front = edition == kOld ? old_front : new_front;
      add(front.edition, edition);
      if (front.year) add(std::to_string(*front.year), edition);
    }
    return;
  }
  auto const warn = [&](std::string code, std::string message, std::string remedy) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = Severity::warning;
    finding.file = table->name;
    finding.place.line = 1;
    finding.message = std::move(message);
    finding.remedy = std::move(remedy);
    findings_.push_back(std::move(finding));
  };
  if (folded_[kOld] == folded_[kNew]) {
    warn("same-label",
         "both editions are called " + in_quotes(labels_[kOld]) +
             ", so that a row with that label means the old one",
         "write OLD and NEW into the column \"edition\", or give the editions labels");
  }
  std::array<bool, 2> met{};
  for (auto const& row : table->rows) {
    auto const edition = edition_called(row.edition);
    if (row.published) editions_[edition].published = row.published;
    if (row.citation.empty()) continue;
    if (edition == kOld || edition == kNew) met[edition - kOld] = true;
    add(row.citation, edition);
  }
  if (!met[0] && !met[1]) {
    warn("no-such-edition",
         "no citation of the table means " + in_quotes(labels_[kOld]) + " or " +
             in_quotes(labels_[kNew]),
         "write the labels of the editions as they print them, or OLD and NEW");
  }
}

std::size_t EditionsUsed::edition_called(std::string const& label) {
  auto const folded = fold_words(label);
  if (folded == "old") return kOld;
  if (folded == "new") return kNew;
  auto const found = std::find(folded_.begin() + kOld, folded_.end(), folded);
  if (found != folded_.end()) return static_cast<std::size_t>(found - folded_.begin());
  labels_.push_back(label);
  folded_.push_back(folded);
  // A label that is a year tells when it was published, unless a row does.
  editions_.push_back({label.size() == 4 ? read_period(label) : std::nullopt});
  return labels_.size() - 1;
}

std::vector<std::size_t> EditionsUsed::cited(std::string_view references, bool& unnamed) const {
  std::vector<std::size_t> editions;
  for_each_work(references, [&](std::vector<std::string> const& work) {
    auto best = Fit::none;
    std::vector<Row const*> fitting;
    for (auto const& row : rows_) {
      auto const fit = fit_of_work(row.words, row.has_year, work);
      if (fit == Fit::none || fit < best) continue;
      if (fit > best) fitting.clear();
      best = fit;
      fitting.push_back(&row);
    }
    if (fitting.empty()) unnamed = true;
    for (auto const* row : fitting) {
      bool const part = std::any_of(fitting.begin(), fitting.end(), [&](Row const* other) {
        return other->words.size() > row->words.size() && stands_in_order(row->words, other->words);
      });
      if (!part) editions.push_back(row->edition);
    }
  });
  std::sort(editions.begin(), editions.end());
  editions.erase(std::unique(editions.begin(), editions.end()), editions.end());
  // Without a table the year alone makes a work OLD's: it is taken for NEW's only where it is not.
  if (!has_table_ && editions.size() > 1) editions.resize(1);
  return editions;
}

EditionRole EditionsUsed::role_of(std::size_t edition, EditionBasis basis) const {
  if (basis == EditionBasis::unknown || basis == EditionBasis::contradictory || edition == kOld) {
    return EditionRole::old_edition;
  }
  return edition == kNew ? EditionRole::new_edition : EditionRole::other;
}

EditionUse EditionsUsed::used(std::size_t edition, EditionBasis basis) const {
  return {.role = role_of(edition, basis), .basis = basis, .edition = edition};
}

bool EditionsUsed::allows(std::size_t edition, Period const& dated) const {
  auto const& published = editions_[edition].published;
  return !published || published->first <= dated.last;
}

EditionUse EditionsUsed::by_date(Period const& dated) const {
  EditionUse const unknown;
  if (!editions_[kOld].published) return unknown;
  // The edition published last by the beginning of the period, and by its end.
  std::size_t at_least = kUnknown;
  std::size_t at_most = kUnknown;
  for (std::size_t edition = kOld; edition < editions_.size(); ++edition) {
    auto const& published = editions_[edition].published;
    if (edition == kNew || !published) continue;
    auto const later_than = [&](std::size_t other) {
      return other == kUnknown || editions_[other].published->last < published->last;
    };
    if (published->last <= dated.first && later_than(at_least)) at_least = edition;
    if (published->first <= dated.last && later_than(at_most)) at_most = edition;
  }
  if (at_least != at_most) return unknown;
  return used(at_least, EditionBasis::by_date);
}

EditionUse EditionsUsed::resolve(std::string_view references, std::string_view date) const {
  bool unnamed = false;
  auto const editions = cited(references, unnamed);
  auto const dated = date.empty() ? std::nullopt : read_period(date);
  std::size_t last = kUnknown;
  for (auto const edition : editions) {
    if (dated && !allows(edition, *dated)) continue;
    auto const published_last = [&](std::size_t one) {
      return editions_[one].published ? editions_[one].published->last : Day{};
    };
    if (last == kUnknown || published_last(edition) > published_last(last)) last = edition;
  }
  EditionUse use;
  if (last != kUnknown) {
    use = used(last, EditionBasis::cited);
  } else if (!editions.empty()) {
    use = {.role = EditionRole::old_edition,
           .basis = EditionBasis::contradictory,
           .edition = editions.front()};
  } else if (dated) {
    use = by_date(*dated);
  }
  use.unnamed_work = unnamed && editions.empty();
  return use;
}

EditionUse const& EditionsUsed::of(std::string const& references, std::string const& date) {
  key_.assign(date);
  key_ += '\x1F';
  key_ += references;
  if (auto const found = known_.find(key_); found != known_.end()) return found->second;
  if (known_.size() >= kKept) known_.clear();
  return known_.emplace(key_, resolve(references, date)).first->second;
}

}  // namespace keydrift
