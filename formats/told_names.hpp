#pragma once
// Names that the origin of a key tells in full beside what it prints.  Inner header of formats.

#include <string>
#include <string_view>
#include <unordered_map>

namespace keydrift {

class ToldNames {
 public:
  // `printed`: words parted by single blanks, without authors.  What is told in two ways is not
  // told.
  void tell(std::string_view printed, std::string_view whole);
  // "H." of "Halmia": as above.
  void tell_genus(std::string_view abbreviation, std::string_view genus);

  // "Halmia rubra" for "H. rubra"; empty where nothing is told.
  [[nodiscard]] std::string whole(std::string_view printed) const;
  // Genera by their abbreviations without the full stop.
  [[nodiscard]] std::unordered_map<std::string, std::string> genera() const;

 private:
  using Table = std::unordered_map<std::string, std::string>;
  static void enter(Table& table, std::string_view printed, std::string_view whole);

  Table names_;  // empty where two are told
  Table genera_;
};

}  // namespace keydrift
