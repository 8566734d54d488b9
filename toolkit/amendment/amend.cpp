#include "keydrift/amendment/amend.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>

#include "keydrift/amendment/application.hpp"
#include "keydrift/amendment/completion.hpp"
#include "keydrift/amendment/draft.hpp"
#include "keydrift/key/graph.hpp"
#include "keydrift/key/labels.hpp"
#include "keydrift/key/proof.hpp"
#include "keydrift/key/prose.hpp"

namespace keydrift {
namespace {

using namespace amending;

std::vector<Finding> proof_of_structure(Edition const& edition) {
  return proof_structure(edition, KeyGraph{edition});
}

// Adds those of `fresh` that `known` lacks, and says which in `told`.
void add_names(std::vector<std::string>& known, std::vector<std::string> const& fresh,
               std::string const& what, std::vector<std::string>& told) {
  std::vector<std::string> added;
  for (auto const& name : fresh) {
    if (std::find(known.begin(), known.end(), name) != known.end()) continue;
    known.push_back(name);
    added.push_back(name);
  }
  if (!added.empty()) told.push_back(what + in_prose(added));
}

// Label and year come from the piece; what it lists is added to what the edition lists.
void take_front(Application& application, std::vector<std::string>& told) {
  auto& front = application.draft.edition.front;
  auto const& fresh = application.piece.piece.front;
  if (!fresh.edition.empty() || fresh.year) {
    front.edition = fresh.edition;
    front.year = fresh.year;
  }
  auto& scope = front.scope;
  add_names(scope.listed_taxa, fresh.scope.listed_taxa, "the list of taxa now has ", told);
  add_names(scope.places, fresh.scope.places, "the places covered now include ", told);
  add_names(scope.excluded_taxa, fresh.scope.excluded_taxa, "now left out: ", told);
  for (auto const& synonymy : fresh.synonyms) {
    bool const known =
        std::any_of(front.synonyms.begin(), front.synonyms.end(), [&](Synonymy const& one) {
          return one.accepted == synonymy.accepted && one.synonym == synonymy.synonym;
        });
    if (known) continue;
    front.synonyms.push_back(
        {synonymy.accepted, synonymy.synonym, marked(synonymy.place, application.number)});
    told.push_back("a synonym was added: " + synonymy.synonym + ", now " + synonymy.accepted);
  }
  bool const more = !fresh.scope.taxa.empty() || !fresh.scope.region.empty() ||
                    !fresh.scope.life_stage.empty() || !fresh.scope.sex.empty() ||
                    !fresh.scope.material.empty();
  if (more) {
    application.remark("front-matter-not-applied", Severity::warning, {}, "",
                       "the piece says in words what it covers; the edition's own words were kept",
                       "change them in the amended edition where the piece widens them");
  }
}

// "Amends: 1998" in the piece's front matter.
void check_what_is_amended(Application& application, Edition const& edition) {
  for (auto const& [name, value] : application.piece.piece.front.other) {
    if (name != "Amends" && name != "amends") continue;
    auto const label = short_label(edition);
    bool const same = value == label || value == edition.front.edition ||
                      value == edition.front.title ||
                      (edition.front.year && value == std::to_string(*edition.front.year));
    if (same) continue;
    application.remark("amends-another-edition", Severity::warning, {}, value,
                       "the piece says that it amends " + in_quotes(value) +
                           ", and the edition given is " + in_quotes(label),
                       "give the edition that the piece was written for");
  }
}

constexpr std::size_t kShortestWord = 4;  // bytes; shorter ones are shared by chance

// Words of the leads and names of the taxa, in small letters.
std::set<std::string> words_and_names(Edition const& edition) {
  std::set<std::string> words;
  auto const add = [&words](std::string_view text) {
    std::string word;
    for (std::size_t i = 0; i <= text.size(); ++i) {
      auto const c = i < text.size() ? static_cast<unsigned char>(text[i]) : ' ';
      bool const letter = c >= 0x80 || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
      if (letter) {
        word += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
        continue;
      }
      if (word.size() >= kShortestWord) words.insert(word);
      word.clear();
    }
  };
  for (auto const& couplet : edition.couplets) {
    for (auto const& lead : couplet.leads) add(lead.text);
  }
  for (auto const& taxon : edition.taxa) {
    add(taxon.name);
    words.insert(taxon.name);
  }
  return words;
}

// A piece of several couplets that has not one word and not one name of the edition was hardly
// written for it.
void check_that_words_are_shared(Application& application, Edition const& edition) {
  auto const& piece = application.piece.piece;
  if (piece.couplets.size() < 2) return;
  auto const known = words_and_names(edition);
  auto const fresh = words_and_names(piece);
  bool const shared = std::any_of(fresh.begin(), fresh.end(),
                                  [&](std::string const& word) { return known.count(word) != 0; });
  if (known.empty() || fresh.empty() || shared) return;
  auto const& first = piece.couplets.front();
  application.remark("shares-nothing", Severity::warning, first.place, "",
                     "no word and no name of these couplets stands in the edition",
                     "see whether the piece was written for this edition");
}

// Where neither label nor year tell the result from the edition amended, a note does.
void say_amended(Edition& edition, std::vector<AmendmentDeed> const& deeds) {
  std::vector<std::string> labels;
  for (auto const& deed : deeds) {
    bool const follows =
        deed.act == AmendmentAct::back_references || deed.act == AmendmentAct::renumbered;
    if (follows || std::find(labels.begin(), labels.end(), deed.couplet) != labels.end()) continue;
    labels.push_back(deed.couplet);
  }
  if (labels.empty()) return;
  auto text =
      std::string{kAmendedNote} + (labels.size() == 1 ? " " : "s ") + in_prose(labels, 40) + ".";
  bool const said = std::any_of(edition.notes.begin(), edition.notes.end(),
                                [&](Note const& note) { return note.text == text; });
  if (said) return;
  // Behind everything: notes are printed where their places are, and a couplet that a piece brought
  // begins where the one before it ends.
  Place end;
  auto const pass = [&end](Place const& place) {
    if (std::max(place.begin, place.end) < end.begin) return;
    end = place;
    end.begin = end.end = std::max(place.begin, place.end) + 1;
  };
  for (auto const& couplet : edition.couplets) pass(couplet.place);
  for (auto const& note : edition.notes) pass(note.place);
  edition.notes.push_back({std::move(text), end});
}

// Findings on words of a piece get its name and place; so do the further places that they speak of.
void name_files(std::vector<Finding>& findings, std::span<Amendment const> pieces) {
  auto const file_of = [&](Place const& place, std::string const& otherwise) {
    auto const piece = piece_of(place);
    return piece && *piece < pieces.size() ? pieces[*piece].name : otherwise;
  };
  for (auto& finding : findings) {
    auto const edition = finding.file;
    finding.file = file_of(finding.place, edition);
    for (auto& related : finding.related) {
      auto const file = file_of(related.place, edition);
      related.place = unmarked(related.place);
      if (file == finding.file) continue;
      // Further places are shown as those of the finding's own file.
      finding.message += "; see " + file + ":" + std::to_string(related.place.line) + ":" +
                         std::to_string(related.place.column) + ": " + related.message;
      related.message.clear();
    }
    std::erase_if(finding.related, [](RelatedPlace const& one) { return one.message.empty(); });
    finding.place = unmarked(finding.place);
  }
  sort_findings(findings);
}

// What makes two findings the same one: what they say; failing that, a finding of that kind on the
// same line of the edition, whose words have changed.
void compare_findings(std::vector<Finding> before, std::vector<Finding> after, Amended& amended) {
  using Key = std::pair<std::string, std::string>;
  std::vector<char> lasting(before.size(), 0);
  std::vector<char> known(after.size(), 0);
  for (bool const by_words : {true, false}) {
    auto const key = [&](Finding const& finding) -> Key {
      if (by_words) return {finding.code, finding.message};
      return {finding.code, std::to_string(finding.place.line)};
    };
    std::map<Key, std::vector<std::size_t>> waiting;
    for (std::size_t i = before.size(); i-- > 0;) {
      if (lasting[i] == 0) waiting[key(before[i])].push_back(i);
    }
    for (std::size_t j = 0; j < after.size(); ++j) {
      if (known[j] != 0 || (!by_words && piece_of(after[j].place))) continue;
      auto const found = waiting.find(key(after[j]));
      if (found == waiting.end() || found->second.empty()) continue;
      lasting[found->second.back()] = 1;
      found->second.pop_back();
      known[j] = 1;
    }
  }
  for (std::size_t j = 0; j < after.size(); ++j) {
    (known[j] != 0 ? amended.faults_lasting : amended.faults_made).push_back(std::move(after[j]));
  }
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (lasting[i] == 0) amended.faults_mended.push_back(std::move(before[i]));
  }
}

// Tells the leads as they are now, and puts the deeds in the order of the key.
std::vector<AmendmentDeed> close_deeds(std::vector<OpenDeed> open,
                                       std::vector<std::size_t> const& position,
                                       Completed const& completed) {
  std::stable_sort(open.begin(), open.end(), [&](OpenDeed const& a, OpenDeed const& b) {
    return position[a.couplet.index] < position[b.couplet.index];
  });
  std::vector<AmendmentDeed> deeds;
  for (auto& [deed, couplet, leads] : open) {
    auto const now = completed.rows[couplet.index];
    bool const there = now.index < completed.edition.couplets.size();
    if (there) {
      deed.couplet = completed.edition[now].label;
      bool const told = deed.act != AmendmentAct::removed && deed.act != AmendmentAct::noted &&
                        deed.act != AmendmentAct::renumbered &&
                        deed.act != AmendmentAct::back_references;
      auto const count = static_cast<std::uint32_t>(completed.edition[now].leads.size());
      if (leads.empty() && told) {
        for (std::uint32_t i = 0; i < count; ++i) leads.push_back(i);
      }
      for (auto const ordinal : leads) {
        if (!told || ordinal >= count) continue;
        LeadId const lead{now, ordinal};
        auto const& words = completed.edition[lead];
        deed.after.push_back({lead_name(completed.edition, lead), words.text,
                              destination_words(completed.edition, words)});
      }
    }
    deeds.push_back(std::move(deed));
  }
  return deeds;
}

}  // namespace

Amended amend(Edition const& edition, std::span<Amendment const> pieces, Proof const& given) {
  auto const proof = given ? given : Proof{proof_of_structure};
  Amended amended;
  Draft draft{edition};
  std::vector<OpenDeed> deeds;
  for (std::size_t number = 0; number < pieces.size(); ++number) {
    Application application{draft, pieces[number],   number,
                            deeds, amended.unplaced, amended.remarks};
    auto const& refused = pieces[number].not_understood;
    amended.unplaced.insert(amended.unplaced.end(), refused.begin(), refused.end());
    check_what_is_amended(application, edition);
    check_that_words_are_shared(application, edition);
    number_anew(application);
    place_couplets(application);
    look_up_destinations(application);
    change_words(application);
    link_inserted(application);
    take_front(application, amended.front);
  }
  tell_back_references(draft, edition, pieces.empty() ? 0 : pieces.size() - 1, deeds);

  std::vector<std::size_t> position(draft.order.size());
  for (std::size_t at = 0; at < draft.order.size(); ++at) position[draft.order[at]] = at;
  auto completed = complete(std::move(draft));
  amended.deeds = close_deeds(std::move(deeds), position, completed);
  amended.edition = std::move(completed.edition);
  bool const told = std::any_of(pieces.begin(), pieces.end(), [](Amendment const& one) {
    return !one.piece.front.edition.empty() || one.piece.front.year;
  });

  compare_findings(proof(edition), proof(amended.edition), amended);
  for (auto* findings : {&amended.faults_made, &amended.faults_mended, &amended.faults_lasting}) {
    name_files(*findings, pieces);
  }
  sort_findings(amended.unplaced);
  sort_findings(amended.remarks);
  settle_places(amended.edition);
  if (!told) say_amended(amended.edition, amended.deeds);
  for (auto& synonymy : amended.edition.front.synonyms) synonymy.place = unmarked(synonymy.place);
  return amended;
}

}  // namespace keydrift
