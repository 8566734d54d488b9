#include "keydrift/formats/marked_common_names.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::marked {
namespace {

using namespace printed;
using namespace std::string_view_literals;
using xml::FlowText;
using xml::InlineKind;
using xml::InlineMark;

constexpr std::size_t kLongestInBrackets = 24;  // bytes behind the name: "complex", "and others"
constexpr std::size_t kLongestNote = 48;        // and behind "; ", as "dissection needed"
constexpr std::size_t kMostNames = 2;
constexpr std::size_t kLongestBehind = 30;  // behind the brackets: "Prohibited"
constexpr std::size_t kMostWordsBehind = 3;
constexpr std::size_t kMostWordsBehindDash = 5;  // "– report this species"
constexpr std::size_t kMostWordsOfName = 4;      // of a common one that nothing sets apart
constexpr std::size_t kLongestName = 80;         // of a common one

// "Prohibited", "[in part]", "– report this species"; no words that the lead goes on with.
bool may_stand_behind(std::string_view after) {
  after = trim(after);
  if (after.empty() || after == ".") return true;
  auto const first = code_point_at(after, 0).value;
  bool const dash = is_dash(first) && first != '-';
  auto const most = dash ? kMostWordsBehindDash : kMostWordsBehind;
  if (after.size() > kLongestBehind || words_of(after).size() > most) return false;
  return dash || is_upper(first) || first == '(' || first == '[';
}

// Do the words in front end as a sentence or a part of one does?
bool closes_words(std::string_view before) {
  before = trim_right(before);
  if (before.empty()) return false;
  auto const last = code_point_before(before, before.size()).value;
  return last == '.' || last == ';' || last == ',' || last == ':' || last == ')' || last == '?' ||
         last == '!' || is_dash(last) || last == 0x2192 || last == 0x203A;
}

// Does all that follows name one taxon of that genus, or two?  A common name in the form of a Latin
// one would be taken for it.
bool names_alone(std::string_view text, std::string_view genus) {
  auto const read = read_taxa(squeeze(text));
  return !read.taxa.empty() && read.taxa.size() <= kMostNames &&
         std::all_of(read.taxa.begin(), read.taxa.end(),
                     [&](TaxonReading const& taxon) { return taxon.name.starts_with(genus); });
}

// The first mark that holds all from its begin to the bracket at `open` or beyond.  A link of the
// whole name is an end whatever stands in front; other marks stress words as well.
std::size_t begin_of_common_name(FlowText const& line, std::size_t open, std::size_t close,
                                 std::size_t label_end) {
  std::string_view const text = line.text;
  auto const end = trim_right(text.substr(0, open)).size();
  auto begin = kNotTold;
  for (auto const& mark : line.marks) {
    bool const sets = mark.kind == InlineKind::pointer || mark.kind == InlineKind::emphasis;
    if (!sets || mark.begin <= label_end || mark.begin >= end || mark.end < end) continue;
    auto const name = text.substr(mark.begin, end - mark.begin);
    if (name.size() > kLongestName || name.find(". ") != name.npos) continue;
    bool const whole = mark.kind == InlineKind::pointer && mark.end > close;
    bool const capital = is_upper(code_point_at(text, skip_blanks(text, mark.begin)).value);
    if (whole || (capital && closes_words(text.substr(label_end, mark.begin - label_end)))) {
      begin = std::min(begin, mark.begin);
    }
  }
  return begin;
}

// "Legs red (" is a character: common names end in nouns.
constexpr std::array kAdjectives{
    "red"sv,    "black"sv,   "white"sv,    "yellow"sv,    "brown"sv,    "green"sv,    "blue"sv,
    "grey"sv,   "gray"sv,    "orange"sv,   "dark"sv,      "pale"sv,     "clear"sv,    "spotted"sv,
    "long"sv,   "short"sv,   "large"sv,    "small"sv,     "broad"sv,    "wide"sv,     "narrow"sv,
    "thick"sv,  "thin"sv,    "slender"sv,  "smooth"sv,    "rough"sv,    "hairy"sv,    "bare"sv,
    "absent"sv, "present"sv, "entire"sv,   "rounded"sv,   "pointed"sv,  "straight"sv, "curved"sv,
    "simple"sv, "forked"sv,  "glabrous"sv, "pubescent"sv, "opposite"sv, "alternate"sv};

// "Tail with a keel. Red crayfish (": the last sentence before the bracket is a few words that
// begin with a capital.  kNotTold elsewhere.
std::size_t begin_of_last_sentence(std::string_view text, std::size_t open, std::size_t label_end) {
  auto const before = trim_right(text.substr(0, open));
  auto const stop = before.rfind(". ");
  if (stop == before.npos || stop < label_end) return kNotTold;
  auto const begin = skip_blanks(before, stop + 1);
  auto const name = before.substr(begin);
  auto const words = words_of(name);
  bool const plain = !words.empty() && words.size() <= kMostWordsOfName &&
                     name.size() <= kLongestName && is_upper(code_point_at(name, 0).value) &&
                     name.find_first_of(",;:()0123456789") == name.npos &&
                     !is_one_of(kAdjectives, words.back());
  return plain ? begin : kNotTold;
}

// The end of the last name that is set like `first` between it and `close`.
std::size_t last_italic_before(FlowText const& line, std::size_t close, InlineMark const& first) {
  auto end = first.end;
  for (auto const& mark : line.marks) {
    if (mark.kind == first.kind && mark.begin >= first.end && mark.end <= close) {
      end = std::max(end, mark.end);
    }
  }
  return end;
}

std::size_t bracketed_name(FlowText const& line, std::size_t label_end) {
  std::string_view const text = line.text;
  for (auto mark = line.marks.rbegin(); mark != line.marks.rend(); ++mark) {
    if (mark->kind != InlineKind::italic && mark->kind != InlineKind::name) continue;
    auto const before = trim_right(text.substr(0, mark->begin));
    if (!before.ends_with('(')) continue;
    auto const close = text.find(')', mark->end);
    auto const inside = squeeze(text.substr(mark->begin, mark->end - mark->begin));
    // "(Aus bus or Aus cus; males alone)"
    auto const last = last_italic_before(line, close, *mark);
    bool const remark = text.substr(last, 1) == ";";
    if (close == text.npos || close - last > (remark ? kLongestNote : kLongestInBrackets) ||
        !starts_with_upper(inside) || !may_stand_behind(text.substr(close + 1))) {
      return kNotTold;
    }
    auto begin = begin_of_common_name(line, before.size() - 1, close, label_end);
    if (begin == kNotTold) begin = begin_of_last_sentence(text, before.size() - 1, label_end);
    bool const named =
        begin != kNotTold && names_alone(text.substr(begin), words_of(inside).front());
    return named ? begin : kNotTold;
  }
  return kNotTold;
}

std::size_t link_to_key(FlowText const& line, std::size_t label_end) {
  std::string_view const text = line.text;
  for (auto mark = line.marks.rbegin(); mark != line.marks.rend(); ++mark) {
    if (mark->kind != InlineKind::pointer || mark->begin <= label_end) continue;
    if (!may_stand_behind(text.substr(mark->end))) return kNotTold;
    bool const key = !pointed_key(text.substr(mark->begin, mark->end - mark->begin)).empty();
    return key && closes_words(text.substr(0, mark->begin)) ? mark->begin : kNotTold;
  }
  return kNotTold;
}

}  // namespace

std::size_t with_common_name(FlowText const& line, std::size_t begin) {
  std::string_view const text = line.text;
  auto const before = trim_right(text.substr(0, begin));
  if (!before.ends_with(',')) return begin;
  auto const shown = before.size() - std::min(before.size(), kLongestName);
  for (auto at = before.size(); at > shown;) {
    auto const sign = code_point_before(before, at);
    at -= std::max<std::size_t>(sign.length, 1);
    if (sign.value == ';' || sign.value == '.') return begin;
    if (!is_dash(sign.value) || sign.value == '-') continue;
    auto const name = skip_blanks(text, at + sign.length);
    bool const apart =
        at > 0 && name > at + sign.length && is_blank(code_point_before(text, at).value);
    if (!apart) continue;
    auto const genus = words_of(text.substr(begin)).front();
    bool const common = is_upper(code_point_at(text, name).value) && is_capitalised(genus) &&
                        names_alone(text.substr(name), genus);
    return common ? name : begin;
  }
  return begin;
}

std::size_t common_name_or_key(FlowText const& line) {
  auto const label = read_label(line.text);
  auto const label_end = label ? label->text_at : 0;
  auto const name = bracketed_name(line, label_end);
  return name == kNotTold ? link_to_key(line, label_end) : name;
}

}  // namespace keydrift::marked
