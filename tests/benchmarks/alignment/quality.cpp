// Precision, recall and F1 on generated histories, beside two references on the same cases.

#include <array>
#include <cstdio>
#include <map>

#include "benchmark.hpp"
#include "history_cases.hpp"

namespace keydrift::bench {
namespace {

using test::Case;
using test::CaseSpec;
using test::Pairs;
using test::Tally;

constexpr std::size_t couplets = 120;

enum class Numbers { as_printed, left_out };

// The lines of both editions for line_matcher.py.
void add_lines(Case const& made, Numbers numbers, std::string& input) {
  input += "case\n";
  for (auto const* edition : {&made.old_edition, &made.new_edition}) {
    auto const* kind = edition == &made.old_edition ? "o " : "n ";
    for (std::size_t i = 0; i < edition->couplets.size(); ++i) {
      for (auto const& lead : edition->couplets[i].leads) {
        bool const to_couplet = std::holds_alternative<ToCouplet>(lead.destination);
        bool const plain = numbers == Numbers::as_printed;
        input += kind + std::to_string(i) + " " + (plain ? lead.label + " " : "") + lead.text +
                 (plain || !to_couplet ? " " + lead.destination_printed : "") + "\n";
      }
    }
  }
}

Pairs same_numbers(Case const& made) {
  std::map<std::string, std::uint32_t> news;
  for (std::uint32_t i = 0; i < made.new_edition.couplets.size(); ++i) {
    news.emplace(made.new_edition.couplets[i].label, i);
  }
  Pairs pairs;
  for (std::uint32_t i = 0; i < made.old_edition.couplets.size(); ++i) {
    auto const found = news.find(made.old_edition.couplets[i].label);
    if (found != news.end()) pairs.emplace_back(i, found->second);
  }
  return pairs;
}

// F1; where nothing was planted, what was reported all the same.
std::string figure(Tally const& tally) {
  if (tally.planted == 0 && tally.reported > 0) return std::to_string(tally.reported) + " of 0";
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(), "%.3f", tally.f1());
  return text.data();
}

struct Row {
  Tally pairs;
  Tally taxa;
  Tally roles;
  Tally lines;    // line matcher, as printed
  Tally words;    // line matcher, numbers left out
  Tally numbers;  // same number
};

class Table {
 public:
  explicit Table(Settings const& settings) : settings_{settings} {}

  void head(char const* title) {
    std::printf("\n%s\n%-24s %5s %5s %5s %6s %6s   %6s %6s %6s\n", title, "", "prec.", "rec.", "F1",
                "taxa", "roles", "lines", "words", "number");
  }

  void row(char const* name, std::vector<CaseSpec> const& specs) {
    Row row;
    std::vector<Case> cases;
    std::string as_printed;
    std::string left_out;
    for (auto const& spec : specs) {
      auto const made = test::make_case(spec);
      auto const collation = test::collated(made);
      row.pairs.add(test::tally_pairs(made, test::pairs_of(collation.alignment)));
      row.taxa.add(
          test::tally_lines(test::planted_taxa(made), test::reported_taxa(made, collation)));
      row.roles.add(
          test::tally_lines(test::planted_roles(made), test::reported_roles(made, collation)));
      row.numbers.add(test::tally_pairs(made, same_numbers(made)));
      add_lines(made, Numbers::as_printed, as_printed);
      add_lines(made, Numbers::left_out, left_out);
    }
    bool const referenced =
        add_reference(specs, as_printed, row.lines) && add_reference(specs, left_out, row.words);
    std::printf("%-24s %5.3f %5.3f %5.3f %6s %6s", name, row.pairs.precision(), row.pairs.recall(),
                row.pairs.f1(), figure(row.taxa).c_str(), figure(row.roles).c_str());
    if (referenced) {
      std::printf("   %6.3f %6.3f %6.3f\n", row.lines.f1(), row.words.f1(), row.numbers.f1());
    } else {
      std::printf("   %6s %6s %6.3f\n", "-", "-", row.numbers.f1());
    }
    std::fflush(stdout);
  }

 private:
  bool add_reference(std::vector<CaseSpec> const& specs, std::string const& input, Tally& tally) {
    auto const lines = run_script(settings_.scripts / "line_matcher.py", input);
    if (!lines) return false;
    std::size_t next = 0;
    Pairs pairs;
    auto const finish = [&] {
      if (next > 0) tally.add(test::tally_pairs(test::make_case(specs[next - 1]), pairs));
      pairs.clear();
    };
    for (auto const& line : *lines) {
      if (line == "case") {
        finish();
        ++next;
        continue;
      }
      auto const blank = line.find(' ');
      pairs.emplace_back(std::stoul(line.substr(0, blank)), std::stoul(line.substr(blank + 1)));
    }
    finish();
    return true;
  }

  Settings const& settings_;
};

std::vector<CaseSpec> specs(Settings const& settings, std::vector<test::Shape> const& shapes,
                            CaseSpec spec) {
  std::vector<CaseSpec> all;
  spec.couplets = couplets;
  for (auto const shape : shapes) {
    for (std::uint64_t i = 0; i < settings.seeds; ++i) {
      spec.seed = settings.first_seed + i;
      spec.shape = shape;
      all.push_back(spec);
    }
  }
  return all;
}

}  // namespace

void print_quality(Settings const& settings) {
  std::vector<test::Shape> const every{test::all_shapes.begin(), test::all_shapes.end()};
  std::printf(
      "Couplets paired on generated histories of %zu couplets, %zu for each row and shape: this\n"
      "program's precision, recall and F1; F1 of changes of taxa and of roles (\"5 of 0\": five "
      "were\n"
      "reported and none planted); and for comparison\n"
      "the F1 of pairs by printed lines (python's difflib), by the same lines without numbers, "
      "and\n"
      "by the same number.\n",
      couplets, settings.seeds);
  Table table{settings};
  table.head("By share of couplets edited, all shapes and kinds");
  for (std::size_t const percent : {5U, 15U, 30U, 45U, 60U}) {
    table.row((std::to_string(percent) + " %").c_str(),
              specs(settings, every, {.percent = percent}));
  }
  table.head("The same in a poor vocabulary");
  for (std::size_t const percent : {5U, 15U, 30U, 45U, 60U}) {
    table.row((std::to_string(percent) + " %").c_str(),
              specs(settings, every, {.percent = percent, .vocabulary = test::Vocabulary::poor}));
  }
  table.head("Several edits of the same couplets or of neighbours, all shapes");
  for (std::size_t const percent : {5U, 15U, 30U, 45U, 60U}) {
    table.row((std::to_string(percent) + " %").c_str(),
              specs(settings, every, {.percent = percent, .gathered = true}));
  }
  table.head("The same in a poor vocabulary");
  for (std::size_t const percent : {5U, 15U, 30U, 45U, 60U}) {
    table.row((std::to_string(percent) + " %").c_str(),
              specs(settings, every,
                    {.percent = percent, .vocabulary = test::Vocabulary::poor, .gathered = true}));
  }
  table.head("By what is done to a couplet and its neighbours, 30 % edited, bushy and polytomous");
  for (std::size_t recipe = 0; recipe < test::recipes; ++recipe) {
    auto const each = static_cast<test::Recipe>(recipe);
    table.row(to_word(each), specs(settings, {test::Shape::bushy, test::Shape::polytomous},
                                   {.percent = 30, .gathered = true, .recipe = each}));
  }
  table.head("By shape, 30 % edited");
  for (auto const shape : test::all_shapes) {
    table.row(to_word(shape), specs(settings, {shape}, {.percent = 30}));
  }
  table.head("By kind, 30 % edited in that way alone, bushy and polytomous keys");
  for (std::size_t kind = 0; kind < test::edit_kinds; ++kind) {
    auto const each = static_cast<test::EditKind>(kind);
    table.row(to_word(each), specs(settings, {test::Shape::bushy, test::Shape::polytomous},
                                   {.percent = 30, .kind = each}));
  }
}

}  // namespace keydrift::bench
