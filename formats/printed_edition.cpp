#include "keydrift/formats/printed_edition.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <string>
#include <utility>

#include "keydrift/formats/printed_authors_behind.hpp"
#include "keydrift/formats/printed_capital_epithets.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_counts_behind.hpp"
#include "keydrift/formats/printed_couplet_index.hpp"
#include "keydrift/formats/printed_footnotes.hpp"
#include "keydrift/formats/printed_goes_on.hpp"
#include "keydrift/formats/printed_group_titles.hpp"
#include "keydrift/formats/printed_label_findings.hpp"
#include "keydrift/formats/printed_misread_genera.hpp"
#include "keydrift/formats/printed_misread_names.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_names.hpp"
#include "keydrift/formats/printed_number_heads.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_title_genus.hpp"
#include "keydrift/formats/printed_unread_leads.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/formats/related_places.hpp"
#include "keydrift/formats/wording.hpp"
#include "keydrift/key/amendment.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kShortestTitleLedTo = 4;  // bytes

class Builder {
 public:
  Builder(KeyText const& key, SortedLines const& sorted, Grouping const& grouping,
          std::vector<ReadLead>&& reads, Edition& edition, std::vector<Finding>& findings)
      : key_{key},
        sorted_{sorted},
        grouping_{grouping},
        reads_{std::move(reads)},
        edition_{edition},
        findings_{findings} {}

  void build() {
    index_couplets();
    title_parts();
    resolve_leads();
    fill_couplets();
    order_taxa();
    place_remarks();
    report_stray_text();
    if (!key_.numbering.exact) report_unread_leads(key_, sorted_, findings_);
  }

 private:
  void index_couplets() {
    home_.resize(reads_.size());
    edition_.couplets.resize(grouping_.couplets.size());
    for (std::uint32_t c = 0; c < grouping_.couplets.size(); ++c) {
      auto const& raw = grouping_.couplets[c];
      index_.add(raw.part, raw.key, CoupletId{c});
      for (std::uint32_t m = 0; m < raw.member_count; ++m) {
        auto const lead = grouping_.members[raw.first_member + m];
        home_[lead] = LeadId{CoupletId{c}, m};
        auto const& label = sorted_.leads[lead].label;
        if (grouping_.layout == Layout::serial && !label.is_dash()) {
          index_.add(raw.part, key_of(label.family, label.number, {}, 0), CoupletId{c});
        }
      }
    }
  }

  // The heading before a part's first lead is its title; of several before the first key, the last
  // that names a key.
  void title_parts() {
    heading_used_.assign(sorted_.remarks.size(), false);
    for (std::size_t p = 0; p < grouping_.parts.size(); ++p) {
      auto const& raw = grouping_.parts[p];
      KeyPart part;
      part.start = home_[raw.first_lead].couplet;
      part.place = reads_[raw.first_lead].lead.place;
      auto heading = raw.heading;
      // "Adults" beside "Larvae": the title above both names neither part.
      bool const told = heading != kNone && grouping_.parts.size() > 1 && is_marked(heading);
      if (p == 0 && !told) {
        for (std::uint32_t r = 0; r < sorted_.remarks.size(); ++r) {
          auto const& remark = sorted_.remarks[r];
          if (remark.lead != kNone) break;
          if (remark.kind == RemarkKind::heading && mentions_key(joined(remark))) heading = r;
        }
      }
      if (heading != kNone) {
        heading_used_[heading] = true;
        part.title = joined(sorted_.remarks[heading]);
        if (auto const title = explicit_key_title(part.title); !title.empty()) {
          part.title = std::string{title};
        }
        part.place = place_of(sorted_.remarks[heading]);
      }
      common_titles_.push_back(in_common_form(part.title));
      edition_.parts.push_back(std::move(part));
    }
  }

  [[nodiscard]] bool is_marked(std::uint32_t remark) const {
    auto const line = sorted_.remarks[remark].pieces.front().line;
    return key_.lines[line].markup.role == LineRole::heading;
  }
  [[nodiscard]] std::string joined(Remark const& remark) const {
    return joined_text(key_, remark.pieces);
  }
  [[nodiscard]] Place place_of(Remark const& remark) const {
    auto const& first = remark.pieces.front();
    return place_in(key_.lines[first.line], first.begin, remark.pieces.back().end);
  }

  // --- destinations ----------------------------------------------------------------------------

  void resolve_leads() {
    std::vector<std::string> titles{edition_.front.title, edition_.front.scope.taxa};
    for (auto const& part : edition_.parts) titles.push_back(part.title);
    add_headings(titles);
    take_capital_epithets(reads_);
    take_counts_behind(reads_);
    take_authors_behind_commas(reads_);
    mend_misread_genera(key_, reads_, findings_);
    mend_misread_names(key_, sorted_, reads_, findings_);
    NameTable names{key_, reads_, titles, passages()};
    if (!key_.numbering.exact) below_ = couplets_below(grouping_, reads_);
    ordered_ = std::any_of(below_.begin(), below_.end(),
                           [](std::uint32_t couplet) { return couplet != kNone; });
    std::uint32_t part_before = 0;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto& read = reads_[i];
      auto const part = grouping_.couplets[home_[i].couplet.index].part;
      if (i == 0 || part != part_before) {
        names.enter_part(titles_over(part), head_over(part), edition_.parts.size() < 2);
      }
      part_before = part;
      switch (read.to.form) {
        case DestinationForm::couplet:
          // "Teilschlüssel 2"
          if (auto const* title = part_of_group(i)) {
            read.lead.destination = ToKey{*title};
          } else {
            resolve_couplet(i);
          }
          break;
        case DestinationForm::key:
          read.lead.destination = ToKey{title_of(read.to.key_name)};
          break;
        case DestinationForm::taxa:
          if (auto const* title = part_of_group(i)) {
            read.lead.destination = ToKey{*title};
            // "subgen." before a name that the title bears with its rank.
            auto& remark = read.lead.taxon_remark;
            auto const first = std::min(remark.find("; "), remark.size());
            if (is_rank_noun(fold(remark.substr(0, first)))) {
              remark.erase(0, first == remark.size() ? first : first + 2);
            }
          } else {
            read.lead.destination = ToTaxa{names.take(read, edition_.taxa)};
            if (name_is_parted_beneath(i)) lead_beneath(i);
          }
          break;
        case DestinationForm::nowhere:
          read.lead.destination = Unresolved{read.lead.destination_printed};
          break;
        case DestinationForm::none:
          resolve_missing(i);
          break;
      }
      auto const& raw = sorted_.leads[i];
      if (raw.misprinted) {
        bool const told = key_.lines[raw.line].told.has_value();
        findings_.push_back(label_misprinted(key_.name, read.lead, raw.label, told));
      }
    }
    names.report(findings_);
  }

  // "3. Wings dark ..... Aus bus" above a couplet set deeper that parts it: no other lead can lead
  // there.
  [[nodiscard]] bool name_is_parted_beneath(std::size_t i) const {
    bool const nested = grouping_.goes_on && grouping_.layout != Layout::serial;
    if (!nested || i + 1 >= reads_.size() || home_[i + 1].ordinal != 0) return false;
    if (grouping_.couplets[home_[i].couplet.index].part !=
        grouping_.couplets[home_[i + 1].couplet.index].part) {
      return false;
    }
    auto const& lines = key_.lines;
    // "A. Cap slimy. — Viscidae." above "* Gills decurrent": its rank tells, not where it is set.
    auto const* taxa = std::get_if<ToTaxa>(&reads_[i].lead.destination);
    bool const group = taxa != nullptr && taxa->taxa.size() == 1 &&
                       words_of(reads_[i].to.taxa.taxa.front().name).size() == 1 &&
                       !reads_[i].to.taxa.taxa.front().genusless;
    if (grouping_.layout == Layout::outline && group) return true;
    return !ordered_ &&
           lines[sorted_.leads[i + 1].line].indent > lines[sorted_.leads[i].line].indent;
  }

  // Goes on with the couplet beneath; the name stays beside it.
  void lead_beneath(std::size_t i) {
    auto& lead = reads_[i].lead;
    lead.destination = ToCouplet{home_[i + 1].couplet};
    lead.taxon_remark = lead.destination_printed;
  }

  // The head of the account in which the part stands, not above the last lead before it.
  [[nodiscard]] std::optional<GroupHead> head_over(std::uint32_t part) const {
    auto const first = grouping_.parts[part].first_lead;
    auto const from = first == 0 ? 0 : sorted_.leads[first - 1].line + 1;
    return group_head_above(key_.lines, sorted_.leads[first].line, from);
  }

  // The headings between the part and the one before, its title last.
  [[nodiscard]] std::vector<std::string> titles_over(std::uint32_t part) const {
    std::vector<std::string> titles;
    auto const first = grouping_.parts[part].first_lead;
    auto const before = first == 0 ? kNone : first - 1;
    for (auto const& remark : sorted_.remarks) {
      if (remark.kind == RemarkKind::heading && remark.lead == before) {
        titles.push_back(joined(remark));
      }
    }
    titles.push_back(edition_.parts[part].title);
    return titles;
  }

  // "Ausella", "AUSACEAE": one word as genera and families have it, and not "Larvae".
  [[nodiscard]] static bool is_group_of_taxa(std::string_view printed) {
    using namespace std::string_view_literals;
    static constexpr std::array kStages{"larvae"sv, "larva"sv,    "pupae"sv,   "pupa"sv,
                                        "imago"sv,  "imagines"sv, "nymphae"sv, "feminae"sv,
                                        "mares"sv,  "algae"sv};
    // "Carnidae (Carna only)"
    auto const word = fold(bare_name(printed.substr(0, printed.find(" ("))));
    return word.find(' ') == std::string::npos && !is_title_word(word) &&
           !is_one_of(kStages, word) && (has_higher_ending(word) || has_strict_latin_ending(word));
  }

  // "bus group", "subg. Aus", where a part of the file has that title.
  [[nodiscard]] std::string const* part_of_group(std::size_t i) const {
    if (edition_.parts.size() < 2) return nullptr;
    auto const& printed = reads_[i].lead.destination_printed;
    auto const wanted = in_common_form(printed);
    bool const group = says_group(wanted);
    if (group || may_be_title(printed, wanted)) {
      if (auto const* title = part_titled(wanted, group)) return title;
    }
    // "subgenus Busella Roe (p. 45)": the title leaves the author out.
    auto const& taxa = reads_[i].to.taxa;
    auto const& rank = taxa.before;
    if (taxa.taxa.size() != 1 || !is_rank_noun(fold(rank))) return nullptr;
    auto const name = in_common_form(rank + " " + taxa.taxa.front().name);
    return says_group(name) ? part_titled(name, true) : nullptr;
  }

  // The title of the part that is called so, or whose title ends so where it speaks of a key.
  [[nodiscard]] std::string const* part_titled(std::string const& wanted, bool group) const {
    for (std::size_t p = 0; p < edition_.parts.size(); ++p) {
      auto const& title = common_titles_[p];
      bool const names_it = group && mentions_key(edition_.parts[p].title);
      if (title == wanted || (names_it && title.ends_with(" " + wanted))) {
        return &edition_.parts[p].title;
      }
    }
    return nullptr;
  }

  // "Vegetative key", word for word; a genus may have a key of its own and is a taxon all the same.
  [[nodiscard]] static bool may_be_title(std::string_view printed, std::string_view wanted) {
    return wanted.size() >= kShortestTitleLedTo && !is_digit(code_point_at(printed, 0).value) &&
           !is_latin_name(printed) && !is_group_of_taxa(printed);
  }

  // Text that may name a genus which leads abbreviate.
  [[nodiscard]] std::vector<std::string> passages() const {
    constexpr std::size_t kMost = 2000;  // of remarks and of leads
    std::vector<std::string> passages;
    for (auto const& remark : sorted_.remarks) {
      if (passages.size() < kMost) passages.push_back(joined(remark));
    }
    for (std::size_t i = 0; i < std::min(reads_.size(), kMost); ++i) {
      passages.push_back(reads_[i].lead.text);
    }
    return passages;
  }

  [[nodiscard]] static bool names_genus(std::string const& title, int weight) {
    auto const genera = genera_in_title(title);
    return std::any_of(genera.begin(), genera.end(),
                       [weight](TitleGenus const& genus) { return genus.weight >= weight; });
  }

  // A head that is hardly more than a name, or has a genus that leads abbreviate.
  [[nodiscard]] static bool may_name_genus(std::string const& head,
                                           std::set<std::string> const& initials) {
    constexpr std::size_t kFewWords = 4;
    if (words_of(head).size() <= kFewWords) return true;
    auto const genera = genera_in_title(head);
    return std::any_of(genera.begin(), genera.end(), [&initials](TitleGenus const& genus) {
      return initials.contains(genus.name.substr(0, code_point_at(genus.name, 0).length));
    });
  }

  // Headings and running heads name the genus as well.
  void add_headings(std::vector<std::string>& titles) const {
    constexpr std::size_t kTitleBytes = 200;
    constexpr int kSureGenus = 4;  // weight of a genus in a title
    for (auto const& remark : sorted_.remarks) {
      bool const before_key = remark.lead == kNone;
      if (remark.kind != RemarkKind::heading && !before_key) continue;
      titles.emplace_back(start_of(joined(remark), kTitleBytes));
    }
    // They name it less surely ("HANDBOOK OF MARSHES 38"): only where nothing else does.
    bool const told = std::any_of(titles.begin(), titles.end(), [](std::string const& title) {
      return names_genus(title, kSureGenus);
    });
    if (told) return;
    auto const initials = initials_of(reads_);
    // One account a line.
    for (std::size_t i = 0; i < std::min(sorted_.accounts.size(), key_.lines.size()); ++i) {
      if (sorted_.accounts[i].kind == LineKind::running_head) {
        auto head = squeeze(key_.lines[i].text);
        if (may_name_genus(head, initials)) titles.push_back(std::move(head));
      }
    }
  }

  // The part whose couplets lead i speaks of: its own, unless "B1" names another's letter.
  [[nodiscard]] std::uint32_t part_led_to(std::size_t i) const {
    auto const own = grouping_.couplets[home_[i].couplet.index].part;
    auto const letter = reads_[i].to.number.empty() ? '\0' : reads_[i].to.number.front();
    if (!key_.numbering.prefixed || letter < 'A' || letter > 'Z') return own;
    for (std::uint32_t part = 0; part < grouping_.parts.size(); ++part) {
      if (letter_of_part(part) == letter) return part;
    }
    return own;
  }
  // The letter before the numbers of the part: "A" of "Step A1"; none where they bear none.
  [[nodiscard]] char letter_of_part(std::uint32_t part) const {
    constexpr std::size_t kLinesAbove = 3;  // the number stands above its first lead
    std::size_t line = sorted_.leads[grouping_.parts[part].first_lead].line;
    for (std::size_t above = 0; above <= kLinesAbove && above <= line; ++above) {
      auto const text = key_.lines[line - above].text;
      auto const at = behind_number_word(text);
      if (at == 0 || at >= text.size()) continue;
      return text[at] >= 'A' && text[at] <= 'Z' ? text[at] : '\0';
    }
    return '\0';
  }

  void resolve_couplet(std::size_t i) {
    auto& read = reads_[i];
    auto const part = part_led_to(i);
    auto found = index_.find(part, read.to.couplet);
    // What is missing from a fragment is in the rest of the key.
    if (!found && key_.numbering.extent == Extent::whole) {
      // A number with a lead's letter or mark: "7a" where 7a is a lead of couplet 7.
      found = index_.find(part, letter_key(read.to.couplet));
      if (!found) found = index_.find(part, number_key(read.to.couplet));
      auto const letter = static_cast<char>((read.to.couplet >> 8U) & 0xFFU);
      bool const first_lead = letter == 'a' || letter == 'A';
      if (found && !first_lead) report_points_at_lead(i, *found);
    }
    if (found) {
      read.lead.destination = ToCouplet{*found};
    } else {
      read.lead.destination = Unresolved{read.to.number};
    }
  }

  void resolve_missing(std::size_t i) {
    auto& lead = reads_[i].lead;
    lead.destination = Unresolved{};
    if (!below_.empty() && below_[i] != kNone) {
      lead.destination = ToCouplet{CoupletId{below_[i]}};
      return;
    }
    auto const part = grouping_.couplets[home_[i].couplet.index].part;
    bool const next_follows =
        i + 1 < reads_.size() && part == grouping_.couplets[home_[i + 1].couplet.index].part;
    bool const goes_on = grouping_.goes_on || grouping_.parts[part].goes_on;
    // A lead that leads nowhere, or whose leaders do, stays so: proof_structure reports it.
    if (goes_on && !are_leaders(reads_[i].leaders) && next_follows && home_[i + 1].ordinal == 0) {
      lead.destination = ToCouplet{home_[i + 1].couplet};
    }
  }

  // The full title of the part that a pointer names, else the pointer as printed.
  [[nodiscard]] std::string title_of(std::string const& pointer) const {
    auto const wanted = fold(pointer);
    std::string const* found = nullptr;
    for (auto const& part : edition_.parts) {
      auto const title = fold(part.title);
      bool const begins = title.substr(0, wanted.size()) == wanted &&
                          !is_letter(code_point_at(title, wanted.size()).value) &&
                          !is_digit(code_point_at(title, wanted.size()).value);
      if (!begins) continue;
      if (found != nullptr) return pointer;
      found = &part.title;
    }
    return found == nullptr ? pointer : *found;
  }

  // --- couplets --------------------------------------------------------------------------------

  void fill_couplets() {
    for (std::uint32_t c = 0; c < grouping_.couplets.size(); ++c) {
      auto const& raw = grouping_.couplets[c];
      auto& couplet = edition_.couplets[c];
      couplet.label = raw.label;
      couplet.leads.reserve(raw.member_count);
      for (std::uint32_t m = 0; m < raw.member_count; ++m) {
        auto const lead = grouping_.members[raw.first_member + m];
        if (grouping_.layout != Layout::serial) add_back_references(couplet, lead);
        couplet.leads.push_back(std::move(reads_[lead].lead));
      }
      couplet.place = couplet.leads.front().place;
      couplet.place.end = std::max(couplet.place.end, couplet.leads.back().place.end);
    }
  }

  // In order of first naming, couplet by couplet: rivals that stand far apart in print change it.
  void order_taxa() {
    std::vector<std::uint32_t> now(edition_.taxa.size(), kNone);
    std::vector<Taxon> ordered;
    ordered.reserve(edition_.taxa.size());
    for (auto& couplet : edition_.couplets) {
      for (auto& lead : couplet.leads) {
        auto* to = std::get_if<ToTaxa>(&lead.destination);
        if (to == nullptr) continue;
        for (auto& taxon : to->taxa) {
          auto& index = now[taxon.index];
          if (index == kNone) {
            index = static_cast<std::uint32_t>(ordered.size());
            ordered.push_back(std::move(edition_.taxa[taxon.index]));
          }
          taxon.index = index;
        }
      }
    }
    edition_.taxa = std::move(ordered);
  }

  void add_back_references(Couplet& couplet, std::uint32_t lead) const {
    auto const& label = sorted_.leads[lead].label;
    if (label.back.empty()) return;
    auto const references = read_references(label.back);
    if (!references) return;
    for (auto const& reference : *references) {
      bool const known =
          std::any_of(couplet.back_references.begin(), couplet.back_references.end(),
                      [&](BackReference const& one) { return one.label == reference.printed; });
      if (known) continue;
      auto const begin = static_cast<std::size_t>(reference.printed.data() - key_.text.data());
      couplet.back_references.push_back(
          {std::string{reference.printed}, place_in(key_.lines[sorted_.leads[lead].line], begin,
                                                    begin + reference.printed.size())});
    }
  }

  // --- notes -----------------------------------------------------------------------------------

  void place_remarks() {
    for (std::size_t r = 0; r < sorted_.remarks.size(); ++r) {
      auto const& remark = sorted_.remarks[r];
      if (heading_used_[r]) continue;
      auto text = joined(remark);
      switch (remark.kind) {
        case RemarkKind::lead_note:
          edition_[home_[remark.lead]].notes.push_back(without_note_word(std::move(text)));
          break;
        case RemarkKind::couplet_note:
          edition_[home_[remark.lead].couplet].notes.push_back(std::move(text));
          break;
        case RemarkKind::prose:
          if (has_gone_to_its_lead(remark, text)) break;
          // What amending leaves behind the last couplet is where it belongs.
          if (remark.lead != kNone && !text.starts_with(kAmendedNote)) {
            stray_.push_back(place_of(remark));
          }
          [[fallthrough]];
        case RemarkKind::heading:
        case RemarkKind::caption:
        case RemarkKind::footnote:
          if (remark.kind == RemarkKind::footnote && has_gone_to_its_lead(remark, text)) break;
          edition_.notes.push_back({std::move(text), place_of(remark)});
          break;
      }
    }
  }

  // "* Best seen under water." of "Scales cycloid*", the only lead with that sign since the last
  // footnote of the same one.
  [[nodiscard]] bool has_gone_to_its_lead(Remark const& remark, std::string_view text) {
    auto const sign = sign_of_footnote(text);
    if (sign.empty() || remark.lead == kNone || key_.numbering.exact) return false;
    auto& from = footnotes_from_[std::string{sign}];
    std::vector<LeadId> leads;
    for (; from <= remark.lead; ++from) leads.push_back(home_[from]);
    return put_footnote_to_lead(edition_, leads, text);
  }

  // Text among the leads that belongs to none of them: one finding, the other places with it.
  void report_stray_text() {
    if (stray_.empty()) return;
    auto const& first = stray_.front();
    auto const text = squeeze(key_.text.substr(first.begin, first.end - first.begin));
    std::string message = "this text belongs to no lead; it was kept as a note of the edition";
    if (stray_.size() > 1) {
      message += ", and so was text at " +
                 tables::counted(stray_.size() - 1, "further place", "further places");
    }
    add_finding("stray-text", Severity::information, first, std::string{start_of(text, 80)},
                std::move(message), "begin it with \"Note:\" beneath a lead if it belongs there");
    for (std::size_t i = 1; i < std::min(stray_.size(), kMaximumRelatedPlaces + 1); ++i) {
      findings_.back().related.push_back({stray_[i], "belongs to no lead either"});
    }
  }

  // "Note: fruit needed" is the note "fruit needed"; "N.B." and the like stay.
  [[nodiscard]] static std::string without_note_word(std::string text) {
    if (fold(start_of(text, 5)) != "note:") return text;
    return std::string{trim(std::string_view{text}.substr(5))};
  }

  // --- findings --------------------------------------------------------------------------------

  void report_points_at_lead(std::size_t i, CoupletId target) {
    auto const& lead = reads_[i].lead;
    auto const& label = grouping_.couplets[target.index].label;
    add_finding(
        "points-at-lead", Severity::warning, lead.destination_place, lead.destination_printed,
        "\"" + lead.destination_printed + "\" is no couplet; it was taken for couplet " + label,
        "print the couplet's number alone, or number the couplet so");
  }

  void add_finding(std::string code, Severity severity, Place const& place, std::string printed,
                   std::string message, std::string remedy) {
    findings_.push_back({.code = std::move(code),
                         .severity = severity,
                         .file = std::string{key_.name},
                         .place = place,
                         .printed = std::move(printed),
                         .message = std::move(message),
                         .remedy = std::move(remedy),
                         .related = {}});
  }

  KeyText const& key_;
  SortedLines const& sorted_;
  Grouping const& grouping_;
  std::vector<ReadLead> reads_;
  Edition& edition_;
  std::vector<Finding>& findings_;
  CoupletIndex index_;
  std::vector<LeadId> home_;  // lead index -> its place in the edition
  std::vector<bool> heading_used_;
  std::vector<std::string> common_titles_;  // of the parts, as leads may name them
  std::vector<std::uint32_t> below_;        // lead index -> the couplet that it goes on with
  bool ordered_{false};       // couplets follow in order: they answer open leads alone
  std::vector<Place> stray_;  // text among the leads that belongs to none
  std::map<std::string, std::uint32_t, std::less<>> footnotes_from_;  // first lead, by sign
};

}  // namespace

void build_edition(KeyText const& key, SortedLines const& sorted, Grouping const& grouping,
                   std::vector<ReadLead>&& reads, Edition& edition,
                   std::vector<Finding>& findings) {
  Builder{key, sorted, grouping, std::move(reads), edition, findings}.build();
}

}  // namespace keydrift::printed
