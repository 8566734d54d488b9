#pragma once
// The words of statements that nothing else reads.

#include <cstdint>
#include <string>
#include <vector>

#include "keydrift/characters/reading/lead_text.hpp"
#include "keydrift/characters/reading/parts.hpp"

namespace keydrift::reading {

// The words of the tokens as normalised_words() gives them, without qualifiers; `subject` goes in
// front when it is not empty.  One "not" or "never" is taken out and told in `negated`, where the
// caller asks for it.
[[nodiscard]] std::string plain_words(LeadText const& text,
                                      std::vector<std::uint32_t> const& tokens,
                                      std::string const& subject, bool* negated = nullptr);

// The structure that the words speak of: "upper leaves" of "upper leaves broadly ovate"; empty when
// that cannot be told.
[[nodiscard]] std::string subject_words(LeadText const& text,
                                        std::vector<std::uint32_t> const& tokens);

// The words of these tokens with blanks between them.
[[nodiscard]] std::string words_at(LeadText const& text, std::vector<std::uint32_t> const& tokens);

// The tokens of the words that are spoken of, in order.
[[nodiscard]] std::vector<std::uint32_t> subject_tokens(LeadText const& text,
                                                        std::vector<std::uint32_t> const& tokens);

// The words name what they speak of, so that nothing is carried over to them: a noun stands first
// behind a semicolon (common practice), behind a comma an adjective may.
[[nodiscard]] bool names_subject(LeadText const& text, std::vector<std::uint32_t> const& tokens,
                                 bool begins_clause);

[[nodiscard]] bool is_either(LeadText const& text, std::uint32_t token);

// A circumstance without a statement of its own: "at the tip", "when ripe", "especially above".
[[nodiscard]] bool is_mere_phrase(LeadText const& text, Segment const& segment);

// The comma in front of segment `at` does not part statements: a list ("ovate, lanceolate or
// elliptic"), a phrase that belongs to the word in front ("absent, or if present, small").
[[nodiscard]] bool joins_previous(LeadText const& text, std::vector<Segment> const& segments,
                                  std::size_t at, std::size_t previous);

}  // namespace keydrift::reading
