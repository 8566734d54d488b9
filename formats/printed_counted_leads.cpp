#include "keydrift/formats/printed_counted_leads.hpp"

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_label_parts.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestCountedCouplets = 2;

struct CountedLead {
  Label label;
  std::uint32_t lead{};
};

// "12/2 Wings", "12/2. Wings", "12/2) Wings".
std::optional<CountedLead> counted_front(std::string_view line) {
  constexpr std::size_t kMostDigits = 3;
  auto const digits = digits_at(line, 0);
  if (digits == 0 || digits > kMostDigits || line.front() == '0') return std::nullopt;
  auto at = digits;
  if (!line.substr(at).starts_with('/') || digits_at(line, at + 1) != 1) return std::nullopt;
  CountedLead found;
  found.lead = number_of(line.substr(at + 1, 1));
  at += 2;
  found.label.number = number_of(line.substr(0, digits));
  found.label.printed = line.substr(0, at);
  auto const sign = value_at(line, at);
  if (sign == '.' || sign == ')' || sign == ':') {
    found.label.end = sign == '.'   ? LabelEnd::dot
                      : sign == ')' ? LabelEnd::parenthesis
                                    : LabelEnd::colon;
    ++at;
  }
  found.label.text_at = skip_blanks(line, at);
  bool const words =
      found.label.text_at > at && is_upper(value_at(line, found.label.text_at)) && found.lead > 0;
  if (words) found.label.marks = static_cast<std::uint8_t>(found.lead - 1);
  return words ? std::optional{found} : std::nullopt;
}

}  // namespace

void tell_counted_leads(std::vector<SourceLine>& lines) {
  std::vector<std::pair<std::size_t, Label>> counted;
  std::map<std::uint32_t, std::uint32_t> leads;  // of the key at hand, by couplet
  std::size_t couplets = 0;
  std::size_t answered = 0;
  std::size_t strays = 0;   // fractions, dates and slips, which do not count up
  std::size_t numbers = 0;  // lines that begin with a label of any other kind
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    if (line.text.empty() || line.told || line.markup.role != LineRole::told_by_text) continue;
    auto const found = counted_front(line.text);
    if (!found) {
      auto const label = read_label(line.text);
      bool const other = label && label->family == LabelFamily::digits && !label->decimal &&
                         label->text_at < line.text.size() &&
                         is_upper(value_at(line.text, label->text_at));
      if (other) ++numbers;
      continue;
    }
    auto const number = found->label.number;
    if (number == 1 && found->lead == 1) leads.clear();
    auto& last = leads[number];
    if (found->lead != last + 1) {
      ++strays;
      continue;
    }
    last = found->lead;
    if (found->lead == 1) ++couplets;
    if (found->lead == 2) ++answered;
    counted.emplace_back(i, found->label);
  }
  if (answered < kFewestCountedCouplets || answered * 4 < couplets * 3) return;
  if (numbers * 4 > couplets || strays * 8 > counted.size()) return;
  tell_labels(lines, counted);
}

}  // namespace keydrift::printed
