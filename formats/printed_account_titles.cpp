#include "keydrift/formats/printed_account_titles.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_slips.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kShortestMisread = 5;  // letters; shorter words are alike by chance

class TitleFinder {
 public:
  TitleFinder(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering} {}

  std::vector<bool> find() && {
    std::vector<bool> titles(lines_.size());
    std::uint32_t last = 0;  // number of the last account
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      if (text.empty()) continue;
      auto const label = read_label(text);
      if (!label || label->family != LabelFamily::digits || label->decimal) continue;
      bool const gap = i > 0 && lines_[i - 1].text.empty();
      // An excerpt of the accounts may leave some out.
      constexpr std::uint32_t kLeftOut = 4;
      bool const counts = last > 0 && label->number > last && label->number <= last + 1 + kLeftOut;
      bool const known = (gap || counts) && (begins_known_account(i) ||
                                             names_known_species(i, text.substr(label->text_at)));
      if (known) last = label->number;
      titles[i] = known || (gap && stands_apart(i, text.substr(label->text_at)));
    }
    return titles;
  }

 private:
  [[nodiscard]] bool stands_apart(std::size_t i, std::string_view words) {
    if (is_species_alone(i, words)) return true;
    if (!titles_account(words)) return false;
    auto const split = split_at_leader(words, numbering_);
    return split.kind == LeaderKind::none || is_genus_before_gap(words, split);
  }

  // A species and nothing else, whose epithet some line above leads to.
  [[nodiscard]] bool is_species_alone(std::size_t i, std::string_view text) {
    if (text.ends_with('.')) text.remove_suffix(1);
    auto const words = words_of(start_of(text, 80));
    bool const apart = i + 1 == lines_.size() || lines_[i + 1].text.empty();
    if (!apart || words.size() != 2 || !is_latin_genus(words[0]) || !is_epithet(words[1]) ||
        !has_epithet_ending(words[1])) {
      return false;
    }
    return is_repeated_below(i, text) || is_led_to_above(i, words[1]);
  }

  // "1. Ausella busa." above "Ausella busa, Roe, Cat. Sn. p. 132."
  [[nodiscard]] bool is_repeated_below(std::size_t i, std::string_view name) const {
    auto below = i + 1;
    while (below < lines_.size() && lines_[below].text.empty()) ++below;
    if (below == lines_.size()) return false;
    auto const text = lines_[below].text;
    return text.size() > name.size() && text.starts_with(name);
  }

  [[nodiscard]] bool begins_known_account(std::size_t i) {
    auto const text = lines_[i].text;
    auto const head = read_account_head(text);
    if (!head || head->number == 0 || head->doubtful) return false;
    if (split_at_leader(text, numbering_).kind == LeaderKind::dots) return false;
    auto const words = words_of(text.substr(head->name_begin, head->name_end - head->name_begin));
    return is_led_to_above(i, words.back());
  }

  // "331. AUSELLA BUSA Roe": genus and epithet in capitals.
  [[nodiscard]] bool names_known_species(std::size_t i, std::string_view text) {
    constexpr std::size_t kShortest = 3;  // letters
    auto const words = words_of(text, 2);
    if (words.size() < 2 || !is_in_capitals(words[0], kShortest)) return false;
    auto const epithet = without_closing_marks(words[1]);
    return is_in_capitals(epithet, kShortest) && is_led_to_above(i, epithet);
  }

  // Behind leaders of some line above i.
  [[nodiscard]] bool is_led_to_above(std::size_t i, std::string_view epithet) {
    for (; looked_at_ < i; ++looked_at_) {
      auto const text = lines_[looked_at_].text;
      auto const split = split_at_leader(text, numbering_);
      auto const begin = split.kind == LeaderKind::none ? numbered_epithet(looked_at_)
                                                        : std::optional{split.destination_begin};
      if (!begin) continue;
      for (auto const word : words_of(text.substr(*begin))) {
        auto folded = fold(without_closing_marks(word));
        bool const long_enough = folded.size() >= kShortestMisread;
        if (led_to_.insert(folded).second && long_enough) new_words_.push_back(std::move(folded));
      }
    }
    auto const folded = fold(epithet);
    if (led_to_.contains(folded)) return true;
    // "7. S. vemus" above, "7. STENA VERNUS" here
    for (auto& word : new_words_) misread_.add(std::move(word));
    new_words_.clear();
    return !misread_.like(folded).empty();
  }
  // Where the epithet of "1. bus, p. 170." begins, beneath a line that leads to it.
  [[nodiscard]] std::optional<std::size_t> numbered_epithet(std::size_t i) const {
    bool const below = i > 0 && lines_[i - 1].text.ends_with('.');
    return below ? epithet_behind_number(lines_[i].text) : std::nullopt;
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  std::size_t looked_at_{};                 // lines
  std::unordered_set<std::string> led_to_;  // words of their destinations, case-folded
  std::vector<std::string> new_words_;      // of these, not yet in `misread_`
  MisreadWords misread_;
};

}  // namespace

std::vector<bool> find_account_titles(std::vector<SourceLine> const& lines,
                                      Numbering const& numbering) {
  return TitleFinder{lines, numbering}.find();
}

}  // namespace keydrift::printed
