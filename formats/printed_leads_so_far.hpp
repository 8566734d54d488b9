#pragma once
// The leads that a key's lines gave so far, and how the last one stands.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_ahead.hpp"
#include "keydrift/formats/printed_label.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_sorter.hpp"
#include "keydrift/formats/printed_wrapped_names.hpp"

namespace keydrift::printed {

// How the last lead stands after the lines read so far.
enum class Progress {
  none,     // no lead has begun
  open,     // its destination is still to come
  leaders,  // leaders are printed, nothing after them yet
  soft,     // ends in a number that may be a destination without leaders
  named,    // ends in a name without leaders before it
  done,     // leaders and a destination
};

// Borrows the lines, the numbering and what looks ahead.
class LeadsSoFar {
 public:
  LeadsSoFar(std::vector<SourceLine> const& lines, Numbering const& numbering,
             LinesAhead const& ahead)
      : lines_{lines}, numbering_{numbering}, ahead_{ahead}, names_{lines, numbering, ahead} {}

  [[nodiscard]] bool empty() const { return leads_.empty(); }
  [[nodiscard]] std::size_t size() const { return leads_.size(); }
  [[nodiscard]] RawLead& last() { return leads_.back(); }
  [[nodiscard]] RawLead const& last() const { return leads_.back(); }
  [[nodiscard]] std::uint32_t number() const { return number_; }        // of the current couplet
  [[nodiscard]] std::size_t of_couplet() const { return of_couplet_; }  // leads of that couplet
  [[nodiscard]] std::uint32_t largest() const { return largest_; }      // of all couplets so far
  // The last couplet that has one lead so far, others behind it having theirs; 0 where none has.
  [[nodiscard]] std::uint32_t open_couplet() const { return open_.empty() ? 0 : open_.back(); }
  [[nodiscard]] Progress progress() const { return progress_; }
  void set_progress(Progress progress) { progress_ = progress; }

  // Nothing need follow: no lead has begun, or the last one has a destination, or may have one.
  [[nodiscard]] bool are_complete() const;

  // Opens a lead on line `at`; its first piece is still to be added.
  void begin(RawLead lead, std::size_t at, bool after_blank);
  // Appends line `at` from byte `from` on to the last lead and looks at how it ends.
  void add_piece(std::size_t at, std::size_t from);
  // Moves the leads and their pieces there.
  void hand_over(SortedLines& sorted) &&;

  // Does the label carry the count on: a further lead of this couplet, or the next couplet?
  [[nodiscard]] bool follows(Label const& label) const;
  // Line `at` begins the next couplet, set deeper than most, where an indented key goes down a long
  // way: a rival answers it, or it does not stand where the lead's wrapped words would.
  [[nodiscard]] bool is_nested_label(std::size_t at, Label const& label) const;
  // Blank lines stand before most leads.
  [[nodiscard]] bool usually_apart() const;

  [[nodiscard]] std::string_view last_line() const;  // of the last lead
  // The last lead's last line is the one above line `at`.
  [[nodiscard]] bool end_directly_above(std::size_t at) const;
  // "Ausella busa busa (p. 4)" / "Ausella busa cusa (p. 5)", "… 8. A. busa var. busa" / "8b. A.
  // busa var. cusa": the line names another taxon as the one above does.
  [[nodiscard]] bool goes_on_with_taxon(std::string_view text) const;
  // "… weakly serrate. 2."
  [[nodiscard]] bool ends_in_species_number() const;
  // "… hardly hairy." / "busa Roe": its last line holds nothing but an epithet with its author.
  [[nodiscard]] bool ends_in_epithet_alone() const;
  // The destination's last line ends in the middle of a list.
  [[nodiscard]] bool hangs_open() const;
  // The last lead ends in leaders to nothing, and the line is leaders to something.
  [[nodiscard]] bool resumes_leaders(SourceLine const& line) const;
  // The last lead's words begin with a capital.
  [[nodiscard]] bool begins_upper() const;
  // "…... AUS" / "BUS": the epithet stands on the next line.
  [[nodiscard]] bool continues_name_in_capitals(SourceLine const& line) const;
  // "Aus bus," / "A. cus or A. dus"; "Aus" / "bus Smith"; "Aus bus" / "(Smith, 1900)".
  [[nodiscard]] bool continues_destination(std::size_t at) const;
  // "…... Aus bus" / "Smith" / "Petals white ...": line `at` is an author, and no lead begins
  // there.
  [[nodiscard]] bool continues_with_author(std::size_t at) const;
  // "…... Aus bus Smith" / "1900": line `at` is a number alone.
  [[nodiscard]] bool continues_with_number(std::size_t at) const;

 private:
  [[nodiscard]] bool goes_on_with_told_name(SourceLine const& line) const;
  [[nodiscard]] bool ends_broken_name(std::string_view text) const;
  [[nodiscard]] bool names_what_is_open(SourceLine const& line) const;
  [[nodiscard]] static bool is_author_of_list(std::string_view text);

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LinesAhead const& ahead_;
  WrappedNames names_;
  std::vector<RawLead> leads_;
  std::vector<Piece> pieces_;
  Progress progress_{Progress::none};
  std::uint32_t number_{};
  std::size_t of_couplet_{};
  std::uint32_t largest_{};          // of all couplets so far
  std::vector<std::uint32_t> open_;  // couplets with one lead so far, in printed order
  std::size_t after_blank_{};
};

}  // namespace keydrift::printed
