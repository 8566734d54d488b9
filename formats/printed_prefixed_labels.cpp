#include "keydrift/formats/printed_prefixed_labels.hpp"

#include <algorithm>
#include <charconv>
#include <set>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_figures.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_text_changes.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFewestPrefixed = 3;
constexpr std::size_t kMostDigitsOfPrefix = 3;

bool is_ascii_digit(char c) { return c >= '0' && c <= '9'; }
// Bytes of the signs that may stand between the name of a key and the number: "II/1", "A.1".
std::size_t sign_at(std::string_view text, std::size_t at) {
  return at < text.size() && "/.-:"sv.find(text[at]) != std::string_view::npos ? 1 : 0;
}

// "A", "II": a capital, or a roman numeral, which a sign has to part from the number.
bool is_name_of_key(std::string_view name, bool parted) {
  constexpr std::size_t kLongest = 4;
  if (name.size() == 1) return is_capital(name.front());
  return parted && !name.empty() && name.size() <= kLongest &&
         name.find_first_not_of("IVX") == std::string_view::npos;
}

// "A12", "II/3": at `at` of the text.
struct Prefixed {
  std::string_view prefix;
  std::uint32_t number{};
  std::size_t bytes{};
};
std::optional<Prefixed> prefixed_at(std::string_view text, std::size_t at) {
  auto name_end = at;
  while (name_end < text.size() && is_capital(text[name_end])) ++name_end;
  auto const sign = sign_at(text, name_end);
  if (!is_name_of_key(text.substr(at, name_end - at), sign > 0)) return std::nullopt;
  auto const begin = name_end + sign;
  if (begin >= text.size() || text[begin] == '0') return std::nullopt;
  auto end = begin;
  while (end < text.size() && is_ascii_digit(text[end])) ++end;
  if (end == begin || end - begin > kMostDigitsOfPrefix) return std::nullopt;
  Prefixed found{text.substr(at, begin - at), 0, end - at};
  std::from_chars(text.data() + begin, text.data() + end, found.number);
  return found;
}

// At the front of a line: "A1 Wings", "A1. Wings", "A1a) Wings", "A1' Wings", "A2(A1) Wings".
std::optional<Prefixed> label_at_front(std::string_view line) {
  auto const found = prefixed_at(line, 0);
  if (!found) return std::nullopt;
  auto at = found->bytes;
  if (at < line.size() && line[at] >= 'a' && line[at] <= 'e') ++at;
  while (at < line.size() && is_mark(code_point_at(line, at).value)) {
    at += code_point_at(line, at).length;
  }
  if (at < line.size() && (line[at] == '.' || line[at] == ')' || line[at] == ':')) ++at;
  if (at >= line.size()) return std::nullopt;
  bool const ends = is_blank(code_point_at(line, at).value) || line[at] == '(' || line[at] == '[';
  return ends ? found : std::nullopt;
}

// At the end of a line, behind a blank or leaders: "..... A2", "... A2."
struct AtEnd {
  Prefixed label;
  std::size_t begin{};
};
std::optional<AtEnd> label_at_end(std::string_view line) {
  auto const text = trim_right(line);
  auto end = text.size();
  if (end > 0 && (text[end - 1] == '.' || text[end - 1] == ')')) --end;
  auto begin = end;
  while (begin > 0 && is_ascii_digit(text[begin - 1])) --begin;
  if (begin == end || begin < 2) return std::nullopt;
  if (sign_at(text, begin - 1) > 0) --begin;
  while (begin > 0 && is_capital(text[begin - 1])) --begin;
  if (begin == 0) return std::nullopt;
  auto const before = code_point_before(text, begin).value;
  bool const apart = is_blank(before) || before == '.' || before == 0x2026 || before == '>' ||
                     before == 0x2192 || before == '_';
  auto const found = prefixed_at(text, begin);
  if (!apart || !found || begin + found->bytes != end) return std::nullopt;
  return AtEnd{*found, begin};
}

// "..... 12": the plain number behind leaders at the end of a line.
std::optional<std::uint32_t> plain_number_at_end(std::string_view line) {
  auto const split = split_at_leader(line, Numbering{});
  if (split.kind != LeaderKind::dots) return std::nullopt;
  auto const end = read_reference(trim(line.substr(split.destination_begin)));
  bool const plain = end && end->family == LabelFamily::digits && end->letter.empty();
  return plain ? std::optional{end->number} : std::nullopt;
}

// The bracket of a back-reference behind the label: "A2 (A1)".
std::optional<AtEnd> label_in_bracket(std::string_view line, std::size_t label_bytes) {
  auto const open = line.find_first_of("([", label_bytes);
  if (open == std::string_view::npos || open > label_bytes + 3) return std::nullopt;
  auto const found = prefixed_at(line, open + 1);
  if (!found) return std::nullopt;
  auto const close = open + 1 + found->bytes;
  bool const closes = close < line.size() && (line[close] == ')' || line[close] == ']');
  return closes ? std::optional{AtEnd{*found, open + 1}} : std::nullopt;
}

using Key = std::pair<std::string, std::uint32_t>;

class Numberer {
 public:
  explicit Numberer(std::string& text) : text_{text}, lines_{lines_of(text)} {}

  std::optional<PrefixedLabels> number() && {
    look();
    if (!count_up() || !are_led_to() || are_numbers_printed()) return std::nullopt;
    std::vector<TextChange> changes;
    for (std::size_t l = 0; l < lines_.size(); ++l) {
      if (!change(l, changes)) return std::nullopt;
    }
    make_changes(changes, text_);
    for (auto const& [key, number] : numbers_) labels_.printed[number] = name_of(key);
    return std::move(labels_);
  }

 private:
  static std::string name_of(Key const& key) { return key.first + std::to_string(key.second); }

  void look() {
    std::set<Key> seen;
    for (auto const& line : lines_) {
      auto const label = label_at_front(line.text);
      if (!label) continue;
      Key const key{std::string{label->prefix}, label->number};
      if (seen.insert(key).second) order_.push_back(key);
      if (order_.size() > kMostCouplets) return;
    }
  }

  // The highest plain number of a lead.
  [[nodiscard]] std::uint32_t last_plain() const {
    std::uint32_t last = 0;
    for (auto const& line : lines_) {
      if (label_at_front(line.text)) continue;
      auto const plain = read_label(line.text);
      bool const number = plain && plain->family == LabelFamily::digits && !plain->decimal;
      if (number && plain->number <= kMostCouplets) last = std::max(last, plain->number);
    }
    return last;
  }

  // Those of each letter: 1, 2, 3 …
  bool count_up() {
    if (order_.size() < kFewestPrefixed) return false;
    std::map<std::string, std::uint32_t> last;
    auto const plain = last_plain();
    for (auto const& key : order_) {
      if (key.second != last[key.first] + 1) return false;
      last[key.first] = key.second;
      numbers_[key] = static_cast<std::uint32_t>(plain + numbers_.size() + 1);
    }
    return std::any_of(last.begin(), last.end(), [](auto const& one) { return one.second >= 2; });
  }

  // Leads end in most of those that are not the first of their letter.
  [[nodiscard]] bool are_led_to() const {
    std::map<Key, bool> led;
    for (auto const& line : lines_) {
      if (auto const end = label_at_end(line.text)) {
        Key const key{std::string{end->label.prefix}, end->label.number};
        if (numbers_.contains(key)) led[key] = true;
      }
    }
    std::size_t further = 0;
    std::size_t found = 0;
    for (auto const& [key, number] : numbers_) {
      if (key.second == 1) continue;
      ++further;
      if (led.contains(key)) ++found;
    }
    return further > 0 && found * 4 >= further * 3;
  }

  // A lead ends in a plain number that would stand for one of the labels: a misprint, which it has
  // to stay.
  [[nodiscard]] bool are_numbers_printed() const {
    std::set<std::uint32_t> taken;
    for (auto const& [key, number] : numbers_) taken.insert(number);
    return std::any_of(lines_.begin(), lines_.end(), [&taken](TextLine const& line) {
      auto const number = plain_number_at_end(line.text);
      return number && taken.contains(*number);
    });
  }

  // false: a number is too long.
  bool change(std::size_t l, std::vector<TextChange>& changes) {
    auto const& line = lines_[l];
    std::size_t taken = 0;
    if (auto const label = label_at_front(line.text)) {
      if (!put(l, 0, *label, false, changes)) return false;
      taken = label->bytes;
      if (auto const back = label_in_bracket(line.text, taken)) {
        if (!put(l, back->begin, back->label, false, changes)) return false;
        taken = back->begin + back->label.bytes;
      }
    }
    auto const end = label_at_end(line.text);
    return !end || end->begin < taken || put(l, end->begin, end->label, true, changes);
  }
  bool put(std::size_t l, std::size_t at, Prefixed const& label, bool at_end,
           std::vector<TextChange>& changes) {
    auto const found = numbers_.find({std::string{label.prefix}, label.number});
    if (found == numbers_.end()) return true;
    auto digits = std::to_string(found->second);
    if (digits.size() > label.bytes) return false;
    digits.insert(0, label.bytes - digits.size(), ' ');
    labels_.changes.push_back(
        {static_cast<std::uint32_t>(l), at_end, name_of(found->first), digits});
    changes.push_back({lines_[l].begin + at, label.bytes, std::move(digits)});
    return true;
  }

  std::string& text_;
  std::vector<TextLine> lines_;
  std::vector<Key> order_;  // as they first stand
  std::map<Key, std::uint32_t> numbers_;
  PrefixedLabels labels_;
};

// "A1a" for "8a"; others stay.  The place begins where the letter does.
void restore_prefix(std::map<std::uint32_t, std::string> const& printed, std::string& label,
                    Place& place) {
  std::uint32_t number = 0;
  auto const [end, error] = std::from_chars(label.data(), label.data() + label.size(), number);
  auto const found = error == std::errc{} ? printed.find(number) : printed.end();
  if (found == printed.end()) return;
  auto const digits = static_cast<std::size_t>(end - label.data());
  auto const blanks = found->second.size() - digits;
  label.replace(0, digits, found->second);
  if (place.begin < blanks || place.column <= blanks) return;
  place.begin -= blanks;
  place.column -= static_cast<std::uint32_t>(blanks);
}

}  // namespace

std::optional<PrefixedLabels> number_prefixed_labels(std::string& text) {
  return Numberer{text}.number();
}

void restore_prefixed_labels(PrefixedLabels const& labels, std::string& text, Edition& edition,
                             std::string& layout_note) {
  for (std::string_view const before : {"leads marked ", " and "}) {
    auto const at = layout_note.find(before, layout_note.find("leads marked "));
    if (at == std::string::npos) continue;
    auto label = layout_note.substr(at + before.size());
    Place nowhere;
    restore_prefix(labels.printed, label, nowhere);
    layout_note.replace(at + before.size(), std::string::npos, label);
  }
  for (auto& couplet : edition.couplets) {
    restore_prefix(labels.printed, couplet.label, couplet.place);
    for (auto& back : couplet.back_references) {
      restore_prefix(labels.printed, back.label, back.place);
    }
    for (auto& lead : couplet.leads) {
      restore_prefix(labels.printed, lead.label, lead.place);
      auto& end = lead.destination_printed;
      if (only_figures(end)) {
        restore_prefix(labels.printed, end, lead.destination_place);
      }
    }
  }
  // By line: places behind are not moved.
  std::size_t line = 0;
  std::size_t begin = 0;
  std::size_t from = 0;
  for (auto const& change : labels.changes) {
    for (; line < change.line; ++line, from = begin) {
      auto const feed = text.find('\n', begin);
      if (feed == std::string::npos) return;
      begin = feed + 1;
    }
    from = std::max(from, begin);
    auto const end = std::min(text.find('\n', begin), text.size());
    auto const at = change.at_end ? text.rfind(change.put, end - std::min(end, change.put.size()))
                                  : text.find(change.put, from);
    if (at == std::string::npos || at < begin || at + change.put.size() > end) continue;
    text.replace(at, change.put.size(), change.printed);
    from = at + change.put.size();
  }
}

}  // namespace keydrift::printed
