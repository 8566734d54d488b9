#include "keydrift/formats/printed_run_on_labels.hpp"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_end_habits.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLeastBytes = 120;  // of a paragraph; a shorter line holds one lead or two
constexpr std::size_t kLeastCuts = 3;
constexpr std::size_t kLongestRunOnLabel = 40;  // bytes looked at, back-references included

class LabelCutter {
 public:
  std::vector<std::size_t> cuts(std::string_view text) {
    if (text.size() < kLeastBytes) return {};
    std::vector<std::size_t> found;
    if (begins_lead(text)) ++labels_;
    char32_t before = 0;
    bool blank = false;
    for (std::size_t at = 0; at < text.size();) {
      auto const c = code_point_at(text, at);
      if (is_blank(c.value)) {
        blank = true;
      } else {
        if (blank && ends_sentence(before) && begins_lead(text.substr(at, kLongestRunOnLabel))) {
          found.push_back(at);
          ++labels_;
        }
        blank = false;
        before = c.value;
      }
      at += c.length;
    }
    if (found.size() < kLeastCuts || labels_ == found.size()) return {};
    return found;
  }

 private:
  [[nodiscard]] static bool ends_sentence(char32_t c) {
    return c == '.' || c == ';' || c == ':' || c == ')' || c == 0x2026;
  }

  // A label that is expected here; counts it.
  bool begins_lead(std::string_view text) {
    for (auto const& rank : read_rank_labels(text)) {
      if (!is_upper(code_point_at(text, rank.label.text_at).value)) continue;
      if (rank.alphabet == Alphabet::dash) return labels_ > 0;
      if (!rank.decimal.empty()) continue;
      // "A. Roe", "I. Leaves": a lone capital has to be expected; so has every bare number.
      auto& count = counts_[rank.rank()];
      bool const first = rank.ordinal <= 1 && rank.repeats == 0;
      bool const next = rank.ordinal == count + 1 && rank.repeats == 0;
      bool const answer = seen_.contains(key_of(rank, 0)) && rank.repeats > 0;
      bool const again =
          rank.alphabet == Alphabet::digits && seen_[key_of(rank, rank.repeats)] == 1;
      bool const bare = rank.label.end == LabelEnd::none && rank.repeats == 0;
      if (bare && rank.alphabet != Alphabet::digits && rank.alphabet != Alphabet::sign) continue;
      if (!(first || next || answer || again)) continue;
      // Numbers go on counting behind a couplet's second half; letters begin again beneath it.
      count = rank.alphabet == Alphabet::digits ? std::max(count, rank.ordinal) : rank.ordinal;
      ++seen_[key_of(rank, rank.repeats)];
      return true;
    }
    return false;
  }

  [[nodiscard]] static std::uint64_t key_of(RankLabel const& rank, std::uint32_t repeats) {
    return (static_cast<std::uint64_t>(rank.rank()) << 48U) |
           (static_cast<std::uint64_t>(repeats & 0xFFU) << 32U) | rank.ordinal;
  }

  std::size_t labels_{};
  std::array<std::uint32_t, RankLabel::kRanks> counts_{};  // how far each rank has counted
  std::unordered_map<std::uint64_t, std::uint32_t> seen_;  // labels, and how often
};

// Begin of " – Wings dark" behind a destination; 0 where there is none.
std::size_t rival_begin(std::string_view text, std::size_t from) {
  if (!may_have_dash(text)) return 0;
  for (std::size_t at = from; at < text.size();) {
    auto const c = code_point_at(text, at);
    auto const behind = at + c.length;
    bool const apart = is_dash(c.value) && at > 0 && is_blank(code_point_before(text, at).value) &&
                       is_blank(code_point_at(text, behind).value);
    if (apart && is_upper(code_point_at(text, skip_blanks(text, behind)).value)) {
      auto before = trim_right(text.substr(0, at));
      if (trailing_reference(before) || trailing_name(before)) return at;
    }
    at = behind;
  }
  return 0;
}

// "bus Roe.", "bus, n. sp.", "bus cus, n. var.": an epithet and nothing but what belongs to it.
bool is_epithet_with_marks(std::string_view text) {
  constexpr std::size_t kMost = 5;  // words
  static constexpr std::array kMarks{"n."sv,  "sp."sv,     "nov."sv,   "var."sv,
                                     "new"sv, "species"sv, "subsp."sv, "part"sv};
  auto const words = words_of(text);
  auto const is_mark = [](std::string_view word) { return is_one_of(kMarks, word); };
  if (words.empty() || words.size() > kMost) return false;
  bool const marked = words.size() > 1 && ends_item(words[0]) && is_mark(words[1]);
  auto const first = without_end(words[0]);
  if (!is_latin_epithet(first) && !(marked && is_epithet(first))) return false;
  return std::all_of(words.begin() + 1, words.end(), [&is_mark](std::string_view word) {
    return is_authorish(word) || is_latin_epithet(without_end(word)) || is_mark(word);
  });
}

}  // namespace

bool leads_somewhere(std::string_view text) {
  constexpr int kMostCommas = 3;  // that a name may have
  if (trailing_reference(text) || trailing_name(text) || loose_name(text)) return true;
  auto comma = text.rfind(", ");
  for (int tried = 0; tried < kMostCommas && comma != std::string_view::npos; ++tried) {
    auto const tail = text.substr(comma + 2);
    if (!tail.empty() && (misread_number(tail) || is_epithet_with_marks(tail))) return true;
    comma = comma == 0 ? std::string_view::npos : text.rfind(", ", comma - 1);
  }
  return false;
}

std::vector<std::size_t> count_cuts(std::string_view text, std::uint32_t& counted) {
  constexpr std::size_t kLeast = 200;         // bytes of a paragraph
  constexpr std::size_t kLongestTitle = 300;  // bytes before couplet 1
  constexpr std::size_t kLongestEnd = 200;    // bytes that are looked at before a label
  if (text.size() < kLeast) return {};
  std::vector<std::size_t> cuts;
  std::uint32_t number = 0;
  std::size_t couplets = 0;
  for (std::size_t at = 0; at < text.size();) {
    auto const c = code_point_at(text, at);
    auto const before_it = at == 0 ? U' ' : code_point_before(text, at).value;
    // "TABLE OF AUS.—1. Wings clear"
    bool const starts = is_blank(before_it) || (number == 0 && is_dash(before_it));
    bool const sign = is_digit(c.value) || is_dash(c.value);
    if (!starts || !sign) {
      at += c.length;
      continue;
    }
    auto const label = read_label(text.substr(at, kLongestRunOnLabel));
    bool const upper = label && is_upper(code_point_at(text, at + label->text_at).value);
    auto const before = trim_right(
        text.substr(cuts.empty() ? 0 : cuts.back(), at - (cuts.empty() ? 0 : cuts.back())));
    auto const end = before.substr(before.size() - std::min(before.size(), kLongestEnd));
    bool expected = false;
    if (upper && number == 0) {
      // A further paragraph goes on counting.
      bool const goes_on = at == 0 && counted > 0 && label->number == counted + 1;
      expected = (label->number == 1 && at <= kLongestTitle) || goes_on;
    } else if (upper) {
      bool const counts =
          label->is_dash() || label->number == number || label->number == number + 1;
      // "… tibia 5 – Antennae": the number is where the lead leads to.
      expected = counts && !label->decimal && label->end != LabelEnd::dash && leads_somewhere(end);
    }
    if (!expected) {
      at += c.length;
      continue;
    }
    cuts.push_back(at);
    if (!label->is_dash()) {
      if (label->number != number) ++couplets;
      number = label->number;
    }
    at += label->text_at;
  }
  if (couplets < 2 || cuts.size() <= kLeastCuts) return {};
  counted = number;
  return cuts;
}

std::vector<std::size_t> label_cuts(std::string_view text) { return LabelCutter{}.cuts(text); }

std::vector<std::size_t> rival_cuts(std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 3;  // lines that make a habit
  std::vector<std::size_t> cuts(lines.size(), 0);
  std::size_t labelled = 0;
  std::size_t cut = 0;
  std::size_t answered = 0;  // "1*" behind "1": both leads have lines of their own
  std::uint32_t last = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    auto const label = read_label(text);
    if (!label) continue;
    if (label->is_dash()) return {};
    if (label->family != LabelFamily::digits || label->decimal) continue;
    ++labelled;
    if (label->number == last) ++answered;
    last = label->number;
    cuts[i] = rival_begin(text, label->text_at);
    if (cuts[i] > 0) ++cut;
  }
  bool const habit = cut >= kFewest && cut * 4 >= labelled * 3 && answered * 4 < labelled;
  return habit ? cuts : std::vector<std::size_t>{};
}

}  // namespace keydrift::printed
