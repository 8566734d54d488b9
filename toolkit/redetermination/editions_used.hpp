#pragma once
// Which edition a determination was made with: from the work that it cites and from its date.
//
// The cited works (identificationReferences, items parted by "|") are compared with the citations
// of the table, words folded, punctuation and "and", "et", "al", "und" aside.  A row fits a cited
// work best when it is the same words; else when its words stand in the cited work side by side;
// else when they stand there in this order and a year is among them: "Orm & Tal 1998" fits "Orm, A.
// & B. Tal (1998): A key".  Rows of the best kind of fit count, and of these not those whose words
// are part of another's.
//
//   1. A determination dated before an edition was published was not made with it.
//   2. Of the cited editions that the date allows, the one published last was used.
//   3. If the date allows none of them, one of the two is wrong: OLD is presumed.
//   4. Where no row fits, the date tells: the edition published last by then is presumed.  NEW
//   never
//      is: who determines after it came out may still use OLD, and presuming that errs on the side
//      of looking.  Dated before OLD and all others: an older work than any.
//   5. Where periods overlap so that this is not settled, or there is no date: not known, OLD is
//      presumed.
//
// What follows (only where there is a table):
//   OLD    the name implies what OLD's leads say of it.
//   NEW    the name is NEW's already: it stands unless the record excludes it.  A name that NEW
//   does
//          not have is judged as OLD's.
//   other  the leads of OLD say nothing about the specimen.  Its record is keyed by NEW; with a
//   name
//          alone it is not keyed, and the edition that it was made with is named: redetermine from
//          that one.  Who holds the names of another edition to mean the same as OLD's gives its
//          citations to OLD.

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "keydrift/characters/citation_table.hpp"
#include "keydrift/key/edition.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

enum class EditionRole { old_edition, new_edition, other };
inline constexpr std::size_t kEditionRoles = 3;

enum class EditionBasis { cited, by_date, unknown, contradictory };
inline constexpr std::size_t kEditionBases = 4;
[[nodiscard]] char const* to_word(EditionBasis basis);  // "cited", "presumed by date", …

struct EditionUse {
  EditionRole role{EditionRole::old_edition};
  EditionBasis basis{EditionBasis::unknown};
  std::size_t edition{};     // index into EditionsUsed::labels(); 0 where it is not known
  bool unnamed_work{false};  // it cites a work that no row fits
};

class EditionsUsed {
 public:
  // Without a table (nullptr) a work is taken for OLD, else for NEW, that has its label or year
  // in it.
  EditionsUsed(CitationTable const* table, FrontMatter const& old_front,
               FrontMatter const& new_front);

  [[nodiscard]] EditionUse resolve(std::string_view references, std::string_view date) const;
  // The same, remembered.
  [[nodiscard]] EditionUse const& of(std::string const& references, std::string const& date);

  // The role of an edition on a basis: without a label, and by date, it is older than any.
  [[nodiscard]] EditionRole role_of(std::size_t edition, EditionBasis basis) const;

  // Does it decide by which edition a specimen is judged?
  [[nodiscard]] bool has_table() const { return has_table_; }
  // "" for what is not known or older than any, then OLD, NEW and the others of the table.
  [[nodiscard]] std::vector<std::string> const& labels() const { return labels_; }
  // Warnings: no-such-edition (no row means OLD or NEW, so that nothing can cite them),
  // same-label (OLD and NEW have one label; OLD and NEW have to be written).
  [[nodiscard]] std::vector<Finding> const& findings() const { return findings_; }

 private:
  struct Named {
    std::optional<Period> published{};
  };
  struct Row {
    std::vector<std::string> words{};
    bool has_year{false};
    std::size_t edition{};
  };
  [[nodiscard]] std::size_t edition_called(std::string const& label);
  [[nodiscard]] std::vector<std::size_t> cited(std::string_view references, bool& unnamed) const;
  [[nodiscard]] EditionUse used(std::size_t edition, EditionBasis basis) const;
  [[nodiscard]] bool allows(std::size_t edition, Period const& dated) const;
  [[nodiscard]] EditionUse by_date(Period const& dated) const;

  bool has_table_;
  std::vector<std::string> labels_;
  std::vector<std::string> folded_;
  std::vector<Named> editions_;  // one for each label
  std::vector<Row> rows_;
  std::vector<Finding> findings_;
  std::unordered_map<std::string, EditionUse> known_;
  std::string key_;
};

}  // namespace keydrift
