#include "keydrift/formats/printed_joins.hpp"

#include <algorithm>
#include <array>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestJoinedWord = 200;  // bytes; a longer one is no word

bool is_hyphen(char32_t c) { return c == '-' || c == 0x2010 || c == 0xAD; }

// Visible ASCII.
bool is_printable(char c) { return c > 0x20 && c < 0x7F; }

bool is_word_byte(char c) {
  auto const byte = static_cast<unsigned char>(c);
  return byte >= 0x80 || is_letter(byte) || c == '-';
}

// Letters and hyphens at the end, at the front.
std::string_view last_word(std::string_view text) {
  std::size_t begin = text.size();
  auto const least = text.size() - std::min(text.size(), kLongestJoinedWord);
  while (begin > least && is_word_byte(text[begin - 1])) --begin;
  return text.substr(begin);
}
std::string_view word_in_front(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && is_word_byte(text[end])) ++end;
  return text.substr(0, end);
}

// "long- and short-winged": the hyphen stands for the word to come.
bool is_conjunction(std::string_view word) {
  static constexpr std::array kWords{"and"sv, "or"sv, "to"sv, "und"sv, "oder"sv, "bis"sv, "et"sv,
                                     "ou"sv,  "y"sv,  "o"sv,  "e"sv,   "à"sv,    "a"sv,   "bzw"sv};
  return is_one_of(kWords, word);
}

// "well-" / "developed", "half-" / "hidden", "three-" / "nerved": where a line may end, but whose
// hyphen belongs to the compound.  "four-" / "teen" is a word that was broken.
bool keeps_its_hyphen(std::string_view stem, std::string_view rest) {
  static constexpr std::array kStems{"well"sv,  "non"sv,   "self"sv, "half"sv, "quasi"sv, "one"sv,
                                     "two"sv,   "three"sv, "four"sv, "five"sv, "six"sv,   "seven"sv,
                                     "eight"sv, "nine"sv,  "many"sv, "few"sv};
  // "fourchu" is French.
  static constexpr std::array kEndings{
      "teen"sv, "teenth"sv, "een"sv,  "eenth"sv, "fold"sv, "some"sv, "ty"sv,   "tieth"sv,
      "ness"sv, "ish"sv,    "ing"sv,  "th"sv,    "er"sv,   "est"sv,  "self"sv, "ième"sv,
      "chu"sv,  "chue"sv,   "chus"sv, "chues"sv, "rés"sv,  "rées"sv, "rure"sv};
  return is_one_of(kStems, stem) && !is_one_of(kEndings, rest);
}

struct HyphenAtEnd {
  std::string_view stem;  // without the hyphen
  std::string_view hyphen;
};

bool ends_in_hyphen(std::string_view text, HyphenAtEnd& found) {
  auto const c = code_point_before(text, text.size());
  if (!is_hyphen(c.value)) return false;
  auto const stem = text.substr(0, text.size() - c.length);
  if (stem.empty() || is_blank(code_point_before(stem, stem.size()).value)) return false;
  found = {stem, text.substr(stem.size())};
  return true;
}

}  // namespace

LineJoiner::LineJoiner(std::string_view text, std::vector<RawLead> const& leads,
                       std::vector<Piece> const& pieces)
    : text_{text} {
  for (auto const& lead : leads) {
    for (std::uint32_t i = 0; i + 1 < lead.piece_count; ++i) {
      auto const& piece = pieces[lead.first_piece + i];
      auto const& next = pieces[lead.first_piece + i + 1];
      HyphenAtEnd hyphen;
      if (!ends_in_hyphen(text.substr(piece.begin, piece.end - piece.begin), hyphen)) continue;
      auto const stem = fold(last_word(hyphen.stem));
      auto const rest = fold(word_in_front(text.substr(next.begin, next.end - next.begin)));
      words_.emplace(stem + rest, false);
      words_.emplace(stem + "-" + rest, false);
    }
  }
  if (words_.empty()) return;
  std::size_t at = 0;
  while (at < text.size()) {
    if (!is_word_byte(text[at])) {
      ++at;
      continue;
    }
    auto const word = word_in_front(text.substr(at));
    if (auto const found = words_.find(fold(word)); found != words_.end()) found->second = true;
    at += word.size();
  }
}

LineJoiner::Joint LineJoiner::joint(std::string_view before, std::string_view after) const {
  HyphenAtEnd hyphen;
  auto const end = code_point_before(before, before.size());
  if (end.value == 0x2013 &&
      is_digit(code_point_before(before, before.size() - end.length).value) &&
      is_digit(code_point_at(after, 0).value)) {
    return Joint::keep_hyphen;  // "3–" / "5 mm"
  }
  if (!ends_in_hyphen(before, hyphen)) return Joint::blank;
  if (hyphen.hyphen == "\xC2\xAD"sv) return Joint::drop_hyphen;
  auto const rest = word_in_front(after);
  if (rest.empty() || is_conjunction(rest)) {
    return is_digit(code_point_at(after, 0).value) ? Joint::keep_hyphen : Joint::blank;
  }
  auto const last = code_point_before(hyphen.stem, hyphen.stem.size()).value;
  // "K+ yellow, P-" / "with soralia": a reaction that fails.
  static constexpr std::array kReagents{"K"sv, "C"sv, "P"sv, "KC"sv, "Pd"sv, "PD"sv, "UV"sv, "I"sv};
  bool const reaction =
      before.find('+') != std::string_view::npos || before.find("-,") != std::string_view::npos;
  if (reaction && is_one_of(kReagents, last_word(hyphen.stem))) {
    return Joint::blank;
  }
  // "CALYPTO-" / "PTERA Roe": a name in capitals.
  constexpr std::size_t kFewest = 3;  // letters; of fewer it is a sign: "X-RAYS"
  bool const capitals =
      is_in_capitals(last_word(hyphen.stem), kFewest) && is_in_capitals(rest, kFewest);
  bool const lower = is_lower(code_point_at(rest, 0).value);
  if (!is_letter(last) || !(lower || capitals)) return Joint::keep_hyphen;
  auto const stem = fold(last_word(hyphen.stem));
  auto const folded = fold(rest);
  auto const whole = words_.find(stem + folded);
  auto const hyphened = words_.find(stem + "-" + folded);
  bool const whole_seen = whole != words_.end() && whole->second;
  bool const hyphened_seen = hyphened != words_.end() && hyphened->second;
  bool const keep = hyphened_seen || keeps_its_hyphen(stem, folded);
  return keep && !whole_seen ? Joint::keep_hyphen : Joint::drop_hyphen;
}

JoinedText LineJoiner::join(std::span<Piece const> pieces) const {
  JoinedText joined;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    auto const& piece = pieces[i];
    auto content = text_.substr(piece.begin, piece.end - piece.begin);
    if (i > 0 && !joined.raw.empty()) {
      switch (joint(joined.raw, content)) {
        case Joint::blank:
          joined.raw.push_back(' ');
          break;
        case Joint::keep_hyphen:
          break;
        case Joint::drop_hyphen: {
          auto const c = code_point_before(joined.raw, joined.raw.size());
          joined.raw.resize(joined.raw.size() - c.length);
          break;
        }
      }
    }
    joined.spans.push_back({joined.raw.size(), piece.begin, piece.line});
    joined.raw += content;
  }
  return joined;
}

void squeeze_with_runs(JoinedText const& joined, std::size_t begin, std::size_t end,
                       std::vector<SourceLine> const& lines, std::string& text,
                       std::vector<TextRun>& runs) {
  text.reserve(end - begin);
  std::size_t next_span = 0;
  SourceSpan const* span = nullptr;
  std::uint32_t column = 0;  // of the character at `at`
  bool gap = false;
  bool broken = true;  // the next character opens a run
  // Columns are counted along each line once.
  std::size_t at = 0;
  while (at < end) {
    while (next_span < joined.spans.size() && joined.spans[next_span].raw_begin <= at) {
      span = &joined.spans[next_span];
      auto const& line = lines[span->line];
      column = place_in(line, span->source_begin, span->source_begin).column;
      broken = true;
      ++next_span;
    }
    auto const c = code_point_at(joined.raw, at);
    std::size_t const source = span->source_begin + (at - span->raw_begin);
    std::size_t length = c.length;
    if (at >= begin) {
      if (is_blank(c.value)) {
        // A single plain blank stays in its run; others are squeezed, which breaks it.
        if (gap || c.value != ' ') broken = true;
        gap = true;
      } else if (is_invisible(c.value)) {
        broken = true;
      } else {
        if (gap && !text.empty()) text.push_back(' ');
        gap = false;
        if (broken) {
          runs.push_back({text.size(),
                          {.line = lines[span->line].number,
                           .column = column,
                           .begin = source,
                           .end = source}});
          broken = false;
        }
        // Words in plain letters go together, with the single blanks between them.
        auto const stop = next_span < joined.spans.size()
                              ? std::min(end, joined.spans[next_span].raw_begin)
                              : end;
        while (at + length < stop && (is_printable(joined.raw[at + length]) ||
                                      (joined.raw[at + length] == ' ' && at + length + 1 < stop &&
                                       is_printable(joined.raw[at + length + 1])))) {
          ++length;
          ++column;
        }
        text.append(joined.raw, at, length);
        runs.back().place.end = source + length;
      }
    }
    at += length;
    ++column;
  }
}

Place place_of_raw(JoinedText const& joined, std::size_t begin, std::size_t end,
                   std::vector<SourceLine> const& lines) {
  auto const span_of = [&joined](std::size_t at) -> SourceSpan const& {
    auto const after = std::upper_bound(
        joined.spans.begin(), joined.spans.end(), at,
        [](std::size_t value, SourceSpan const& one) { return value < one.raw_begin; });
    return after == joined.spans.begin() ? *after : *(after - 1);
  };
  auto const& first = span_of(begin);
  auto const& last = span_of(end > begin ? end - 1 : begin);
  auto const from = first.source_begin + (begin - first.raw_begin);
  // What goes on in the next column may stand further up in the source.
  auto const until = last.source_begin + (end - last.raw_begin);
  return place_in(lines[first.line], from, std::max(from, until));
}

}  // namespace keydrift::printed
