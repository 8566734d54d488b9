#pragma once
// The forms that an edition can be written in, as commands offer them.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/lexicon.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::program {

enum class EditionForm : std::uint8_t { parallel, indented, serial, json, sdd, html, markdown };

// What --to takes: "parallel", … and "text", which is parallel.
[[nodiscard]] std::vector<std::string> edition_form_names();

// The form of that name; when the name is empty, the one that the output's name tells by its end
// (.json, .xml, .html, .htm, .md, .txt).
[[nodiscard]] std::optional<EditionForm> edition_form(std::string_view name,
                                                      std::string_view output);

// What to do where neither tells a form.
inline constexpr std::string_view kHowToSayForm =
    "say the form with --to, or name an output that ends in .txt, .json, .xml, .html or .md";

// The edition in the form; no value when the form cannot hold it.  The findings tell why, or what
// the form leaves out.  The layout in `options` is that of the form, whatever it was.  JSON and SDD
// hold the statements as the lexicon reads them; JSON holds `findings`, those of reading the
// edition, as well.
[[nodiscard]] Loaded<std::string> write_edition(Edition const& edition, EditionForm form,
                                                PrintOptions options, Lexicon const& lexicon,
                                                std::vector<Finding> const& findings);

}  // namespace keydrift::program
