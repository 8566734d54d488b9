#include "keydrift/redetermination/work_groups.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <numeric>
#include <string>
#include <string_view>

#include "keydrift/redetermination/verdict_table.hpp"

namespace keydrift {
namespace {

// "2" before "10": storage units sort the way their labels are read.
bool natural_less(std::string_view a, std::string_view b) {
  auto const digit = [](char c) { return c >= '0' && c <= '9'; };
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < a.size() && j < b.size()) {
    if (digit(a[i]) && digit(b[j])) {
      while (i < a.size() && a[i] == '0') ++i;
      while (j < b.size() && b[j] == '0') ++j;
      auto const i0 = i;
      auto const j0 = j;
      while (i < a.size() && digit(a[i])) ++i;
      while (j < b.size() && digit(b[j])) ++j;
      if (i - i0 != j - j0) return i - i0 < j - j0;
      auto const order = a.substr(i0, i - i0).compare(b.substr(j0, j - j0));
      if (order != 0) return order < 0;
    } else {
      if (a[i] != b[j]) return a[i] < b[j];
      ++i;
      ++j;
    }
  }
  if ((a.size() - i) != (b.size() - j)) return (a.size() - i) < (b.size() - j);
  return a < b;
}

// Where each storage unit stands, by its number.
std::vector<std::uint32_t> ranks_of(std::vector<std::string> const& storages) {
  std::vector<std::uint32_t> order(storages.size());
  std::iota(order.begin(), order.end(), 0U);
  std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
    return natural_less(storages[a], storages[b]);
  });
  std::vector<std::uint32_t> ranks(storages.size());
  for (std::uint32_t rank = 0; rank < order.size(); ++rank) ranks[order[rank]] = rank;
  return ranks;
}

// A sheet without a question needs the whole specimen: as dear as a dissection.
Difficulty difficulty_of(Verdict const& verdict) {
  return verdict.questions.empty() ? Difficulty::dissection : verdict.questions.front().difficulty;
}

// By rising cost.
std::uint64_t cost_rank(Difficulty difficulty) {
  constexpr std::array kAll{Difficulty::naked_eye, Difficulty::hand_lens, Difficulty::microscope,
                            Difficulty::dissection};
  auto const cheaper = std::count_if(kAll.begin(), kAll.end(), [&](Difficulty other) {
    return cost_of(other) < cost_of(difficulty);
  });
  return static_cast<std::uint64_t>(cheaper);
}

std::uint64_t count_different(SpillSort& fingerprints) {
  fingerprints.sort();
  std::uint64_t count = 0;
  std::optional<Fingerprint> last;
  SpillSort::Record record;
  while (fingerprints.next(record)) {
    ByteReader reader{record.payload};
    auto const one = reader.raw<Fingerprint>();
    if (last != one) ++count;
    last = one;
  }
  return count;
}

}  // namespace

void list_work_groups(VerdictLedger& ledger, Edition const& new_edition,
                      SheetsOfGroups const& sheets, Redetermination& result) {
  auto const& storages = ledger.storages();
  auto const ranks = ranks_of(storages);
  // What decides before the question does is in the key; the question's words begin the payload.
  constexpr std::size_t kMemory = std::size_t{2} << 20;
  SpillSort sorted{kMemory, SpillOrder::key_then_payload};
  SpillSort questions{kMemory, SpillOrder::key_then_payload};
  std::string payload, print;
  ledger.tell_groups([&](CountedGroup const& group, std::uint64_t ordinal) {
    auto const verdict = result.verdicts[static_cast<std::size_t>(ordinal)];
    auto const difficulty = difficulty_of(verdict);
    auto const key = (group.has_types ? 0U : std::uint64_t{1} << 41) |
                     (group.has_vouchers ? 0U : std::uint64_t{1} << 40) |
                     std::uint64_t{ranks[group.storage]} << 8 | cost_rank(difficulty);
    payload = question_key(verdict, new_edition);
    print.clear();
    auto const question = fingerprint_of(payload);
    ByteWriter{print}.raw(question);
    questions.add(question.high, print);
    payload += '\0';
    ByteWriter writer{payload};
    writer.number(ordinal);
    writer.number(static_cast<std::uint64_t>(difficulty));
    writer.raw(group);
    sorted.add(key, payload);
  });
  sorted.sort();
  SpillSort::Record record;
  while (sorted.next(record)) {
    auto const end = record.payload.find('\0');
    ByteReader reader{record.payload.substr(end + 1)};
    WorkGroup work;
    work.question = record.payload.substr(0, end);
    work.verdict = static_cast<std::size_t>(reader.number());
    work.cost = cost_of(static_cast<Difficulty>(reader.number()));
    auto const group = reader.raw<CountedGroup>();
    work.id = group.id;
    work.storage = storages[group.storage];
    work.has_types = group.has_types;
    work.has_vouchers = group.has_vouchers;
    work.sheets = group.sheets;
    if (auto const kept = sheets.find(group.id); kept != sheets.end()) {
      work.specimens = kept->second;
    }
    result.worklist.push_back(work);
  }
  result.different_questions = count_different(questions);
  if (!result.broken) result.broken = sorted.failure();
  if (!result.broken) result.broken = questions.failure();
}

}  // namespace keydrift
