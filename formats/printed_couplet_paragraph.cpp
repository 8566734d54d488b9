#include "keydrift/formats/printed_couplet_paragraph.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_run_on_labels.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {

std::size_t next_word(std::string_view text, std::size_t at) {
  while (at < text.size() && !is_blank(code_point_at(text, at).value)) {
    at += code_point_at(text, at).length;
  }
  return skip_blanks(text, at);
}

namespace {

using namespace std::string_view_literals;

constexpr std::size_t kShortestLead = 6;       // bytes
constexpr std::size_t kLongestLookedAt = 160;  // bytes that are looked at before a cut

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

// What a lead prints up to where the next one begins, without the signs that part them.
std::string_view without_separators(std::string_view text) {
  text = trim_right(text);
  while (!text.empty() && (text.back() == ';' || text.back() == ',')) {
    text = trim_right(text.substr(0, text.size() - 1));
  }
  return text;
}

}  // namespace

std::optional<Label> label_in_paragraph(std::string_view text, std::size_t at) {
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

namespace {

// What a lead ends in: a couplet, or a name.
struct End {
  std::optional<std::uint32_t> couplet;
  std::optional<std::size_t> name;  // behind a sign: byte of the paragraph's text
  bool behind_colon{false};         // which tells as much to those who read the lead
};

void note(CoupletParagraph& paragraph, End const& end) {
  if (end.couplet) paragraph.leads_to.push_back(*end.couplet);
  if (end.name && !end.behind_colon) paragraph.names.push_back(*end.name);
}

// What is looked at of a lead that begins at `begin` for its end.
std::string_view tail_of(std::string_view text, std::size_t begin) {
  return text.substr(std::max(begin, text.size() - std::min(text.size(), kLongestLookedAt)));
}

// A rival's label: a dash, the couplet's number again, or a letter behind its own.  "Illustration
// (2) Lower taxa" answers no "2 (1) Foot pale", nor does "Eyes 4" answer a 2.
std::optional<Label> answer(CoupletParagraph const& paragraph, std::size_t at) {
  auto label = label_in_paragraph(paragraph.text, at);
  if (!label || label->is_dash() || label->family != LabelFamily::digits) return label;
  bool const bracket = label->end == LabelEnd::enclosed;
  bool const like =
      (bracket ? paragraph.text.starts_with('(') : label->end == paragraph.label.end) ||
      label->marks > 0 || !label->letter.empty();
  return label->number == paragraph.label.number && like ? label : std::nullopt;
}

// What the lead at [begin, end) ends in; `labelled`: its rival bears a label.
std::optional<End> end_of(CoupletParagraph const& paragraph, std::size_t begin, std::size_t end,
                          bool labelled) {
  // "– Elytra bare (3)": a dash does not lead to its words.
  auto const own =
      begin > paragraph.label.text_at ? label_in_paragraph(paragraph.text, begin) : std::nullopt;
  if (own) begin = std::min(begin + own->text_at, end);
  auto const lead = without_separators(std::string_view{paragraph.text}.substr(begin, end - begin));
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
  auto const last = without_full_stop(tail.substr(last_word_begin(tail)));
  if (auto const number = misread_number(last); number > paragraph.label.number) {
    return End{number, {}, false};  // "… of equal size . . . l0."
  }
  auto const before = end_before_rival(tail);
  if (before.couplet > paragraph.label.number) return End{before.couplet, {}, false};
  return before.name ? std::optional{End{}} : std::nullopt;
}

// The end of the lead at `begin`, if the next one may begin at byte `at`.
std::optional<End> end_before(CoupletParagraph const& paragraph, std::size_t begin,
                              std::size_t at) {
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
  bool const number = is_digit(static_cast<unsigned char>(before.back())) || before.back() == ')' ||
                      before.back() == ']';
  if (!closed && !number) return std::nullopt;
  if (!own && begins_with_short_name(text.substr(at))) return std::nullopt;
  auto const end = end_of(paragraph, begin, before.size(), own.has_value());
  if (!end || end->couplet || (end->name && !upper)) return end;
  // "Ovary superior; style single" is no name.
  return upper && closed ? end : std::nullopt;
}

void seek_cuts(CoupletParagraph& paragraph, bool with_labels) {
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
      if (label_in_paragraph(text, at)) break;
      if (is_digit(static_cast<unsigned char>(text[next]))) break;
      auto const further = end_before(paragraph, begin, next);
      if (!further || further->couplet) break;
      end = further;
      at = next;
      next = next_word(text, at);
    }
    note(paragraph, *end);
    paragraph.cuts.push_back(at);
    paragraph.labelled = paragraph.labelled && label_in_paragraph(text, at).has_value();
    begin = at;
  }
  bool const labelled = !paragraph.cuts.empty() && label_in_paragraph(text, begin).has_value();
  auto const end = end_of(paragraph, begin, text.size(), labelled);
  if (end) note(paragraph, *end);
  paragraph.ends_well = end.has_value();
}

}  // namespace

Spot CoupletParagraph::spot(std::size_t at) const {
  auto const behind = std::upper_bound(begins.begin(), begins.end(), at);
  auto const line = static_cast<std::size_t>(behind - begins.begin()) - 1;
  return {first + line, at - begins[line] + (line == 0 ? offset : 0)};
}

void CoupletParagraph::add_line(std::string_view line) {
  if (!text.empty()) text += ' ';
  begins.push_back(text.size());
  text += line;
}

void find_cuts(CoupletParagraph& paragraph) {
  seek_cuts(paragraph, true);
  if (paragraph.cuts.empty()) seek_cuts(paragraph, false);
}

bool may_end_before(CoupletParagraph const& paragraph, std::size_t begin, std::size_t at) {
  return end_before(paragraph, begin, at).has_value();
}

}  // namespace keydrift::printed
