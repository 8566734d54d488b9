#pragma once
// What is told of names that were completed, parted or left as they are printed.  Inner header of
// formats.

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "keydrift/key/finding.hpp"

namespace keydrift::printed {

// Gathers them name by name; what recurs is told once, where it is printed first.
class NameFindings {
 public:
  explicit NameFindings(std::string_view file) : file_{file} {}

  // `name` was read so: `whole`, with which it begins, is printed as `printed` ("A."), or not at
  // all.  `whole`: a genus, or the species above a variety; `others`: what else it may be, parted
  // by commas.
  void assume(std::string const& printed, std::string const& whole, std::string others,
              std::string const& name, Place const& place);

  // `name` stays without its genus, which the text does not tell; `beginning`: "A.", or empty.
  void keep_as_printed(std::string const& beginning, std::string const& name, Place const& place);

  // "Ausbus" was read as "Aus bus".
  void part(std::string printed, std::string name, Place const& place);

  // One finding for each abbreviation and what it was read as, one for each abbreviation that
  // nothing tells, one for each name that was parted.
  void report(std::vector<Finding>& findings) const;

 private:
  struct Assumption {
    std::string others;
    std::string example;  // the first full name
    Place place;
    std::size_t count{};
  };
  struct Unknown {
    std::string name;  // the first one
    Place place;
    std::size_t count{};
  };
  struct PartedName {
    std::string printed;
    std::string name;
    Place place;
  };

  std::string file_;
  // By what is printed and what it was read as.
  std::map<std::pair<std::string, std::string>, Assumption> assumptions_;
  std::map<std::string, Unknown> unknown_;  // by abbreviation
  std::vector<PartedName> parted_;
};

}  // namespace keydrift::printed
