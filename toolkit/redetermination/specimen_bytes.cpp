#include "keydrift/redetermination/specimen_bytes.hpp"

#include <array>

namespace keydrift {
namespace {

constexpr std::array kTextMembers{&Specimen::catalog_number,
                                  &Specimen::occurrence_id,
                                  &Specimen::scientific_name,
                                  &Specimen::authorship,
                                  &Specimen::qualifier,
                                  &Specimen::identified_by,
                                  &Specimen::recorded_by,
                                  &Specimen::date_identified,
                                  &Specimen::identification_references,
                                  &Specimen::type_status,
                                  &Specimen::sex,
                                  &Specimen::life_stage,
                                  &Specimen::reproductive_condition,
                                  &Specimen::region,
                                  &Specimen::storage,
                                  &Specimen::remarks};
constexpr std::array kLists{&Specimen::places, &Specimen::untied, &Specimen::loosely_tied};

}  // namespace

void write_bytes(ByteWriter& writer, Specimen const& specimen) {
  writer.number(specimen.line);
  writer.number(specimen.voucher ? 1 : 0);
  for (auto const word : kTextMembers) writer.text(specimen.*word);
  for (auto const list : kLists) {
    writer.number((specimen.*list).size());
    for (auto const& word : specimen.*list) writer.text(word);
  }
}

void read_bytes(ByteReader& reader, Specimen& specimen) {
  specimen.line = reader.number();
  specimen.voucher = reader.flag();
  for (auto const word : kTextMembers) (specimen.*word).assign(reader.text());
  for (auto const list : kLists) {
    (specimen.*list).resize(static_cast<std::size_t>(reader.number()));
    for (auto& word : specimen.*list) word.assign(reader.text());
  }
  specimen.observations.clear();
}

}  // namespace keydrift
