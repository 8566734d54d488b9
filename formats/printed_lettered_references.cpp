#include "keydrift/formats/printed_lettered_references.hpp"

#include <optional>
#include <string_view>
#include <unordered_set>
#include <utility>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_misread_figures.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMostFigures = 3;

bool is_figure(char c) { return c >= '0' && c <= '9'; }
bool is_lead_letter(char c) { return c >= 'a' && c <= 'e'; }

// "7b" at the front of "7b (1b). Wings"; empty for anything else.
std::string_view lettered_number(std::string_view line) {
  std::size_t at = 0;
  while (at < line.size() && at < kMostFigures && is_figure(line[at])) ++at;
  bool const lettered = at > 0 && at < line.size() && is_lead_letter(line[at]);
  return lettered ? line.substr(0, at + 1) : std::string_view{};
}

// What the bracket behind a label says: "lb" of "7b (lb). Wings".
struct LetteredReference {
  std::size_t at{};  // byte of the line
  std::string_view printed;
  std::string meant;
};
std::optional<LetteredReference> reference_in(std::string_view line) {
  auto const own = lettered_number(line);
  if (own.empty()) return std::nullopt;
  auto const open = skip_blanks(line, own.size());
  if (open >= line.size() || line[open] != '(') return std::nullopt;
  auto const close = line.find(')', open);
  if (close == std::string_view::npos || close < open + 3 || close > open + 2 + kMostFigures) {
    return std::nullopt;
  }
  LetteredReference found{open + 1, line.substr(open + 1, close - open - 1), {}};
  for (char const c : found.printed.substr(0, found.printed.size() - 1)) {
    auto const figure = figure_seen_in(static_cast<unsigned char>(c));
    if (!figure) return std::nullopt;
    found.meant += std::to_string(*figure);
  }
  auto const letter = found.printed.back() == 'h' ? 'b' : found.printed.back();
  if (!is_lead_letter(letter)) return std::nullopt;
  found.meant += letter;
  return found;
}

}  // namespace

std::size_t restore_lettered_references(std::string& text) {
  constexpr std::size_t kFewest = 3;            // sound labels that name another
  std::unordered_set<std::string_view> labels;  // and what others name
  std::vector<TextChange> damaged;
  std::size_t sound = 0;
  for (auto const& [at, line] : lines_of(text)) {
    if (auto const own = lettered_number(line); !own.empty()) labels.insert(own);
    auto reference = reference_in(line);
    if (!reference) continue;
    if (reference->meant == reference->printed) {
      ++sound;
      labels.insert(reference->printed);
    } else {
      damaged.push_back(
          {at + reference->at, reference->printed.size(), std::move(reference->meant)});
    }
  }
  if (sound < kFewest) return 0;
  std::erase_if(damaged, [&labels](TextChange const& one) { return !labels.contains(one.put); });
  make_changes(damaged, text);
  return damaged.size();
}

}  // namespace keydrift::printed
