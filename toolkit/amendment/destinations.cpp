// Where the leads of a piece lead: to its own couplets, else to those of the edition.
#include <algorithm>

#include "keydrift/amendment/application.hpp"
#include "keydrift/key/labels.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::amending {
namespace {

class DestinationFinder {
 public:
  explicit DestinationFinder(Application& application)
      : a_{application}, draft_{application.draft}, piece_{application.piece.piece} {}

  void run() {
    leave_removed();
    for (auto const& [where, from] : a_.leads) {
      auto& lead = draft_.edition[where];
      mark_places(lead);
      resolve(where, from, lead);
    }
    lead_to_new_numbers();
  }

 private:
  void mark_places(Lead& lead) const {
    lead.place = marked(lead.place, a_.number);
    lead.destination_place = marked(lead.destination_place, a_.number);
    for (auto& run : lead.runs) run.place = marked(run.place, a_.number);
    for (auto& statement : lead.statements) statement.place = marked(statement.place, a_.number);
  }

  void resolve(LeadId where, LeadId from, Lead& lead) {
    auto const& printed = piece_[from].destination;
    lead.destination = printed;
    if (auto const* to = std::get_if<ToCouplet>(&printed)) {
      if (auto const placed = a_.placed[to->couplet.index]) {
        lead.destination = ToCouplet{*placed};
        leave_removed(lead.destination);  // by a later instruction of the piece
      } else {
        lead.destination = Unresolved{piece_[to->couplet].label};
      }
    } else if (auto const* taxa = std::get_if<ToTaxa>(&printed)) {
      lead.destination = ToTaxa{taxa_of(*taxa, piece_[from])};
    } else if (auto const* unknown = std::get_if<Unresolved>(&printed)) {
      if (unknown->printed.empty()) {
        look_up(where, lead);
      } else if (auto const couplet = couplet_called(unknown->printed, where)) {
        lead.destination = ToCouplet{*couplet};
      }
    }
  }

  // "8", or "7b" where that is a lead of couplet 7.
  [[nodiscard]] std::optional<CoupletId> couplet_called(std::string const& label,
                                                        LeadId where) const {
    if (auto const found = draft_.find(label, draft_.part[where.couplet.index])) return found;
    auto const lead = draft_.find_lead(label);
    return lead ? std::optional{lead->couplet} : std::nullopt;
  }

  // Where the piece prints "T. alba", its own words may have told a genus that is none of the
  // edition ("Tegula alba"): the edition's comes first.
  [[nodiscard]] std::string name_as_printed(std::string const& name, Lead const& lead) {
    auto const blank = name.find(' ');
    if (blank == std::string::npos) return name;
    for (std::size_t length = 1; length < blank; ++length) {
      auto const letter = static_cast<unsigned char>(name[length]);
      if ((letter & 0xC0U) == 0x80U) continue;  // within a letter
      auto const printed = name.substr(0, length) + "." + name.substr(blank);
      if (lead.destination_printed.find(printed) == std::string::npos) continue;
      bool completed = true;
      auto full = draft_.full_name(printed, completed);
      if (completed) return full;
      a_.remark("expanded-name", Severity::information, unmarked(lead.destination_place), printed,
                in_quotes(printed) + " was read as " + in_quotes(name) +
                    " by the piece's own words; the edition has no such genus, or several",
                "print the genus in full where this is wrong");
      return name;
    }
    return name;
  }

  [[nodiscard]] std::vector<TaxonId> taxa_of(ToTaxa const& printed, Lead const& lead) {
    std::vector<TaxonId> taxa;
    for (auto const id : printed.taxa) {
      auto const& taxon = piece_[id];
      bool completed = true;
      auto const place = marked(lead.destination_place, a_.number);
      taxa.push_back(
          draft_.taxon(name_as_printed(taxon.name, lead), taxon.authorship, place, completed));
      if (!completed) {
        a_.remark("abbreviation-not-resolved", Severity::warning, lead.destination_place,
                  lead.destination_printed,
                  "no single genus of the edition is known for " + in_quotes(taxon.name),
                  "print the name in full");
      }
    }
    return taxa;
  }

  // The piece prints no destination: the lead leads where the one leads that it replaces.
  void look_up(LeadId where, Lead& lead) {
    auto const before = std::find_if(a_.led_before.begin(), a_.led_before.end(),
                                     [&](auto const& one) { return one.first == where; });
    if (before == a_.led_before.end()) return;
    lead.destination = before->second;
    auto const words = destination_words(draft_.edition, lead);
    if (words.empty()) return;
    auto place = unmarked(lead.place);
    a_.remark("destination-looked-up", Severity::information, place, lead.text,
              "the piece prints no destination for lead " + lead_name(draft_.edition, where) +
                  "; it leads to " + words + " as before",
              "");
  }

  void leave_removed() {
    for (auto const row : draft_.order) {
      if (draft_.gone[row] != 0) continue;
      for (auto& lead : draft_.edition.couplets[row].leads) leave_removed(lead.destination);
    }
    for (auto& [lead, destination] : a_.led_before) leave_removed(destination);
    for (auto& part : draft_.edition.parts) {
      if (draft_.alive(part.start)) continue;
      for (auto const& [from, to] : a_.moved) {
        if (part.start == from) part.start = to;
      }
    }
  }

  void leave_removed(Destination& destination) {
    auto const* to = std::get_if<ToCouplet>(&destination);
    // Leads of the piece speak of its own couplets until they are resolved.
    if (to == nullptr || to->couplet.index >= draft_.gone.size() || draft_.alive(to->couplet)) {
      return;
    }
    auto const printed = draft_.edition[to->couplet].label;
    // What replaced it may have been replaced in its turn, or taken away.
    auto at = to->couplet;
    for (std::size_t steps = 0; steps <= a_.moved.size(); ++steps) {
      auto const moved = std::find_if(a_.moved.begin(), a_.moved.end(),
                                      [&](auto const& one) { return one.first == at; });
      if (moved == a_.moved.end()) break;
      at = moved->second;
      if (!draft_.alive(at)) continue;
      destination = ToCouplet{at};
      return;
    }
    destination = Unresolved{printed};
  }

  // Numbers of the edition that led nowhere may lead to a couplet that was inserted.
  void lead_to_new_numbers() {
    if (a_.inserted.empty()) return;
    for (auto const row : draft_.order) {
      if (draft_.gone[row] != 0) continue;
      for (auto& lead : draft_.edition.couplets[row].leads) {
        auto const* nowhere = std::get_if<Unresolved>(&lead.destination);
        if (nowhere == nullptr || nowhere->printed.empty()) continue;
        for (auto const& one : a_.inserted) {
          auto const& label = draft_.edition[one.couplet].label;
          if (draft_.alive(one.couplet) && draft_.part[row] == draft_.part[one.couplet.index] &&
              label_key(label) == label_key(nowhere->printed)) {
            lead.destination = ToCouplet{one.couplet};
            break;
          }
        }
      }
    }
  }

  Application& a_;
  Draft& draft_;
  Edition const& piece_;
};

}  // namespace

void look_up_destinations(Application& application) { DestinationFinder{application}.run(); }

}  // namespace keydrift::amending
