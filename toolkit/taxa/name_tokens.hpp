#pragma once
// The pieces of a printed name, and the words that are no epithets.
//
// Serves the parser of names.hpp only.

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace keydrift::name_parts {

inline constexpr std::string_view kTimes = "\xC3\x97";  // ×

template <std::size_t N>
bool one_of(std::string_view word, std::array<std::string_view, N> const& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// ASCII letters only.
[[nodiscard]] std::string lowered(std::string_view text);

// A blank-separated word, a group in parentheses or brackets, a quoted epithet, or the sign ×.
struct Token {
  std::string text;
  bool comma{false};  // a comma, semicolon or colon followed it
  std::string low{};  // the text in small letters (ASCII)
  [[nodiscard]] bool sign() const { return text == kTimes || low == "x"; }
  [[nodiscard]] bool group() const { return text.starts_with('(') || text.starts_with('['); }
  [[nodiscard]] std::string_view inside() const {
    std::string_view inner{text};
    inner.remove_prefix(1);
    if (inner.ends_with(')') || inner.ends_with(']')) inner.remove_suffix(1);
    return inner;
  }
};
[[nodiscard]] std::vector<Token> tokens_of(std::string_view cleaned);

// The rank that a word below / above the species stands for: "ssp." -> "subspecies"; "" for none.
[[nodiscard]] std::string_view rank_below_species(std::string_view word);
[[nodiscard]] std::string_view rank_above_species(std::string_view word);

// A word that can be an epithet: small letters (or a number and a hyphen first), no stop inside.
[[nodiscard]] bool epithet_like(Token const& token);
[[nodiscard]] bool all_capitals(std::string_view word);
// "AUSIDAE" -> "Ausidae"; "velunaca" -> "Velunaca" (first_upper), "BUS" -> "bus".
[[nodiscard]] std::string capitalised(std::string_view word, bool first_upper);

inline constexpr std::array<std::string_view, 22> kParticles{
    "de",  "da",  "do",  "du", "des", "del", "della", "der", "den", "di", "d'",
    "von", "van", "vom", "zu", "zur", "la",  "le",    "ter", "ten", "af", "dos"};
inline constexpr std::array<std::string_view, 10> kAuthorLinks{"ex", "in",  "et",   "and", "und",
                                                               "y",  "al.", "apud", "&",   "al"};
inline constexpr std::array<std::string_view, 8> kAggregates{
    "agg.", "agg", "aggr.", "gr.", "group", "complex", "aggregate", "gp."};
inline constexpr std::array<std::string_view, 8> kQualifiers{"cf.", "cf",  "aff.", "aff",
                                                             "nr",  "nr.", "near", "prox."};
inline constexpr std::array<std::string_view, 8> kOpenSpecies{"sp.",   "sp",    "spp.",    "spp",
                                                              "spec.", "sspp.", "species", "sp.,"};

}  // namespace keydrift::name_parts
