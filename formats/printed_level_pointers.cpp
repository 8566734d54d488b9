#include "keydrift/formats/printed_level_pointers.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"

namespace keydrift::printed {
namespace {

bool may_be_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '/' || c == '6';
}

// The letter of "b. Flowers" or "/. Leaves".
char letter_before(std::string_view text) {
  bool const label = text.size() > 3 && may_be_letter(text[0]) && text[1] == '.' &&
                     is_upper(code_point_at(text, skip_blanks(text, 2)).value);
  return label ? text[0] : '\0';
}

struct Pointer {
  std::size_t words_end{};
  char letter{};
};

// "… minute bracts. . . .b.", "… petioled b."
std::optional<Pointer> pointer_of(std::string_view text) {
  auto const line = trim_right(without_full_stop(text));
  if (line.size() < 3 || !may_be_letter(line.back())) return std::nullopt;
  auto const at = line.size() - 1;
  if (line[at - 1] != ' ' && line[at - 1] != '.') return std::nullopt;
  auto end = at;
  while (end > 0 && (line[end - 1] == '.' || is_blank(static_cast<unsigned char>(line[end - 1])))) {
    --end;
  }
  // The full stop that ends the words is no leader.
  if (end < at && line[end] == '.') ++end;
  return end > 1 ? std::optional{Pointer{end, line.back()}} : std::nullopt;
}

}  // namespace

void take_off_level_pointers(std::vector<SourceLine>& lines) {
  constexpr std::size_t kFewest = 4;
  std::map<char, std::size_t> labels;
  std::size_t labelled = 0;
  struct Found {
    std::size_t line{};
    std::size_t words_end{};
  };
  std::vector<Found> found;
  std::size_t others = 0;  // letters at ends that are not the next lead's
  std::optional<Pointer> open;
  std::size_t open_at = 0;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (text.empty()) continue;
    if (auto const letter = letter_before(text); letter != '\0') {
      ++labels[letter];
      ++labelled;
      if (open && open->letter == letter) {
        found.push_back({open_at, open->words_end});
      } else if (open) {
        ++others;
      }
      open.reset();
    }
    if (labelled == 0) continue;
    if (auto const pointer = pointer_of(text)) {
      open = pointer;
      open_at = i;
    }
  }
  // Each couplet of a rank bears its letter again: no two leads alone do.
  bool const ranks = !labels.empty() && labelled >= labels.size() * 3;
  if (!ranks || found.size() < kFewest || others * 4 > found.size()) return;
  for (auto const& one : found) {
    lines[one.line].text = trim_right(lines[one.line].text.substr(0, one.words_end));
  }
}

}  // namespace keydrift::printed
