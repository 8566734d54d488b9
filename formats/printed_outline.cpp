#include "keydrift/formats/printed_outline.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_indent_course.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_vernacular.hpp"

namespace keydrift::printed {
namespace {

// How far up the open couplets a rival is looked for; no printed outline is deeper, and a text made
// to be deep must not cost more than its size.
constexpr std::size_t kDeepestRival = 200;

// A couplet whose leads are being read.
struct OpenCouplet {
  std::size_t group{};  // into the groups
  RankLabel last;       // of its last lead that has a label
  bool labelled{false};
  std::uint32_t indent{};  // of its first lead
  std::size_t leads{};
};

struct OutlineGroup {
  std::vector<std::uint32_t> leads;
  std::uint32_t part{};
};

// The numbers of "1.2.1" before its last, and the last.
struct DecimalPlace {
  std::string_view above;
  std::uint32_t last{};
};

DecimalPlace decimal_place(RankLabel const& rank) {
  if (rank.decimal.empty()) return {{}, rank.ordinal};
  auto const stop = rank.decimal.rfind('.');
  DecimalPlace place;
  place.above = rank.decimal.substr(0, stop);
  auto const digits = rank.decimal.substr(stop + 1);
  std::from_chars(digits.data(), digits.data() + digits.size(), place.last);
  return place;
}

class OutlineGrouper {
 public:
  OutlineGrouper(KeyText const& key, SortedLines const& sorted, std::vector<ReadLead> const& reads,
                 LeadPlan const& plan)
      : key_{key}, leads_{sorted.leads}, remarks_{sorted.remarks}, reads_{reads}, plan_{plan} {
    grouping_.goes_on = true;
  }

  Grouping by_ranks(Rivals rivals) && {
    grouping_.layout = Layout::outline;
    choose_rivals(rivals);
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      start_part(i);
      auto const depth = rival_by_rank(i);
      place(i, depth);
    }
    return finish();
  }

  Grouping by_indentation() && {
    grouping_.layout = Layout::by_indentation;
    tolerance_ = tolerance();
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      start_part(i);
      place(i, rival_by_indent(i));
    }
    return finish();
  }

  std::optional<Grouping> by_indentation_and_ends() && {
    grouping_.layout = Layout::by_indentation;
    tolerance_ = tolerance();
    std::vector<IndentedLead> leads;
    OpenLevels told;  // by indentation alone
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      start_part(i);
      leads.push_back({indent(i), is_led(i), open_.empty()});
      auto const level = rival_by_indent(i);
      told.push_back(level ? std::optional{static_cast<std::uint32_t>(*level)} : std::nullopt);
      place(i, level);
    }
    auto const levels = likelier_levels(leads, told);
    if (!levels) return std::nullopt;
    auto const told_firsts = first_leads();
    open_.clear();
    groups_.clear();
    grouping_.parts.clear();
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      start_part(i);
      place(i, (*levels)[i]);
    }
    auto const firsts = first_leads();
    for (std::uint32_t i = 0; i < leads_.size(); ++i) {
      if (firsts[i] != told_firsts[i]) grouping_.set_otherwise.push_back(i);
    }
    return finish();
  }

  std::optional<Grouping> by_order() && {
    grouping_.layout = Layout::by_order;
    if (is_indented()) return std::nullopt;
    openings_.reserve(leads_.size());
    for (std::size_t i = 0; i < leads_.size(); ++i) openings_.push_back(opening(i));
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      start_part(i);
      place(i, rival_by_order(i));
    }
    if (!rivals_begin_alike()) return std::nullopt;
    return finish();
  }

 private:
  // --- common ----------------------------------------------------------------------------------

  [[nodiscard]] RankLabel const& rank(std::size_t i) const {
    return plan_.at(leads_[i].line)->rank;
  }
  [[nodiscard]] bool unlabelled(std::size_t i) const {
    return plan_.at(leads_[i].line)->unlabelled;
  }
  [[nodiscard]] std::uint32_t indent(std::size_t i) const {
    return key_.lines[leads_[i].line].indent;
  }
  // The lead names a taxon, or leads somewhere by a number: no couplet stands beneath it.
  [[nodiscard]] bool is_led(std::size_t i) const {
    return reads_[i].to.form != DestinationForm::none && !names_group_beneath(i);
  }
  // "… emarginate ..... (Genus Aus)." above leads that are set deeper.
  [[nodiscard]] bool names_group_beneath(std::size_t i) const {
    auto const& printed = reads_[i].lead.destination_printed;
    if (!printed.starts_with('(') || i + 1 >= leads_.size()) return false;
    auto const words = words_of(std::string_view{printed}.substr(1), 1);
    return !words.empty() && (is_rank_noun(fold(words[0])) || says_genus(fold(words[0]))) &&
           indent(i + 1) > indent(i);
  }

  void start_part(std::size_t i) {
    auto const heading = leads_[i].last_heading;
    bool const fresh = i == 0 || plan_.at(leads_[i].line)->opens_key ||
                       (heading != kNone && is_led(i - 1) && names_key(heading));
    if (!fresh) return;
    grouping_.parts.push_back({static_cast<std::uint32_t>(i), heading});
    open_.clear();
  }
  [[nodiscard]] bool names_key(std::uint32_t heading) const {
    auto const& piece = remarks_[heading].pieces.front();
    return mentions_key(trim(key_.text.substr(piece.begin, piece.end - piece.begin)));
  }

  // Lead i answers the open couplet at `depth`, or opens one beneath the last lead.
  void place(std::size_t i, std::optional<std::size_t> depth) {
    if (depth) {
      open_.resize(*depth + 1);
    } else {
      groups_.push_back({{}, static_cast<std::uint32_t>(grouping_.parts.size() - 1)});
      OpenCouplet opened;
      opened.group = groups_.size() - 1;
      opened.indent = indent(i);
      open_.push_back(opened);
    }
    auto& couplet = open_.back();
    groups_[couplet.group].leads.push_back(static_cast<std::uint32_t>(i));
    ++couplet.leads;
    if (rank(i).alphabet != Alphabet::dash) {
      couplet.last = rank(i);
      couplet.labelled = true;
    }
  }

  // By lead: the first lead of its couplet.
  [[nodiscard]] std::vector<std::uint32_t> first_leads() const {
    std::vector<std::uint32_t> firsts(leads_.size());
    for (auto const& group : groups_) {
      for (auto const lead : group.leads) firsts[lead] = group.leads.front();
    }
    return firsts;
  }

  [[nodiscard]] std::size_t highest_looked_at() const {
    return open_.size() > kDeepestRival ? open_.size() - kDeepestRival : 0;
  }

  // --- ranks -----------------------------------------------------------------------------------

  // A, B and C are rivals unless labels of that rank are answered otherwise: by AA, by A again, by
  // a dash.
  void choose_rivals(Rivals rivals) {
    if (rivals == Rivals::repeated) return;
    letters_count_ = rivals == Rivals::counted;
    std::array<std::size_t, RankLabel::kRanks> plain{};
    std::array<std::size_t, RankLabel::kRanks> repeated{};
    std::array<std::string_view, RankLabel::kRanks> last{};
    std::size_t dashes = 0;
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      auto const& one = rank(i);
      if (unlabelled(i)) continue;
      if (one.alphabet == Alphabet::dash) {
        ++dashes;
        continue;
      }
      auto& before = last[one.rank()];
      bool const again = one.repeats > 0 || before == one.label.printed;
      ++(again ? repeated : plain)[one.rank()];
      before = one.label.printed;
    }
    for (std::uint32_t r = 0; r < RankLabel::kRanks; ++r) {
      counted_[r] = repeated[r] * 4 < plain[r] && dashes * 4 < leads_.size();
    }
    find_ranks_of_their_own();
  }

  // "(1)" and then "(2)", with no "2." between them: they do not answer "1." and "2.".
  void find_ranks_of_their_own() {
    std::array<std::optional<std::size_t>, RankLabel::kRanks> first{};
    for (std::size_t i = 0; i < leads_.size(); ++i) {
      auto const& one = rank(i);
      if (unlabelled(i) || one.repeats > 0 || !one.decimal.empty()) continue;
      auto& begun = first[one.rank()];
      if (one.ordinal == 1) begun = i;
      if (one.ordinal != 2) continue;
      if (begun) of_its_own_[one.rank()] = true;
      // Other firsts between may be answered by this one as well as by their own second.
      for (auto& other : first) {
        bool const between = other && other != begun && (!begun || *other > *begun);
        if (between && rank(*other).alphabet == one.alphabet) other.reset();
      }
      begun.reset();
    }
  }

  [[nodiscard]] static bool follows(RankLabel const& last, RankLabel const& next) {
    auto const a = decimal_place(last);
    auto const b = decimal_place(next);
    return a.above == b.above && b.last == a.last + 1 && last.repeats == next.repeats;
  }
  [[nodiscard]] static bool repeats(RankLabel const& last, RankLabel const& next) {
    if (last.ordinal != next.ordinal || last.decimal != next.decimal) return false;
    return next.repeats > last.repeats || next.label.printed == last.label.printed;
  }

  [[nodiscard]] bool answers(OpenCouplet const& couplet, RankLabel const& next, bool strict) const {
    auto const& last = couplet.last;
    if (!couplet.labelled || last.alphabet != next.alphabet || last.sign != next.sign) return false;
    bool const apart = of_its_own_[last.rank()] && of_its_own_[next.rank()];
    if ((strict || apart) && last.rank() != next.rank()) return false;
    if (!last.decimal.empty() || !next.decimal.empty()) {
      return follows(last, next) || repeats(last, next);
    }
    if (counted_[next.rank()] && follows(last, next)) return true;
    bool const letter = last.alphabet != Alphabet::digits && last.ordinal > 0;
    if (letters_count_ && letter) return follows(last, next);
    return repeats(last, next);
  }

  [[nodiscard]] std::optional<std::size_t> rival_by_rank(std::size_t i) const {
    if (open_.empty()) return std::nullopt;
    if (unlabelled(i)) return rival_of_leaf(i);
    if (rank(i).alphabet == Alphabet::dash) return rival_of_dash(i);
    for (bool const strict : {true, false}) {
      if (auto const found = find_open(
              i, [&](OpenCouplet const& couplet) { return answers(couplet, rank(i), strict); })) {
        return found;
      }
    }
    // A couplet cannot stand beneath a lead that has its destination: a letter is missing.
    if (!is_led(i - 1)) return std::nullopt;
    return find_open(i, [&](OpenCouplet const& couplet) {
      return couplet.labelled && couplet.last.rank() == rank(i).rank() &&
             couplet.last.ordinal < rank(i).ordinal && counted_[rank(i).rank()] &&
             decimal_place(couplet.last).above == decimal_place(rank(i)).above;
    });
  }

  // The innermost open couplet that fits; of several, the innermost indented as lead i is.
  template <class Fits>
  [[nodiscard]] std::optional<std::size_t> find_open(std::size_t i, Fits fits) const {
    std::optional<std::size_t> found;
    for (auto depth = open_.size(); depth-- > highest_looked_at();) {
      if (!fits(open_[depth])) continue;
      if (open_[depth].indent == indent(i)) return depth;
      if (!found) found = depth;
    }
    return found;
  }

  // A lead without label stands beneath the lead before, or answers it where that leads somewhere.
  [[nodiscard]] std::optional<std::size_t> rival_of_leaf(std::size_t i) const {
    if (!is_led(i - 1)) return std::nullopt;
    return open_.size() - 1;
  }

  // The innermost open couplet with its indentation, else the innermost that has no answer yet.
  [[nodiscard]] std::optional<std::size_t> rival_of_dash(std::size_t i) const {
    for (auto depth = open_.size(); depth-- > highest_looked_at();) {
      bool const spread = open_.front().indent != open_.back().indent;
      if (spread && open_[depth].indent == indent(i)) return depth;
    }
    for (auto depth = open_.size(); depth-- > highest_looked_at();) {
      if (open_[depth].leads == 1) return depth;
    }
    return open_.size() - 1;
  }

  // --- indentation -----------------------------------------------------------------------------

  // Columns by which rivals may differ: none where the steps are small.
  [[nodiscard]] std::uint32_t tolerance() const {
    std::map<std::uint32_t, std::size_t> levels;
    for (std::size_t i = 0; i < leads_.size(); ++i) ++levels[indent(i)];
    std::uint32_t smallest = 99;
    std::optional<std::uint32_t> before;
    for (auto const& [columns, count] : levels) {
      if (count < 2) continue;
      if (before) smallest = std::min(smallest, columns - *before);
      before = columns;
    }
    return smallest >= 3 ? 1 : 0;
  }

  [[nodiscard]] std::optional<std::size_t> rival_by_indent(std::size_t i) const {
    if (open_.empty()) return std::nullopt;
    auto depth = open_.size();
    while (depth > 0 && open_[depth - 1].indent > indent(i) + tolerance_) --depth;
    if (depth > 0 && open_[depth - 1].indent + tolerance_ >= indent(i)) return depth - 1;
    // Deeper than all that is open above it.
    if (depth == open_.size() && !is_led(i - 1)) return std::nullopt;
    return depth < open_.size() ? depth : depth - 1;
  }

  // --- order -----------------------------------------------------------------------------------

  // Leads begin in several columns.
  [[nodiscard]] bool is_indented() const {
    std::map<std::uint32_t, std::size_t> levels;
    std::size_t most = 0;
    for (std::size_t i = 0; i < leads_.size(); ++i) most = std::max(most, ++levels[indent(i)]);
    return most * 10 < leads_.size() * 9;
  }

  // The word that the lead begins with, without a mark behind it.
  [[nodiscard]] std::string opening(std::size_t i) const {
    constexpr std::size_t kBytes = 60;
    auto const words = words_of(start_of(key_.lines[leads_[i].line].text, kBytes), 1);
    auto word = words.empty() ? std::string_view{} : words.front();
    while (!word.empty() && !is_letter(code_point_before(word, word.size()).value)) {
      word.remove_suffix(code_point_before(word, word.size()).length);
    }
    return fold(word);
  }
  [[nodiscard]] bool begins_like(std::size_t i, OpenCouplet const& couplet) const {
    return openings_[groups_[couplet.group].leads.front()] == openings_[i];
  }

  [[nodiscard]] std::optional<std::size_t> rival_by_order(std::size_t i) const {
    if (open_.empty() || !is_led(i - 1)) return std::nullopt;
    std::optional<std::size_t> alike;  // the innermost couplet that begins with the same word
    for (auto depth = open_.size(); depth-- > highest_looked_at();) {
      bool const same = begins_like(i, open_[depth]);
      if (open_[depth].leads == 1) {
        bool const further = alike && !same;  // the couplet has a third lead
        return further ? alike : depth;
      }
      if (same && !alike) alike = depth;
    }
    return alike.value_or(open_.size() - 1);
  }

  // Nothing but words tells rivals: those of most couplets have to begin with the same word.
  [[nodiscard]] bool rivals_begin_alike() const {
    std::size_t couplets = 0;
    std::size_t alike = 0;
    for (auto const& group : groups_) {
      if (group.leads.size() < 2) continue;
      ++couplets;
      auto const& first = openings_[group.leads.front()];
      bool const same = std::all_of(group.leads.begin(), group.leads.end(),
                                    [&](std::uint32_t lead) { return openings_[lead] == first; });
      if (same) ++alike;
    }
    constexpr std::size_t kFewest = 3;
    return couplets >= kFewest && alike * 5 >= couplets * 3;
  }

  // --- names -----------------------------------------------------------------------------------

  // What the printed labels of the couplet's leads have in common: "A" of A and AA, "1" of 1 and
  // 1'; empty where they have nothing that leads could be told to lead to.
  [[nodiscard]] std::string common_label(OutlineGroup const& group) const {
    std::string common;
    for (auto const lead : group.leads) {
      auto const& one = rank(lead);
      if (one.alphabet == Alphabet::dash && !common.empty()) continue;
      bool const printable = one.alphabet == Alphabet::digits || one.alphabet == Alphabet::upper ||
                             one.alphabet == Alphabet::lower;
      if (!printable || !one.decimal.empty()) return {};
      auto const base =
          one.alphabet == Alphabet::digits ? std::to_string(one.ordinal) : base_name(one.label);
      if (common.empty()) common = base;
      if (common != base) return {};
    }
    return common;
  }

  // One alphabet for all, each label once in a part.
  [[nodiscard]] bool labels_tell_couplets(std::vector<std::string> const& labels) const {
    std::set<std::pair<std::uint32_t, std::string_view>> seen;
    auto const alphabet = rank(groups_.front().leads.front()).alphabet;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      if (labels[g].empty() || rank(groups_[g].leads.front()).alphabet != alphabet) return false;
      if (!seen.insert({groups_[g].part, labels[g]}).second) return false;
    }
    return true;
  }

  Grouping finish() {
    std::vector<std::string> labels;
    labels.reserve(groups_.size());
    for (auto const& group : groups_) labels.push_back(common_label(group));
    grouping_.numbered_here = !labels_tell_couplets(labels);
    std::uint32_t part = 0;
    std::uint32_t number = 0;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
      auto const& group = groups_[g];
      RawCouplet couplet;
      couplet.part = group.part;
      if (group.part != part) number = 0;
      part = group.part;
      ++number;
      couplet.first_member = static_cast<std::uint32_t>(grouping_.members.size());
      couplet.member_count = static_cast<std::uint32_t>(group.leads.size());
      grouping_.members.insert(grouping_.members.end(), group.leads.begin(), group.leads.end());
      auto const& first = rank(group.leads.front());
      couplet.key = grouping_.numbered_here ? kCountedHere | number
                                            : key_of(first.label.family, first.ordinal, {}, 0);
      couplet.label = grouping_.numbered_here ? std::to_string(number) : labels[g];
      grouping_.couplets.push_back(std::move(couplet));
    }
    return std::move(grouping_);
  }

  KeyText const& key_;
  std::vector<RawLead> const& leads_;
  std::vector<Remark> const& remarks_;
  std::vector<ReadLead> const& reads_;
  LeadPlan const& plan_;
  Grouping grouping_;
  std::vector<OutlineGroup> groups_;
  std::vector<OpenCouplet> open_;  // on the way from the start to the lead before
  std::array<bool, RankLabel::kRanks> counted_{};
  std::array<bool, RankLabel::kRanks> of_its_own_{};
  bool letters_count_{false};  // a' and b' are rivals, a and a' are not
  std::uint32_t tolerance_{};
  std::vector<std::string> openings_;  // by lead; for by_order()
};

}  // namespace

Grouping group_by_ranks(KeyText const& key, SortedLines const& sorted,
                        std::vector<ReadLead> const& reads, LeadPlan const& plan, Rivals rivals) {
  return OutlineGrouper{key, sorted, reads, plan}.by_ranks(rivals);
}

Grouping group_by_indentation(KeyText const& key, SortedLines const& sorted,
                              std::vector<ReadLead> const& reads, LeadPlan const& plan) {
  return OutlineGrouper{key, sorted, reads, plan}.by_indentation();
}

std::optional<Grouping> group_by_indentation_and_ends(KeyText const& key, SortedLines const& sorted,
                                                      std::vector<ReadLead> const& reads,
                                                      LeadPlan const& plan) {
  return OutlineGrouper{key, sorted, reads, plan}.by_indentation_and_ends();
}

std::optional<Grouping> group_by_order(KeyText const& key, SortedLines const& sorted,
                                       std::vector<ReadLead> const& reads, LeadPlan const& plan) {
  return OutlineGrouper{key, sorted, reads, plan}.by_order();
}

}  // namespace keydrift::printed
