// The words for what becomes of a specimen.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "keydrift/reports/wording.hpp"

namespace keydrift::reports {
namespace {

constexpr std::size_t kDecidingShown = 4;

std::string known_in_words(DecidingStatement const& deciding) {
  if (deciding.known.empty()) return "not recorded";
  return fmt::format("{}: {}", deciding.recorded ? "recorded" : "implied by the old route",
                     deciding.known);
}

std::string deciding_clause(Parting const& parting, Edition const& old_edition,
                            Edition const& new_edition) {
  std::vector<std::string> parts;
  for (auto const& deciding : parting.deciding) {
    if (parts.size() == kDecidingShown) break;
    auto const& edition = deciding.in_new ? new_edition : old_edition;
    auto const words = statement_words(edition, StatementId{deciding.lead, deciding.statement});
    parts.push_back(fmt::format(
        "{} ({}{}; {})", in_curly_quotes(words), lead_name(edition, deciding.lead),
        deciding.in_new ? "" : " of " + edition_names(old_edition, new_edition).old_name,
        known_in_words(deciding)));
  }
  if (parts.empty()) return {};
  auto const more = parting.deciding.size() - parts.size();
  if (more > 0) parts.push_back(fmt::format("{} more", more));
  return "what decides is " + enumerated(parts);
}

std::string place_clause(Parting const& parting, Edition const& old_edition,
                         Edition const& new_edition) {
  auto const called = edition_names(old_edition, new_edition);
  auto const old_lead = name_of(old_edition, parting.old_lead);
  auto const new_lead = name_of(new_edition, parting.new_lead);
  auto const new_couplet = name_of(new_edition, parting.new_couplet);
  if (!old_lead.empty() && !new_lead.empty()) {
    return fmt::format("{} takes lead {}, {} takes lead {}", called.old_name, old_lead,
                       called.new_name, new_lead);
  }
  if (!old_lead.empty() && !new_couplet.empty()) {
    return fmt::format("the ways part at couplet {} of {}, lead {} of {}", new_couplet,
                       called.new_name, old_lead, called.old_name);
  }
  if (!new_couplet.empty()) {
    return fmt::format("the ways part at couplet {} of {}{}", new_couplet, called.new_name,
                       new_lead.empty() ? "" : fmt::format(" (lead {})", new_lead));
  }
  if (!new_lead.empty()) return fmt::format("{} takes lead {}", called.new_name, new_lead);
  if (!old_lead.empty()) return fmt::format("{} takes lead {}", called.old_name, old_lead);
  return {};
}

void add_clause(std::string& text, std::string const& clause) {
  if (clause.empty()) return;
  if (!text.empty()) text += "; ";
  text += clause;
}

void add_parting(std::string& text, Verdict const& verdict, Edition const& old_edition,
                 Edition const& new_edition) {
  if (!verdict.parting) return;
  add_clause(text, place_clause(*verdict.parting, old_edition, new_edition));
  add_clause(text, deciding_clause(*verdict.parting, old_edition, new_edition));
}

std::vector<TaxonId> terminal_ids(Verdict const& verdict) {
  std::vector<TaxonId> ids;
  for (auto const& terminal : verdict.terminals) ids.push_back(terminal.taxon);
  return ids;
}

std::string names_in_words(Edition const& edition, std::span<TaxonId const> taxa,
                           std::string_view last) {
  std::vector<std::string> out;
  for (auto const taxon : taxa) out.push_back(edition[taxon].name);
  return enumerated(out, last);
}

}  // namespace

std::string_view meaning_of(Outcome outcome) {
  switch (outcome) {
    case Outcome::stands:
      return "same taxon, same name";
    case Outcome::renamed:
      return "same taxon, new name: relabel without looking";
    case Outcome::changes:
      return "another taxon, on every possible way";
    case Outcome::narrowed:
      return "taxon divided, part not told by the record";
    case Outcome::open:
      return "hangs on something that must be looked at";
    case Outcome::stranded:
      return "no lead of the new edition fits";
    case Outcome::leaves_scope:
      return "the new edition no longer covers it";
    case Outcome::enters_scope:
      return "only the new edition covers it";
    case Outcome::doubtful:
      return "the record never fitted the recorded name";
    case Outcome::not_keyed:
      return "the name or the record cannot be used";
  }
  return "";
}

std::string_view meaning_of(Footing footing) {
  switch (footing) {
    case Footing::understood:
      return "Outcomes that rest on understood statements only";
    case Footing::partly:
      return "Outcomes that rest in part on statements known by their words only";
    case Footing::words_only:
      return "Outcomes that rest on statements known by their words only";
    case Footing::nothing:
      return "Outcomes for which no lead was followed (scope, name)";
  }
  return "";
}

std::vector<ColumnTies> ties_in_words(Redetermination const& result) {
  std::vector<ColumnTies> rows;
  for (auto const confidence :
       {TieConfidence::same_words, TieConfidence::like_words, TieConfidence::kind_of}) {
    std::map<std::pair<std::string, std::string>, std::uint64_t> columns;
    for (auto const& tie : result.ties) {
      if (tie.character.empty() || tie.confidence != confidence) continue;
      columns[{tie.column, tie.label}] += tie.records;
    }
    for (auto const& [column, records] : columns) {
      rows.push_back({fmt::format("{}: taken for {} (confidence {})", in_curly_quotes(column.first),
                                  in_curly_quotes(column.second), to_word(confidence)),
                      records});
    }
  }
  std::map<std::string, std::uint64_t> untied;
  for (auto const& tie : result.ties) {
    if (tie.character.empty()) untied[tie.column] += tie.records;
  }
  for (auto const& [column, records] : untied) {
    rows.push_back(
        {fmt::format("{}: not tied; these specimens are left open", in_curly_quotes(column)),
         records});
  }
  return rows;
}

std::string old_couplet_of(Verdict const& verdict, Edition const& old_edition) {
  if (!verdict.parting || !verdict.parting->old_lead) return {};
  return old_edition[verdict.parting->old_lead->couplet].label;
}

std::string new_couplet_of(Verdict const& verdict, Edition const& new_edition) {
  if (verdict.outcome == Outcome::stranded && verdict.strands_at) {
    return new_edition[*verdict.strands_at].label;
  }
  if (!verdict.parting) return {};
  if (verdict.parting->new_couplet) return new_edition[*verdict.parting->new_couplet].label;
  if (verdict.parting->new_lead) return new_edition[verdict.parting->new_lead->couplet].label;
  return {};
}

std::string reason(Verdict const& verdict, Edition const& old_edition, Edition const& new_edition) {
  auto const called = edition_names(old_edition, new_edition);
  auto const ids = terminal_ids(verdict);
  auto const before = names_in_words(old_edition, verdict.old_taxa, "or");
  auto const after_or = names_in_words(new_edition, ids, "or");
  auto const after_and = names_in_words(new_edition, ids, "and");
  std::string text;
  switch (verdict.outcome) {
    case Outcome::stands:
      text = fmt::format("every way that the evidence leaves ends in {}",
                         after_or.empty() ? before : after_or);
      break;
    case Outcome::renamed:
      text =
          fmt::format("{} of {} is {} in {}", before, called.old_name, after_or, called.new_name);
      break;
    case Outcome::changes:
      text = fmt::format("keys to {} in {}", after_or, called.new_name);
      add_parting(text, verdict, old_edition, new_edition);
      break;
    case Outcome::narrowed:
      text = fmt::format("{} of {} is divided in {}: {}", before, called.old_name, called.new_name,
                         after_or);
      add_parting(text, verdict, old_edition, new_edition);
      break;
    case Outcome::open:
      text = fmt::format("may key to {} in {}", after_or.empty() ? "nothing" : after_or,
                         called.new_name);
      add_clause(text, verdict.why);
      add_parting(text, verdict, old_edition, new_edition);
      break;
    case Outcome::stranded:
      text = verdict.strands_at
                 ? fmt::format("no lead of couplet {} of {} fits",
                               new_edition[*verdict.strands_at].label, called.new_name)
                 : fmt::format("no lead of {} fits", called.new_name);
      if (verdict.parting) {
        add_clause(text, deciding_clause(*verdict.parting, old_edition, new_edition));
      }
      break;
    case Outcome::leaves_scope:
    case Outcome::enters_scope:
    case Outcome::doubtful:
    case Outcome::not_keyed:
      text = verdict.why;
      break;
  }
  if (text.empty()) text = meaning_of(verdict.outcome);
  if (verdict.outcome == Outcome::stands || verdict.outcome == Outcome::renamed ||
      verdict.outcome == Outcome::changes) {
    bool const by_exception = !verdict.terminals.empty() &&
                              std::all_of(verdict.terminals.begin(), verdict.terminals.end(),
                                          [](PossibleTerminal const& terminal) {
                                            return terminal.arrival == Arrival::through_exception;
                                          });
    if (by_exception) text += ", only through an exception";
    add_clause(text, verdict.why);
  }
  for (auto const& fit : verdict.partly) {
    add_clause(text, "partly fits " + partial_fit_in_words(fit, old_edition, new_edition));
  }
  if (!verdict.complete) add_clause(text, "not all ways were followed: the limit on routes is met");
  return text;
}

std::string follows(Verdict const& verdict, Answer const& answer, Edition const& new_edition) {
  if (answer.next && *answer.next < verdict.questions.size()) {
    return "then " + verdict.questions[*answer.next].label;
  }
  auto const names = taxon_names(new_edition, answer.new_taxa);
  switch (answer.outcome) {
    case Outcome::renamed:
    case Outcome::changes:
      if (!names.empty()) return names;
      break;
    case Outcome::narrowed:
    case Outcome::open:
      if (!names.empty()) return fmt::format("{}: {}", to_word(answer.outcome), names);
      break;
    case Outcome::stands:
    case Outcome::stranded:
    case Outcome::leaves_scope:
    case Outcome::enters_scope:
    case Outcome::doubtful:
    case Outcome::not_keyed:
      break;
  }
  return to_word(answer.outcome);
}

namespace {

// "bifid → stands; entire → Aus bus"
std::string answers_in_words(Verdict const& verdict, Question const& question,
                             Edition const& new_edition) {
  std::string text;
  for (auto const& answer : question.answers) {
    if (!text.empty()) text += "; ";
    text += fmt::format("{} → {}", answer.words, follows(verdict, answer, new_edition));
  }
  return text;
}

}  // namespace

std::string question_in_words(Verdict const& verdict, Edition const& new_edition) {
  if (!verdict.questions.empty()) {
    auto const& question = verdict.questions.front();
    return fmt::format("{}: {}", question.label, answers_in_words(verdict, question, new_edition));
  }
  if (verdict.outcome == Outcome::doubtful) {
    return fmt::format("check the name{}{}", verdict.why.empty() ? "" : ": ", verdict.why);
  }
  if (verdict.outcome == Outcome::open && !verdict.why.empty()) {
    return fmt::format("look at what is recorded: {}", verdict.why);
  }
  if (verdict.outcome == Outcome::stranded && verdict.strands_at) {
    return fmt::format("no lead of couplet {} fits: check the specimen against it",
                       new_edition[*verdict.strands_at].label);
  }
  return "no single character decides: look at the whole specimen";
}

std::string look_at(Verdict const& verdict, Edition const& new_edition) {
  std::string text;
  for (std::size_t i = 0; i < verdict.questions.size(); ++i) {
    auto const& question = verdict.questions[i];
    text += i == 0 ? "look at " : ". Then ";
    text += fmt::format("{} ({}): {}", question.label, to_word(question.difficulty),
                        answers_in_words(verdict, question, new_edition));
  }
  return text;
}

std::string possible_outcomes(Verdict const& verdict) {
  std::array<bool, kOutcomes> possible{};
  bool asked = false;
  for (auto const& question : verdict.questions) {
    for (auto const& answer : question.answers) {
      if (answer.next) continue;
      possible[static_cast<std::size_t>(answer.outcome)] = true;
      asked = true;
    }
  }
  if (!asked) return to_word(verdict.outcome);
  std::string text;
  for (std::size_t i = 0; i < kOutcomes; ++i) {
    if (!possible[i]) continue;
    if (!text.empty()) text += " | ";
    text += to_word(static_cast<Outcome>(i));
  }
  return text;
}

std::string few_names(std::string_view joined) {
  constexpr std::string_view kBetween = " | ";
  constexpr std::size_t kShown = 3;
  std::size_t names = joined.empty() ? 0 : 1;
  std::size_t cut = joined.size();
  for (auto at = joined.find(kBetween); at != std::string_view::npos;
       at = joined.find(kBetween, at + kBetween.size())) {
    if (names++ == kShown) cut = at;
  }
  if (names <= kShown + 1) return std::string{joined};
  return fmt::format("{} and {} more", joined.substr(0, cut), names - kShown);
}

std::string specimen_name(Specimen const& specimen) {
  if (!specimen.catalog_number.empty()) return specimen.catalog_number;
  if (!specimen.occurrence_id.empty()) return specimen.occurrence_id;
  return fmt::format("line {}", specimen.line);
}

std::string type_or_voucher(Specimen const& specimen) {
  std::string text = specimen.type_status;
  if (specimen.voucher) text += text.empty() ? "voucher" : ", voucher";
  return text;
}

std::string partial_fit_in_words(PartialFit const& fit, Edition const& old_edition,
                                 Edition const& new_edition) {
  auto const& edition = fit.in_new ? new_edition : old_edition;
  auto const called = edition_names(old_edition, new_edition);
  auto const list = [&](std::vector<std::uint32_t> const& ordinals) {
    std::vector<std::string> words;
    for (auto const ordinal : ordinals) {
      words.push_back(in_curly_quotes(statement_words(edition, StatementId{fit.lead, ordinal})));
    }
    return enumerated(words);
  };
  return fmt::format("lead {} of {} ({} {}, {} {} not)", lead_name(edition, fit.lead),
                     fit.in_new ? called.new_name : called.old_name, list(fit.holds),
                     fit.holds.size() == 1 ? "holds" : "hold", list(fit.fails),
                     fit.fails.size() == 1 ? "does" : "do");
}

std::string_view caution() {
  return "A re-keyed name is a hypothesis, not a determination: only somebody who looks at the "
         "specimen determines it, with name and date. Where something hangs on the name, as with "
         "poisonous, venomous, regulated or medically important organisms, ask the competent "
         "authority or a licensed specialist before acting on it.";
}

std::string_view not_examined() {
  return "No specimen was examined in this run. A name updated after a revision and a specimen "
         "examined are different statements; what is told here is only ever the first.";
}

}  // namespace keydrift::reports
