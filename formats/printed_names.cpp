#include "keydrift/formats/printed_names.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kLongestBeginning = 4;  // letters before the full stop of an abbreviation

// The first word if it is a genus written in full; "AUS" becomes "Aus".
std::string full_genus(std::string_view name) {
  auto const words = words_of(name);
  if (words.empty() || !is_capitalised(words[0])) return {};
  auto genus = std::string{words[0]};
  bool const capitals =
      std::all_of(genus.begin(), genus.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
  if (capitals) {
    std::transform(genus.begin() + 1, genus.end(), genus.begin() + 1,
                   [](char c) { return static_cast<char>(c - 'A' + 'a'); });
  }
  return genus;
}

// Beginnings of one to four letters.
std::vector<std::string> beginnings(std::string const& genus) {
  std::vector<std::string> out;
  std::size_t at = 0;
  for (std::size_t i = 0; i < kLongestBeginning && at < genus.size(); ++i) {
    at += code_point_at(genus, at).length;
    out.push_back(genus.substr(0, at));
  }
  return out;
}

std::string_view after_first_word(std::string_view name) {
  auto const blank = name.find(' ');
  return blank == std::string_view::npos ? std::string_view{} : name.substr(blank + 1);
}

}  // namespace

NameTable::NameTable(std::string_view file, std::vector<ReadLead> const& reads,
                     std::vector<std::string> const& titles)
    : file_{file} {
  std::unordered_set<std::string> seen;
  auto const know = [&](std::string const& genus) {
    if (genus.empty() || !seen.insert(genus).second) return;
    for (auto& beginning : beginnings(genus)) genera_[beginning].push_back(genus);
  };
  for (auto const& read : reads) {
    for (auto const& taxon : read.to.taxa.taxa) {
      if (taxon.genusless) continue;
      auto const genus = full_genus(taxon.name);
      know(genus);
      if (!genus.empty()) full_names_.insert(taxon.name);
    }
  }
  bool const from_keys = !seen.empty();
  for (auto const& title : titles) {
    for (auto const& word : words_of(title)) {
      auto bare = word;
      while (!bare.empty() && (bare.back() == ',' || bare.back() == '.' || bare.back() == ')')) {
        bare.remove_suffix(1);
      }
      // A title's first word has its capital from its place.
      if (word.data() == title.data() || !is_capitalised(bare)) continue;
      auto const genus = full_genus(bare);
      if (!from_keys) know(genus);
      if (from_keys && genera_.find(beginnings(genus).front()) == genera_.end()) know(genus);
      if (last_genus_.empty()) last_genus_ = genus;
    }
  }
}

void NameTable::see_genus(std::string const& genus) {
  last_genus_ = genus;
  for (auto& beginning : beginnings(genus)) nearest_[beginning] = genus;
}

std::string NameTable::genus_for(std::string_view beginning, std::string_view rest,
                                 std::string& others) const {
  auto const known = genera_.find(std::string{beginning});
  if (known == genera_.end()) return {};
  auto const& candidates = known->second;
  // The full name printed elsewhere settles it.
  std::vector<std::string> exact;
  for (auto const& genus : candidates) {
    if (full_names_.count(genus + " " + std::string{rest}) > 0) exact.push_back(genus);
  }
  if (exact.size() == 1) return exact.front();
  auto const nearest = nearest_.find(std::string{beginning});
  auto const& chosen = nearest != nearest_.end() ? nearest->second : candidates.front();
  for (auto const& genus : candidates) {
    if (genus != chosen) others += (others.empty() ? "" : ", ") + genus;
  }
  return chosen;
}

void NameTable::assume(std::string printed, std::string const& genus, std::string others,
                       std::string const& name, Place const& place) {
  auto& assumption = assumptions_[{printed, genus}];
  if (assumption.count++ > 0) return;
  assumption.printed = std::move(printed);
  assumption.genus = genus;
  assumption.others = std::move(others);
  assumption.example = name;
  assumption.place = place;
}

std::string NameTable::full_name(TaxonReading const& taxon, Place const& place) {
  if (taxon.literal) return taxon.name;
  if (taxon.genusless) {
    if (last_genus_.empty()) return taxon.name;
    auto name = last_genus_ + " " + taxon.name;
    assume("", last_genus_, "", name, place);
    return name;
  }
  auto const words = words_of(taxon.name);
  if (!words.empty() && is_abbreviated(words[0])) {
    auto const beginning = words[0].substr(0, words[0].size() - 1);
    auto const rest = after_first_word(taxon.name);
    std::string others;
    auto const genus = genus_for(beginning, rest, others);
    if (genus.empty() || rest.empty()) return taxon.name;
    auto name = genus + " " + std::string{rest};
    assume(std::string{words[0]}, genus, std::move(others), name, place);
    last_genus_ = genus;
    return name;
  }
  if (auto const genus = full_genus(taxon.name); !genus.empty()) see_genus(genus);
  return taxon.name;
}

std::vector<TaxonId> NameTable::take(ReadLead const& read, std::vector<Taxon>& taxa) {
  std::vector<TaxonId> ids;
  for (auto const& reading : read.to.taxa.taxa) {
    auto name = full_name(reading, read.lead.destination_place);
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

void NameTable::report(std::vector<Finding>& findings) const {
  for (auto const& [key, assumption] : assumptions_) {
    bool const doubtful = !assumption.others.empty();
    Finding finding;
    finding.code = doubtful ? "ambiguous-abbreviation" : "expanded-name";
    finding.severity = doubtful ? Severity::warning : Severity::information;
    finding.file = file_;
    finding.place = assumption.place;
    finding.printed = assumption.example.substr(assumption.genus.size() + 1);
    if (assumption.printed.empty()) {
      finding.message = "the genus is not printed; it was read as \"" + assumption.genus + "\"";
    } else {
      finding.printed = assumption.printed + " " + finding.printed;
      finding.message = "\"" + assumption.printed + "\" was read as \"" + assumption.genus + "\"";
    }
    if (assumption.count > 1) {
      finding.message += " here and in " + std::to_string(assumption.count - 1) + " further names";
    }
    if (doubtful) finding.message += ", the nearest before it; it may also be " + assumption.others;
    finding.remedy = "print the genus in full where this is wrong";
    findings.push_back(std::move(finding));
  }
}

}  // namespace keydrift::printed
