#pragma once
// Destinations as they are printed, worded so that they read back.  Inner header of formats.

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

// Borrows the edition and the numbering.
class EndPrinter {
 public:
  EndPrinter(Edition const& edition, Numbering const& numbering);

  // To be called lead by lead in printed order: authors stand where a taxon is named first.
  // Empty for a lead that leads nowhere.
  [[nodiscard]] std::string destination_of(Lead const& lead);

 private:
  [[nodiscard]] std::string with_group(std::string const& label, std::string const& group,
                                       std::string const& figures) const;
  [[nodiscard]] std::string taxa_text(std::vector<TaxonId> const& taxa, std::string const& remark);
  [[nodiscard]] std::string list_of(std::vector<TaxonId> const& taxa, bool quoted) const;
  [[nodiscard]] bool reads_back(std::string const& text, std::vector<TaxonId> const& taxa,
                                std::string const& remark) const;

  Edition const& edition_;
  Numbering const& numbering_;
  std::vector<bool> named_;  // taxa whose author has been printed
};

}  // namespace keydrift::printed
