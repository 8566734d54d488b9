#include <algorithm>
#include <limits>
#include <optional>

#include "keydrift/characters/reading/matches.hpp"

// Which numeric character of the lexicon a number measures.

namespace keydrift::reading {

std::optional<std::uint32_t> ClauseMatches::number_row(
    NumberWanted const& wanted, std::vector<std::uint32_t> const& carried) const {
  if (lexicon_.numeric().empty()) return std::nullopt;
  // The number's place in the stream.
  Index from = 0;
  while (from < stream_.size() && stream_[from] < wanted.begin) ++from;
  Index to = from;
  while (to < stream_.size() && stream_[to] < wanted.end) ++to;
  if (from == stream_.size() || from == to) {
    if (stream_.empty()) return std::nullopt;
    from = std::min<Index>(from, static_cast<Index>(stream_.size()) - 1);
    to = from + 1;
  }
  auto const fits = [&](Index row) {
    if (lexicon_.unit(row) != wanted.unit) return false;
    if (!wanted.comparand.empty()) {
      // "head wider than the pronotum" is no character of the pronotum alone.
      bool const own = std::binary_search(carried.begin(), carried.end(), row) ||
                       std::any_of(hits_.begin(), hits_.end(), [&](SubjectHit const& hit) {
                         return (hit.to <= from || hit.from >= to) &&
                                std::binary_search(hit.rows.begin(), hit.rows.end(), row);
                       });
      if (!own) return false;
      return std::all_of(wanted.comparand.begin(), wanted.comparand.end(),
                         [&](std::string const& word) { return lexicon_.knows(row, word); });
    }
    auto const& dimensions = lexicon_.dimensions(row);
    auto const has = [&](std::string_view dimension) {
      return std::find(dimensions.begin(), dimensions.end(), dimension) != dimensions.end();
    };
    if (!wanted.to.empty()) return has(wanted.dimension) && has(wanted.to);
    return wanted.dimension.empty() || dimensions.empty() || has(wanted.dimension);
  };
  std::optional<Index> best;
  int least = std::numeric_limits<int>::max();
  bool several = false;
  for (auto const row : lexicon_.numeric()) {
    if (!fits(row)) continue;
    auto const apart = own_distance(row, from, to);
    if (!apart) continue;
    if (*apart < least) {
      least = *apart;
      best = row;
      several = false;
    } else if (*apart == least) {
      several = true;
    }
  }
  // A bare length could be any of several dimensions.
  if (several && wanted.dimension.empty() && wanted.unit == "mm") return std::nullopt;
  if (best) return best;
  if (segment_names_any(from, to)) return std::nullopt;
  // "antennae black, with 9 segments": all that is said beside the number is known to it.
  auto const knows_all = [&](Index row) {
    for (Index i = 0; i < stream_.size(); ++i) {
      if (segment_of(i) == segment_of(from) && (i < from || i >= to) &&
          text_.is_content(stream_[i]) && !text_.is_degree(stream_[i]) &&
          text_.info[stream_[i]].dimension.empty() && !lexicon_.knows(row, ones_[i])) {
        return false;
      }
    }
    return true;
  };
  auto carried_here = carried;
  for (auto const& hit : hits_) {
    if (hit.segment >= segment_of(from) || hit.dependent) continue;
    if (auto const rows = rows_named(hit.segment); !rows.empty()) carried_here = rows;
  }
  for (auto const row : lexicon_.numeric()) {
    if (fits(row) && std::binary_search(carried_here.begin(), carried_here.end(), row) &&
        knows_all(row)) {
      return row;
    }
  }
  return std::nullopt;
}

}  // namespace keydrift::reading
