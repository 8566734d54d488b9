// Are the couplets numbered one after the other, each once?

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <unordered_map>

#include "keydrift/key/proof_checks.hpp"

namespace keydrift::proofing {
namespace {

struct Numbered {
  LabelNumber number;
  CoupletId couplet;
};

// Rows of `couplets` that stand in a longest strictly ascending sequence of numbers (patience
// sorting: M. L. Fredman 1975, Discrete Mathematics 11: 29-35).  What is left over is misplaced.
std::vector<char> in_order(std::vector<Numbered> const& couplets) {
  std::vector<std::size_t> tops;  // by length - 1: the row that ends such a sequence lowest
  std::vector<std::size_t> previous(couplets.size(), couplets.size());
  for (std::size_t i = 0; i < couplets.size(); ++i) {
    auto const pile =
        std::lower_bound(tops.begin(), tops.end(), i, [&](std::size_t top, std::size_t row) {
          return couplets[top].number < couplets[row].number;
        });
    if (pile != tops.begin()) previous[i] = *(pile - 1);
    if (pile == tops.end()) {
      tops.push_back(i);
    } else {
      *pile = i;
    }
  }
  std::vector<char> kept(couplets.size(), 0);
  for (auto row = tops.empty() ? couplets.size() : tops.back(); row != couplets.size();
       row = previous[row]) {
    kept[row] = 1;
  }
  return kept;
}

// "6", "6 to 9", "6, 8 and 10 to 12": the numbers from first to last that are not in `present`.
std::vector<std::string> gaps(std::uint64_t first, std::uint64_t last,
                              std::set<std::uint64_t> const& present) {
  std::vector<std::string> ranges;
  auto const add = [&](std::uint64_t from, std::uint64_t to) {
    if (from > to) return;
    ranges.push_back(from == to ? std::to_string(from)
                                : std::to_string(from) + " to " + std::to_string(to));
  };
  auto next = first;
  for (auto it = present.lower_bound(first); it != present.end() && *it <= last; ++it) {
    if (*it > next) add(next, *it - 1);
    next = *it + 1;
  }
  add(next, last);
  return ranges;
}

class PartNumbering {
 public:
  PartNumbering(ProofContext& context, std::size_t part) : context_{context}, part_{part} {}

  // `before`: the number that the part may go on from, besides starting at 1.  Returns the last
  // number of the part.
  std::uint64_t check(std::uint64_t before);

 private:
  void report_duplicate(CoupletId again, CoupletId first);
  [[nodiscard]] std::optional<CoupletId> place_of(Numbered const& misplaced) const;
  void report_misplaced(Numbered const& misplaced, Numbered const* before);
  void report_gap(std::uint64_t first, std::uint64_t last, CoupletId after);
  void note_wanted();
  void note_numbered_leads(Couplet const& couplet);
  [[nodiscard]] bool taken(std::uint64_t number) const { return present_.contains(number); }

  ProofContext& context_;
  std::size_t part_;
  std::vector<Numbered const*> ordered_;  // those that stand in order
  std::set<std::uint64_t> present_;       // numbers that couplets or leads bear, or should bear
  // Numbers that leads of this part lead to in vain.
  std::map<std::uint64_t, std::vector<LeadId>> wanted_;
};

void PartNumbering::note_wanted() {
  for (auto c = context_.labels.part_begin(part_); c < context_.labels.part_end(part_); ++c.index) {
    auto const& leads = context_.edition[c].leads;
    for (std::uint32_t i = 0; i < leads.size(); ++i) {
      auto const* unresolved = std::get_if<Unresolved>(&leads[i].destination);
      if (unresolved == nullptr) continue;
      if (auto const label = label_number(label_in_destination(unresolved->printed))) {
        if (label->suffix.empty()) wanted_[label->number].push_back(LeadId{c, i});
      }
    }
  }
}

// "3 (6) Legs red" and "6 (3) Legs black": each lead has a number of its own, and the couplet bears
// the first of them.
void PartNumbering::note_numbered_leads(Couplet const& couplet) {
  for (auto const& lead : couplet.leads) {
    auto const number = label_number(lead.label);
    if (number && number->suffix.empty()) present_.insert(number->number);
  }
}

void PartNumbering::report_duplicate(CoupletId again, CoupletId first) {
  auto const& label = context_.label(again);
  auto message = "couplet " + in_quotes(label) + " occurs a second time";
  std::vector<std::string> names;
  for (auto const lead : context_.graph.leads_to(first)) names.push_back(context_.lead(lead));
  if (!names.empty() && context_.graph.leads_to(again).empty()) {
    bool const one = names.size() == 1;
    message += std::string{one ? "; lead " : "; leads "} + in_prose(names) +
               (one ? ", which leads to that number, is" : ", which lead to that number, are") +
               " taken to mean the first, in line " +
               std::to_string(context_.edition[first].place.line);
  }
  std::string remedy = "give it a number of its own, and mend the leads that mean it";
  if (auto const number = label_number(label); number && !taken(number->number + 1)) {
    auto const next = in_quotes(std::to_string(number->number + 1));
    auto const wanted = wanted_.find(number->number + 1);
    // A lead that leads to the next number in vain tells that the second is that one.
    remedy = wanted == wanted_.end()
                 ? "did you mean " + next + "? mend the leads that mean it as well"
                 : "did you mean " + next + ", to which lead " +
                       context_.lead(wanted->second.front()) + " leads?";
  }
  context_
      .report("duplicate-couplet", context_.edition[again].place, label, std::move(message), remedy)
      .related.push_back(
          {context_.edition[first].place, "the first couplet of this label is here"});
}

// Among couplets that stand in order one number may be missing, and leads may lead to it: then the
// couplet that bears it stands in the wrong place, and its number is right.
std::optional<CoupletId> PartNumbering::place_of(Numbered const& misplaced) const {
  if (!misplaced.number.suffix.empty() || context_.graph.leads_to(misplaced.couplet).empty()) {
    return std::nullopt;
  }
  auto const behind = std::lower_bound(
      ordered_.begin(), ordered_.end(), misplaced.number,
      [](Numbered const* one, LabelNumber const& number) { return one->number < number; });
  if (behind == ordered_.begin() || behind == ordered_.end()) return std::nullopt;
  auto const& before = **(behind - 1);
  bool const follows = before.number.number + 1 == misplaced.number.number;
  return follows ? std::optional{before.couplet} : std::nullopt;
}

void PartNumbering::report_misplaced(Numbered const& misplaced, Numbered const* before) {
  auto const& label = context_.label(misplaced.couplet);
  auto const expected = before == nullptr ? 1 : before->number.number + 1;
  std::string remedy = "print the couplets in the order of their numbers, or number them anew";
  if (auto const home = place_of(misplaced)) {
    remedy = "print it behind couplet " + in_quotes(context_.label(*home)) +
             ", where its number belongs";
  } else if (!taken(expected)) {
    remedy = "did you mean " + in_quotes(std::to_string(expected)) + "?";
    present_.insert(expected);
  }
  auto message = "couplet " + in_quotes(label) + " stands out of order";
  if (before != nullptr)
    message += ", behind couplet " + in_quotes(context_.label(before->couplet));
  context_.report("misnumbered-couplet", context_.edition[misplaced.couplet].place, label,
                  std::move(message), std::move(remedy));
}

void PartNumbering::report_gap(std::uint64_t first, std::uint64_t last, CoupletId after) {
  auto const& couplet = context_.edition[after];
  for (auto it = wanted_.lower_bound(first); it != wanted_.end() && it->first <= last; ++it) {
    if (taken(it->first)) continue;
    std::vector<std::string> names;
    for (auto const lead : it->second) names.push_back(context_.lead(lead));
    auto& finding = context_.report(
        "missing-couplet", couplet.place, couplet.label,
        "couplet " + in_quotes(std::to_string(it->first)) + " is missing before couplet " +
            in_quotes(couplet.label) + ", though " + (names.size() == 1 ? "lead " : "leads ") +
            in_prose(names) + (names.size() == 1 ? " leads" : " lead") + " to it",
        "print couplet " + in_quotes(std::to_string(it->first)) + ", or mend the " +
            (names.size() == 1 ? "lead" : "leads"));
    for (auto const lead : it->second) {
      finding.related.push_back({context_.edition[lead].destination_place,
                                 "lead " + context_.lead(lead) + " leads to it here"});
    }
    present_.insert(it->first);
  }
  auto const skipped = gaps(first, last, present_);
  if (skipped.empty()) return;
  bool const one = skipped.size() == 1 && skipped.front().find(' ') == std::string::npos;
  context_.report("skipped-number", couplet.place, couplet.label,
                  std::string{one ? "number " : "numbers "} + in_prose(skipped) +
                      (one ? " is" : " are") + " skipped before couplet " +
                      in_quotes(couplet.label),
                  "see whether a couplet was lost; otherwise number the couplets anew");
}

std::uint64_t PartNumbering::check(std::uint64_t before) {
  note_wanted();
  std::unordered_map<std::string, CoupletId> seen;
  std::vector<std::pair<CoupletId, CoupletId>> duplicates;
  std::vector<Numbered> numbered;
  std::size_t labelled = 0;
  for (auto c = context_.labels.part_begin(part_); c < context_.labels.part_end(part_); ++c.index) {
    auto const& couplet = context_.edition[c];
    auto const key = label_key(couplet.label);
    if (key.empty()) {
      context_.report("unlabelled-couplet", couplet.place,
                      couplet.leads.empty() ? std::string{} : printed_lead(couplet.leads.front()),
                      "this couplet bears no number", "number it, so that leads can lead to it");
      continue;
    }
    ++labelled;
    note_numbered_leads(couplet);
    if (auto const [first, is_new] = seen.emplace(key, c); !is_new) {
      duplicates.emplace_back(c, first->second);
      continue;
    }
    if (auto number = label_number(key)) {
      present_.insert(number->number);
      numbered.push_back({std::move(*number), c});
    }
  }
  for (auto const& [again, first] : duplicates) report_duplicate(again, first);
  // Letters and decimal numbering follow no sequence that could be checked.
  if (numbered.size() * 2 <= labelled) return before;

  auto const kept = in_order(numbered);
  for (std::size_t i = 0; i < numbered.size(); ++i) {
    if (kept[i] != 0) ordered_.push_back(&numbered[i]);
  }
  Numbered const* last = nullptr;
  for (std::size_t i = 0; i < numbered.size(); ++i) {
    if (kept[i] == 0) {
      report_misplaced(numbered[i], last);
    } else {
      last = &numbered[i];
    }
  }
  std::uint64_t previous = 0;
  for (std::size_t i = 0; i < numbered.size(); ++i) {
    if (kept[i] == 0) continue;
    auto const number = numbered[i].number.number;
    bool const goes_on = previous == 0 && before > 0 && number == before + 1;
    if (number > previous + 1 && !goes_on)
      report_gap(previous + 1, number - 1, numbered[i].couplet);
    previous = std::max(previous, number);
  }
  return previous;
}

}  // namespace

void check_numbering(ProofContext& context) {
  std::uint64_t last = 0;
  for (std::size_t part = 0; part < context.labels.part_count(); ++part) {
    last = PartNumbering{context, part}.check(last);
  }
}

}  // namespace keydrift::proofing
