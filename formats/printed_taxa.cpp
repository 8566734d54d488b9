#include "keydrift/formats/printed_taxa.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

using Words = std::vector<std::string_view>;

class TaxaReader {
 public:
  explicit TaxaReader(std::string_view text) : text_{text}, words_{words_of(text)} {}

  TaxaReading read() && {
    skip_species_number();
    do {
      read_taxon();
    } while (next_taxon());
    take_remark();
    return std::move(reading_);
  }

  // Where reading of taxa stopped: all words were names and authors?
  [[nodiscard]] bool all_consumed() const { return at_ >= words_.size(); }

 private:
  [[nodiscard]] std::string_view word(std::size_t i) const {
    return i < words_.size() ? words_[i] : std::string_view{};
  }

  // "3. Aus bus", "12) Aus": numbers of the species, not of a couplet.
  void skip_species_number() {
    auto first = word(0);
    if (words_.size() < 2 || first.empty() || first[0] < '0' || first[0] > '9') return;
    while (!first.empty() && (is_digit(static_cast<unsigned char>(first.front())) ||
                              first.front() == '.' || first.front() == ')')) {
      first.remove_prefix(1);
    }
    if (first.size() <= 1) at_ = 1;
  }

  [[nodiscard]] bool starts_taxon(std::size_t i) const {
    auto const first = word(i);
    if (!first.empty() && first.front() == '"') return true;
    if (!is_capitalised(without_end(first)) && !is_abbreviated(first)) return false;
    auto next = i + 1;
    if (!word(next).empty() && word(next).front() == '(' && word(next).back() == ')') ++next;
    return !ends_item(first) && (is_epithet(word(next)) || is_rank(word(next)));
  }

  void read_taxon() {
    TaxonReading taxon;
    auto const first = word(at_);
    genus_alone_ = false;
    if (!first.empty() && first.front() == '"' && take_quoted_name(taxon)) {
      read_authorship(taxon);
      reading_.taxa.push_back(std::move(taxon));
      return;
    }
    if (is_epithet(first) &&
        (words_.size() == at_ + 1 || ends_item(first) || is_authorish(word(at_ + 1)) ||
         is_separator(word(at_ + 1)) || !reading_.taxa.empty())) {
      taxon.genusless = true;
      take_name_word(taxon);
    } else if (is_capitalised(without_end(first)) || is_abbreviated(first) || first == "×" ||
               first == "?") {
      if (first == "×" || first == "?") take_name_word(taxon);
      genus_alone_ = is_capitalised(without_end(word(at_)));
      take_name_word(taxon);
      read_epithets(taxon);
    } else {
      take_rest_as_name(taxon);
    }
    read_authorship(taxon);
    reading_.taxa.push_back(std::move(taxon));
  }

  // "common reed" in quotation marks: a name as it stands.
  bool take_quoted_name(TaxonReading& taxon) {
    std::size_t last = at_;
    while (last < words_.size()) {
      auto const printed = without_end(words_[last]);
      bool const closes = printed.size() > (last == at_ ? 1U : 0U) && printed.back() == '"';
      if (closes) break;
      ++last;
    }
    if (last == words_.size()) return false;
    item_ended_ = ends_item(words_[last]);
    auto const begin = static_cast<std::size_t>(words_[at_].data() - text_.data());
    auto const closing = without_end(words_[last]);
    auto const end = static_cast<std::size_t>(closing.data() - text_.data()) + closing.size();
    taxon.name = std::string{text_.substr(begin + 1, end - begin - 2)};
    taxon.literal = true;
    at_ = last + 1;
    return true;
  }

  // Any other wording: a vernacular name, "Form with a hooked beak".
  void take_rest_as_name(TaxonReading& taxon) {
    while (at_ < words_.size()) {
      auto const next = word(at_);
      bool const remark = !taxon.name.empty() && (next.front() == '[' || next == "(part)" ||
                                                  next == "(in" || next.substr(0, 4) == "(Fig");
      if (remark) return;
      bool const ends = ends_item(next);
      take_name_word(taxon);
      if (ends) return;
    }
  }

  void take_name_word(TaxonReading& taxon) {
    auto const taken = without_end(word(at_));
    item_ended_ = ends_item(word(at_));
    if (!taxon.name.empty()) taxon.name += ' ';
    taxon.name += taken;
    ++at_;
  }

  void read_epithets(TaxonReading& taxon) {
    while (at_ < words_.size() && !item_ended_) {
      auto const next = word(at_);
      bool const subgenus = next.size() > 3 && next.front() == '(' && next.back() == ')' &&
                            is_capitalised(next.substr(1, next.size() - 2)) &&
                            is_epithet(word(at_ + 1)) && genus_alone_;
      bool const unnamed =
          (next == "sp." || next == "spp." || next == "sp" || next == "spp") && genus_alone_;
      if (subgenus || is_limit(next)) {
        take_name_word(taxon);
      } else if (unnamed) {
        take_name_word(taxon);
        read_unnamed_species(taxon);
        genus_alone_ = false;
      } else if (is_rank(next) && (is_epithet(word(at_ + 1)) || next == "×")) {
        take_name_word(taxon);
      } else if (is_epithet(next) || is_short_epithet(next)) {
        take_name_word(taxon);
        genus_alone_ = false;
      } else if (ends_sentence(next)) {
        taxon.name += ' ' + std::string{next.substr(0, next.size() - 1)};
        ++at_;
        item_ended_ = true;
        sentence_ended_ = true;
      } else {
        return;
      }
    }
  }

  // "b." of "A. b. cus".
  [[nodiscard]] bool is_short_epithet(std::string_view printed) const {
    return genus_alone_or_short() && printed.size() == 2 && printed.back() == '.' &&
           is_lower(static_cast<unsigned char>(printed.front())) && is_epithet(word(at_ + 1)) &&
           !is_rank(printed) && !is_particle(printed) && printed != "n.";
  }
  [[nodiscard]] bool genus_alone_or_short() const {
    return genus_alone_ || is_abbreviated(word(at_ - 1));
  }

  // "Aus bus. Found in fens": an epithet with a full stop, and a sentence behind it.
  [[nodiscard]] bool ends_sentence(std::string_view printed) const {
    return printed.size() > 3 && printed.back() == '.' &&
           is_epithet(printed.substr(0, printed.size() - 1)) && !is_rank(printed) &&
           (at_ + 1 >= words_.size() || is_upper(code_point_at(word(at_ + 1), 0).value));
  }

  [[nodiscard]] bool is_limit(std::string_view word_printed) const {
    auto const printed = without_end(word_printed);
    if (is_limit_word(printed)) return true;
    auto const next = word(at_ + 1);
    return (printed == "s." &&
            (next == "l." || next == "str." || next == "lat." || next == "s.")) ||
           ((printed == "l." || printed == "str." || printed == "lat.") && word(at_ - 1) == "s.") ||
           (printed == "sensu" && (next == "lato" || next == "stricto")) ||
           ((printed == "lato" || printed == "stricto") && word(at_ - 1) == "sensu");
  }

  // "sp. 1", "sp. A", "sp. n.", "sp. nr bus"
  void read_unnamed_species(TaxonReading& taxon) {
    auto const next = without_end(word(at_));
    bool const code =
        !next.empty() && next.size() <= 3 && std::all_of(next.begin(), next.end(), [](char c) {
          return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z');
        });
    if (!item_ended_ && (code || next == "n." || next == "nov." || next == "indet.")) {
      take_name_word(taxon);
    }
  }

  void read_authorship(TaxonReading& taxon) {
    std::size_t const begin = at_;
    std::size_t end = at_;
    bool open = false;
    if (sentence_ended_) return;
    if (item_ended_ && at_ > 0 && !is_year(word(at_)) &&
        !(is_authorish(word(at_)) && has_year_soon())) {
      return;
    }
    while (at_ < words_.size()) {
      auto const next = word(at_);
      if (!open && is_separator(next) && starts_other_taxon(at_ + 1)) break;
      bool const particle = is_particle(without_end(next)) &&
                            (open || is_authorish(word(at_ + 1)) || is_particle(word(at_ + 1)));
      bool const remark = !open && (is_remark_word(next) || next == "sp.");
      bool const year = !open && next.front() == '(' && is_year(next.substr(1));
      if (remark || !(open || year || particle || is_authorish(next))) break;
      if (!open && next.front() == '(' && !holds_author(at_, begin)) break;
      open = open ? next.find(')') == std::string_view::npos
                  : next.find('(') != std::string_view::npos &&
                        next.find(')') == std::string_view::npos;
      ++at_;
      end = at_;
      if (!open && ends_item(next) && (starts_taxon(at_) || !goes_on_with_author())) break;
    }
    if (end == begin) return;
    auto const from = static_cast<std::size_t>(words_[begin].data() - text_.data());
    auto const last = words_[end - 1];
    auto const to = static_cast<std::size_t>(last.data() - text_.data()) + last.size();
    item_ended_ = ends_item(last);
    auto const printed = std::string{without_end(text_.substr(from, to - from))};
    // "Grey Warbler": two capitalised words that are no Latin name with its author.
    bool const vernacular = genus_alone_ &&
                            printed.find_first_of("(),0123456789&.") == std::string::npos &&
                            !has_latin_ending(taxon.name);
    if (vernacular) {
      taxon.name += ' ' + printed;
    } else {
      taxon.authorship = printed;
    }
  }

  // A bracket with the first author, "(Smith, 1900)", or with the year alone behind an author.
  [[nodiscard]] bool holds_author(std::size_t i, std::size_t begin) const {
    auto first = word(i).substr(1);
    if (is_year(first)) return true;
    if (i > begin || !is_authorish(word(i))) return false;
    while (!first.empty() && (first.back() == ')' || first.back() == ',')) first.remove_suffix(1);
    if (is_no_author(fold(first))) return false;
    for (; i < words_.size(); ++i) {
      auto printed = word(i);
      bool const closed = printed.find(')') != std::string_view::npos;
      while (!printed.empty() && (printed.back() == ')' || printed.back() == ',')) {
        printed.remove_suffix(1);
      }
      if (!is_authorish(printed) && !is_particle(printed) && !is_year(printed)) {
        return false;
      }
      if (closed) return true;
    }
    return false;
  }

  [[nodiscard]] bool has_year_soon() const {
    for (std::size_t i = at_; i < std::min(words_.size(), at_ + 6); ++i) {
      if (is_year(word(i))) return true;
    }
    return false;
  }

  // After a comma: a year, or a further author ("Smith, Jones & Roe, 1900").
  [[nodiscard]] bool goes_on_with_author() const {
    return is_year(word(at_)) ||
           (is_authorish(word(at_)) && (has_year_soon() || is_separator(word(at_ + 1)))) ||
           (is_particle(word(at_)) && has_year_soon());
  }

  [[nodiscard]] static bool is_remark_word(std::string_view printed) {
    auto word = printed;
    while (!word.empty() && word.front() == '(') word.remove_prefix(1);
    return word.substr(0, 4) == "part" || word == "p.p." || word == "p." || word == "pp." ||
           word == "pars" || word == "pars)" || word.substr(0, 3) == "Fig" ||
           word.substr(0, 3) == "fig";
  }

  // Behind a separator: another taxon, given the one before?
  [[nodiscard]] bool starts_other_taxon(std::size_t i) const {
    if (starts_taxon(i)) return true;
    auto const next = word(i);
    if (next == "×" || next == "?") return starts_taxon(i + 1);
    // "Aus, Bus or Cus": only among names of one word.
    return genus_alone_ && is_capitalised(without_end(next)) &&
           (i + 1 >= words_.size() || ends_item(next) || is_separator(word(i + 1)));
  }

  [[nodiscard]] bool list_has_separator() const {
    for (std::size_t i = at_; i < words_.size(); ++i) {
      if (is_separator(words_[i])) return true;
    }
    return false;
  }

  // Moves to the next taxon of a list; false when the list is over.
  bool next_taxon() {
    if (at_ >= words_.size() || sentence_ended_) return false;
    bool const separated = is_separator(word(at_));
    std::size_t const i = separated ? at_ + 1 : at_;
    if (!separated && !item_ended_) return false;
    bool const other = starts_taxon(i) || ((separated || list_has_separator()) &&
                                           (starts_other_taxon(i) || starts_genusless(i)));
    if (!other) return false;
    at_ = i;
    item_ended_ = false;
    return true;
  }

  // "cus" of "A. bus, cus or dus".
  [[nodiscard]] bool starts_genusless(std::size_t i) const {
    if (genus_alone_ || !is_epithet(word(i))) return false;
    return i + 1 >= words_.size() || ends_item(word(i)) || is_separator(word(i + 1)) ||
           is_authorish(word(i + 1));
  }

  void take_remark() {
    if (at_ >= words_.size()) return;
    auto const from = static_cast<std::size_t>(words_[at_].data() - text_.data());
    auto rest = std::string{text_.substr(from)};
    reading_.figures = figures_in(rest);
    for (auto const& figure : reading_.figures) {
      auto const found = rest.find(figure);
      if (found == std::string::npos) continue;
      auto begin = found;
      auto end = found + figure.size();
      // Its brackets and the comma before it go with it.
      if (begin > 0 && end < rest.size() && (rest[begin - 1] == '(' || rest[begin - 1] == '[') &&
          (rest[end] == ')' || rest[end] == ']')) {
        --begin;
        ++end;
      }
      rest.erase(begin, end - begin);
    }
    std::string_view remark = trim(rest);
    auto const is_edge = [](char c) {
      return c == ',' || c == ';' || c == ' ' || c == ':' || c == '.';
    };
    while (!remark.empty() && is_edge(remark.front())) remark.remove_prefix(1);
    if (auto const dash = code_point_at(remark, 0);
        is_dash(dash.value) && is_blank(code_point_at(remark, dash.length).value)) {
      remark = trim(remark.substr(dash.length));
    }
    while (!remark.empty() &&
           (remark.back() == ',' || remark.back() == ';' || remark.back() == ' ')) {
      remark.remove_suffix(1);
    }
    if (remark.size() > 2 && ((remark.front() == '(' && remark.find(')') == remark.size() - 1) ||
                              (remark.front() == '[' && remark.find(']') == remark.size() - 1))) {
      remark = remark.substr(1, remark.size() - 2);
    }
    reading_.remark = squeeze(remark);
    at_ = words_.size() + 1;
  }

  std::string_view text_;
  Words words_;
  std::size_t at_{};
  bool item_ended_{false};      // a comma or semicolon closed the word read last
  bool sentence_ended_{false};  // a full stop closed the name: a sentence follows
  bool genus_alone_{false};     // the taxon read last is one capitalised word so far
  TaxaReading reading_;
};

}  // namespace

TaxaReading read_taxa(std::string_view text) {
  // A full stop at the very end closes the lead, unless it belongs to an abbreviation.
  auto const last_blank = text.rfind(' ');
  auto const last = text.substr(last_blank == std::string_view::npos ? 0 : last_blank + 1);
  if (last.size() > 1 && last.back() == '.' && closes_lead(last)) text.remove_suffix(1);
  auto const plain = in_plain_letters(text);
  auto reading = TaxaReader{plain}.read();
  for (auto& taxon : reading.taxa) {
    if (taxon.name.empty()) taxon.name = squeeze(text);
  }
  return reading;
}

bool is_latin_name(std::string_view text) {
  auto const words = words_of(text);
  if (words.size() < 2) return false;
  if (!is_capitalised(words[0]) && !is_abbreviated(words[0])) return false;
  auto const reading = read_taxa(text);
  if (reading.taxa.size() != 1 && words.size() > 12) return false;
  auto const& first = reading.taxa.front();
  auto const name_words = words_of(first.name);
  return name_words.size() >= 2 && name_words.size() <= 4 && is_epithet(name_words[1]) &&
         (is_abbreviated(name_words[0]) || has_latin_ending(name_words[0])) &&
         has_epithet_ending(name_words.back());
}

bool is_genusless_name(std::string_view text) {
  auto const words = words_of(start_of(text, 200));
  if (words.size() < 2 || words.size() > 12 || text.find(';') != std::string_view::npos)
    return false;
  if (!is_epithet(words[0]) || !has_epithet_ending(without_end(words[0]))) return false;
  if (!is_authorish(words[1])) return false;
  auto const reading = read_taxa(text);
  constexpr std::size_t kLongestMark = 12;  // "sp. nov."
  return reading.taxa.size() == 1 && reading.taxa.front().genusless &&
         !reading.taxa.front().authorship.empty() && reading.remark.size() <= kLongestMark;
}

std::vector<std::string> figures_in(std::string_view text) {
  static constexpr std::array kWords{"fig"sv, "figs"sv,  "figure"sv, "figures"sv, "abb"sv,
                                     "pl"sv,  "plate"sv, "taf"sv,    "lám"sv,     "est"sv};
  std::vector<std::string> figures;
  auto const words = words_of(text);
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    auto word = words[i];
    while (!word.empty() && (word.front() == '(' || word.front() == '[')) word.remove_prefix(1);
    auto name = word;
    while (!name.empty() && name.back() == '.') name.remove_suffix(1);
    if (std::find(kWords.begin(), kWords.end(), fold(name)) == kWords.end()) continue;
    if (!is_digit(code_point_at(words[i + 1], 0).value)) continue;
    // Numbers, ranges and lists: "3", "3–5", "3, 4", "2a & b".
    std::size_t last = i + 1;
    auto const goes_on = [&words](std::size_t j) {
      auto const next = words[j];
      return is_digit(code_point_at(next, 0).value) ||
             ((next == "&" || next == "and") && j + 1 < words.size() &&
              is_digit(code_point_at(words[j + 1], 0).value));
    };
    while (last + 1 < words.size() &&
           (words[last].back() == ',' || words[last] == "&" || words[last] == "and" ||
            words[last + 1] == "&") &&
           goes_on(last + 1)) {
      ++last;
    }
    auto const begin = static_cast<std::size_t>(word.data() - text.data());
    auto const end =
        static_cast<std::size_t>(words[last].data() - text.data()) + words[last].size();
    auto printed = text.substr(begin, end - begin);
    while (!printed.empty() &&
           (printed.back() == ')' || printed.back() == ',' || printed.back() == ';' ||
            printed.back() == '.' || printed.back() == ']' || printed.back() == ':')) {
      printed.remove_suffix(1);
    }
    figures.emplace_back(printed);
    i = last;
  }
  return figures;
}

}  // namespace keydrift::printed
