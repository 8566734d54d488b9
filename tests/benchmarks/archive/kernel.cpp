// Rows a second of the keying kernel in memory: from the cells of a record to the terminal.
//
//     kernel_benchmark KEY LEXICON SHEETS LEAVES
//
// Every row of SHEETS is made a box of cells first; that is not timed.  LEAVES has for each row the
// terminal that another program found in the same tree: all of them must agree.

#include <chrono>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

#include "keydrift/characters/reading.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "keydrift/formats/lexicon_file.hpp"
#include "keydrift/formats/occurrences.hpp"
#include "keydrift/redetermination/evidence_memo.hpp"
#include "keydrift/redetermination/evidence_path.hpp"
#include "keydrift/redetermination/walk.hpp"

namespace {

using namespace keydrift;

std::string bytes_of(char const* path) {
  std::ifstream file{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{file}, {}};
}

template <class Value>
Value loaded(Loaded<Value>&& loaded, char const* path) {
  if (!loaded.value) {
    std::cerr << path << " cannot be read\n";
    std::exit(2);
  }
  return std::move(*loaded.value);
}

}  // namespace

int main(int count, char** arguments) {
  if (count != 5) {
    std::cerr << "kernel_benchmark KEY LEXICON SHEETS LEAVES\n";
    return 2;
  }
  auto const key_bytes = bytes_of(arguments[1]);
  auto edition =
      loaded(read_edition({.name = arguments[1], .bytes = key_bytes}), arguments[1]).edition;
  auto const lexicon_bytes = bytes_of(arguments[2]);
  auto const lexicon =
      loaded(read_lexicon({.name = arguments[2], .bytes = lexicon_bytes}), arguments[2]);
  (void)read_statements(edition, lexicon);
  KeyGraph const graph{edition};
  ParentTable const parents;
  NameIndex const names{edition, parents};
  CharacterSpace const space{std::vector<Edition const*>{&edition}, lexicon};
  CompiledKey const key{edition, graph, names, space};

  std::vector<Box> boxes;
  {
    auto stream = loaded(open_stream(arguments[3]), arguments[3]);
    OccurrenceReader reader{*stream, arguments[3], {.characters = space.column_names()}};
    EvidenceMemo memo{space};
    RecordedEvidence evidence;
    while (reader.next() == OccurrenceReader::Next::specimen) {
      memo.read(reader.specimen(), evidence);
      boxes.push_back(evidence.box);
    }
  }

  EvidencePath path{key, key};
  std::vector<std::uint32_t> numbers(boxes.size());
  auto const round = [&] {
    for (std::size_t i = 0; i < boxes.size(); ++i) numbers[i] = path.number_of(boxes[i]);
  };
  round();  // meets all paths
  double best = 0;
  for (int times = 0; times < 5; ++times) {
    auto const start = std::chrono::steady_clock::now();
    round();
    std::chrono::duration<double> const took = std::chrono::steady_clock::now() - start;
    best = std::max(best, static_cast<double>(boxes.size()) / took.count());
  }

  std::ifstream leaves{arguments[4]};
  std::map<std::uint32_t, std::string> terminal;
  std::size_t equal = 0;
  std::string wanted;
  for (std::size_t i = 0; i < boxes.size() && std::getline(leaves, wanted); ++i) {
    auto& name = terminal[numbers[i]];
    if (name.empty()) {
      auto const ways = walk(key, boxes[i], Reading::strict);
      name = ways.leaves.size() == 1 ? edition[ways.leaves.front().taxon].name : "(several)";
    }
    equal += name == wanted ? 1 : 0;
  }
  std::cout << "keying kernel: " << best / 1e6 << " million rows/s (" << equal << " of "
            << boxes.size() << " terminals as in the tree)\n";
  return equal == boxes.size() ? 0 : 1;
}
