#pragma once
// Full names for abbreviated ones, and the table of taxa.  Inner header of formats.

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/printed_genus_evidence.hpp"
#include "keydrift/formats/printed_group_head.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_name_findings.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

// The initials of the genera that leads abbreviate.
[[nodiscard]] std::set<std::string> initials_of(std::vector<ReadLead> const& reads);

// Completes names from the one full name with that epithet (lone epithets from the genus that the
// part's titles or head name beyond doubt), else from the nearest genus before them, else from the
// first in the file, else from what titles and all other lines say about the genus; remembers what
// it assumed.  Where hardly anything speaks for a genus, the name stays as it is printed.
class NameTable {
 public:
  // Looks at all leads' taxa and at the whole file; `titles`: words that may name the genus ("Key
  // to the species of Aus"); `passages`: remarks and words of leads.  What the origin tells goes
  // before all.
  NameTable(KeyText const& key, std::vector<ReadLead> const& reads,
            std::vector<std::string> const& titles, std::vector<std::string> const& passages);

  // A part begins, with the headings over it and its title last, and with the head of the account
  // in which it stands: the genus that they surely name is the one that epithets and abbreviations
  // belong to, and the account that they begin tells the species of its varieties.
  void enter_part(std::vector<std::string> const& titles, std::optional<GroupHead> const& head,
                  bool only);

  // To be called lead by lead in printed order.  Completes and registers the lead's taxa.
  [[nodiscard]] std::vector<TaxonId> take(ReadLead const& read, std::vector<Taxon>& taxa);

  // What was assumed, what nothing tells, and which names were parted.
  void report(std::vector<Finding>& findings) const;

 private:
  // `listed`: another taxon stands before it in the same lead.
  [[nodiscard]] std::string told_name(TaxonReading const& taxon);
  [[nodiscard]] std::string full_name(TaxonReading const& taxon, Place const& place, bool listed);
  void weigh_evidence(std::vector<ReadLead> const& reads, std::vector<SourceLine> const& lines);
  void note_numbered_capitals(std::vector<ReadLead> const& reads,
                              std::vector<SourceLine> const& lines);
  [[nodiscard]] bool is_other_than_groups(std::string const& genus) const;
  // "var. bus" and "var. cus" of one run of leads belong to the species bus.
  void find_autonyms(std::vector<ReadLead> const& reads);
  [[nodiscard]] std::string species_over(std::string_view name) const;
  // "A. b. cus": the species read last that the short epithet begins, else the title's.
  [[nodiscard]] std::string with_species(std::string name) const;
  [[nodiscard]] std::string species_for(std::string_view genus, std::string_view initial) const;
  // "Ausbus" where the file has the genus Aus and the name "Aus bus" or "A. bus"; else empty.
  [[nodiscard]] std::string parted_name(std::string const& name) const;
  void see_name(std::string const& name);
  [[nodiscard]] std::string with_full_genus(std::string const& species) const;
  [[nodiscard]] std::string species_of_account(std::string_view title) const;
  // "Vx." for the only genus that begins with V and has an x, as two letters stand for genera of
  // flies (common practice); else empty.
  [[nodiscard]] std::string contracted(std::string_view letters) const;
  [[nodiscard]] std::string genus_for(std::string_view beginning, std::string_view rest,
                                      std::string& others) const;
  void see_genus(std::string const& genus, bool with_species);
  // To be called before nearest_ is asked.
  [[nodiscard]] bool is_outdone(std::string const& genus, std::string const& title,
                                bool only) const;
  void note_nearest();

  // Genera by their beginnings of one to four letters, in order of first appearance.
  std::unordered_map<std::string, std::vector<std::string>> genera_;
  std::unordered_map<std::string, std::string> nearest_;  // beginning -> genus read last
  // Genera read since, in order: most keys cut none short, and never ask for the nearest.
  std::vector<std::string> seen_;
  std::unordered_map<std::string, std::string> told_;  // by abbreviations that the text explains
  ToldNames const* told_names_{nullptr};
  std::set<std::string> group_genera_;  // to which couplets lead on, "5 (Ausella)"
  std::unordered_set<std::string> genera_seen_;
  std::unordered_set<std::string> full_names_;     // "Aus bus" printed in full somewhere
  std::unordered_set<std::string> epithets_;       // what stands behind a genus, short or in full
  std::unordered_set<std::string> lone_epithets_;  // case-folded, of leads without a genus
  bool capitals_are_epithets_{false};
  int best_evidence_{};                    // for a genus that a title names or the text speaks for
  std::optional<GenusEvidence> evidence_;  // where leads cut genera short or leave them out
  std::string part_genus_;  // that the titles or the head over the part name beyond doubt
  std::string last_genus_;
  std::string last_species_;                // "Aus bus"
  std::string account_species_;             // of the account that the part's key stands in
  std::vector<std::string> title_species_;  // "Key to the subspecies of Aus bus"
  std::unordered_map<std::string, std::string> species_by_epithet_;  // "bus" -> "Aus bus"
  // Epithet behind a rank -> those of its run of leads.
  std::unordered_map<std::string, std::vector<std::string>> runs_;
  std::unordered_map<std::string, TaxonId> ids_;
  NameFindings findings_;
};

}  // namespace keydrift::printed
