// Exceptions against the taxa below their leads, and units of one character against each other.

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
#include <string>

#include "keydrift/characters/contrast_parts.hpp"

namespace keydrift::contrast {
namespace {

std::vector<std::string> words_of_group(std::string_view text) {
  std::vector<std::string> words;
  std::string word;
  for (char const c : std::string{text} + " ") {
    if (c == ' ' || c == ',' || c == ';' || c == '(' || c == ')') {
      if (!word.empty()) words.push_back(std::move(word));
      word.clear();
    } else {
      word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
  }
  return words;
}

bool same_genus(std::string_view said, std::string_view genus) {
  if (said.ends_with('.')) {
    said.remove_suffix(1);
    return !said.empty() && genus.starts_with(said);
  }
  return said == genus;
}

// Epithets may differ by their gender ending.
bool same_epithet(std::string_view a, std::string_view b) {
  auto const stem = [](std::string_view word) {
    for (std::string_view const ending : {"us", "um", "is", "a", "e"}) {
      if (word.ends_with(ending) && word.size() > ending.size() + 1) {
        return word.substr(0, word.size() - ending.size());
      }
    }
    return word;
  };
  return a == b || stem(a) == stem(b);
}

// Terminals by plain words: the genus, and the epithet if the group names one.
class Terminals {
 public:
  explicit Terminals(Edition const& edition) {
    for (std::uint32_t i = 0; i < edition.taxa.size(); ++i) {
      words_.push_back(words_of_group(edition.taxa[i].name));
      if (!words_.back().empty()) by_genus_[words_.back().front()].push_back(TaxonId{i});
    }
  }

  [[nodiscard]] std::vector<TaxonId> members(std::string_view group) const {
    static std::set<std::string, std::less<>> const kAround{
        "some", "a",   "few", "many",   "most",    "all",    "the",       "certain", "species",
        "spp.", "spp", "sp.", "group",  "complex", "of",     "genus",     "members", "forms",
        "in",   "and", "or",  "genera", "agg.",    "rarely", "specimens", "several"};
    std::vector<std::string> wanted;
    for (auto& word : words_of_group(group)) {
      if (!kAround.contains(word)) wanted.push_back(std::move(word));
    }
    std::vector<TaxonId> found;
    if (wanted.empty()) return found;
    auto const& genus = wanted.front();
    auto const begin = genus.ends_with('.') ? genus.substr(0, genus.size() - 1) : genus;
    for (auto at = by_genus_.lower_bound(begin); at != by_genus_.end(); ++at) {
      if (!at->first.starts_with(begin)) break;
      if (!same_genus(genus, at->first)) continue;
      for (auto const taxon : at->second) {
        auto const& words = words_[taxon.index];
        // A genus as terminal holds the species that the exception names.
        bool const agrees =
            wanted.size() < 2 || words.size() < 2 || same_epithet(wanted[1], words[1]);
        if (agrees) found.push_back(taxon);
      }
    }
    if (found.empty() && wanted.size() == 1) {
      for (std::uint32_t i = 0; i < words_.size(); ++i) {
        auto const& words = words_[i];
        if (words.size() > 1 && same_epithet(words.back(), genus)) found.push_back(TaxonId{i});
      }
    }
    return found;
  }

 private:
  std::map<std::string, std::vector<TaxonId>> by_genus_;
  std::vector<std::vector<std::string>> words_;
};

bool holds(std::span<TaxonRun const> runs, std::uint32_t position) {
  auto const after =
      std::upper_bound(runs.begin(), runs.end(), position,
                       [](std::uint32_t value, TaxonRun const& run) { return value < run.begin; });
  return after != runs.begin() && position < std::prev(after)->end;
}

// Most keys make no exceptions: the terminals are looked through for the first one.
void check_lead(ContrastContext& context, std::optional<Terminals>& terminals, LeadId id) {
  auto const runs = context.graph.taxa_below(id);
  for (auto const& statement : context.edition[id].statements) {
    for (auto const& group : statement.except) {
      if (words_of_group(group).empty()) continue;  // proof_structure reports that
      if (!context.options.members && !terminals) terminals.emplace(context.edition);
      auto const members =
          context.options.members ? context.options.members(group) : terminals->members(group);
      bool const below = std::any_of(members.begin(), members.end(), [&](TaxonId taxon) {
        return holds(runs, context.graph.position_of(taxon));
      });
      if (below) continue;
      if (members.empty()) {
        context.report("exception-unknown-group", Severity::warning, statement,
                       "lead " + context.lead(id) + " makes an exception for " + quoted(group) +
                           ", which this key does not key out",
                       "name the group as the key's taxa are named, or drop the exception");
        continue;
      }
      auto const taxon = members.front();
      auto const ends = context.graph.leads_to(taxon);
      auto& finding = context.report(
          "exception-not-below", Severity::warning, statement,
          "lead " + context.lead(id) + " makes an exception for " + quoted(group) + ", but " +
              quoted(context.edition[taxon].name) + " does not key out below it",
          "key the group out below lead " + context.lead(id) + ", or drop the exception");
      if (!ends.empty()) {
        finding.related.push_back(
            {.place = context.edition[ends.front()].place,
             .message = quoted(context.edition[taxon].name) + " keys out here"});
      }
    }
  }
}

bool real_unit(std::string const& unit) { return !unit.empty() && unit != "1"; }

}  // namespace

void check_exceptions(ContrastContext& context) {
  std::optional<Terminals> terminals;
  for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) {
    auto const leads = context.edition[c].leads.size();
    for (std::uint32_t i = 0; i < leads; ++i) check_lead(context, terminals, LeadId{c, i});
  }
}

void check_units(ContrastContext& context) {
  struct Use {
    LeadId lead;
    Statement const* statement;
    std::string unit;
  };
  std::map<std::string, std::vector<Use>> uses;
  for (CoupletId c; c.index < context.edition.couplets.size(); ++c.index) {
    auto const& leads = context.edition[c].leads;
    for (std::uint32_t i = 0; i < leads.size(); ++i) {
      for (auto const& statement : leads[i].statements) {
        for (auto const& atom : statement.any_of) {
          if (atom.ranges.empty()) continue;
          uses[atom.character].push_back({LeadId{c, i}, &statement, atom.unit});
        }
      }
    }
  }
  for (auto const& [character, all] : uses) {
    std::map<std::string, std::size_t> count;
    for (auto const& use : all) {
      if (real_unit(use.unit)) ++count[use.unit];
    }
    if (count.empty()) continue;  // counts or ratios throughout
    auto const main =
        std::max_element(count.begin(), count.end(),
                         [](auto const& a, auto const& b) { return a.second < b.second; });
    auto const first = std::find_if(all.begin(), all.end(),
                                    [&](Use const& use) { return use.unit == main->first; });
    for (auto const& use : all) {
      if (use.unit == main->first) continue;
      bool const missing = !real_unit(use.unit);
      auto& finding = context.report(
          missing ? "unit-missing" : "mixed-units", Severity::warning, *use.statement,
          missing ? "lead " + context.lead(use.lead) + " gives no unit in " +
                        quoted(use.statement->text) + ", and lead " + context.lead(first->lead) +
                        " measures the same in " + main->first
                  : "lead " + context.lead(use.lead) + " measures in " + use.unit + " what lead " +
                        context.lead(first->lead) + " measures in " + main->first,
          missing ? "write the unit behind the number" : "measure it in one kind of unit");
      finding.related.push_back({.place = first->statement->place,
                                 .message = "lead " + context.lead(first->lead) + " says " +
                                            quoted(first->statement->text)});
    }
  }
}

}  // namespace keydrift::contrast
