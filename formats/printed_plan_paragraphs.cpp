// Where leads begin when only the first of a couplet bears a label and each is a paragraph between
// blank lines, ends in a line that holds nothing but its destination, or begins with a line that is
// set in.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <set>
#include <unordered_set>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_destination.hpp"
#include "keydrift/formats/printed_end_habits.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_page_edges.hpp"
#include "keydrift/formats/printed_plan.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_taxa.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kFewestParagraphCouplets = 3;
constexpr std::size_t kMostUnlabelledRivals = 3;  // without a label, of a couplet

// Lines [first, last].
struct ParagraphLines {
  std::size_t first{};
  std::size_t last{};
};

class ParagraphPlanner {
 public:
  ParagraphPlanner(std::vector<SourceLine> const& lines, LeadBorders borders)
      : lines_{lines},
        borders_{borders},
        genera_{genera_of_numbered_species(lines)},
        in_capitals_{is_set_in_capitals(lines)} {}

  std::optional<NumberedPlan> plan() && {
    if (borders_ == LeadBorders::indents && !find_indent()) return std::nullopt;
    find_paragraphs();
    find_labelled();
    if (labelled_.size() < kFewestParagraphCouplets) return std::nullopt;
    NumberedPlan found;
    found.numbering = std::move(numbering_);
    auto& plan = found.plan;
    plan.start_at.assign(lines_.size(), LeadPlan::kNoStart);
    std::size_t answered = 0;
    for (std::size_t k = 0; k < labelled_.size(); ++k) {
      auto const begin = labelled_[k];
      bool const last = k + 1 == labelled_.size();
      auto const end = last ? paragraphs_.size() : labelled_[k + 1];
      LeadStart start;
      start.rank.label = labels_[k];
      start.misread = misread_.contains(begin);
      add(plan, start, begin);
      std::size_t rivals = 0;
      for (auto p = begin + 1; p < end && rivals < kMostUnlabelledRivals; ++p) {
        if (is_rival(p, found.numbering)) {
          add_rival(plan, p);
          ++rivals;
        }
        if (last && rivals > 0) break;  // what follows stands behind the key
      }
      // "… a little paler S", "… into a beak busa Roe": one paragraph where the rival must stand.
      bool const lone = rivals == 0 && !last && end == begin + 2 && begins_like_lead(begin + 1);
      if (lone) add_rival(plan, begin + 1);
      if (rivals > 0 || (lone && !is_sentence(begin + 1))) ++answered;
    }
    if (answered * 4 < labelled_.size() * 3) return std::nullopt;
    return found;
  }

 private:
  [[nodiscard]] std::string_view text_of(std::size_t paragraph) const {
    return lines_[paragraphs_[paragraph].first].text;
  }

  void add(LeadPlan& plan, LeadStart& start, std::size_t paragraph) const {
    start.line = static_cast<std::uint32_t>(paragraphs_[paragraph].first);
    plan.start_at[start.line] = static_cast<std::uint32_t>(plan.starts.size());
    plan.starts.push_back(start);
  }

  void add_rival(LeadPlan& plan, std::size_t paragraph) const {
    LeadStart rival;
    rival.rank.alphabet = Alphabet::dash;
    rival.rank.label.family = LabelFamily::dash;
    rival.unlabelled = true;
    add(plan, rival, paragraph);
  }

  // How far most labelled lines are set in, if the lines that go on are set in less.
  [[nodiscard]] bool find_indent() {
    std::map<std::uint32_t, std::size_t> labelled;
    std::map<std::uint32_t, std::size_t> others;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (!lines_[i].text.empty()) ++(begins_labelled(i) ? labelled : others)[lines_[i].indent];
    }
    auto const fewer = [](auto const& a, auto const& b) { return a.second < b.second; };
    auto const usual = std::max_element(labelled.begin(), labelled.end(), fewer);
    auto const rest = std::max_element(others.begin(), others.end(), fewer);
    if (usual == labelled.end() || rest == others.end()) return false;
    indent_ = usual->first;
    return usual->second >= kFewestParagraphCouplets && rest->first < indent_;
  }

  // Those that are no page's head or foot: "518" / "Marsh Studies" / "Vol. 11, no. 3".
  void find_paragraphs() {
    for (std::size_t i = 0; i < lines_.size();) {
      if (lines_[i].text.empty()) {
        ++i;
        continue;
      }
      ParagraphLines paragraph{i, i};
      bool furniture = false;
      bool more = true;
      for (; more && i < lines_.size() && !lines_[i].text.empty(); ++i) {
        paragraph.last = i;
        furniture = furniture || (!lines_[i].told && is_page_furniture(lines_[i].text));
        bool const ends = borders_ == LeadBorders::ends && i > paragraph.first && ends_alone(i);
        bool const set_in = borders_ == LeadBorders::indents && i + 1 < lines_.size() &&
                            lines_[i + 1].indent == indent_ && indent_ > 0;
        more = !ends && !set_in && !begins_labelled(i + 1);
      }
      if (!furniture || ends_in_number_alone(paragraph)) paragraphs_.push_back(paragraph);
    }
  }
  // "busa Roe" or "5" on a line of its own.
  [[nodiscard]] bool ends_alone(std::size_t i) const {
    auto const text = lines_[i].text;
    return is_number_only(text) || points_in_words(text) || is_latin_name(text) ||
           is_genusless_name(text) || is_bare_epithet(text) || is_numbered_species(text) ||
           is_genusless_name(without_mark_of_new(text));
  }
  // "3. A. busa", "3. Ausella busa Roe"; without an author where other lines name the genus so.
  [[nodiscard]] bool is_numbered_species(std::string_view text) const {
    return is_numbered_name(text) || is_numbered_name_in_full(text) ||
           genera_.contains(genus_of_numbered_species(text));
  }
  [[nodiscard]] bool begins_labelled(std::size_t i) const {
    if (i >= lines_.size()) return false;
    auto const text = lines_[i].text;
    if (lines_[i].told) return true;
    if (is_numbered_species(text)) return false;
    auto const label = read_label(text);
    return label && label->family == LabelFamily::digits &&
           starts_with_upper(text.substr(label->text_at));
  }
  // "shorter" / "11": the number ends the lead.
  [[nodiscard]] bool ends_in_number_alone(ParagraphLines const& paragraph) const {
    for (auto i = paragraph.first; i < paragraph.last; ++i) {
      if (is_page_furniture(lines_[i].text)) return false;
    }
    return paragraph.first < paragraph.last && is_number_only(lines_[paragraph.last].text);
  }

  // The paragraphs whose labels count on from the first that others count on from.
  void find_labelled() {
    for (std::size_t p = 0; p < paragraphs_.size(); ++p) {
      auto const& told = lines_[paragraphs_[p].first].told;
      auto label = told ? told : read_label(text_of(p));
      bool misread = false;
      // "I1. Wings", "7, Wings"
      bool const due = !labelled_.empty() && !(label && label->number == next_number());
      if (due) {
        auto const damaged = read_misprinted_label(text_of(p), next_number(), false);
        misread = damaged && damaged->text_at < text_of(p).size() &&
                  starts_with_upper(text_of(p).substr(damaged->text_at));
        if (misread) label = damaged;
      }
      bool const counts = label && label->family == LabelFamily::digits && !label->decimal &&
                          label->letter.empty() && (told || label->text_at < text_of(p).size()) &&
                          (told || label->end != LabelEnd::none ||
                           starts_with_upper(text_of(p).substr(label->text_at)));
      if (!counts || (!told && is_numbered_species(text_of(p)))) continue;
      bool const first = labelled_.empty() || (labelled_.size() == 1 && label->number <= 1);
      if (first) {
        labelled_.assign(1, p);
        labels_.assign(1, *label);
        numbering_.numbers.assign(1, label->number);
      } else if (label->number == next_number()) {
        labelled_.push_back(p);
        labels_.push_back(*label);
        numbering_.numbers.push_back(label->number);
        if (misread) misread_.insert(p);
      }
    }
  }

  [[nodiscard]] std::uint32_t next_number() const { return numbering_.numbers.back() + 1; }

  [[nodiscard]] bool begins_like_lead(std::size_t p) const {
    auto const begins = text_of(p);
    if (!is_upper(code_point_at(begins, 0).value) || names_a_key(begins)) return false;
    bool const one_line = paragraphs_[p].first == paragraphs_[p].last;
    if (one_line && !in_capitals_ && is_head_in_capitals(begins)) return false;
    return !starts_note(begins) && !starts_caption(begins) && !starts_footnote(begins);
  }

  [[nodiscard]] bool is_sentence(std::size_t p) const {
    return lines_[paragraphs_[p].last].text.ends_with('.');
  }

  // Words that a destination ends.
  [[nodiscard]] bool is_rival(std::size_t p, Numbering const& numbering) const {
    if (!begins_like_lead(p)) return false;
    auto const& paragraph = paragraphs_[p];
    auto const ends = lines_[paragraph.last].text;
    bool const own_line = paragraph.last > paragraph.first;
    if (own_line && ends_alone(paragraph.last)) return true;
    auto const split = split_at_leader(ends, numbering);
    if (split.kind != LeaderKind::none && split.destination_begin < ends.size()) return true;
    return trailing_reference(ends, &numbering).has_value() || trailing_name(ends).has_value() ||
           loose_name(ends).has_value();
  }

  std::vector<SourceLine> const& lines_;
  LeadBorders borders_;
  std::unordered_set<std::string_view> genera_;  // of numbered species
  bool in_capitals_{false};
  std::vector<ParagraphLines> paragraphs_;
  std::vector<std::size_t> labelled_;  // paragraphs that begin with couplets' numbers
  std::vector<Label> labels_;          // of these, as printed or as put right
  std::set<std::size_t> misread_;      // paragraphs whose numbers were put right
  Numbering numbering_;                // of these
  std::uint32_t indent_{};             // of lines that begin leads, where these are set in
};

}  // namespace

std::optional<NumberedPlan> plan_by_paragraphs(std::vector<SourceLine> const& lines,
                                               LeadBorders borders) {
  return ParagraphPlanner{lines, borders}.plan();
}

}  // namespace keydrift::printed
