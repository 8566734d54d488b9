#include <algorithm>
#include <climits>
#include <optional>
#include <unordered_map>
#include <utility>
#include <vector>

#include "keydrift/formats/key_json.hpp"
#include "keydrift/formats/key_json_parts.hpp"
#include "keydrift/formats/side_table.hpp"
#include "keydrift/formats/wording.hpp"

namespace keydrift {

using namespace tables;

namespace {

constexpr std::size_t kSuggestionsMade = 20;  // each looks at every label

class KeyReader {
 public:
  KeyReader(std::string_view file, std::vector<Finding>& findings) : problems_{file, findings} {
    edition_.name = std::string{file};
  }

  Edition read(JsonValue const& root) {
    JsonFields fields{root, "key", problems_};
    (void)fields.any("keydrift");
    (void)fields.any("findings");
    if (auto file = fields.text("file"); !file.empty()) edition_.name = std::move(file);
    read_front_matter(fields);
    auto const& couplets = fields.objects("couplets");
    if (couplets.empty()) {
      problems_.add("no-couplets", Severity::error, root.place, "the key has no couplets",
                    "add them as \"couplets\"");
    }
    number_couplets(couplets);
    number_taxa(fields.objects("taxa"));
    edition_.couplets.reserve(couplets.size());
    for (auto const& value : couplets) edition_.couplets.push_back(read_couplet(value));
    read_parts(fields.objects("parts"));
    for (auto const& value : fields.objects("notes")) {
      JsonFields note{value, "note", problems_};
      edition_.notes.push_back({note.required_text("text"), note.source("source", value.place)});
      note.finish();
    }
    fields.finish();
    return std::move(edition_);
  }

 private:
  using Rows = std::unordered_map<std::string, std::uint32_t>;

  void read_front_matter(JsonFields& fields) {
    auto& front = edition_.front;
    front.title = fields.text("title");
    front.edition = fields.text("edition");
    if (auto const* const year = fields.of_type("year", JsonType::number)) {
      if (year->whole && year->number >= INT_MIN && year->number <= INT_MAX) {
        front.year = static_cast<int>(year->number);
      } else {
        problems_.add("wrong-type", Severity::error, year->place, "\"year\" wants a whole number",
                      "write the year alone, and anything else as \"edition\"");
      }
    }
    front.authors = fields.texts("authors");
    front.language = fields.text("language");
    if (auto const* const scope = fields.of_type("scope", JsonType::object)) read_scope(*scope);
    for (auto const& value : fields.objects("synonyms")) {
      JsonFields synonym{value, "synonym", problems_};
      front.synonyms.push_back({synonym.required_text("accepted"), synonym.required_text("synonym"),
                                synonym.source("source", value.place)});
      synonym.finish();
    }
    for (auto const& value : fields.objects("frontMatter")) {
      JsonFields line{value, "front matter line", problems_};
      front.other.emplace_back(line.required_text("name"), line.text("value"));
      line.finish();
    }
  }

  void read_scope(JsonValue const& value) {
    JsonFields fields{value, "scope", problems_};
    auto& scope = edition_.front.scope;
    scope.taxa = fields.text("taxa");
    scope.region = fields.text("region");
    scope.places = fields.texts("places");
    scope.excluded_taxa = fields.texts("excludes", &scope.excluded_places);
    scope.listed_taxa = fields.texts("lists", &scope.listed_places);
    scope.life_stage = fields.text("lifeStage");
    scope.sex = fields.text("sex");
    scope.material = fields.text("material");
    fields.finish();
  }

  // What destinations call a couplet or a taxon: its "id", else the text of `name_field`.
  struct NameAndPlace {
    std::string name;
    Place place;
    bool given{false};
  };
  static NameAndPlace id_of(JsonValue const& object, std::string_view name_field) {
    NameAndPlace found{"", object.place, false};
    for (std::string_view const field : {name_field, std::string_view{"id"}}) {
      for (auto const& member : object.members) {
        if (member.name == field && member.value.type == JsonType::text) {
          found = {member.value.text, member.value.place, true};
        }
      }
    }
    return found;
  }

  void number_couplets(std::vector<JsonValue> const& couplets) {
    std::vector<Place> places;
    for (std::uint32_t i = 0; i < couplets.size(); ++i) {
      auto const id = id_of(couplets[i], "label");
      places.push_back(id.place);
      if (!id.given) continue;  // reported as missing
      auto const [at, fresh] = couplet_rows_.emplace(id.name, i);
      if (fresh) continue;
      problems_
          .add("duplicate-label", Severity::error, id.place,
               "a second couplet is called \"" + id.name + "\"",
               "renumber one of the two, or give this one an \"id\" of its own and refer to it by "
               "that")
          .related.push_back({places[at->second], "the first one"});
    }
  }

  void number_taxa(std::vector<JsonValue> const& taxa) {
    for (auto const& value : taxa) {
      auto const id = id_of(value, "name");
      auto const row = static_cast<std::uint32_t>(edition_.taxa.size());
      auto const [at, fresh] =
          id.given ? taxon_rows_.emplace(id.name, row) : std::pair{taxon_rows_.end(), true};
      if (!fresh) {
        problems_
            .add("duplicate-taxon", Severity::error, id.place,
                 "a second taxon is called \"" + id.name + "\"",
                 "remove one of the two, or give this one an \"id\" of its own and refer to it by "
                 "that")
            .related.push_back({edition_.taxa[at->second].place, "the first one"});
      }
      JsonFields fields{value, "taxon", problems_};
      (void)fields.text("id");
      edition_.taxa.push_back({fields.required_text("name"), fields.text("authorship"),
                               fields.source("source", value.place)});
      fields.finish();
    }
  }

  TaxonId taxon_of(std::string const& id, Place place) {
    auto const row = static_cast<std::uint32_t>(edition_.taxa.size());
    auto const [at, fresh] = taxon_rows_.emplace(id, row);
    if (fresh) edition_.taxa.push_back({id, "", place});
    return TaxonId{at->second};
  }

  std::optional<CoupletId> couplet_of(JsonValue const& value, std::string_view what) {
    auto const found = couplet_rows_.find(value.text);
    if (found != couplet_rows_.end()) return CoupletId{found->second};
    std::string remedy = "correct the number, or write {\"unresolved\": \"" + value.text + "\"}";
    if (suggestions_++ < kSuggestionsMade) {
      std::vector<std::string_view> ids;
      for (auto const& [id, row] : couplet_rows_) ids.emplace_back(id);
      std::sort(ids.begin(), ids.end());
      remedy = suggestion(value.text, ids, remedy);
    }
    problems_.add(
        "unknown-couplet", Severity::error, value.place,
        std::string{what} + " leads to couplet \"" + value.text + "\", which this key lacks",
        remedy);
    return std::nullopt;
  }

  void read_parts(std::vector<JsonValue> const& parts) {
    for (auto const& value : parts) {
      JsonFields fields{value, "part", problems_};
      KeyPart part;
      part.title = fields.text("title");
      if (!fields.has("start")) {
        (void)fields.required_text("start");
      } else if (auto const* const start = fields.of_type("start", JsonType::text)) {
        part.start = couplet_of(*start, "the start of this part").value_or(CoupletId{});
      }
      part.place = fields.source("source", value.place);
      fields.finish();
      edition_.parts.push_back(std::move(part));
    }
    if (parts.empty() && !edition_.couplets.empty()) {
      edition_.parts.push_back({"", CoupletId{}, edition_.couplets.front().place});
    }
  }

  Couplet read_couplet(JsonValue const& value) {
    JsonFields fields{value, "couplet", problems_};
    Couplet couplet;
    couplet.label = fields.required_text("label");
    (void)fields.text("id");
    couplet.place = fields.source("source", value.place);
    for (auto const& item : fields.objects("backReferences")) {
      JsonFields parts{item, "back-reference", problems_};
      couplet.back_references.push_back(
          {parts.required_text("label"), parts.source("source", item.place)});
      parts.finish();
    }
    couplet.notes = fields.texts("notes");
    for (auto const& item : fields.objects("leads")) couplet.leads.push_back(read_lead(item));
    fields.finish();
    return couplet;
  }

  Lead read_lead(JsonValue const& value) {
    JsonFields fields{value, "lead", problems_};
    Lead lead;
    lead.label = fields.text("label");
    lead.text = fields.required_text("text");
    lead.place = fields.source("source", value.place);
    for (auto const& item : fields.objects("runs")) {
      JsonFields parts{item, "run", problems_};
      auto const begin = parts.whole_number("textBegin").value_or(0);
      lead.runs.push_back(
          {std::min<std::size_t>(begin, lead.text.size()), parts.source("source", item.place)});
      parts.finish();
    }
    std::stable_sort(lead.runs.begin(), lead.runs.end(), [](TextRun const& a, TextRun const& b) {
      return a.text_begin < b.text_begin;
    });
    read_destination(fields, value, lead);
    lead.destination_printed = fields.text("destinationPrinted");
    lead.destination_place = fields.source("destinationSource", lead.destination_place);
    lead.taxon_remark = fields.text("taxonRemark");
    std::size_t from = 0;
    for (auto const& item : fields.objects("statements")) {
      lead.statements.push_back(read_json_statement(item, lead.text, from, problems_));
      from = lead.statements.back().text_begin + 1;
    }
    lead.notes = fields.texts("notes");
    lead.figures = fields.texts("figures");
    if (!fields.has("source") && lead.runs.empty()) {
      // The words themselves stand in the JSON; escapes before a place shift it.
      if (auto const* const text = fields.of_type("text", JsonType::text)) {
        auto place = text->place;
        place.column += 1;  // behind the quotation mark
        place.begin += 1;
        place.end -= 1;
        lead.runs.push_back({0, place});
      }
    }
    fields.finish();
    return lead;
  }

  void read_destination(JsonFields& fields, JsonValue const& lead_value, Lead& lead) {
    lead.destination_place = lead_value.place;
    auto const* const value = fields.of_type("destination", JsonType::object);
    if (value == nullptr) return;
    lead.destination_place = value->place;
    JsonFields parts{*value, "destination", problems_};
    auto const* const couplet = parts.of_type("couplet", JsonType::text);
    auto const* const key = parts.of_type("key", JsonType::text);
    auto const* const unresolved = parts.of_type("unresolved", JsonType::text);
    auto const taxa = parts.texts("taxa");
    int const given = (parts.has("couplet") ? 1 : 0) + (parts.has("taxa") ? 1 : 0) +
                      (parts.has("key") ? 1 : 0) + (parts.has("unresolved") ? 1 : 0);
    if (given > 1) {
      problems_.add("two-destinations", Severity::error, value->place,
                    "this lead has more than one destination",
                    "keep one of \"couplet\", \"taxa\", \"key\" and \"unresolved\"");
    }
    if (couplet != nullptr) {
      if (auto const to = couplet_of(*couplet, "this lead")) lead.destination = ToCouplet{*to};
    } else if (!taxa.empty()) {
      ToTaxa to;
      for (auto const& taxon : taxa) to.taxa.push_back(taxon_of(taxon, lead.place));
      lead.destination = std::move(to);
    } else if (key != nullptr) {
      lead.destination = ToKey{key->text};
    } else if (unresolved != nullptr) {
      lead.destination = Unresolved{unresolved->text};
    }
    parts.finish();
  }

  JsonProblems problems_;
  Edition edition_;
  Rows couplet_rows_;  // by id
  Rows taxon_rows_;
  std::size_t suggestions_{};
};

}  // namespace

Loaded<Edition> read_key_json(Source source, ReadLimits const& limits) {
  Loaded<Edition> loaded;
  auto const decoded = decode_text(source, {.maximum_bytes = limits.bytes, .composed = false});
  loaded.findings = decoded.findings;
  if (!decoded) return loaded;
  auto const tree = parse_json(*decoded.value);
  loaded.findings.insert(loaded.findings.end(), tree.findings.begin(), tree.findings.end());
  if (!tree) return loaded;
  check_json_version(*tree.value, "keydrift", source.name, loaded.findings);
  if (has_error(loaded.findings)) return loaded;
  auto edition = KeyReader{source.name, loaded.findings}.read(*tree.value);
  sort_findings(loaded.findings);
  if (!has_error(loaded.findings)) loaded.value = std::move(edition);
  return loaded;
}

}  // namespace keydrift
