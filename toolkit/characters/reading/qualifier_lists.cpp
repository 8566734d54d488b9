#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/vocabulary.hpp"
#include "keydrift/characters/reading/word_trie.hpp"

namespace keydrift::reading {
namespace {

struct List {
  Sense sense;
  std::string_view value;
  bool needs_context;
  std::string_view phrases;  // separated by "|"
};

// All lists are common practice; those of other languages than English are the everyday words of
// printed keys.
constexpr std::array kLists{
    List{
        Sense::majority, "", false,
        "usually|mostly|generally|typically|normally|chiefly|mainly|often|frequently|commonly|"
        "largely|predominantly|ordinarily|as a rule|in general|for the most part|most often|"
        "very often|more often|most frequently|most commonly|tends to|tend to|tending to|"
        "tends to be|tend to be|tending to be|not always|not necessarily|not usually|"
        "almost always|nearly always|almost invariably|in most cases|in most specimens|"
        "in most individuals|in most plants|in many specimens|probably|possibly|perhaps|"
        "presumably|apparently|"
        "wahrscheinlich|möglicherweise|vielleicht|meist|meistens|zumeist|gewöhnlich|oft|häufig|in "
        "der Regel|überwiegend|vorwiegend|"
        "fast immer|nicht immer|normalerweise|im Allgemeinen|"
        "généralement|habituellement|ordinairement|souvent|le plus souvent|presque toujours|"
        "en général|d'ordinaire|pas toujours|fréquemment|normalement|"
        "generalmente|usualmente|normalmente|frecuentemente|a menudo|casi siempre|comúnmente|"
        "por lo general|en general|la mayoría de las veces|no siempre|con frecuencia|habitualmente|"
        "geralmente|frequentemente|quase sempre|em geral|nem sempre|comumente|muitas vezes|"
        "plerumque|vulgariter|saepe|saepius|saepissime|vulgo|fere semper|non semper"},
    List{Sense::minority, "", false,
         "less often|less commonly|less "
         "frequently|sometimes|occasionally|rarely|seldom|infrequently|exceptionally|very "
         "rarely|more rarely|"
         "only rarely|at times|now and then|not rarely|not infrequently|not uncommonly|may be|"
         "can be|in some individuals|in some specimens|in some cases|in aberrant specimens|"
         "selten|seltener|manchmal|zuweilen|gelegentlich|mitunter|bisweilen|ausnahmsweise|"
         "nicht selten|sehr selten|rarement|parfois|quelquefois|exceptionnellement|"
         "très rarement|plus rarement|de temps en temps|raramente|rara vez|a veces|ocasionalmente|"
         "excepcionalmente|algunas veces|às vezes|por vezes|ocasionalmente|poucas vezes|"
         "interdum|raro|rarius|rarissime|nonnunquam|nonnumquam|aliquando|subinde"},
    List{Sense::nearly, "", false,
         "±|+/-|more or less|almost|nearly|practically|virtually|scarcely|hardly|barely|"
         "approximately|mehr oder weniger|mehr oder minder|nahezu|beinahe|annähernd|kaum|"
         "plus ou moins|presque|à peu près|más o menos|casi|apenas|mais ou menos|quase|"
         "plus minusve|plus minus|fere|vix"},
    List{Sense::about, "", false,
         "ca|circa|about|c|approx|around|roughly|~|≈|some|etwa|ungefähr|rund|environ|vers|unos|"
         "d'environ|aproximadamente|cerca de|alrededor de|uns|umas|subinde circa|nearly|almost"},
    List{
        Sense::exception, "", false,
        "except|except in|except for|excepting|excluding|other than|but not in|save in|save for|"
        "save|all but|in all but|all except|with the exception of|apart from|aside from|exclusive "
        "of|exc|excl|"
        "außer|außer bei|außer in|ausgenommen|ausgenommen bei|ausgenommen in|mit Ausnahme von|"
        "mit Ausnahme der|mit Ausnahme des|sauf|sauf chez|sauf dans|excepté|excepté chez|hormis|"
        "hormis chez|à part|à l'exception de|à l'exception des|à l'exception du|excepto|excepto en|"
        "salvo|salvo en|con excepción de|a excepción de|exceptuando|menos en|exceto|exceto em|"
        "salvo em|a excepción de|à excepción de|com exceção de|à exceção de|menos "
        "em|excepta|exceptis|praeter"},
    // Exceptions only where a group's name follows.
    List{Sense::exception, "", true,
         "but not|not in|unless|unless in|but see|but see also|but compare|but cf|nicht bei|nicht "
         "in|pas chez|pas dans|no en|não em|non in|"
         "siehe aber|mais voir|pero véase|mas ver|sed vide"},
    List{Sense::condition, "", false,
         "unless|if not|if so|if present|when present|where present|if any|if developed|"
         "when developed|if|wenn vorhanden|falls|"
         "sofern vorhanden|si présent|à moins que|si présente|si presente|cuando presente|si "
         "existe|si existen|a menos "
         "que|quando presente|a não ser que|nisi|si adest"},
    List{Sense::at_least, "", false,
         "at least|minimum|min|not less than|no less than|never less than|not fewer than|"
         "no fewer than|not under|not below|≥|>=|mindestens|wenigstens|au moins|d'au moins|"
         "al menos|"
         "por lo menos|pelo menos|no mínimo|como mínimo|saltem"},
    List{Sense::at_most, "", false,
         "at most|up to|to|not more than|no more than|never more than|not over|not above|"
         "not exceeding|never exceeding|never "
         "over|reaching|attaining|maximum|max|≤|<=|höchstens|bis zu|bis|au plus|"
         "d'au plus|atteignant|jusqu'à|hasta|como máximo|a lo sumo|hasta de|até|no "
         "máximo|alcanzando|atingindo|usque ad|usque|ad"},
    List{Sense::more_than, "", false,
         "more than|greater than|exceeding|exceeds|over|above|in excess of|>|mehr als|über|"
         "plus de|más de|mayor de|mais de|mais que|maior que|plus quam"},
    List{Sense::less_than, "", false,
         "less than|fewer than|under|below|not reaching|<|weniger als|unter|moins de|menos de|"
         "menos que|menor que|menor de|minus quam"},
    List{Sense::between, "", false, "between|from|zwischen|von|entre"},
    List{Sense::or_more, "", false,
         "or more|and more|or over|and over|or above|or longer|or wider|or taller|or greater|+|"
         "oder mehr|und mehr|ou plus|et plus|o más|y más|ou mais|e mais|vel plures"},
    List{Sense::or_less, "", false,
         "or less|or fewer|and less|and fewer|or under|or below|or shorter|or narrower|or smaller|"
         "oder weniger|ou moins|o menos|ou menos|vel minus"},
    List{Sense::times, "", false, "times|×|x|mal|fois|veces|vezes"},
    List{Sense::negation, "", false,
         "not|never|nor|neither|non|nicht|nie|niemals|pas|jamais|no|nunca|jamás|não|numquam|haud|"
         "kein|keine|keinen|weder|ni|nem|nec|neque|nunquam"},
    List{Sense::without, "", false,
         "without|with no|having no|lacking|devoid of|destitute of|free of|free "
         "from|ohne|sans|sin|sem|sine"},
    List{Sense::either, "", false, "either|entweder|soit|ya sea|quer"},
    List{Sense::anaphora, "", false,
         "not as above|not so|otherwise|not as in above|without above combination|"
         "without above combination of characters|without this combination|"
         "without this combination of characters|not with above combination|"
         "not with above combination of characters|not with this combination|"
         "not with this combination of characters|not with above characters|"
         "characters not as above|lacking above combination|"
         "lacking above combination of characters|lacking this combination|"
         "not this combination|not this combination of characters|not combining above characters|"
         "not combining these characters|not having above combination of characters|"
         "without these characters|without above characters|nicht wie oben|anders|"
         "autrement|sans ces caractères|no como arriba|sin esa combinación de caracteres|"
         "não como acima|non ut supra"},
    List{Sense::sex, "male", false, "♂|♂♂|males|in males|in male|Männchen|mâles|machos|mares"},
    List{Sense::sex, "male", true, "male|mâle|macho|mas"},
    List{Sense::sex, "female", false,
         "♀|♀♀|females|in females|in female|Weibchen|femelles|hembras|fêmeas|feminae"},
    List{Sense::sex, "female", true, "female|femelle|hembra|fêmea|femina"},
    List{Sense::sex, "hermaphrodite", false, "hermaphrodites|in hermaphrodites"},
    List{Sense::sex, "worker", false, "workers|in workers|☿"},
    List{Sense::life_stage, "larva", false, "larvae|in larvae|in larva|Larven|larves|larvas"},
    List{Sense::life_stage, "larva", true, "larva|larval|Larve|larve"},
    List{Sense::life_stage, "nymph", false, "nymphs|in nymphs|in nymph|Nymphen|nymphes|ninfas"},
    List{Sense::life_stage, "nymph", true, "nymph|nymphal"},
    List{Sense::life_stage, "pupa", false, "pupae|in pupae|in pupa"},
    List{Sense::life_stage, "pupa", true, "pupa|pupal"},
    List{Sense::life_stage, "adult", false,
         "adults|in adults|in adult|imagines|imagos|mature individuals|mature specimens"},
    List{Sense::life_stage, "adult", true, "adult|imago|adulte|adulto"},
    List{Sense::life_stage, "juvenile", false,
         "juveniles|in juveniles|in juvenile|immatures|in immatures|young individuals|"
         "young specimens|immature specimens|juvéniles|juvenis"},
    List{Sense::life_stage, "juvenile", true, "juvenile|immature"},
    List{Sense::life_stage, "seedling", false, "seedlings|in seedlings"},
    List{Sense::material, "fruiting", false,
         "in fruit|when in fruit|when fruiting|at fruiting|fruiting plants|in fruiting plants|"
         "fruiting specimens|in fruiting specimens|in fruiting material|zur Fruchtzeit|en fruit|"
         "en fruto|em fruto|fructu maturo"},
    List{Sense::material, "fruiting", true, "fruiting"},
    List{Sense::material, "flowering", false,
         "in flower|when in flower|when flowering|at flowering|flowering plants|at anthesis|"
         "in flowering plants|flowering specimens|in flowering specimens|zur Blütezeit|en fleur|"
         "en flor|em flor|sub anthesi"},
    List{Sense::material, "flowering", true, "flowering"},
    List{Sense::material, "dried", false,
         "when dry|when dried|in dried material|in dried specimens|in dry specimens|"
         "in dry material|dried specimens|on drying|herbarium specimens|in herbarium specimens|"
         "in herbarium material|getrocknet|en herbier|en seco|seco|in sicco"},
    List{Sense::material, "dried", true, "dried|dry"},
    List{Sense::material, "fresh", false,
         "when fresh|in fresh material|in fresh specimens|in life|when alive|in living specimens|"
         "in living material|in living plants|in live specimens|im Leben|frisch|à l'état frais|en "
         "fresco|en vivo|em vida|in vivo"},
    List{Sense::material, "fresh", true, "fresh|living|live"},
    List{Sense::material, "young", false, "when young|while young|when still young"},
    List{Sense::material, "in alcohol", false,
         "in alcohol|in spirit|in preservative|in preserved specimens|preserved specimens|"
         "in preserved material"},
    List{Sense::season, "spring", false, "in spring|im Frühjahr|au printemps|en primavera"},
    List{Sense::season, "summer", false, "in summer|im Sommer|en été|en verano|no verão"},
    List{Sense::season, "autumn", false, "in autumn|in fall|im Herbst|en automne|en otoño"},
    List{Sense::season, "winter", false, "in winter|im Winter|en hiver|en invierno|no inverno"},
};

std::string sign_word(char32_t sign) {
  std::string word;
  if (sign < 0x80) {
    word += static_cast<char>(sign);
  } else if (sign < 0x800) {
    word += static_cast<char>(0xC0 | (sign >> 6));
    word += static_cast<char>(0x80 | (sign & 0x3F));
  } else {
    word += static_cast<char>(0xE0 | (sign >> 12));
    word += static_cast<char>(0x80 | ((sign >> 6) & 0x3F));
    word += static_cast<char>(0x80 | (sign & 0x3F));
  }
  return word;
}

std::string trie_word(Token const& token) {
  return token.kind == TokenKind::sign ? sign_word(token.sign) : token.word;
}

WordTrie<Sensed> make_trie() {
  WordTrie<Sensed> trie;
  for (auto const& list : kLists) {
    auto phrases = list.phrases;
    for (;;) {
      auto const bar = phrases.find('|');
      std::vector<std::string> words;
      for (auto const& token : tokenise(phrases.substr(0, bar))) words.push_back(trie_word(token));
      trie.at(words).push_back({list.sense, list.value, list.needs_context});
      if (bar == std::string_view::npos) break;
      phrases.remove_prefix(bar + 1);
    }
  }
  return trie;
}

bool is_english_article(Token const& token) {
  return token.kind == TokenKind::word &&
         (token.word == "the" || token.word == "a" || token.word == "an");
}

WordTrie<Sensed> const& phrase_trie() {
  static WordTrie<Sensed> const trie = make_trie();
  return trie;
}

std::uint32_t step(std::uint32_t node, Token const& token) {
  return token.kind == TokenKind::word ? phrase_trie().step(node, token.word)
                                       : phrase_trie().step(node, sign_word(token.sign));
}

}  // namespace

std::uint32_t phrase_root(Token const& token) {
  static_assert(kNoPhrase == WordTrie<Sensed>::kNowhere);
  if (token.kind == TokenKind::number || token.kind == TokenKind::mark) return kNoPhrase;
  return step(WordTrie<Sensed>::root(), token);
}

Phrases qualifiers_at(LeadText const& text, std::uint32_t at, std::uint32_t stop) {
  Phrases found;
  if (at >= stop || !text.may_qualify(at)) return found;
  auto const& trie = phrase_trie();
  auto node = text.phrase_roots[at];
  for (auto i = at;;) {
    for (auto const& meaning : trie.payloads(node)) found.push_back({meaning, i + 1});
    // "without the above", "more-or-less"
    for (++i; i < stop && (is_english_article(text.tokens[i]) || text.is_sign(i, U'-')); ++i) {
      auto const direct = step(node, text.tokens[i]);
      if (direct != kNoPhrase) break;
    }
    if (i >= stop) break;
    auto const& token = text.tokens[i];
    if (token.kind == TokenKind::number || token.kind == TokenKind::mark) break;
    node = step(node, token);
    if (node == kNoPhrase) break;
  }
  return found;
}

}  // namespace keydrift::reading
