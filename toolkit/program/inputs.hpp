#pragma once
// Loading what the commands take: editions, lexicon, concept map, parent table.

#include <optional>
#include <string>
#include <vector>

#include "keydrift/characters/citation_table.hpp"
#include "keydrift/characters/lexicon.hpp"
#include "keydrift/editions/source.hpp"
#include "keydrift/formats/byte_stream.hpp"
#include "keydrift/formats/limits.hpp"
#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/text_labels.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"
#include "keydrift/program/context.hpp"
#include "keydrift/taxa/concepts.hpp"
#include "keydrift/taxa/frequencies.hpp"
#include "keydrift/taxa/placement.hpp"

namespace CLI {
class App;
}

namespace keydrift::program {

// An edition and what was found while it was read.
struct EditionInput {
  Edition edition;
  std::optional<SourceReading> source;  // how its lines were taken
  std::vector<Finding> findings;
};

// Loads a file or REPO@REVISION:PATH, within the context's limits.  On failure the errors are
// printed and nothing is returned.
[[nodiscard]] std::optional<EditionInput> load_edition(std::string const& spec, Context& context);

// The limits of the context as far as tables are concerned.
[[nodiscard]] StreamLimits stream_limits(Context const& context);

// Bytes of a file or of REPO@REVISION:PATH; what is too large is told with the option that lifts
// it.
[[nodiscard]] Loaded<SourceText> load_within_limits(std::string const& spec,
                                                    ReadLimits const& limits);

// --limit NAME=VALUE, as every command that loads an edition has it; may be given several times.
void add_limit_option(CLI::App& command, ReadLimits& limits);

// --encoding NAME, as every command that loads an edition has it: a label of the WHATWG Encoding
// Standard.
void add_encoding_option(CLI::App& command, std::optional<Encoding>& encoding);

// The options that `collate` and `redetermine` share.
struct SideTableOptions {
  std::string lexicon;  // path; empty: none
  std::string concepts;
  std::string parents;
};
void add_side_table_options(CLI::App& command, SideTableOptions& options);

struct SideTables {
  Lexicon lexicon;
  std::optional<ConceptMap> concepts;
  ParentTable parents;
};
[[nodiscard]] std::optional<SideTables> load_side_tables(SideTableOptions const& options,
                                                         Context& context);
[[nodiscard]] std::optional<Lexicon> load_lexicon(std::string const& path, Context& context);
[[nodiscard]] std::optional<FrequencyTable> load_frequencies(std::string const& path,
                                                             Context& context);

[[nodiscard]] std::optional<CitationTable> load_citations(std::string const& path,
                                                          Context& context);

// The whole file, or nothing after a printed finding.
[[nodiscard]] std::optional<std::string> load_file(std::string const& path, Context& context);

}  // namespace keydrift::program
