// Errata: "for … read …", redirected leads, words added.
#include <algorithm>
#include <set>

#include "keydrift/amendment/application.hpp"
#include "keydrift/amendment/find_words.hpp"
#include "keydrift/key/labels.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift::amending {
namespace {

// Where an erratum acts.
struct Scope {
  std::vector<LeadId> leads;
  std::optional<CoupletId> couplet;  // when it names one
  bool whole_key{false};
};

// "Aus bus Smith" is the name "Aus bus" and the author "Smith".
std::pair<std::string, std::string> name_and_author(std::string const& text) {
  auto at = text.find(' ');
  while (at != std::string::npos && at + 1 < text.size() && text[at + 1] >= 'a' &&
         text[at + 1] <= 'z') {
    at = text.find(' ', at + 1);
  }
  if (at == std::string::npos) return {text, {}};
  return {text.substr(0, at), text.substr(at + 1)};
}

bool begins_exception(std::string_view words) {
  for (auto const word :
       {"except", "excepto", "exceto", "sauf", "salvo", "nisi", "außer", "ausser"}) {
    if (words.starts_with(word)) return true;
  }
  return !words.empty() && (words[0] == '(' || words[0] == ',' || words[0] == ';');
}

class WordChanger {
 public:
  explicit WordChanger(Application& application) : a_{application}, draft_{application.draft} {}

  void run() {
    for (auto const& instruction : a_.piece.instructions) {
      now_ = &instruction;
      if (a_.set_aside.count(&instruction) != 0) continue;
      if (auto const* change = std::get_if<ChangeWords>(&instruction.step)) take(*change);
      if (auto const* redirection = std::get_if<RedirectLead>(&instruction.step)) {
        take(*redirection);
      }
      if (auto const* addition = std::get_if<AddToCouplet>(&instruction.step)) take(*addition);
    }
  }

 private:
  enum class Part { text, couplet, taxon, nowhere, remark, note, couplet_note, back_reference };
  // One place where the words stand.
  struct Occurrence {
    LeadId lead;
    Part part{};
    std::size_t row{};  // of a note, of a taxon of the destination
    WordsAt at{};
  };

  // --- where -----------------------------------------------------------------------------------

  std::optional<Scope> scope_of(AmendmentTarget const& target) {
    Scope scope;
    if (target.label.empty()) {
      scope.whole_key = true;
      for (auto const row : draft_.order) {
        if (draft_.gone[row] == 0) add_leads({row}, scope);
      }
      return scope;
    }
    auto const numbered = draft_.find_serial_lead(target.label);
    if (numbered && !target.lead) {
      scope.leads = {*numbered};
      return scope;
    }
    if (auto const couplet = draft_.find(target.label)) {
      scope.couplet = couplet;
      if (!target.lead) {
        add_leads(*couplet, scope);
        return scope;
      }
      if (*target.lead < draft_.edition[*couplet].leads.size()) {
        scope.leads = {{*couplet, *target.lead}};
        return scope;
      }
    } else if (auto const lead = draft_.find_lead(target.label)) {
      scope.leads = {*lead};
      return scope;
    }
    if (draft_.all(target.label).size() > 1) {
      a_.refuse("ambiguous-couplet", now_->place, now_->printed,
                "several keys of the edition have a couplet " + target.label,
                "amend a file that holds the one key only");
    } else {
      a_.refuse("no-such-couplet", now_->place, now_->printed,
                "this could not be placed: the edition has no couplet or lead " + target.label,
                draft_.nearest(target.label));
    }
    return std::nullopt;
  }

  void add_leads(CoupletId couplet, Scope& scope) const {
    for (std::uint32_t i = 0; i < draft_.edition[couplet].leads.size(); ++i) {
      scope.leads.push_back({couplet, i});
    }
  }

  // --- redirected leads, words added -----------------------------------------------------------

  void take(RedirectLead const& step) {
    auto const scope = scope_of(step.target);
    if (!scope) return;
    if (scope->leads.size() != 1) {
      a_.refuse("words-found-several-times", now_->place, now_->printed,
                "this does not say which lead of couplet " + step.target.label + " leads elsewhere",
                "name the lead: " + names_of(scope->leads));
      return;
    }
    lead_elsewhere(scope->leads.front(), step.to);
  }

  void lead_elsewhere(LeadId lead, std::string const& to) {
    auto const in_part = draft_.part[lead.couplet.index];
    if (auto const couplet = draft_.find(to, in_part)) {
      change_destination(lead, ToCouplet{*couplet}, draft_.edition[*couplet].label);
    } else if (label_number(to)) {
      a_.refuse("no-such-couplet", now_->place, now_->printed,
                "this could not be placed: the edition has no couplet " + to + " to lead to",
                draft_.nearest(to));
    } else {
      auto const [name, author] = name_and_author(to);
      if (!may_be_name(name)) {
        a_.refuse("unread-instruction", now_->place, now_->printed,
                  in_quotes(to) + " is neither the number of a couplet nor a name",
                  "say it as in \"Lead 7b leads to 9\" or \"Lead 7b leads to Aus bus\"");
        return;
      }
      bool completed = true;
      auto const place = marked(now_->place, a_.number);
      auto const taxon = draft_.taxon(name, author, place, completed);
      change_destination(lead, ToTaxa{{taxon}}, to);
      if (!completed) {
        a_.remark("abbreviation-not-resolved", Severity::warning, now_->place, now_->printed,
                  "no single genus of the edition is known for " + in_quotes(name),
                  "print the name in full");
      }
    }
  }

  // Some keys end in epithets; elsewhere what begins small is no name.
  [[nodiscard]] bool may_be_name(std::string const& name) const {
    if (!name.empty() && name[0] >= '0' && name[0] <= '9') return false;
    auto const small = [](std::string const& word) {
      return !word.empty() && word[0] >= 'a' && word[0] <= 'z';
    };
    return !small(name) || std::any_of(draft_.edition.taxa.begin(), draft_.edition.taxa.end(),
                                       [&](Taxon const& one) { return small(one.name); });
  }

  void change_destination(LeadId lead, Destination destination, std::string printed) {
    auto& open = a_.record(AmendmentAct::redirected, lead.couplet, *now_);
    open.deed.before = {draft_.as_printed(lead)};
    open.leads = {lead.ordinal};
    auto& now = draft_.edition[lead];
    bool const to_couplet = std::holds_alternative<ToCouplet>(destination);
    now.destination = std::move(destination);
    now.destination_printed = std::move(printed);
    if (to_couplet) now.taxon_remark.clear();
  }

  void take(AddToCouplet const& step) {
    if (!step.couplets.empty() || step.words.empty()) return;
    auto const scope = scope_of(step.target);
    if (!scope) return;
    if (scope->leads.size() == 1) {
      auto const lead = scope->leads.front();
      auto& open = a_.record(AmendmentAct::reworded, lead.couplet, *now_);
      open.deed.before = {draft_.as_printed(lead)};
      open.leads = {lead.ordinal};
      auto& now = draft_.edition[lead];
      bool const tight = step.words[0] == ',' || step.words[0] == ';';
      auto const joint = tight ? "" : begins_exception(step.words) ? " " : "; ";
      now.text += joint + step.words;
      now.statements.clear();
      return;
    }
    if (!scope->couplet) return;
    auto& open = a_.record(AmendmentAct::noted, *scope->couplet, *now_);
    open.deed.detail = "a note was added: " + in_quotes(step.words);
    draft_.edition[*scope->couplet].notes.push_back(step.words);
  }

  // --- words changed ---------------------------------------------------------------------------

  void take(ChangeWords const& step) {
    auto const scope = scope_of(step.target);
    if (!scope) return;
    if (step.throughout) {
      change_throughout(step, *scope);
      return;
    }
    if (step.from.empty()) {
      reword_whole(step, *scope);
      return;
    }
    auto found = occurrences(step, *scope);
    keep_line(step, found);
    keep_destinations(step, found);
    if (found.empty()) {
      refuse_not_found(step);
    } else if (found.size() > 1) {
      std::vector<LeadId> leads;
      for (auto const& one : found) leads.push_back(one.lead);
      a_.refuse("words-found-several-times", now_->place, now_->printed,
                in_quotes(step.from) + " stands " + std::to_string(found.size()) +
                    " times where this may mean it: " + names_of(leads),
                "name the lead, quote more of its words, or say \"throughout\"");
    } else {
      change(found.front(), step);
    }
  }

  void reword_whole(ChangeWords const& step, Scope const& scope) {
    if (scope.leads.size() != 1) {
      a_.refuse("words-found-several-times", now_->place, now_->printed,
                "this does not say which lead is to read so",
                "name the lead: " + names_of(scope.leads));
      return;
    }
    auto const lead = scope.leads.front();
    record_reworded(lead);
    auto& now = draft_.edition[lead];
    now.text = step.to;
    forget_source_of_words(now);
  }

  [[nodiscard]] std::vector<Occurrence> occurrences(ChangeWords const& step,
                                                    Scope const& scope) const {
    std::vector<Occurrence> found;
    for (auto const lead : scope.leads) occurrences_in(lead, step, found);
    std::set<std::uint32_t> couplets;
    for (auto const lead : scope.leads) couplets.insert(lead.couplet.index);
    for (auto const row : couplets) {
      if (!scope.whole_key && !scope.couplet) continue;  // one lead only
      auto const& references = draft_.edition.couplets[row].back_references;
      for (std::size_t r = 0; r < references.size() && scope.couplet; ++r) {
        if (label_key(references[r].label) == label_key(step.from)) {
          found.push_back({{CoupletId{row}, 0}, Part::back_reference, r, {}});
        }
      }
      auto const& notes = draft_.edition.couplets[row].notes;
      for (std::size_t n = 0; n < notes.size(); ++n) {
        for (auto const& at : find_words(notes[n], step.from)) {
          found.push_back({{CoupletId{row}, 0}, Part::couplet_note, n, at});
        }
      }
    }
    return found;
  }

  void occurrences_in(LeadId id, ChangeWords const& step, std::vector<Occurrence>& found) const {
    auto const& lead = draft_.edition[id];
    for (auto const& at : find_words(lead.text, step.from)) {
      found.push_back({id, Part::text, 0, at});
    }
    if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) {
      if (label_key(draft_.edition[to->couplet].label) == label_key(step.from)) {
        found.push_back({id, Part::couplet, 0, {}});
      }
    } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
      for (std::size_t t = 0; t < taxa->taxa.size(); ++t) {
        if (is_called(draft_.edition[taxa->taxa[t]].name, step.from)) {
          found.push_back({id, Part::taxon, t, {}});
        }
      }
    } else if (auto const* nowhere = std::get_if<Unresolved>(&lead.destination)) {
      if (!nowhere->printed.empty() && label_key(nowhere->printed) == label_key(step.from)) {
        found.push_back({id, Part::nowhere, 0, {}});
      }
    }
    for (auto const& at : find_words(lead.taxon_remark, step.from)) {
      found.push_back({id, Part::remark, 0, at});
    }
    for (std::size_t n = 0; n < lead.notes.size(); ++n) {
      for (auto const& at : find_words(lead.notes[n], step.from)) {
        found.push_back({id, Part::note, n, at});
      }
    }
  }

  // "Aus bus", "Aus bus Smith" or "A. bus" for the taxon Aus bus.
  [[nodiscard]] static bool is_called(std::string const& taxon, std::string const& words) {
    auto const name = name_and_author(words).first;
    if (name == taxon) return true;
    auto const stop = name.find(". ");
    auto const blank = taxon.find(' ');
    return stop != std::string::npos && blank != std::string::npos && stop <= blank &&
           taxon.starts_with(name.substr(0, stop)) && taxon.substr(blank) == name.substr(stop + 1);
  }

  // "line 2": the second printed line of the couplet, where the edition has lines.
  void keep_line(ChangeWords const& step, std::vector<Occurrence>& found) const {
    if (!step.target.line || found.size() < 2) return;
    std::vector<Occurrence> kept;
    for (auto const& one : found) {
      if (one.part != Part::text) continue;
      auto const& couplet = draft_.edition[one.lead.couplet];
      auto const place = place_in_text(draft_.edition[one.lead], one.at.begin, 1);
      if (place.line + 1 == couplet.place.line + *step.target.line) kept.push_back(one);
    }
    if (!kept.empty()) found = std::move(kept);
  }

  // A number that is both a destination and a word ("9 setae ..... 9") is the destination.
  void keep_destinations(ChangeWords const& step, std::vector<Occurrence>& found) {
    if (found.size() < 2 || !label_number(step.from)) return;
    auto const is_destination = [](Occurrence const& one) {
      return one.part == Part::couplet || one.part == Part::nowhere;
    };
    auto const first = std::find_if(found.begin(), found.end(), is_destination);
    if (first == found.end() || std::count_if(found.begin(), found.end(), is_destination) > 1) {
      return;
    }
    auto const kept = *first;
    found = {kept};
    a_.remark("words-taken-for-destination", Severity::warning, now_->place, now_->printed,
              step.from + " stands among the words as well; the destination of lead " +
                  lead_name(draft_.edition, kept.lead) + " was changed",
              "quote more of the words if they are meant");
  }

  void refuse_not_found(ChangeWords const& step) {
    std::string remedy = "look at the words as the edition prints them";
    std::vector<LeadId> elsewhere;
    for (auto const row : draft_.order) {
      if (draft_.gone[row] != 0) continue;
      Scope couplet;
      couplet.couplet = CoupletId{row};
      add_leads(*couplet.couplet, couplet);
      for (auto const& one : occurrences(step, couplet)) elsewhere.push_back(one.lead);
    }
    if (!elsewhere.empty()) remedy = "they stand in " + names_of(elsewhere);
    auto const where = step.target.label.empty() ? std::string{"the key"} : step.target.label;
    auto const scope = scope_of(step.target);
    auto const authored = scope ? taxa_by_author(step, *scope) : std::set<std::uint32_t>{};
    if (!authored.empty() && elsewhere.empty()) {
      auto const& taxon = draft_.edition.taxa[*authored.begin()];
      a_.refuse("words-not-found", now_->place, now_->printed,
                in_quotes(step.from) + " stands in " + where +
                    " as the author of names only, as in " +
                    in_quotes(taxon.name + " " + taxon.authorship),
                "quote the name with its author, or say \"throughout\"");
      return;
    }
    a_.refuse("words-not-found", now_->place, now_->printed,
              in_quotes(step.from) + " does not stand in " + where, remedy);
  }

  void change(Occurrence const& one, ChangeWords const& step) {
    auto& lead = draft_.edition[one.lead];
    switch (one.part) {
      case Part::text:
        record_reworded(one.lead);
        reword(lead, one.at, step);
        break;
      case Part::couplet:
      case Part::nowhere:
        lead_elsewhere(one.lead, step.to);
        break;
      case Part::taxon:
        change_taxon(one, step);
        break;
      case Part::remark:
        record_reworded(one.lead);
        lead.taxon_remark = replaced(lead.taxon_remark, one.at, step);
        break;
      case Part::note:
        record_note(one.lead.couplet, step);
        lead.notes[one.row] = replaced(lead.notes[one.row], one.at, step);
        break;
      case Part::back_reference: {
        auto& open = a_.record(AmendmentAct::back_references, one.lead.couplet, *now_);
        auto& reference = draft_.edition[one.lead.couplet].back_references[one.row];
        open.deed.detail =
            "said to be reached from " + reference.label + ", now from " + label_key(step.to);
        reference = {label_key(step.to), marked(now_->place, a_.number)};
        break;
      }
      case Part::couplet_note: {
        record_note(one.lead.couplet, step);
        auto& note = draft_.edition[one.lead.couplet].notes[one.row];
        note = replaced(note, one.at, step);
        break;
      }
    }
  }

  void change_taxon(Occurrence const& one, ChangeWords const& step) {
    auto taxa = std::get<ToTaxa>(draft_.edition[one.lead].destination);
    if (label_number(step.to) && taxa.taxa.size() == 1) {
      lead_elsewhere(one.lead, step.to);
      return;
    }
    auto const [name, author] = name_and_author(step.to);
    bool completed = true;
    taxa.taxa[one.row] = draft_.taxon(name, author, marked(now_->place, a_.number), completed);
    change_destination(one.lead, std::move(taxa), step.to);
  }

  void record_reworded(LeadId lead) {
    auto& open = a_.record(AmendmentAct::reworded, lead.couplet, *now_);
    open.deed.before = {draft_.as_printed(lead)};
    open.leads = {lead.ordinal};
  }
  void record_note(CoupletId couplet, ChangeWords const& step) {
    auto& open = a_.record(AmendmentAct::noted, couplet, *now_);
    open.deed.detail = "in a note, " + in_quotes(step.from) + " became " + in_quotes(step.to);
  }

  [[nodiscard]] static std::string replaced(std::string const& text, WordsAt const& at,
                                            ChangeWords const& step) {
    auto const old = std::string_view{text}.substr(at.begin, at.end - at.begin);
    auto before = text.substr(0, at.begin);
    auto after = text.substr(at.end);
    auto const words = in_case_of(old, step.from, step.to);
    if (words.empty()) {
      // Words taken out leave one blank, and no comma that parted them.
      while (before.ends_with(' ')) before.pop_back();
      while (before.ends_with(',') || before.ends_with(';')) before.pop_back();
      if (before.empty()) {
        while (after.starts_with(' ') || after.starts_with(',') || after.starts_with(';')) {
          after.erase(0, 1);
        }
      }
    }
    return before + words + after;
  }

  void reword(Lead& lead, WordsAt const& at, ChangeWords const& step) {
    auto text = replaced(lead.text, at, step);
    // Runs before the change still say where their words stand; those behind it move along.
    auto const grown =
        static_cast<std::ptrdiff_t>(text.size()) - static_cast<std::ptrdiff_t>(lead.text.size());
    for (auto& run : lead.runs) {
      if (run.text_begin < at.end) continue;
      run.text_begin = static_cast<std::size_t>(
          std::max<std::ptrdiff_t>(0, static_cast<std::ptrdiff_t>(run.text_begin) + grown));
    }
    lead.text = std::move(text);
    lead.statements.clear();
  }

  void forget_source_of_words(Lead& lead) const {
    lead.runs.clear();
    lead.statements.clear();
  }

  // --- everywhere ------------------------------------------------------------------------------

  void change_throughout(ChangeWords const& step, Scope const& scope) {
    std::size_t changed = rename_taxa(step);
    // Where an author is meant, "brown" is not Brown.
    bool const author = !taxa_by_author(step, scope).empty();
    for (auto const id : scope.leads) {
      auto& lead = draft_.edition[id];
      auto const found =
          author ? find_words_as_cased(lead.text, step.from) : find_words(lead.text, step.from);
      if (found.empty()) continue;
      record_reworded(id);
      for (auto at = found.rbegin(); at != found.rend(); ++at) reword(lead, *at, step);
      changed += found.size();
    }
    changed += change_authors(step, scope);
    if (changed == 0) refuse_not_found(step);
  }

  // The taxa of these leads whose authors hold the words.
  [[nodiscard]] std::set<std::uint32_t> taxa_by_author(ChangeWords const& step,
                                                       Scope const& scope) const {
    std::set<std::uint32_t> taxa;
    for (auto const id : scope.leads) {
      auto const* to = std::get_if<ToTaxa>(&draft_.edition[id].destination);
      if (to == nullptr) continue;
      for (auto const taxon : to->taxa) {
        if (!find_words_as_cased(draft_.edition[taxon].authorship, step.from).empty()) {
          taxa.insert(taxon.index);
        }
      }
    }
    return taxa;
  }

  // "(Roe) Dorn" without Roe is "Dorn".
  static void take_out_empty_brackets(std::string& authors) {
    for (auto at = authors.find("()"); at != std::string::npos; at = authors.find("()")) {
      authors.erase(at, 2);
      if (at < authors.size() && authors[at] == ' ') authors.erase(at, 1);
    }
    while (authors.ends_with(' ')) authors.pop_back();
  }

  std::size_t change_authors(ChangeWords const& step, Scope const& scope) {
    auto const taxa = taxa_by_author(step, scope);
    for (auto const row : taxa) {
      auto& taxon = draft_.edition.taxa[row];
      auto authors = taxon.authorship;
      auto const found = find_words_as_cased(authors, step.from);
      for (auto at = found.rbegin(); at != found.rend(); ++at) {
        authors = replaced(authors, *at, step);
      }
      if (step.to.empty()) take_out_empty_brackets(authors);
      auto const before = taxon.name + " " + taxon.authorship;
      auto const after = authors.empty() ? taxon.name : taxon.name + " " + authors;
      record_renamed({row}, before, after);
      print_authors_anew({row}, authors);
      taxon.authorship = std::move(authors);
    }
    return taxa.size();
  }

  // Where leads print the authors, they print them as they are now.
  void print_authors_anew(TaxonId taxon, std::string const& authors) {
    auto const& old = draft_.edition[taxon].authorship;
    for (auto& couplet : draft_.edition.couplets) {
      for (auto& lead : couplet.leads) {
        auto const* to = std::get_if<ToTaxa>(&lead.destination);
        if (to == nullptr || std::find(to->taxa.begin(), to->taxa.end(), taxon) == to->taxa.end()) {
          continue;
        }
        // Of several taxa, each of which may have that author, nothing tells whose is meant.
        auto const at = lead.destination_printed.rfind(old);
        if (to->taxa.size() == 1 && at != std::string::npos && !authors.empty()) {
          lead.destination_printed.replace(at, old.size(), authors);
        } else {
          lead.destination_printed.clear();
        }
      }
    }
  }

  // Taxa of that name, and those of that genus.
  std::size_t rename_taxa(ChangeWords const& step) {
    // "T. communis" is the taxon of the edition that may be called so.
    bool completed = true;
    auto const from = draft_.full_name(name_and_author(step.from).first, completed);
    auto const [given, author] = name_and_author(step.to);
    auto const to = draft_.full_name(given, completed);
    std::size_t renamed = 0;
    for (std::uint32_t t = 0; t < draft_.edition.taxa.size(); ++t) {
      auto const old = draft_.edition.taxa[t].name;
      bool const below = old.starts_with(from + " ");
      if (old != from && !below) continue;
      auto const name = to + old.substr(from.size());
      record_renamed({t}, old, name);
      auto const known = std::find_if(draft_.edition.taxa.begin(), draft_.edition.taxa.end(),
                                      [&](Taxon const& one) { return one.name == name; });
      if (known == draft_.edition.taxa.end()) {
        draft_.edition.taxa[t].name = name;
        if (!author.empty()) draft_.edition.taxa[t].authorship = author;
      } else {
        lead_to_taxon({t}, draft_.taxon(name, author, {}, completed));
      }
      ++renamed;
    }
    return renamed;
  }

  void record_renamed(TaxonId taxon, std::string const& old, std::string const& name) {
    for (auto const row : draft_.order) {
      if (draft_.gone[row] != 0) continue;
      auto const& leads = draft_.edition.couplets[row].leads;
      for (std::uint32_t i = 0; i < leads.size(); ++i) {
        auto const* to = std::get_if<ToTaxa>(&leads[i].destination);
        if (to == nullptr || std::find(to->taxa.begin(), to->taxa.end(), taxon) == to->taxa.end()) {
          continue;
        }
        auto& open = a_.record(AmendmentAct::renamed, {row}, *now_);
        open.deed.before = {draft_.as_printed(LeadId{CoupletId{row}, i})};
        open.deed.detail = old + " is now " + name;
        open.leads = {i};
      }
    }
  }

  void lead_to_taxon(TaxonId from, TaxonId to) {
    for (auto& couplet : draft_.edition.couplets) {
      for (auto& lead : couplet.leads) {
        if (auto* taxa = std::get_if<ToTaxa>(&lead.destination)) {
          std::replace(taxa->taxa.begin(), taxa->taxa.end(), from, to);
        }
      }
    }
  }

  [[nodiscard]] std::string names_of(std::vector<LeadId> const& leads) const {
    std::vector<std::string> names;
    for (auto const lead : leads) {
      auto name = lead_name(draft_.edition, lead);
      if (names.empty() || names.back() != name) names.push_back(std::move(name));
    }
    return in_prose(names);
  }

  Application& a_;
  Draft& draft_;
  AmendmentInstruction const* now_{};
};

}  // namespace

void change_words(Application& application) { WordChanger{application}.run(); }

}  // namespace keydrift::amending
