#include "keydrift/reports/amendment_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <vector>

#include "keydrift/reports/setting.hpp"
#include "keydrift/reports/wording.hpp"

namespace keydrift {
namespace {

using namespace reports;

constexpr std::size_t kLabelWidth = 14;   // cells
constexpr std::size_t kMostNumbers = 12;  // old and new numbers that are told one by one

std::string_view mark_of_act(AmendmentAct act) {
  switch (act) {
    case AmendmentAct::inserted:
    case AmendmentAct::added:
      return "*";
    case AmendmentAct::removed:
      return "†";
    case AmendmentAct::replaced:
    case AmendmentAct::reworded:
      return "§";
    case AmendmentAct::redirected:
      return "‡";
    case AmendmentAct::renamed:
    case AmendmentAct::noted:
    case AmendmentAct::renumbered:
    case AmendmentAct::back_references:
      return "·";
  }
  return "";
}

std::string act_in_words(AmendmentDeed const& deed) {
  bool const whole = deed.before.size() != 1;
  switch (deed.act) {
    case AmendmentAct::replaced:
      return whole ? "replaced" : fmt::format("lead {} replaced", deed.before[0].name);
    case AmendmentAct::inserted:
      return "inserted";
    case AmendmentAct::removed:
      return whole ? "removed" : fmt::format("lead {} removed", deed.before[0].name);
    case AmendmentAct::added:
      return deed.after.size() == 1 ? "a lead added" : "leads added";
    case AmendmentAct::redirected:
      return fmt::format("lead {} leads elsewhere", deed.before[0].name);
    case AmendmentAct::reworded:
      return fmt::format("lead {} reworded", deed.before[0].name);
    case AmendmentAct::renamed:
      return "a taxon renamed";
    case AmendmentAct::noted:
      return "notes";
    case AmendmentAct::renumbered:
      return "another number";
    case AmendmentAct::back_references:
      return "back-reference";
  }
  return {};
}

std::size_t label_width_of(AmendmentDeed const& deed) {
  std::size_t width = 0;
  for (auto const* leads : {&deed.before, &deed.after}) {
    for (auto const& lead : *leads) width = std::max(width, display_width(lead.name));
  }
  return width + 2;
}

LeadSetting setting(LeadAsPrinted const& lead, std::size_t width) {
  return {.label = {{lead.name, Face::plain}},
          .label_width = width,
          .text = {{lead.text, Face::plain}},
          .destination = {{lead.destination, Face::plain}}};
}

class AmendmentSetter {
 public:
  AmendmentSetter(Edition const& edition, std::span<Amendment const> pieces, Amended const& amended,
                  std::span<Finding const> reading, AmendmentTextOptions const& options)
      : edition_{edition},
        pieces_{pieces},
        amended_{amended},
        reading_{reading},
        options_{options},
        page_{options.style} {}

  std::string set() {
    head();
    summary();
    deeds();
    findings("Asked for and not done", amended_.unplaced);
    findings("Remarks", remarks());
    findings("Faults that the amendment makes", amended_.faults_made);
    findings("Faults that the amendment mends", amended_.faults_mended);
    return page_.take();
  }

 private:
  void head() {
    auto const label = short_label(edition_);
    page_.title(label + " amended");
    auto const& title = edition_.front.title;
    page_.item("Edition", title.empty() ? edition_.name : title + " (" + edition_.name + ")", 2,
               kLabelWidth);
    for (auto const& piece : pieces_) {
      auto const& called = piece.piece.front.title;
      page_.item(pieces_.size() == 1 || &piece == &pieces_.front() ? "Amendment" : "",
                 called.empty() ? piece.name : called + " (" + piece.name + ")", 2, kLabelWidth);
    }
    if (!options_.written.empty()) page_.item("Result", options_.written, 2, kLabelWidth);
  }

  [[nodiscard]] std::size_t couplets_with(AmendmentAct act) const {
    std::vector<std::string> labels;
    for (auto const& deed : amended_.deeds) {
      if (deed.act == act) labels.push_back(deed.couplet);
    }
    std::sort(labels.begin(), labels.end());
    return static_cast<std::size_t>(std::unique(labels.begin(), labels.end()) - labels.begin());
  }

  [[nodiscard]] std::size_t refused() const { return amended_.unplaced.size(); }

  void summary() {
    page_.heading("In short");
    page_.paragraph(refused() == 0 ? "Everything that is asked for was done."
                                   : "Not everything that is asked for could be done.",
                    2);
    page_.blank();
    page_.leader("Couplets before and after",
                 fmt::format("{} and {}", grouped(edition_.couplets.size()),
                             grouped(amended_.edition.couplets.size())),
                 2);
    struct Row {
      AmendmentAct act;
      std::string_view words;
    };
    static constexpr std::array kRows{
        Row{AmendmentAct::inserted, "inserted"},
        Row{AmendmentAct::removed, "removed, or a lead of theirs"},
        Row{AmendmentAct::replaced, "replaced, or a lead of theirs"},
        Row{AmendmentAct::added, "with a lead more"},
        Row{AmendmentAct::reworded, "with other words"},
        Row{AmendmentAct::redirected, "leading elsewhere"},
        Row{AmendmentAct::renamed, "with a taxon renamed"},
        Row{AmendmentAct::noted, "with other notes"},
        Row{AmendmentAct::renumbered, "with another number"},
        Row{AmendmentAct::back_references, "with nothing but another back-reference"},
    };
    for (auto const& row : kRows) {
      auto const count = couplets_with(row.act);
      if (count > 0) {
        page_.leader(fmt::format("{} {}", mark_of_act(row.act), row.words), grouped(count), 4);
      }
    }
    page_.leader("Asked for and not done", grouped(refused()), 2);
    page_.leader("Faults of the key mended, made, lasting",
                 fmt::format("{}, {}, {}", amended_.faults_mended.size(),
                             amended_.faults_made.size(), amended_.faults_lasting.size()),
                 2);
    for (auto const& what : amended_.front) {
      bool const first = &what == &amended_.front.front();
      if (first) page_.blank();
      page_.item(first ? "Front matter" : "", sentence(capitalised(what)), 2, kLabelWidth);
    }
    renumbering();
  }

  // "7a is now 8, 8 is now 9 …": runs of the same shift together.
  void renumbering() {
    auto const& numbers = options_.renumbered;
    if (numbers.empty()) return;
    std::vector<std::string> told;
    for (auto const& [before, after] : numbers) {
      if (told.size() == kMostNumbers) {
        told.push_back(
            fmt::format("and so on to {}, now {}", numbers.back().first, numbers.back().second));
        break;
      }
      told.push_back(fmt::format("{} is now {}", before, after));
    }
    page_.blank();
    page_.item("Numbers",
               fmt::format("The couplets were counted anew: {}. Below they have the numbers that "
                           "they had.",
                           fmt::join(told, ", ")),
               2, kLabelWidth);
  }

  // --- couplets --------------------------------------------------------------------------------

  void deeds() {
    if (amended_.deeds.empty()) return;
    page_.heading("What was done");
    page_.columns("", wrap({{"before", Face::plain}}, page_.column_width(), 0, 0, page_.unicode()),
                  wrap({{"now", Face::plain}}, page_.column_width(), 0, 0, page_.unicode()));
    AmendmentDeed const* last = nullptr;
    for (auto const& deed : amended_.deeds) {
      // What merely follows from the rest is told in one line, without parting lines.
      bool const follows =
          deed.act == AmendmentAct::back_references || deed.act == AmendmentAct::renumbered;
      if (last == nullptr || !follows || last->act != deed.act) page_.blank();
      set_deed(deed, last);
      last = &deed;
    }
  }

  void set_deed(AmendmentDeed const& deed, AmendmentDeed const* last) {
    auto text = act_in_words(deed);
    if (!deed.detail.empty()) {
      bool const place = deed.act == AmendmentAct::inserted;
      text += (place ? " " : deed.act == AmendmentAct::redirected ? ", " : ": ") + deed.detail;
    }
    page_.item(mark_of_act(deed.act),
               Words{{"Couplet " + deed.couplet, Face::bold}, {": " + text, Face::plain}}, 0,
               Page::kMargin);
    auto const width = label_width_of(deed);
    auto const rows = std::max(deed.before.size(), deed.after.size());
    if (deed.before.empty() || deed.after.empty()) {
      auto const& leads = deed.before.empty() ? deed.after : deed.before;
      for (auto const& lead : leads) {
        page_.lead(deed.before.empty() ? "*" : "†", setting(lead, width));
      }
    } else {
      for (std::size_t i = 0; i < rows; ++i) set_pair(deed, i, width);
    }
    // Couplets that one sentence renumbers name it once.
    bool const named = last != nullptr && deed.act == AmendmentAct::renumbered &&
                       last->act == deed.act && last->printed == deed.printed;
    if (!named) set_source(deed);
  }

  void set_pair(AmendmentDeed const& deed, std::size_t i, std::size_t width) {
    auto const lines = [&](std::vector<LeadAsPrinted> const& leads) {
      return i < leads.size()
                 ? set_lead(setting(leads[i], width), page_.column_width(), page_.unicode())
                 : std::vector<Line>{};
    };
    std::string_view mark;
    if (i >= deed.before.size()) {
      mark = "*";
    } else if (i >= deed.after.size()) {
      mark = "†";
    } else if (deed.before[i].text != deed.after[i].text) {
      mark = "§";
    } else if (deed.before[i].destination != deed.after[i].destination) {
      mark = "‡";
    }
    page_.columns(mark, lines(deed.before), lines(deed.after));
  }

  void set_source(AmendmentDeed const& deed) {
    bool const follows = deed.act == AmendmentAct::back_references && deed.printed.empty();
    if (follows || deed.piece >= pieces_.size()) return;
    auto const place =
        fmt::format("{}:{}:{}", pieces_[deed.piece].name, deed.place.line, deed.place.column);
    page_.item("by",
               deed.printed.empty() ? place + ": the couplets printed there, by their numbers"
                                    : place + ": " + in_curly_quotes(deed.printed),
               Page::kMargin, 4);
  }

  // --- findings --------------------------------------------------------------------------------

  [[nodiscard]] std::vector<Finding> remarks() const {
    auto all = amended_.remarks;
    all.insert(all.end(), reading_.begin(), reading_.end());
    sort_findings(all);
    return all;
  }

  void findings(std::string_view heading, std::span<Finding const> list) {
    if (list.empty()) return;
    page_.heading(heading);
    for (auto const& finding : list) {
      if (&finding != &list.front()) page_.blank();
      set_finding(page_, finding);
    }
  }

  Edition const& edition_;
  std::span<Amendment const> pieces_;
  Amended const& amended_;
  std::span<Finding const> reading_;
  AmendmentTextOptions const& options_;
  Page page_;
};

}  // namespace

std::string amendment_text(Edition const& edition, std::span<Amendment const> pieces,
                           Amended const& amended, std::span<Finding const> reading,
                           AmendmentTextOptions const& options) {
  return AmendmentSetter{edition, pieces, amended, reading, options}.set();
}

}  // namespace keydrift
