#pragma once
// Looking at the lines around a line without taking them.  Inner header of formats.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/printed_genus_ends.hpp"
#include "keydrift/formats/printed_leaders.hpp"
#include "keydrift/formats/printed_lines.hpp"
#include "keydrift/formats/printed_plan.hpp"

namespace keydrift::printed {

// Borrows the lines, the numbering and the plan.  Every look goes a bounded number of lines ahead.
class LinesAhead {
 public:
  // `plan`: for outlines, which lines begin leads; may be null.
  LinesAhead(std::vector<SourceLine> const& lines, Numbering const& numbering,
             LeadPlan const* plan);

  // Lines at the borders of pages, which belong to no paragraph.  Borrowed.
  void know_heads(std::vector<bool> const& heads) { heads_ = &heads; }

  // The label of line i, if the file labels its leads so.
  [[nodiscard]] std::optional<Label> label_at(std::size_t i) const;
  [[nodiscard]] bool gap_after(std::size_t i) const;
  [[nodiscard]] bool label_follows(std::size_t i) const;  // the very next line has one
  // First line at or after i that is not blank; the number of lines where there is none.
  [[nodiscard]] std::size_t next_filled(std::size_t i) const;
  // The same, past the heads of pages.
  [[nodiscard]] std::size_t next_of_key(std::size_t i) const;

  // Does the paragraph that starts at line i reach leaders and a destination before the next label?
  [[nodiscard]] bool ends_in_leaders(std::size_t i) const;
  // Do the leaders of line i end its paragraph: "Head as long as wide..." and nothing behind?
  [[nodiscard]] bool trails_off(std::size_t i) const;
  // Does it reach a destination, those on lines of their own and after a single blank
  // among them?
  [[nodiscard]] bool ends_in_destination(std::size_t i) const;
  // Is line i the first lead of a key that the lines behind it go on with: "l. Wings … 2" before a
  // dash, or before couplet 2?
  [[nodiscard]] bool opens_key(std::size_t i) const;

  // Does the text end in a name after a single blank that the lead may lead to?  Where leaders are
  // the rule, the name needs more than its form: an abbreviated genus or an author.
  [[nodiscard]] bool ends_in_name(std::string_view text) const;

  // Three of four labelled leads reach a destination; looked for once it is asked for.
  [[nodiscard]] bool leads_have_ends() const;

  // One label alone bears the number, where three of five couplets have two of theirs; looked for
  // once it is asked for.
  [[nodiscard]] bool lacks_rival(std::uint32_t number) const;

  // Three of four labelled leads end in a line that holds nothing but their destination; looked for
  // once it is asked for.
  [[nodiscard]] bool ends_stand_alone() const;
  // Line i is such a line, a couplet's number or a name.
  [[nodiscard]] bool is_end_alone(std::size_t i) const;

  // Only the first lead of each couplet has a label.
  [[nodiscard]] bool second_leads_unlabelled() const { return second_leads_unlabelled_; }

  // "3. A. busa", "3. Ausella busa Roe"; without an author only where several lines of that genus
  // look so, for two words may be those of a lead in Latin.
  [[nodiscard]] bool is_numbered_species(std::size_t i) const;
  // Line i is "5. busa." as other lines end in "… 4. busa."
  [[nodiscard]] bool is_numbered_epithet_alone(std::size_t i) const;

  // "2. Females", apart from the text around it, above a key whose labels look otherwise ("1
  // Head").
  [[nodiscard]] bool is_numbered_title(std::size_t i) const;

  // Line i bears a label that another line answers, set in as far (find_answered()).
  [[nodiscard]] bool is_answered(std::size_t i) const { return answered_[i]; }

  // Set so far in from the line before that it has to be a destination; set in by so many columns
  // from the words of the line before, which is none where that one is blank.
  [[nodiscard]] bool is_far_in(std::size_t i) const;
  [[nodiscard]] bool is_set_in(std::size_t i, std::uint32_t columns) const;
  [[nodiscard]] bool usually_led() const { return usually_led_; }

  // Line i holds nothing but a destination set far in from the line before, or a name in Latin form
  // that no words go on after.
  [[nodiscard]] bool is_name_on_its_own(std::size_t i) const;
  // "A. bus Roe.", "bus, 1055." with a blank line before it and a blank line or a label behind it:
  // set far to the right, where the text layer of a page has kept no columns.
  [[nodiscard]] bool is_name_between_blanks(std::size_t i) const;

  // "7. A. bus Roe - Marsh Mouse. Small …" where a lead leads to "7. A. bus".
  [[nodiscard]] bool titles_numbered_account(Label const& label, std::string_view words) const;

 private:
  [[nodiscard]] std::vector<char> find_labelled() const;
  void drop_starred_notes(std::vector<char>& labelled) const;
  void drop_wrapped_dashes(std::vector<char>& labelled) const;
  void drop_dashes_within(std::vector<char>& labelled) const;
  [[nodiscard]] bool leads_somewhere(std::vector<char> const& labelled, std::size_t i) const;
  void drop_numbered_genera(std::vector<char>& labelled) const;
  void find_usual_style();
  [[nodiscard]] std::optional<Label> judge_label_at(std::size_t i) const;
  [[nodiscard]] bool is_destination_behind_dash(std::string_view words) const;
  [[nodiscard]] bool leads_are_half_labelled() const;
  [[nodiscard]] bool leads_are_led() const;
  [[nodiscard]] std::string_view text_behind_label(std::size_t i) const;
  // "          10. bus (Roe)" beneath the words that lead to it.
  [[nodiscard]] bool is_taxon_far_in(std::size_t i) const;
  // By line: "busa Roe" alone, beneath the end of a sentence, where the file does so again and
  // again.
  [[nodiscard]] static std::vector<bool> find_epithets_alone(std::vector<SourceLine> const& lines);
  // "7. AUS, Roe": the head of a genus's account.
  [[nodiscard]] bool heads_account(std::size_t i, std::string_view words) const;
  // "3. Aus bus Roe, 1900", "3. Aus bus": an account of a species that leads lead to.
  [[nodiscard]] bool titles_known_account(std::string_view words) const;
  [[nodiscard]] static bool is_account_of_genus(std::string_view words);
  [[nodiscard]] bool is_known_name(std::size_t i, std::string_view words) const;
  // First words of the names behind leaders, of all lines; looked for once they are asked for.
  [[nodiscard]] std::unordered_set<std::string_view> const& known_genera() const;
  // "7 A. bus" of "7. A. bus" behind leaders.
  [[nodiscard]] std::unordered_set<std::string> const& numbered_names() const;
  [[nodiscard]] static std::string numbered_name(std::uint32_t number, std::string_view genus,
                                                 std::string_view epithet);
  void find_names_led_to() const;

  std::vector<SourceLine> const& lines_;
  Numbering const& numbering_;
  LeadPlan const* plan_;
  std::vector<bool> const* heads_{nullptr};
  GenusAuthors genus_authors_;
  // Of the labels' numbers, where hardly one is printed otherwise.
  std::optional<unsigned> usual_style_;
  std::unordered_set<std::uint32_t> usual_numbers_;  // printed so
  bool usually_led_{false};                          // most leads have leaders
  mutable std::optional<std::unordered_set<std::string_view>> genera_;
  mutable std::optional<std::unordered_set<std::string_view>> numbered_genera_;  // of bare species
  mutable std::optional<bool> epithets_are_numbered_;
  mutable std::unordered_set<std::string> numbered_names_;
  mutable std::optional<bool> have_ends_;
  mutable std::optional<std::unordered_set<std::uint32_t>> without_rival_;
  mutable std::optional<bool> ends_alone_;
  std::vector<char> labelled_;  // by line: asked for again and again, found once
  std::vector<bool> answered_;  // by line
  std::vector<bool> epithets_alone_;
  bool second_leads_unlabelled_{false};
};

}  // namespace keydrift::printed
