#include "keydrift/formats/printed_names.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <utility>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_hybrids.hpp"
#include "keydrift/formats/printed_name_letters.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_numbered_species.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_passage_genus.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_told_genera.hpp"
#include "keydrift/formats/printed_words_before_epithets.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t kLongestBeginning = 4;  // letters before the full stop of an abbreviation

// Of one to four letters.
std::vector<std::string> beginnings(std::string_view genus) {
  return beginnings_of(genus, kLongestBeginning);
}

constexpr int kInitialWeight = 6;  // of a title's genus that leads abbreviate
constexpr int kSureWeight = 6;     // of one that its part's title is believed
constexpr int kLeastWeight = 1;    // less, and a word is no genus
constexpr int kSureEvidence = 9;   // of a genus without a Latin ending
constexpr int kStrictEnding = 4;   // as genera_in_title() weighs it

bool is_one_word(std::string_view name) {
  return !name.empty() && name.find(' ') == std::string_view::npos;
}

// "CYCLOGR^A", of which a sign within is no letter.
bool is_damaged_in(std::string_view title, std::string_view genus) {
  auto const whole = fold(title);
  auto const at = whole.find(fold(genus));
  if (at == std::string::npos) return false;
  auto const behind = std::string_view{whole}.substr(at + genus.size(), 2);
  return behind.starts_with('^') || behind == "-^";
}

std::string_view after_first_word(std::string_view name) {
  auto const blank = name.find(' ');
  return blank == std::string_view::npos ? std::string_view{} : name.substr(blank + 1);
}

// "Aus bus", "A. bus": the species that a title names, as printed.
std::vector<std::string> species_in_title(std::string_view title) {
  std::vector<std::string> species;
  auto const words = words_of(title);
  for (std::size_t w = 0; w + 1 < words.size(); ++w) {
    auto const epithet = words[w + 1].substr(0, words[w + 1].find_first_of(".,;:)"));
    bool const full = full_genus(words[w]) == words[w] && has_latin_ending(words[w]);
    if ((full || (w > 0 && is_abbreviated(words[w]))) && is_epithet(epithet) &&
        has_epithet_ending(epithet)) {
      species.push_back(std::string{words[w]} + " " + std::string{epithet});
    }
  }
  return species;
}

// "Plumbellária verticilláta", and not "Mosca común".
bool is_stressed_name(std::vector<std::string_view> const& words) {
  if (words.size() < 2 || !is_epithet(words[1])) return false;
  return has_latin_ending(fold(without_stress(words[0]))) &&
         is_latin_epithet(without_stress(words[1]));
}

// "Ausella" of "… bilobed. (G. Ausella Roe)", "… (Gattung Ausella)", "… (Ausella n. g.)"; empty for
// words that name none so.
std::string_view genus_said_last(std::string_view text) {
  text = without_full_stop(trim_right(text));
  auto const open = text.rfind('(');
  if (!text.ends_with(')') || open == std::string_view::npos) return {};
  auto const words = words_of(text.substr(open + 1, text.size() - open - 2));
  if (words.size() < 2) return {};
  bool const told = fold(words[0]) == "g." || says_genus(words[0]);
  auto const rest = words.begin() + (told ? 2 : 1);
  static constexpr std::array kNews{"n."sv, "g."sv, "gen."sv, "nov."sv};
  bool const is_new = !told && std::all_of(rest, words.end(), [](std::string_view word) {
    return is_one_of(kNews, word);
  });
  bool const authored = told && std::all_of(rest, words.end(), [](std::string_view word) {
                          return is_authorish(word) || is_particle(word) || is_one_of(kNews, word);
                        });
  return is_new || authored ? without_closing_marks(words[told ? 1 : 0]) : std::string_view{};
}

// Without the sentences that say what the key leaves out: "Species of Busella are not included.",
// which may be cut short.
std::string without_excluded(std::string const& text) {
  static constexpr std::array kExcluding{"not inclu"sv,      "are excluded"sv, "not treated"sv,
                                         "not considered"sv, "not keyed"sv,    "is excluded"sv};
  auto const excludes = [](std::string_view sentence) {
    return std::any_of(kExcluding.begin(), kExcluding.end(), [&](std::string_view words) {
      return sentence.find(words) != std::string_view::npos;
    });
  };
  if (!excludes(text)) return text;
  std::string kept;
  std::string_view const whole = text;
  for (std::size_t at = 0; at < whole.size();) {
    auto const stop = std::min(whole.find(". ", at), whole.size());
    auto const sentence = whole.substr(at, stop - at);
    if (!excludes(sentence)) kept += std::string{sentence} + ". ";
    at = stop + 2;
  }
  return kept;
}

}  // namespace

std::set<std::string> initials_of(std::vector<ReadLead> const& reads) {
  std::set<std::string> initials;
  for (auto const& read : reads) {
    for (auto const& taxon : read.to.taxa.taxa) {
      auto const words = words_of(taxon.name);
      if (words.empty()) continue;
      auto const first = words.front();
      if (!is_abbreviated(first)) continue;
      initials.insert(std::string{initial_of(first)});
    }
  }
  return initials;
}

NameTable::NameTable(KeyText const& key, std::vector<ReadLead> const& reads,
                     std::vector<std::string> const& titles,
                     std::vector<std::string> const& passages)
    : told_names_{key.told}, findings_{key.name} {
  auto const& lines = key.lines;
  capitals_are_epithets_ = are_capitals_epithets(reads, titles, lines);
  find_autonyms(reads);
  weigh_evidence(reads, lines);
  if (evidence_) {  // else no genus is cut short
    if (told_names_ != nullptr) told_ = told_names_->genera();
    told_.merge(told_genera(lines));
  }
  std::vector<std::string> lone;
  auto const know = [&](std::string const& genus) {
    if (genus.empty() || !genera_seen_.insert(genus).second) return;
    for (auto& beginning : beginnings(genus)) genera_[beginning].push_back(genus);
  };
  std::unordered_map<std::string, std::size_t> uses;  // of genera with a species
  for (auto const& read : reads) {
    for (auto const& taxon : read.to.taxa.taxa) {
      if (!taxon.genusless && !is_one_word(taxon.name)) ++uses[full_genus(taxon.name)];
    }
  }
  for (auto const& read : reads) {
    for (auto const& taxon : read.to.taxa.taxa) {
      if (taxon.genusless || (capitals_are_epithets_ && is_one_word(taxon.name))) continue;
      auto const genus = full_genus(taxon.name);
      auto const rest = after_first_word(taxon.name);
      if (!rest.empty()) epithets_.emplace(rest);
      // A lone capitalised word may be a genus and its epithet set as one.
      // No species belongs to a family, nor to "§ Minores" as to a genus.
      bool const higher =
          has_higher_ending(fold(genus)) || read.to.taxa.before.starts_with("\u00A7");
      if (!genus.empty() && rest.empty() && !higher) lone.push_back(genus);
      if (rest.empty()) continue;
      // "Corolla purple", "Paramere die"
      bool const seldom = evidence_ && (evidence_->weight(genus) < 0 || uses[genus] == 1);
      bool const form =
          has_strict_latin_ending(genus) && evidence_ && evidence_->weight(genus) >= 0;
      bool const words = seldom && !form && !is_latin_epithet(rest);
      if (!words) know(genus);
      if (!genus.empty()) full_names_.insert(taxon.name);
    }
  }
  for (auto const& genus : lone) {
    if (parted_name(genus).empty()) know(genus);
  }
  auto const initials = initials_of(reads);
  for (auto const& read : reads) {
    // "… bilobed ..... 5 (Ausella)", "… bilobed (G. Ausella Roe) .... 5": the genus that couplet 5
    // keys on, where leads shorten it.
    if (read.to.form != DestinationForm::couplet) continue;
    auto group = bare_name(read.to.remark);
    if (group.empty()) group = genus_said_last(read.lead.text);
    bool const genus =
        is_one_word(group) && is_latin_genus(group) && !has_higher_ending(fold(group));
    if (!genus || !initials.contains(std::string{initial_of(group)})) continue;
    know(std::string{group});
    group_genera_.emplace(group);
  }
  std::unordered_set<std::string> from_names;  // their initials
  for (auto const& genus : genera_seen_) from_names.emplace(initial_of(genus));
  // A title's genus stands in for those that the leads nowhere name in full.
  std::vector<TitleGenus> titled;
  for (auto const& title : titles) {
    for (auto& genus : genera_in_title(without_excluded(title))) {
      if (initials.contains(std::string{initial_of(genus.name)})) genus.weight += kInitialWeight;
      if (evidence_) genus.weight += evidence_->weight(genus.name);
      titled.push_back(std::move(genus));
    }
    auto species = species_in_title(title);
    std::move(species.begin(), species.end(), std::back_inserter(title_species_));
  }
  if (evidence_) {
    std::unordered_set<std::string> seen;
    for (auto const& genus : titled) seen.insert(genus.name);
    for (auto const& genus : evidence_->candidates()) {
      int weight = evidence_->weight(genus);
      // Before an epithet of the key and alone besides, as heads have it: a genus, however it ends.
      bool const sure = weight >= kSureEvidence;
      if (seen.contains(genus) || !(has_latin_ending(genus) || sure)) continue;
      if (has_strict_latin_ending(genus)) weight += kStrictEnding;
      if (initials.contains(std::string{initial_of(genus)})) weight += kInitialWeight;
      titled.push_back({genus, weight});
    }
  }
  // "TIBIALIS (Roe)" heads the account of a species that a lead leads to.
  auto const is_epithet_too = [this](TitleGenus const& genus) {
    return lone_epithets_.contains(fold(genus.name));
  };
  // A genus may share its word with a species where nothing else may be the genus.
  bool const others = std::any_of(titled.begin(), titled.end(), [&](TitleGenus const& genus) {
    return genus.weight >= kLeastWeight && !is_epithet_too(genus);
  });
  if (others) std::erase_if(titled, is_epithet_too);
  std::stable_sort(titled.begin(), titled.end(),
                   [](TitleGenus const& a, TitleGenus const& b) { return a.weight > b.weight; });
  std::erase_if(titled, [](TitleGenus const& genus) { return genus.weight < kLeastWeight; });
  for (auto const& genus : titled) {
    if (evidence_) best_evidence_ = std::max(best_evidence_, evidence_->weight(genus.name));
  }
  for (auto const& genus : titled) {
    if (!from_names.contains(std::string{initial_of(genus.name)})) know(genus.name);
  }
  if (!titled.empty()) last_genus_ = titled.front().name;
  // Else any text that names it: "Specimens of Aus spp. were seen".
  for (auto const& initial : initials) {
    if (genera_.contains(initial)) continue;
    for (auto const& passage : passages) {
      auto const genus = genus_in_passage(passage, initial, epithets_);
      if (genus.empty()) continue;
      know(genus);
      break;
    }
  }
}

void NameTable::weigh_evidence(std::vector<ReadLead> const& reads,
                               std::vector<SourceLine> const& lines) {
  std::unordered_set<std::string> epithets;
  std::unordered_set<std::string> before;  // last words of leads that lead to epithets alone
  bool wanted = false;
  for (auto const& read : reads) {
    bool const genusless = !read.to.taxa.taxa.empty() && read.to.taxa.taxa.front().genusless;
    if (genusless) {
      std::string_view const text = read.lead.text;
      auto const last = last_word_begin(text);
      if (may_stand_before_place(text.substr(0, last))) before.emplace(text.substr(last));
    }
    for (auto const& taxon : read.to.taxa.taxa) {
      auto const words = words_of(taxon.name);
      if (words.empty() || taxon.literal) continue;
      bool const lone = taxon.genusless || (capitals_are_epithets_ && words.size() == 1);
      if (lone || is_abbreviated(words[0])) wanted = true;
      if (lone) {
        epithets.insert(fold(words[0]));
        lone_epithets_.insert(fold(words[0]));
      }
      if (!lone && words.size() > 1 && is_epithet(words[1])) epithets.emplace(words[1]);
    }
  }
  if (!wanted) return;
  note_numbered_capitals(reads, lines);
  std::unordered_set<std::size_t> numbers;  // of lines; run-on leads share them
  for (auto const& read : reads) numbers.insert(read.lead.place.line);
  std::vector<bool> starts(lines.size());
  std::transform(lines.begin(), lines.end(), starts.begin(),
                 [&numbers](SourceLine const& line) { return numbers.contains(line.number); });
  evidence_.emplace(lines, epithets, std::move(before), starts);
}

// "1093. LONGICORNIS." on a line of its own where leads end in "1092. politus." and "1094.
// dubius.": a species, whatever it was read as.
void NameTable::note_numbered_capitals(std::vector<ReadLead> const& reads,
                                       std::vector<SourceLine> const& lines) {
  constexpr std::size_t kFewest = 3;    // ends with a number
  constexpr std::size_t kLongest = 40;  // bytes of such a line
  std::vector<std::uint32_t> numbers;
  for (auto const& read : reads) {
    auto const& taxa = read.to.taxa.taxa;
    if (taxa.size() != 1 || !taxa.front().genusless) continue;
    if (auto const number = species_number_at(read.lead.destination_printed); number > 0) {
      numbers.push_back(number);
    }
  }
  if (numbers.size() < kFewest) return;
  auto const [least, most] = std::minmax_element(numbers.begin(), numbers.end());
  for (auto const& line : lines) {
    if (line.text.size() > kLongest) continue;
    auto const words = words_of(line.text, 3);
    if (words.size() != 2 || !is_in_capitals(without_closing_marks(words[1]), 3)) continue;
    auto const number = species_number_at(line.text);
    if (number + 1 >= *least && number <= *most + 1) {
      lone_epithets_.insert(fold(without_closing_marks(words[1])));
    }
  }
}

// "Lundaka" of a title where a lead leads on to the genus Lundakana.
bool NameTable::is_other_than_groups(std::string const& genus) const {
  return !group_genera_.contains(genus) &&
         std::any_of(group_genera_.begin(), group_genera_.end(), [&genus](std::string const& one) {
           return initial_of(one) == initial_of(genus);
         });
}

void NameTable::find_autonyms(std::vector<ReadLead> const& reads) {
  std::vector<std::string> run;
  constexpr std::size_t kLongest = 40;  // taxa beneath one species
  auto const close = [&] {
    if (run.size() > kLongest) run.clear();
    for (auto const& epithet : run) runs_.emplace(epithet, run);
    run.clear();
  };
  for (auto const& read : reads) {
    for (auto const& taxon : read.to.taxa.taxa) {
      auto const words = words_of(taxon.name, 3);
      if (words.size() == 2 && is_rank(words[0]) && words[0].size() > 2) {
        run.emplace_back(words[1]);
      } else {
        close();
      }
    }
  }
  close();
}

// The species that names without one stand beneath: that of the account around, the one whose
// epithet comes back in a variety's (ICN Art. 26.1), else the one read last, else the title's.
std::string NameTable::species_over(std::string_view name) const {
  if (!account_species_.empty()) return account_species_;
  if (auto const run = runs_.find(std::string{after_first_word(name)}); run != runs_.end()) {
    for (auto const& epithet : run->second) {
      auto const found = species_by_epithet_.find(epithet);
      if (found != species_by_epithet_.end()) return found->second;
    }
  }
  if (!last_species_.empty() || title_species_.empty()) return last_species_;
  return with_full_genus(title_species_.front());
}

// "Aus bus" for "A. bus", where anything tells the genus.
std::string NameTable::with_full_genus(std::string const& species) const {
  auto const genus = species.substr(0, species.find(' '));
  if (!is_abbreviated(genus)) return species;
  auto const epithet = std::string{after_first_word(species)};
  std::string others;
  auto const full = genus_for(genus.substr(0, genus.size() - 1), epithet, others);
  return full.empty() ? species : full + " " + epithet;
}

// "3. A. bus Roe. Annual.": the account of a species, within which a key stands.
std::string NameTable::species_of_account(std::string_view title) const {
  auto const head = read_account_head(title);
  if (!head || head->number == 0 || head->doubtful) return {};
  auto const name =
      read_account_name(title.substr(head->name_begin, head->name_end - head->name_begin));
  auto const words = words_of(name.name, 2);
  if (name.genusless || words.size() < 2) return {};
  auto species = with_full_genus(std::string{words[0]} + " " + std::string{words[1]});
  return is_abbreviated(species.substr(0, species.find(' '))) ? std::string{} : species;
}

// "Natural" of "188 BULLETIN MUSEUM OF NATURAL HISTORY" in the head of a page, whatever its ending;
// "Nederlandsche" of the only key's title, which is no genus by its ending: where the text speaks
// for another much more.  What is called a genus is one.
bool NameTable::is_outdone(std::string const& genus, std::string const& title, bool only) const {
  bool const other = evidence_ && best_evidence_ >= kSureEvidence &&
                     best_evidence_ >= evidence_->weight(genus) + kSureEvidence;
  if (!other) return false;
  auto const words = words_of(title);
  bool const called = mentions_key(title) ||
                      std::any_of(words.begin(), words.end(),
                                  [](std::string_view word) { return says_genus(fold(word)); });
  if (called) return is_damaged_in(title, genus);
  auto const is_number = [](std::string_view word) {
    return is_digit(static_cast<unsigned char>(word.front()));
  };
  bool const head = words.size() > 2 && mostly_capitals(title) &&
                    (is_number(words.front()) || is_number(words.back()));
  return head || (only && !has_strict_latin_ending(genus));
}

void NameTable::enter_part(std::vector<std::string> const& titles,
                           std::optional<GroupHead> const& head, bool only) {
  note_nearest();
  part_genus_.clear();
  account_species_.clear();
  for (auto const& title : titles) {
    if (auto species = species_of_account(title); !species.empty()) account_species_ = species;
    // "Key to the subspecies of Aus bus" stands above them as the lead to Aus bus would.
    for (auto const& printed : species_in_title(title)) {
      auto species = with_full_genus(printed);
      if (genera_seen_.contains(full_genus(species))) last_species_ = std::move(species);
    }
  }
  TitleGenus best;
  TitleGenus named;  // not as surely
  for (auto const& title : titles) {
    TitleGenus own;
    for (auto& genus : genera_in_title(title)) {
      if (is_other_than_groups(genus.name)) continue;
      if (evidence_) genus.weight += std::min(0, evidence_->weight(genus.name));
      if (is_outdone(genus.name, title, only)) continue;
      if (genus.weight > own.weight) own = std::move(genus);
    }
    // Of two headings that say so, "Genus Ausella" and "Genus Busoglene", the nearer one heads the
    // key, however it ends.
    bool const nearer = says_genus(fold(title.substr(0, title.find(' ')))) &&
                        own.weight + kStrictEnding >= best.weight;
    if (own.weight >= kSureWeight && (own.weight >= best.weight || nearer)) {
      best = std::move(own);
    } else if (own.weight > named.weight) {
      named = std::move(own);
    }
  }
  // "DIRETORIA DO FOMENTO", an office above "Chave para as espécies de Ausanes": the text speaks
  // much more of the other.
  bool const outdone =
      head && evidence_ && !named.name.empty() &&
      evidence_->weight(named.name) >= evidence_->weight(head->genus) + kSureEvidence;
  bool const headed = head && head->sure && !head->genus.empty() && !outdone;
  if (best.weight < kSureWeight && headed) best.name = head->genus;
  if (best.name.empty()) return;
  last_genus_ = part_genus_ = best.name;
  note_nearest();
  // "A." beneath "Genus AUS" is Aus, whatever genus with that initial was read before.
  for (auto& beginning : beginnings(best.name)) {
    auto& candidates = genera_[beginning];
    if (std::find(candidates.begin(), candidates.end(), best.name) == candidates.end()) {
      candidates.push_back(best.name);
    }
    nearest_[beginning] = best.name;
  }
}

void NameTable::see_genus(std::string const& genus, bool with_species) {
  if (!with_species && has_higher_ending(fold(genus))) return;
  // "Aus" alone is led to beside the species of the key's own genus.
  if (with_species || last_genus_.empty()) last_genus_ = genus;
  if (seen_.empty() || seen_.back() != genus) seen_.push_back(genus);
}

void NameTable::note_nearest() {
  for (auto const& genus : seen_) {
    for (auto& beginning : beginnings(genus)) nearest_[beginning] = genus;
  }
  seen_.clear();
}

std::string NameTable::contracted(std::string_view letters) const {
  constexpr std::size_t kLetters = 2;
  constexpr std::size_t kMostGenera = 100;  // among more some other one will fit as well
  // "Ae." and "Ch." begin words, and are cut short from those.
  constexpr std::string_view kMayFollow = "aeiouyhlr";
  bool const contracted = letters.size() == kLetters && letters[1] >= 'a' && letters[1] <= 'z' &&
                          kMayFollow.find(letters[1]) == std::string_view::npos;
  if (!contracted || genera_seen_.size() > kMostGenera) return {};
  std::string genus;
  for (auto const& seen : genera_seen_) {
    if (seen.front() != letters[0] || seen.find(letters[1], 1) == std::string::npos) continue;
    if (!genus.empty()) return {};
    genus = seen;
  }
  return genus;
}

std::string NameTable::genus_for(std::string_view beginning, std::string_view rest,
                                 std::string& others) const {
  auto const known = genera_.find(std::string{beginning});
  // Printed in full elsewhere, outside the leads.
  auto const epithet = std::string{rest.substr(0, rest.find(' '))};
  auto printed = evidence_ ? evidence_->before_epithet(epithet) : std::vector<std::string>{};
  std::erase_if(printed, [&](std::string const& genus) { return !genus.starts_with(beginning); });
  // Legends explain the letters of drawings and places as well: what names tell goes before.
  auto const told = told_.find(std::string{beginning});
  if (known == genera_.end()) {
    if (!printed.empty()) return printed.front();
    return told != told_.end() ? told->second : contracted(beginning);
  }
  auto const& candidates = known->second;
  bool const one_of_them = told != told_.end() && std::find(candidates.begin(), candidates.end(),
                                                            told->second) != candidates.end();
  if (one_of_them) return told->second;
  // The full name printed elsewhere settles it.
  std::vector<std::string> exact;
  for (auto const& genus : candidates) {
    if (full_names_.count(genus + " " + std::string{rest}) > 0) exact.push_back(genus);
  }
  if (evidence_ && exact.empty() && candidates.size() > 1) {
    // "Corolla lutea" tells less than the genus that all others belong to.
    int least = 0;
    for (auto const& genus : candidates) least = std::max(least, evidence_->weight(genus));
    std::copy_if(printed.begin(), printed.end(), std::back_inserter(exact), [&](auto const& genus) {
      return std::find(candidates.begin(), candidates.end(), genus) != candidates.end() &&
             (evidence_->weight(genus) >= least || full_names_.contains(genus + " " + epithet));
    });
  }
  if (exact.size() == 1) return exact.front();
  auto const nearest = nearest_.find(std::string{beginning});
  auto const& chosen = nearest != nearest_.end() ? nearest->second : candidates.front();
  for (auto const& genus : candidates) {
    if (genus != chosen) others += (others.empty() ? "" : ", ") + genus;
  }
  return chosen;
}

std::string NameTable::told_name(TaxonReading const& taxon) {
  auto name = told_names_ == nullptr ? std::string{} : told_names_->whole(taxon.name);
  if (name.empty()) return name;
  auto const genus = full_genus(name);
  if (!genus.empty()) see_genus(genus, !is_one_word(name));
  see_name(name);
  return name;
}

std::string NameTable::full_name(TaxonReading const& taxon, Place const& place, bool listed) {
  if (taxon.literal) return taxon.name;
  if (auto name = told_name(taxon); !name.empty()) return name;
  bool const epithet = capitals_are_epithets_ && is_one_word(taxon.name);
  // In "Bus cus or dus" both are of Bus; the next lead's are of the key's own genus again.
  auto const& own = listed || part_genus_.empty() ? last_genus_ : part_genus_;
  if (taxon.genusless || (epithet && !own.empty())) {
    if (own.empty()) {
      findings_.keep_as_printed("", taxon.name, place);
      return taxon.name;
    }
    auto name = own + " " + without_stress(epithet ? fold(taxon.name) : taxon.name);
    findings_.assume("", own, "", name, place);
    see_name(name);
    return name;
  }
  auto const words = words_of(taxon.name);
  auto const rank = words.empty() ? std::string{} : fold(words[0]);
  bool const rank_first =
      words.size() >= 2 && rank.size() > 2 && rank.ends_with('.') && is_rank(rank);
  if (!words.empty() && is_abbreviated(words[0]) && !rank_first) {
    auto const beginning = words[0].substr(0, words[0].size() - 1);
    auto const rest = after_first_word(taxon.name);
    std::string others;
    note_nearest();
    auto const genus = genus_for(beginning, rest, others);
    if (genus.empty()) findings_.keep_as_printed(std::string{words[0]}, taxon.name, place);
    if (genus.empty() || rest.empty()) return taxon.name;
    auto name = with_parents_in_full(with_species(genus + " " + without_stress(rest)));
    findings_.assume(std::string{words[0]}, genus, std::move(others), name, place);
    last_genus_ = genus;
    see_name(name);
    return name;
  }
  // "subsp. cus" beneath the species read last.
  if (rank_first) {
    auto const species = species_over(taxon.name);
    if (species.empty()) return taxon.name;  // which is no species for the next one
    // "Var. cus" at the end of a sentence
    auto name = species + " " + rank + taxon.name.substr(words[0].size());
    findings_.assume("", species, "", name, place);
    return name;
  }
  if (words.size() == 1) {
    if (auto name = parted_name(taxon.name); !name.empty()) {
      findings_.part(taxon.name, name, place);
      return name;
    }
  }
  auto name = with_parents_in_full(
      with_species(is_stressed_name(words) ? without_stress(taxon.name) : taxon.name));
  // "Spitze etwas gehoben" is no species whose genus the next epithets belong to.
  if (auto const genus = full_genus(name);
      !genus.empty() && (words_of(name).size() <= 2 || genera_seen_.contains(genus))) {
    see_genus(genus, !is_one_word(name));
  }
  see_name(name);
  return name;
}

void NameTable::see_name(std::string const& name) {
  auto const words = words_of(name);
  if (words.size() < 2) return;
  auto const epithet = without_cross(words[1]);
  if (is_lower(code_point_at(epithet, 0).value) && is_plain_word(epithet)) {
    last_species_ = std::string{words[0]} + " " + std::string{words[1]};
    species_by_epithet_[std::string{words[1]}] = last_species_;
  }
}

std::string NameTable::with_species(std::string name) const {
  auto const words = words_of(name);
  bool const short_epithet = words.size() >= 3 && words[1].size() == 2 && words[1].back() == '.' &&
                             is_lower(code_point_at(words[1], 0).value) && is_plain_word(words[2]);
  if (!short_epithet) return name;
  auto species = species_for(words[0], words[1].substr(0, 1));
  // "A. b. bus" beside "A. b. cus": the subspecies that repeats the epithet of its species.
  if (species.empty() && words[2].starts_with(words[1].substr(0, 1))) {
    species = std::string{words[0]} + " " + std::string{words[2]};
  }
  if (species.empty()) return name;
  return species + " " + std::string{after_first_word(after_first_word(name))};
}

std::string NameTable::species_for(std::string_view genus, std::string_view initial) const {
  auto const fits = [&](std::string const& species) {
    auto const words = words_of(species);
    return words.size() == 2 && words[0] == genus && words[1].starts_with(initial);
  };
  if (fits(last_species_)) return last_species_;
  auto const found = std::find_if(title_species_.begin(), title_species_.end(), fits);
  return found == title_species_.end() ? std::string{} : *found;
}

std::string NameTable::parted_name(std::string const& name) const {
  constexpr std::size_t kShortestGenus = 3;  // letters
  constexpr std::size_t kLongestName = 60;   // bytes
  if (name.size() > kLongestName) return {};
  for (auto cut = kShortestGenus; cut + 2 <= name.size(); ++cut) {
    auto const genus = name.substr(0, cut);
    auto const epithet = name.substr(cut);
    if (genera_seen_.count(genus) == 0) continue;
    if (full_names_.count(genus + " " + epithet) > 0 || epithets_.count(epithet) > 0) {
      return genus + " " + epithet;
    }
  }
  return {};
}

std::vector<TaxonId> NameTable::take(ReadLead const& read, std::vector<Taxon>& taxa) {
  std::vector<TaxonId> ids;
  for (auto const& reading : read.to.taxa.taxa) {
    auto name = full_name(reading, read.lead.destination_place, !ids.empty());
    auto const [entry, fresh] =
        ids_.emplace(name, TaxonId{static_cast<std::uint32_t>(taxa.size())});
    if (fresh) {
      taxa.push_back({std::move(name), reading.authorship, read.lead.destination_place});
    } else if (taxa[entry->second.index].authorship.empty()) {
      taxa[entry->second.index].authorship = reading.authorship;
    }
    if (std::find(ids.begin(), ids.end(), entry->second) == ids.end()) ids.push_back(entry->second);
  }
  return ids;
}

void NameTable::report(std::vector<Finding>& findings) const { findings_.report(findings); }

}  // namespace keydrift::printed
