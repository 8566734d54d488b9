#include "keydrift/formats/printed_whole_couplets.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_paragraph_couplets.hpp"
#include "keydrift/formats/printed_run_on_labels.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kFewestWholeCouplets = 2;    // couplets of a key
constexpr std::size_t kMostLinesOfParagraph = 30;  // of a paragraph
constexpr std::size_t kShortestLead = 6;           // bytes
constexpr std::size_t kLongestLookedAt = 160;      // bytes that are looked at before a cut

// Where "Bruvella Roe" begins in "…: Bruvella Roe", "…, Bruvella Roe": behind the last sign stands
// what may be a name, or a key's.
std::optional<std::size_t> name_behind_sign(std::string_view text) {
  static constexpr std::array kSigns{": "sv, ", "sv};
  static Numbering const none;
  for (auto const sign : kSigns) {
    auto const at = text.rfind(sign);
    if (at == std::string_view::npos) continue;
    auto const tail = text.substr(at + sign.size());
    bool const name = sign.front() == ':' || is_latin_genus(without_end(words_of(tail).front()));
    if (starts_with_upper(tail) && name && plausible_destination(tail, none)) {
      return at + sign.size();
    }
  }
  return std::nullopt;
}

// Where the word behind the one at `at` begins; the text's size without.
std::size_t next_word(std::string_view text, std::size_t at) {
  while (at < text.size() && !is_blank(code_point_at(text, at).value)) {
    at += code_point_at(text, at).length;
  }
  return skip_blanks(text, at);
}

// "M. rubra"
bool begins_with_short_name(std::string_view text) {
  auto const second = next_word(text, 0);
  return second == 3 && text[1] == '.' && is_lower(code_point_at(text, second).value);
}

// "M. rubra", "Melorina rubra".
bool begins_with_name(std::string_view text) {
  auto const second = next_word(text, 0);
  auto const end = next_word(text, second);
  // "Tibiae black" has the form of one, too.
  auto const two = without_end(trim_right(text.substr(0, end)));
  return begins_with_short_name(text) || (is_latin_name(two) && has_strict_latin_ending(two));
}

// The word without an em dash and what stands before it, "(Fig. 3)—Morvella".
std::string_view behind_em_dash(std::string_view word) {
  constexpr auto kEmDash = "\u2014"sv;
  auto const dash = word.rfind(kEmDash);
  return dash == std::string_view::npos ? word : word.substr(dash + kEmDash.size());
}

// Before the label of a rival: "… long (2)", "… long—2.", "… red (Morvella rubra)", "… (Fig. 3).
// Morvella minor.", which may be words elsewhere.
struct EndBeforeRival {
  std::uint32_t couplet{};
  bool name{false};
};
EndBeforeRival end_before_rival(std::string_view text) {
  constexpr std::size_t kMostDigits = 4;
  auto const closed = [](char c) { return ".;,:)]"sv.find(c) != std::string_view::npos; };
  while (!text.empty() && (closed(text.back()) || text.back() == ' ')) text.remove_suffix(1);
  auto const begin = last_word_begin(text);
  auto const last = behind_em_dash(text.substr(begin));
  auto const digits = last.find_first_not_of("0123456789"sv) == std::string_view::npos;
  if (digits && !last.empty() && last.size() <= kMostDigits) return {number_of(last), false};
  auto const before = trim_right(text.substr(0, begin));
  if (before.size() == text.size() || !is_epithet(last)) return {};
  auto genus = behind_em_dash(before.substr(last_word_begin(before)));
  if (genus.starts_with('(') || genus.starts_with('[')) genus.remove_prefix(1);
  return {0, is_abbreviated(genus) || is_latin_genus(genus)};
}

// "… long ........ 2", "… long (2)"
bool leads_to_number(std::string_view text) {
  bool const bracket = text.ends_with(')');
  if (bracket) text.remove_suffix(1);
  auto const words = text.substr(0, text.find_last_not_of("0123456789"sv) + 1);
  if (words.size() == text.size()) return false;
  return bracket ? words.ends_with('(') : trim_right(words).ends_with("..");
}

// A byte of a line's text.
struct Spot {
  std::size_t line{};
  std::size_t at{};
};

// A couplet's paragraph, its lines joined by blanks.
struct CoupletParagraph {
  std::size_t first{};   // line
  std::size_t offset{};  // byte of that line where it begins
  Label label;
  std::string text;
  std::vector<std::size_t> begins;      // of its lines in the text
  std::vector<std::size_t> cuts;        // where further leads begin in the text
  std::vector<std::size_t> names;       // that only the sign before them sets apart, likewise
  std::vector<std::uint32_t> leads_to;  // numbers of couplets at the leads' ends
  bool ends_well{false};                // the last lead leads somewhere
  bool labelled{true};                  // all further leads bear labels

  [[nodiscard]] Spot spot(std::size_t at) const {
    auto const behind = std::upper_bound(begins.begin(), begins.end(), at);
    auto const line = static_cast<std::size_t>(behind - begins.begin()) - 1;
    return {first + line, at - begins[line] + (line == 0 ? offset : 0)};
  }
};

// Where a lead begins.
struct CoupletBegin {
  Spot spot;
  std::optional<Label> told;  // of its couplet, where no other reader tells it
};

// What a lead prints up to where the next one begins, without the signs that part them.
std::string_view without_separators(std::string_view text) {
  text = trim_right(text);
  while (!text.empty() && (text.back() == ';' || text.back() == ',')) {
    text = trim_right(text.substr(0, text.size() - 1));
  }
  return text;
}

class WholeCouplets {
 public:
  explicit WholeCouplets(std::vector<SourceLine> const& lines) : lines_{lines} {}

  std::optional<PartedCouplets> run() {
    for (std::size_t i = 0; i < lines_.size();) {
      auto key = key_at(i);
      auto next = key.empty() ? i + 1 : key.back().first + key.back().begins.size();
      if (auto within = key_within(i); within.size() > key.size() && hangs_together(within)) {
        key = std::move(within);
        next = looked_within_;
      } else if (key.empty() || !begin_within_lines(key) || !hangs_together(key)) {
        i = next;
        continue;
      }
      for (auto const& paragraph : key) take(paragraph);
      i = next;
    }
    if (begins_.empty()) return std::nullopt;
    return PartedCouplets{parted(), labelled_};
  }

 private:
  // Paragraphs that count on from 1, the first at line `i`, with no other labels between them.
  [[nodiscard]] std::vector<CoupletParagraph> key_at(std::size_t i) const {
    std::vector<CoupletParagraph> key;
    while (i < lines_.size()) {
      auto const label = label_of(i);
      if (!label) {
        if (key.empty() || !lines_[i].text.empty()) break;
        ++i;  // a blank line between paragraphs
        continue;
      }
      if (label->is_dash() || label->number != key.size() + 1) break;
      bool const first_of_two = label->letter.empty() || fold(label->letter) == "a";
      if (!first_of_two || label->marks > 0) break;
      CoupletParagraph paragraph;
      paragraph.first = i;
      paragraph.label = *label;
      do {
        bool const rival = label_of(i).has_value();
        if (!paragraph.begins.empty() && !rival && answers(i)) return {};
        if (!paragraph.text.empty()) paragraph.text += ' ';
        paragraph.begins.push_back(paragraph.text.size());
        paragraph.text += lines_[i].text;
        ++i;
      } while (i < lines_.size() && !lines_[i].text.empty() && goes_on(i, label->number) &&
               paragraph.begins.size() < kMostLinesOfParagraph);
      find_cuts(paragraph);
      key.push_back(std::move(paragraph));
    }
    return key.size() < kFewestWholeCouplets ? std::vector<CoupletParagraph>{} : key;
  }

  // Paragraphs that hold several couplets each, likewise.
  [[nodiscard]] std::vector<CoupletParagraph> key_within(std::size_t i) {
    if (i < looked_within_ || lines_[i].text.empty()) return {};
    auto const found = couplets_in_paragraphs(lines_, i);
    looked_within_ = found.end;
    std::vector<CoupletParagraph> key;
    for (std::size_t c = 0; c < found.couplets.size(); ++c) {
      auto const& place = found.couplets[c];
      CoupletParagraph paragraph;
      paragraph.first = place.line;
      paragraph.offset = place.at;
      paragraph.label = place.label;
      auto const last = c + 1 < found.couplets.size() ? found.couplets[c + 1] : end_at(found.end);
      for (auto line = place.line; line <= last.line && !lines_[line].text.empty(); ++line) {
        std::string_view text = lines_[line].text;
        if (line == last.line) text = text.substr(0, last.at);
        if (line == place.line) text.remove_prefix(place.at);
        if (text.empty()) break;
        if (!paragraph.text.empty()) paragraph.text += ' ';
        paragraph.begins.push_back(paragraph.text.size());
        paragraph.text += text;
      }
      find_cuts(paragraph);
      key.push_back(std::move(paragraph));
    }
    return key;
  }

  // Where line `end` begins, as the end of the one before it.
  [[nodiscard]] CoupletPlace end_at(std::size_t end) const {
    return {end - 1, lines_[end - 1].text.size(), {}};
  }

  // No label, or that of a rival that happens to begin a line: "– Wings dark", "2b. Wings dark"; or
  // the number that a lead ends in, alone or before its rival: "(2). – Wings dark".
  [[nodiscard]] bool goes_on(std::size_t i, std::uint32_t number) const {
    auto const label = label_of(i);
    if (!label || label->is_dash() || label->number == number) return true;
    // "… Aus bus Roe," / "1901 – Wings dark": a year begins no couplet.
    if (label->number > kMostCouplets) return true;
    auto const text = lines_[i].text;
    auto const front = trim_right(text.substr(0, label->text_at));
    bool const dash = is_dash(code_point_before(front, front.size()).value);
    return label->text_at >= text.size() || (dash && front.starts_with('('));
  }

  // "B. Wings dark" within a paragraph.
  [[nodiscard]] bool answers(std::size_t i) const {
    auto const label = read_label(lines_[i].text);
    auto const text = lines_[i].text;
    return label && label->text_at < text.size() && starts_with_upper(text.substr(label->text_at));
  }

  [[nodiscard]] std::optional<Label> label_of(std::size_t i) const {
    if (lines_[i].is_no_lead || lines_[i].markup.role != LineRole::told_by_text) return {};
    auto label = lines_[i].told ? lines_[i].told : read_label(lines_[i].text);
    // "Step 3. Are the legs red?"
    if (!label && behind_number_word(lines_[i].text) > 0) {
      auto const head = NumberReader{{NumberScript::digits, true}}.head(lines_[i].text);
      if (head && head->label.letter.empty()) label = head->label;
    }
    bool const counts = label && (label->is_dash() || label->family == LabelFamily::digits);
    return counts && !label->decimal ? label : std::nullopt;
  }

  // Rivals with labels, where there are any, and all others elsewhere.
  static void find_cuts(CoupletParagraph& paragraph) {
    seek_cuts(paragraph, true);
    if (paragraph.cuts.empty()) seek_cuts(paragraph, false);
  }

  static void seek_cuts(CoupletParagraph& paragraph, bool with_labels) {
    std::string_view const text = paragraph.text;
    auto begin = paragraph.label.text_at;
    paragraph.leads_to.clear();
    paragraph.names.clear();
    for (auto at = next_word(text, begin); at < text.size(); at = next_word(text, at)) {
      if (with_labels && !answer(paragraph, at)) continue;
      auto end = at < begin + kShortestLead ? std::nullopt : end_before(paragraph, begin, at);
      if (!end) continue;
      // "Aus bus R. Br. Wings dark": the words behind a name may be its author's.
      for (auto next = next_word(text, at); !end->couplet && next < text.size();) {
        if (own_label(text, at)) break;
        if (is_digit(static_cast<unsigned char>(text[next]))) break;
        auto const further = end_before(paragraph, begin, next);
        if (!further || further->couplet) break;
        end = further;
        at = next;
        next = next_word(text, at);
      }
      note(paragraph, *end);
      paragraph.cuts.push_back(at);
      paragraph.labelled = paragraph.labelled && own_label(text, at).has_value();
      begin = at;
    }
    bool const labelled = !paragraph.cuts.empty() && own_label(text, begin).has_value();
    auto const end = end_of(paragraph, begin, text.size(), labelled);
    if (end) note(paragraph, *end);
    paragraph.ends_well = end.has_value();
  }

  // A rival's label: a dash, the couplet's number again, or a letter behind its own.  "Illustration
  // (2) Lower taxa" answers no "2 (1) Foot pale", nor does "Eyes 4" answer a 2.
  [[nodiscard]] static std::optional<Label> answer(CoupletParagraph const& paragraph,
                                                   std::size_t at) {
    auto label = own_label(paragraph.text, at);
    if (!label || label->is_dash() || label->family != LabelFamily::digits) return label;
    bool const bracket = label->end == LabelEnd::enclosed;
    bool const like =
        (bracket ? paragraph.text.starts_with('(') : label->end == paragraph.label.end) ||
        label->marks > 0 || !label->letter.empty();
    return label->number == paragraph.label.number && like ? label : std::nullopt;
  }

  // "– Wings dark", "1' Wings dark", "b. Wings dark" at byte `at`.
  [[nodiscard]] static std::optional<Label> own_label(std::string_view text, std::size_t at) {
    constexpr std::uint32_t kMostLetters = 8;  // leads of a couplet that bear letters
    constexpr std::size_t kLongest = 40;       // bytes
    auto const behind = text.substr(at);
    auto label = read_label(behind.substr(0, kLongest));
    if (!label || label->decimal) return std::nullopt;
    // "Leaves alternate — M. rubra": the dash leads to it.
    auto const words = std::min(label->text_at, behind.size());
    bool const dash = is_dash(code_point_at(behind, 0).value);
    auto const name = behind.substr(words);
    auto const before = trim_right(text.substr(0, at));
    // "(Ausella busa). – Elytra setosa": the lead has its name already.
    bool const ended =
        leads_to_number(before) || (before.ends_with(").") && end_before_rival(before).name);
    bool const named = dash && (begins_with_short_name(name) || (begins_with_name(name) && !ended));
    if (named) return std::nullopt;
    bool const letter = label->family == LabelFamily::lower || label->family == LabelFamily::upper;
    if (letter && (label->number > kMostLetters || label->end == LabelEnd::none)) {
      return std::nullopt;
    }
    return label;
  }

  // What a lead ends in: a couplet, or a name.
  struct End {
    std::optional<std::uint32_t> couplet;
    std::optional<std::size_t> name;  // behind a sign: byte of the paragraph's text
    bool behind_colon{false};         // which tells as much to those who read the lead
  };

  // The end of the lead at `begin`, if the next one may begin at byte `at`.
  [[nodiscard]] static std::optional<End> end_before(CoupletParagraph const& paragraph,
                                                     std::size_t begin, std::size_t at) {
    std::string_view const text = paragraph.text;
    auto const own = answer(paragraph, at);
    auto const words = own ? at + own->text_at : at;
    auto const before = trim_right(text.substr(0, at));
    bool const upper = is_upper(code_point_at(text, words).value);
    bool const apart = before.back() == ';';
    if (!apart && !upper) return std::nullopt;
    // "R. azurea (Pal) Tor": names go on with capitals, unless a full stop or leaders stand there.
    bool const closed = apart || before.back() == '.' || words > at ||
                        tail_of(before, begin).find("..") != std::string_view::npos;
    bool const number = is_digit(static_cast<unsigned char>(before.back())) ||
                        before.back() == ')' || before.back() == ']';
    if (!closed && !number) return std::nullopt;
    if (!own && begins_with_short_name(text.substr(at))) return std::nullopt;
    auto const end = end_of(paragraph, begin, before.size(), own.has_value());
    if (!end || end->couplet || (end->name && !upper)) return end;
    // "Ovary superior; style single" is no name.
    return upper && closed ? end : std::nullopt;
  }

  // What is looked at of a lead that begins at `begin` for its end.
  [[nodiscard]] static std::string_view tail_of(std::string_view text, std::size_t begin) {
    return text.substr(std::max(begin, text.size() - std::min(text.size(), kLongestLookedAt)));
  }

  // What the lead at [begin, end) ends in; `labelled`: its rival bears a label.
  [[nodiscard]] static std::optional<End> end_of(CoupletParagraph const& paragraph,
                                                 std::size_t begin, std::size_t end,
                                                 bool labelled) {
    // "– Elytra bare (3)": a dash does not lead to its words.
    auto const own =
        begin > paragraph.label.text_at ? own_label(paragraph.text, begin) : std::nullopt;
    if (own) begin = std::min(begin + own->text_at, end);
    auto const lead =
        without_separators(std::string_view{paragraph.text}.substr(begin, end - begin));
    auto const from = lead.size() - std::min(lead.size(), kLongestLookedAt);
    auto const tail = lead.substr(from);
    auto const reference = trailing_reference(tail);
    if (reference && reference->reference.number <= kMostCouplets) {
      // "… with 3. Wings dark": couplets stand behind those that lead to them.
      if (reference->reference.number <= paragraph.label.number) return std::nullopt;
      return End{reference->reference.number, {}, false};
    }
    auto const name = name_behind_sign(tail);
    if (name) return End{{}, begin + from + *name, tail[*name - 2] == ':'};
    if (leads_somewhere(tail)) return End{};
    if (!labelled) return std::nullopt;
    auto const before = end_before_rival(tail);
    if (before.couplet > paragraph.label.number) return End{before.couplet, {}, false};
    return before.name ? std::optional{End{}} : std::nullopt;
  }

  static void note(CoupletParagraph& paragraph, End const& end) {
    if (end.couplet) paragraph.leads_to.push_back(*end.couplet);
    if (end.name && !end.behind_colon) paragraph.names.push_back(*end.name);
  }

  // Leads hardly ever begin where lines do.
  [[nodiscard]] bool begin_within_lines(std::vector<CoupletParagraph> const& key) const {
    std::size_t at_begins = 0;
    bool labelled = true;
    for (auto const& paragraph : key) {
      labelled = labelled && paragraph.labelled;
      bool at_begin = false;
      for (std::size_t l = 1; l < paragraph.begins.size(); ++l) {
        // A line that was parted before had its leads within.
        auto const line = paragraph.first + l;
        at_begin =
            at_begin || (lines_[line].number != lines_[line - 1].number &&
                         end_before(paragraph, paragraph.label.text_at, paragraph.begins[l]));
      }
      if (at_begin) ++at_begins;
    }
    return at_begins * (labelled ? 2 : 3) <= key.size();
  }

  [[nodiscard]] static bool hangs_together(std::vector<CoupletParagraph> const& key) {
    std::vector<std::uint32_t> led(key.size() + 1);  // how often, by the couplet's number
    std::size_t cut = 0;
    std::size_t well = 0;
    for (auto const& paragraph : key) {
      if (!paragraph.cuts.empty()) ++cut;
      if (paragraph.ends_well) ++well;
      for (auto const number : paragraph.leads_to) {
        if (number < led.size()) ++led[number];
      }
    }
    auto const once = static_cast<std::size_t>(std::count(led.begin() + 2, led.end(), 1U));
    auto const nearly_all = [](std::size_t count, std::size_t of) { return count * 5 >= of * 4; };
    return nearly_all(cut, key.size()) && nearly_all(well, key.size()) &&
           nearly_all(once, key.size() - 1);
  }

  // What `own` prints, which borrows the paragraph from byte `cut` on, as part of the line's text.
  [[nodiscard]] static std::string_view label_printed_in(std::string_view text,
                                                         std::string_view paragraph,
                                                         std::size_t cut, Label const& own) {
    auto const from = static_cast<std::size_t>(own.printed.data() - paragraph.data()) - cut;
    return text.substr(std::min(from, text.size()), own.printed.size());
  }

  // Where its leads begin and end; the first one only where no other reader tells its label.
  void take(CoupletParagraph const& paragraph) {
    labelled_ = labelled_ && paragraph.labelled;
    auto label = paragraph.label;
    if (!read_label(paragraph.text)) {
      begins_.push_back({paragraph.spot(0), label});
    } else if (paragraph.offset > 0) {
      // Its words may stand on the next line.
      bool const alone = label.text_at == lines_[paragraph.first].text.size() - paragraph.offset;
      begins_.push_back({paragraph.spot(0), alone ? std::optional{label} : std::nullopt});
    }
    label.text_at = 0;
    label.printed = {};  // further leads print none
    for (auto const cut : paragraph.cuts) {
      auto const spot = paragraph.spot(cut);
      auto const text = lines_[spot.line].text.substr(spot.at);
      std::optional told = label;
      if (auto const own = own_label(paragraph.text, cut)) {
        // "b. Wings dark" is told by the couplet; others speak for themselves.
        bool const letter = own->family == LabelFamily::lower || own->family == LabelFamily::upper;
        bool const answers = own->is_dash() || own->number == label.number;
        auto const alone = label_alone(text);
        if (own->text_at >= text.size()) {  // its words stand on the next line
          if (alone && alone->is_dash()) told = *alone;
          told->text_at = text.size();
        } else if (answers && !letter) {
          told.reset();
        } else {
          told->text_at = own->text_at;
          told->printed = label_printed_in(text, paragraph.text, cut, *own);
        }
      }
      begins_.push_back({spot, told});
    }
    for (auto const name : paragraph.names) names_.push_back(paragraph.spot(name));
  }

  // The lines, cut.
  [[nodiscard]] std::vector<SourceLine> parted() const {
    std::vector<SourceLine> lines;
    lines.reserve(lines_.size() + begins_.size());
    auto begin = begins_.begin();
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      std::size_t from = 0;
      std::optional<Label> told;
      auto const first = lines.size();
      bool const below_label = begin != begins_.begin() && is_label_alone(*std::prev(begin), i);
      for (; begin != begins_.end() && begin->spot.line == i; ++begin) {
        if (begin->spot.at > from) lines.push_back(piece(i, from, begin->spot.at, told));
        from = begin->spot.at;
        told = begin->told;
      }
      lines.push_back(piece(i, from, lines_[i].text.size(), told));
      // What stands below a label alone are the lead's words.
      if (below_label) lines[first].goes_on = true;
    }
    for (auto const& name : names_) tell_destination(lines, lines_[name.line].begin + name.at);
    return lines;
  }

  // The lead's label ends the line above line `i`.
  [[nodiscard]] bool is_label_alone(CoupletBegin const& begin, std::size_t i) const {
    if (begin.spot.line + 1 != i || begin.spot.at == 0) return false;
    auto const text = lines_[begin.spot.line].text.substr(begin.spot.at);
    return (begin.told && begin.told->text_at >= text.size()) || label_alone(text);
  }

  [[nodiscard]] SourceLine piece(std::size_t line, std::size_t from, std::size_t to,
                                 std::optional<Label> const& told) const {
    auto part = part_of_line(lines_[line], from, to);
    if (told) {
      part.told = told;
      part.told_as_printed = true;
    }
    return part;
  }

  // At byte `at` of the decoded text.
  static void tell_destination(std::vector<SourceLine>& lines, std::size_t at) {
    auto const behind = std::upper_bound(
        lines.begin(), lines.end(), at,
        [](std::size_t byte, SourceLine const& line) { return byte < line.begin; });
    if (behind != lines.begin()) std::prev(behind)->markup.destination_begin = at;
  }

  std::vector<SourceLine> const& lines_;
  std::vector<CoupletBegin> begins_;  // in keys that are such, in the order of the text
  std::vector<Spot> names_;           // likewise
  bool labelled_{true};               // all further leads bear labels
  std::size_t looked_within_{};       // lines before it were sought for several couplets
};

}  // namespace

std::optional<PartedCouplets> part_whole_couplets(std::vector<SourceLine> const& lines) {
  return WholeCouplets{lines}.run();
}

}  // namespace keydrift::printed
