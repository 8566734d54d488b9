#include "keydrift/formats/printed_plan_leaves.hpp"

#include <algorithm>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

// "Ventrals rounded 11. bus, p. 178.": a species and its number close the line.
bool ends_in_numbered_epithet(std::string_view text) {
  constexpr std::size_t kLongest = 120;  // bytes
  if (text.size() > kLongest) text.remove_prefix(text.size() - kLongest);
  for (auto at = text.rfind(". "); at != std::string_view::npos && at > 0;
       at = text.rfind(". ", at - 1)) {
    auto const number = text.find_last_not_of("0123456789", at - 1);
    bool const counts = number != std::string_view::npos && number + 1 < at && text[number] == ' ';
    auto const name = text.substr(at + 2);
    bool const short_name = is_abbreviated(name.substr(0, name.find(' '))) && is_latin_name(name);
    if (counts && (short_name || is_epithet_or_name(name))) return true;
  }
  return false;
}

// "3. busa, p. 150.", "3. A. busa.": the species that the lead above leads to.
bool is_numbered_species(std::string_view text) {
  if (epithet_behind_number(text)) return true;
  auto const figures = leading_figures(text);
  if (figures == 0 || !text.substr(figures).starts_with(". ")) return false;
  constexpr std::size_t kMostWords = 3;  // with an author
  auto const name = text.substr(figures + 2);
  return is_abbreviated(name.substr(0, name.find(' '))) &&
         words_of(name, kMostWords + 1).size() <= kMostWords &&
         is_latin_name(without_full_stop(name));
}

// Finds the leads without labels that stand beneath labelled ones.
class LeafPlanner {
 public:
  LeafPlanner(std::vector<SourceLine> const& lines, Numbering const& numbering)
      : lines_{lines}, numbering_{numbering} {}

  // False where there are too few of them to be a habit.
  bool add_to(LeadPlan& plan) {
    constexpr std::size_t kFewest = 3;
    LeadPlan with;
    with.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    bool const in_capitals = is_set_in_capitals(lines_);
    std::size_t leaves = 0;
    auto before = lines_.size();  // the last line with text
    auto state = State::outside;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      auto const text = lines_[i].text;
      if (text.empty() || is_page_furniture(text)) continue;
      if (!in_capitals && is_head_with_page(lines_[i])) continue;
      auto const* labelled = plan.at(i);
      // "… a pair of nuchals." / "3. busa, p. 150."
      if (state == State::open && labelled == nullptr && before < lines_.size() &&
          is_numbered_species(text)) {
        state = State::led;
        before = i;
        continue;
      }
      bool const leaf = labelled == nullptr && starts_leaf(i, before, state);
      if (labelled != nullptr || leaf) {
        LeadStart start;
        if (labelled != nullptr) {
          start = *labelled;
        } else {
          start.line = static_cast<std::uint32_t>(i);
          start.rank.alphabet = Alphabet::dash;
          start.rank.label.family = LabelFamily::dash;
          // Items in small letters are a level of their own.
          start.rank.repeats = is_lower(code_point_at(text, 0).value) ? 1 : 0;
          start.unlabelled = true;
          ++leaves;
        }
        small_items_ = leaf && is_lower(code_point_at(text, 0).value);
        with.start_at[i] = static_cast<std::uint32_t>(with.starts.size());
        with.starts.push_back(start);
        state = State::open;
      }
      if (state != State::outside && ends_in_destination(i)) state = State::led;
      before = i;
    }
    if (leaves < kFewest) return false;
    plan = std::move(with);
    return true;
  }

 private:
  enum class State : std::uint8_t { outside, open, led };  // of the lead before

  [[nodiscard]] bool ends_in_destination(std::size_t i) const {
    auto const split = split_at_leader(lines_[i].text, numbering_);
    if (split.kind != LeaderKind::none && split.destination_begin < lines_[i].text.size()) {
      return true;
    }
    return ends_in_numbered_epithet(lines_[i].text);
  }

  // A page turns within a lead: small letters follow the blank lines, or the name that it leads to.
  [[nodiscard]] bool goes_on_behind(std::size_t blank) const {
    while (blank < lines_.size() && lines_[blank].text.empty()) ++blank;
    if (blank >= lines_.size()) return false;
    auto const text = lines_[blank].text;
    return is_lower(code_point_at(text, 0).value) || is_numbered_species(text);
  }

  // "Erect shrubs, 3-10 ft. high :—" above other leaves.
  [[nodiscard]] static bool opens_list(std::string_view text) {
    while (!text.empty() && is_dash(code_point_before(text, text.size()).value)) {
      text.remove_suffix(code_point_before(text, text.size()).length);
    }
    return text.ends_with(':');
  }

  // "Sporangia stalked :" / "sporangia lenticular": a list whose items begin in small letters,
  // apart from what stands above.
  [[nodiscard]] bool begins_small(std::size_t i, std::size_t before, State state) const {
    if (i == 0 || before == lines_.size() || !lines_[i - 1].text.empty()) return false;
    if (!is_lower(code_point_at(lines_[i].text, 0).value)) return false;
    return state == State::open ? opens_list(lines_[before].text) : small_items_;
  }

  // The lead before has come to its end, and a destination ends the words that begin here.
  [[nodiscard]] bool starts_leaf(std::size_t i, std::size_t before, State state) const {
    constexpr std::size_t kMostLines = 8;  // of a lead
    auto const text = lines_[i].text;
    auto const first = code_point_at(text, 0).value;
    bool const begins = is_upper(first) || is_digit(first) || begins_small(i, before, state);
    if (state == State::outside || before == lines_.size() || !begins) return false;
    if (starts_note(text) || starts_caption(text)) return false;
    if (state == State::open) {
      auto const last = lines_[before].text.back();
      bool const gap = lines_[i - 1].text.empty();
      bool const dash = code_point_before(lines_[before].text, lines_[before].text.size()).value ==
                        0x2014;  // "sessile—"
      if (last != '.' && last != ':' && last != ';' && !dash && !gap) return false;
      // "… longer than broad ;" / "22 scales round the body"
      if (last == ';' && !gap && is_digit(code_point_at(text, 0).value)) return false;
      if (last == ',' || last == '-') return false;
    }
    for (auto j = i; j < std::min(lines_.size(), i + kMostLines); ++j) {
      if (lines_[j].text.empty()) {
        if (!goes_on_behind(j)) return false;
        continue;
      }
      if (ends_in_destination(j) || (j == i && opens_list(text))) return true;
      if (j > i && is_numbered_species(lines_[j].text)) return true;
    }
    return false;
  }

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  bool small_items_{false};  // the last leaf begins in small letters
};

}  // namespace

bool add_leaves(std::vector<SourceLine> const& lines, Numbering const& numbering, LeadPlan& plan) {
  return LeafPlanner{lines, numbering}.add_to(plan);
}

}  // namespace keydrift::printed
