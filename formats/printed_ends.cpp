#include "keydrift/formats/printed_ends.hpp"

#include <algorithm>
#include <utility>
#include <variant>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

std::string bracketed(std::string text, std::string const& remark) {
  return remark.empty() ? text : text + " [" + remark + "]";
}

// Figures that the words do not name themselves.
std::vector<std::string> figures_behind_words(Lead const& lead) {
  auto const in_words = figures_in(lead.text);
  std::vector<std::string> behind;
  for (std::size_t i = 0; i < lead.figures.size(); ++i) {
    bool const told = i < in_words.size() && in_words[i] == lead.figures[i];
    if (!told) behind.push_back(lead.figures[i]);
  }
  return behind;
}

std::string figures_of_lead(Lead const& lead) {
  std::string text;
  for (auto const& figure : figures_behind_words(lead)) text += " (" + figure + ")";
  return text;
}

// What the edition printed; empty where that has leaders of its own, or nothing is known of it.
std::string end_as_printed(Lead const& lead) {
  auto text = squeeze(lead.destination_printed);
  bool const leaders = text.find("..") != std::string::npos || text.find("…") != std::string::npos;
  return leaders ? std::string{} : text;
}

bool is_word_sign(char c) {
  auto const sign = static_cast<unsigned char>(c);
  return is_letter(sign) || is_digit(sign) || sign >= 0x80U;
}

// Where the name stands in the text as a word of its own, from byte `from` on.
std::size_t find_name(std::string_view text, std::string_view name, std::size_t from) {
  for (auto at = text.find(name, from); at != std::string_view::npos;
       at = text.find(name, at + 1)) {
    auto const end = at + name.size();
    bool const begins = at == 0 || !is_letter(code_point_before(text, at).value);
    if (begins && (end == text.size() || !is_word_sign(text[end]))) return at;
  }
  return std::string_view::npos;
}

// Sets the whole name in the place of the one that the text prints, behind byte `from`; moves
// `from` behind it.  The author of the species may stand before the lower rank, "Aus bus Roe var.
// cus": he stays there.  False where the text does not have the name.
bool put_whole_name(std::string& text, std::string_view printed, std::string_view whole,
                    std::size_t& from) {
  if (auto const at = find_name(text, printed, from); at != std::string::npos) {
    text.replace(at, printed.size(), whole);
    from = at + whole.size();
    return true;
  }
  for (auto blank = printed.find(' '); blank != std::string_view::npos;
       blank = printed.find(' ', blank + 1)) {
    auto const lower = printed.substr(blank + 1);
    if (!is_rank(lower.substr(0, lower.find(' '))) || !whole.ends_with(lower)) continue;
    auto const species = printed.substr(0, blank);
    auto const at = find_name(text, species, from);
    if (at == std::string::npos) continue;
    auto const behind = find_name(text, lower, at + species.size());
    if (behind == std::string::npos) continue;
    auto const whole_species = whole.substr(0, whole.size() - lower.size() - 1);
    text.replace(at, species.size(), whole_species);
    from = behind + lower.size() + whole_species.size() - species.size();
    return true;
  }
  return false;
}

bool same_taxa(Edition const& wanted, Edition const& got, Lead const& a, Lead const& b) {
  auto const* names = std::get_if<ToTaxa>(&a.destination);
  auto const* others = std::get_if<ToTaxa>(&b.destination);
  if (names == nullptr || others == nullptr) return a.destination == b.destination;
  return std::equal(names->taxa.begin(), names->taxa.end(), others->taxa.begin(),
                    others->taxa.end(), [&](TaxonId x, TaxonId y) {
                      return wanted[x].name == got[y].name &&
                             wanted[x].authorship == got[y].authorship;
                    });
}

// One that is read as two, or as a lead, shifts all behind it, which is no fault of theirs.
std::vector<std::size_t> notes_read_otherwise(Edition const& wanted, Edition const& got) {
  std::vector<std::size_t> otherwise;
  std::size_t from = 0;
  for (std::size_t n = 0; n < wanted.notes.size(); ++n) {
    auto at = from;
    while (at < got.notes.size() && got.notes[at].text != wanted.notes[n].text) ++at;
    if (at == got.notes.size()) {
      otherwise.push_back(n);
    } else {
      from = at + 1;
    }
  }
  return otherwise;
}

}  // namespace

PrintWordings::PrintWordings(Edition const& edition)
    : titles_(edition.parts.size(), true), key_notes_(edition.notes.size(), true) {
  wordings_.reserve(edition.couplets.size());
  for (auto const& couplet : edition.couplets) wordings_.emplace_back(couplet.leads.size());
}

bool PrintWordings::make_plainer(Edition const& wanted, Edition const& got) {
  bool any = false;
  for (std::size_t c = 0; c < wanted.couplets.size(); ++c) {
    auto const& leads = wanted.couplets[c].leads;
    for (std::size_t i = 0; i < leads.size(); ++i) {
      auto const& a = leads[i];
      bool const met = c < got.couplets.size() && i < got.couplets[c].leads.size();
      auto const& b = met ? got.couplets[c].leads[i] : a;
      auto& wording = wordings_[c][i];
      bool const same_end = met && a.text == b.text && a.taxon_remark == b.taxon_remark &&
                            a.figures == b.figures && same_taxa(wanted, got, a, b);
      if (!same_end && wording.end != PrintWording::quoted) {
        wording.end =
            wording.end == PrintWording::as_printed ? PrintWording::composed : PrintWording::quoted;
        any = true;
      }
      bool const same_notes = met && a.notes == b.notes;
      if (!same_notes && wording.notes_as_printed) {
        wording.notes_as_printed = false;
        any = true;
      }
    }
  }
  for (std::size_t p = 0; p < titles_.size(); ++p) {
    bool const same = p < got.parts.size() && wanted.parts[p].title == got.parts[p].title &&
                      wanted.parts[p].start == got.parts[p].start;
    if (same || !titles_[p]) continue;
    titles_[p] = false;
    any = true;
  }
  for (auto const note : notes_read_otherwise(wanted, got)) {
    any = any || key_notes_[note];
    key_notes_[note] = false;
  }
  return any;
}

bool PrintWordings::make_plainest() {
  bool any = std::find(titles_.begin(), titles_.end(), true) != titles_.end();
  any = any || std::find(key_notes_.begin(), key_notes_.end(), true) != key_notes_.end();
  titles_.assign(titles_.size(), false);
  key_notes_.assign(key_notes_.size(), false);
  for (auto& couplet : wordings_) {
    for (auto& wording : couplet) {
      any = any || wording.end != PrintWording::quoted || wording.notes_as_printed;
      wording = {PrintWording::quoted, false};
    }
  }
  return any;
}

EndPrinter::EndPrinter(Edition const& edition, Numbering const& numbering)
    : edition_{edition}, numbering_{numbering}, named_(edition.taxa.size(), false) {}

std::string EndPrinter::destination_of(Lead const& lead, PrintWording wording) {
  if (auto const* couplet = std::get_if<ToCouplet>(&lead.destination)) {
    return couplet_text(lead, edition_[couplet->couplet].label, wording);
  }
  if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
    return key_text(lead, key->key, wording);
  }
  if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
    return taxa_text(lead, taxa->taxa, wording);
  }
  auto const& text = std::get<Unresolved>(lead.destination).printed;
  return text.empty() ? text : bracketed(text, lead.taxon_remark);
}

// "Aus group, 6" or "6 (Aus group)" where that reads back, else "6 [Aus group]".
std::string EndPrinter::couplet_text(Lead const& lead, std::string const& label,
                                     PrintWording wording) const {
  auto const figures = figures_of_lead(lead);
  auto const& group = lead.taxon_remark;
  if (group.empty()) return label + figures;
  auto const reference = read_reference(label);
  auto const same = [&](std::string const& text) {
    auto const reading = read_destination(text, numbering_);
    return reading.form == DestinationForm::couplet && reading.remark == group && reference &&
           reading.couplet == key_of(*reference) && plausible_destination(text, numbering_);
  };
  if (wording == PrintWording::as_printed && figures.empty()) {
    auto const printed = end_as_printed(lead);
    // "go to 6 (Aus group)": the pointer is no part of it.
    auto const bare = std::string{strip_pointer(printed)};
    if (!bare.empty() && bare.find(label) != std::string::npos && same(bare)) return bare;
  }
  auto natural = group + ", " + label;
  return same(natural) ? natural + figures : bracketed(label + figures, group);
}

std::string EndPrinter::key_text(Lead const& lead, std::string const& key,
                                 PrintWording wording) const {
  bool const plain =
      (names_a_key(key) && explicit_key_title(key).empty()) || points_into_other_work(key);
  if (wording == PrintWording::as_printed && (!plain || !lead.taxon_remark.empty())) {
    auto printed = end_as_printed(lead);
    auto const reading = read_destination(printed, numbering_);
    if (reading.form == DestinationForm::key && reading.remark == lead.taxon_remark &&
        reading.taxa.figures == figures_behind_words(lead)) {
      return printed;
    }
  }
  return bracketed((plain ? "" : "Key: ") + key + figures_of_lead(lead), lead.taxon_remark);
}

std::string EndPrinter::taxa_text(Lead const& lead, std::vector<TaxonId> const& taxa,
                                  PrintWording wording) {
  auto const name_all = [&] {
    for (auto const taxon : taxa) named_[taxon.index] = true;
  };
  if (wording == PrintWording::as_printed) {
    if (auto text = kept_taxa(lead, taxa); !text.empty()) {
      name_all();
      return text;
    }
  }
  auto const& remark = lead.taxon_remark;
  std::vector<std::string> remark_forms{", " + remark, " [" + remark + "]"};
  if (remark.empty()) remark_forms = {""};
  std::string text;
  for (bool const quoted : {false, true}) {
    for (auto const& remark_form : remark_forms) {
      text = list_of(taxa, quoted) + remark_form;
      if (!reads_back(text, taxa, remark, wording)) continue;
      name_all();
      return text + figures_of_lead(lead);
    }
  }
  name_all();
  return text + figures_of_lead(lead);
}

// "1. Aus bus Roe (fig. 3, p. 12)" as it was printed, but for the names, which stand in full: the
// title that told the genus of "A. bus" may be gone.  Empty where that would be read otherwise.
std::string EndPrinter::kept_taxa(Lead const& lead, std::vector<TaxonId> const& taxa) const {
  auto text = end_as_printed(lead);
  if (text.empty()) return {};
  auto const reading = read_destination(text, numbering_);
  auto const& read = reading.taxa.taxa;
  if (reading.form != DestinationForm::taxa || read.size() != taxa.size()) return {};
  std::size_t from = 0;
  for (std::size_t i = 0; i < taxa.size(); ++i) {
    if (!put_whole_name(text, read[i].name, edition_[taxa[i]].name, from)) return {};
  }
  auto const holds = [&](std::string const& words) {
    return reads_back(words, taxa, lead.taxon_remark, PrintWording::as_printed) &&
           read_destination(words, numbering_).taxa.figures == figures_behind_words(lead);
  };
  // The full stop of the lead, unless it is one of the author's or the remark's.
  if (text.ends_with('.')) {
    if (auto stopless = text.substr(0, text.size() - 1); holds(stopless)) return stopless;
  }
  return holds(text) ? text : std::string{};
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
                            std::string const& remark, PrintWording wording) const {
  if (!plausible_destination(text, numbering_)) return false;
  auto const reading = read_destination(text, numbering_);
  if (reading.form != DestinationForm::taxa || reading.remark != remark ||
      reading.taxa.taxa.size() != taxa.size()) {
    return false;
  }
  for (std::size_t i = 0; i < taxa.size(); ++i) {
    auto const& taxon = edition_[taxa[i]];
    auto const& read = reading.taxa.taxa[i];
    // Printed at every naming by some editions.
    bool const repeated = wording == PrintWording::as_printed && named_[taxa[i].index] &&
                          read.authorship == taxon.authorship;
    auto const& author = named_[taxa[i].index] ? std::string{} : taxon.authorship;
    if (read.name != taxon.name || (read.authorship != author && !repeated)) return false;
    // Whether a reader would complete it from other names is seen when the whole is read back.
    bool const completed = read.genusless || is_abbreviated(words_of(taxon.name).front());
    if (completed && !read.literal && wording == PrintWording::quoted) return false;
  }
  return true;
}

}  // namespace keydrift::printed
