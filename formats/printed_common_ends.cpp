#include "keydrift/formats/printed_common_ends.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"

namespace keydrift::printed {
namespace {

// What stands before the name.
enum class Border : std::uint8_t { dash, colon, bracket, sentence };

struct NameAtEnd {
  std::size_t words_end{};
  std::size_t begin{};
  std::string_view name;
};

bool may_be_common_end(std::string_view text) {
  constexpr std::size_t kMostWords = 5;
  auto const words = words_of(text, kMostWords + 1);
  return !words.empty() && words.size() <= kMostWords && is_capitalised(words.front()) &&
         std::all_of(words.begin(), words.end(), is_plain_word);
}

// Behind the last sign of its kind.
std::optional<std::size_t> behind_border(std::string_view text, Border border) {
  auto const behind = [text](std::string_view sign) -> std::optional<std::size_t> {
    auto const at = text.rfind(sign);
    return at == std::string_view::npos || at == 0 ? std::nullopt : std::optional{at + sign.size()};
  };
  switch (border) {
    case Border::colon:
      return behind(": ");
    case Border::sentence:
      // "Wings without spots, Buckwheat weevil"
      return std::max(behind(". "), behind(", "));
    case Border::bracket:
      return text.ends_with(')') ? behind(" (") : std::nullopt;
    case Border::dash:
      break;
  }
  for (auto blank = text.rfind(' '); blank != std::string_view::npos && blank > 1;
       blank = text.rfind(' ', blank - 1)) {
    auto const sign = code_point_before(text, blank);
    bool const apart = sign.length < blank && text[blank - sign.length - 1] == ' ';
    if (apart && is_dash(sign.value)) return blank + 1;
  }
  return std::nullopt;
}

std::optional<NameAtEnd> bordered_name_at_end(std::string_view raw, Border border) {
  auto text = trim_right(raw);
  if (text.ends_with('.')) text.remove_suffix(1);
  auto const begin = behind_border(text, border);
  if (!begin) return std::nullopt;
  auto name = text.substr(*begin);
  if (border == Border::bracket) name.remove_suffix(1);
  if (!may_be_common_end(name)) return std::nullopt;
  // "Wings clear. Aphid": one word of a sentence alone is one of the words.
  if (border == Border::sentence && name.find(' ') == std::string_view::npos) return std::nullopt;
  auto words = trim_right(text.substr(0, *begin));
  if (border != Border::sentence || words.ends_with(',')) {
    words.remove_suffix(code_point_before(words, words.size()).length);
  }
  auto const open = border == Border::bracket ? *begin - 1 : *begin;
  return NameAtEnd{trim_right(words).size(), open, name};
}

// The leads without an end, if they are those that taxa are to be expected at; none otherwise.
std::vector<std::size_t> open_leads(std::vector<ReadLead> const& reads) {
  std::vector<std::size_t> open;
  std::unordered_set<LabelKey> led_to;
  for (std::size_t i = 0; i < reads.size(); ++i) {
    if (is_open(reads[i])) {
      open.push_back(i);
    } else if (reads[i].to.form == DestinationForm::couplet) {
      led_to.insert(reads[i].to.couplet);
    } else {
      return {};
    }
  }
  // A key of couplets has one lead more that ends than couplets that are led to.
  constexpr std::size_t kFewest = 4;
  bool const all_ends = open.size() >= kFewest && open.size() > led_to.size() &&
                        open.size() + led_to.size() == reads.size();
  return all_ends && !led_to.empty() ? open : std::vector<std::size_t>{};
}

}  // namespace

void take_common_names_at_ends(LeadCutter& cutter, std::vector<ReadLead>& reads) {
  auto const open = open_leads(reads);
  if (open.empty()) return;
  for (auto const border : {Border::bracket, Border::dash, Border::colon, Border::sentence}) {
    std::unordered_set<std::string> names;
    for (auto const i : open) {
      auto const joined = cutter.join(i);
      auto const end = bordered_name_at_end(joined.raw, border);
      if (!end || !names.emplace(end->name).second) break;
    }
    if (names.size() < open.size()) continue;
    for (auto const i : open) {
      auto const joined = cutter.join(i);
      auto const end = bordered_name_at_end(joined.raw, border);
      reads[i].leaders = LeaderKind::blank;
      cutter.cut(reads[i], joined, end->words_end, end->begin);
      cutter.say_name_taken(reads[i]);
    }
    return;
  }
}

}  // namespace keydrift::printed
