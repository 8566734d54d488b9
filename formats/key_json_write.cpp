#include <algorithm>
#include <cstdint>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/key_json_parts.hpp"

namespace keydrift {

using namespace tables;

namespace {

template <class... Fs>
struct Overloaded : Fs... {
  using Fs::operator()...;
};
template <class... Fs>
Overloaded(Fs...) -> Overloaded<Fs...>;

// A name of its own for each: the printed one where that is free, else "7 (2)", "7 (3)" …
std::vector<std::string> unique_ids(std::vector<std::string> const& names) {
  std::unordered_set<std::string> taken{names.begin(), names.end()};
  std::unordered_map<std::string, std::uint64_t> seen;
  std::vector<std::string> ids;
  ids.reserve(names.size());
  for (auto const& name : names) {
    auto& count = seen[name];
    auto id = name;
    while (++count > 1) {
      id = name + " (" + std::to_string(count) + ")";
      if (taken.insert(id).second) break;
    }
    ids.push_back(std::move(id));
  }
  return ids;
}

class KeyWriter {
 public:
  explicit KeyWriter(Edition const& edition) : edition_{edition} {
    std::vector<std::string> labels;
    for (auto const& couplet : edition.couplets) labels.push_back(couplet.label);
    couplet_ids_ = unique_ids(labels);
    std::vector<std::string> names;
    for (auto const& taxon : edition.taxa) names.push_back(taxon.name);
    taxon_ids_ = unique_ids(names);
  }

  std::string write(std::span<Finding const> findings) {
    json_.begin_object();
    json_.field("keydrift", 1);
    json_.text_field("file", edition_.name);
    write_front_matter();
    list("parts", edition_.parts, [this](KeyPart const& part) {
      json_.begin_object();
      json_.text_field("title", part.title);
      json_.field("start", std::string_view{couplet_ids_[part.start.index]});
      write_json_source(json_, "source", part.place);
      json_.end_object();
    });
    json_.name("couplets");
    json_.begin_list();
    for (std::size_t i = 0; i < edition_.couplets.size(); ++i) write_couplet(i);
    json_.end_list();
    write_taxa();
    list("notes", edition_.notes, [this](Note const& note) {
      json_.begin_object();
      json_.field("text", std::string_view{note.text});
      write_json_source(json_, "source", note.place);
      json_.end_object();
    });
    json_.name("findings");
    json_.begin_list();
    for (auto const& finding : findings) write_finding(finding);
    json_.end_list();
    json_.end_object();
    return json_.take();
  }

 private:
  template <class Items, class Write>
  void list(std::string_view name, Items const& items, Write write) {
    if (items.empty()) return;
    json_.name(name);
    json_.begin_list();
    for (auto const& item : items) write(item);
    json_.end_list();
  }

  void write_front_matter() {
    auto const& front = edition_.front;
    json_.text_field("title", front.title);
    json_.text_field("edition", front.edition);
    if (front.year) json_.field("year", *front.year);
    json_.texts_field("authors", front.authors);
    json_.text_field("language", front.language);
    auto const& scope = front.scope;
    json_.name("scope");
    json_.begin_object();
    json_.text_field("taxa", scope.taxa);
    json_.text_field("region", scope.region);
    json_.texts_field("places", scope.places);
    json_.texts_field("excludes", scope.excluded_taxa);
    json_.texts_field("lists", scope.listed_taxa);
    json_.text_field("lifeStage", scope.life_stage);
    json_.text_field("sex", scope.sex);
    json_.text_field("material", scope.material);
    json_.end_object();
    list("synonyms", front.synonyms, [this](Synonymy const& synonymy) {
      json_.begin_object();
      json_.field("accepted", std::string_view{synonymy.accepted});
      json_.field("synonym", std::string_view{synonymy.synonym});
      write_json_source(json_, "source", synonymy.place);
      json_.end_object();
    });
    list("frontMatter", front.other, [this](std::pair<std::string, std::string> const& line) {
      json_.begin_inline_object();
      json_.field("name", std::string_view{line.first});
      json_.field("value", std::string_view{line.second});
      json_.end_object();
    });
  }

  void write_couplet(std::size_t index) {
    auto const& couplet = edition_.couplets[index];
    json_.begin_object();
    json_.field("label", std::string_view{couplet.label});
    if (couplet_ids_[index] != couplet.label) {
      json_.field("id", std::string_view{couplet_ids_[index]});
    }
    write_json_source(json_, "source", couplet.place);
    list("backReferences", couplet.back_references, [this](BackReference const& reference) {
      json_.begin_object();
      json_.field("label", std::string_view{reference.label});
      write_json_source(json_, "source", reference.place);
      json_.end_object();
    });
    json_.texts_field("notes", couplet.notes);
    json_.name("leads");
    json_.begin_list();
    for (auto const& lead : couplet.leads) write_lead(lead);
    json_.end_list();
    json_.end_object();
  }

  void write_lead(Lead const& lead) {
    json_.begin_object();
    json_.field("label", std::string_view{lead.label});
    json_.field("text", std::string_view{lead.text});
    write_json_source(json_, "source", lead.place);
    list("runs", lead.runs, [this](TextRun const& run) {
      json_.begin_inline_object();
      json_.field("textBegin", std::uint64_t{run.text_begin});
      write_json_source(json_, "source", run.place);
      json_.end_object();
    });
    json_.name("destination");
    write_destination(lead.destination);
    json_.text_field("destinationPrinted", lead.destination_printed);
    write_json_source(json_, "destinationSource", lead.destination_place);
    json_.text_field("taxonRemark", lead.taxon_remark);
    list("statements", lead.statements,
         [this](Statement const& statement) { write_json_statement(json_, statement); });
    json_.texts_field("notes", lead.notes);
    json_.texts_field("figures", lead.figures);
    json_.end_object();
  }

  void write_destination(Destination const& destination) {
    json_.begin_inline_object();
    std::visit(
        Overloaded{[this](Unresolved const& to) {
                     json_.field("unresolved", std::string_view{to.printed});
                   },
                   [this](ToCouplet const& to) {
                     json_.field("couplet", std::string_view{couplet_ids_[to.couplet.index]});
                   },
                   [this](ToTaxa const& to) {
                     json_.name("taxa");
                     json_.begin_list();
                     for (auto const taxon : to.taxa) {
                       json_.value(std::string_view{taxon_ids_[taxon.index]});
                     }
                     json_.end_list();
                   },
                   [this](ToKey const& to) { json_.field("key", std::string_view{to.key}); }},
        destination);
    json_.end_object();
  }

  void write_taxa() {
    json_.name("taxa");
    json_.begin_list();
    for (std::size_t i = 0; i < edition_.taxa.size(); ++i) {
      auto const& taxon = edition_.taxa[i];
      json_.begin_object();
      json_.field("name", std::string_view{taxon.name});
      if (taxon_ids_[i] != taxon.name) json_.field("id", std::string_view{taxon_ids_[i]});
      json_.text_field("authorship", taxon.authorship);
      write_json_source(json_, "source", taxon.place);
      json_.end_object();
    }
    json_.end_list();
  }

  void write_finding(Finding const& finding) {
    json_.begin_object();
    json_.field("code", std::string_view{finding.code});
    json_.field("severity", to_word(finding.severity));
    json_.text_field("file", finding.file);
    json_.field("line", std::uint64_t{finding.place.line});
    json_.field("column", std::uint64_t{finding.place.column});
    json_.text_field("printed", finding.printed);
    json_.field("message", std::string_view{finding.message});
    json_.text_field("remedy", finding.remedy);
    list("related", finding.related, [this](RelatedPlace const& related) {
      json_.begin_object();
      json_.field("line", std::uint64_t{related.place.line});
      json_.field("column", std::uint64_t{related.place.column});
      json_.field("message", std::string_view{related.message});
      json_.end_object();
    });
    json_.end_object();
  }

  Edition const& edition_;
  JsonWriter json_;
  std::vector<std::string> couplet_ids_;
  std::vector<std::string> taxon_ids_;
};

}  // namespace

std::string write_key_json(Edition const& edition, std::span<Finding const> findings) {
  return KeyWriter{edition}.write(findings);
}

}  // namespace keydrift
