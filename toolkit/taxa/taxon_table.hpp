#pragma once
// The terminals of one edition, by name: what names written anywhere else are looked up in.
//
// Serves concepts.hpp and placement.hpp; other folders want those.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/key/edition.hpp"
#include "keydrift/taxa/names.hpp"

namespace keydrift {

enum class Sense { plain, wide, narrow, misapplied };  // "s. l.", "s. str.", "auct. non …"
[[nodiscard]] Sense sense_of(ParsedName const& name);

// Names above a name that the name itself tells, nearest first: "Aus bus var. cus" lies in
// "Aus bus", "Aus bus agg.", "Aus".
[[nodiscard]] std::vector<std::string> containing_names(ParsedName const& name);

// An abbreviated genus written out where `genus` begins so; else the name as it is.
[[nodiscard]] std::string with_genus(std::string_view name, std::string_view genus);

struct TaxonRow {
  ParsedName parsed;
  std::string plain;
  std::vector<std::string> keys;  // name_keys; none for a name without letters
  std::string authorship;         // the edition's, else what the name holds
  std::string full;               // name and authorship
  Sense sense{Sense::plain};
};

class TaxonTable {
 public:
  explicit TaxonTable(Edition const& edition);

  [[nodiscard]] std::vector<TaxonRow> const& rows() const { return rows_; }
  [[nodiscard]] TaxonRow const& operator[](TaxonId taxon) const { return rows_[taxon.index]; }
  // Terminals by one key, ascending; authors are not looked at.
  [[nodiscard]] std::vector<TaxonId> const& with_key(std::string const& key) const;
  // The one terminal that a name means, by its keys or with its genus abbreviated; authors must
  // agree, and a name said to be misapplied means none that is not.  nullopt when none or several.
  [[nodiscard]] std::optional<TaxonId> find(std::string_view name) const;
  // All that find() chooses from, the best first.
  [[nodiscard]] std::vector<TaxonId> all(std::string_view name) const;
  // Terminals whose last epithet it is, in any genus.
  [[nodiscard]] std::vector<TaxonId> with_epithet(std::string_view epithet) const;
  // The name with an abbreviated genus written out by the one terminal or genus it fits; else as
  // it is.
  [[nodiscard]] std::string expanded(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> plain_names() const;

 private:
  void add(TaxonId taxon);

  std::vector<TaxonRow> rows_;
  std::unordered_map<std::string, std::vector<TaxonId>> by_key_;
  std::unordered_map<std::string, std::vector<TaxonId>> by_epithets_;  // key without its genus
  std::vector<std::string> genera_;                                    // spelled out, sorted
};

}  // namespace keydrift
