#include "keydrift/characters/reading/number_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <utility>

#include "keydrift/key/word_list.hpp"

namespace keydrift::reading {
namespace {

using Index = std::uint32_t;

bool is_pointing_word(LeadText const& text, Index at) {
  static constexpr std::array<std::string_view, 14> kWords{
      "couplet", "key", "no",    "nr",    "p",       "pp",    "page",
      "pages",   "see", "seite", "group", "section", "since", "s"};
  return text.is_word(at) && is_one_of(kWords, text.tokens[at].word);
}

// "3-lobed", "2-segmented", "4-seeded" count lobes, segments and seeds.
std::string counted_part(std::string const& word) {
  if (word.size() < 5 || !word.ends_with("ed")) return singular(word);
  for (std::size_t const dropped : {std::size_t{1}, std::size_t{2}, std::size_t{3}}) {
    auto stem = word.substr(0, word.size() - dropped);
    if (word_info(stem, "").is(kPart)) return stem;
  }
  if (word.ends_with("leaved")) return "leaf";
  return singular(word);
}

// Content words in the singular, without dimensions, numbers and degrees.
std::vector<std::string> naming_words(LeadText const& text, std::vector<Index> const& tokens) {
  std::vector<std::string> words;
  for (std::size_t i = 0; i < tokens.size(); ++i) {
    auto const token = tokens[i];
    // "in every flower", "in each whorl" says nothing of what is counted.
    if (text.is_word(token, "every") || text.is_word(token, "each")) {
      while (i + 1 < tokens.size() && text.is_word(tokens[i + 1]) &&
             !text.info[tokens[i + 1]].is(kPreposition)) {
        ++i;
      }
      continue;
    }
    // "A. 8": the letter of a fin, no article.
    bool const letter = text.is_word(token) && text.tokens[token].capital &&
                        text.tokens[token].word.size() == 1 && token + 1 < text.size() &&
                        text.is_sign(token + 1, U'.') && text.is_open(token);
    if (!letter && (!text.is_content(token) || text.is_degree(token))) continue;
    auto const& info = text.info[token];
    if (!info.dimension.empty() || info.is(kNumeral) || info.is(kPreposition)) continue;
    if (text.is_word(token, "number") || text.is_word(token, "numbering") ||
        text.is_word(token, "ratio")) {
      continue;
    }
    bool const behind_number =
        token > 1 && text.is_sign(token - 1, U'-') && text.roles[token - 2] == Role::number;
    words.push_back(behind_number ? counted_part(text.tokens[token].word)
                                  : singular(text.tokens[token].word));
  }
  return words;
}

std::string joined(std::vector<std::string> const& words) {
  std::vector<std::string_view> views{words.begin(), words.end()};
  return join_words(views);
}

// "fin with 2 spines and 8–9 soft rays": the words in front are of both numbers, those behind of
// one.
std::vector<Index> own_words(LeadText const& text, std::vector<Index> const& tokens,
                             Measure const& measure) {
  std::vector<Index> own;
  std::size_t shared = 0;  // those in front of the first number
  bool other = false;
  for (auto const token : tokens) {
    if (token >= measure.begin && token < measure.end) continue;
    if (text.roles[token] == Role::number) {
      if (token >= measure.end) break;
      other = true;
      continue;
    }
    bool const joins = text.is_word(token) && text.info[token].is(kAnd);
    if (token >= measure.end && joins) break;
    if (other && joins) {
      own.resize(shared);
      continue;
    }
    own.push_back(token);
    if (!other) shared = own.size();
  }
  return own;
}

// "plants tufted 5–20 cm tall": what stands between the part and the number says something else
// of the part.  Only where a part is named for certain.
std::vector<Index> described_before(LeadText const& text, std::vector<Index> const& tokens,
                                    Index number) {
  std::vector<Index> description;
  bool part = false;
  for (auto const token : tokens) {
    if (token >= number) break;
    // "leaves in upper half 3 mm": says where, not what.
    if (part && text.is_word(token) && text.info[token].is(kPreposition)) return {};
    if (!text.is_content(token)) continue;
    if (text.info[token].is(kPart)) {
      part = true;
      description.clear();
    } else if (text.info[token].dimension.empty() && !text.is_ratio_word(token)) {
      description.push_back(token);
    }
  }
  bool const says_something = std::any_of(description.begin(), description.end(),
                                          [&](Index token) { return !text.is_degree(token); });
  if (!part || !says_something) description.clear();
  return description;
}

// "800–1400 m", "alt. below 100 m": no part of a body is as long, so it is said of the place.
bool tells_altitude(Measure const& measure, std::vector<std::string> const& words) {
  constexpr double kFoot = 304.8;
  constexpr double kLeast = 100 * 1000;  // mm
  static constexpr std::array<std::string_view, 10> kHeights{
      "alt",        "altitude", "elev",     "elevation", "höhe",
      "meereshöhe", "altitud",  "altitude", "asl",       "msm"};
  bool const named = std::all_of(words.begin(), words.end(),
                                 [](std::string const& word) { return is_one_of(kHeights, word); });
  if (!named || measure.factor < kFoot) return false;
  return std::all_of(measure.ranges.begin(), measure.ranges.end(), [&](NumericRange const& range) {
    auto const& [low, high] = std::pair{range.extreme.low, range.extreme.high};
    return std::max(std::isfinite(low) ? low : 0, std::isfinite(high) ? high : 0) >= kLeast;
  });
}

// "antennomere 3 longer than 4": the part that the "4" is one of, as well.
std::vector<std::string> part_in_row(LeadText const& text, std::vector<Index> const& tokens) {
  for (auto const token : tokens) {
    if (token == 0 || !text.tokens[token].names_part || !text.is_word(token - 1)) continue;
    return {singular(text.tokens[token - 1].word)};
  }
  return {};
}

}  // namespace

namespace {

bool begins_comparison(LeadText const& text, Index at) {
  static constexpr std::array<std::string_view, 19> kWords{
      "as",       "half",    "twice",   "thrice",   "double",    "so",  "halb",
      "doppelt",  "zweimal", "dreimal", "aussi",    "tan",       "tão", "equalling",
      "equaling", "equal",   "equals",  "subequal", "surpassing"};
  auto const& word = text.tokens[at].word;
  if (word == "a" || word == "an") {
    return at + 1 < text.size() && text.is_word(at + 1) &&
           denominator(text.tokens[at + 1].word) > 0;
  }
  return std::find(kWords.begin(), kWords.end(), word) != kWords.end();
}

}  // namespace

bool may_begin_measure(LeadText const& text, std::uint32_t at) {
  auto const& token = text.tokens[at];
  switch (token.kind) {
    case TokenKind::number:
      return true;
    case TokenKind::mark:
      return false;
    case TokenKind::sign:
      return token.sign == U'(' || token.sign == U'<' || token.sign == U'>' || token.sign == U'~' ||
             token.sign >= 0x80 || token.sign == U'+';
    case TokenKind::word: {
      auto const& info = text.info[at];
      return info.is(kNumeral) || !info.dimension.empty() || text.is_degree(at) ||
             text.may_qualify(at) || begins_comparison(text, at);
    }
  }
  return false;
}

bool counts_or_measures(LeadText const& text, Clause const& clause, Measure const& measure) {
  if (measure.ratio || measure.unit_printed) return true;
  auto const begin = measure.begin;
  auto const end = measure.end;
  bool const plain = text.tokens[begin].kind == TokenKind::number || text.info[begin].is(kNumeral);
  if (plain && begin > clause.begin) {
    auto const before = begin - 1;
    if (text.is_sign(before, U'.') && before > clause.begin) {
      if (is_pointing_word(text, before - 1)) return false;
      // "A.1.2": a label.
      bool const close = !text.tokens[before].blank_before && !text.tokens[begin].blank_before;
      if (close && text.tokens[before - 1].word.size() == 1) return false;
    }
    if (is_pointing_word(text, before)) return false;
    // "2n = 24"
    if (text.is_sign(before, U'=') && before > clause.begin && text.is_word(before - 1) &&
        text.tokens[before - 1].word.size() == 1) {
      return false;
    }
    auto const value = measure.ranges.front().usual.low;
    if (text.is_word(before, "in") && value >= 1000) return false;  // a year
    auto const followed_by_content =
        end < clause.end &&
        (text.is_content(end) || (text.is_word(end) && text.info[end].is(kAnd))) &&
        !text.info[end].is(kPreposition);
    if (text.is_content(before) && followed_by_content &&
        text.tokens[begin].kind == TokenKind::number) {
      if (text.info[before].is(kLabelled)) return false;
      bool const part = text.info[before].is(kPart) && !text.tokens[before].names_part;
      if (part && !looks_plural(text.tokens[before].word)) return false;
    }
    // "tergite 2" at the end of a clause labels as well, unless there are several tergites; so does
    // "0.5× article 1", "as long as article 1".
    bool const pointed_at =
        before > clause.begin &&
        (text.is_sign(before - 1, 0xD7) || text.info[before - 1].is(kOf | kTo | kArticle) ||
         text.is_word(before - 1, "as") || text.is_word(before - 1, "than"));
    if (text.is_content(before) && text.info[before].is(kLabelled) &&
        !looks_plural(text.tokens[before].word) && (value != 1 || pointed_at)) {
      return false;
    }
  }
  // "4/5" may be a part of something or two numbers: "1/3 of the wing", "margin 1/5 as wide" tell.
  bool const slashed = text.tokens[begin].is_fraction &&
                       text.slice(begin, begin).find('/') != std::string_view::npos &&
                       measure.ranges.front().usual.low < 1;
  if (slashed && measure.dimension.empty()) {
    // "basal 1/3 of elytra" is a place.
    bool const part_of = end < clause.end && text.is_word(end) && text.info[end].is(kOf | kArticle);
    bool const place = begin > clause.begin && text.info[begin - 1].is(kPosition);
    if (!part_of || place) return false;
  }
  // "2n", "3d"
  if (end < clause.end && text.is_word(end) && !text.tokens[end].blank_before &&
      text.tokens[end - 1].kind == TokenKind::number) {
    return false;
  }
  return true;
}

NumberAtom number_atom(Measure const& measure, LeadText const& text,
                       std::vector<std::uint32_t> const& tokens, ClauseMatches const& matches,
                       LexiconIndex const& lexicon, Carried const& carried, double tolerance) {
  NumberAtom result;
  auto const description = described_before(text, tokens, measure.begin);
  auto dimension = measure.ratio ? measure.over : measure.dimension;
  if (!measure.ratio && dimension.empty()) {
    // "length 3 mm", "width of the spike 3 mm"
    for (auto const token : tokens) {
      if (text.is_open(token) && text.is_word(token) && !text.info[token].dimension.empty() &&
          text.info[token].comparative == 0) {
        dimension = std::string{text.info[token].dimension};
        break;
      }
    }
  }
  // A single figure without more is a length (common practice).
  bool const bare = !measure.ratio && dimension.empty() && measure.unit == "mm";
  if (bare) dimension = "length";
  result.unitless =
      !measure.ratio && !measure.unit_printed && !measure.dimension.empty() && !measure.share;
  std::vector<std::string> comparand;
  if (measure.comparand_begin < measure.comparand_end &&
      text.tokens[measure.comparand_begin].names_part) {
    comparand = part_in_row(text, tokens);
  }
  for (auto i = measure.comparand_begin; i < measure.comparand_end; ++i) {
    if (text.is_word(i) && !text.info[i].is(kFunction) && text.info[i].dimension.empty()) {
      comparand.push_back(singular(text.tokens[i].word));
    }
  }
  auto& atom = result.atom;
  // "HL/HW ratio 2" counts nothing.
  bool const counts =
      measure.unit == "1" && std::none_of(tokens.begin(), tokens.end(),
                                          [&](Index token) { return text.is_ratio_word(token); });
  atom.unit = measure.unit == "1" && !counts ? std::string{} : measure.unit;
  atom.negated = measure.negated;
  atom.ranges = measure.ranges;
  ClauseMatches::NumberWanted wanted{.begin = measure.begin,
                                     .end = measure.end,
                                     .unit = atom.unit,
                                     .dimension = atom.unit == "mm" || measure.ratio
                                                      ? std::string_view{dimension}
                                                      : std::string_view{},
                                     .to = measure.to,
                                     .comparand = comparand};
  result.row = matches.number_row(wanted, carried.rows);
  if (!result.row && bare) {
    // "culms 20–40 cm", where only the height of culms is a character.
    wanted.dimension = {};
    result.row = matches.number_row(wanted, carried.rows);
  }
  if (!result.row && !measure.ratio && atom.unit.empty()) {
    wanted.unit = "1";
    result.row = matches.number_row(wanted, carried.rows);
    if (result.row) atom.unit = "1";
  }
  bool invert = false;
  if (result.row) {
    auto const& character = lexicon.character(*result.row);
    atom.character = character.id;
    tolerance = character.tolerance;
    auto const& dimensions = lexicon.dimensions(*result.row);
    if (measure.ratio && !measure.to.empty()) {
      auto const over = std::find(dimensions.begin(), dimensions.end(), measure.over);
      auto const to = std::find(dimensions.begin(), dimensions.end(), measure.to);
      invert = to < over;
    }
  } else {
    std::vector<Index> naming;
    std::set_difference(tokens.begin(), tokens.end(), description.begin(), description.end(),
                        std::back_inserter(naming));
    if (!measure.ratio) result.description = description;
    auto words = naming_words(text, measure.ratio ? tokens : own_words(text, naming, measure));
    // "antennae black, with 9 segments": those of the antennae.
    if (!measure.ratio && !words.empty() && !carried.subject.empty() && !tokens.empty() &&
        text.is_word(tokens.front()) && text.info[tokens.front()].is(kWith)) {
      words.insert(words.begin(), singular_words(carried.subject));
    }
    bool const place = bare && tells_altitude(measure, words);
    if (place) words = {"altitude"};
    // "Style 5. 0.30–0.70. 6–8.": what names nothing and has no unit is not said of the style.
    bool const named = measure.ratio || measure.unit_printed || carried.subject_is_near;
    auto const name = !words.empty() ? joined(words)
                      : named        ? singular_words(carried.subject)
                                     : std::string{};
    if (measure.ratio && !measure.to.empty()) {
      invert = dimension_rank(measure.to) < dimension_rank(measure.over);
      auto const& first = invert ? measure.to : measure.over;
      auto const& second = invert ? measure.over : measure.to;
      atom.character = "~n:" + name + (name.empty() ? "" : " ") + first + "/" + second + "|";
    } else if (measure.ratio) {
      auto const other = joined(comparand);
      invert = other < name;
      auto const& first = invert ? other : name;
      auto const& second = invert ? name : other;
      atom.character =
          "~n:" + first + " " + measure.over + " / " + second + " " + measure.over + "|";
    } else {
      atom.character = "~n:" + name;
      if (!dimension.empty() && dimension != "size" && !place) {
        atom.character += (name.empty() ? "" : " ") + dimension;
      }
      atom.character += "|" + atom.unit;
      if (bare && !place) result.bare_of = name;
    }
  }
  for (auto& range : atom.ranges) {
    range = widened(range, tolerance);
    if (invert) range = inverted(range);
  }
  return result;
}

}  // namespace keydrift::reading
