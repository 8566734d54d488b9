#pragma once
// Destinations as they are printed, worded so that they read back.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/key/edition.hpp"

namespace keydrift::printed {

// From what the edition printed to what nobody can mistake.
enum class PrintWording : std::uint8_t {
  as_printed,  // in the order and with the marks of the edition, names in full
  composed,    // name, author, remark, figures
  quoted,      // and names that a reader would complete in quotation marks
};

// How the end and the notes of each lead are worded, the title of each part and each note on the
// key.
class PrintWordings {
 public:
  explicit PrintWordings(Edition const& edition);  // all as printed

  [[nodiscard]] PrintWording of(LeadId lead) const {
    return wordings_[lead.couplet.index][lead.ordinal].end;
  }
  // Else all its notes begin with "Note:".
  [[nodiscard]] bool has_notes_as_printed(LeadId lead) const {
    return wordings_[lead.couplet.index][lead.ordinal].notes_as_printed;
  }
  // Else "Key:" stands before a title that does not name a key itself.
  [[nodiscard]] bool has_title_as_printed(std::size_t part) const { return titles_[part]; }
  // Else it stands on one line, or in a key whose labels are exact behind "Note on the key:".
  [[nodiscard]] bool has_key_note_as_printed(std::size_t note) const { return key_notes_[note]; }
  // One step plainer for all that `got` reads otherwise; false where nothing can be.
  [[nodiscard]] bool make_plainer(Edition const& wanted, Edition const& got);
  // As plain as can be; false if they were.
  [[nodiscard]] bool make_plainest();

 private:
  struct OfLead {
    PrintWording end{PrintWording::as_printed};
    bool notes_as_printed{true};
  };
  std::vector<std::vector<OfLead>> wordings_;  // couplet by couplet
  std::vector<bool> titles_;                   // of the parts
  std::vector<bool> key_notes_;
};

// Borrows the edition and the numbering.
class EndPrinter {
 public:
  EndPrinter(Edition const& edition, Numbering const& numbering);

  // To be called lead by lead in printed order: authors stand where a taxon is named first.
  // Empty for a lead that leads nowhere.
  [[nodiscard]] std::string destination_of(Lead const& lead, PrintWording wording);

 private:
  [[nodiscard]] std::string couplet_text(Lead const& lead, std::string const& label,
                                         PrintWording wording) const;
  [[nodiscard]] std::string key_text(Lead const& lead, std::string const& key,
                                     PrintWording wording) const;
  [[nodiscard]] std::string taxa_text(Lead const& lead, std::vector<TaxonId> const& taxa,
                                      PrintWording wording);
  [[nodiscard]] std::string kept_taxa(Lead const& lead, std::vector<TaxonId> const& taxa) const;
  [[nodiscard]] std::string list_of(std::vector<TaxonId> const& taxa, bool quoted) const;
  [[nodiscard]] bool reads_back(std::string const& text, std::vector<TaxonId> const& taxa,
                                std::string const& remark, PrintWording wording) const;

  Edition const& edition_;
  Numbering const& numbering_;
  std::vector<bool> named_;  // taxa whose author has been printed
};

}  // namespace keydrift::printed
