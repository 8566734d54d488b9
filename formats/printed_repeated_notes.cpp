#include "keydrift/formats/printed_repeated_notes.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_leaders.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestOfNote = 2;      // notes of one kind
constexpr std::size_t kLongestNoteHead = 30;  // bytes
constexpr std::size_t kMostWordsOfNote = 3;

// "host" of "Host: Fagella alba."; empty where the line has another form.
std::string head_of(std::string_view text) {
  auto const colon = text.find(':');
  if (colon == std::string_view::npos || colon == 0 || colon > kLongestNoteHead) return {};
  auto const rest = trim(text.substr(colon + 1));
  if (rest.empty() || rest.size() == text.size() - colon - 1) return {};
  auto const head = text.substr(0, colon);
  if (!is_upper(code_point_at(text, 0).value) || words_of(head).size() > kMostWordsOfNote) {
    return {};
  }
  // "Wings: dark ..... Aus bus" is a lead without a label.
  if (read_label(text) || split_at_leader(rest, Numbering{}).kind != LeaderKind::none) return {};
  // "Males: 2" leads on.
  if (read_references(strip_pointer(rest))) return {};
  return fold(head);
}

// The line ends a lead that bears a label and leads to something else than a couplet.
bool ends_named_lead(std::string_view text) {
  auto const label = read_label(text);
  if (!label || label->decimal || trailing_reference(text)) return false;
  auto const split = split_at_leader(text, Numbering{});
  return split.kind != LeaderKind::none && split.words_end > label->text_at &&
         split.destination_begin < text.size() &&
         is_upper(code_point_at(text, split.destination_begin).value);
}

}  // namespace

void mark_repeated_notes(std::vector<SourceLine>& lines) {
  struct Kind {
    std::vector<std::size_t> lines;
    bool beneath_leads{true};  // all of them
  };
  std::map<std::string, Kind> kinds;
  bool beneath = false;               // a lead that has its end, or a note beneath one
  SourceLine const* above = nullptr;  // looked at only if a note stands beneath it
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    bool const told = line.markup.role != LineRole::told_by_text || line.is_no_lead;
    auto const head = told ? std::string{} : head_of(line.text);
    if (head.empty()) {
      beneath = false;
      above = told ? nullptr : &line;
      continue;
    }
    if (above != nullptr) beneath = ends_named_lead(above->text);
    above = nullptr;
    auto& kind = kinds[head];
    kind.lines.push_back(i);
    kind.beneath_leads = kind.beneath_leads && beneath;
  }
  for (auto const& [head, kind] : kinds) {
    if (kind.lines.size() < kFewestOfNote || !kind.beneath_leads) continue;
    for (auto const line : kind.lines) lines[line].is_no_lead = true;
  }
}

}  // namespace keydrift::printed
