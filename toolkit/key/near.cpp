#include "keydrift/key/near.hpp"

#include <algorithm>
#include <array>
#include <tuple>
#include <utility>

#include "keydrift/key/fold.hpp"

namespace keydrift {
namespace {

constexpr std::size_t kShortestPart = 3;
constexpr std::size_t kShort = 32;

}  // namespace

std::size_t count_slips(std::string_view a, std::string_view b, std::size_t most) {
  if (a.size() < b.size()) std::swap(a, b);
  if (a.size() - b.size() > most) return most + 1;
  // Three rows of the table; those of short words, which are many, need no memory of their own.
  auto const width = b.size() + 1;
  std::array<std::size_t, 3 * kShort> short_rows;
  std::vector<std::size_t> long_rows(width > kShort ? 3 * width : 0);
  auto* before = width > kShort ? long_rows.data() : short_rows.data();
  auto* last = before + width;
  auto* row = last + width;
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    auto least = row[0];
    for (std::size_t j = 1; j <= b.size(); ++j) {
      row[j] = std::min({last[j] + 1, row[j - 1] + 1,
                         last[j - 1] + (a[i - 1] == b[j - 1] ? std::size_t{0} : std::size_t{1})});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
      least = std::min(least, row[j]);
    }
    if (least > most) return most + 1;
    std::swap(before, last);
    std::swap(last, row);
  }
  return std::min(last[b.size()], most + 1);
}

std::vector<std::string> near_words(std::string_view word, std::vector<std::string> const& known,
                                    std::size_t maximum) {
  auto const wanted = fold_words(word);
  if (wanted.empty()) return {};
  auto const most = std::max<std::size_t>(1, wanted.size() / 5);
  std::vector<std::pair<std::size_t, std::string_view>> ranked;
  std::vector<std::pair<std::size_t, std::string_view>> holding;
  for (auto const& candidate : known) {
    auto const folded = fold_words(candidate);
    if (auto const slips = count_slips(wanted, folded, most); slips <= most) {
      ranked.emplace_back(slips, candidate);
    } else if (ranked.empty()) {
      auto const& [shorter, longer] =
          wanted.size() < folded.size() ? std::tie(wanted, folded) : std::tie(folded, wanted);
      if (shorter.size() >= kShortestPart && longer.find(shorter) != std::string::npos) {
        holding.emplace_back(longer.size() - shorter.size(), candidate);
      }
    }
  }
  if (ranked.empty()) ranked.swap(holding);
  std::sort(ranked.begin(), ranked.end());
  std::vector<std::string> near;
  for (auto const& [rank, candidate] : ranked) {
    if (near.size() == maximum) break;
    if (std::find(near.begin(), near.end(), candidate) == near.end()) near.emplace_back(candidate);
  }
  return near;
}

std::string did_you_mean(std::vector<std::string> const& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    text += i == 0 ? "did you mean " : i + 1 == words.size() ? " or " : ", ";
    text += '"' + words[i] + '"';
  }
  if (!words.empty()) text += '?';
  return text;
}

}  // namespace keydrift
