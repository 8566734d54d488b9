#include "keydrift/reports/key_parts.hpp"

#include <algorithm>
#include <array>
#include <variant>

#include "keydrift/reports/wording.hpp"

namespace keydrift::reports {
namespace {

using namespace std::string_view_literals;

std::string joined(std::vector<std::string> const& items) {
  std::string text;
  for (auto const& item : items) text += (text.empty() ? "" : "; ") + item;
  return text;
}

bool is_small(char c) { return c >= 'a' && c <= 'z'; }
bool is_capital(char c) { return c >= 'A' && c <= 'Z'; }

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  while (!text.empty()) {
    auto const end = text.find(' ');
    if (end != 0) words.push_back(text.substr(0, end));
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
  }
  return words;
}

}  // namespace

std::vector<FrontLine> lines_below_title(FrontMatter const& front) {
  auto lines = front_lines(front);
  std::erase_if(lines, [&](FrontLine const& line) {
    return line.name == "Title" || line.name == "Edition" || line.name == "Authors" ||
           (line.name == "Year" && line.value == front.edition);
  });
  return lines;
}

std::string byline(FrontMatter const& front) {
  std::string line;
  if (!front.edition.empty()) line = front.edition + " edition";
  if (!front.authors.empty()) line += (line.empty() ? "" : " · ") + joined(front.authors);
  return line;
}

std::string page_title(Edition const& edition) {
  if (!edition.front.title.empty()) return edition.front.title;
  for (auto const& part : edition.parts) {
    if (!part.title.empty()) return part.title;
  }
  return "Key";
}

bool is_set_in_italics(std::string_view name) {
  auto const words = words_of(name);
  if (words.empty() || words.size() > 5 || words[0].size() < 2) return false;
  auto const& first = words[0];
  if (!is_capital(first[0])) return false;
  // "A." stands for a genus; names above the genus stay upright.
  bool const abbreviated = first.back() == '.' && first.size() <= 5;
  bool const word = std::none_of(first.begin() + 1, first.end() - (abbreviated ? 1 : 0),
                                 [](char c) { return is_capital(c) || (c >= '0' && c <= '9'); });
  if (!word) return false;
  if (words.size() == 1) {
    static constexpr std::array kHigher{"aceae"sv,  "idae"sv, "inae"sv, "ales"sv,
                                        "oideae"sv, "ini"sv,  "eae"sv};
    return !abbreviated && std::none_of(kHigher.begin(), kHigher.end(),
                                        [&](std::string_view end) { return first.ends_with(end); });
  }
  static constexpr std::array kEnglish{"group"sv, "with"sv, "and"sv,     "of"sv,
                                       "the"sv,   "a"sv,    "species"sv, "complex"sv};
  return std::all_of(words.begin() + 1, words.end(), [](std::string_view next) {
    bool const small = is_small(next[0]) || static_cast<unsigned char>(next[0]) >= 0x80;
    return small && std::find(kEnglish.begin(), kEnglish.end(), next) == kEnglish.end();
  });
}

std::vector<std::string> further_figures(Lead const& lead) {
  std::vector<std::string> further;
  for (auto const& figure : lead.figures) {
    if (lead.text.find(figure) == std::string::npos) further.push_back(figure);
  }
  return further;
}

std::vector<std::vector<Between>> between_couplets(Edition const& edition) {
  std::vector<std::vector<Between>> between(edition.couplets.size() + 1);
  std::vector<std::pair<std::uint64_t, Between>> waiting;  // notes by where they stand
  for (std::uint32_t n = 0; n < edition.notes.size(); ++n) {
    waiting.emplace_back(edition.notes[n].place.begin, Between{false, n});
  }
  std::vector<std::vector<std::uint32_t>> titles(edition.couplets.size());
  for (std::uint32_t p = 0; p < edition.parts.size(); ++p) {
    if (!edition.parts[p].title.empty()) titles[edition.parts[p].start.index].push_back(p);
  }
  std::size_t next = 0;
  for (std::size_t c = 0; c < edition.couplets.size(); ++c) {
    auto const take_until = [&](std::uint64_t end) {
      for (; next < waiting.size() && waiting[next].first < end; ++next) {
        between[c].push_back(waiting[next].second);
      }
    };
    for (auto const part : titles[c]) {
      take_until(std::min(edition.parts[part].place.begin, edition.couplets[c].place.begin));
      between[c].push_back({true, part});
    }
    take_until(edition.couplets[c].place.begin);
  }
  for (; next < waiting.size(); ++next) between.back().push_back(waiting[next].second);
  return between;
}

std::vector<TaxonId> unnamed_taxa(Edition const& edition) {
  std::vector<bool> named(edition.taxa.size(), false);
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) {
      if (auto const* to = std::get_if<ToTaxa>(&lead.destination)) {
        for (auto const taxon : to->taxa) named[taxon.index] = true;
      }
    }
  }
  std::vector<TaxonId> unnamed;
  for (std::uint32_t t = 0; t < named.size(); ++t) {
    if (!named[t]) unnamed.push_back(TaxonId{t});
  }
  return unnamed;
}

}  // namespace keydrift::reports
