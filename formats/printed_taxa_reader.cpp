#include "keydrift/formats/printed_taxa.hpp"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination_words.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_hybrids.hpp"
#include "keydrift/formats/printed_lower_ranks.hpp"
#include "keydrift/formats/printed_name_remarks.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_unnamed_species.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

class TaxaReader {
 public:
  explicit TaxaReader(std::string_view text) : text_{text}, words_{text} {}

  TaxaReading read() && {
    if (begin_with_species_number(words_.from(0))) at_ = 1;
    counted_ = at_ == 1;
    if (at_ == 1 && is_dash(code_point_at(word(1), 0).value) && word(1).size() <= 3) at_ = 2;
    if (at_ == 1 && word(1) == "0.") at_ = 2;  // "2. 0. bus": the O of a genus, read as a figure
    skip_vernacular();
    // "see 5. A. bus"
    if (!reading_.before.empty() && begin_with_species_number(words_.from(at_))) ++at_;
    do {
      read_taxon();
    } while (next_taxon());
    take_remark();
    return std::move(reading_);
  }

 private:
  [[nodiscard]] std::string_view word(std::size_t i) const { return words_.word(i); }

  // "Dwarf Mouse Aus bus", "Marshwort (Aus bus)": what stands before the name is a remark.
  void skip_vernacular() {
    auto const rest = words_.from(at_);
    // "2. niger FABRE, p. 150.", "2. niger (FABRE)": an author, and no genus behind a common name.
    if (counted_ && rest.size() > 1 && is_epithet(rest[0]) && has_epithet_ending(rest[0])) {
      auto const author = rest[1].substr(rest[1].starts_with('(') ? 1 : 0);
      if (is_in_capitals(without_closing_marks(without_end(author)), 3)) return;
    }
    auto const count = words_before_name(rest);
    // "Aus busi, Aus cusi": a genus that comes again begins no common name.
    if (count == 0 || (count < rest.size() && rest[count] == rest.front())) return;
    auto const& last = rest[count - 1];
    auto const* begin = rest.front().data();
    auto before =
        std::string_view{begin, static_cast<std::size_t>(last.data() + last.size() - begin)};
    while (!before.empty()) {
      auto const c = code_point_before(before, before.size());
      bool const mark = c.value == ',' || c.value == ':' || c.value == '=';
      if (!mark && !is_blank(c.value) && !is_dash(c.value)) break;
      before.remove_suffix(c.length);
    }
    reading_.before = squeeze(before);
    at_ += count;
    if (word(at_).front() == '(' || word(at_).front() == '[') {
      if (auto const end = words_.open_bracket(at_); end > 0) bracket_ends_ = end;
    }
  }

  void read_taxon() {
    TaxonReading taxon;
    auto const first = word(at_);
    genus_alone_ = false;
    if (!shared_.empty()) {
      taxon.genusless = reading_.taxa.back().genusless;
      taxon.name = std::exchange(shared_, {});
      read_epithets(taxon);
    } else if (!first.empty() && first.front() == '"' && take_quoted_name(taxon)) {
      read_authorship(taxon);
      reading_.taxa.push_back(std::move(taxon));
      return;
    } else if (is_epithet_before_author_in_capitals()) {
      taxon.genusless = true;
      taxon.name = fold(first.substr(0, first.size() - 1));
      taxon.authorship = squeeze(text_.substr(first.size()));
      if (taxon.authorship.ends_with('.')) taxon.authorship.pop_back();
      at_ = words_.size();
      reading_.taxa.push_back(std::move(taxon));
      return;
    } else if (auto const unnamed = words_.unnamed_at(at_); unnamed > 0) {
      taxon.genusless = true;
      for (std::size_t i = 0; i < unnamed; ++i) take_name_word(taxon);
    } else if ((is_epithet(first) || is_counted_epithet(first)) &&
               (words_.size() == at_ + 1 || ends_item(first) || words_.is_author_at(at_ + 1) ||
                is_separator(word(at_ + 1)) || !reading_.taxa.empty() ||
                words_.closes_epithet(at_ + 1) || words_.is_subspecies(at_))) {
      taxon.genusless = true;
      bool const subspecies = words_.is_subspecies(at_);
      take_name_word(taxon);
      if (subspecies) take_name_word(taxon);
      bool const ranked = is_rank(word(at_)) && !words_.marks_new_rank(at_);
      if ((ranked || is_limit_word(without_end(word(at_)))) && !item_ended_) read_epithets(taxon);
    } else if (is_capitalised(without_end(first)) || is_abbreviated(first) || first == "×" ||
               first == "?") {
      if (first == "×" || first == "?") take_name_word(taxon);
      genus_alone_ = is_capitalised(without_end(word(at_)));
      genus_read_ = true;
      take_name_word(taxon);
      if (taxon.name == without_end(word(at_ - 1))) taxon.name = in_small_letters(taxon.name);
      read_epithets(taxon);
      genus_read_ = false;
    } else if (is_rank(first) && first.size() > 2 && is_epithet(without_end(word(at_ + 1)))) {
      // "subsp. bus Roe" is of a species, "gr. bus" and "cf. bus" of the genus.
      taxon.genusless = !is_lower_rank(first);
      take_name_word(taxon);
      take_name_word(taxon);
    } else if (words_.begins_group(at_)) {
      ++at_;
      take_name_word(taxon);
      taxon.name += ' ' + std::string{first};
      read_epithets(taxon);
    } else {
      take_rest_as_name(taxon);
    }
    if (take_bracketed_ranks(taxon)) return;
    take_bracketed_rank(taxon);
    read_authorship(taxon);
    read_lower_rank(taxon);
    read_other_parent(taxon);
    reading_.taxa.push_back(std::move(taxon));
  }

  // "Busa; ROE.", "Busa; DE ROE."
  [[nodiscard]] bool is_epithet_before_author_in_capitals() const {
    constexpr std::size_t kMostWords = 4;
    auto const first = word(at_);
    if (at_ > 0 || words_.size() < 2 || words_.size() > kMostWords) return false;
    auto const author = words_.from(1);
    return first.ends_with(';') && is_capitalised(without_end(first)) &&
           !is_in_capitals(without_end(first)) &&
           std::all_of(author.begin(), author.end(), [](std::string_view word) {
             return is_in_capitals(without_closing_marks(word), 2);
           });
  }

  // "Aus bus Roe × Aus cus Dorn": the second parent; a formula has no author of its own.
  void read_other_parent(TaxonReading& taxon) {
    bool const joined = !taxon.authorship.empty() && !item_ended_ && is_cross(word(at_));
    if (!joined || !words_.starts_taxon(at_ + 1)) return;
    take_name_word(taxon);
    take_name_word(taxon);
    read_epithets(taxon);
    taxon.authorship.clear();
    TaxonReading parent;
    genus_alone_ = false;
    read_authorship(parent);
  }

  // "Aus bus (var. cus, var. dus)": each of them.
  bool take_bracketed_ranks(TaxonReading const& species) {
    if (genus_alone_ || item_ended_) return false;
    auto const found = bracketed_ranks(words_, at_);
    if (found.ranks.empty()) return false;
    for (auto const& rank : found.ranks) {
      reading_.taxa.push_back(species);
      reading_.taxa.back().name += " " + rank;
    }
    at_ = found.end;
    return true;
  }

  void take_bracketed_rank(TaxonReading& taxon) {
    if (genus_alone_ || item_ended_) return;
    auto const found = bracketed_rank(words_, at_);
    if (found.ranks.empty()) return;
    taxon.name += " " + found.ranks.front();
    item_ended_ = ends_item(word(found.end - 1));
    at_ = found.end;
  }

  // "Aus bus Roe subsp. cus Dorn", "Aus bus Roe agg.", "Aus bus Roe complex": the name goes on
  // behind an author.
  void read_lower_rank(TaxonReading& taxon) {
    // "Aus bus Roe, var. cus", "Aus bus, var. cus"
    bool const behind_comma = item_ended_ && at_ > 0 && word(at_ - 1).ends_with(',') &&
                              is_lower_rank(word(at_)) && may_go_on_with(taxon.name, word(at_)) &&
                              is_latin_epithet(without_end(word(at_ + 1)));
    if (behind_comma) item_ended_ = false;
    auto const blanks = std::count(taxon.name.begin(), taxon.name.end(), ' ');
    bool const species = !genus_alone_ && blanks <= (taxon.genusless ? 0 : 1);
    if (behind_comma && species && taxon.authorship.empty()) {
      take_name_word(taxon);
      take_name_word(taxon);
      read_authorship(taxon);
    }
    while (!taxon.authorship.empty() && !item_ended_ && at_ < words_.size()) {
      bool const lower = is_rank(word(at_)) && is_epithet(word(at_ + 1)) && !genus_alone_;
      bool const limit = is_limit_word(without_end(word(at_))) && word(at_).ends_with('.');
      auto const group = lower || limit ? 0 : words_.group_at(at_);
      if (!lower && !limit && group == 0) return;
      if (group > 1) take_name_word(taxon);
      take_name_word(taxon);
      if (!lower) continue;
      taxon.authorship.clear();
      take_name_word(taxon);
      read_authorship(taxon);
    }
  }

  // "common reed" in quotation marks: a name as it stands.
  bool take_quoted_name(TaxonReading& taxon) {
    std::size_t last = at_;
    while (last < words_.size()) {
      auto const printed = without_end(word(last));
      bool const closes = printed.size() > (last == at_ ? 1U : 0U) && printed.back() == '"';
      if (closes) break;
      ++last;
    }
    if (last == words_.size()) return false;
    item_ended_ = ends_item(word(last));
    auto const begin = static_cast<std::size_t>(word(at_).data() - text_.data());
    auto const closing = without_end(word(last));
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
      if (next == "incertae" && without_end(word(at_ + 1)).starts_with("sedis")) return;
      bool const subgenus = next.size() > 3 && next.front() == '(' && next.back() == ')' &&
                            (is_capitalised(next.substr(1, next.size() - 2)) ||
                             is_abbreviated(next.substr(1, next.size() - 2))) &&
                            (is_epithet(word(at_ + 1)) || is_unnamed(word(at_ + 1)) ||
                             (is_rank(word(at_ + 1)) && is_epithet(word(at_ + 2)))) &&
                            genus_read_;
      bool const typical = genus_read_ && next == "(s." && is_epithet(word(at_ + 2)) &&
                           (word(at_ + 1) == "str.)" || word(at_ + 1) == "s.)");
      auto const unnamed = genus_read_ ? words_of_unnamed_species(words_.from(at_)) : 0;
      if (subgenus || (is_limit_word(without_end(next)) && unnamed == 0)) {
        take_name_word(taxon);
      } else if (!genus_read_ && words_.group_at(at_) > 1) {  // "Aus bus species complex"
        take_name_word(taxon);
        take_name_word(taxon);
      } else if (is_unnamed_genus(taxon.name, next)) {
        take_name_word(taxon);
      } else if (begins_infrageneric(next)) {
        take_name_word(taxon);
        take_name_word(taxon);
        genus_alone_ = false;
        return;
      } else if (typical) {
        take_name_word(taxon);
        take_name_word(taxon);
      } else if (unnamed > 0) {
        for (std::size_t i = 0; i < unnamed; ++i) take_name_word(taxon);
        genus_alone_ = genus_read_ = false;
      } else if (is_cross(next) && words_.starts_taxon(at_ + 1)) {  // "Aus bus × Aus cus"
        take_name_word(taxon);
        take_name_word(taxon);
      } else if (is_rank(next) && (is_epithet(word(at_ + 1)) || next == "×")) {
        take_name_word(taxon);
      } else if (is_epithet(next) || is_counted_epithet(next) || is_short_epithet(next) ||
                 is_capital_epithet(next)) {
        take_name_word(taxon);
        genus_alone_ = genus_read_ = false;
      } else if (is_doubted_epithet(next)) {
        taxon.name += ' ' + std::string{without_end(next.substr(1))};
        between_ = "?";
        item_ended_ = ends_item(next);
        ++at_;
        genus_alone_ = genus_read_ = false;
      } else if (is_quoted_epithet(next)) {
        take_name_word(taxon);
        genus_alone_ = genus_read_ = false;
      } else if (ends_sentence(next)) {
        taxon.name += ' ' + std::string{next.substr(0, next.size() - 1)};
        if (next.ends_with('?')) between_ = "?";
        ++at_;
        item_ended_ = true;
        sentence_ended_ = true;
      } else {
        return;
      }
    }
  }

  // "?bus" of "A. ?bus"
  [[nodiscard]] bool is_doubted_epithet(std::string_view printed) const {
    return genus_read_ && printed.starts_with('?') && is_epithet(printed.substr(1));
  }

  // "bus" in quotation marks behind its genus: a name that is used and not meant.
  [[nodiscard]] bool is_quoted_epithet(std::string_view printed) const {
    return genus_read_ && is_epithet(without_quotation_marks(without_end(printed)));
  }

  // "sect. Bus" of "Aus sect. Bus": the group beneath the genus is what is keyed.
  [[nodiscard]] bool begins_infrageneric(std::string_view printed) const {
    return genus_read_ && is_infrageneric_rank(printed) && is_capitalised(word(at_ + 1)) &&
           !is_epithet(word(at_ + 2));
  }

  // "Roei" of "A. Roei Dorn", "10. A. Candida": beneath a genus cut short, before its author, at
  // the end or behind its number.
  [[nodiscard]] bool is_capital_epithet(std::string_view printed) const {
    constexpr std::size_t kShortGenus = 3;  // bytes; "1. Gen. Ausella" is one
    auto const bare = without_end(printed);
    return at_ > 0 && is_abbreviated(word(at_ - 1)) && is_capitalised(bare) &&
           is_plain_word(bare) && has_strict_latin_ending(bare) && bare.size() > 4 &&
           (is_epithet_of_person(bare) || words_.is_author_at(at_ + 1) ||
            (at_ > 1 && word(at_ - 1).size() <= kShortGenus && is_species_number(word(at_ - 2))) ||
            (at_ + 1 >= words_.size() &&
             (bare.ends_with("us") || bare.ends_with("um") || bare.ends_with("ana"))));
  }

  // "b." of "A. b. cus".
  [[nodiscard]] bool is_short_epithet(std::string_view printed) const {
    return genus_alone_or_short() && printed.size() == 2 && printed.back() == '.' &&
           is_lower(static_cast<unsigned char>(printed.front())) && is_epithet(word(at_ + 1)) &&
           !is_rank(printed) && !is_particle(printed) &&
           (printed != "n." || is_latin_epithet(word(at_ + 1)));  // "n. sp"
  }
  [[nodiscard]] bool genus_alone_or_short() const {
    return genus_alone_ || is_abbreviated(word(at_ - 1));
  }

  // "Aus bus. Found in fens", "A. bus: Marshwort", "A. bus?": an epithet with a sign that closes
  // the name, and words of another kind behind it.
  [[nodiscard]] bool ends_sentence(std::string_view printed) const {
    if (printed.size() <= 3 || is_rank(printed)) return false;
    auto const sign = printed.back();
    if ((sign != '.' && sign != ':' && sign != '?') ||
        !is_epithet(printed.substr(0, printed.size() - 1))) {
      return false;
    }
    bool const last = at_ + 1 >= words_.size();
    if (sign == ':' && is_abbreviated(word(at_ - 1))) return true;  // "A. bus: see Remarks"
    return sign == '?' || (last && sign == '.') || is_upper(code_point_at(word(at_ + 1), 0).value);
  }

  void read_authorship(TaxonReading& taxon) {
    std::size_t const begin = at_;
    std::size_t end = at_;
    bool open = false;
    if (sentence_ended_) return;
    if (item_ended_ && at_ > 0 && !is_year(word(at_)) &&
        !(words_.is_author_at(at_) && words_.has_year_soon(at_))) {
      return;
    }
    while (at_ < words_.size()) {
      auto const next = word(at_);
      if (!open && is_separator(next) &&
          (starts_other_taxon(at_ + 1, end > begin) ||
           is_digit(code_point_at(word(at_ + 1), 0).value))) {
        break;
      }
      bool const particle =
          words_.is_particle_at(at_, open) || (end == at_ && words_.closes_author(at_));
      bool const remark = !open && (begins_remark(next) || is_page(next, word(at_ + 1)) ||
                                    next == "sp." || at_ == bracket_ends_);
      bool const year = !open && next.front() == '(' && is_year(next.substr(1));
      if (remark || !(open || year || particle || words_.is_author_at(at_))) break;
      if (!open && next.front() == '(' && !words_.holds_author(at_, begin)) break;
      open = open ? next.find(')') == std::string_view::npos
                  : next.find('(') != std::string_view::npos &&
                        next.find(')') == std::string_view::npos;
      ++at_;
      end = at_;
      // "Roe, 1900 Busella Dorn": the year closes.
      if (!open && is_year(next) && !next.ends_with(')') && words_.is_author_at(at_)) break;
      // "Roe: Marshwort", and not "Roe: Fr."
      if (!open && next.ends_with(':') && !words_.is_short_author_at(at_)) break;
      if (!open && ends_item(next) &&
          (words_.starts_taxon(at_) || !words_.goes_on_with_author(at_)))
        break;
    }
    if (end == begin) return;
    auto const from = static_cast<std::size_t>(word(begin).data() - text_.data());
    auto const last = word(end - 1);
    auto const to = static_cast<std::size_t>(last.data() - text_.data()) + last.size();
    item_ended_ = ends_item(last);
    auto author = without_end(text_.substr(from, to - from));
    bool const stopped = author.ends_with('.') && is_year(last);  // "Roe, 1900. Common"
    if (author.ends_with(':') || stopped) author.remove_suffix(1);
    auto const printed = std::string{author};
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

  // Behind a separator: another taxon, given the one before?  `authored`: an author stands before
  // the separator, so that a further author may follow ("Aus Roe & Dorn").
  [[nodiscard]] bool starts_other_taxon(std::size_t i, bool authored) const {
    if (words_.starts_taxon(i)) return true;
    auto const next = word(i);
    if (next == "×" || next == "?") return words_.starts_taxon(i + 1);
    if (!is_capitalised(without_end(next)) || is_year(word(i + 1))) return false;
    bool const ends = i + 1 >= words_.size() || ends_item(next) || is_separator(word(i + 1)) ||
                      word(i + 1).front() == '(' || is_dash(code_point_at(word(i + 1), 0).value);
    // "Ausella busa or Microta": no author begins with "or".
    if (!genus_alone_) {
      return !authored && ends && has_strict_latin_ending(fold(without_end(next)));
    }
    if (!authored) return ends || (has_strict_latin_ending(next) && words_.is_author_at(i + 1));
    // "Aus Roe and Bus Dorn": no author ends like that, or hardly one.
    bool const joined = word(i - 1) == "&" || word(i - 1) == "et";
    return has_strict_latin_ending(fold(without_end(next))) &&
           (ends || (words_.is_author_at(i + 1) && !joined));
  }

  // Moves to the next taxon of a list; false when the list is over.
  bool next_taxon() {
    if (at_ >= words_.size() || sentence_ended_ || at_ == bracket_ends_) return false;
    auto const bracket = std::max(words_.bracket_between(at_), words_.marks_between(at_));
    std::size_t i = at_ + bracket;
    bool const separated = is_separator(without_end(word(i)));
    if (separated) ++i;
    bool const parted = bracket > 0 ? ends_item(word(i - 1)) : item_ended_;
    if (!separated && !parted) return false;
    // "9. Aus or 10. Bus"
    bool const numbered =
        word(i).size() > 1 && word(i).back() == '.' && is_digit(code_point_at(word(i), 0).value);
    bool const counted =
        numbered && (is_capitalised(without_end(word(i + 1))) || is_abbreviated(word(i + 1)) ||
                     (counted_ && separated && is_latin_epithet(without_end(word(i + 1)))));
    // "3 Aus bus, 17 Aus cus": numbers without a stop, as before the first one.
    bool const bare = counted_ && !numbered && is_digit(code_point_at(word(0), 0).value) &&
                      !word(0).ends_with('.') && !word(i).empty() && only_figures(word(i)) &&
                      words_.starts_taxon(i + 1);
    if (counted || bare) ++i;
    bool const authored = !reading_.taxa.back().authorship.empty();
    // "Aus Roe, Bus Dorn"
    bool const listed = parted && authored && genus_alone_ && is_capitalised(word(i)) &&
                        has_strict_latin_ending(word(i)) && words_.is_author_at(i + 1) &&
                        !is_year(word(i + 1));
    // "bus, cus"
    bool const epithets =
        parted && reading_.taxa.back().genusless && (!authored || words_.is_author_at(i + 1)) &&
        starts_genusless(i) &&
        (has_strict_latin_ending(without_end(word(i))) || (authored && has_latin_ending(word(i))) ||
         (bracket > 0 && is_page(word(i + 1), word(i + 2)) &&
          has_epithet_ending(without_end(word(i)))));
    // "A. bus, cus"
    bool const more = parted && !authored && !genus_alone_ && words_.closes_in_epithets(i);
    // "Aus bus Roe var. bus et var. cus Dorn"
    auto const& before = reading_.taxa.back().name;
    bool const beside = separated || !may_go_on_with(before, word(i));
    if (beside && names_lower_rank(words_, i)) shared_ = shared_with_rank(before, word(i));
    bool const other = listed || epithets || more || !shared_.empty() || words_.starts_taxon(i) ||
                       ((separated || counted || words_.has_separator_from(at_)) &&
                        (starts_other_taxon(i, authored) || starts_genusless(i)));
    std::size_t told = 0;  // words of a remark before the other taxon
    if (!other) {
      told = separated ? words_.words_to_other(i, reading_.taxa.back().name) : 0;
      if (told == 0) return false;
    }
    tell_between(at_, at_ + bracket);
    tell_between(i, i + told);
    at_ = i + told;
    item_ended_ = false;
    return true;
  }

  void tell_between(std::size_t from, std::size_t to) {
    for (auto b = from; b < to; ++b) {
      auto part = without_end(word(b));
      if (part.starts_with('(')) part.remove_prefix(1);
      if (part.ends_with(')')) part.remove_suffix(1);
      between_ += (between_.empty() ? "" : " ") + std::string{part};
    }
  }

  // "cus" of "A. bus, cus or dus".
  [[nodiscard]] bool starts_genusless(std::size_t i) const {
    if (genus_alone_ || !is_epithet(word(i))) return false;
    // "bus bus Roe and bus cus Dorn"
    bool const subspecies = reading_.taxa.back().genusless && words_.is_subspecies(i);
    return i + 1 >= words_.size() || ends_item(word(i)) || is_separator(word(i + 1)) ||
           words_.is_author_at(i + 1) || words_.closes_epithet(i + 1) || subspecies;
  }

  void take_remark() {
    reading_.remark = between_;
    if (at_ >= words_.size()) return;
    auto const from = static_cast<std::size_t>(word(at_).data() - text_.data());
    auto rest = std::string{text_.substr(from)};
    if (at_ == bracket_ends_ && !rest.empty()) rest.erase(0, rest.find_first_not_of(")]"));
    reading_.figures = figures_in(rest);
    auto const remark = remark_in(std::move(rest), reading_.figures);
    if (!between_.empty() && !remark.empty()) reading_.remark += "; ";
    reading_.remark += remark;
    at_ = words_.size() + 1;
  }

  std::string_view text_;
  DestinationWords words_;
  std::size_t at_{};
  bool item_ended_{false};      // a comma or semicolon closed the word read last
  bool sentence_ended_{false};  // a full stop closed the name: a sentence follows
  bool genus_alone_{false};     // the taxon read last is one capitalised word so far
  bool counted_{false};         // the number of the species stands before the first name
  bool genus_read_{false};      // the word read last is the genus, in full or abbreviated
  std::size_t bracket_ends_{
      std::string::npos};  // a bracket around the name closes before this word
  std::string between_;    // in brackets between taxa
  std::string shared_;     // "Aus bus" before the rank of a further taxon of it
  TaxaReading reading_;
};

// "(A. busa (Roe, 1899))": the name with its author in brackets of its own.
std::string_view without_outer_brackets(std::string_view text) {
  if (!text.starts_with('(') || !text.ends_with("))")) return text;
  std::size_t depth = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (text[at] == '(') ++depth;
    if (text[at] == ')' && depth > 0 && --depth == 0 && at + 1 < text.size()) return text;
  }
  return depth == 0 ? text.substr(1, text.size() - 2) : text;
}

}  // namespace

TaxaReading read_plain_taxa(std::string_view text) {
  return TaxaReader{without_outer_brackets(text)}.read();
}

}  // namespace keydrift::printed
