#include "keydrift/formats/sdd_read.hpp"

#include <algorithm>
#include <charconv>
#include <optional>
#include <unordered_map>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/sdd_objects.hpp"
#include "keydrift/formats/sdd_text.hpp"

namespace keydrift {
namespace {

using namespace sdd;
using namespace std::string_view_literals;

class Reader {
 public:
  Reader(xml::Document const& document, pugi::xml_node data_set, std::vector<Finding>& findings)
      : document_{document}, findings_{findings}, objects_{document, data_set, findings} {}

  Edition read() && {
    edition_.name = document_.name();
    auto const keys =
        children(child(objects_.data_set(), "IdentificationKeys"), "IdentificationKey");
    edition_.front =
        read_front(objects_, keys.size() == 1 ? keys.front() : pugi::xml_node{}, findings_);
    for (auto& text : objects_.own_texts(objects_.data_set(), "note")) {
      edition_.notes.push_back({std::move(text), document_.place(objects_.data_set())});
    }
    if (objects_.is_own()) list_taxa();
    for (auto const& key : keys) read_key(key);
    resolve();
    restore_order();
    if (objects_.passed_over() > 0) say_languages();
    return std::move(edition_);
  }

 private:
  // A lead beside its element.
  struct LeadSource {
    pugi::xml_node node;
    LeadId id;
    std::string_view parent;  // "" for the root couplet
  };

  // --- keys ------------------------------------------------------------------------------------

  void read_key(pugi::xml_node key) {
    std::vector<LeadSource> sources;
    std::vector<std::string_view> groups;  // parents in order of first appearance
    std::unordered_map<std::string_view, std::uint32_t> group_of;
    for (auto const& node : child(key, "Leads").children()) {
      auto const name = xml::local_name(node);
      if (name != "Lead" && name != "Result") continue;
      LeadSource source;
      source.node = node;
      source.parent = child(node, "Parent").attribute("ref").value();
      if (!source.parent.empty() && !is_lead(source.parent)) {
        say_unknown(child(node, "Parent"), source.parent, "lead");
      }
      auto const [known, fresh] =
          group_of.emplace(source.parent, static_cast<std::uint32_t>(groups.size()));
      if (fresh) groups.push_back(source.parent);
      source.id.couplet.index = known->second;
      sources.push_back(source);
    }
    if (sources.empty()) return;
    auto const first = static_cast<std::uint32_t>(edition_.couplets.size());
    // Keying begins at the leads without parent, so they come first.
    auto const root = group_of.find(""sv);
    auto const root_group = root == group_of.end() ? 0 : root->second;
    auto const row = [&](std::uint32_t group) {
      if (objects_.is_own() || group > root_group) return first + group;
      return group == root_group ? first : first + group + 1;
    };
    edition_.couplets.resize(first + groups.size());
    for (auto& source : sources) {
      auto const couplet = row(source.id.couplet.index);
      source.id = {CoupletId{couplet},
                   static_cast<std::uint32_t>(edition_.couplets[couplet].leads.size())};
      read_lead(source);
      if (source.id.ordinal == 0) {
        first_leads_.resize(edition_.couplets.size());
        first_leads_[couplet] = source.node;
      }
      leads_.push_back(source);
      if (std::string_view const id = source.node.attribute("id").value(); !id.empty()) {
        lead_by_id_.emplace(id, leads_.size() - 1);
      }
    }
    for (std::uint32_t g = 0; g < groups.size(); ++g) {
      finish_couplet(row(g), first, question_of(key, groups[g]));
    }
    KeyPart part;
    part.start = CoupletId{row(root_group)};
    part.place = document_.place(key);
    if (objects_.own_children(key, "untitled").empty()) part.title = objects_.label(key);
    key_starts_.emplace(key.attribute("id").value(), std::pair{part.title, part.start});
    if (objects_.own_children(key, "unreached").empty()) edition_.parts.push_back(std::move(part));
  }

  [[nodiscard]] bool is_lead(std::string_view id) const {
    return static_cast<bool>(objects_.find(id, "Lead")) ||
           static_cast<bool>(objects_.find(id, "Result"));
  }

  // Asked before the couplet whose leads have this parent.
  [[nodiscard]] std::string question_of(pugi::xml_node key, std::string_view parent) const {
    auto owner = key;
    if (!parent.empty()) {
      owner = objects_.find(parent, "Lead");
      if (!owner) owner = objects_.find(parent, "Result");
    }
    auto const question = child(owner, "Question");
    auto texts = children(question, "Text");
    if (texts.empty() && question) texts = children(question, "Label");
    return objects_.pick(texts).text;
  }

  void read_lead(LeadSource const& source) {
    auto& lead = edition_.couplets[source.id.couplet.index].leads.emplace_back();
    lead.place = document_.place(source.node);
    auto const statement = objects_.pick(children(source.node, "Statement"));
    if (objects_.own(source.node, "wordless").empty()) {
      lead.text = statement.text;
      for (auto const& stretch : statement.stretches) {
        auto place = lead.place;
        place.line = stretch.number;
        place.column = stretch.column;
        lead.runs.push_back({stretch.text_begin, place});
      }
    }
    for (auto const& media : children(source.node, "MediaObject")) {
      auto title = objects_.label(objects_.find(media.attribute("ref").value(), "MediaObject"));
      if (!title.empty()) lead.figures.push_back(std::move(title));
    }
    for (auto& note : objects_.own_texts(source.node, "note"))
      lead.notes.push_back(std::move(note));
    for (auto& figure : objects_.own_texts(source.node, "figure")) {
      lead.figures.push_back(std::move(figure));
    }
    for (auto& remark : objects_.own_texts(source.node, "remark")) {
      lead.taxon_remark = std::move(remark);
    }
    for (auto& printed : objects_.own_texts(source.node, "printed")) {
      lead.destination_printed = std::move(printed);
    }
  }

  // Labels and the like, which stand on the leads.
  void finish_couplet(std::uint32_t row, std::uint32_t first_row, std::string const& question) {
    auto& couplet = edition_.couplets[row];
    auto const node = first_leads_[row];
    couplet.place = document_.place(node);
    couplet.label = attribute_of(node, "couplet");
    if (couplet.label.empty() && !objects_.is_own()) {
      couplet.label = std::to_string(row - first_row + 1);
    }
    for (auto& back : objects_.own_texts(node, "back")) {
      couplet.back_references.push_back({std::move(back), couplet.place});
    }
    couplet.notes = objects_.own_texts(node, "couplet-note");
    if (question.empty()) return;
    bool const answers = std::all_of(couplet.leads.begin(), couplet.leads.end(),
                                     [](Lead const& lead) { return answers_yes_or_no(lead.text); });
    if (!answers) {
      couplet.notes.push_back(question);
      return;
    }
    for (auto& lead : couplet.leads) {
      for (auto& run : lead.runs) run.text_begin += question.size() + 1;
      lead.text = question + " " + lead.text;
    }
  }

  // "ex:couplet": an attribute of whatever namespace but SDD's own.
  [[nodiscard]] static std::string attribute_of(pugi::xml_node node, std::string_view name) {
    for (auto const& attribute : node.attributes()) {
      std::string_view const full = attribute.name();
      auto const colon = full.find(':');
      if (colon != std::string_view::npos && full.substr(colon + 1) == name) {
        return attribute.value();
      }
    }
    return {};
  }

  // --- destinations ----------------------------------------------------------------------------

  void resolve() {
    // Where each lead's own couplet is: the one whose leads name it as parent.
    below_.assign(leads_.size(), kNowhere);
    for (auto const& source : leads_) {
      auto const parent = lead_by_id_.find(source.parent);
      if (!source.parent.empty() && parent != lead_by_id_.end()) {
        below_[parent->second] = source.id.couplet.index;
      }
    }
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      auto& lead = edition_[leads_[i].id];
      lead.destination = destination_of(i, lead);
      lead.destination_place = lead.place;
      label_lead(leads_[i], lead);
      if (lead.destination_printed.empty()) lead.destination_printed = words_of(lead.destination);
    }
  }

  [[nodiscard]] Destination destination_of(std::size_t i, Lead& lead) {
    auto const node = leads_[i].node;
    auto const taxon = child(node, "TaxonName");
    if (below_[i] != kNowhere) {
      if (taxon) {
        auto const names = taxa_of(taxon);
        if (lead.taxon_remark.empty()) lead.taxon_remark = names_of(names);
      }
      return ToCouplet{CoupletId{below_[i]}};
    }
    if (taxon) return named(taxon);
    if (auto const subkey = child(node, "Subkey")) return key_of(subkey);
    if (auto const reticulation = child(node, "Reticulation")) return reticulated(reticulation);
    if (auto key = objects_.own(node, "key"); !key.empty()) return ToKey{std::move(key)};
    return Unresolved{objects_.own(node, "unresolved")};
  }

  [[nodiscard]] Destination named(pugi::xml_node taxon) {
    auto taxa = taxa_of(taxon);
    if (taxa.empty()) return Unresolved{taxon.attribute("ref").value()};
    return ToTaxa{std::move(taxa)};
  }

  [[nodiscard]] Destination key_of(pugi::xml_node subkey) {
    std::string_view const ref = subkey.attribute("ref").value();
    auto const found = key_starts_.find(ref);
    if (found == key_starts_.end()) {
      say_unknown(subkey, ref, "key");
      return Unresolved{std::string{ref}};
    }
    auto const& [title, start] = found->second;
    auto const bearers =
        std::count_if(edition_.parts.begin(), edition_.parts.end(),
                      [&t = title](KeyPart const& part) { return part.title == t; });
    if (title.empty() || bearers != 1) return ToCouplet{start};
    return ToKey{title};
  }

  // The couplet of the lead that is named; with leadspecific, where that lead itself leads.
  [[nodiscard]] Destination reticulated(pugi::xml_node element) {
    auto const start = element;
    std::size_t steps = 0;
    for (;;) {
      std::string_view const ref = element.attribute("ref").value();
      auto const found = lead_by_id_.find(ref);
      if (found == lead_by_id_.end()) {
        say_unknown(element, ref, "lead");
        return Unresolved{std::string{ref}};
      }
      auto const& target = leads_[found->second];
      if (!element.attribute("leadspecific").as_bool()) return ToCouplet{target.id.couplet};
      if (below_[found->second] != kNowhere) return ToCouplet{CoupletId{below_[found->second]}};
      if (auto const taxon = child(target.node, "TaxonName")) return named(taxon);
      if (auto const subkey = child(target.node, "Subkey")) return key_of(subkey);
      element = child(target.node, "Reticulation");
      if (!element || ++steps > leads_.size()) return Unresolved{start.attribute("ref").value()};
    }
  }

  void label_lead(LeadSource const& source, Lead& lead) const {
    auto const& couplet = edition_[source.id.couplet];
    lead.label = attribute_of(source.node, "label");
    if (!lead.label.empty() || objects_.is_own()) return;
    auto letter = attribute_of(source.node, "lead");
    if (letter.empty()) {
      // a, b … z, aa, ab …
      for (auto n = source.id.ordinal + 1; n > 0; n = (n - 1) / 26) {
        letter.insert(letter.begin(), static_cast<char>('a' + (n - 1) % 26));
      }
    }
    lead.label = couplet.label + letter;
  }

  [[nodiscard]] std::string words_of(Destination const& destination) const {
    if (auto const* couplet = std::get_if<ToCouplet>(&destination)) {
      return edition_[couplet->couplet].label;
    }
    if (auto const* taxa = std::get_if<ToTaxa>(&destination)) return names_of(taxa->taxa);
    if (auto const* key = std::get_if<ToKey>(&destination)) return key->key;
    return std::get<Unresolved>(destination).printed;
  }

  [[nodiscard]] std::string names_of(std::vector<TaxonId> const& taxa) const {
    std::string names;
    for (auto const id : taxa) {
      auto const& taxon = edition_[id];
      names += (names.empty() ? "" : ", ") + taxon.name;
      if (!taxon.authorship.empty()) names += " " + taxon.authorship;
    }
    return names;
  }

  // --- taxa ------------------------------------------------------------------------------------

  void list_taxa() {
    for (auto const& name : children(child(objects_.data_set(), "TaxonNames"), "TaxonName")) {
      if (name.attribute("id").empty() || !objects_.own_children(name, "members").empty()) continue;
      static_cast<void>(take(name));
    }
  }

  [[nodiscard]] std::vector<TaxonId> taxa_of(pugi::xml_node reference) {
    std::string_view const ref = reference.attribute("ref").value();
    auto const object = objects_.find(ref, "TaxonName");
    if (!object) {
      say_unknown(reference, ref, "taxon name");
      return {};
    }
    auto const groups = objects_.own_texts(object, "members");
    if (groups.empty()) return {take(object)};
    std::vector<TaxonId> taxa;
    for (auto const member : printed::words_of(groups.front())) {
      if (auto const one = objects_.find(member, "TaxonName")) taxa.push_back(take(one));
    }
    return taxa;
  }

  TaxonId take(pugi::xml_node object) {
    auto const [known, fresh] = taxon_of_.emplace(
        object.hash_value(), TaxonId{static_cast<std::uint32_t>(edition_.taxa.size())});
    if (fresh) {
      auto label = objects_.taxon(object);
      if (label.name.empty()) label.name = object.attribute("id").value();
      edition_.taxa.push_back(
          {std::move(label.name), std::move(label.authorship), document_.place(object)});
    }
    return known->second;
  }

  // --- order -----------------------------------------------------------------------------------

  // write_sdd gives the couplets' order where the keys' differs.
  void restore_order() {
    std::vector<std::pair<std::uint64_t, std::uint32_t>> order;
    for (auto const& source : leads_) {
      auto const text = objects_.own(source.node, "order");
      if (text.empty()) continue;
      std::uint64_t number = 0;
      std::from_chars(text.data(), text.data() + text.size(), number);
      order.emplace_back(number, source.id.couplet.index);
    }
    if (order.size() != edition_.couplets.size()) return;
    std::sort(order.begin(), order.end());
    std::vector<std::uint32_t> now(order.size(), kNowhere);
    for (std::uint32_t i = 0; i < order.size(); ++i) now[order[i].second] = i;
    if (std::find(now.begin(), now.end(), kNowhere) != now.end()) return;
    std::vector<Couplet> couplets(order.size());
    for (std::uint32_t c = 0; c < now.size(); ++c) {
      couplets[now[c]] = std::move(edition_.couplets[c]);
    }
    edition_.couplets = std::move(couplets);
    for (auto& couplet : edition_.couplets) {
      for (auto& lead : couplet.leads) {
        if (auto* to = std::get_if<ToCouplet>(&lead.destination)) {
          to->couplet.index = now[to->couplet.index];
        }
      }
    }
    for (auto& part : edition_.parts) part.start.index = now[part.start.index];
  }

  // --- findings --------------------------------------------------------------------------------

  void say_unknown(pugi::xml_node node, std::string_view ref, std::string const& kind) {
    Finding finding;
    finding.code = "unknown-reference";
    finding.severity = Severity::warning;
    finding.file = document_.name();
    finding.place = document_.place(node);
    finding.printed = std::string{ref};
    finding.message = ref.empty() ? "the reference names no " + kind
                                  : "no " + kind + " has the id \"" + std::string{ref} + "\"";
    finding.remedy = "mend the reference, or add what it names";
    findings_.push_back(std::move(finding));
  }

  void say_languages() {
    Finding finding;
    finding.code = "further-languages";
    finding.severity = Severity::information;
    finding.file = document_.name();
    finding.place = document_.place(objects_.data_set());
    auto const count = objects_.passed_over();
    finding.message = (count == 1 ? "a text is in another language"
                                  : std::to_string(count) + " texts are in other languages") +
                      std::string{" than the data set's own, and left aside"};
    findings_.push_back(std::move(finding));
  }

  xml::Document const& document_;
  std::vector<Finding>& findings_;
  Objects objects_;
  Edition edition_;
  std::vector<LeadSource> leads_;
  std::vector<pugi::xml_node> first_leads_;  // by couplet
  std::unordered_map<std::string_view, std::size_t> lead_by_id_;
  std::vector<std::uint32_t> below_;  // by lead: the couplet whose parent it is
  std::unordered_map<std::string_view, std::pair<std::string, CoupletId>> key_starts_;
  std::unordered_map<std::size_t, TaxonId> taxon_of_;  // by node
};

bool has_leads(pugi::xml_node data_set) {
  for (auto const& key : children(child(data_set, "IdentificationKeys"), "IdentificationKey")) {
    auto const leads = child(key, "Leads");
    if (child(leads, "Lead") || child(leads, "Result")) return true;
  }
  return false;
}

Finding finding_at_node(xml::Document const& document, pugi::xml_node node, std::string code,
                        Severity severity, std::string message, std::string remedy) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.file = document.name();
  finding.place = document.place(node);
  finding.message = std::move(message);
  finding.remedy = std::move(remedy);
  return finding;
}

}  // namespace

bool is_sdd(xml::Document const& document) {
  return xml::local_name(document.root()) == "Datasets";
}

Loaded<Edition> read_sdd(xml::Document const& document) {
  Loaded<Edition> loaded;
  for (auto const& attribute : document.root().attributes()) {
    if (std::string_view{attribute.value()} != "http://www.tdwg.org/2005/UBIF") continue;
    loaded.findings.push_back(finding_at_node(
        document, document.root(), "sdd-version", Severity::error,
        "this is SDD 1.0, whose keys are built in another way",
        "convert it to SDD 1.1 (namespace http://rs.tdwg.org/UBIF/2006/) and load that file"));
    return loaded;
  }
  auto const all = children(document.root(), "Dataset");
  std::vector<pugi::xml_node> with_keys;
  std::copy_if(all.begin(), all.end(), std::back_inserter(with_keys), has_leads);
  if (with_keys.empty()) {
    loaded.findings.push_back(finding_at_node(
        document, document.root(), "no-couplets", Severity::error,
        "no data set of the file holds an identification key with leads",
        "check that this is the right file: SDD files may hold descriptions without a key"));
    return loaded;
  }
  for (std::size_t d = 1; d < with_keys.size(); ++d) {
    loaded.findings.push_back(finding_at_node(
        document, with_keys[d], "further-data-sets", Severity::warning,
        "the file holds keys in several data sets, which have nothing to do with one another; only "
        "the first was read",
        "load each data set from a file of its own"));
  }
  loaded.value = Reader{document, with_keys.front(), loaded.findings}.read();
  sort_findings(loaded.findings);
  return loaded;
}

}  // namespace keydrift
