#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "keydrift/formats/key_json_parts.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift::tables {
namespace {

constexpr std::array kStrengths{Strength::firm, Strength::hedged, Strength::excepted,
                                Strength::noted};
constexpr std::array kOrigins{Origin::mark, Origin::lexicon, Origin::number, Origin::opaque};
constexpr std::array kLimitKinds{LimitKind::sex, LimitKind::life_stage, LimitKind::material,
                                 LimitKind::season, LimitKind::other};

// The value of a field that is one of a few words; `otherwise` when missing.
template <class Word>
Word read_word(JsonFields& fields, std::string_view name, std::span<Word const> known,
               Word otherwise, JsonProblems& problems) {
  auto const* const value = fields.of_type(name, JsonType::text);
  if (value == nullptr) return otherwise;
  std::vector<std::string_view> words;
  for (auto const word : known) {
    if (value->text == to_word(word)) return word;
    words.emplace_back(to_word(word));
  }
  problems.add("unknown-word", Severity::error, value->place,
               "\"" + value->text + "\" is not a word for \"" + std::string{name} + "\"",
               suggestion(value->text, words, "write one of " + quoted_list(words)));
  return otherwise;
}

// Two ends, null for an open one.  nullopt: not such a pair (reported).
std::optional<Interval> read_ends(JsonFields& fields, std::string_view name,
                                  JsonProblems& problems) {
  auto const* const value = fields.of_type(name, JsonType::list);
  if (value == nullptr) return std::nullopt;
  auto const is_end = [](JsonValue const& end) {
    return end.type == JsonType::number || end.type == JsonType::null;
  };
  if (value->items.size() != 2 || !is_end(value->items[0]) || !is_end(value->items[1])) {
    problems.add("bad-range", Severity::error, value->place,
                 "\"" + std::string{name} + "\" wants two numbers, or null for an open end",
                 "write it as [4, 6] or [4, null]");
    return std::nullopt;
  }
  Interval interval;
  if (value->items[0].type == JsonType::number) interval.low = value->items[0].number;
  if (value->items[1].type == JsonType::number) interval.high = value->items[1].number;
  if (interval.low > interval.high) {
    problems.add("bad-range", Severity::error, value->place,
                 "the lower end of \"" + std::string{name} + "\" is above the upper end",
                 "swap the two numbers");
    return std::nullopt;
  }
  return interval;
}

void read_open(JsonFields& fields, std::string_view name, Interval& interval,
               JsonProblems& problems) {
  auto const* const value = fields.of_type(name, JsonType::list);
  if (value == nullptr) return;
  if (value->items.size() != 2 || value->items[0].type != JsonType::boolean ||
      value->items[1].type != JsonType::boolean) {
    problems.wrong_type(name, *value, "two of true or false");
    return;
  }
  interval.low_open = value->items[0].boolean;
  interval.high_open = value->items[1].boolean;
}

std::optional<NumericRange> read_range(JsonValue const& value, JsonProblems& problems) {
  JsonFields fields{value, "range", problems};
  auto const usual = read_ends(fields, "usual", problems);
  if (!fields.has("usual") && value.type == JsonType::object) {
    problems.add("missing-field", Severity::error, value.place, "this range has no \"usual\"",
                 "add \"usual\" with two numbers");
  }
  auto const extreme = read_ends(fields, "extreme", problems);
  NumericRange range;
  range.usual = usual.value_or(Interval{});
  read_open(fields, "usualOpen", range.usual, problems);
  range.extreme = extreme ? *extreme : range.usual;
  read_open(fields, "extremeOpen", range.extreme, problems);
  range.approximate = fields.flag("approximate");
  fields.finish();
  if (!usual || (fields.has("extreme") && !extreme)) return std::nullopt;
  if (range.usual.low < range.extreme.low || range.usual.high > range.extreme.high) {
    problems.add("bad-range", Severity::error, value.place,
                 "the usual range reaches beyond the extreme one",
                 "widen \"extreme\", or leave it out");
    return std::nullopt;
  }
  return range;
}

Atom read_atom(JsonFields& fields, JsonProblems& problems) {
  Atom atom;
  atom.character = fields.text("character");
  atom.states = fields.texts("states");
  std::sort(atom.states.begin(), atom.states.end());
  atom.states.erase(std::unique(atom.states.begin(), atom.states.end()), atom.states.end());
  if (auto const* const range = fields.of_type("range", JsonType::object)) {
    if (auto const read = read_range(*range, problems)) atom.ranges.push_back(*read);
  }
  for (auto const& range : fields.objects("ranges")) {
    if (auto const read = read_range(range, problems)) atom.ranges.push_back(*read);
  }
  atom.unit = fields.text("unit");
  atom.negated = fields.flag("negated");
  return atom;
}

void require_value(Atom const& atom, JsonFields const& fields, JsonProblems& problems) {
  bool const given = fields.has("states") || fields.has("range") || fields.has("ranges");
  if (given && atom.character.empty()) {
    problems.add("missing-field", Severity::error, fields.place(),
                 "this statement has states or a range but no \"character\"",
                 "add \"character\" with the character's id");
  } else if (!given && !atom.character.empty()) {
    problems.add(
        "missing-field", Severity::error, fields.place(),
        "this statement on \"" + atom.character + "\" has neither \"states\" nor \"range\"",
        "add the states or the range that the words allow");
  }
}

void write_ends(JsonWriter& json, std::string_view name, Interval const& interval) {
  json.name(name);
  json.begin_inline_list();
  json.value(interval.low);
  json.value(interval.high);
  json.end_list();
}

void write_open(JsonWriter& json, std::string_view name, Interval const& interval) {
  json.name(name);
  json.begin_inline_list();
  json.value(interval.low_open);
  json.value(interval.high_open);
  json.end_list();
}

void write_range(JsonWriter& json, NumericRange const& range) {
  json.begin_inline_object();
  write_ends(json, "usual", range.usual);
  if (range.usual.low_open || range.usual.high_open) write_open(json, "usualOpen", range.usual);
  if (!(range.usual == range.extreme)) {
    write_ends(json, "extreme", range.extreme);
    if (range.extreme.low_open || range.extreme.high_open) {
      write_open(json, "extremeOpen", range.extreme);
    }
  }
  if (range.approximate) json.field("approximate", true);
  json.end_object();
}

void write_atom(JsonWriter& json, Atom const& atom) {
  json.field("character", std::string_view{atom.character});
  json.texts_field("states", atom.states);
  if (atom.ranges.size() == 1) {
    json.name("range");
    write_range(json, atom.ranges.front());
  } else if (!atom.ranges.empty()) {
    json.name("ranges");
    json.begin_list();
    for (auto const& range : atom.ranges) write_range(json, range);
    json.end_list();
  }
  json.text_field("unit", atom.unit);
  if (atom.negated) json.field("negated", true);
}

}  // namespace

Statement read_json_statement(JsonValue const& value, std::string_view lead_text, std::size_t from,
                              JsonProblems& problems) {
  JsonFields fields{value, "statement", problems};
  Statement statement;
  statement.text = fields.required_text("text");
  if (auto const begin = fields.whole_number("textBegin")) {
    statement.text_begin = std::min<std::uint64_t>(*begin, lead_text.size());
  } else {
    auto at = lead_text.find(statement.text, from);
    if (at == std::string_view::npos) at = lead_text.find(statement.text);
    statement.text_begin = at == std::string_view::npos ? 0 : at;
  }
  statement.place = fields.source("source", value.place);
  statement.strength =
      read_word<Strength>(fields, "strength", kStrengths, Strength::firm, problems);
  auto const* const alternatives = fields.of_type("anyOf", JsonType::list);
  auto const single = read_atom(fields, problems);
  require_value(single, fields, problems);
  if (!single.character.empty()) statement.any_of.push_back(single);
  if (alternatives != nullptr) {
    if (!statement.any_of.empty()) {
      problems.add("two-predicates", Severity::error, alternatives->place,
                   "this statement has both \"character\" and \"anyOf\"",
                   "put the character among the alternatives of \"anyOf\"");
    }
    for (auto const& item : alternatives->items) {
      JsonFields parts{item, "alternative", problems};
      auto const atom = read_atom(parts, problems);
      require_value(atom, parts, problems);
      parts.finish();
      statement.any_of.push_back(atom);
    }
  }
  statement.origin =
      read_word<Origin>(fields, "origin", kOrigins,
                        statement.any_of.empty() ? Origin::opaque : Origin::mark, problems);
  statement.except = fields.texts("except");
  statement.exception_words = fields.text("exceptionWords");
  statement.hedge = fields.text("hedge");
  for (auto const& item : fields.objects("limits")) {
    JsonFields parts{item, "limit", problems};
    Limit limit;
    limit.kind = read_word<LimitKind>(parts, "kind", kLimitKinds, LimitKind::other, problems);
    limit.value = parts.required_text("value");
    parts.finish();
    statement.limits.push_back(std::move(limit));
  }
  fields.finish();
  return statement;
}

void write_json_statement(JsonWriter& json, Statement const& statement) {
  json.begin_object();
  json.field("text", std::string_view{statement.text});
  json.field("textBegin", std::uint64_t{statement.text_begin});
  write_json_source(json, "source", statement.place);
  json.field("strength", to_word(statement.strength));
  json.field("origin", to_word(statement.origin));
  if (statement.any_of.size() == 1) {
    write_atom(json, statement.any_of.front());
  } else if (!statement.any_of.empty()) {
    json.name("anyOf");
    json.begin_list();
    for (auto const& atom : statement.any_of) {
      json.begin_object();
      write_atom(json, atom);
      json.end_object();
    }
    json.end_list();
  }
  json.texts_field("except", statement.except);
  json.text_field("exceptionWords", statement.exception_words);
  json.text_field("hedge", statement.hedge);
  if (!statement.limits.empty()) {
    json.name("limits");
    json.begin_list();
    for (auto const& limit : statement.limits) {
      json.begin_inline_object();
      json.field("kind", to_word(limit.kind));
      json.field("value", std::string_view{limit.value});
      json.end_object();
    }
    json.end_list();
  }
  json.end_object();
}

void write_json_source(JsonWriter& json, std::string_view name, Place const& place) {
  json.name(name);
  json.begin_inline_object();
  json.field("line", std::uint64_t{place.line});
  json.field("column", std::uint64_t{place.column});
  if (place.begin != 0 || place.end != 0) {
    json.field("begin", place.begin);
    json.field("end", place.end);
  }
  json.end_object();
}

}  // namespace keydrift::tables
