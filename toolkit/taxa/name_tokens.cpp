#include "keydrift/taxa/name_tokens.hpp"

#include <utf8proc.h>

#include <cstdint>
#include <utility>

#include "keydrift/taxa/name_text.hpp"

namespace keydrift::name_parts {
namespace {

struct RankWord {
  std::string_view printed;
  std::string_view rank;
};
// Print forms, without a final stop (standards: ICN 24, 26; common practice for the short ones).
constexpr std::array kRankWords{
    RankWord{"subsp", "subspecies"},
    RankWord{"ssp", "subspecies"},
    RankWord{"subspecies", "subspecies"},
    RankWord{"nothosubsp", "subspecies"},
    RankWord{"nothossp", "subspecies"},
    RankWord{"nsubsp", "subspecies"},
    RankWord{"n-subsp", "subspecies"},
    RankWord{"var", "variety"},
    RankWord{"varietas", "variety"},
    RankWord{"variety", "variety"},
    RankWord{"v", "variety"},
    RankWord{"nothovar", "variety"},
    RankWord{"nvar", "variety"},
    RankWord{"n-var", "variety"},
    RankWord{"subvar", "subvariety"},
    RankWord{"f", "form"},
    RankWord{"fo", "form"},
    RankWord{"fm", "form"},
    RankWord{"forma", "form"},
    RankWord{"form", "form"},
    RankWord{"nothof", "form"},
    RankWord{"subf", "subform"},
    RankWord{"subforma", "subform"},
    RankWord{"ab", "aberration"},
    RankWord{"aberr", "aberration"},
    RankWord{"morph", "morph"},
    RankWord{"natio", "natio"},
};
constexpr std::array kGroupRanks{
    RankWord{"subg", "subgenus"}, RankWord{"subgen", "subgenus"}, RankWord{"subgenus", "subgenus"},
    RankWord{"sect", "section"},  RankWord{"section", "section"}, RankWord{"subsect", "subsection"},
    RankWord{"ser", "series"},    RankWord{"series", "series"},   RankWord{"subser", "subseries"},
};

template <std::size_t N>
std::string_view rank_of(std::string_view word, std::array<RankWord, N> const& table) {
  bool const stopped = word.ends_with('.');
  if (stopped) word.remove_suffix(1);
  // "v", "f", "ab", "ser" only count with their stop.
  if (!stopped && word.size() <= 2) return {};
  auto const lower = lowered(word);
  auto const found = std::find_if(table.begin(), table.end(),
                                  [&](RankWord const& entry) { return entry.printed == lower; });
  return found == table.end() ? std::string_view{} : found->rank;
}

}  // namespace

std::string lowered(std::string_view text) {
  std::string result{text};
  for (char& c : result) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return result;
}

std::vector<Token> tokens_of(std::string_view text) {
  // A name wholly in brackets is a name all the same.
  text.remove_prefix(std::min(text.find_first_not_of("([ "), text.size()));
  std::vector<Token> tokens;
  std::string word;
  auto const flush = [&] {
    if (word.empty()) return;
    Token token{.text = std::move(word), .comma = false};
    // Brackets that close here were opened nowhere: groups are taken whole below.
    while (!token.text.empty() &&
           std::string_view{",;:)]"}.find(token.text.back()) != std::string_view::npos) {
      token.comma = token.comma || (token.text.back() != ')' && token.text.back() != ']');
      token.text.pop_back();
    }
    if (!token.text.empty()) {
      tokens.push_back(std::move(token));
    } else if (!tokens.empty()) {
      tokens.back().comma = tokens.back().comma || token.comma;
    }
    word.clear();
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    char const c = text[i];
    if (c == ' ') {
      flush();
    } else if (c == '(' || c == '[') {
      flush();
      std::size_t depth = 0;
      for (; i < text.size(); ++i) {
        if (text[i] == '(' || text[i] == '[') ++depth;
        if (text[i] == ')' || text[i] == ']') --depth;
        word += text[i];
        if (depth == 0) break;
      }
      tokens.push_back({.text = std::move(word), .comma = false});
      word.clear();
    } else if (text.substr(i).starts_with(kTimes)) {
      flush();
      tokens.push_back({.text = std::string{kTimes}, .comma = false});
      i += kTimes.size() - 1;
    } else if ((c == '\'' || c == '"') && word.empty() && !tokens.empty()) {
      auto const close = text.find(c, i + 1);
      bool const quoted =
          close != std::string_view::npos &&
          initial_of(text.substr(i + 1, close - i - 1)) != Initial::none &&
          (close + 1 == text.size() || text[close + 1] == ' ' || text[close + 1] == ',');
      if (quoted) {
        tokens.push_back({.text = std::string{text.substr(i, close + 1 - i)}, .comma = false});
        tokens.back().text.front() = tokens.back().text.back() = '\'';
        i = close;
      } else {
        word += c;
      }
    } else {
      word += c;
    }
  }
  flush();
  for (auto& token : tokens) token.low = lowered(token.text);
  return tokens;
}

std::string_view rank_below_species(std::string_view word) { return rank_of(word, kRankWords); }
std::string_view rank_above_species(std::string_view word) { return rank_of(word, kGroupRanks); }

bool epithet_like(Token const& token) {
  if (token.group() || token.text.starts_with('\'')) return false;
  auto const initial = initial_of(token.text);
  if (initial == Initial::digit) {
    auto const hyphen = token.text.find('-');
    return hyphen != std::string::npos && hyphen > 0 && hyphen + 2 < token.text.size();
  }
  return initial == Initial::small && token.text.find('.') == std::string::npos &&
         token.text.find('&') == std::string::npos && token.text.find('/') == std::string::npos;
}

bool all_capitals(std::string_view word) {
  std::size_t letters = 0;
  for (char const c : word) {
    if (c >= 'a' && c <= 'z') return false;
    if (c >= 'A' && c <= 'Z') ++letters;
    if (c == '.' || c == '&' || c == '\'') return false;
  }
  return letters >= 2;
}

std::string capitalised(std::string_view word, bool first_upper) {
  std::string valid{word};
  std::string result;
  result.reserve(valid.size());
  auto const* bytes = reinterpret_cast<utf8proc_uint8_t const*>(valid.data());
  auto left = static_cast<utf8proc_ssize_t>(valid.size());
  bool first = true;
  while (left > 0) {
    utf8proc_int32_t point = 0;
    auto const used = utf8proc_iterate(bytes, left, &point);
    if (used <= 0) return valid;
    auto const shown = first && first_upper ? utf8proc_toupper(point) : utf8proc_tolower(point);
    std::array<utf8proc_uint8_t, 4> out{};
    auto const size = utf8proc_encode_char(shown, out.data());
    result.append(reinterpret_cast<char const*>(out.data()), static_cast<std::size_t>(size));
    first = false;
    bytes += used;
    left -= used;
  }
  return result;
}

}  // namespace keydrift::name_parts
