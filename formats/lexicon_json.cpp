#include <algorithm>
#include <utility>

#include "keydrift/formats/json_fields.hpp"
#include "keydrift/formats/json_tree.hpp"
#include "keydrift/formats/json_writer.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "keydrift/formats/lexicon_parts.hpp"

namespace keydrift {

using namespace tables;

namespace {

class LexiconReader {
 public:
  LexiconReader(std::string_view file, std::vector<Finding>& findings)
      : file_{file}, findings_{findings}, problems_{file, findings} {}

  Lexicon read(JsonValue const& root) {
    Lexicon lexicon;
    lexicon.name = std::string{file_};
    JsonFields fields{root, "lexicon", problems_};
    (void)fields.any("keydrift-lexicon");
    for (auto const& value : fields.objects("characters")) {
      lexicon.characters.push_back(read_character(value));
    }
    fields.finish();
    return lexicon;
  }

 private:
  LexiconCharacter read_character(JsonValue const& value) {
    JsonFields fields{value, "character", problems_};
    LexiconCharacter character;
    character.place = value.place;
    character.id = fields.required_text("id");
    character.label = fields.text("label");
    character.structure = fields.text("structure");
    character.property = fields.text("property");
    character.subjects = read_phrases(fields, "subjects");
    character.kind =
        read_kind(fields.text("kind"), place_of_field(value, "kind"), file_, findings_);
    character.unit = fields.text("unit");
    character.difficulty = read_difficulty(fields.text("difficulty"),
                                           place_of_field(value, "difficulty"), file_, findings_);
    if (auto const* const condition = fields.of_type("applicableIf", JsonType::object)) {
      JsonFields parts{*condition, "condition", problems_};
      character.applicable_if =
          Applicability{parts.required_text("character"), parts.texts("states")};
      parts.finish();
    }
    read_tolerance(fields, character);
    character.support = read_support(fields);
    for (auto const& item : fields.objects("states")) {
      JsonFields parts{item, "state", problems_};
      LexiconState state{.id = parts.required_text("id"),
                         .phrases = read_phrases(parts, "phrases"),
                         .not_told_from = parts.texts("notToldApartFrom"),
                         .support = read_support(parts)};
      parts.finish();
      character.states.push_back(std::move(state));
    }
    fields.finish();
    return character;
  }

  static Support read_support(JsonFields& fields) {
    Support support;
    support.confidence = fields.text("confidence");
    support.evidence = fields.text("evidence");
    return support;
  }

  void read_tolerance(JsonFields& fields, LexiconCharacter& character) {
    auto const tolerance = fields.number("tolerance");
    if (!tolerance) return;
    if (*tolerance >= 0 && *tolerance < 1) {
      character.tolerance = *tolerance;
      return;
    }
    problems_.add(
        "bad-number", Severity::error, fields.any("tolerance")->place,
        "a tolerance is a share from 0 to less than 1, not " + shortest_number(*tolerance),
        "write 0.1 for a tenth");
  }

  // A phrase is a text, or {"text": "…", "language": "de"}.
  std::vector<Phrase> read_phrases(JsonFields& fields, std::string_view name) {
    std::vector<Phrase> phrases;
    auto const* const list = fields.of_type(name, JsonType::list);
    if (list == nullptr) return phrases;
    for (auto const& item : list->items) {
      if (item.type == JsonType::text) {
        phrases.push_back({item.text, ""});
      } else {
        JsonFields parts{item, "phrase", problems_};
        phrases.push_back({parts.required_text("text"), parts.text("language")});
        parts.finish();
      }
    }
    return phrases;
  }

  static Place place_of_field(JsonValue const& object, std::string_view name) {
    for (auto const& member : object.members) {
      if (member.name == name) return member.value.place;
    }
    return object.place;
  }

  std::string_view file_;
  std::vector<Finding>& findings_;
  JsonProblems problems_;
};

void write_phrase_list(JsonWriter& json, std::string_view name,
                       std::vector<Phrase> const& phrases) {
  if (phrases.empty()) return;
  json.name(name);
  json.begin_inline_list();
  for (auto const& phrase : phrases) {
    if (phrase.language.empty()) {
      json.value(std::string_view{phrase.text});
    } else {
      json.begin_object();
      json.field("text", std::string_view{phrase.text});
      json.field("language", std::string_view{phrase.language});
      json.end_object();
    }
  }
  json.end_list();
}

void write_support(JsonWriter& json, Support const& support) {
  json.text_field("confidence", support.confidence);
  json.text_field("evidence", support.evidence);
}

void write_character(JsonWriter& json, LexiconCharacter const& character) {
  json.begin_object();
  json.field("id", std::string_view{character.id});
  json.text_field("label", character.label);
  json.text_field("structure", character.structure);
  json.text_field("property", character.property);
  write_phrase_list(json, "subjects", character.subjects);
  json.field("kind", to_word(character.kind));
  json.text_field("unit", character.unit);
  json.field("difficulty", to_word(character.difficulty));
  if (character.applicable_if) {
    json.name("applicableIf");
    json.begin_inline_object();
    json.field("character", std::string_view{character.applicable_if->character});
    json.texts_field("states", character.applicable_if->states);
    json.end_object();
  }
  json.field("tolerance", character.tolerance);
  write_support(json, character.support);
  if (!character.states.empty()) {
    json.name("states");
    json.begin_list();
    for (auto const& state : character.states) {
      json.begin_inline_object();
      json.field("id", std::string_view{state.id});
      write_phrase_list(json, "phrases", state.phrases);
      if (!state.not_told_from.empty()) json.texts_field("notToldApartFrom", state.not_told_from);
      write_support(json, state.support);
      json.end_object();
    }
    json.end_list();
  }
  json.end_object();
}

}  // namespace

Loaded<Lexicon> tables::read_lexicon_json(DecodedText const& source) {
  Loaded<Lexicon> loaded;
  auto tree = parse_json(source);
  loaded.findings = std::move(tree.findings);
  if (!tree) return loaded;
  check_json_version(*tree.value, "keydrift-lexicon", source.name, loaded.findings);
  if (has_error(loaded.findings)) return loaded;
  auto lexicon = LexiconReader{source.name, loaded.findings}.read(*tree.value);
  if (!has_error(loaded.findings)) loaded.value = std::move(lexicon);
  return loaded;
}

std::string write_lexicon_json(Lexicon const& lexicon) {
  JsonWriter json;
  json.begin_object();
  json.field("keydrift-lexicon", 1);
  json.name("characters");
  json.begin_list();
  for (auto const& character : lexicon.characters) write_character(json, character);
  json.end_list();
  json.end_object();
  return json.take();
}

}  // namespace keydrift
