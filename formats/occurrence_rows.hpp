#pragma once
// Rows of an occurrence table made specimens.  Inner header of formats.

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/characters/specimen.hpp"
#include "keydrift/formats/cell_text.hpp"
#include "keydrift/formats/occurrence_columns.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift::tables {

// Reads row after row; what it puts up with is counted.  One for each thread.
class OccurrenceRows {
 public:
  // Borrows all.
  OccurrenceRows(OccurrenceOptions const& options, std::vector<OccurrenceTarget> const& targets)
      : options_{options}, targets_{targets} {}

  // Valid until the next call.
  Specimen& read(std::span<std::string_view const> cells, std::uint64_t line);
  // Neither a name nor a number nor a character.
  [[nodiscard]] static bool is_void(Specimen const& specimen);
  // The collection's own number of the specimen read last, told apart from those of other
  // collections; "" where it has none.
  [[nodiscard]] std::string const& number();
  // Counts the specimen read last, once it is known to be one.
  void count(Specimen const& specimen);
  // The same without having read it.
  void count_coded(bool named, std::uint64_t line);

  // Takes in what another one counted.
  void absorb(OccurrenceRows const& other);
  [[nodiscard]] std::uint64_t without_name() const { return without_name_.rows; }
  // no-name, unclear-voucher, encoding.
  [[nodiscard]] std::vector<Finding> remarks(std::string const& table) const;

  [[nodiscard]] CellCleaner& cleaner() { return cleaner_; }

 private:
  // Rows of one kind, and the first of them.
  struct Counted {
    std::uint64_t rows{};
    std::uint64_t first_line{};
    std::string first_word;
    void add(std::uint64_t line, std::string_view word = {});
    void absorb(Counted const& other);
  };

  void add_remark(std::string_view cell);
  void read_voucher(std::string_view cell, std::uint64_t line);

  OccurrenceOptions const& options_;
  std::vector<OccurrenceTarget> const& targets_;
  CellCleaner cleaner_;
  Specimen specimen_;
  std::string institution_;
  std::string collection_;
  std::string number_;
  Counted without_name_;
  Counted unclear_vouchers_;
};

// The answers that a column "voucher" may give.
enum class VoucherAnswer { yes, no, unclear };
[[nodiscard]] VoucherAnswer voucher_answer(std::string_view cell);

// The items of a Darwin Core list: between bars.
[[nodiscard]] std::vector<std::string> list_items(std::string_view list);

// "table.csv:12" with everything that a finding of a table has.
[[nodiscard]] Finding finding_in(std::string const& table, std::string code, Severity severity,
                                 std::uint64_t line, std::string message, std::string remedy);

}  // namespace keydrift::tables
