// One specimen through one edition, for a terminal.
#include <fmt/format.h>

#include <algorithm>

#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/terminal.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift {

using namespace reports;
namespace {

constexpr std::size_t kTruthLabel = 9;

// With little recorded, nearly every character is open on every way; the whole list stands once,
// at the end.
std::string some_of(std::vector<std::string> const& characters, CharacterLabels const& label) {
  constexpr std::size_t kShown = 6;
  auto const count = characters.size() <= kShown + 1 ? characters.size() : kShown;
  std::vector<std::string> shown;
  for (std::size_t i = 0; i < count; ++i) shown.push_back(label(characters[i]));
  if (count < characters.size()) shown.push_back(fmt::format("{} more", characters.size() - count));
  return enumerated(shown);
}

void set_record(Page& page, Specimen const& specimen) {
  std::string name = specimen.scientific_name;
  if (!specimen.qualifier.empty()) name += fmt::format(" ({})", specimen.qualifier);
  if (!name.empty()) page.item("Recorded as", name, 2, 14);
  if (auto const type = type_or_voucher(specimen); !type.empty()) page.item("Marked", type, 2, 14);
  auto const fact = [&page](std::string_view label, std::string const& value) {
    if (!value.empty()) page.item(label, value, 2, 14);
  };
  fact("Sex", specimen.sex);
  fact("Life stage", specimen.life_stage);
  fact("Place", fmt::format("{}", fmt::join(specimen.places, ", ")));
  if (specimen.observations.empty()) {
    page.item("Characters", "none recorded", 2, 14);
    return;
  }
  bool first = true;
  for (auto const& observation : specimen.observations) {
    page.item(first ? "Characters" : "",
              fmt::format("{}: {}{}{}", observation.character, observation.value,
                          observation.unit.empty() ? "" : " ", observation.unit),
              2, 14);
    first = false;
  }
}

void set_lead_with_truths(Page& page, Edition const& edition, LeadAssessment const& assessment) {
  auto const width = label_width(edition, assessment.lead.couplet);
  // The mark in the margin: the way goes on here.
  page.lead(assessment.followed ? "»" : "", lead_setting(edition, assessment.lead, width));
  auto const indent = Page::kMargin + width;
  page.paragraph(Words{{to_word(assessment.fit), Face::bold},
                       {assessment.followed ? "; followed" : "; not followed", Face::plain}},
                 indent, 2);
  auto const& statements = edition[assessment.lead].statements;
  for (auto const& fit : assessment.statements) {
    if (fit.statement >= statements.size()) continue;
    auto const& statement = statements[fit.statement];
    std::string text = in_curly_quotes(statement.text);
    if (statement.strength != Strength::firm) {
      text += fmt::format(" ({})", to_word(statement.strength));
    }
    text += fmt::format(": {}", fit.known.empty() ? "not recorded" : fit.known);
    page.item(truth_word(fit.truth), text, indent, kTruthLabel);
  }
}

}  // namespace

std::string keyout_text(Edition const& edition, Specimen const& specimen, KeyOut const& keyout,
                        Lexicon const& lexicon, TerminalStyle style) {
  CharacterLabels const label{lexicon};
  Page page{style};
  page.title(fmt::format("{} through {}", specimen_name(specimen), short_label(edition)));
  page.item("Key",
            edition.front.title.empty() ? edition.name
                                        : fmt::format("{} ({})", edition.front.title, edition.name),
            2, 14);
  set_record(page, specimen);
  page.heading("The way through the key");
  for (std::size_t i = 0; i < keyout.visits.size(); ++i) {
    if (i > 0) page.blank();
    for (auto const& lead : keyout.visits[i].leads) set_lead_with_truths(page, edition, lead);
    auto const stranded = std::find(keyout.strands_at.begin(), keyout.strands_at.end(),
                                    keyout.visits[i].couplet) != keyout.strands_at.end();
    if (stranded) {
      page.paragraph(Words{{"No lead of this couplet need fit: the specimen may be stranded here.",
                            Face::bold}},
                     Page::kMargin, 2);
    }
  }
  page.heading("Where it ends");
  if (keyout.terminals.empty()) {
    page.paragraph("Nowhere: no way through the key is left.", 2);
  }
  for (auto const& terminal : keyout.terminals) {
    std::string right{to_word(terminal.arrival)};
    page.leader(edition[terminal.taxon].name, right, 2);
    if (!terminal.rests_on.empty()) {
      page.paragraph(fmt::format("rests on {}", some_of(terminal.rests_on, label)), 6, 2);
    }
  }
  for (auto const couplet : keyout.strands_at) {
    page.leader("No taxon", fmt::format("stranded at couplet {}", edition[couplet].label), 2);
  }
  if (!keyout.open_characters.empty()) {
    page.blank();
    std::vector<std::string> open;
    for (auto const& character : keyout.open_characters) open.push_back(label(character));
    page.paragraph(fmt::format("To narrow it, look at {}.", enumerated(open, "or")), 2);
  }
  page.blank();
  page.paragraph(sentence(capitalised("of the key: " + coverage_in_words(coverage(edition)))), 2);
  if (!keyout.complete) {
    page.blank();
    page.paragraph("Not all ways were followed: the limit on routes is met.", 2);
  }
  page.heading("Caution");
  page.paragraph(caution(), 2);
  return page.take();
}

}  // namespace keydrift
