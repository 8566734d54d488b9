#include "keydrift/formats/sdd_write.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <pugixml.hpp>
#include <sstream>
#include <utility>

#include "keydrift/formats/sdd_characters.hpp"
#include "keydrift/formats/sdd_plan.hpp"
#include "keydrift/formats/sdd_text.hpp"
#include "keydrift/key/front_lines.hpp"

namespace keydrift {
namespace {

using namespace sdd;

// What is written in attributes and elements of our own, as messages call it.
enum class Own { labels, back_references, notes, figures, remarks, front, elsewhere, statements };
constexpr std::pair<Own, char const*> kOwnWords[]{
    {Own::labels, "the printed labels"},
    {Own::back_references, "back-references"},
    {Own::notes, "notes"},
    {Own::figures, "figure references"},
    {Own::remarks, "remarks on taxa"},
    {Own::front, "front matter"},
    {Own::elsewhere, "leads to other keys and to nowhere"},
    {Own::statements, "what statements say of characters"}};

class Writer {
 public:
  Writer(Edition const& edition, SddOptions const& options)
      : edition_{edition}, options_{options}, plan_{plan_keys(edition)} {}

  SddWriting run() && {
    auto root = document_.append_child("Datasets");
    root.append_attribute("xmlns") = kNamespace;
    root.append_attribute("xmlns:kd") = kSddOwn;
    auto technical = root.append_child("TechnicalMetadata");
    technical.append_attribute("created") = options_.created.c_str();
    auto generator = technical.append_child("Generator");
    generator.append_attribute("name") = kGenerator;
    generator.append_attribute("version") = "1";
    write_dataset(root.append_child("Dataset"));
    std::ostringstream out;
    document_.save(out, "  ", pugi::format_indent, pugi::encoding_utf8);
    report();
    return {std::move(out).str(), std::move(findings_)};
  }

 private:
  void write_dataset(pugi::xml_node dataset) {
    auto const& front = edition_.front;
    dataset.append_attribute("id") = "d1";
    dataset.append_attribute("xml:lang") =
        is_language(front.language) ? front.language.c_str() : "und";
    add_representation(dataset, front.title.empty() ? edition_.name : front.title, "Key");
    for (auto const& line : front_lines(front)) {
      auto own = add_own(dataset, "front", line.value);
      own.append_attribute("name") = clean(line.name).c_str();
      if (line.name != "Title" && line.name != "Authors" && line.name != "Language" &&
          line.name != "Region" && line.name != "Sex") {
        use(Own::front);
      }
    }
    for (auto const& note : edition_.notes) {
      add_own(dataset, "note", note.text);
      use(Own::notes);
    }
    if (!front.authors.empty()) {
      auto creators = dataset.append_child("RevisionData").append_child("Creators");
      for (std::size_t a = 0; a < front.authors.size(); ++a) {
        auto agent = creators.append_child("Agent");
        agent.append_attribute("ref") = ("a" + std::to_string(a + 1)).c_str();
        agent.append_attribute("role") = "aut";
      }
    }
    write_scope(dataset);
    write_taxa(dataset);
    characters_ = write_characters(dataset, edition_);
    write_keys(dataset);
    write_objects(dataset);
  }

  void write_scope(pugi::xml_node dataset) {
    if (edition_.front.scope.region.empty()) return;
    auto area = dataset.append_child("Scope").append_child("GeographicArea");
    area.append_attribute("ref") = "g1";
  }

  void write_objects(pugi::xml_node dataset) {
    auto const& front = edition_.front;
    if (!front.authors.empty()) {
      auto agents = dataset.append_child("Agents");
      for (std::size_t a = 0; a < front.authors.size(); ++a) {
        auto agent = agents.append_child("Agent");
        agent.append_attribute("id") = ("a" + std::to_string(a + 1)).c_str();
        add_representation(agent, front.authors[a], "Author");
      }
    }
    if (!front.scope.region.empty()) {
      auto area = dataset.append_child("GeographicAreas").append_child("GeographicArea");
      area.append_attribute("id") = "g1";
      add_representation(area, front.scope.region, "Region");
    }
  }

  // --- taxa ------------------------------------------------------------------------------------

  void write_taxa(pugi::xml_node dataset) {
    collect_groups();
    if (edition_.taxa.empty() && groups_.empty()) return;
    auto names = dataset.append_child("TaxonNames");
    for (std::size_t t = 0; t < edition_.taxa.size(); ++t) {
      auto const& taxon = edition_.taxa[t];
      auto name = names.append_child("TaxonName");
      name.append_attribute("id") = taxon_id(static_cast<std::uint32_t>(t)).c_str();
      add_representation(
          name, taxon.authorship.empty() ? taxon.name : taxon.name + " " + taxon.authorship,
          "Taxon");
      add_simple(name, "CanonicalName", taxon.name);
      add_simple(name, "CanonicalAuthorship", taxon.authorship);
    }
    for (auto const& [members, number] : groups_) {
      auto name = names.append_child("TaxonName");
      name.append_attribute("id") = ("m" + std::to_string(number)).c_str();
      std::string label;
      std::string ids;
      for (auto const taxon : members) {
        label += (label.empty() ? "" : " / ") + edition_[taxon].name;
        ids += (ids.empty() ? "" : " ") + taxon_id(taxon.index);
      }
      add_representation(name, label, "Taxa");
      add_own(name, "members", ids);
    }
  }

  // Leads to several taxa, or to the same taxa in another order, lead to one name each.
  void collect_groups() {
    for (auto const& couplet : edition_.couplets) {
      for (auto const& lead : couplet.leads) {
        auto const* to = std::get_if<ToTaxa>(&lead.destination);
        if (to != nullptr && to->taxa.size() != 1) groups_.emplace(to->taxa, groups_.size() + 1);
      }
    }
  }

  static std::string taxon_id(std::uint32_t taxon) { return "t" + std::to_string(taxon + 1); }

  static void add_simple(pugi::xml_node name, char const* element, std::string const& text) {
    auto const simple = short_text(text);
    if (!simple.empty()) {
      name.append_child(element).append_child("Simple").text().set(simple.c_str());
    }
  }

  // --- keys ------------------------------------------------------------------------------------

  void write_keys(pugi::xml_node dataset) {
    if (plan_.keys.empty()) return;
    auto keys = dataset.append_child("IdentificationKeys");
    for (std::size_t k = 0; k < plan_.keys.size(); ++k) write_key(keys, k);
  }

  void write_key(pugi::xml_node keys, std::size_t k) {
    auto const& planned = plan_.keys[k];
    auto key = keys.append_child("IdentificationKey");
    key.append_attribute("id") = key_id(k).c_str();
    if (planned.part) {
      auto const& title = edition_.parts[*planned.part].title;
      add_representation(key, title, edition_.front.title.empty() ? "Key" : edition_.front.title);
      if (title.empty()) key.append_child("kd:untitled");
    } else {
      add_representation(key, "Couplet " + edition_.couplets[planned.root].label + ", not reached",
                         "Couplet not reached");
      key.append_child("kd:unreached");
      ++unreached_;
    }
    auto const& sex = edition_.front.scope.sex;
    if (sex == "male" || sex == "female") {
      key.append_child("Scope").append_child("Sex").text().set(sex == "male" ? "Male" : "Female");
    }
    write_question(key, CoupletId{planned.root});
    auto leads = key.append_child("Leads");
    for (auto const couplet : planned.couplets) {
      for (std::uint32_t l = 0; l < edition_.couplets[couplet].leads.size(); ++l) {
        write_lead(leads, LeadId{CoupletId{couplet}, l});
      }
    }
  }

  static std::string key_id(std::size_t key) { return "k" + std::to_string(key + 1); }
  static std::string lead_id(LeadId id) {
    return "c" + std::to_string(id.couplet.index + 1) + "l" + std::to_string(id.ordinal + 1);
  }

  void write_lead(pugi::xml_node leads, LeadId id) {
    auto const& couplet = edition_[id.couplet];
    auto const& lead = edition_[id];
    auto element = leads.append_child("Lead");
    element.append_attribute("id") = lead_id(id).c_str();
    add_attribute(element, "kd:couplet", couplet.label);
    add_attribute(element, "kd:label", lead.label);
    if (!couplet.label.empty() || !lead.label.empty()) use(Own::labels);
    if (id.ordinal == 0 && !plan_.in_order) {
      element.append_attribute("kd:order") = std::to_string(id.couplet.index + 1).c_str();
    }
    if (auto const parent = plan_.parent[id.couplet.index]) {
      element.append_child("Parent").append_attribute("ref") = lead_id(*parent).c_str();
    }
    write_statement(element, lead);
    write_result(element, id);
    write_own(element, id);
  }

  // The last note of a couplet, if it is a question: what read_sdd makes of SDD's.  Leads that
  // answer with yes or no would be read with it as their words.
  [[nodiscard]] std::string question_of(CoupletId id) const {
    auto const& couplet = edition_[id];
    if (couplet.notes.empty() || couplet.leads.empty()) return {};
    auto const& note = couplet.notes.back();
    // Signs of markup would be taken out of it.
    bool const kept = note.ends_with('?') && clean(note) == note &&
                      note.find('<') == std::string::npos && code_points(note) <= kLongText;
    bool const answers = std::all_of(couplet.leads.begin(), couplet.leads.end(),
                                     [](Lead const& lead) { return answers_yes_or_no(lead.text); });
    return kept && !answers ? note : std::string{};
  }

  // At the lead that leads to the couplet, or at the key that begins with it.
  void write_question(pugi::xml_node owner, CoupletId couplet) const {
    auto const question = question_of(couplet);
    if (question.empty()) return;
    owner.append_child("Question").append_child("Text").text().set(question.c_str());
  }

  void write_statement(pugi::xml_node element, Lead const& lead) {
    auto text = clean(lead.text);
    if (text.empty()) {
      element.append_attribute("kd:wordless") = "true";
      text = "–";
    } else if (code_points(text) > kLongText) {
      text = start_of_text(text, kLongText);
      ++cut_;
    }
    element.append_child("Statement").text().set(text.c_str());
  }

  void write_result(pugi::xml_node element, LeadId id) {
    auto const& lead = edition_[id];
    if (auto const* couplet = std::get_if<ToCouplet>(&lead.destination)) {
      auto const to = couplet->couplet;
      if (edition_[to].leads.empty()) {
        add_attribute(element, "kd:unresolved", edition_[to].label);
        use(Own::elsewhere);
      } else if (plan_.parent[to.index] != id) {
        element.append_child("Reticulation").append_attribute("ref") = lead_id({to, 0}).c_str();
      } else {
        write_question(element, to);
      }
    } else if (auto const* taxa = std::get_if<ToTaxa>(&lead.destination)) {
      auto const single = taxa->taxa.size() == 1;
      auto const ref = single ? taxon_id(taxa->taxa.front().index)
                              : "m" + std::to_string(groups_.at(taxa->taxa));
      element.append_child("TaxonName").append_attribute("ref") = ref.c_str();
    } else if (auto const* key = std::get_if<ToKey>(&lead.destination)) {
      if (auto const part = part_titled(key->key)) {
        element.append_child("Subkey").append_attribute("ref") = key_id(*part).c_str();
      } else {
        add_attribute(element, "kd:key", key->key);
        use(Own::elsewhere);
      }
    } else if (auto const& printed = std::get<Unresolved>(lead.destination).printed;
               !printed.empty()) {
      add_attribute(element, "kd:unresolved", printed);
      use(Own::elsewhere);
    }
  }

  // The planned key that alone bears the title.
  [[nodiscard]] std::optional<std::size_t> part_titled(std::string const& title) const {
    std::optional<std::size_t> found;
    for (std::size_t k = 0; k < plan_.keys.size(); ++k) {
      auto const& part = plan_.keys[k].part;
      if (!part || edition_.parts[*part].title != title || title.empty()) continue;
      if (found) return std::nullopt;
      found = k;
    }
    return found;
  }

  void write_own(pugi::xml_node element, LeadId id) {
    auto const& couplet = edition_[id.couplet];
    auto const& lead = edition_[id];
    if (id.ordinal == 0) {
      for (auto const& back : couplet.back_references) {
        add_own(element, "back", back.label);
        use(Own::back_references);
      }
      auto const notes = couplet.notes.size() - (question_of(id.couplet).empty() ? 0 : 1);
      for (std::size_t n = 0; n < notes; ++n) {
        add_own(element, "couplet-note", couplet.notes[n]);
        use(Own::notes);
      }
    }
    if (!lead.destination_printed.empty()) add_own(element, "printed", lead.destination_printed);
    if (!lead.taxon_remark.empty()) {
      add_own(element, "remark", lead.taxon_remark);
      use(Own::remarks);
    }
    for (auto const& note : lead.notes) {
      add_own(element, "note", note);
      use(Own::notes);
    }
    for (auto const& figure : lead.figures) {
      add_own(element, "figure", figure);
      use(Own::figures);
    }
    for (auto const& statement : lead.statements) {
      if (add_condition(element, statement, characters_)) use(Own::statements);
    }
  }

  // --- findings --------------------------------------------------------------------------------

  void use(Own what) { own_ |= 1U << static_cast<unsigned>(what); }

  void report() {
    std::string words;
    for (auto const& [what, word] : kOwnWords) {
      if ((own_ & (1U << static_cast<unsigned>(what))) == 0) continue;
      words += (words.empty() ? "" : ", ") + std::string{word};
    }
    if (!words.empty()) {
      add("sdd-own-words", Severity::information,
          "SDD has no place for these; they were written in a namespace of their own, which other "
          "programs pass over: " +
              words);
    }
    if (!groups_.empty()) {
      add("sdd-own-words", Severity::information,
          "SDD lets a lead end in one taxon; where several are printed it ends in a name that "
          "stands for them");
    }
    if (unreached_ > 0) {
      add("sdd-own-words", Severity::information,
          "SDD has no couplet without a way to it; " + std::to_string(unreached_) +
              (unreached_ == 1 ? " couplet begins a key of its own"
                               : " couplets begin keys of their own"));
    }
    if (cut_ > 0) {
      add("sdd-loss", Severity::warning,
          "a lead may have " + std::to_string(kLongText) + " characters in SDD; " +
              std::to_string(cut_) + " longer were cut");
    }
    for (auto const& couplet : edition_.couplets) {
      if (!couplet.leads.empty()) continue;
      add("sdd-loss", Severity::warning,
          "couplet \"" + couplet.label + "\" has no leads and was left out");
      findings_.back().place = couplet.place;
    }
  }

  void add(std::string code, Severity severity, std::string message) {
    Finding finding;
    finding.code = std::move(code);
    finding.severity = severity;
    finding.file = edition_.name;
    finding.message = std::move(message);
    findings_.push_back(std::move(finding));
  }

  Edition const& edition_;
  SddOptions const& options_;
  Plan plan_;
  pugi::xml_document document_;
  std::map<std::vector<TaxonId>, std::size_t> groups_;  // several taxa at one end
  CharacterIds characters_;
  unsigned own_{};
  std::size_t unreached_{};
  std::size_t cut_{};
  std::vector<Finding> findings_;
};

}  // namespace

SddWriting write_sdd(Edition const& edition, SddOptions const& options) {
  return Writer{edition, options}.run();
}

}  // namespace keydrift
