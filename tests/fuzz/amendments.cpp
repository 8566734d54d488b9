// Pieces published between editions, read and applied to a small key.

#include "checks.hpp"
#include "keydrift/amendment/amend.hpp"
#include "keydrift/formats/amendment_reader.hpp"
#include "keydrift/formats/printed_key.hpp"

namespace {

constexpr char kKey[] =
    "1      Wings clear ..... 2\n1'     Wings dark ..... 3\n"
    "2 (1)  Legs pale ..... Aus bus\n2'     Legs dark ..... Aus cus\n"
    "3 (1)  Head red ..... 7\n3'     Head blue ..... Bus dus\n"
    "7 (3)  Tail long; 4 setae ..... Bus eus\n7'     Tail short ..... 8\n"
    "8 (7)  Eyes large ..... Bus fus\n8'     Eyes small ..... Bus gus\n";

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
  using namespace keydrift;
  static auto const key = read_printed_key({.name = "key", .bytes = kKey});
  ReadLimits limits;
  limits.unpacked_bytes = std::uint64_t{16} << 20;  // keeps the fuzzer's own memory small
  auto const piece = read_amendment({.name = "piece", .bytes = fuzz::as_text(data, size)}, limits);
  fuzz::check_loaded(piece);
  if (!piece) return 0;
  auto amended = amend(key.value->edition, {&*piece.value, 1});
  fuzz::check_findings(piece.value->not_understood);
  fuzz::check_findings(amended.unplaced);
  fuzz::check_findings(amended.remarks);
  fuzz::check_findings(amended.faults_made);
  if (amended.edition.couplets.empty()) return 0;  // all were deleted
  fuzz::check_edition(amended.edition);
  (void)renumber(amended.edition);
  fuzz::check_edition(amended.edition);
  return 0;
}
