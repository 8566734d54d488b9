#include "keydrift/formats/printed_run_on_labels.hpp"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_ranks.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLeastBytes = 120;  // of a paragraph; a shorter line holds one lead or two
constexpr std::size_t kLeastCuts = 3;
constexpr std::size_t kLongestLabel = 40;  // bytes that are looked at, back-references included

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
        if (blank && ends_sentence(before) && begins_lead(text.substr(at, kLongestLabel))) {
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

}  // namespace

std::vector<std::size_t> label_cuts(std::string_view text) { return LabelCutter{}.cuts(text); }

}  // namespace keydrift::printed
