#include "keydrift/formats/printed_run_on_serial.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestSerialLeads = 6;    // of a key that is told by its labels alone
constexpr std::size_t kLongestSerialLabel = 40;  // bytes that are looked at

struct SerialBegin {
  std::size_t line{};
  std::size_t at{};
  std::uint32_t number{};
  std::uint32_t rival{};
};

std::uint64_t packed(std::uint32_t number, std::uint32_t rival) {
  return (static_cast<std::uint64_t>(number) << 32U) | rival;
}

// "14 (15) Third joint" at byte `at`.
std::optional<SerialBegin> begin_at(std::string_view text, std::size_t line, std::size_t at) {
  auto const label = read_label(text.substr(at, kLongestSerialLabel));
  if (!label || label->family != LabelFamily::digits || label->decimal || label->back.empty()) {
    return std::nullopt;
  }
  auto const rival = read_reference(label->back);
  bool const plain = rival && rival->family == LabelFamily::digits && rival->letter.empty();
  if (!plain || !is_upper(code_point_at(text, at + label->text_at).value)) return std::nullopt;
  return SerialBegin{.line = line, .at = at, .number = label->number, .rival = rival->number};
}

std::vector<SerialBegin> begins_of(std::vector<SourceLine> const& lines) {
  std::vector<SerialBegin> begins;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const text = lines[i].text;
    if (lines[i].markup.role != LineRole::told_by_text) continue;
    // Every such label has a bracket behind its figures.
    for (auto open = text.find('('); open != std::string_view::npos;
         open = text.find('(', open + 1)) {
      auto end = open;
      while (end > 0 && text[end - 1] == ' ') --end;
      auto at = end;
      while (at > 0 && text[at - 1] >= '0' && text[at - 1] <= '9') --at;
      if (at == end || (at > 0 && text[at - 1] != ' ')) continue;
      if (auto const begin = begin_at(text, i, at)) begins.push_back(*begin);
    }
  }
  return begins;
}

// Those of one key whose rivals name them in turn and that count up; empty unless they run on.
std::vector<SerialBegin> run_of(std::span<SerialBegin const> key) {
  std::unordered_set<std::uint64_t> named;
  for (auto const& one : key) named.insert(packed(one.number, one.rival));
  std::vector<SerialBegin> run;
  std::size_t within = 0;
  for (auto const& one : key) {
    bool const answered = named.contains(packed(one.rival, one.number));
    bool const counts_up = run.empty() || one.number > run.back().number;
    if (!answered || !counts_up) continue;
    run.push_back(one);
    if (one.at > 0) ++within;
  }
  bool const all = run.size() * 4 >= key.size() * 3;
  if (run.size() < kFewestSerialLeads || within * 4 < run.size() || !all) return {};
  return run;
}

}  // namespace

SerialCuts serial_cuts(std::vector<SourceLine> const& lines) {
  SerialCuts cuts;
  auto const begins = begins_of(lines);
  for (std::size_t first = 0; first < begins.size();) {
    auto const next =
        std::find_if(begins.begin() + static_cast<std::ptrdiff_t>(first) + 1, begins.end(),
                     [](SerialBegin const& one) { return one.number == 1; });
    auto const end = static_cast<std::size_t>(next - begins.begin());
    auto const run = run_of(std::span{begins}.subspan(first, end - first));
    if (!run.empty() && cuts.lines.empty()) {
      cuts.lines.resize(lines.size());
      cuts.titled.resize(lines.size());
    }
    for (auto const& one : run) {
      if (one.at == 0) continue;
      cuts.titled[one.line] = cuts.titled[one.line] || one.number == 1;
      cuts.lines[one.line].push_back(one.at);
    }
    first = end;
  }
  return cuts;
}

}  // namespace keydrift::printed
