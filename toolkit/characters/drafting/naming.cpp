#include "keydrift/characters/drafting/naming.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>

#include "keydrift/characters/reading/tokens.hpp"

namespace keydrift::drafting {
namespace {

struct Words {
  std::string_view name;
  std::string_view words;  // folded, separated by blanks
};

constexpr std::array kProperties{
    Words{"colour",
          "red reddish brown brownish black blackish white whitish yellow yellowish green greenish "
          "blue bluish purple purplish pink orange grey gray greyish pale dark coloured colored "
          "glaucous silvery golden straw violet cream"},
    Words{"surface",
          "smooth scabrid scabrous rough pitted ridged granulate tuberculate punctate striate even "
          "shiny dull pits ribs ribbed furrowed warty"},
    Words{"hairs", "glabrous hairy pubescent villous tomentose bare hirsute ciliate woolly silky"},
    Words{"tip", "acute blunt obtuse pointed awned awn acuminate bifid notched truncate mucronate"},
    Words{"margin", "serrate dentate crenate toothed denticulate lobed"},
    Words{"posture",
          "erect nodding spreading ascending deflexed upright drooping reflexed pendent"},
    Words{"shape",
          "trigonous terete flattened round ovate lanceolate elliptic linear cylindrical biconvex "
          "lens flat channelled grooved inrolled scale leafy globose oblong cordate sided"},
    Words{"presence", "present absent wanting lacking none"},
    Words{"habit", "tufted creeping tufts runners climbing prostrate"},
    Words{"lasting", "persistent deciduous falling remaining shed caducous"},
    Words{"sex", "unisexual bisexual dioecious monoecious"},
    Words{"size", "broad narrow large small reduced minute"},
    Words{"number", "solitary several single numerous"},
    Words{"arrangement", "alternate opposite whorled scattered"},
};

constexpr std::array kHard{
    Words{
        "hand lens",
        "hair hairs hairy pubescent bristle bristles seta setae gland glands papilla papillae "
        "stigma stigmas stamen stamens anther anthers ligule ligules puncture punctures floret "
        "florets nutlet nutlets lodicule lodicules palea paleae lemma lemmas glume glumes stellate "
        "denticle denticles scabrid scabrous"},
    Words{"microscope",
          "spore spores pollen cell cells basidium basidia ascus asci cystidium cystidia hypha "
          "hyphae spicule spicules stoma stomata microscope microscopic microscopical µm micron "
          "microns"},
    Words{"dissection",
          "genitalia aedeagus paramere parameres embryo embryos ovule ovules placenta placentas "
          "spermatheca dissected dissection endophallus gizzard"},
};

bool has_word(std::string_view list, std::string_view word) {
  while (!list.empty()) {
    auto const blank = list.find(' ');
    if (list.substr(0, blank) == word) return true;
    if (blank == std::string_view::npos) return false;
    list.remove_prefix(blank + 1);
  }
  return false;
}

}  // namespace

std::string property_of(std::vector<std::string> const& states) {
  std::map<std::string_view, std::size_t> votes;
  for (auto const& state : states) {
    std::map<std::string_view, bool> named;
    for (auto const& token : reading::tokenise(state)) {
      for (auto const& property : kProperties) {
        if (has_word(property.words, token.word)) named[property.name] = true;
      }
    }
    for (auto const& [name, yes] : named) ++votes[name];
  }
  std::string_view best;
  std::size_t most = 0;
  for (auto const& [name, count] : votes) {
    if (count > most) {
      best = name;
      most = count;
    }
  }
  // One word among several that are not understood tells little.
  return most * 2 >= states.size() ? std::string{best} : std::string{};
}

std::string id_from(std::string_view words) {
  utf8proc_uint8_t* mapped = nullptr;
  auto const length = utf8proc_map(
      reinterpret_cast<utf8proc_uint8_t const*>(words.data()),
      static_cast<utf8proc_ssize_t>(words.size()), &mapped,
      static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT |
                                     UTF8PROC_STRIPMARK | UTF8PROC_CASEFOLD));
  std::string plain = length < 0 ? std::string{words}
                                 : std::string{reinterpret_cast<char const*>(mapped),
                                               static_cast<std::size_t>(length)};
  std::free(mapped);  // NOLINT: utf8proc hands out memory of malloc
  std::string id;
  for (char const c : plain) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      id += c;
    } else if (!id.empty() && id.back() != '-') {
      id += '-';
    }
  }
  while (!id.empty() && id.back() == '-') id.pop_back();
  return id;
}

Difficulty difficulty_from_words(std::string_view words) {
  auto hardest = Difficulty::naked_eye;
  for (auto const& token : reading::tokenise(words)) {
    for (auto const& list : kHard) {
      if (!has_word(list.words, token.word)) continue;
      hardest = std::max(hardest, *difficulty_from_word(list.name));
    }
  }
  return hardest;
}

bool says_absent(std::string_view words) {
  return has_word("absent none wanting lacking missing obsolete fehlend ausente absente nullus",
                  words);
}

}  // namespace keydrift::drafting
