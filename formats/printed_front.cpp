#include "keydrift/formats/printed_front.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_exact.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr int kEarliestYear = 1500;  // before printed keys; a year outside is a misprint
constexpr int kLatestYear = 2999;

enum class Field : std::uint8_t {
  title,
  edition,
  year,
  authors,
  language,
  taxa,
  region,
  places,
  excludes,
  lists,
  life_stage,
  sex,
  material,
  synonyms,
  layout,  // how the labels are to be taken; no part of the content
  other,
};

struct FieldName {
  std::string_view folded;
  Field field;
};
constexpr std::array kFields{
    FieldName{"title"sv, Field::title},
    FieldName{"edition"sv, Field::edition},
    FieldName{"year"sv, Field::year},
    FieldName{"authors"sv, Field::authors},
    FieldName{"author"sv, Field::authors},
    FieldName{"language"sv, Field::language},
    FieldName{"taxa"sv, Field::taxa},
    FieldName{"region"sv, Field::region},
    FieldName{"places"sv, Field::places},
    FieldName{"excludes"sv, Field::excludes},
    FieldName{"lists"sv, Field::lists},
    FieldName{"life stage"sv, Field::life_stage},
    FieldName{"life-stage"sv, Field::life_stage},
    FieldName{"sex"sv, Field::sex},
    FieldName{"material"sv, Field::material},
    FieldName{"synonyms"sv, Field::synonyms},
};

struct NamedLine {
  Field field{Field::other};
  std::string name;
  std::string_view value;
};

// "Name: value": a short name in letters before the first colon.
std::optional<NamedLine> named_line(std::string_view line) {
  auto const colon = line.find(':');
  if (colon == std::string_view::npos || colon == 0 || colon > 40) return std::nullopt;
  auto const name = trim(line.substr(0, colon));
  if (words_of(name).size() > 3) return std::nullopt;
  for (std::size_t at = 0; at < name.size();) {
    auto const c = code_point_at(name, at);
    if (!is_letter(c.value) && !is_blank(c.value) && !is_dash(c.value)) return std::nullopt;
    at += c.length;
  }
  NamedLine found;
  found.name = squeeze(name);
  found.value = trim(line.substr(colon + 1));
  auto const folded = fold(found.name);
  auto const known = std::find_if(kFields.begin(), kFields.end(),
                                  [&](FieldName const& one) { return one.folded == folded; });
  if (known != kFields.end()) found.field = known->field;
  if (layout_of_line(line)) found.field = Field::layout;
  return found;
}

std::vector<std::string> items_of_field(std::string_view value) {
  std::vector<std::string> items;
  while (!value.empty()) {
    auto const end = value.find(';');
    auto const item = squeeze(value.substr(0, end));
    if (!item.empty()) items.push_back(item);
    value = end == std::string_view::npos ? std::string_view{} : value.substr(end + 1);
  }
  return items;
}

void append_items(std::vector<std::string>& list, std::string_view value) {
  for (auto& item : items_of_field(value)) list.push_back(std::move(item));
}

// The same, with the place of each item: of its words, or (where a line end or a run of blanks
// parts them) of the first of them.
void append_names(std::vector<std::string>& list, std::vector<Place>& places,
                  std::string_view value, std::span<SourceLine const> lines) {
  std::size_t line = 0;
  std::size_t from = lines.front().text.find(':');
  for (auto& item : items_of_field(value)) {
    auto wanted = std::string_view{item};
    auto at = lines[line].text.find(wanted, from);
    if (at == std::string_view::npos) {
      wanted = wanted.substr(0, wanted.find(' '));
      at = lines[line].text.find(wanted, from);
      while (at == std::string_view::npos && line + 1 < lines.size()) {
        at = lines[++line].text.find(wanted);
        from = 0;
      }
      if (at != std::string_view::npos && lines[line].text.substr(at).starts_with(item)) {
        wanted = item;
      }
    }
    if (at == std::string_view::npos) at = 0;
    auto const begin = lines[line].begin + at;
    places.push_back(place_in(lines[line], begin, begin + wanted.size()));
    from = at + wanted.size();
    list.push_back(std::move(item));
  }
}

void append_text(std::string& text, std::string_view value) {
  if (!text.empty()) text += "; ";
  text += value;
}

std::string canonical_stage(std::string_view value) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 18> kStages{
      {{"adults"sv, "adult"sv},
       {"imago"sv, "adult"sv},
       {"imagines"sv, "adult"sv},
       {"adulte"sv, "adult"sv},
       {"adulto"sv, "adult"sv},
       {"larvae"sv, "larva"sv},
       {"larve"sv, "larva"sv},
       {"larven"sv, "larva"sv},
       {"larves"sv, "larva"sv},
       {"nymphs"sv, "nymph"sv},
       {"nymphe"sv, "nymph"sv},
       {"pupae"sv, "pupa"sv},
       {"puppe"sv, "pupa"sv},
       {"juveniles"sv, "juvenile"sv},
       {"eggs"sv, "egg"sv},
       {"seedlings"sv, "seedling"sv},
       {"adultes"sv, "adult"sv},
       {"adultos"sv, "adult"sv}}};
  auto const folded = fold(value);
  for (auto const& [word, canonical] : kStages) {
    if (folded == word) return std::string{canonical};
  }
  return folded;
}

std::string canonical_sex(std::string_view value) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kSexes{
      {{"males"sv, "male"sv},
       {"♂"sv, "male"sv},
       {"♂♂"sv, "male"sv},
       {"männchen"sv, "male"sv},
       {"mâle"sv, "male"sv},
       {"macho"sv, "male"sv},
       {"mas"sv, "male"sv},
       {"females"sv, "female"sv},
       {"♀"sv, "female"sv},
       {"♀♀"sv, "female"sv},
       {"weibchen"sv, "female"sv},
       {"femelle"sv, "female"sv},
       {"hembra"sv, "female"sv},
       {"fêmea"sv, "female"sv}}};
  auto const folded = fold(value);
  for (auto const& [word, canonical] : kSexes) {
    if (folded == word) return std::string{canonical};
  }
  return folded;
}

std::optional<int> year_of(std::string_view value) {
  if (value.size() != 4 ||
      !std::all_of(value.begin(), value.end(), [](char c) { return c >= '0' && c <= '9'; })) {
    return std::nullopt;
  }
  int const year = std::stoi(std::string{value});
  if (year < kEarliestYear || year > kLatestYear) return std::nullopt;
  return year;
}

class FrontReader {
 public:
  FrontReader(Edition& edition, std::vector<Finding>& findings)
      : edition_{edition}, findings_{findings} {}

  // `lines` are those that the value stands in.
  void take(NamedLine const& named, std::string const& value, Place const& place,
            std::span<SourceLine const> lines) {
    auto& front = edition_.front;
    switch (named.field) {
      case Field::title:
        append_text(front.title, value);
        break;
      case Field::edition:
        append_text(front.edition, value);
        break;
      case Field::year:
        take_year(value, place);
        break;
      case Field::authors:
        append_items(front.authors, value);
        break;
      case Field::language:
        front.language = value;
        break;
      case Field::taxa:
        append_text(front.scope.taxa, value);
        break;
      case Field::region:
        append_text(front.scope.region, value);
        break;
      case Field::places:
        append_items(front.scope.places, value);
        break;
      case Field::excludes:
        append_names(front.scope.excluded_taxa, front.scope.excluded_places, value, lines);
        break;
      case Field::lists:
        append_names(front.scope.listed_taxa, front.scope.listed_places, value, lines);
        break;
      case Field::life_stage:
        front.scope.life_stage = canonical_stage(value);
        break;
      case Field::sex:
        front.scope.sex = canonical_sex(value);
        break;
      case Field::material:
        append_text(front.scope.material, value);
        break;
      case Field::synonyms:
        take_synonyms(value, place);
        break;
      case Field::layout:
        break;
      case Field::other:
        front.other.emplace_back(named.name, value);
        break;
    }
  }

  // An edition called by a year is of that year.
  void finish() {
    auto& front = edition_.front;
    if (!front.year) front.year = year_of(front.edition);
  }

 private:
  void take_year(std::string const& value, Place const& place) {
    edition_.front.year = year_of(value);
    if (edition_.front.year) return;
    edition_.front.other.emplace_back("Year", value);
    warn("bad-year", place, value, "\"" + value + "\" is no year",
         "write four digits, as in \"Year: 1998\"");
  }

  void take_synonyms(std::string_view value, Place const& place) {
    for (auto const& item : items_of_field(value)) {
      auto const equals = item.find('=');
      auto const accepted = equals == std::string::npos
                                ? std::string{}
                                : squeeze(std::string_view{item}.substr(0, equals));
      std::string_view rest = equals == std::string::npos
                                  ? std::string_view{}
                                  : std::string_view{item}.substr(equals + 1);
      if (accepted.empty() || trim(rest).empty()) {
        warn("bad-synonym", place, item, "\"" + item + "\" does not say which name is a synonym",
             "write \"Accepted name = old name\", several of them separated by \";\"");
        continue;
      }
      while (!rest.empty()) {
        auto const next = rest.find('=');
        auto const synonym = squeeze(rest.substr(0, next));
        if (!synonym.empty()) edition_.front.synonyms.push_back({accepted, synonym, place});
        rest = next == std::string_view::npos ? std::string_view{} : rest.substr(next + 1);
      }
    }
  }

  void warn(std::string code, Place const& place, std::string printed, std::string message,
            std::string remedy) {
    findings_.push_back({.code = std::move(code),
                         .severity = Severity::warning,
                         .file = edition_.name,
                         .place = place,
                         .printed = std::move(printed),
                         .message = std::move(message),
                         .remedy = std::move(remedy),
                         .related = {}});
  }

  Edition& edition_;
  std::vector<Finding>& findings_;
};

}  // namespace

std::vector<LineAccount> read_front_matter(std::vector<SourceLine> const& lines, std::size_t end,
                                           Edition& edition, std::vector<Finding>& findings) {
  std::size_t first = end;
  for (std::size_t i = 0; i < end && first == end; ++i) {
    auto const named = named_line(lines[i].text);
    if (named && named->field != Field::other) first = i;
  }
  // Only a title may stand before front matter; then it is left to be read as a heading, and so
  // are the accounts: front matter has to be a block at the top to be taken whole.
  std::vector<LineAccount> accounts;
  if (first == end) return accounts;
  std::size_t begin = first;
  while (begin > 0) {
    auto const& before = lines[begin - 1].text;
    if (!named_line(before) || names_a_key(before)) break;
    --begin;
  }
  std::string title;
  Place title_place;
  for (std::size_t i = 0; i < begin; ++i) {
    if (lines[i].text.empty()) {
      accounts.push_back({lines[i].number, LineKind::blank, ""});
    } else {
      auto const end_of_line = lines[i].begin + lines[i].text.size();
      if (title.empty()) title_place = place_in(lines[i], lines[i].begin, end_of_line);
      title_place.end = end_of_line;
      if (!title.empty()) title += ' ';
      title += squeeze(lines[i].text);
      accounts.push_back({lines[i].number, LineKind::heading, "title before the front matter"});
    }
  }
  FrontReader reader{edition, findings};
  std::size_t i = begin;
  while (i < end) {
    if (lines[i].text.empty()) {
      accounts.push_back({lines[i].number, LineKind::blank, ""});
      ++i;
      continue;
    }
    auto const named = named_line(lines[i].text);
    // A name that is none of ours has to stand in the block, and not be a key's title.
    bool const apart = i > begin && lines[i - 1].text.empty();
    if (!named || names_a_key(lines[i].text)) break;
    if (named->field == Field::other && apart) break;
    auto value = squeeze(named->value);
    Place place = place_in(lines[i], lines[i].begin, lines[i].begin + lines[i].text.size());
    accounts.push_back({lines[i].number, LineKind::front_matter, "name and value"});
    std::size_t next = i + 1;
    while (next < end && !lines[next].text.empty() && lines[next].indent > lines[i].indent) {
      if (!value.empty()) value += ' ';
      value += squeeze(lines[next].text);
      place.end = lines[next].begin + lines[next].text.size();
      accounts.push_back({lines[next].number, LineKind::front_matter, "goes on with the value"});
      ++next;
    }
    reader.take(*named, value, place, std::span{lines}.subspan(i, next - i));
    i = next;
  }
  reader.finish();
  if (edition.front.title.empty()) {
    edition.front.title = title;
  } else if (!title.empty()) {
    edition.notes.push_back({title, title_place});
  }
  return accounts;
}

}  // namespace keydrift::printed
