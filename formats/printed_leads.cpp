#include "keydrift/formats/printed_leads.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "keydrift/formats/printed_account_leaves.hpp"
#include "keydrift/formats/printed_before_names.hpp"
#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_common_ends.hpp"
#include "keydrift/formats/printed_common_names.hpp"
#include "keydrift/formats/printed_cut.hpp"
#include "keydrift/formats/printed_genera_for_authors.hpp"
#include "keydrift/formats/printed_genus_ends.hpp"
#include "keydrift/formats/printed_habitats_behind.hpp"
#include "keydrift/formats/printed_joins.hpp"
#include "keydrift/formats/printed_key_pointers.hpp"
#include "keydrift/formats/printed_known_names.hpp"
#include "keydrift/formats/printed_leader_remains.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_names_before_pages.hpp"
#include "keydrift/formats/printed_names_like_others.hpp"
#include "keydrift/formats/printed_notes_behind.hpp"
#include "keydrift/formats/printed_own_lines.hpp"
#include "keydrift/formats/printed_paged_ends.hpp"
#include "keydrift/formats/printed_species_by_number.hpp"
#include "keydrift/formats/printed_species_number.hpp"
#include "keydrift/formats/printed_subspecies_ends.hpp"
#include "keydrift/formats/printed_synonym_ends.hpp"
#include "keydrift/formats/printed_target.hpp"
#include "keydrift/formats/printed_vernacular.hpp"
#include "keydrift/formats/printed_words_before_epithets.hpp"

namespace keydrift::printed {
namespace {

using namespace std::string_view_literals;

class LeadReader {
 public:
  LeadReader(KeyText const& key, SortedLines& sorted, std::vector<Finding>& findings)
      : key_{key},
        sorted_{sorted},
        findings_{findings},
        cutter_{key, sorted, findings},
        genus_authors_{key.lines, key.numbering} {}

  std::vector<ReadLead> read() && {
    reads_.resize(sorted_.leads.size());
    for (std::size_t i = 0; i < reads_.size(); ++i) read_led(i);
    if (key_.numbering.exact || !sorted_.names.empty()) return std::move(reads_);
    read_own_lines();
    // "Go to 5" is no leader that names would have as well, nor are the dots before it: "Wings
    // long. Small borer (Ausella busa)".
    std::size_t led = 0;
    std::size_t pointed = 0;
    for (auto const& read : reads_) {
      bool const words =
          read.leaders == LeaderKind::words || points_in_words(read.lead.destination_printed);
      if (words) ++pointed;
      if (read.leaders != LeaderKind::none && !words) ++led;
    }
    usually_led_ = led * 2 >= reads_.size() - pointed && (led > 0 || pointed == 0);
    collect_known();
    // "2(1)." and "2'(1).": the bracket names where both come from, and no rival.
    auto const backed = static_cast<std::size_t>(
        std::count_if(sorted_.leads.begin(), sorted_.leads.end(), [](RawLead const& lead) {
          return !lead.label.back.empty() && lead.label.marks == 0 && lead.label.letter.empty();
        }));
    nested_ = couplets_stand_beneath();
    paired_by_label_ = backed * 10 >= reads_.size() * 9;
    numbers_are_bare_ = do_numbers_lead_on();
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      if (reads_[i].leaders == LeaderKind::none) read_unled(i);
    }
    part_pages();
    part_lists();
    give_words_back(key_, cutter_, reads_);
    take_names_like_others();
    take_species_of_known_genera();
    give_words_back(key_, cutter_, reads_);  // to those that were read by the others
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      if (is_open(reads_[i]) && part_note_behind_name(key_, sorted_, i)) read_unled(i);
    }
    part_authors_from_genera();
    take_species_by_number(key_, sorted_, reads_, findings_);
    take_names_before_pages(key_, cutter_, reads_);
    take_paged_ends(cutter_, reads_);
    take_common_names_at_ends(cutter_, reads_);
    for (std::size_t i = 0; i < reads_.size(); ++i) cutter_.add_further_taxa(reads_[i], i);
    settle_species_numbers(sorted_, cutter_, reads_);
    drop_signs_before_ends(cutter_, reads_);
    take_subspecies_at_ends(cutter_, reads_);
    take_names_before_synonyms(cutter_, reads_);
    take_names_behind_common_ones(reads_);
    take_genera_for_authors(cutter_, reads_);
    part_habitats_from_authors(reads_);
    drop_leader_remains(reads_);
    return std::move(reads_);
  }

 private:
  void finish(std::size_t i, JoinedText const& joined, std::size_t words_end,
              std::size_t destination_begin) {
    cutter_.cut(reads_[i], joined, words_end, destination_begin);
  }

  // Numbers on lines of their own to which other leads lead may be those of pages.
  void part_pages() {
    std::unordered_map<LabelKey, std::size_t> led;
    for (auto const& read : reads_) {
      if (read.to.form == DestinationForm::couplet) ++led[read.to.couplet];
    }
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto& read = reads_[i];
      if (read.to.form != DestinationForm::couplet || led[read.to.couplet] < 2) continue;
      if (!part_page_behind_name(key_, sorted_, i)) continue;
      read.leaders = LeaderKind::none;
      auto const joined = cutter_.join(i);
      auto const size = trim_right(joined.raw).size();
      finish(i, joined, size, size);
      read_unled(i);
    }
  }

  // The lead's words and destination where leaders part them, or a line of its own.
  void read_led(std::size_t i) {
    auto const& raw = sorted_.leads[i];
    auto& read = reads_[i];
    auto const& line = key_.lines[raw.line];
    read.lead.label = squeeze(raw.label.printed);
    auto const last = sorted_.pieces[raw.first_piece + raw.piece_count - 1];
    read.lead.place = place_in(line, line.begin, std::max(last.end, line.begin));
    auto const joined = cutter_.join(i);
    if (auto border = marked_border(raw, joined)) {
      read.leaders = LeaderKind::cell;
      auto words = trim_right(std::string_view{joined.raw}.substr(0, *border));
      if (auto const number = number_behind_dash(words); number > 0) {
        border = number;
        words = trim_right(words.substr(0, number));
      }
      if (words.ends_with(" =")) words = trim_right(words.substr(0, words.size() - 1));
      auto const dots = split_at_leader(words, key_.numbering);
      bool const led = dots.kind != LeaderKind::none && dots.destination_begin == words.size();
      cutter_.cut(read, joined, led ? dots.words_end : without_last_dash(words).size(),
                  behind_dots_and_blanks(joined.raw, *border), marked_end(raw, joined));
      return;
    }
    auto const split = split_at_leader(joined.raw, key_.numbering);
    if (!sorted_.names.empty()) return read_above_accounts(i, joined, split);
    if (split.kind == LeaderKind::gap && names_in_common(joined, split.destination_begin)) {
      auto const own = joined.spans.back().raw_begin;
      read.leaders = split.kind;
      finish(i, joined, trim_right(std::string_view{joined.raw}.substr(0, own)).size(), own);
      return;
    }
    if (split.kind != LeaderKind::none) {
      read.leaders = split.kind;
      finish(i, joined, split.words_end, split.destination_begin);
      return;
    }
    if (key_.numbering.exact) {  // no leaders, no destination
      finish(i, joined, joined.raw.size(), joined.raw.size());
      return;
    }
    if (auto const found = trailing_reference(joined.raw, &key_.numbering);
        found && found->pointed) {
      read.leaders = LeaderKind::words;
      finish(i, joined, found->words_end, found->destination_begin);
    }
  }

  // In an outline of accounts: the lead leads to those beneath it, to what stands behind its
  // leaders, or to the couplet beneath it.
  void read_above_accounts(std::size_t i, JoinedText const& joined, TailSplit const& split) {
    auto& read = reads_[i];
    auto const beneath = [](NameBeneath const& name, std::size_t lead) { return name.lead < lead; };
    auto name = std::lower_bound(sorted_.names.begin(), sorted_.names.end(), i, beneath);
    bool const named = name != sorted_.names.end() && name->lead == i;
    // "furze ...... 9. busa, Roe" above the account of the genus's first species.
    auto const ends = [&] {
      auto const end = std::string_view{joined.raw}.substr(split.destination_begin);
      return is_numbered_epithet(end) || is_numbered_name(end) || is_latin_name(end);
    };
    if (split.kind == LeaderKind::dots && (!named || ends())) {
      read.leaders = split.kind;
      return finish(i, joined, split.words_end, split.destination_begin);
    }
    // "… spores à verrues / basses A. busa Roe" above the account of the first species.
    auto const own = named ? authored_name_at_end(joined.raw) : std::nullopt;
    if (own && *own > 0) {
      read.leaders = LeaderKind::blank;
      auto const words = trim_right(std::string_view{joined.raw}.substr(0, *own));
      return finish(i, joined, words.size(), *own);
    }
    auto const size = trim_right(joined.raw).size();
    finish(i, joined, size, size);
    if (!named) return;
    read.leaders = LeaderKind::gap;
    auto const& first = name->name;
    read.lead.destination_place = place_in(key_.lines[first.line], first.begin, first.end);
    read.to.form = DestinationForm::taxa;
    for (; name != sorted_.names.end() && name->lead == i; ++name) {
      auto const printed =
          squeeze(key_.text.substr(name->name.begin, name->name.end - name->name.begin));
      auto& shown = read.lead.destination_printed;
      shown += (shown.empty() ? "" : ", ") + printed;
      read.to.taxa.taxa.push_back(read_account_name(printed));
    }
  }

  // ".Ausella busa, p. 466": leaders went over the end of the line.
  [[nodiscard]] static std::size_t behind_dots_and_blanks(std::string_view text, std::size_t at) {
    at = skip_blanks(text, at);
    auto const name = text.find_first_not_of(". ", at);
    bool const dots = name != std::string_view::npos && name > at && text[at] == '.';
    return dots && is_letter(code_point_at(text, name).value) ? name : at;
  }

  // "… reddish ..... A." above "busa Roe": the leaders lead to the genus.
  [[nodiscard]] static bool ends_in_led_genus(std::string_view above) {
    above = trim_right(above);
    auto const genus = last_word_begin(above);
    return is_abbreviated(above.substr(genus)) &&
           trim_right(above.substr(0, genus)).ends_with("..");
  }

  // Where markup says that the destination begins, in the joined text.
  [[nodiscard]] std::optional<std::size_t> marked_border(RawLead const& raw,
                                                         JoinedText const& joined) const {
    if (raw.destination_told) {
      auto const begin = joined.spans.back().raw_begin;
      if (!ends_in_led_genus(std::string_view{joined.raw}.substr(0, begin))) return begin;
      return std::nullopt;
    }
    auto const place = place_in_last_line(joined, last_markup(raw).destination_begin);
    if (place || raw.piece_count < 2 || joined.spans.size() < 2) return place;
    // "… Busa;" / "ROE.", told to go on
    auto const last = raw.first_piece + raw.piece_count - 1;
    auto const begin = key_.lines[sorted_.pieces[last - 1].line].markup.destination_begin;
    auto const& above = joined.spans[joined.spans.size() - 2];
    bool const goes_on = key_.lines[sorted_.pieces[last].line].goes_on;
    if (!goes_on || begin == kNotTold || begin < above.source_begin) return std::nullopt;
    return std::min(above.raw_begin + (begin - above.source_begin), joined.raw.size());
  }
  [[nodiscard]] std::size_t marked_end(RawLead const& raw, JoinedText const& joined) const {
    return place_in_last_line(joined, last_markup(raw).destination_end).value_or(joined.raw.size());
  }
  [[nodiscard]] LineMarkup const& last_markup(RawLead const& raw) const {
    return key_.lines[sorted_.pieces[raw.first_piece + raw.piece_count - 1].line].markup;
  }
  // Byte `at` of the decoded text as one of the joined text, if it stands in the lead's last line.
  [[nodiscard]] static std::optional<std::size_t> place_in_last_line(JoinedText const& joined,
                                                                     std::size_t at) {
    auto const& span = joined.spans.back();
    if (at == kNotTold || at < span.source_begin) return std::nullopt;
    return std::min(span.raw_begin + (at - span.source_begin), joined.raw.size());
  }

  // "… sessile — 2." before a genus that is marked: where its number begins; 0 without.
  [[nodiscard]] static std::size_t number_behind_dash(std::string_view words) {
    auto const number = last_word_begin(words);
    auto const before = trim_right(words.substr(0, number));
    bool const parted = !before.empty() && is_dash(code_point_before(before, before.size()).value);
    return parted && is_species_number(words.substr(number)) ? number : 0;
  }

  // "Wings dark —" before a destination that is marked as one.
  [[nodiscard]] static std::string_view without_last_dash(std::string_view words) {
    auto const last = code_point_before(words, words.size());
    if (!is_dash(last.value)) return words;
    auto const before = trim_right(words.substr(0, words.size() - last.length));
    return before.empty() || before.size() + last.length == words.size() ? words : before;
  }

  // Where the last line begins, in "… — On hills, beneath stones." / "busa Roe" and in "… – Alps,
  // rare" / "3. A. busa Roe": what stands behind the dash is a remark.
  [[nodiscard]] static std::optional<std::size_t> own_line_below_remark(JoinedText const& joined) {
    auto const begin = joined.spans.back().raw_begin;
    auto const last = std::string_view{joined.raw}.substr(begin);
    if (is_numbered_name(last)) return begin;
    auto const above = trim_right(std::string_view{joined.raw}.substr(0, begin));
    bool const sentence =
        above.ends_with('.') && !is_abbreviated(above.substr(last_word_begin(above)));  // "— A."
    return sentence && is_genusless_name(last) ? std::optional{begin} : std::nullopt;
  }

  // Destinations on lines of their own.  Where leaders are the rule, a further line of words may
  // look like a name; then it has to be one of a genus that others lead to.
  void read_own_lines() {
    constexpr std::size_t kFewestEpithets = 3;
    std::size_t dotted = 0;
    std::size_t genusless = 0;
    std::unordered_set<std::string> genera;
    for (auto const& read : reads_) {
      if (read.leaders == LeaderKind::dots) ++dotted;
      for (auto const& taxon : read.to.taxa.taxa) {
        genera.emplace(first_word(taxon.name));
        if (taxon.genusless) ++genusless;
      }
    }
    struct Own {
      std::size_t lead{};
      std::size_t begin{};
      bool certain{false};
    };
    std::vector<Own> found;
    GeneraInLines const genera_in_lines{key_.lines};
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& raw = sorted_.leads[i];
      bool const dash = reads_[i].leaders == LeaderKind::dash;
      if ((reads_[i].leaders != LeaderKind::none && !dash) || raw.piece_count < 2) continue;
      auto const joined = cutter_.join(i);
      // "5." / "Head smooth, as wide as long. A. busa": the words stand below their label.
      auto const& lowest = sorted_.pieces[raw.first_piece + raw.piece_count - 1];
      bool const label_alone = trim(joined.raw.substr(0, joined.spans.back().raw_begin)).empty();
      if (label_alone && key_.lines[lowest.line].goes_on) continue;
      auto own = dash ? own_line_below_remark(joined)
                      : own_line_destination(key_, joined, genera_in_lines);
      // "3. Ausella busa Roe", as the sorter took it
      auto const last = joined.spans.back().raw_begin;
      bool const numbered = raw.destination_told &&
                            is_numbered_name_in_full(std::string_view{joined.raw}.substr(last));
      if (numbered) own = last;
      if (!own) continue;
      // "elytra Ausella Roe": the last of the words stands on the name's line.
      auto const authored = genus_authors_.genus_at_end(joined.raw);
      if (authored && *authored > *own) own = authored;
      auto const text = std::string_view{joined.raw}.substr(*own);
      auto const stripped = strip_pointer(text);
      auto const first = words_of(text.substr(signs_before_name(text))).front();
      bool const certain =
          couplet_number(stripped, key_.numbering).has_value() || names_a_key(stripped) ||
          (dash && is_numbered_name(text)) || numbered || is_abbreviated(first) ||
          (genusless >= kFewestEpithets && is_epithet(without_end(first))) ||
          names_species_group(text) || genera.contains(std::string{first}) ||
          (first.ends_with(',') && is_bare_epithet(text)) || is_name_with_page(text) ||
          words_before_bracketed_binomial(words_of(text)) > 0;
      found.push_back({i, *own, certain});
    }
    bool const rule = dotted <= found.size();
    for (auto const& own : found) {
      if (!own.certain && !rule) continue;
      auto const joined = cutter_.join(own.lead);
      auto const words =
          without_last_dash(trim_right(std::string_view{joined.raw}.substr(0, own.begin)));
      reads_[own.lead].leaders = LeaderKind::gap;
      finish(own.lead, joined, words.size(), own.begin);
    }
  }

  // What other leads lead to: decides about numbers without leaders.
  void collect_known() {
    for (auto const& read : reads_) {
      if (read.to.form == DestinationForm::couplet) referenced_.insert(number_key(read.to.couplet));
      if (read.leaders == LeaderKind::none) continue;
      for (auto const& taxon : read.to.taxa.taxa) {
        genera_.emplace(first_word(taxon.name));
        bool const genus = !taxon.genusless && taxon.name.find(' ') == std::string::npos;
        ++(genus ? genera_led_to_ : species_led_to_);
        if (taxon.genusless) ++genusless_led_to_;
      }
    }
  }

  // No leaders: a number or a name at the very end, or no destination at all.
  void read_unled(std::size_t i) {
    auto const joined = cutter_.join(i);
    std::string_view const text = joined.raw;
    if (auto const found = trailing_reference(text, &key_.numbering);
        found && may_be_destination(i, *found)) {
      reads_[i].leaders = LeaderKind::blank;
      finish(i, joined, found->words_end, found->destination_begin);
      if (usually_led_ && !numbers_are_bare_) say_number(i, *found);
      return;
    }
    auto const authored = genus_authors_.genus_at_end(text);
    if (auto begin = authored ? authored : trailing_name(text);
        begin && (authored || may_be_led_to(text.substr(*begin)))) {
      if (names_in_common(joined, *begin)) begin = joined.spans.back().raw_begin;
      reads_[i].leaders = LeaderKind::blank;
      auto const words = without_last_dash(trim_right(text.substr(0, *begin)));
      finish(i, joined, words.size(), *begin);
      if (usually_led_ || authored) cutter_.say_name_taken(reads_[i]);
      return;
    }
    bool const genera = species_led_to_ > 0 && genusless_led_to_ * 3 <= species_led_to_;
    if (auto begin = key_.numbering.ends.loose ? loose_name(text, genera) : std::nullopt) {
      reads_[i].leaders = LeaderKind::blank;
      finish(i, joined, trim_right(text.substr(0, *begin)).size(), *begin);
      cutter_.say_name_taken(reads_[i]);
      return;
    }
    if (auto const begin =
            genera_led_to_ > species_led_to_ ? lone_genus_at_end(text) : std::nullopt) {
      reads_[i].leaders = LeaderKind::blank;
      finish(i, joined, trim_right(text.substr(0, *begin)).size(), *begin);
      cutter_.say_name_taken(reads_[i]);
      return;
    }
    if (auto const pointer = key_pointer_at_end(text)) {
      reads_[i].leaders = LeaderKind::blank;
      auto words = trim_right(text.substr(0, *pointer));
      if (words.ends_with('(')) words = trim_right(words.substr(0, words.size() - 1));
      finish(i, joined, words.size(), *pointer);
      return;
    }
    // "… when dry lO.": the number of a couplet as it was misread.
    auto const last = last_word_begin(text);
    auto const number = last > 0 ? misread_number(text.substr(last)) : std::nullopt;
    constexpr std::uint32_t kLeast = 10;  // "l" and "S" are words or signs
    bool const wanted = number && *number >= kLeast && key_.numbering.has_number(*number) &&
                        referenced_.count(key_of(LabelFamily::digits, *number, {}, 0)) == 0;
    if (wanted) {
      reads_[i].leaders = LeaderKind::blank;
      finish(i, joined, trim_right(text.substr(0, last)).size(), last);
      return;
    }
    finish(i, joined, text.size(), text.size());
  }

  // "Ladder Fern  Aus bus" on a line of its own: nothing but a common name in capitals stands
  // before the name that begins at `begin`.
  [[nodiscard]] static bool names_in_common(JoinedText const& joined, std::size_t begin) {
    constexpr std::size_t kMost = 4;  // words
    if (joined.spans.size() < 2 || begin <= joined.spans.back().raw_begin) return false;
    // "Dry rocks  11. Aus bus"
    if (is_digit(static_cast<unsigned char>(joined.raw[begin]))) return false;
    auto const line = joined.spans.back().raw_begin;
    auto const words = words_of(std::string_view{joined.raw}.substr(line, begin - line));
    bool const several =
        words.size() > 1 || (words.size() == 1 && words[0].find('-') != std::string_view::npos);
    return several && words.size() <= kMost &&
           std::all_of(words.begin(), words.end(), [](std::string_view word) {
             return is_capitalised(word.substr(0, word.find('-'))) && !word.ends_with('.');
           });
  }

  // Where leads end in epithets or in words in capitals, so do those whose end nothing but a blank
  // or two sets apart.
  void take_names_like_others() {
    NamesLikeOthers const others{reads_, key_.lines};
    if (!others.are_a_habit()) return;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      if (reads_[i].to.form != DestinationForm::none) continue;
      auto const joined = cutter_.join(i);
      // "grandis, Garth ." has no leaders.
      if (reads_[i].leaders != LeaderKind::none && has_row_of_dots(joined.raw)) continue;
      auto const begin = others.name_begin(joined);
      if (!begin) continue;
      reads_[i].leaders = LeaderKind::blank;
      auto const words = std::string_view{joined.raw}.substr(0, *begin);
      finish(i, joined, trim_right(words).size(), *begin);
      cutter_.say_name_taken(reads_[i]);
    }
  }

  void take_species_of_known_genera() {
    if (std::none_of(reads_.begin(), reads_.end(), is_open)) return;
    KnownGenera const known{reads_};
    bool const numbered = std::any_of(reads_.begin(), reads_.end(), [](ReadLead const& read) {
      return read.to.form == DestinationForm::couplet;
    });
    // "Aus bus (Marsh Mouse)"
    constexpr std::ptrdiff_t kFewest = 3;
    bool const usually_explained =
        std::count_if(reads_.begin(), reads_.end(), [](ReadLead const& read) {
          return read.to.form == DestinationForm::taxa &&
                 read.lead.destination_printed.ends_with(')') && !read.to.remark.empty();
        }) >= kFewest;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      if (!is_open(reads_[i])) continue;
      auto const joined = cutter_.join(i);
      std::string_view const text = joined.raw;
      auto begin = known.trailing_name(text);
      if (!begin && numbered) begin = bracketed_name(text);
      if (!begin && usually_explained) begin = explained_name(text);
      if (!begin) continue;
      reads_[i].leaders = LeaderKind::blank;
      finish(i, joined, trim_right(text.substr(0, *begin)).size(), *begin);
      cutter_.say_name_taken(reads_[i]);
    }
  }

  // "Pseudocentor Roe" where several leads end in genera of Roe: no genus ends as this one does.
  void part_authors_from_genera() {
    for (auto& read : reads_) {
      if (read.to.form != DestinationForm::taxa) continue;
      for (auto& taxon : read.to.taxa.taxa) {
        auto const words = words_of(taxon.name);
        if (words.size() != 2 || !taxon.authorship.empty() || !is_capitalised(words[0])) continue;
        if (!is_capitalised(words[1]) || !genus_authors_.is_habitual(words[1])) continue;
        taxon.authorship = std::string{words[1]};
        taxon.name = std::string{words[0]};
      }
    }
  }

  // "Aus, Bus": two genera, where no other lead has an author behind a comma.
  void part_lists() {
    std::vector<std::size_t> lists;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& taxa = reads_[i].to.taxa.taxa;
      auto const& remark = reads_[i].to.remark;
      if (reads_[i].to.form != DestinationForm::taxa || taxa.size() != 1 || remark.empty())
        continue;
      auto const& name = taxa.front().name;
      auto const& printed = reads_[i].lead.destination_printed;
      if (!is_capitalised(name) || !is_capitalised(remark)) continue;
      if (printed.find(name + ", " + remark) == std::string::npos) continue;
      bool const genera =
          has_strict_latin_ending(fold(name)) && has_strict_latin_ending(fold(remark));
      if (!genera) return;
      lists.push_back(i);
    }
    for (auto const i : lists) {
      TaxonReading second;
      second.name = std::exchange(reads_[i].to.remark, {});
      reads_[i].lead.taxon_remark.clear();
      reads_[i].to.taxa.remark.clear();
      reads_[i].to.taxa.taxa.push_back(std::move(second));
    }
  }

  // The next lead opens another couplet, by its number, further in.
  [[nodiscard]] bool has_higher_number_beneath(std::size_t i) const {
    if (i + 1 >= sorted_.leads.size()) return false;
    auto const& here = sorted_.leads[i];
    auto const& next = sorted_.leads[i + 1];
    bool const opens =
        !next.label.is_dash() && !here.label.is_dash() && next.label.number > here.label.number;
    return opens && key_.lines[next.line].indent > key_.lines[here.line].indent;
  }

  // Hardly a lead with a couplet beneath it ends in leaders or in that couplet's number.  Other
  // numbers lead past it, as those of no indented key do, or are counts of the words.
  [[nodiscard]] bool couplets_stand_beneath() const {
    constexpr std::size_t kFewest = 3;
    std::size_t beneath = 0;
    std::size_t ended = 0;
    std::size_t others = 0;
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      if (!has_higher_number_beneath(i)) continue;
      ++beneath;
      auto const joined = cutter_.join(i);
      auto const found = trailing_reference(joined.raw, &key_.numbering);
      bool const next = found && found->reference.number == sorted_.leads[i + 1].label.number;
      if (reads_[i].leaders != LeaderKind::none || next) ++ended;
      if (found && !next) ++others;
    }
    return beneath >= kFewest && ended * 4 <= beneath && others * 3 <= beneath * 2;
  }

  [[nodiscard]] bool may_be_destination(std::size_t i, TrailingReference const& found) const {
    auto const number = found.reference.number;
    bool const letters = key_.numbering.family != LabelFamily::digits;
    if (letters && !key_.numbering.ends.letters) return false;
    if (!key_.numbering.has_number(number)) return false;
    auto const& label = sorted_.leads[i].label;
    // "7a Wings short 7b", where "7b" is no second lead
    bool const other_letter = !key_.numbering.lettered && !found.reference.letter.empty() &&
                              found.reference.letter != label.letter;
    if (!label.is_dash() && label.number == number && !other_letter) return false;
    if (nested_ && has_higher_number_beneath(i) && sorted_.leads[i + 1].label.number != number) {
      return false;  // "stamens 6." above couplet 3: it leads there
    }
    if (letters) return true;  // they lead to most couplets
    // The leads of a serial key lead on by order.
    if (paired_by_label_ && referenced_.empty()) return found.after_sentence;
    // A serial key leads on by order; its numbers at the end are counts, unless a sentence ends
    // before them.
    return !usually_led_ || !referenced_.empty() || found.after_sentence || numbers_are_bare_;
  }

  // "1. Flowers white 2" where species stand behind leaders: nearly every lead without leaders and
  // without a name ends in the number of a couplet that no other ends in, and nearly all couplets
  // are led to.
  [[nodiscard]] bool do_numbers_lead_on() const {
    if (!usually_led_ || !referenced_.empty() || paired_by_label_) return false;
    std::size_t open = 0;
    bool apart = false;  // a couplet does not stand beneath the lead whose number it is
    using OfKey = std::pair<std::size_t, std::uint32_t>;  // of several, each counts from 1
    std::set<OfKey> led_to;
    std::set<OfKey> couplets;
    OfKey last{};
    for (std::size_t i = 0; i < reads_.size(); ++i) {
      auto const& label = sorted_.leads[i].label;
      if (!label.is_dash()) {
        if (label.number == 1 && last.second > 1) ++last.first;
        last.second = label.number;
        couplets.insert(last);
      }
      if (reads_[i].leaders != LeaderKind::none) continue;
      auto const joined = cutter_.join(i);
      auto const found = trailing_reference(joined.raw, &key_.numbering);
      if (!found && authored_name_at_end(joined.raw)) continue;
      ++open;
      bool const forward = found && key_.numbering.has_number(found->reference.number) &&
                           (label.is_dash() || found->reference.number > label.number);
      // "1. Styles 2" / "   2. Petals red": one such number alone is one of the words.
      if (forward && !has_higher_number_beneath(i)) apart = true;
      if (forward) led_to.emplace(last.first, found->reference.number);
    }
    if (open == 1 && !apart) return false;
    auto const keys = last.first + 1;
    return couplets.size() > keys && led_to.size() * 4 >= open * 3 &&
           led_to.size() * 4 >= (couplets.size() - keys) * 3;
  }

  // Where leaders are the rule, a name without them needs more than its form: an abbreviated genus,
  // an author, or a genus that other leads lead to.
  [[nodiscard]] bool may_be_led_to(std::string_view name) const {
    if (!usually_led_ || is_certain_name(name)) return true;
    auto const taxa = read_taxa(name);
    return genera_.contains(first_word(taxa.taxa.front().name));
  }

  void say_number(std::size_t i, TrailingReference const& found) {
    bool const elsewhere = referenced_.count(number_key(key_of(found.reference))) > 0;
    cutter_.say_number_taken(reads_[i], found.reference.printed, elsewhere);
  }

  KeyText const& key_;
  SortedLines& sorted_;
  std::vector<Finding>& findings_;
  LeadCutter cutter_;
  std::vector<ReadLead> reads_;
  GenusAuthors genus_authors_;
  std::size_t genera_led_to_{};  // behind leaders
  std::size_t species_led_to_{};
  std::size_t genusless_led_to_{};           // of these
  std::unordered_set<std::string> genera_;   // first words of the names behind leaders
  std::unordered_set<LabelKey> referenced_;  // numbers that some lead leads to after leaders
  bool usually_led_{true};
  bool nested_{false};            // leads go on with the couplets beneath them
  bool numbers_are_bare_{false};  // nothing but a blank stands before couplets' numbers
  bool paired_by_label_{false};   // nearly every lead names another in brackets
};

}  // namespace

std::vector<ReadLead> read_leads(KeyText const& key, SortedLines& sorted,
                                 std::vector<Finding>& findings) {
  return LeadReader{key, sorted, findings}.read();
}

std::string joined_text(KeyText const& key, std::vector<Piece> const& pieces) {
  return squeeze(LineJoiner{key.text, {}, {}}.join(pieces).raw);
}

}  // namespace keydrift::printed
