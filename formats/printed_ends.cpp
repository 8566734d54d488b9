#include "keydrift/formats/printed_ends.hpp"

#include <variant>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

std::string bracketed(std::string text, std::string const& remark) {
  return remark.empty() ? text : text + " [" + remark + "]";
}

// Figures that the words do not name themselves.
std::string figures_of_lead(Lead const& lead) {
  auto const in_words = figures_in(lead.text);
  std::string text;
  for (std::size_t i = 0; i < lead.figures.size(); ++i) {
    bool const told = i < in_words.size() && in_words[i] == lead.figures[i];
    if (!told) text += " (" + lead.figures[i] + ")";
  }
  return text;
}

}  // namespace

EndPrinter::EndPrinter(Edition const& edition, Numbering const& numbering)
    : edition_{edition}, numbering_{numbering}, named_(edition.taxa.size(), false) {}

std::string EndPrinter::destination_of(Lead const& lead) {
  std::string text;
  if (auto const* couplet = std::get_if<ToCouplet>(&lead.destination)) {
    text = with_group(edition_[couplet->couplet].label, lead.taxon_remark, figures_of_lead(lead));
  } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
    bool const plain = (names_a_key(key->key) && explicit_key_title(key->key).empty()) ||
                       points_into_other_work(key->key);
    text = bracketed((plain ? "" : "Key: ") + key->key + figures_of_lead(lead), lead.taxon_remark);
  } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
    text = taxa_text(taxa->taxa, lead.taxon_remark) + figures_of_lead(lead);
  } else {
    text = std::get<Unresolved>(lead.destination).printed;
    if (!text.empty()) text = bracketed(text, lead.taxon_remark);
  }
  return text;
}

// "Aus group, 6" where that reads back, else "6 [Aus group]".
std::string EndPrinter::with_group(std::string const& label, std::string const& group,
                                   std::string const& figures) const {
  if (group.empty()) return label + figures;
  auto natural = group + ", " + label;
  auto const reading = read_destination(natural, numbering_);
  auto const reference = read_reference(label);
  bool const same = reading.form == DestinationForm::couplet && reading.remark == group &&
                    reference && reading.couplet == key_of(*reference) &&
                    plausible_destination(natural, numbering_);
  return same ? natural + figures : bracketed(label + figures, group);
}

std::string EndPrinter::taxa_text(std::vector<TaxonId> const& taxa, std::string const& remark) {
  std::vector<std::string> remark_forms{", " + remark, " [" + remark + "]"};
  if (remark.empty()) remark_forms = {""};
  std::string text;
  for (bool const quoted : {false, true}) {
    for (auto const& remark_form : remark_forms) {
      text = list_of(taxa, quoted) + remark_form;
      if (reads_back(text, taxa, remark)) {
        for (auto const taxon : taxa) named_[taxon.index] = true;
        return text;
      }
    }
  }
  for (auto const taxon : taxa) named_[taxon.index] = true;
  return text;
}

std::string EndPrinter::list_of(std::vector<TaxonId> const& taxa, bool quoted) const {
  std::string text;
  for (std::size_t i = 0; i < taxa.size(); ++i) {
    if (i > 0) text += i + 1 == taxa.size() ? " or " : ", ";
    auto const& taxon = edition_[taxa[i]];
    text += quoted ? "\"" + taxon.name + "\"" : taxon.name;
    if (!named_[taxa[i].index] && !taxon.authorship.empty()) text += " " + taxon.authorship;
  }
  return text;
}

bool EndPrinter::reads_back(std::string const& text, std::vector<TaxonId> const& taxa,
                            std::string const& remark) const {
  if (!plausible_destination(text, numbering_)) return false;
  auto const reading = read_destination(text, numbering_);
  if (reading.form != DestinationForm::taxa || reading.remark != remark ||
      reading.taxa.taxa.size() != taxa.size()) {
    return false;
  }
  for (std::size_t i = 0; i < taxa.size(); ++i) {
    auto const& taxon = edition_[taxa[i]];
    auto const& read = reading.taxa.taxa[i];
    auto const& author = named_[taxa[i].index] ? std::string{} : taxon.authorship;
    // What a reader would complete from other names has to stand in quotation marks.
    bool const completed = read.genusless || is_abbreviated(words_of(taxon.name).front());
    if ((completed && !read.literal) || read.name != taxon.name || read.authorship != author)
      return false;
  }
  return true;
}

}  // namespace keydrift::printed
