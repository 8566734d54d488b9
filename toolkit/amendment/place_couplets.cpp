// Replaced, inserted, removed couplets and added leads: the first stage of applying a piece.
#include <algorithm>
#include <map>

#include "keydrift/amendment/application.hpp"
#include "keydrift/key/labels.hpp"
#include "keydrift/key/near.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::amending {
namespace {

class Placer {
 public:
  explicit Placer(Application& application)
      : a_{application}, draft_{application.draft}, piece_{application.piece.piece} {
    a_.placed.resize(piece_.couplets.size());
  }

  void run() {
    for (auto const& instruction : a_.piece.instructions) {
      now_ = &instruction;
      if (a_.set_aside.count(&instruction) != 0) continue;
      std::visit([this](auto const& step) { take(step); }, instruction.step);
    }
  }

 private:
  // --- one instruction -------------------------------------------------------------------------

  void take(PlaceByNumber const& step) {
    for (auto const id : usable(step.couplets)) {
      if (may_stay(step, id)) place_by_number(id);
    }
  }

  void take(ReplaceCouplets const& given) {
    ReplaceCouplets const step{given.labels, usable(given.couplets)};
    if (step.couplets.empty()) return;
    auto const old = couplets_in(step.labels, step.couplets);
    if (old.empty()) {
      replace_lead(step);
      return;
    }
    std::vector<char> used(old.size(), 0);
    std::vector<std::size_t> match(step.couplets.size(), old.size());
    for (std::size_t p = 0; p < step.couplets.size(); ++p) {
      auto const key = label_key(piece_[step.couplets[p]].label);
      for (std::size_t o = 0; o < old.size(); ++o) {
        bool const same = used[o] == 0 && label_key(draft_.edition[old[o]].label) == key;
        if (!same) continue;
        match[p] = o;
        used[o] = 1;
        break;
      }
    }
    // "Couplet 3 should read: – Eyes small ..... 4", and what that leads to: a lead of the couplet.
    bool const one_for_one = old.size() == 1 && step.couplets.size() == 1;
    bool const one_lead = old.size() == 1 && used[0] == 0 && is_bare_lead(step.couplets.front());
    if ((one_for_one || one_lead) && match[0] != 0) {
      match[0] = 0;
      used[0] = 1;
    }
    // Where it is not known what replaces a couplet, nothing is taken away for it.
    bool known = true;
    for (std::size_t p = 0; p < step.couplets.size(); ++p) {
      known = known && (match[p] < old.size() || !is_bare_lead(step.couplets[p]));
    }
    auto last = std::optional<CoupletId>{};
    for (std::size_t p = 0; p < step.couplets.size(); ++p) {
      auto const id = step.couplets[p];
      if (match[p] < old.size()) {
        replace(old[match[p]], id);
        last = old[match[p]];
      } else if (!known || piece_[id].label.empty() || piece_[id].leads.size() < 2) {
        place_by_number(id);
      } else if (last) {
        last = insert(id, *last, draft_.position(*last) + 1, false);
      } else {
        // Before the first of those replaced; what led to that one leads here.
        last = insert(id, old.front(), draft_.position(old.front()), true);
        if (used.front() == 0) a_.moved.emplace_back(old.front(), *last);
      }
    }
    for (std::size_t o = 0; o < old.size(); ++o) {
      if (known && used[o] == 0) remove(old[o]);
    }
  }

  [[nodiscard]] bool is_bare_lead(CoupletId id) const {
    return piece_[id].label.empty() && piece_[id].leads.size() == 1;
  }

  // "Lead 7b should read": the number is a lead's.  The couplets below the lead's new words are
  // those that it leads to.
  void replace_lead(ReplaceCouplets const& step) {
    auto const lead = draft_.find_lead(step.labels.front().first);
    if (!lead) {
      refuse_label(step.labels.front().first, now_->place, now_->printed);
      return;
    }
    bool const alone = step.couplets.size() == 1;
    bool replaced = false;
    for (auto const id : step.couplets) {
      auto const& couplet = piece_[id];
      auto const& label = couplet.leads.front().label;
      auto const ordinal = draft_.ordinal_of(lead->couplet, label);
      bool const its_couplet =
          label_key(couplet.label) == label_key(draft_.edition[lead->couplet].label);
      bool const other =
          ordinal && *ordinal != lead->ordinal && label_key(label) != label_key(couplet.label);
      bool const named =
          couplet.leads.size() == 1 && (couplet.label.empty() || (its_couplet && !other) ||
                                        draft_.find_lead(couplet.label) == lead);
      if (alone || (!replaced && named)) {
        replace_one_of(*lead, id);
        replaced = true;
      } else {
        place_by_number(id);
      }
    }
  }

  void take(InsertCouplets const& given) {
    InsertCouplets const step{given.beside, given.before, usable(given.couplets)};
    auto anchor = draft_.find(step.beside);
    // "Couplets 8–13 become 9–14; before 8 insert 8".
    bool const in_room = !step.couplets.empty() && a_.moves(step.beside) && step.before;
    if (in_room && label_key(piece_[step.couplets.front()].label) == label_key(step.beside)) {
      take(PlaceByNumber{step.couplets, true, {}});
      return;
    }
    if (in_room) {
      a_.refuse_number(now_->place, now_->printed);
      return;
    }
    for (auto const id : step.couplets) {
      if (refuse_unclear_number(id)) return;
    }
    if (!anchor) {
      if (auto const lead = draft_.find_lead(step.beside)) anchor = lead->couplet;
    }
    if (!anchor) {
      refuse_label(step.beside, now_->place, now_->printed);
      return;
    }
    auto last = *anchor;
    bool first = true;
    for (auto const id : step.couplets) {
      auto const at = !first        ? draft_.position(last) + 1
                      : step.before ? draft_.position(*anchor)
                                    : draft_.position_behind(*anchor, piece_[id].label);
      last = insert(id, first ? *anchor : last, at, first && step.before);
      first = false;
    }
  }

  void take(RemoveCouplets const& step) {
    for (auto const& range : step.labels) {
      auto const numbered = draft_.find_serial_lead(range.first);
      if (numbered && range.first == range.last && !range.onwards) {
        bool const last = draft_.edition[numbered->couplet].leads.size() == 1;
        last ? remove(numbered->couplet) : remove_lead(*numbered);
        continue;
      }
      auto const couplets = couplets_in({range}, {});
      for (auto const id : couplets) {
        if (!conflicts(id)) remove(id);
      }
      if (!couplets.empty()) continue;
      if (auto const lead = draft_.find_lead(range.first)) {
        remove_lead(*lead);
      } else {
        refuse_label(range.first, now_->place, now_->printed);
      }
    }
  }

  void take(AddToCouplet const& step) {
    if (step.couplets.empty()) return;  // words: see change_words
    auto const couplet = draft_.find(step.target.label);
    if (std::any_of(step.couplets.begin(), step.couplets.end(),
                    [&](CoupletId id) { return is_couplet_beside(id, step.target.label); })) {
      add_couplets(step, couplet);
      return;
    }
    if (!couplet) {
      refuse_label(step.target.label, now_->place, now_->printed);
      return;
    }
    auto& open = a_.record(AmendmentAct::added, *couplet, *now_);
    for (auto const id : step.couplets) {
      for (std::uint32_t i = 0; i < piece_[id].leads.size(); ++i) {
        auto& leads = draft_.edition[*couplet].leads;
        open.leads.push_back(static_cast<std::uint32_t>(leads.size()));
        leads.push_back(unresolved(piece_[id].leads[i]));
        a_.leads.push_back({{*couplet, open.leads.back()}, {id, i}});
      }
      a_.placed[id.index] = couplet;
    }
  }

  // Two leads and more with a number of their own are no leads of the couplet that they are added
  // to ("Add to couplet 6: 14(6) …"), nor of one that they bring ("Add couplet 14:").
  [[nodiscard]] bool is_couplet_beside(CoupletId id, std::string const& label) const {
    auto const& couplet = piece_[id];
    if (couplet.label.empty() || couplet.leads.size() < 2) return false;
    return label_key(couplet.label) != label_key(label) || !draft_.find(label);
  }

  void add_couplets(AddToCouplet const& step, std::optional<CoupletId> const& beside) {
    if (beside) {
      // The couplet itself, printed anew, and those that it leads to.
      bool const anew = std::any_of(step.couplets.begin(), step.couplets.end(), [&](CoupletId id) {
        return piece_[id].leads.size() > 1 && draft_.find(piece_[id].label) == beside;
      });
      if (anew) {
        take(PlaceByNumber{step.couplets});
      } else {
        take(InsertCouplets{step.target.label, false, step.couplets});
      }
      return;
    }
    take(PlaceByNumber{step.couplets, true, {}});
  }

  void take(RenumberCouplets const&) {}  // see number_anew
  void take(RedirectLead const&) {}      // see change_words
  void take(ChangeWords const&) {}

  // Those that have leads; the others are told (other forms than print can hold such).
  [[nodiscard]] std::vector<CoupletId> usable(std::vector<CoupletId> couplets) {
    std::erase_if(couplets, [this](CoupletId id) {
      if (!piece_[id].leads.empty()) return false;
      a_.refuse("couplet-without-leads", piece_[id].place, piece_[id].label,
                "this couplet of the piece has no leads", "give it its leads");
      return true;
    });
    return couplets;
  }

  // --- by number -------------------------------------------------------------------------------

  // "Insert new couplet 8" replaces no couplet 8.  One whose words the edition has is printed for
  // what it leads to now.
  bool may_stay(PlaceByNumber const& step, CoupletId id) {
    auto const& couplet = piece_[id];
    auto const same = draft_.find(couplet.label);
    if (!same || couplet.label.empty()) return true;
    if (couplet.leads.size() < 2 || shares_words(*same, id)) return true;
    if (a_.moves(couplet.label)) {
      a_.refuse_number(couplet.place, couplet.leads.front().text);
      return false;
    }
    auto const key = label_key(couplet.label);
    bool const fresh =
        step.inserts && (step.fresh.empty() ||
                         std::any_of(step.fresh.begin(), step.fresh.end(),
                                     [&](LabelRange const& range) { return covers(range, key); }));
    if (!fresh) return true;
    a_.refuse("number-not-free", couplet.place, couplet.leads.front().text,
              "this is to be inserted as couplet " + key + ", and the edition has a couplet " +
                  key + ", which an insertion does not replace",
              "say what becomes of the old numbers, as in \"Couplets 8–13 become 9–14\", or "
              "\"Replace couplet " +
                  key + "\" if that is meant");
    return false;
  }

  // Couplet 8 is inserted, the edition has an 8, and the new one leads to 9: to the old 9, or to
  // the old 8, which is to be 9?
  bool refuse_unclear_number(CoupletId id) {
    auto const& couplet = piece_[id];
    auto const own = label_number(couplet.label);
    if (!own || !own->suffix.empty() || draft_.all(couplet.label).empty()) return false;
    for (auto const& lead : couplet.leads) {
      auto const* nowhere = std::get_if<Unresolved>(&lead.destination);
      auto const to = nowhere != nullptr ? label_number(nowhere->printed) : std::nullopt;
      if (!to || !(*own < *to)) continue;
      a_.refuse("number-not-free", couplet.place, couplet.leads.front().text,
                "the edition has a couplet " + label_key(couplet.label) +
                    " already, and this does not say whether " + label_key(nowhere->printed) +
                    " is the number that a couplet has or is to have",
                "say what becomes of the old numbers, as in \"Couplets 8–13 become 9–14\", or give "
                "the couplet a number that is free");
      return true;
    }
    return false;
  }

  [[nodiscard]] bool shares_words(CoupletId old, CoupletId id) const {
    auto const& leads = draft_.edition[old].leads;
    return std::any_of(piece_[id].leads.begin(), piece_[id].leads.end(), [&](Lead const& lead) {
      return std::any_of(leads.begin(), leads.end(),
                         [&](Lead const& one) { return one.text == lead.text; });
    });
  }

  [[nodiscard]] static bool covers(LabelRange const& range, std::string const& key) {
    if (label_key(range.first) == key || label_key(range.last) == key) return true;
    auto const number = label_number(key);
    auto const first = label_number(range.first);
    auto const last = label_number(range.last);
    return number && first && last && *first <= *number && *number <= *last;
  }

  void place_by_number(CoupletId id) {
    auto const& couplet = piece_[id];
    auto const& words = couplet.leads.front();
    if (couplet.label.empty()) {
      a_.refuse("couplet-without-number", couplet.place, words.text,
                "these leads bear no number, so that it is not known where they belong",
                "print the couplet's number, or \"Add to couplet 5:\" above them");
      return;
    }
    auto const same = draft_.all(couplet.label);
    if (same.size() > 1) {
      refuse_label(couplet.label, couplet.place, words.text);
    } else if (same.size() == 1) {
      replace(same.front(), id);
    } else if (couplet.leads.size() == 1 && draft_.find_lead(words.label)) {
      replace_one_of(*draft_.find_lead(words.label), id);
    } else if (auto const anchor = couplet_before(couplet.label)) {
      insert(id, *anchor, draft_.position_behind(*anchor, couplet.label), false);
    } else {
      refuse_label(couplet.label, couplet.place, words.text);
    }
  }

  // The couplet that one of this number follows: 7 before 7a; the last smaller number before a
  // plain one.  Numbers of several keys in one file say nothing.
  [[nodiscard]] std::optional<CoupletId> couplet_before(std::string_view label) const {
    auto const number = label_number(label);
    if (!number) return std::nullopt;
    if (!number->suffix.empty()) return draft_.find(std::to_string(number->number));
    if (draft_.part_count > 1) return std::nullopt;
    std::optional<CoupletId> before;
    for (auto const row : draft_.order) {
      auto const other = label_number(draft_.edition.couplets[row].label);
      if (draft_.gone[row] == 0 && other && *other < *number) before = CoupletId{row};
    }
    return before;
  }

  // Couplets of the labels in printed order, ranges filled.  "3 ff." ends with the last couplet
  // that the piece prints anew.
  [[nodiscard]] std::vector<CoupletId> couplets_in(std::vector<LabelRange> const& labels,
                                                   std::vector<CoupletId> const& printed) const {
    std::vector<CoupletId> found;
    for (auto const& range : labels) {
      auto const first = draft_.find(range.first);
      if (!first) continue;
      auto last = draft_.find(range.last).value_or(*first);
      if (range.onwards) {
        for (auto const id : printed) {
          auto const same = draft_.find(piece_[id].label);
          if (same && draft_.position(*same) > draft_.position(last)) last = *same;
        }
      }
      auto const end = draft_.position(last);
      for (auto at = draft_.position(*first); at <= end; ++at) {
        auto const row = draft_.order[at];
        if (draft_.gone[row] == 0) found.push_back({row});
      }
    }
    return found;
  }

  // --- what is done to couplets ----------------------------------------------------------------

  // Says so when an earlier instruction of the piece has dealt with the couplet.
  bool conflicts(CoupletId id) {
    auto const [entry, fresh] = dealt_with_.emplace(id.index, now_);
    if (fresh) return false;
    auto const& earlier = *entry->second;
    auto& finding = a_.refuse(
        "conflicting-instructions", now_->place, now_->printed,
        "couplet " + draft_.edition[id].label +
            " has been dealt with before; the first instruction was followed, this one was not",
        "keep the one that is meant");
    finding.related.push_back(
        {earlier.place, earlier.printed.empty() ? "the couplet is printed here" : earlier.printed});
    return true;
  }

  void replace(CoupletId old, CoupletId id) {
    auto const& couplet = piece_[id];
    if (couplet.leads.size() == 1 && draft_.edition[old].leads.size() > 1) {
      auto const& label = couplet.leads.front().label;
      // "7" alone is the first lead, and so is a lead whose label the edition does not know.
      auto const ordinal = draft_.ordinal_of(old, label);
      bool const dash = couplet.label.empty();
      if (dash && draft_.edition[old].leads.size() > 2) {
        refuse_bare_lead(old, id);
        return;
      }
      replace_one_of({old, dash ? 1 : ordinal.value_or(0)}, id);
      return;
    }
    if (conflicts(old)) return;
    auto& open = a_.record(AmendmentAct::replaced, old, *now_);
    open.deed.before = draft_.as_printed(old);
    auto& now = draft_.edition[old];
    for (std::uint32_t i = 0; i < couplet.leads.size(); ++i) {
      if (i < now.leads.size()) a_.led_before.push_back({{old, i}, now.leads[i].destination});
      a_.leads.push_back({{old, i}, {id, i}});
    }
    say_notes_left_out(now, couplet);
    now.leads.clear();
    for (auto const& lead : couplet.leads) now.leads.push_back(unresolved(lead));
    now.notes = couplet.notes;
    if (!couplet.back_references.empty()) now.back_references = couplet.back_references;
    mark_places(now, couplet);
    a_.placed[id.index] = old;
    bool const renamed = !couplet.label.empty() && label_key(couplet.label) != label_key(now.label);
    if (renamed && draft_.all(couplet.label).empty()) draft_.relabel(old, couplet.label);
    open.deed.couplet = draft_.edition[old].label;
  }

  void say_notes_left_out(Couplet const& old, Couplet const& fresh) {
    std::vector<std::string> lost;
    auto const told = [&](std::string const& note) {
      return std::any_of(fresh.leads.begin(), fresh.leads.end(),
                         [&](Lead const& lead) {
                           return std::find(lead.notes.begin(), lead.notes.end(), note) !=
                                  lead.notes.end();
                         }) ||
             std::find(fresh.notes.begin(), fresh.notes.end(), note) != fresh.notes.end();
    };
    auto const look_at = [&](std::vector<std::string> const& notes) {
      for (auto const& note : notes) {
        if (!told(note)) lost.push_back(in_quotes(note));
      }
    };
    for (auto const& lead : old.leads) look_at(lead.notes);
    look_at(old.notes);
    if (lost.empty()) return;
    a_.remark(
        "note-left-out", Severity::information, fresh.place, "",
        "couplet " + old.label + " had a note that the piece does not repeat: " + in_prose(lost),
        "repeat the note in the piece if it still holds");
  }

  // One lead of a couplet takes the place of `lead`.
  void replace_one_of(LeadId lead, CoupletId id) {
    auto const& couplet = piece_[id];
    if (couplet.leads.size() != 1) {
      replace(lead.couplet, id);
      return;
    }
    auto& open = a_.record(AmendmentAct::replaced, lead.couplet, *now_);
    open.deed.before = {draft_.as_printed(lead)};
    open.leads = {lead.ordinal};
    auto& now = draft_.edition[lead];
    a_.led_before.push_back({lead, now.destination});
    auto label = now.label;
    now = unresolved(couplet.leads.front());
    now.label = std::move(label);
    a_.leads.push_back({lead, {id, 0}});
    a_.placed[id.index] = lead.couplet;
  }

  CoupletId insert(CoupletId id, CoupletId beside, std::size_t at, bool before) {
    auto couplet = piece_[id];
    auto const own = couplet.label;
    if (own.empty() || !draft_.all(own).empty()) {
      couplet.label = draft_.free_label(draft_.edition[beside].label);
      for (auto& lead : couplet.leads) lead.label = "";
      if (!own.empty()) {
        a_.remark("number-taken", Severity::warning, couplet.place, own,
                  "the edition has a couplet " + own + " already; the one inserted was numbered " +
                      couplet.label,
                  "give the couplet a number that is free, or say which one it replaces");
      }
    }
    mark_places(couplet, piece_[id]);
    for (auto& lead : couplet.leads) lead = unresolved(std::move(lead));
    auto const fresh = draft_.insert(std::move(couplet), at, draft_.part[beside.index]);
    auto& open = a_.record(AmendmentAct::inserted, fresh, *now_);
    open.deed.detail =
        (before ? "before couplet " : "behind couplet ") + draft_.edition[beside].label;
    dealt_with_.emplace(fresh.index, now_);
    a_.placed[id.index] = fresh;
    a_.inserted.push_back({fresh, beside, before, now_});
    for (std::uint32_t i = 0; i < piece_[id].leads.size(); ++i) {
      a_.leads.push_back({{fresh, i}, {id, i}});
    }
    return fresh;
  }

  // Ids of the piece mean nothing in the edition; look_up_destinations finds those that do.
  [[nodiscard]] static Lead unresolved(Lead lead) {
    lead.destination = Unresolved{lead.destination_printed};
    return lead;
  }

  void mark_places(Couplet& couplet, Couplet const& from) const {
    couplet.place = marked(from.place, a_.number);
    if (from.back_references.empty()) return;
    for (auto& reference : couplet.back_references) {
      reference.place = marked(reference.place, a_.number);
    }
  }

  void remove(CoupletId id) {
    dealt_with_.emplace(id.index, now_);
    auto& open = a_.record(AmendmentAct::removed, id, *now_);
    open.deed.before = draft_.as_printed(id);
    draft_.remove(id);
  }

  void remove_lead(LeadId lead) {
    auto& open = a_.record(AmendmentAct::removed, lead.couplet, *now_);
    open.deed.before = {draft_.as_printed(lead)};
    open.deed.detail = "the other leads stay";
    auto& leads = draft_.edition[lead.couplet].leads;
    leads.erase(leads.begin() + lead.ordinal);
    for (auto const& one : leads)
      open.leads.push_back(static_cast<std::uint32_t>(&one - &leads[0]));
    std::erase_if(a_.leads, [&](auto const& one) { return one.first == lead; });
    // Leads of the piece behind it have moved up.
    for (auto& [where, from] : a_.leads) {
      if (where.couplet == lead.couplet && where.ordinal > lead.ordinal) --where.ordinal;
    }
  }

  void refuse_bare_lead(CoupletId old, CoupletId id) {
    std::vector<std::string> names;
    for (auto const& lead : draft_.as_printed(old)) names.push_back(lead.name);
    a_.refuse(
        "couplet-without-number", piece_[id].place, piece_[id].leads.front().text,
        "this does not say which lead of couplet " + draft_.edition[old].label + " it replaces",
        "name the lead: " + in_prose(names));
  }

  void refuse_label(std::string const& label, Place const& place, std::string const& printed) {
    if (draft_.all(label).size() > 1) {
      a_.refuse("ambiguous-couplet", place, printed,
                "several keys of the edition have a couplet " + label,
                "amend a file that holds the one key only");
      return;
    }
    // What would have had to be there: 17 for 17a.
    auto const number = label_number(label);
    auto const base = number ? std::to_string(number->number) : label;
    if (auto const couplet = draft_.find(base); couplet && base != label) {
      std::vector<std::string> names;
      for (auto const& lead : draft_.as_printed(*couplet)) names.push_back(lead.name);
      a_.refuse("no-such-couplet", place, printed,
                "this could not be placed: the edition has no couplet or lead " + label,
                "couplet " + base + " has the leads " + in_prose(names));
      return;
    }
    a_.refuse("no-such-couplet", place, printed,
              "this could not be placed: the edition has no couplet " + base,
              draft_.nearest(label));
  }

  Application& a_;
  Draft& draft_;
  Edition const& piece_;
  AmendmentInstruction const* now_{};
  std::map<std::uint32_t, AmendmentInstruction const*> dealt_with_;  // by row of the draft
};

}  // namespace

void place_couplets(Application& application) { Placer{application}.run(); }

}  // namespace keydrift::amending
