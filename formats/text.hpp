#pragma once
// Bytes of unknown origin to clean UTF-8 text, with places: the first step of every reader.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/text_labels.hpp"
#include "keydrift/key/finding.hpp"

namespace keydrift {

// What a reader is given.  Borrows: both views must outlive the call (not the result).
struct Source {
  std::string_view name;   // what messages call it: a path or REPO@REVISION:PATH
  std::string_view bytes;  // undecoded
  // What the user says that text is in which is not UTF-8 by its form (`--encoding`).
  std::optional<Encoding> encoding{};
};

struct DecodeOptions {
  std::uint64_t maximum_bytes{std::uint64_t{256} << 20};
  // False leaves base letters and combining marks apart: in JSON a mark behind "\t" is none of the
  // letter t's, and the strings are composed once they are parsed.
  bool composed{true};
  // The label by which the file itself says what it is in, as written; empty: it says nothing.
  // Borrowed for the call.
  std::string_view declared{};
};

// Text in UTF-8 and Unicode normalisation form C.  Every line ends in "\n" (the last one may lack
// it); "\r\n", "\r", vertical tab, U+0085, U+2028 and U+2029 have become "\n".  Holds no NUL, no
// byte order mark, and no control character but tab, line feed and form feed (a new page; it stays
// within its line).  No-break and other blanks are left as they are.
struct DecodedText {
  std::string name;
  std::string text;
  Encoding encoding{Encoding::utf_8};
};

// Codes: empty-file, too-large, binary-file (errors); encoding-damage (warning: U+FFFD, bytes that
// are not of the file's encoding, traces of a wrong conversion; one finding, further places in
// `related`); mixed-encodings (warning: some lines are UTF-8 and some are not; each is read as what
// it is); unknown-encoding (warning: what the file declares is not known); encoding (information:
// the file is not UTF-8).
//
// Well-formed UTF-8 is UTF-8, whatever anybody says.  Else the user's word counts before the file's
// own.  Without either, Cyrillic and Greek are told by their letters, and so are Japanese, Chinese
// and Korean; Windows-1252 is taken for all else, unless its letters make sense as Mac OS Roman
// only; it has all of Latin-1's printable characters.
[[nodiscard]] Loaded<DecodedText> decode_text(Source source, DecodeOptions const& options = {});

// Of a file that is text but for NUL bytes: where the first one stands, and whether UTF-16 begins
// there within text of another encoding.  nullopt without one, and for a file that is no text.
[[nodiscard]] std::optional<Finding> nul_in_text(Source const& source, std::string code);

// Number of code points in well-formed UTF-8.
[[nodiscard]] std::uint32_t count_code_points(std::string_view utf8);

// Line starts of a decoded text, to make Places.  Borrows the text.
class TextPlaces {
 public:
  explicit TextPlaces(std::string_view text);

  // The place of bytes [begin, end).  Precondition: begin <= end <= text.size(), both on code
  // point borders.  Logarithmic in the number of lines, linear in the line's length before begin.
  [[nodiscard]] Place at(std::size_t begin, std::size_t end) const;

  [[nodiscard]] std::size_t line_count() const { return starts_.size(); }
  // Line `number` (1-based) without its line feed.
  [[nodiscard]] std::string_view line(std::size_t number) const;
  // Byte offset of the first byte of line `number` (1-based).
  [[nodiscard]] std::size_t line_begin(std::size_t number) const { return starts_[number - 1]; }

 private:
  std::string_view text_;
  std::vector<std::size_t> starts_;
};

}  // namespace keydrift
