#include "keydrift/formats/printed_genus_evidence.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_ranks.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kMostEvidenceLines = 20000;
constexpr std::size_t kLongestGenusWord = 40;  // bytes

// Evidence in the measure of a title's weights.
constexpr int kBeforeEpithet = 6;  // of the key, in full: "Aus bus" in an account
constexpr int kMostBeforeEpithet = 18;
constexpr int kAnnounced = 8;  // "revision of the genus AUS"
constexpr int kAlone = 3;      // on a line
constexpr int kMostAlone = 6;
constexpr int kAccount = 3;  // "Aus cus Roe", of no species in the key
constexpr int kMostAccount = 6;
constexpr int kInitialEvidence = 3;  // "A. bus" for the bus of the key
constexpr int kMostInitial = 6;
constexpr int kHead = 8;       // "612. AUS Roe."
constexpr int kOpensLead = 4;  // "a. Drupa bare"
constexpr int kMostOpensLead = 12;
constexpr int kOfSentence = 2;  // "Corolla tubular"
constexpr int kMostOfSentence = 8;
constexpr int kInSmallLetters = 8;  // "corolla"
constexpr int kCited = 4;           // "Roe, Isis"
constexpr int kBetweenMarks = 6;    // "Home > Plants"

// The word without the signs around it.
std::string_view bare_word(std::string_view word) {
  while (!word.empty() && "([\"'*"sv.find(word.front()) != std::string_view::npos) {
    word.remove_prefix(1);
  }
  while (!word.empty() && ",.:;)]\"'"sv.find(word.back()) != std::string_view::npos) {
    word.remove_suffix(1);
  }
  return word;
}

bool is_number_before_name(std::string_view word) {
  return is_digit(code_point_at(word, 0).value) &&
         word.find_first_not_of("0123456789.,:;)–-"sv) == std::string_view::npos;
}

// "Home > Plants"
bool is_way_mark(std::string_view word) {
  return word == ">" || word == "»" || word == "|" || word == "›";
}

// "Ausella busa (Roe)", "12. Ausella busa.": the line names a species and nothing else.
bool heads_account(std::vector<std::string_view> const& words, std::size_t genus) {
  constexpr std::size_t kMostBehind = 3;  // an author in brackets, or two of them
  bool const first = genus == 0 || (genus == 1 && is_number_before_name(words[0]));
  auto const behind = words.size() - genus - 2;
  // "1. Ausella busa (Roe) Dorn, Jour. 2: 40. 1872."
  if (first && genus == 1 && behind > 0 &&
      (is_authorish(words[genus + 2]) || words[genus + 2].starts_with('('))) {
    return true;
  }
  if (!first || behind > kMostBehind) return false;
  // "Ausella busa Roe, 1863, Verhandl." is a citation.
  if (behind > 1 && words[genus + 2].ends_with(',')) return false;
  return behind == 0 || is_authorish(words[genus + 2]) || words[genus + 2].starts_with('(');
}

// "the", "les": a genus may follow it, where places follow "in", and nouns of German "der".
bool is_article(std::string_view word) {
  static constexpr std::array kArticles{"the"sv, "les"sv, "des"sv, "los"sv, "las"sv, "gli"sv};
  return is_one_of(kArticles, fold(word));
}

int at_most(std::size_t count, int each, int most) {
  auto const whole = static_cast<int>(std::min<std::size_t>(count, 100)) * each;
  return std::min(whole, most);
}

}  // namespace

GenusEvidence::GenusEvidence(std::vector<SourceLine> const& lines,
                             std::unordered_set<std::string> const& epithets,
                             std::unordered_set<std::string> words, std::vector<bool> const& leads)
    : words_{std::move(words)} {
  for (std::size_t i = 0; i < std::min(lines.size(), kMostEvidenceLines); ++i) {
    auto const text = lines[i].text;
    if (text.empty()) continue;
    if (may_have_stress(text)) {
      look_at(without_stress(text), epithets, leads[i]);
    } else {
      look_at(text, epithets, leads[i]);
    }
  }
  know_mentioned();
}

void GenusEvidence::know_mentioned() {
  for (auto const& genus : mentioned_) {
    if (initials_.contains(std::string{initial_of(genus)})) know(genus, uses_[genus]);
  }
}

void GenusEvidence::look_at_head(std::string_view line) {
  auto const head = read_group_head(line);
  if (!head || !head->sure || head->genus.empty()) return;
  auto& uses = uses_[head->genus];
  ++uses.heads;
  know(head->genus, uses);
}

// "a. Drupa bare": a noun of the leads, whatever stands behind it.
void GenusEvidence::look_at_lead(std::string_view line) {
  constexpr std::size_t kLabels = 3;  // words, with a back-reference
  auto const words = words_of(start_of(line, 120), kLabels + 2);
  for (std::size_t w = 0; w + 1 < words.size() && w <= kLabels; ++w) {
    auto const bare = bare_word(words[w]);
    if (bare.size() < 3 || roman_number(bare) > 0) continue;
    if (is_capitalised(bare)) ++uses_[full_genus(bare)].opens_leads;
    return;
  }
}

void GenusEvidence::know(std::string const& genus, Uses& uses) {
  if (!std::exchange(uses.candidate, true)) candidates_.push_back(genus);
}

void GenusEvidence::look_at(std::string_view line, std::unordered_set<std::string> const& epithets,
                            bool lead) {
  if (trim(line).empty()) return;  // nothing but marks of stress
  if (lead) {
    look_at_lead(line);
    // "7. Ausella Roe in Bot. Zeitschr. XXI. (1863) 317": a head that reads as a lead.
    if (line.find(" in ") != std::string_view::npos && line.find(" (1") != std::string_view::npos) {
      look_at_head(line);
    }
  } else {
    look_at_head(line);
  }
  auto const words = words_of(line);
  look_for_title(words);
  // "Type species, Busella busa Roe." names the genus that it was described in.
  auto const typifies = fold(bare_word(words[0]));
  if (typifies == "type" || typifies == "typus" || typifies == "type-species") return;
  for (std::size_t w = 0; w < words.size(); ++w) {
    if (is_abbreviated(words[w]) && w + 1 < words.size()) {
      auto const epithet = std::string{bare_word(words[w + 1])};
      if (epithets.contains(epithet)) ++initials_[std::string{initial_of(words[w])}];
    }
    auto const bare = bare_word(words[w]);
    if (bare.size() < 3 || bare.size() > kLongestGenusWord) continue;
    if (is_lower(code_point_at(bare, 0).value)) {
      small_.emplace(bare);
      continue;
    }
    // "Tabelle der europäischen Ausella-Arten"
    constexpr std::string_view kSpecies = "-Arten";
    if (bare.ends_with(kSpecies) && bare.size() > kSpecies.size() + 3) {
      auto const of = std::string{bare.substr(0, bare.size() - kSpecies.size())};
      if (is_capitalised(of) && has_strict_latin_ending(fold(of))) {
        auto& announced = uses_[of];
        ++announced.announced;
        know(of, announced);
      }
      continue;
    }
    if (!is_capitalised(bare)) continue;
    auto const genus = full_genus(bare);
    if (words_.contains(genus)) continue;
    auto& uses = uses_[genus];
    auto const before = w > 0 ? words[w - 1] : std::string_view{};
    if (is_way_mark(before) || (w + 1 < words.size() && is_way_mark(words[w + 1]))) {
      ++uses.between_marks;
    }
    if (before.ends_with(',') && is_capitalised(without_end(before))) ++uses.cited;
    // "Sect. II. Euausella": the typical section of Ausella, as older works name it (ICN
    // Art. 21.3 forbids the prefix; from memory).
    constexpr std::string_view kTypical = "Eu";
    constexpr std::size_t kLookedBack = 2;
    bool section = false;
    for (std::size_t back = 1; back <= std::min(kLookedBack, w); ++back) {
      section = section || names_section(fold(bare_word(words[w - back])));
    }
    if (section && bare.starts_with(kTypical) && bare.size() > kTypical.size() + 3) {
      auto of = std::string{bare.substr(kTypical.size())};
      of[0] = static_cast<char>(of[0] - 'a' + 'A');
      if (of[0] >= 'A' && of[0] <= 'Z' && has_latin_ending(of)) {
        auto& typical = uses_[of];
        ++typical.announced;
        know(of, typical);
      }
    }
    // "generis Ausae" is not the name's own form.
    if (w > 0 && says_genus(fold(before)) && fold(before) != "generis" &&
        has_latin_ending(fold(genus))) {
      ++uses.announced;
      know(genus, uses);
    }
    // "Les Ausella adultes se rencontrent d'avril à octobre", "… ohne Scutum (Ausella Roe) 10"
    bool const bracketed = words[w].front() == '(' && w + 1 < words.size() &&
                           words[w + 1].ends_with(')') && is_authorish(bare_word(words[w + 1]));
    bool const within = bracketed || (w > 0 && is_article(before));
    if (within && !lead && has_strict_latin_ending(genus) && !has_higher_ending(fold(genus)) &&
        !is_title_word(fold(genus)) && !is_region(fold(genus))) {
      if (uses.mentions++ == 0) mentioned_.push_back(genus);
    }
    // "34 Fam. Ausidae: 6. Ausella": the head of a page
    bool const counted = w > 1 && is_number_before_name(before) && words[w - 2].ends_with(':') &&
                         has_higher_ending(fold(bare_word(words[w - 2])));
    if (counted && has_latin_ending(fold(genus))) {
      ++uses.announced;
      know(genus, uses);
    }
    if (w + 1 >= words.size()) continue;
    // "Aus subgen. Bus Roe", "Aus sect. Cus"
    auto const rank = words[w + 1];
    if ((rank == "subgen." || rank == "subg." || rank == "sect." || rank == "subsect.") &&
        has_strict_latin_ending(fold(genus))) {
      ++uses.alone;
      know(genus, uses);
    }
    // A stop or a comma parts the word from the next one.
    if (bare.data() + bare.size() != words[w].data() + words[w].size()) continue;
    auto next = bare_word(words[w + 1]);
    // "331. AUS BUS, Roe."
    constexpr std::size_t kShortest = 3;  // letters of words in capitals
    bool const capitals = is_in_capitals(bare, kShortest) && is_in_capitals(next, kShortest);
    bool const lower = is_lower(code_point_at(next, 0).value);
    if (!(lower || capitals) || !is_plain_word(next)) continue;
    auto const epithet = capitals ? fold(next) : std::string{next};
    if (capitals && !epithets.contains(epithet)) continue;
    if (epithets.contains(epithet)) {
      // "1. Ausella busa." and no more heads an account, though it reads as a lead.
      bool const head = !lead || (w == 1 && words.size() == 3 && is_number_before_name(words[0]));
      if (head && heads_account(words, w)) ++uses.heads;
      if (!has_higher_ending(fold(genus)) && uses.epithets.insert(epithet).second) {
        auto& genera = before_[epithet];
        genera.push_back(genus);
        know(genus, uses);
      }
      continue;
    }
    // "Ausella busa (Roe) Dorn, Bull. 4: 17. 1983." of a species that the key leaves out
    bool const account = !lead && w == 0 && w + 2 < words.size() && is_latin_epithet(next) &&
                         next.data() + next.size() == words[1].data() + words[1].size() &&
                         (is_authorish(words[2]) || words[2].starts_with('(')) &&
                         has_strict_latin_ending(fold(genus)) && !has_higher_ending(fold(genus));
    if (account) {
      ++uses.accounts;
      know(genus, uses);
    }
    bool const opens =
        w == 0 || before.ends_with('.') || before.ends_with(';') || is_number_before_name(before);
    if (opens && !is_latin_epithet(next)) ++uses.of_sentences;
  }
}

// "14. AUS.", "AUS 231", "9. AUS Roe, Ann. …", "AUS (after Auser)": the line is a genus's.
void GenusEvidence::look_for_title(std::vector<std::string_view> const& words) {
  constexpr std::size_t kMostWords = 4;  // with a number, an author and a page
  std::size_t w = 0;
  bool const numbered = words.size() > 1 && is_number_before_name(words[0]);
  if (numbered) ++w;
  // "(Aus ROE, 1830, non DORN).": a synonym.
  if (words[w].starts_with('(')) return;
  auto const bare = bare_word(words[w]);
  if (bare.size() < 3 || bare.size() > kLongestGenusWord || !is_capitalised(bare)) return;
  auto const genus = full_genus(bare);
  bool const capitals = genus != bare;
  // "TRANS. MARSH ENT. SOC.": a journal.
  bool const cut_short =
      words[w].ends_with('.') && std::any_of(words.begin() + static_cast<std::ptrdiff_t>(w) + 1,
                                             words.end(), is_cut_short_in_capitals);
  if (cut_short && capitals) return;
  auto const folded = fold(genus);
  if (!has_strict_latin_ending(folded) || has_higher_ending(folded)) return;
  if (is_title_word(folded) || is_region(folded) || words_.contains(genus)) return;
  if (is_common_before_genus(words, w)) return;
  std::size_t rest = words.size() - w - 1;
  if (rest > 0 && is_number_before_name(words.back())) --rest;
  bool const authored = rest > 0 && is_authorish(words[w + 1]);
  bool const alone = rest == 0 || (authored && w + rest <= kMostWords);
  // "AUSERIA (after Auser, a gardener)."
  bool const derived = capitals && !numbered && rest > 0 && words[w + 1].starts_with('(');
  bool const headed = (capitals && authored && numbered) || derived;
  if (!alone && !headed) return;
  auto& uses = uses_[genus];
  ++uses.alone;
  know(genus, uses);
}

int GenusEvidence::weight(std::string const& genus) const {
  auto const found = uses_.find(genus);
  if (found == uses_.end()) return 0;
  auto const initial = initials_.find(std::string{initial_of(genus)});
  auto const& uses = found->second;
  int weight = at_most(uses.epithets.size(), kBeforeEpithet, kMostBeforeEpithet) +
               at_most(uses.alone, kAlone, kMostAlone) + at_most(uses.heads, kHead, kHead) +
               at_most(uses.announced, kAnnounced, kAnnounced) +
               at_most(uses.accounts, kAccount, kMostAccount);
  if (initial != initials_.end()) {
    weight += at_most(initial->second, kInitialEvidence, kMostInitial);
  }
  weight -= at_most(uses.opens_leads, kOpensLead, kMostOpensLead);
  weight -= at_most(uses.of_sentences, kOfSentence, kMostOfSentence);
  if (small_.contains(fold(genus))) weight -= kInSmallLetters;
  if (uses.cited > 0 && uses.epithets.empty() && uses.alone == 0) weight -= kCited;
  if (uses.between_marks > 0) weight -= kBetweenMarks;
  return weight;
}

std::vector<std::string> GenusEvidence::before_epithet(std::string const& epithet) const {
  auto const found = before_.find(epithet);
  if (found == before_.end()) return {};
  auto genera = found->second;
  std::stable_sort(genera.begin(), genera.end(),
                   [this](auto const& a, auto const& b) { return weight(a) > weight(b); });
  return genera;
}

}  // namespace keydrift::printed
