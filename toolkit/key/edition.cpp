#include "keydrift/key/edition.hpp"

#include <algorithm>
#include <tuple>

namespace keydrift {
namespace {

std::string file_name(std::string const& path) {
  auto const slash = path.find_last_of("/\\");
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

// "a", "b", … "z", "aa", "ab" …
std::string letters(std::uint32_t ordinal) {
  std::string out;
  for (auto rest = static_cast<std::uint64_t>(ordinal) + 1; rest > 0; rest = (rest - 1) / 26) {
    out.insert(out.begin(), static_cast<char>('a' + (rest - 1) % 26));
  }
  return out;
}

// Does the printed label of the lead tell both the couplet and the side: "7a", "7'", but neither
// "7" nor "–"?
bool tells(Couplet const& couplet, Lead const& lead) {
  return !couplet.label.empty() && lead.label.size() > couplet.label.size() &&
         lead.label.starts_with(couplet.label);
}

// "15a Wings" and "15a' Wings" or "– Wings": "15a" is the couplet, so that the letters of all its
// leads stand behind it, whatever of them is printed.
bool is_lettered_in_part(Couplet const& couplet) {
  auto const& label = couplet.label;
  bool const lettered = !label.empty() && label.front() >= '0' && label.front() <= '9' &&
                        label.back() >= 'a' && label.back() <= 'z';
  if (!lettered) return false;
  return std::any_of(couplet.leads.begin(), couplet.leads.end(),
                     [&](Lead const& lead) { return !tells(couplet, lead); });
}

std::uint32_t code_points(std::string_view text) {
  return static_cast<std::uint32_t>(std::count_if(text.begin(), text.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

// The run that byte `offset` belongs to: the last that begins at or before it.
TextRun const& run_of(Lead const& lead, std::size_t offset) {
  auto const after = std::upper_bound(
      lead.runs.begin(), lead.runs.end(), offset,
      [](std::size_t value, TextRun const& run) { return value < run.text_begin; });
  return after == lead.runs.begin() ? lead.runs.front() : *(after - 1);
}

// A run holds a blank at most beyond its printed bytes (the joint to the next line).
std::uint64_t within(TextRun const& run, std::uint64_t byte) {
  return run.place.end > run.place.begin ? std::min(byte, run.place.end) : byte;
}

auto content(Scope const& s) {
  return std::tie(s.taxa, s.region, s.places, s.excluded_taxa, s.listed_taxa, s.life_stage, s.sex,
                  s.material);
}

auto content(FrontMatter const& f) {
  return std::tie(f.title, f.edition, f.year, f.authors, f.language, f.other);
}

bool same(FrontMatter const& a, FrontMatter const& b) {
  return content(a) == content(b) && content(a.scope) == content(b.scope) &&
         std::equal(a.synonyms.begin(), a.synonyms.end(), b.synonyms.begin(), b.synonyms.end(),
                    [](Synonymy const& x, Synonymy const& y) {
                      return x.accepted == y.accepted && x.synonym == y.synonym;
                    });
}

bool same(Lead const& a, Lead const& b) {
  return a.text == b.text && a.destination == b.destination && a.taxon_remark == b.taxon_remark &&
         a.notes == b.notes && a.figures == b.figures;
}

bool same(Couplet const& a, Couplet const& b) {
  return a.label == b.label && a.notes == b.notes &&
         std::equal(a.leads.begin(), a.leads.end(), b.leads.begin(), b.leads.end(),
                    [](Lead const& x, Lead const& y) { return same(x, y); }) &&
         std::equal(a.back_references.begin(), a.back_references.end(), b.back_references.begin(),
                    b.back_references.end(), [](BackReference const& x, BackReference const& y) {
                      return x.label == y.label;
                    });
}

}  // namespace

std::string short_label(Edition const& edition) {
  if (!edition.front.edition.empty()) return edition.front.edition;
  if (edition.front.year) return std::to_string(*edition.front.year);
  // Editions read from one file's history differ in the revision only, so the revision stays.
  auto const& name = edition.name;
  if (auto const sign = name.rfind('@'); sign != std::string::npos) {
    if (auto const colon = name.find(':', sign); colon != std::string::npos) {
      return name.substr(sign + 1, colon - sign) + file_name(name.substr(colon + 1));
    }
  }
  return file_name(name);
}

std::string lead_name(Edition const& edition, LeadId id) {
  auto const& couplet = edition[id.couplet];
  auto const& lead = couplet.leads[id.ordinal];
  auto const lettered = [&](std::uint32_t ordinal) { return couplet.label + letters(ordinal); };
  if (!tells(couplet, lead) || is_lettered_in_part(couplet)) return lettered(id.ordinal);
  // Where the sides are printed "7" and "7a", the letter of the first is the label of the second.
  for (std::uint32_t i = 0; i < couplet.leads.size(); ++i) {
    if (i == id.ordinal) continue;
    auto const& other = couplet.leads[i];
    auto const called = tells(couplet, other) ? other.label : lettered(i);
    if (called == lead.label) return lettered(id.ordinal);
  }
  return lead.label;
}

Place place_in_text(Lead const& lead, std::size_t offset, std::size_t length) {
  if (lead.runs.empty()) return lead.place;
  std::string_view const text = lead.text;
  offset = std::min(offset, text.size());
  length = std::min(length, text.size() - offset);

  auto const& first = run_of(lead, offset);
  auto const into = offset > first.text_begin ? offset - first.text_begin : 0;
  Place place = first.place;
  place.column += code_points(text.substr(offset - into, into));
  place.begin = within(first, first.place.begin + into);

  auto const& last = length == 0 ? first : run_of(lead, offset + length - 1);
  auto const until = std::max(offset + length, last.text_begin) - last.text_begin;
  place.end = std::max(place.begin, within(last, last.place.begin + until));
  return place;
}

bool same_content(Edition const& a, Edition const& b) {
  return same(a.front, b.front) &&
         std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(),
                    [](KeyPart const& x, KeyPart const& y) {
                      return x.title == y.title && x.start == y.start;
                    }) &&
         std::equal(a.couplets.begin(), a.couplets.end(), b.couplets.begin(), b.couplets.end(),
                    [](Couplet const& x, Couplet const& y) { return same(x, y); }) &&
         std::equal(a.taxa.begin(), a.taxa.end(), b.taxa.begin(), b.taxa.end(),
                    [](Taxon const& x, Taxon const& y) {
                      return x.name == y.name && x.authorship == y.authorship;
                    }) &&
         std::equal(a.notes.begin(), a.notes.end(), b.notes.begin(), b.notes.end(),
                    [](Note const& x, Note const& y) { return x.text == y.text; });
}

}  // namespace keydrift
