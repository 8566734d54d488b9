// Outcomes as bytes: for lists that are longer than memory should be.

#include <algorithm>
#include <bit>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/redetermination/outcome.hpp"

namespace keydrift {
namespace {

// What each kind of member is written as; an optional one behind whether it is there.

template <class Enumeration>
void write_word(ByteWriter& writer, Enumeration value) {
  writer.number(static_cast<std::uint64_t>(value));
}
template <class Enumeration>
void read_word(ByteReader& reader, Enumeration& value) {
  value = static_cast<Enumeration>(reader.number());
}

template <class Tag>
void write_one(ByteWriter& writer, Id<Tag> id) {
  writer.number(id.index);
}
template <class Tag>
void read_one(ByteReader& reader, Id<Tag>& id) {
  id.index = static_cast<std::uint32_t>(reader.number());
}
void write_one(ByteWriter& writer, LeadId lead) {
  write_one(writer, lead.couplet);
  writer.number(lead.ordinal);
}
void read_one(ByteReader& reader, LeadId& lead) {
  read_one(reader, lead.couplet);
  lead.ordinal = static_cast<std::uint32_t>(reader.number());
}
void write_one(ByteWriter& writer, std::uint64_t number) { writer.number(number); }
void read_one(ByteReader& reader, std::uint64_t& number) { number = reader.number(); }
void write_one(ByteWriter& writer, std::uint32_t number) { writer.number(number); }
void read_one(ByteReader& reader, std::uint32_t& number) {
  number = static_cast<std::uint32_t>(reader.number());
}
void write_one(ByteWriter& writer, std::string const& text) { writer.text(text); }
void read_one(ByteReader& reader, std::string& text) { text.assign(reader.text()); }

// Named before the templates that look for them.
void write_one(ByteWriter& writer, PossibleTerminal const& value);
void read_one(ByteReader& reader, PossibleTerminal& value);
void write_one(ByteWriter& writer, PossiblePair const& value);
void read_one(ByteReader& reader, PossiblePair& value);
void write_one(ByteWriter& writer, DecidingStatement const& value);
void read_one(ByteReader& reader, DecidingStatement& value);
void write_one(ByteWriter& writer, Parting const& value);
void read_one(ByteReader& reader, Parting& value);
void write_one(ByteWriter& writer, PartialFit const& value);
void read_one(ByteReader& reader, PartialFit& value);
void write_one(ByteWriter& writer, Answer const& value);
void read_one(ByteReader& reader, Answer& value);
void write_one(ByteWriter& writer, Question const& value);
void read_one(ByteReader& reader, Question& value);

template <class Value>
void write_one(ByteWriter& writer, std::optional<Value> const& value) {
  writer.number(value ? 1 : 0);
  if (value) write_one(writer, *value);
}
template <class Value>
void read_one(ByteReader& reader, std::optional<Value>& value) {
  value.reset();
  if (reader.flag()) read_one(reader, value.emplace());
}

template <class Value>
void write_one(ByteWriter& writer, std::vector<Value> const& values);
template <class Value>
void read_one(ByteReader& reader, std::vector<Value>& values);

void write_one(ByteWriter& writer, PossibleTerminal const& terminal) {
  write_one(writer, terminal.taxon);
  write_word(writer, terminal.arrival);
  write_one(writer, terminal.route);
  write_one(writer, terminal.rests_on);
}
void read_one(ByteReader& reader, PossibleTerminal& terminal) {
  read_one(reader, terminal.taxon);
  read_word(reader, terminal.arrival);
  read_one(reader, terminal.route);
  read_one(reader, terminal.rests_on);
}

void write_one(ByteWriter& writer, PossiblePair const& pair) {
  write_one(writer, pair.old_taxon);
  write_one(writer, pair.new_taxon);
}
void read_one(ByteReader& reader, PossiblePair& pair) {
  read_one(reader, pair.old_taxon);
  read_one(reader, pair.new_taxon);
}

void write_one(ByteWriter& writer, DecidingStatement const& deciding) {
  writer.number((deciding.in_new ? 1U : 0U) | (deciding.recorded ? 2U : 0U));
  write_one(writer, deciding.lead);
  writer.number(deciding.statement);
  writer.text(deciding.known);
}
void read_one(ByteReader& reader, DecidingStatement& deciding) {
  auto const flags = reader.number();
  deciding.in_new = (flags & 1U) != 0;
  deciding.recorded = (flags & 2U) != 0;
  read_one(reader, deciding.lead);
  read_one(reader, deciding.statement);
  read_one(reader, deciding.known);
}

void write_one(ByteWriter& writer, Parting const& parting) {
  write_one(writer, parting.old_lead);
  write_one(writer, parting.new_couplet);
  write_one(writer, parting.new_lead);
  write_one(writer, parting.deciding);
}
void read_one(ByteReader& reader, Parting& parting) {
  read_one(reader, parting.old_lead);
  read_one(reader, parting.new_couplet);
  read_one(reader, parting.new_lead);
  read_one(reader, parting.deciding);
}

void write_one(ByteWriter& writer, PartialFit const& fit) {
  writer.number(fit.in_new ? 1 : 0);
  write_one(writer, fit.lead);
  write_one(writer, fit.holds);
  write_one(writer, fit.fails);
}
void read_one(ByteReader& reader, PartialFit& fit) {
  fit.in_new = reader.flag();
  read_one(reader, fit.lead);
  read_one(reader, fit.holds);
  read_one(reader, fit.fails);
}

void write_one(ByteWriter& writer, Answer const& answer) {
  writer.text(answer.words);
  write_one(writer, answer.cells);
  write_word(writer, answer.outcome);
  write_one(writer, answer.new_taxa);
  write_one(writer, answer.next);
}
void read_one(ByteReader& reader, Answer& answer) {
  read_one(reader, answer.words);
  read_one(reader, answer.cells);
  read_word(reader, answer.outcome);
  read_one(reader, answer.new_taxa);
  read_one(reader, answer.next);
}

void write_one(ByteWriter& writer, Question const& question) {
  writer.text(question.character);
  writer.text(question.label);
  write_word(writer, question.difficulty);
  write_one(writer, question.answers);
}
void read_one(ByteReader& reader, Question& question) {
  read_one(reader, question.character);
  read_one(reader, question.label);
  read_word(reader, question.difficulty);
  read_one(reader, question.answers);
}

template <class Value>
void write_one(ByteWriter& writer, std::vector<Value> const& values) {
  writer.number(values.size());
  for (auto const& value : values) write_one(writer, value);
}
template <class Value>
void read_one(ByteReader& reader, std::vector<Value>& values) {
  values.clear();
  // Nothing has more members than bytes are left.
  auto const size = std::min<std::uint64_t>(reader.number(), reader.rest().size());
  values.reserve(static_cast<std::size_t>(size));
  for (std::uint64_t i = 0; i < size; ++i) read_one(reader, values.emplace_back());
}

}  // namespace

void write_bytes(ByteWriter& writer, Verdict const& verdict) {
  write_word(writer, verdict.outcome);
  writer.text(verdict.why);
  write_one(writer, verdict.old_taxa);
  write_one(writer, verdict.terminals);
  write_one(writer, verdict.pairs);
  writer.number((verdict.may_strand ? 1U : 0U) | (verdict.complete ? 2U : 0U));
  write_one(writer, verdict.strands_at);
  write_one(writer, verdict.parting);
  write_one(writer, verdict.partly);
  write_one(writer, verdict.questions);
  for (auto const outcome : verdict.by_reading) write_word(writer, outcome);
  write_word(writer, verdict.footing);
}

void read_bytes(ByteReader& reader, Verdict& verdict) {
  read_word(reader, verdict.outcome);
  read_one(reader, verdict.why);
  read_one(reader, verdict.old_taxa);
  read_one(reader, verdict.terminals);
  read_one(reader, verdict.pairs);
  auto const flags = reader.number();
  verdict.may_strand = (flags & 1U) != 0;
  verdict.complete = (flags & 2U) != 0;
  read_one(reader, verdict.strands_at);
  read_one(reader, verdict.parting);
  read_one(reader, verdict.partly);
  read_one(reader, verdict.questions);
  for (auto& outcome : verdict.by_reading) read_word(reader, outcome);
  read_word(reader, verdict.footing);
}

void write_bytes(ByteWriter& writer, FromTo const& row) {
  writer.text(row.from);
  writer.text(row.to);
  for (auto const count : row.by_outcome) writer.number(count);
  writer.number(row.specimens);
}

void read_bytes(ByteReader& reader, FromTo& row) {
  read_one(reader, row.from);
  read_one(reader, row.to);
  for (auto& count : row.by_outcome) count = reader.number();
  row.specimens = reader.number();
}

void write_bytes(ByteWriter& writer, WorkGroup const& group) {
  writer.raw(group.id);
  writer.text(group.storage);
  writer.text(group.question);
  writer.number(std::bit_cast<std::uint64_t>(group.cost));
  writer.number((group.has_types ? 1U : 0U) | (group.has_vouchers ? 2U : 0U));
  write_one(writer, group.specimens);
  writer.number(group.sheets);
  writer.number(group.verdict);
}

void read_bytes(ByteReader& reader, WorkGroup& group) {
  group.id = reader.raw<Fingerprint>();
  read_one(reader, group.storage);
  read_one(reader, group.question);
  group.cost = std::bit_cast<double>(reader.number());
  auto const flags = reader.number();
  group.has_types = (flags & 1U) != 0;
  group.has_vouchers = (flags & 2U) != 0;
  read_one(reader, group.specimens);
  group.sheets = reader.number();
  group.verdict = static_cast<std::size_t>(reader.number());
}

std::optional<Finding> Redetermination::failure() const {
  if (broken) return broken;
  if (auto failure = verdicts.failure()) return failure;
  if (auto failure = from_to.failure()) return failure;
  return worklist.failure();
}

}  // namespace keydrift
