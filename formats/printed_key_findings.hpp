#pragma once
// What is said of how a printed key was read as a whole.  Inner header of formats.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_couplets.hpp"
#include "keydrift/formats/printed_leads.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/formats/text.hpp"

namespace keydrift::printed {

// `passages`, `links` and `characters`: how many were changed before the lines were read.
[[nodiscard]] Finding emphasis_taken_off(std::string_view file, std::size_t passages);
[[nodiscard]] Finding links_taken_off(std::string_view file, std::size_t links);
[[nodiscard]] Finding full_width_narrowed(std::string_view file, std::size_t characters);
// `message` follows the count.
[[nodiscard]] Finding scan_mended(std::string_view file, std::size_t count, char const* code,
                                  char const* message);

// `first`: the line of the first lead.
[[nodiscard]] Finding indentation_lost(std::string_view file, SourceLine const& first);
// Of leads that belong elsewhere than their indentation tells.
[[nodiscard]] Finding indentation_uneven(std::string_view file,
                                         std::vector<SourceLine> const& lines,
                                         SortedLines const& sorted, Grouping const& grouping);
[[nodiscard]] Finding column_of_destinations(std::string_view file);
[[nodiscard]] Finding braces_taken(std::string_view file, std::size_t couplets);

// Of invisible characters within names, which are read without them; nullopt where there are none.
[[nodiscard]] std::optional<Finding> invisible_in_names(KeyText const& key, Edition const& edition);

// No lead has a rival, or none leads anywhere: says where pairing fails first.
[[nodiscard]] Finding no_couplets(DecodedText const& decoded, std::vector<SourceLine> const& lines,
                                  SortedLines const& sorted, Grouping const& grouping,
                                  bool leads_nowhere);

// "parallel layout, leads marked 1 and –, destinations after dot leaders".  `cells`: the file has a
// table, so that destinations that are told beforehand stand in its cells.
[[nodiscard]] std::string describe_layout(Grouping const& grouping, SortedLines const& sorted,
                                          std::vector<ReadLead> const& reads, bool cells);

}  // namespace keydrift::printed
