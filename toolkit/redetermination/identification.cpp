#include "keydrift/redetermination/identification.hpp"

#include <algorithm>
#include <boost/uuid/name_generator_sha1.hpp>
#include <boost/uuid/uuid_io.hpp>

#include "keydrift/redetermination/sheet_numbers.hpp"

namespace keydrift {
namespace {

// Version 5 of RFC 9562 over everything that makes this determination another one.
std::string name_based_id(std::string const& name) {
  boost::uuids::name_generator_sha1 const generate{boost::uuids::ns::url()};
  return "urn:uuid:" + boost::uuids::to_string(generate(name));
}

void add_part(std::string& text, std::string const& part) {
  if (part.empty()) return;
  if (!text.empty()) text += "; ";
  text += part;
}

std::string earlier_name(Specimen const& specimen) {
  if (specimen.scientific_name.empty()) return "no name before";
  std::string text = "before: " + specimen.scientific_name;
  if (!specimen.qualifier.empty()) text += " (" + specimen.qualifier + ")";
  if (!specimen.identified_by.empty()) text += ", " + specimen.identified_by;
  if (!specimen.date_identified.empty()) text += ", " + specimen.date_identified;
  return text;
}

}  // namespace

std::string citation_of(Edition const& edition) {
  auto const& front = edition.front;
  std::string text;
  for (auto const& author : front.authors) text += (text.empty() ? "" : " & ") + author;
  auto const year = front.year ? std::to_string(*front.year) : std::string{};
  if (!year.empty()) text += (text.empty() ? "" : " ") + year;
  if (!front.title.empty()) text += (text.empty() ? "" : ", ") + front.title;
  if (!front.edition.empty() && front.edition != year) {
    text += (text.empty() ? "" : ", ") + std::string{"edition "} + front.edition;
  }
  return text;
}

NewIdentification make_identification(Specimen const& specimen, Edition const& new_edition,
                                      std::vector<FilledRow const*> const& rows,
                                      std::vector<SeenWords> const& seen) {
  NewIdentification made;
  made.occurrence_id = specimen.occurrence_id;
  made.catalog_number = specimen.catalog_number;
  made.references = citation_of(new_edition);
  made.verification_status = "0";
  std::vector<std::string> people;
  std::string said;
  for (auto const* row : rows) {
    if (std::find(people.begin(), people.end(), row->by) == people.end()) {
      people.push_back(row->by);
      made.identified_by += (made.identified_by.empty() ? "" : " | ") + row->by;
    }
    made.date_identified = std::max(made.date_identified, row->day);
    if (!row->new_name.empty()) made.verbatim_identification = row->new_name;
    if (!row->remarks.empty()) add_part(said, row->remarks);
  }
  std::string looked_at;
  for (auto const& one : seen) {
    looked_at += (looked_at.empty() ? "looked at " : ", ") + one.label + ": " + one.words;
  }
  add_part(made.remarks, looked_at);
  if (!made.verbatim_identification.empty()) add_part(made.remarks, "named by the person");
  add_part(made.remarks, earlier_name(specimen));
  add_part(made.remarks, said);

  std::string name;
  for (auto const& part :
       {sheet_number(specimen), specimen.occurrence_id, made.references, made.identified_by,
        made.date_identified, made.verbatim_identification, looked_at}) {
    name += part;
    name += '\x1F';
  }
  made.identification_id = name_based_id(name);
  return made;
}

void add_way(NewIdentification& identification, Edition const& edition, Route const& route) {
  if (route.empty()) return;
  std::string text;
  for (auto const lead : route) {
    text += (text.empty() ? "by the key: " : ", ") + lead_name(edition, lead);
  }
  add_part(identification.remarks, text);
}

}  // namespace keydrift
