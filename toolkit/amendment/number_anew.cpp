// "Couplets 8–13 become 9–14": numbers that a piece gives to couplets of the edition, before
// anything else is done, for the couplets that it prints speak of the numbers as they will be.
#include <algorithm>
#include <map>
#include <set>

#include "keydrift/amendment/application.hpp"
#include "keydrift/key/labels.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::amending {
namespace {

constexpr std::uint64_t kMostNumbers = 100000;  // of one range

class NumberGiver {
 public:
  explicit NumberGiver(Application& application) : a_{application}, draft_{application.draft} {}

  void run() {
    for (auto const& instruction : a_.piece.instructions) {
      auto const* step = std::get_if<RenumberCouplets>(&instruction.step);
      if (step == nullptr) continue;
      now_ = &instruction;
      bool const planned = step->from.empty() ? make_room() : plan(*step);
      if (!planned) return;
    }
    if (fresh_.empty()) return;
    move_suffixed();
    if (!is_each_once()) return;
    for (auto const& [row, number] : fresh_) {
      for (auto const& label : {draft_.edition.couplets[row].label, number}) touch(label);
    }
    record();
    draft_.renumber({fresh_.begin(), fresh_.end()});
  }

 private:
  bool refuse(std::string code, std::string message, std::string remedy) {
    a_.refuse(std::move(code), now_->place, now_->printed, std::move(message), std::move(remedy));
    fresh_.clear();
    return false;
  }

  // Every number of the ranges; empty where one is none.
  [[nodiscard]] static std::vector<std::string> numbers_in(std::vector<LabelRange> const& ranges) {
    std::vector<std::string> numbers;
    for (auto const& range : ranges) {
      if (range.first == range.last) {
        numbers.push_back(range.first);
        continue;
      }
      auto const first = label_number(range.first);
      auto const last = label_number(range.last);
      bool const counted = first && last && first->suffix.empty() && last->suffix.empty() &&
                           first->number <= last->number &&
                           last->number - first->number < kMostNumbers;
      if (!counted) return {};
      for (auto n = first->number; n <= last->number; ++n) numbers.push_back(std::to_string(n));
    }
    return numbers;
  }

  bool plan(RenumberCouplets const& step) {
    auto const from = numbers_in(step.from);
    auto const to = numbers_in(step.to);
    if (from.empty() || from.size() != to.size()) {
      return refuse("numbers-do-not-fit",
                    "these are " + std::to_string(from.size()) + " old numbers and " +
                        std::to_string(to.size()) + " new ones",
                    "say it as in \"Couplets 8–13 become 9–14\"");
    }
    for (std::size_t i = 0; i < from.size(); ++i) {
      auto const couplets = draft_.all(from[i]);
      if (couplets.size() > 1) {
        return refuse("ambiguous-couplet", "several keys of the edition have a couplet " + from[i],
                      "amend a file that holds the one key only");
      }
      if (couplets.empty()) {
        return refuse("no-such-couplet",
                      "this could not be done: the edition has no couplet " + from[i],
                      draft_.nearest(from[i]));
      }
      if (!fresh_.emplace(couplets.front().index, to[i]).second) {
        return refuse("conflicting-instructions", "couplet " + from[i] + " is given two numbers",
                      "keep the one that is meant");
      }
    }
    return true;
  }

  // "Subsequent couplets are renumbered accordingly": as many numbers up as there are couplets
  // inserted.
  bool make_room() {
    std::vector<std::uint64_t> wanted;
    for (auto const& instruction : a_.piece.instructions) {
      std::vector<CoupletId> const* couplets = nullptr;
      if (auto const* one = std::get_if<InsertCouplets>(&instruction.step))
        couplets = &one->couplets;
      auto const* by_number = std::get_if<PlaceByNumber>(&instruction.step);
      if (by_number != nullptr && by_number->inserts) couplets = &by_number->couplets;
      if (couplets == nullptr) continue;
      for (auto const id : *couplets) {
        auto const number = label_number(a_.piece.piece[id].label);
        if (number && number->suffix.empty()) wanted.push_back(number->number);
      }
    }
    std::sort(wanted.begin(), wanted.end());
    bool const in_row = !wanted.empty() && wanted.back() - wanted.front() + 1 == wanted.size() &&
                        std::adjacent_find(wanted.begin(), wanted.end()) == wanted.end();
    auto const first = in_row ? draft_.find(std::to_string(wanted.front())) : std::nullopt;
    if (!first) {
      return refuse("numbers-do-not-fit",
                    "the numbers of the couplets inserted do not say what the others are to be",
                    "say it as in \"Couplets 8–13 become 9–14\", or count them anew with "
                    "--renumber");
    }
    auto const part = draft_.part[first->index];
    for (auto const row : draft_.order) {
      auto const number = label_number(draft_.edition.couplets[row].label);
      bool const behind = draft_.gone[row] == 0 && draft_.part[row] == part && number &&
                          number->number >= wanted.front();
      if (behind) {
        fresh_[row] = std::to_string(number->number + wanted.size()) + number->suffix;
      }
    }
    return true;
  }

  // 8a goes along with 8.
  void move_suffixed() {
    std::map<std::pair<std::size_t, std::uint64_t>, std::uint64_t> moved;  // by key and number
    for (auto const& [row, number] : fresh_) {
      auto const old = label_number(draft_.edition.couplets[row].label);
      auto const now = label_number(number);
      if (!old || !now || !old->suffix.empty() || !now->suffix.empty()) continue;
      moved.emplace(std::pair{draft_.part[row], old->number}, now->number);
    }
    for (auto const row : draft_.order) {
      auto const number = label_number(draft_.edition.couplets[row].label);
      if (draft_.gone[row] != 0 || !number || number->suffix.empty()) continue;
      auto const found = moved.find({draft_.part[row], number->number});
      if (found != moved.end()) {
        fresh_.emplace(row, std::to_string(found->second) + number->suffix);
      }
    }
  }

  bool is_each_once() {
    std::set<std::pair<std::size_t, std::string>> labels;
    for (auto const row : draft_.order) {
      if (draft_.gone[row] != 0) continue;
      auto const found = fresh_.find(row);
      auto const& label =
          found == fresh_.end() ? draft_.edition.couplets[row].label : found->second;
      if (draft_.serial[row] != 0) {
        return refuse("numbers-do-not-fit",
                      "the leads of the edition bear numbers of their own, which would have to "
                      "change as well",
                      "print the couplets concerned with their new numbers");
      }
      if (!label.empty() && !labels.insert({draft_.part[row], label_key(label)}).second) {
        return refuse("number-not-free", "two couplets would have the number " + label,
                      "say what becomes of both, as in \"Couplets 8–13 become 9–14\"");
      }
    }
    return true;
  }

  void touch(std::string const& label) {
    auto const number = label_number(label);
    if (!number) return;
    auto& between = a_.renumbered;
    if (!between) between = {number->number, number->number};
    between->first = std::min(between->first, number->number);
    between->second = std::max(between->second, number->number);
  }

  void record() {
    for (auto const& [row, number] : fresh_) {
      auto& open = a_.record(AmendmentAct::renumbered, {row}, *now_);
      open.deed.detail = "was couplet " + draft_.edition.couplets[row].label;
    }
  }

  Application& a_;
  Draft& draft_;
  AmendmentInstruction const* now_{};
  std::map<std::uint32_t, std::string> fresh_;  // by row of the draft
};

// Numbers in an instruction that name couplets of the edition.
struct NumbersNamed {
  std::vector<std::string> operator()(PlaceByNumber const&) const { return {}; }
  std::vector<std::string> operator()(RenumberCouplets const&) const { return {}; }
  std::vector<std::string> operator()(ReplaceCouplets const& one) const { return of(one.labels); }
  std::vector<std::string> operator()(RemoveCouplets const& one) const { return of(one.labels); }
  // "Before couplet 8", where the new one is to be 8: told by place_couplets.
  std::vector<std::string> operator()(InsertCouplets const& one) const {
    return one.before ? std::vector<std::string>{} : std::vector{one.beside};
  }
  std::vector<std::string> operator()(AddToCouplet const& one) const { return {one.target.label}; }
  std::vector<std::string> operator()(RedirectLead const& one) const {
    return {one.target.label, one.to};
  }
  std::vector<std::string> operator()(ChangeWords const& one) const {
    return {one.target.label, one.from, one.to};
  }
  [[nodiscard]] static std::vector<std::string> of(std::vector<LabelRange> const& ranges) {
    std::vector<std::string> labels;
    for (auto const& range : ranges) {
      labels.push_back(range.first);
      labels.push_back(range.last);
    }
    return labels;
  }
};

}  // namespace

bool Application::moves(std::string_view label) const {
  auto const one = label_number(label);
  return renumbered && one && one->number >= renumbered->first && one->number <= renumbered->second;
}

void Application::refuse_number(Place const& place, std::string printed) {
  refuse("number-before-or-after", place, std::move(printed),
         "the piece gives couplets " + std::to_string(renumbered->first) + " to " +
             std::to_string(renumbered->second) +
             " other numbers, and this does not say whether it speaks of those before or after",
         "put this into a piece of its own, and give that one before or behind this piece");
}

void number_anew(Application& application) {
  NumberGiver{application}.run();
  if (!application.renumbered) return;
  for (auto const& instruction : application.piece.instructions) {
    auto const labels = std::visit(NumbersNamed{}, instruction.step);
    bool const unclear = std::any_of(labels.begin(), labels.end(), [&](std::string const& label) {
      return application.moves(label);
    });
    if (!unclear) continue;
    application.set_aside.insert(&instruction);
    application.refuse_number(instruction.place, instruction.printed);
  }
}

}  // namespace keydrift::amending
