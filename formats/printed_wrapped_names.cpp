#include "keydrift/formats/printed_wrapped_names.hpp"

#include <algorithm>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

std::string joined_words(std::string_view destination, std::string_view line) {
  return std::string{destination} + " " + std::string{line};
}

bool is_dated(std::string_view authorship) {
  return is_year(without_closing_marks(authorship.substr(last_word_begin(authorship))));
}

// "Roe" of "(Roe, 1900)"; empty where no author stands.
std::string first_author(std::string_view authorship) {
  auto word = authorship.substr(0, authorship.find(' '));
  while (word.starts_with('(') || word.starts_with('[')) word.remove_prefix(1);
  return std::string{without_closing_marks(without_end(word))};
}

// "A." of "A." and "A. bus, A.": no author's initial stands there.
bool ends_in_short_genus(std::string_view destination) {
  auto const begin = last_word_begin(destination);
  if (!is_abbreviated(destination.substr(begin))) return false;
  auto const before = trim_right(destination.substr(0, begin));
  auto const word = before.substr(last_word_begin(before));
  return before.empty() || ends_item(word) || is_separator(word);
}

// "(L.)": in botany another author follows, in zoology none.
bool is_bracketed_author(std::string_view authorship) {
  return authorship.starts_with('(') && authorship.find(')') + 1 == authorship.size() &&
         !is_dated(authorship);
}

// "♂", "♂♀".
bool tells_sex(std::string_view line) {
  for (std::size_t at = 0; at < line.size();) {
    auto const c = code_point_at(line, at);
    if (c.value != 0x2642 && c.value != 0x2640 && !is_blank(c.value)) return false;
    at += c.length;
  }
  return true;
}

}  // namespace

bool is_whole_destination(std::string_view destination) {
  if (destination.empty()) return false;
  if (read_reference(strip_pointer(destination))) return true;
  auto const taxa = read_taxa(destination);
  return taxa.taxa.size() == 1 && taxa.remark.empty() && is_dated(taxa.taxa.front().authorship);
}

std::string_view WrappedNames::at_end_of(std::string_view line) const {
  auto const split = split_at_leader(line, numbering_);
  switch (split.kind) {
    case LeaderKind::dots:
    case LeaderKind::gap:
    case LeaderKind::arrow:
      return line.substr(split.destination_begin);
    case LeaderKind::none: {
      auto const name = trailing_name(line);
      return name ? line.substr(*name) : std::string_view{};
    }
    default:
      return {};
  }
}

bool WrappedNames::is_lone_author(std::size_t at) const {
  constexpr std::size_t kMost = 4;  // words: "Roe ex Dorn."
  if (at >= lines_.size() || !lines_[at].text.ends_with('.')) return false;
  auto const words = words_of(lines_[at].text, kMost + 1);
  bool const authors = words.size() <= kMost && is_authorish(words.front()) &&
                       !is_year(words.front()) &&
                       std::all_of(words.begin(), words.end(), [](std::string_view word) {
                         return is_particle(word) || (is_authorish(word) && !ends_item(word));
                       });
  constexpr std::size_t kLongestShortened = 7;  // bytes
  return authors && words.back().size() <= kLongestShortened && is_end(at);
}

void WrappedNames::look_at_authors() const {
  constexpr std::size_t kLongest = 120;  // bytes of a name with its author
  authors_.emplace();
  std::size_t broken_bare = 0;
  std::size_t broken_bracketed = 0;
  std::size_t remarks = 0;
  for (std::size_t at = 0; at < lines_.size(); ++at) {
    auto const destination = at_end_of(lines_[at].text);
    if (destination.empty() || destination.size() > kLongest) continue;
    auto const taxon = read_taxa(destination).taxa.front();
    if (taxon.genusless || words_of(taxon.name).size() < 2) {
      // "Ausella Roe", "busa Roe"
      bool const latin =
          taxon.genusless ? has_epithet_ending(taxon.name) : is_latin_genus(taxon.name);
      if (latin && !taxon.authorship.empty()) authors_->insert(first_author(taxon.authorship));
      continue;
    }
    // "…... A. bus" / "Roth.": what is asked about says nothing of the others.
    bool const broken = is_lone_author(at + 1);
    bool const bracket = is_bracketed_author(taxon.authorship);
    if (broken) {
      ++(taxon.authorship.empty() ? broken_bare : bracket ? broken_bracketed : remarks);
    } else if (bracket) {
      ++bracketed_;
    } else if (taxon.authorship.empty()) {
      ++unauthored_;
    }
    if (!taxon.authorship.empty()) ++authored_;
    if (!taxon.authorship.empty()) authors_->insert(first_author(taxon.authorship));
  }
  // "…... A. bus Roe" / "Rare.": such lines are no authors here.
  if (remarks == 0) return;
  unauthored_ += broken_bare;
  bracketed_ += broken_bracketed;
}

bool WrappedNames::is_end(std::size_t at) const {
  return at + 1 == lines_.size() || ahead_.gap_after(at) || ahead_.label_follows(at);
}

bool WrappedNames::is_author_above_lead(std::string_view destination, std::size_t at) const {
  if (!ahead_.second_leads_unlabelled() || at + 1 >= lines_.size() || is_end(at)) return false;
  bool const lead =
      is_upper(code_point_at(lines_[at + 1].text, 0).value) && ahead_.ends_in_destination(at + 1);
  if (!lead) return false;
  constexpr std::size_t kMost = 4;  // words: "Roe and Dorn"
  auto const words = words_of(lines_[at].text, kMost + 1);
  bool const authors =
      words.size() <= kMost && std::all_of(words.begin(), words.end(), [](std::string_view word) {
        return is_authorish(word) || is_separator(word) || is_particle(word);
      });
  if (!authors) return false;
  auto const bare = read_taxa(destination);
  if (bare.taxa.size() != 1 || !bare.remark.empty()) return false;
  auto const whole = read_taxa(joined_words(destination, lines_[at].text));
  auto const& taxon = whole.taxa.front();
  bool const same =
      whole.taxa.size() == 1 && whole.remark.empty() && taxon.name == bare.taxa.front().name;
  if (!same || !bare.taxa.front().authorship.empty() || taxon.authorship.empty()) return false;
  if (!authors_) look_at_authors();
  return authors_->contains(first_author(taxon.authorship));
}

bool WrappedNames::goes_on_with_author(std::string_view destination, std::size_t at) const {
  constexpr std::size_t kMost = 8;  // words: "Roe and Dorn, 1911 (in part)"
  auto const line = lines_[at].text;
  auto const words = words_of(line, kMost + 1);
  if (words.size() > kMost || !is_authorish(words[0])) return false;
  if (!is_end(at)) return false;
  auto const bare = read_taxa(destination);
  if (bare.taxa.size() != 1 || !bare.remark.empty()) return false;
  auto const& begun = bare.taxa.front().authorship;
  if (!begun.empty()) {
    // "…... A. bus (L.)" / "Roth.", where all other authors in brackets have one behind them
    if (!is_bracketed_author(begun) || !is_lone_author(at)) return false;
    if (!authors_) look_at_authors();
    return bracketed_ == 0;
  }
  auto const whole = read_taxa(joined_words(destination, line));
  auto const& taxon = whole.taxa.front();
  constexpr std::size_t kLongestRemark = 24;  // bytes: "in part", "comb. nov."
  bool const same = whole.taxa.size() == 1 && taxon.name == bare.taxa.front().name &&
                    whole.remark.size() <= kLongestRemark;
  if (!same || taxon.authorship.empty()) return false;
  if (is_dated(taxon.authorship) || taxon.authorship.starts_with('(')) return true;
  if (!authors_) look_at_authors();
  auto const author = first_author(taxon.authorship);
  if (authors_->contains(author)) return true;
  // Nothing tells the author from a heading but the other names' habit.
  auto const next = ahead_.next_filled(at + 1);
  bool const within_key = next == lines_.size() || ahead_.label_at(next).has_value();
  bool const habit = authored_ > 0 && authored_ + 1 >= 2 * unauthored_;
  return habit && whole.remark.empty() && within_key && !has_strict_latin_ending(author);
}

bool WrappedNames::go_on(std::string_view destination, std::size_t at) const {
  auto const line = lines_[at].text;
  if (destination.empty() || line.empty()) return false;
  if (ends_in_short_genus(destination) && is_epithet(line.substr(0, line.find(' ')))) return true;
  if (tells_sex(line)) return true;
  // Of a genus alone, a bracket may name the subgenus.
  if (line.front() == '(' && is_latin_genus(destination) &&
      is_upper(code_point_at(line, 1).value) && is_latin_name(joined_words(destination, line))) {
    return true;
  }
  return goes_on_with_author(destination, at) || is_author_above_lead(destination, at);
}

bool WrappedNames::go_on_with_number(std::string_view destination, std::size_t at) const {
  constexpr std::uint32_t kMostUnnamed = 40;  // species of a genus without names
  auto const line = lines_[at].text;
  // A page's number parts a paragraph as well, but hardly without a blank line.
  if (destination.empty() || !(ahead_.label_follows(at) || at + 1 == lines_.size())) return false;
  auto const last = destination.substr(last_word_begin(destination));
  if (last == "sp." && is_number_only(line) && line.back() != '.') {
    return number_of(line) <= kMostUnnamed;
  }
  if (!is_year(line)) return false;
  auto const taxa = read_taxa(destination);
  auto const& authorship = taxa.taxa.front().authorship;
  return taxa.taxa.size() == 1 && taxa.remark.empty() && !authorship.empty() &&
         !is_dated(authorship);
}

}  // namespace keydrift::printed
