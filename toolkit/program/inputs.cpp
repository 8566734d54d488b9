#include "keydrift/program/inputs.hpp"

#include <CLI/CLI.hpp>
#include <filesystem>
#include <system_error>
#include <utility>

#include "keydrift/formats/citations_file.hpp"
#include "keydrift/formats/concept_map_file.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "keydrift/formats/frequencies_file.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "keydrift/formats/parents_file.hpp"

namespace keydrift::program {
namespace {

// Reads a side table with `read`; prints what was found on the way.
template <class T>
std::optional<T> load_table(std::string const& path, Context& context, Loaded<T> (*read)(Source)) {
  auto const bytes = load_file(path, context);
  if (!bytes) return std::nullopt;
  auto loaded = read({.name = path, .bytes = *bytes, .encoding = context.encoding});
  print_findings(context, loaded.findings);
  return std::move(loaded.value);
}

std::string listed(std::vector<std::string> const& names) {
  std::string text;
  for (auto const& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

// The size of what is no file (a pipe, a git object) is not known.
std::string way_past_size(std::string const& spec, ReadLimits const& limits) {
  std::error_code error;
  auto const size = std::filesystem::file_size(spec, error);
  return "see whether this is the right file; a key takes far less, but " +
         to_lift(limits, ReadLimit::size, error ? 0 : size) + " takes it in";
}

}  // namespace

void add_limit_option(CLI::App& command, ReadLimits& limits) {
  command
      .add_option_function<std::vector<std::string>>(
          "--limit",
          [&limits](std::vector<std::string> const& assignments) {
            for (auto const& assignment : assignments) {
              if (auto const wrong = set_limit(limits, assignment)) {
                throw CLI::ValidationError("--limit", *wrong);
              }
            }
          },
          "What an edition may take; expansion and entries hold for archives and gzip as well: " +
              listed(names_of(limits)))
      ->allow_extra_args(false)
      ->type_name("NAME=VALUE");
}

void add_encoding_option(CLI::App& command, std::optional<Encoding>& encoding) {
  command
      .add_option_function<std::string>(
          "--encoding",
          [&encoding](std::string const& name) {
            encoding = encoding_by_label(name);
            if (!encoding) {
              throw CLI::ValidationError(
                  "--encoding",
                  "\"" + name + "\" is no encoding that is known: " + encoding_labels());
            }
          },
          "What editions and side tables are in that are not UTF-8, as windows-1251, koi8-r or "
          "gb18030; without it they are taken for what they declare or look like")
      ->type_name("NAME");
}

std::optional<std::string> load_file(std::string const& path, Context& context) {
  auto source = load_source(path);
  print_findings(context, source.findings);
  if (!source.value) return std::nullopt;
  return std::move(source.value->bytes);
}

StreamLimits stream_limits(Context const& context) {
  return {.maximum_expansion = static_cast<double>(context.limits.expansion)};
}

Loaded<SourceText> load_within_limits(std::string const& spec, ReadLimits const& limits) {
  auto source = load_source(spec, {.maximum_bytes = limits.bytes});
  for (auto& finding : source.findings) {
    if (finding.code == "too-large") finding.remedy = way_past_size(spec, limits);
  }
  return source;
}

std::optional<EditionInput> load_edition(std::string const& spec, Context& context) {
  auto const& limits = context.limits;
  auto source = load_within_limits(spec, limits);
  if (!source.value) {
    print_findings(context, source.findings);
    return std::nullopt;
  }
  auto loaded = read_edition(
      {.name = source.value->name, .bytes = source.value->bytes, .encoding = context.encoding},
      limits);
  if (!loaded.value) {
    print_findings(context, loaded.findings);
    return std::nullopt;
  }
  return EditionInput{std::move(loaded.value->edition), std::move(loaded.value->source),
                      std::move(loaded.findings)};
}

std::optional<Lexicon> load_lexicon(std::string const& path, Context& context) {
  if (path.empty()) return Lexicon{};
  return load_table<Lexicon>(path, context, read_lexicon);
}

std::optional<FrequencyTable> load_frequencies(std::string const& path, Context& context) {
  return load_table<FrequencyTable>(path, context, read_frequencies);
}

std::optional<CitationTable> load_citations(std::string const& path, Context& context) {
  return load_table<CitationTable>(path, context, read_citations);
}

void add_side_table_options(CLI::App& command, SideTableOptions& options) {
  command
      .add_option("--lexicon", options.lexicon, "Words tied to characters and states (CSV, JSON)")
      ->type_name("FILE");
  command
      .add_option("--concepts", options.concepts,
                  "How the old edition's taxa relate to the new one's (CSV)")
      ->type_name("FILE");
  command.add_option("--parents", options.parents, "Which taxon belongs to which group (CSV)")
      ->type_name("FILE");
}

std::optional<SideTables> load_side_tables(SideTableOptions const& options, Context& context) {
  SideTables tables;
  bool sound = true;
  if (auto lexicon = load_lexicon(options.lexicon, context)) {
    tables.lexicon = std::move(*lexicon);
  } else {
    sound = false;
  }
  if (!options.concepts.empty()) {
    tables.concepts = load_table<ConceptMap>(options.concepts, context, read_concept_map);
    sound = sound && tables.concepts.has_value();
  }
  if (!options.parents.empty()) {
    if (auto parents = load_table<ParentTable>(options.parents, context, read_parents)) {
      tables.parents = std::move(*parents);
    } else {
      sound = false;
    }
  }
  if (!sound) return std::nullopt;
  return tables;
}

}  // namespace keydrift::program
