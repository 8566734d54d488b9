#include "keydrift/program/readings.hpp"

#include <CLI/CLI.hpp>
#include <map>
#include <string>

namespace keydrift::program {

void add_reading_option(CLI::App& command, Reading& reading) {
  std::map<std::string, Reading> words;
  for (std::size_t i = 0; i < kReadings; ++i) {
    auto const one = static_cast<Reading>(i);
    words.emplace(to_word(one), one);
  }
  command
      .add_option("--reading", reading,
                  "How a lead of several statements is read: strict, primary-first or best-overall")
      ->transform(CLI::CheckedTransformer(words).description(""))
      ->type_name("READING");
}

}  // namespace keydrift::program
