#include "keydrift/formats/printed_only_species.hpp"

#include <array>
#include <vector>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

// Words that say that there is one, and those that go with them.
constexpr std::array kOne{"only"sv,   "one"sv,  "single"sv,  "sole"sv,        "monotypic"sv,
                          "nur"sv,    "eine"sv, "einzige"sv, "seulement"sv,   "seule"sv,
                          "unique"sv, "sola"sv, "solo"sv,    "sólo"sv,        "una"sv,
                          "única"sv,  "uma"sv,  "apenas"sv,  "monospecific"sv};
constexpr std::array kBeside{"a"sv,   "the"sv,     "species"sv, "with"sv,    "its"sv,  "art"sv,
                             "die"sv, "espèce"sv,  "une"sv,     "especie"sv, "so"sv,   "só"sv,
                             "far"sv, "espécie"sv, "specie"sv,  "our"sv,     "known"sv};

std::string_view without_marks_behind(std::string_view word) {
  while (!word.empty() && (word.back() == ':' || word.back() == ',')) word.remove_suffix(1);
  return word;
}

// The word behind "only", "one species:", "a single species,"; 0 where no such words begin at
// `begin`.
std::size_t behind_one(std::vector<std::string_view> const& words, std::size_t begin) {
  constexpr std::size_t kMostWords = 5;
  bool one = false;
  auto w = begin;
  for (; w < words.size() && w < begin + kMostWords; ++w) {
    auto const folded = fold(without_marks_behind(words[w]));
    if (is_one_of(kOne, folded)) {
      one = true;
    } else if (!is_one_of(kBeside, folded)) {
      break;
    }
  }
  return one ? w : 0;
}

// "A. bus Roe" or "Aus bus Roe" from word `w` on, written with `genus` where it cuts that short.
std::string name_from(std::string_view text, std::vector<std::string_view> const& words,
                      std::size_t w, std::string_view genus) {
  if (w + 1 >= words.size()) return {};
  auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
  auto const name = trim(text.substr(begin));
  auto const first = words[w];
  bool const short_form = is_abbreviated(first);
  if (!short_form && !is_capitalised(first)) return {};
  bool const subgenus = words[w + 1].starts_with('(');
  auto const epithet = without_end(words[subgenus && w + 2 < words.size() ? w + 2 : w + 1]);
  if (!is_epithet(epithet) || !has_epithet_ending(epithet)) return {};
  bool const same = short_form && !subgenus && genus.starts_with(first.substr(0, first.size() - 1));
  return same ? std::string{genus} + std::string{name.substr(first.size())} : std::string{name};
}

}  // namespace

std::optional<OnlySpecies> only_species(std::string_view text) {
  auto const words = words_of(text);
  if (words.size() < 4) return std::nullopt;
  auto const genus = without_end(words[0]);
  if (!is_capitalised(genus) || genus.ends_with(':')) return std::nullopt;
  if (!words[0].ends_with(',')) return std::nullopt;
  auto const w = behind_one(words, 1);
  if (w == 0) return std::nullopt;
  auto name = name_from(text, words, w, genus);
  if (name.empty()) return std::nullopt;
  auto const begin = static_cast<std::size_t>(words[w].data() - text.data());
  return OnlySpecies{std::move(name), squeeze(without_end(trim_right(text.substr(0, begin))))};
}

}  // namespace keydrift::printed
