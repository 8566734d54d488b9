#include "keydrift/formats/printed_accounts_behind.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_words.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// "A busa" for "Ausella busa" and "A. busa"; empty where the words begin with no species.
std::string species_of(std::string_view genus, std::string_view epithet) {
  epithet = without_closing_marks(epithet);
  bool const named = (is_abbreviated(genus) || is_capitalised(genus)) && is_epithet(epithet) &&
                     has_epithet_ending(epithet);
  if (!named) return {};
  return std::string{initial_of(genus)} + ' ' + std::string{epithet};
}

class AccountFinder {
 public:
  explicit AccountFinder(std::vector<SourceLine> const& lines) : lines_{lines} {}

  std::vector<char> find() && {
    std::vector<char> accounts(lines_.size(), 0);
    std::uint32_t last = 0;     // number of the account before
    std::uint32_t couplet = 0;  // of the last lead that bears a number
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const& line = lines_[i];
      if (line.text.empty() || line.is_no_lead) continue;
      if (line.markup.role != LineRole::told_by_text) continue;
      auto const label = read_label(line.text);
      bool const numbered = label && label->family == LabelFamily::digits && !label->decimal &&
                            label->marks == 0 && label->back.empty() &&
                            label->end != LabelEnd::none;
      // Behind a blank line, the one after the account before, or where the count begins anew.
      bool const due = numbered && ((i > 0 && lines_[i - 1].text.empty()) ||
                                    (last > 0 && label->number == last + 1) ||
                                    (label->number == 1 && couplet > 1));
      if (due && begins_account(line.text, *label)) {
        accounts[i] = 1;
        last = label->number;
        continue;
      }
      if (label && !label->is_dash()) {
        last = 0;
        couplet = label->number;
      }
      // "1. A. busa, p. 48" on a line of its own is no lead.
      bool const end = label && (is_numbered_name(line.text) ||
                                 is_name_with_page(line.text.substr(label->text_at)));
      note_names(line.text.substr(label ? label->text_at : 0), label && !end);
    }
    mark_unnamed_species(accounts);
    return accounts;
  }

 private:
  // "2. Ausella sp. 1" between "1. Ausella busa" and "3. Ausella cusa".
  void mark_unnamed_species(std::vector<char>& accounts) const {
    auto const number_at = [this](std::size_t i) {
      auto const label = read_label(lines_[i].text);
      return label && label->family == LabelFamily::digits ? label->number : 0;
    };
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      bool const above = i > 0 && accounts[i - 1] != 0;
      bool const below = i + 1 < lines_.size() && accounts[i + 1] != 0;
      if (accounts[i] != 0 || !(above || below)) continue;
      auto const number = number_at(i);
      bool const counts = number > 0 && ((above && number_at(i - 1) + 1 == number) ||
                                         (below && number_at(i + 1) == number + 1));
      if (!counts) continue;
      auto const words = lines_[i].text.substr(read_label(lines_[i].text)->text_at);
      if (is_unnamed_species(words)) accounts[i] = 1;
    }
  }

  // "1. Ausella Roe (Busella Dorn) Calyx 5-lobed" where a lead above ends in "1. Ausella."
  [[nodiscard]] bool begins_account_of_genus(std::string_view text, Label const& label) const {
    constexpr std::size_t kFewestWords = 3;  // more than an end on a line of its own
    auto const genus = genera_.find(label.number);
    if (genus == genera_.end() || label.end != LabelEnd::dot || has_row_of_dots(text)) return false;
    auto const words = words_of(text.substr(label.text_at), kFewestWords);
    return words.size() == kFewestWords && without_closing_marks(words[0]) == genus->second &&
           (is_authorish(words[1]) || words[1].starts_with('('));
  }

  [[nodiscard]] bool begins_account(std::string_view text, Label const& label) const {
    if (begins_account_of_genus(text, label)) return true;
    // "1. Ausella busa ..... 2"
    if (led_to_.empty() || has_row_of_dots(text)) return false;
    if (!label.letter.empty()) return begins_subspecies(text.substr(label.text_at));
    auto const head = read_account_head(text);
    if (!head || head->number == 0 || head->doubtful) return false;
    auto const words = words_of(text.substr(head->name_begin, head->name_end - head->name_begin));
    if (words.size() < 2) return false;
    auto const counted = counted_.find(head->number);
    bool const told =
        counted != counted_.end() && counted->second == without_closing_marks(words[1]);
    return told || led_to_.contains(species_of(words[0], words[1]));
  }

  // "4a. Ausella busa minor Roe, 1921", "4a. A. busa subsp. minor"
  [[nodiscard]] bool begins_subspecies(std::string_view words) const {
    auto const few = words_of(words, 4);
    if (few.size() < 3 || !led_to_.contains(species_of(few[0], few[1]))) return false;
    if (is_rank(few[2])) return few.size() == 4 && is_epithet(few[3]);
    return is_epithet(few[2]) && has_epithet_ending(few[2]) &&
           (few.size() == 3 || is_authorish(few[3]));
  }

  // Species among the last words of a line; the first words of a lead are none that it leads to.
  void note_names(std::string_view text, bool labelled) {
    constexpr std::size_t kLongestEnd = 120;  // bytes
    if (text.size() > kLongestEnd) {
      auto const blank = text.find(' ', text.size() - kLongestEnd);
      if (blank == std::string_view::npos) return;
      text.remove_prefix(blank);
    }
    auto const words = words_of(text);
    // "… edged with orange. busa, 5.": the number of its account.
    if (words.size() > 2 && words[words.size() - 2].ends_with(',')) {
      auto const digits = without_closing_marks(words.back());
      auto const epithet = without_closing_marks(words[words.size() - 2]);
      constexpr std::size_t kMostDigits = 4;
      bool const number = !digits.empty() && digits.size() <= kMostDigits && only_figures(digits);
      if (number && is_epithet(epithet)) counted_[number_of(digits)] = epithet;
    }
    // "… stamens 5 . . . 10. Ausella."
    if (words.size() > 2 && is_species_number(words[words.size() - 2])) {
      auto const genus = without_closing_marks(words.back());
      auto const number = without_closing_marks(words[words.size() - 2]);
      if (is_capitalised(genus) && has_latin_ending(genus)) {
        genera_.emplace(number_of(number), genus);
      }
    }
    // "4. busa, p. 22." at the end of a line
    for (std::size_t w = 0; w + 1 < words.size(); ++w) {
      auto const epithet = without_closing_marks(words[w + 1]);
      bool const counted = is_species_number(words[w]) && is_epithet(epithet) &&
                           has_epithet_ending(epithet) && epithet.size() < words[w + 1].size();
      bool const closes =
          w + 2 == words.size() || (w + 4 == words.size() && is_page(words[w + 2], words[w + 3]));
      if (counted && closes) counted_[number_of(without_closing_marks(words[w]))] = epithet;
    }
    for (std::size_t w = labelled ? 1 : 0; w + 1 < words.size(); ++w) {
      auto species = species_of(words[w], words[w + 1]);
      if (!species.empty()) led_to_.insert(std::move(species));
    }
  }

  std::vector<SourceLine> const& lines_;
  std::unordered_set<std::string> led_to_;                       // by the lines so far
  std::unordered_map<std::uint32_t, std::string_view> counted_;  // epithets by number, the same
  std::unordered_map<std::uint32_t, std::string_view> genera_;   // by their numbers, the same
};

}  // namespace

void mark_accounts_behind(std::vector<SourceLine>& lines) {
  auto const accounts = AccountFinder{lines}.find();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (accounts[i] != 0) lines[i].is_no_lead = true;
  }
}

}  // namespace keydrift::printed
