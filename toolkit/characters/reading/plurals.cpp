// Words in the singular.
#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>

#include "keydrift/characters/reading/tokens.hpp"

namespace keydrift::reading {
namespace {

struct Plural {
  std::string_view many;
  std::string_view one;
};
constexpr std::array kPlurals{
    Plural{"leaves", "leaf"},
    Plural{"halves", "half"},
    Plural{"calves", "calf"},
    Plural{"hooves", "hoof"},
    Plural{"teeth", "tooth"},
    Plural{"feet", "foot"},
    Plural{"setae", "seta"},
    Plural{"antennae", "antenna"},
    Plural{"stigmata", "stigma"},
    Plural{"stomata", "stoma"},
    Plural{"genera", "genus"},
    Plural{"ovaries", "ovary"},
    Plural{"stamina", "stamen"},
    Plural{"foramina", "foramen"},
    Plural{"calyces", "calyx"},
    Plural{"calyxes", "calyx"},
    Plural{"apices", "apex"},
    Plural{"apexes", "apex"},
    Plural{"cortices", "cortex"},
    Plural{"cruces", "crux"},
    Plural{"indices", "index"},
    Plural{"vertices", "vertex"},
    Plural{"spadices", "spadix"},
    Plural{"larynges", "larynx"},
    Plural{"axes", "axis"},
    Plural{"bases", "base"},
    Plural{"testes", "testis"},
    Plural{"penes", "penis"},
    Plural{"species", "species"},
    Plural{"series", "series"},
    Plural{"ranks", "rank"},
    Plural{"mice", "mouse"},
    Plural{"phalanges", "phalanx"},
    Plural{"coxae", "coxa"},
    Plural{"fungi", "fungus"},
    Plural{"nuclei", "nucleus"},
    Plural{"tarsi", "tarsus"},
    Plural{"thalli", "thallus"},
    Plural{"sori", "sorus"},
    Plural{"culmi", "culmus"},
    Plural{"pili", "pilus"},
    Plural{"rami", "ramus"},
    Plural{"hami", "hamus"},
    Plural{"stimuli", "stimulus"},
    Plural{"umbos", "umbo"},
    Plural{"ocelli", "ocellus"},
    Plural{"flagella", "flagellum"},
    Plural{"labella", "labellum"},
    Plural{"cilia", "cilium"},
    Plural{"labia", "labium"},
    Plural{"involucra", "involucrum"},
    Plural{"septa", "septum"},
    Plural{"sporangia", "sporangium"},
    Plural{"indusia", "indusium"},
    Plural{"rhizomata", "rhizoma"},
    Plural{"femora", "femur"},
    Plural{"corpora", "corpus"},
    Plural{"opercula", "operculum"},
    Plural{"ostia", "ostium"},
    Plural{"spiracula", "spiraculum"},
    Plural{"scuta", "scutum"},
    Plural{"elytra", "elytron"},
    Plural{"ganglia", "ganglion"},
    Plural{"tepala", "tepalum"},
};

// Asked of most words, few of which begin and end like an irregular plural.
constexpr std::uint32_t letter_bit(char c) { return c >= 'a' && c <= 'z' ? 1U << (c - 'a') : 0U; }
constexpr auto kEndsByBeginning = [] {
  std::array<std::uint32_t, 256> ends{};
  for (auto const& entry : kPlurals) {
    ends[static_cast<unsigned char>(entry.many.front())] |= letter_bit(entry.many.back());
  }
  return ends;
}();

Plural const* irregular(std::string_view word) {
  if ((kEndsByBeginning[static_cast<unsigned char>(word.front())] & letter_bit(word.back())) == 0) {
    return nullptr;
  }
  static auto const plurals = [] {
    std::unordered_map<std::string_view, Plural const*> table;
    for (auto const& entry : kPlurals) table.emplace(entry.many, &entry);
    return table;
  }();
  auto const found = plurals.find(word);
  return found == plurals.end() ? nullptr : found->second;
}

}  // namespace

std::string singular(std::string_view word) {
  auto const drop = [&](std::size_t count) {
    return std::string{word.substr(0, word.size() - count)};
  };
  if (word.size() < 4) return std::string{word};
  auto const last = word.back();
  if (last != 's' && last != 'e' && last != 'a' && last != 'i') {
    return word == "teeth" || word == "feet" ? std::string{irregular(word)->one}
                                             : std::string{word};
  }
  if (auto const* entry = irregular(word)) return std::string{entry->one};
  if (word.ends_with("ae") && word.size() > 4) return drop(1);
  if (last != 's' || word.ends_with("ss") || word.ends_with("us") || word.ends_with("is")) {
    return std::string{word};
  }
  if (word.ends_with("ies") && word.size() > 4) return drop(3) + "y";
  if (word.ends_with("sses") || word.ends_with("xes") || word.ends_with("ches") ||
      word.ends_with("shes") || word.ends_with("zes")) {
    return drop(2);
  }
  if (word.ends_with("ives") && word.size() > 5) return drop(1);
  return drop(1);
}

std::string singular_words(std::string_view words) {
  std::string result;
  while (!words.empty()) {
    auto const blank = words.find(' ');
    if (!result.empty()) result.push_back(' ');
    result += singular(words.substr(0, blank));
    if (blank == std::string_view::npos) break;
    words.remove_prefix(blank + 1);
  }
  return result;
}

bool looks_plural(std::string_view word) { return singular(word) != word; }

}  // namespace keydrift::reading
