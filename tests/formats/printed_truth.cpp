#include "printed_truth.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <charconv>
#include <optional>
#include <sstream>
#include <tuple>
#include <variant>

namespace keydrift::test {

namespace {

std::optional<LeadSpot> parse_spot(std::string_view text) {
  LeadSpot spot;
  auto const* end = text.data() + text.size();
  auto read = std::from_chars(text.data(), end, spot.line);
  if (read.ec != std::errc{}) return std::nullopt;
  if (read.ptr != end && *read.ptr == '.') read = std::from_chars(read.ptr + 1, end, spot.ordinal);
  if (read.ec != std::errc{} || read.ptr != end) return std::nullopt;
  return spot;
}

bool begins(std::string_view text, std::string_view start) {
  return text.substr(0, start.size()) == start;
}

// Well-formed UTF-8 only, which decoded text is.
char32_t next_code_point(std::string_view text, std::size_t& at) {
  auto const byte = static_cast<unsigned char>(text[at++]);
  int const more = byte < 0x80 ? 0 : byte < 0xE0 ? 1 : byte < 0xF0 ? 2 : 3;
  char32_t point = more == 0 ? byte : byte & (0x3FU >> more);
  for (int i = 0; i < more && at < text.size(); ++i) {
    point = (point << 6U) | (static_cast<unsigned char>(text[at++]) & 0x3FU);
  }
  return point;
}

bool is_letter(char32_t point) {
  if (point < 0x80) return (point | 0x20U) >= 'a' && (point | 0x20U) <= 'z';
  if (point < 0xC0 || point == 0xD7 || point == 0xF7) return false;  // Latin-1 signs
  bool const signs = (point >= 0x2000 && point < 0x2C00) || point >= 0xFFF0;
  return !signs && point != 0x3000;
}

// Calls take(word, offset) for every run of letters; soft hyphens are no part of a word.
template <class Take>
void each_word(std::string_view text, Take take) {
  std::string word;
  std::size_t letters = 0;
  for (std::size_t at = 0; at < text.size();) {
    auto const begin = at;
    auto const point = next_code_point(text, at);
    if (is_letter(point)) {
      word += text.substr(begin, at - begin);
      ++letters;
    } else if (letters > 0) {
      take(word, letters);
      word.clear();
      letters = 0;
    }
  }
  if (letters > 0) take(word, letters);
}

// Letters and digits only, lower case where ASCII has it.
std::string squashed(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    auto const begin = at;
    auto const point = next_code_point(text, at);
    if (point >= '0' && point <= '9') out += static_cast<char>(point);
    if (!is_letter(point)) continue;
    if (point < 0x80) {
      out += static_cast<char>(point | 0x20U);
    } else {
      out += text.substr(begin, at - begin);
    }
  }
  return out;
}

std::string without_brackets(std::string_view name) {
  std::string out;
  int depth = 0;
  for (char const c : name) {
    if (c == '(') ++depth;
    if (depth == 0) out += c;
    if (c == ')' && depth > 0) --depth;
  }
  return out;
}

// Both codes write ligatures out in names, prints of their time do not.
std::string without_ligatures(std::string name) {
  for (auto const& [ligature, letters] :
       {std::pair{"\u00E6", "ae"}, {"\u0153", "oe"}, {"\u00C6", "ae"}, {"\u0152", "oe"}}) {
    for (auto at = name.find(ligature); at != std::string::npos; at = name.find(ligature)) {
      name.replace(at, std::string_view{ligature}.size(), letters);
    }
  }
  return name;
}

std::vector<std::string> names_in(std::string_view list) {
  std::vector<std::string> names;
  while (true) {
    auto const bar = list.find('|');
    names.push_back(without_ligatures(squashed(without_brackets(list.substr(0, bar)))));
    if (bar == std::string_view::npos) return names;
    list.remove_prefix(bar + 1);
  }
}

// Everything that the edition keeps, letters only, pieces parted by blanks.
std::string kept_text(Edition const& edition) {
  std::string all;
  auto const keep = [&all](std::string_view text) {
    all += ' ';
    each_word(text, [&all](std::string const& word, std::size_t) { all += word; });
  };
  auto const& front = edition.front;
  for (auto const& text :
       {front.title, front.edition, front.language, front.scope.taxa, front.scope.region,
        front.scope.life_stage, front.scope.sex, front.scope.material}) {
    keep(text);
  }
  for (auto const& author : front.authors) keep(author);
  for (auto const& [name, value] : front.other) keep(name + value);
  for (auto const& part : edition.parts) keep(part.title);
  for (auto const& note : edition.notes) keep(note.text);
  for (auto const& couplet : edition.couplets) {
    keep(couplet.label);
    for (auto const& note : couplet.notes) keep(note);
    for (auto const& reference : couplet.back_references) keep(reference.label);
    for (auto const& lead : couplet.leads) {
      keep(lead.label);
      keep(lead.text);
      keep(lead.destination_printed);
      keep(lead.taxon_remark);
      for (auto const& note : lead.notes) keep(note);
      for (auto const& figure : lead.figures) keep(figure);
      if (auto const* key = std::get_if<ToKey>(&lead.destination)) keep(key->key);
    }
  }
  return all;
}

bool is_kept(LineKind kind) {
  switch (kind) {
    case LineKind::front_matter:
    case LineKind::heading:
    case LineKind::lead:
    case LineKind::continuation:
    case LineKind::destination:
    case LineKind::note:
      return true;
    default:
      return false;
  }
}

std::string destination_text(Edition const& edition, std::vector<LeadSpot> const& first_leads,
                             Destination const& destination) {
  if (auto const* couplet = std::get_if<ToCouplet>(&destination)) {
    return "-> " + to_text(first_leads[couplet->couplet.index]);
  }
  if (auto const* taxa = std::get_if<ToTaxa>(&destination)) {
    std::string text;
    for (auto const taxon : taxa->taxa) text += (text.empty() ? "= " : " | ") + edition[taxon].name;
    return text;
  }
  if (auto const* key = std::get_if<ToKey>(&destination)) {
    // A key within the file may be said by its first couplet as well.
    return "key: " + key->key;
  }
  return "none: " + std::get<Unresolved>(destination).printed;
}

}  // namespace

std::string to_text(LeadSpot spot) {
  auto text = std::to_string(spot.line);
  if (spot.ordinal > 1) text += '.' + std::to_string(spot.ordinal);
  return text;
}

Truth parse_truth(std::string_view text, std::string const& name) {
  Truth truth;
  std::istringstream lines{std::string{text}};
  std::string line;
  std::string word;
  std::getline(lines, line);
  std::istringstream first{line};
  first >> word >> truth.expect;
  EXPECT_EQ(word, "expect") << name << ": first line";
  if (first >> word) {
    EXPECT_EQ(word, "lost") << name << ": first line";
    first >> truth.lost;
  }
  while (std::getline(lines, line)) {
    if (line == "unreadable") {
      truth.unreadable = true;
      continue;
    }
    auto const colon = line.find(": ");
    auto const spot = parse_spot(std::string_view{line}.substr(0, colon));
    auto const said = colon == std::string::npos ? "" : line.substr(colon + 2);
    bool const known =
        begins(said, "-> ") || begins(said, "= ") || begins(said, "key: ") || begins(said, "none:");
    EXPECT_TRUE(spot && known) << name << ": " << line;
    if (spot && known) truth.leads.emplace_back(*spot, said);
  }
  EXPECT_NE(truth.unreadable, !truth.leads.empty()) << name << ": says nothing, or two things";
  return truth;
}

std::map<LeadSpot, std::string> read_truth(Edition const& edition) {
  struct Found {
    std::uint32_t line;
    std::uint64_t begin;
    std::size_t couplet;
    Lead const* lead;
  };
  std::vector<Found> found;
  for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
    for (auto const& lead : edition.couplets[c].leads) {
      found.push_back({lead.place.line, lead.place.begin, c, &lead});
    }
  }
  std::sort(found.begin(), found.end(), [](Found const& a, Found const& b) {
    return std::tie(a.line, a.begin, a.couplet) < std::tie(b.line, b.begin, b.couplet);
  });
  std::vector<LeadSpot> spots;
  std::vector<LeadSpot> first_leads(edition.couplets.size());
  for (std::size_t i = 0; i < found.size(); ++i) {
    bool const same_line = i > 0 && found[i - 1].line == found[i].line;
    spots.push_back({found[i].line, same_line ? spots.back().ordinal + 1 : 1});
    // Where columns part a couplet, its second lead may stand on an earlier line.
    if (found[i].lead == &edition.couplets[found[i].couplet].leads.front()) {
      first_leads[found[i].couplet] = spots.back();
    }
  }
  std::map<LeadSpot, std::string> truth;
  for (std::size_t i = 0; i < found.size(); ++i) {
    truth[spots[i]] = destination_text(edition, first_leads, found[i].lead->destination);
  }
  return truth;
}

bool agrees(std::string_view truth, std::string_view said) {
  if (begins(truth, "-> ")) return truth == said;
  for (std::string_view const kind : {"= ", "key: ", "none:"}) {
    if (!begins(truth, kind)) continue;
    if (!begins(said, kind)) return false;
    truth.remove_prefix(kind.size());
    said.remove_prefix(kind.size());
    return kind == "= " ? names_in(truth) == names_in(said) : squashed(truth) == squashed(said);
  }
  return false;
}

std::vector<std::string> lost_words(EditionReading const& reading) {
  std::vector<std::string> lost;
  if (!reading.source) return lost;
  auto const kept = kept_text(reading.edition);
  std::istringstream lines{reading.source->text};
  std::string line;
  for (auto const& account : reading.source->lines) {
    if (!std::getline(lines, line)) break;
    if (!is_kept(account.kind)) continue;
    each_word(line, [&](std::string const& word, std::size_t letters) {
      if (letters < 3 || kept.find(word) != std::string::npos) return;
      lost.push_back(std::to_string(account.line) + ": " + word);
    });
  }
  return lost;
}

std::vector<std::string> left_out_lines(SourceReading const& source) {
  std::vector<std::string> left_out;
  std::istringstream lines{source.text};
  std::string line;
  for (auto const& account : source.lines) {
    if (!std::getline(lines, line)) break;
    if (is_kept(account.kind)) continue;
    bool letters = false;
    each_word(line, [&letters](std::string const&, std::size_t) { letters = true; });
    if (!letters) continue;
    left_out.push_back(std::to_string(account.line) + ": " + to_word(account.kind) + ": " + line);
  }
  return left_out;
}

}  // namespace keydrift::test
