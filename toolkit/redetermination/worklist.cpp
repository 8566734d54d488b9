// The sheets that somebody must look at, in the order in which they are best pulled.

#include <algorithm>
#include <map>
#include <tuple>

#include "keydrift/redetermination/redeterminer.hpp"

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

// Equal for specimens of which the same is asked, with the same consequences.
std::string question_key(Verdict const& verdict, Edition const& new_edition) {
  std::string key = to_word(verdict.outcome);
  auto const add = [&key](std::string_view text) {
    key += '\n';
    key += text;
  };
  if (verdict.questions.empty()) {
    add(verdict.why);
    if (verdict.strands_at) add(new_edition[*verdict.strands_at].label);
    return key;
  }
  // The outcome itself is no part of the question.
  key = verdict.questions.front().label;
  for (auto const& answer : verdict.questions.front().answers) {
    add(answer.words);
    add(answer.next ? std::to_string(*answer.next) : to_word(answer.outcome));
    for (auto const taxon : answer.new_taxa) add(new_edition[taxon].name);
  }
  return key;
}

}  // namespace

std::vector<WorkGroup> make_worklist(Redetermination const& result, Edition const& new_edition) {
  std::map<std::pair<std::string, std::string>, WorkGroup> groups;
  for (std::size_t i = 0; i < result.to_look_at.size(); ++i) {
    auto const& outcome = result.to_look_at[i];
    auto const& verdict = result.verdicts[outcome.verdict];
    auto const question = question_key(verdict, new_edition);
    auto& group = groups[{outcome.specimen.storage, question}];
    group.storage = outcome.specimen.storage;
    group.question = question;
    // A sheet without a question needs the whole specimen: as dear as a dissection.
    group.cost = verdict.questions.empty() ? cost_of(Difficulty::dissection)
                                           : cost_of(verdict.questions.front().difficulty);
    group.has_types = group.has_types || !outcome.specimen.type_status.empty();
    group.has_vouchers = group.has_vouchers || outcome.specimen.voucher;
    group.specimens.push_back(i);
  }
  std::vector<WorkGroup> list;
  for (auto& [key, group] : groups) {
    // Types first within the group, then vouchers, else input order.
    auto const rank = [&](std::size_t i) {
      auto const& specimen = result.to_look_at[i].specimen;
      return !specimen.type_status.empty() ? 0 : specimen.voucher ? 1 : 2;
    };
    std::stable_sort(group.specimens.begin(), group.specimens.end(),
                     [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
    list.push_back(std::move(group));
  }
  std::sort(list.begin(), list.end(), [](WorkGroup const& a, WorkGroup const& b) {
    if (a.has_types != b.has_types) return a.has_types;
    if (a.has_vouchers != b.has_vouchers) return a.has_vouchers;
    if (a.storage != b.storage) return natural_less(a.storage, b.storage);
    return std::tie(a.cost, a.question) < std::tie(b.cost, b.question);
  });
  return list;
}

}  // namespace keydrift
