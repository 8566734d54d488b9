#include "keydrift/formats/printed_run_on.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_run_on_labels.hpp"
#include "keydrift/formats/printed_run_on_serial.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestLeadIn = 200;      // bytes between leaders and the next label
constexpr std::size_t kLongestRunOnTitle = 400;  // bytes of a title that a lead follows
constexpr std::size_t kLongestRunOnName = 60;    // bytes of "11. A. bus"
constexpr std::size_t kShortestTitle = 4;        // no shorter one is a title
constexpr std::size_t kLongestPlainTitle = 60;   // of one that says nothing of a key
constexpr std::size_t kLongestFirstLead = 600;   // bytes up to its leaders

bool may_be_leader(char c) { return c == '.' || static_cast<unsigned char>(c) >= 0x80; }

class RunOnParter {
 public:
  // Cuts in the line's text: where the second and further leads begin.  `above` and `below` are the
  // lines around it, empty at the text's ends.
  std::vector<std::size_t> cuts(std::string_view text, std::string_view above,
                                std::string_view below) {
    std::vector<std::size_t> found;
    titled_ = false;
    if (auto const title = above.empty() ? title_end(text, below) : std::nullopt) {
      found.push_back(*title);
      titled_ = true;
      number_ = 1;
    }
    note_label(text.substr(found.empty() ? 0 : found.back()));
    auto leaders = next_leaders(text, found.empty() ? 0 : found.back());
    while (leaders) {
      auto const next = next_leaders(text, leaders->second);
      auto const end = next ? next->first : text.size();
      auto const cut = cut_between(text, leaders->second, end);
      // The last lead of the line may go on below; then its label has to be beyond doubt.
      if (cut && (next || is_certain(text.substr(*cut)))) {
        found.push_back(*cut);
        note_label(text.substr(*cut));
        parted_ = true;
      }
      leaders = next;
    }
    auto cuts = by_labels(text, std::move(found));
    if (!cuts.empty()) return cuts;
    cuts = count_cuts(text, counted_);
    titled_ = !cuts.empty() && cuts.front() > 0;
    if (!cuts.empty() && cuts.front() == 0) cuts.erase(cuts.begin());
    return cuts;
  }

  // The first cut parts a title from the first lead.
  [[nodiscard]] bool titled() const { return titled_; }

 private:
  using Range = std::pair<std::size_t, std::size_t>;

  // The cuts that labels tell, where they are more than those behind leaders: leads with couplets
  // beneath them print none.
  [[nodiscard]] std::vector<std::size_t> by_labels(std::string_view text,
                                                   std::vector<std::size_t> found) const {
    auto const begin = titled_ ? found.front() : 0;
    auto cuts = label_cuts(text.substr(begin));
    for (auto& cut : cuts) cut += begin;
    if (titled_) cuts.insert(cuts.begin(), begin);
    bool const more = cuts.size() > found.size() &&
                      std::includes(cuts.begin(), cuts.end(), found.begin(), found.end());
    return more || cuts.size() > found.size() + 2 ? cuts : found;
  }

  [[nodiscard]] bool is_certain(std::string_view text) const {
    auto const label = read_label(text);
    if (!label) return false;
    return label->is_dash() ? parted_ : label->style() % 16 != 0;
  }

  // "Key to the species. 1. Wings clear … 2": where the first lead begins on its title's line.  The
  // title has to speak of a key, or a second lead has to stand below.
  [[nodiscard]] static std::optional<std::size_t> title_end(std::string_view text,
                                                            std::string_view next_line) {
    if (read_label(text) || starts_caption(text) || starts_note(text)) return std::nullopt;
    auto const limit = std::min(text.size(), kLongestRunOnTitle);
    for (auto at = text.find('1'); at < limit; at = text.find('1', at + 1)) {
      if (at < 3 || text[at - 1] != ' ') continue;
      auto const title = trim_right(text.substr(0, at));
      char const end = title.back();
      if (end != '.' && end != ':') continue;
      if (title.size() <= kShortestTitle) continue;  // "No. 1"
      auto const label = read_label(text.substr(at));
      if (!label || label->number != 1 || label->decimal || label->is_dash()) continue;
      if (!is_upper(code_point_at(text, at + label->text_at).value)) continue;
      auto const leaders = next_leaders(text, at + label->text_at);
      if (!leaders || leaders->first > at + kLongestFirstLead) continue;
      auto const answer = read_label(next_line);
      bool const answered = answer && (answer->is_dash() || answer->number == 1);
      if (label->end == LabelEnd::none && !answered) continue;
      if (!mentions_key(title) && !(answered && title.size() <= kLongestPlainTitle)) continue;
      return at;
    }
    return std::nullopt;
  }

  void note_label(std::string_view text) {
    auto const label = read_label(text);
    if (!label) return;
    if (label->is_dash()) dashes_ = true;
    if (label->family == LabelFamily::digits) number_ = label->number;
  }

  // The next row of dots, an ellipsis or an arrow at or after `from`.
  static std::optional<Range> next_leaders(std::string_view text, std::size_t from) {
    for (std::size_t at = from; at < text.size();) {
      // Most of a line is plain words.
      at = static_cast<std::size_t>(std::find_if(text.begin() + at, text.end(), may_be_leader) -
                                    text.begin());
      if (at == text.size()) break;
      auto const c = code_point_at(text, at);
      bool const arrow = c.value == 0x2192;
      if (c.value == '.' || c.value == 0x2026 || c.value == 0x2219 || arrow) {
        std::size_t end = at;
        std::size_t weight = 0;
        for (auto d = c; d.length > 0; d = code_point_at(text, end)) {
          bool const dot = d.value == '.' || d.value == 0x2219;
          if (!dot && d.value != 0x2026 && d.value != 0x2192 && !is_blank(d.value)) break;
          weight += dot ? 1 : is_blank(d.value) ? 0 : 3;
          end += d.length;
        }
        if (weight >= 3) return Range{at, end};
        at = std::max(end, at + c.length);
      } else {
        at += c.length;
      }
    }
    return std::nullopt;
  }

  // The label between a destination and the next leaders that begins a further lead.
  [[nodiscard]] std::optional<std::size_t> cut_between(std::string_view text, std::size_t begin,
                                                       std::size_t end) const {
    if (auto const fused = fused_cut(text, begin)) return fused;
    auto const limit = std::min(end, begin + kLongestLeadIn);
    std::size_t at = begin;
    std::string_view before;
    while (at < limit) {
      auto word_end = at;
      while (word_end < limit && !is_blank(code_point_at(text, word_end).value)) {
        word_end += code_point_at(text, word_end).length;
      }
      // A destination has to stand before it; within quotation marks stands a name.
      auto const passed = text.substr(begin, at - begin);
      auto const quotes = std::count(passed.begin(), passed.end(), '"');
      bool const apart = quotes % 2 == 0 && !is_bracket_open(passed);
      if (at > begin && apart) {
        if (begins_lead(text.substr(at), before)) return at;
      }
      if (apart) {
        if (auto const glued = glued_label(text, at, word_end)) return glued;
      }
      before = text.substr(at, word_end - at);
      at = skip_blanks(text, word_end);
    }
    return std::nullopt;
  }

  // "Aus bus (see also 5. Aus cus)": within brackets no lead begins.
  [[nodiscard]] static bool is_bracket_open(std::string_view passed) {
    auto const open = passed.rfind('(');
    return open != std::string_view::npos && passed.find(')', open) == std::string_view::npos;
  }

  [[nodiscard]] bool begins_lead(std::string_view text, std::string_view before) const {
    auto const label = read_label(text);
    if (!label || label->decimal || label->text_at >= text.size()) return false;
    auto const words = text.substr(label->text_at);
    bool const upper = is_upper(code_point_at(words, 0).value);
    if (label->is_dash()) return upper && number_ > 0;
    if (label->family != LabelFamily::digits) return false;
    bool const carries_on = label->number == number_ + 1 || label->number == number_;
    bool const page = before == "p." || before == "Fig." || before == "fig." || before == "Figs." ||
                      before == "pl." || before == "Pl." || before == "S.";
    return carries_on && upper && !page;
  }

  // "bus- Wing", "fus3. Wing": a label set to the end of the destination's last word.
  [[nodiscard]] std::optional<std::size_t> glued_label(std::string_view text, std::size_t begin,
                                                       std::size_t end) const {
    auto const word = text.substr(begin, end - begin);
    auto const dash = code_point_before(text, end);
    if (word.size() > dash.length && is_dash(dash.value)) {
      auto const at = end - dash.length;
      auto const before = code_point_before(text, at).value;
      bool const closes = is_lower(before) || is_digit(before) || before == ')' || before == '.';
      bool const upper = is_upper(code_point_at(text, skip_blanks(text, end)).value);
      if (closes && upper && dashes_ && number_ > 0) return at;
      return std::nullopt;
    }
    // Digits with their end behind letters.
    std::size_t at = begin;
    while (at < end && (text[at] < '0' || text[at] > '9')) at += code_point_at(text, at).length;
    if (at == begin || at >= end || !is_lower(code_point_before(text, at).value)) {
      return std::nullopt;
    }
    auto const label = read_label(text.substr(at));
    bool const closed =
        label && (label->end == LabelEnd::dot || label->end == LabelEnd::parenthesis);
    if (!closed || !begins_lead(text.substr(at), {})) return std::nullopt;
    return at;
  }

  // "......22. Head" after couplet 1: destination 2 and couplet 2 set without a blank.
  [[nodiscard]] std::optional<std::size_t> fused_cut(std::string_view text,
                                                     std::size_t begin) const {
    std::size_t end = begin;
    while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
    auto const next = std::to_string(number_ + 1);
    auto const digits = text.substr(begin, end - begin);
    if (digits.size() <= next.size() || !digits.ends_with(next)) return std::nullopt;
    auto const at = end - next.size();
    // Leads lead on: "...... 24. Aus" after couplet 3 is the 24th genus.
    auto const number = read_reference(digits.substr(0, digits.size() - next.size()));
    if (!number || number->number <= number_) return std::nullopt;
    auto const name = start_of(text.substr(begin), kLongestRunOnName);
    if (is_numbered_name(name) || is_numbered_genus_alone(name)) return std::nullopt;
    bool const closed = end < text.size() && (text[end] == '.' || text[end] == ')');
    return closed && begins_lead(text.substr(at), {}) ? std::optional{at} : std::nullopt;
  }

  std::uint32_t number_{};   // of the couplet read last
  std::uint32_t counted_{};  // that of the last one of a paragraph cut by counting
  bool parted_{false};       // the file has leads that run on
  bool titled_{false};
  bool dashes_{false};  // leads are marked by dashes
};

}  // namespace

std::vector<SourceLine> part_run_on_lines(std::vector<SourceLine> lines) {
  RunOnParter parter;
  std::vector<SourceLine> parted;
  bool any = false;
  auto const rivals = rival_cuts(lines);
  auto const serial = serial_cuts(lines);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    auto const& line = lines[i];
    bool const marked = line.markup.role != LineRole::told_by_text;
    auto const above = i > 0 ? lines[i - 1].text : std::string_view{};
    auto const below = i + 1 < lines.size() ? lines[i + 1].text : std::string_view{};
    bool const in_series = !serial.lines.empty() && !serial.lines[i].empty();
    auto cuts = in_series ? serial.lines[i]
                : marked  ? std::vector<std::size_t>{}
                          : parter.cuts(line.text, above, below);
    bool const titled = in_series ? serial.titled[i] : !marked && parter.titled();
    bool const rival = cuts.empty() && !marked && !rivals.empty() && rivals[i] > 0;
    if (rival) cuts.push_back(rivals[i]);
    if (!cuts.empty() && !any) {
      any = true;
      parted.assign(lines.begin(), lines.begin() + static_cast<std::ptrdiff_t>(i));
    }
    if (!any) continue;
    std::size_t begin = 0;
    for (std::size_t c = 0; c <= cuts.size(); ++c) {
      auto const end = c < cuts.size() ? cuts[c] : line.text.size();
      auto piece = part_of_line(line, begin, end);
      piece.is_title = c == 0 && titled;
      parted.push_back(piece);
      begin = end;
    }
  }
  return any ? parted : lines;
}

}  // namespace keydrift::printed
