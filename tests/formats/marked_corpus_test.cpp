// Invented keys in article XML, web pages and manuscripts as publishers, browsers and word
// processors write them, each with the truth about its leads (marked/*.truth): how many leads the
// readers send to the right destination.
//
// A truth begins with "expect SHARE" and has a line for each lead, parted by tabs: the number of
// its couplet ("B:2" in a second key), its first words, and "> NUMBER", "= Taxon | Taxon", "?" for
// a lead that prints no destination, or "K" for one that leads to another key.
// KEYDRIFT_MARKED_REPORT=1 prints what went wrong; KEYDRIFT_MARKED=FOLDER reads another folder.

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <utf8proc.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "keydrift/formats/edition_reader.hpp"

namespace keydrift {
namespace {

namespace fs = std::filesystem;

std::string read_file(fs::path const& path) {
  std::ifstream in{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

// Letters and digits only, in small letters and without marks of layout: truths were written by
// eye.
std::string plain(std::string_view text) {
  utf8proc_uint8_t* mapped = nullptr;
  auto const length = utf8proc_map(
      reinterpret_cast<utf8proc_uint8_t const*>(text.data()),
      static_cast<utf8proc_ssize_t>(text.size()), &mapped,
      static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPAT | UTF8PROC_COMPOSE |
                                     UTF8PROC_CASEFOLD | UTF8PROC_IGNORE));
  std::unique_ptr<utf8proc_uint8_t, decltype(&std::free)> const owner{mapped, &std::free};
  std::string out;
  for (utf8proc_ssize_t at = 0; at < length;) {
    utf8proc_int32_t code = 0;
    auto const used = utf8proc_iterate(mapped + at, length - at, &code);
    if (used <= 0) break;
    auto const kind = utf8proc_category(code);
    bool const letter = kind >= UTF8PROC_CATEGORY_LU && kind <= UTF8PROC_CATEGORY_NO;
    if (letter)
      out.append(reinterpret_cast<char const*>(mapped + at), static_cast<std::size_t>(used));
    at += used;
  }
  return out;
}

struct Wanted {
  std::string couplet;
  std::string words;
  std::string destination;
};

struct Truth {
  double expect{};
  std::vector<Wanted> leads;
};

Truth read_truth(fs::path const& path) {
  Truth truth;
  std::ifstream in{path};
  std::string line;
  std::getline(in, line);
  EXPECT_EQ(line.substr(0, 7), "expect ") << path;
  truth.expect = std::stod(line.substr(7));
  while (std::getline(in, line)) {
    if (line.empty()) continue;
    auto const first = line.find('\t');
    auto const second = line.find('\t', first + 1);
    if (second == std::string::npos) {
      ADD_FAILURE() << path << ": " << line;
      continue;
    }
    truth.leads.push_back({line.substr(0, first), line.substr(first + 1, second - first - 1),
                           line.substr(second + 1)});
  }
  return truth;
}

std::vector<std::string> plain_names(std::string_view names) {
  std::vector<std::string> plains;
  for (;;) {
    auto const bar = names.find('|');
    plains.push_back(plain(names.substr(0, bar)));
    if (bar == std::string_view::npos) break;
    names.remove_prefix(bar + 1);
  }
  std::sort(plains.begin(), plains.end());
  return plains;
}

class Comparison {
 public:
  Comparison(Edition const& edition, Truth const& truth) : edition_{edition}, truth_{truth} {
    match();
  }

  std::vector<std::string> wrong() const {
    std::vector<std::string> wrong;
    for (std::size_t i = 0; i < truth_.leads.size(); ++i) {
      auto const& wanted = truth_.leads[i];
      if (!found_[i]) {
        wrong.push_back(fmt::format("{} {}: no such lead", wanted.couplet, wanted.words));
      } else if (couplets_.at(wanted.couplet) != found_[i]->couplet) {
        wrong.push_back(fmt::format("{} {}: in another couplet", wanted.couplet, wanted.words));
      } else if (!leads_as_wanted(wanted, edition_[*found_[i]])) {
        wrong.push_back(fmt::format("{} {}: not {}, read \"{}\"", wanted.couplet, wanted.words,
                                    wanted.destination, edition_[*found_[i]].destination_printed));
      }
    }
    return wrong;
  }

 private:
  // The first lead that begins with the words and is not taken yet.
  void match() {
    std::vector<std::pair<LeadId, std::string>> leads;
    for (std::uint32_t c = 0; c < edition_.couplets.size(); ++c) {
      for (std::uint32_t l = 0; l < edition_.couplets[c].leads.size(); ++l) {
        leads.emplace_back(LeadId{CoupletId{c}, l}, plain(edition_.couplets[c].leads[l].text));
      }
    }
    std::vector<char> taken(leads.size(), 0);
    for (auto const& wanted : truth_.leads) {
      found_.emplace_back();
      auto const words = plain(wanted.words);
      for (std::size_t i = 0; i < leads.size(); ++i) {
        if (taken[i] != 0 || !leads[i].second.starts_with(words)) continue;
        taken[i] = 1;
        found_.back() = leads[i].first;
        couplets_.try_emplace(wanted.couplet, leads[i].first.couplet);
        break;
      }
    }
  }

  [[nodiscard]] bool leads_as_wanted(Wanted const& wanted, Lead const& lead) const {
    auto const rest = std::string_view{wanted.destination}.substr(1);
    if (wanted.destination.front() == '>') {
      auto const number = rest.substr(rest.find_first_not_of(' '));
      auto const couplet = couplets_.find(std::string{number});
      auto const* to = std::get_if<ToCouplet>(&lead.destination);
      return to != nullptr && couplet != couplets_.end() && to->couplet == couplet->second;
    }
    auto const* to = std::get_if<ToTaxa>(&lead.destination);
    if (wanted.destination.front() != '=') {
      return to == nullptr && !std::holds_alternative<ToCouplet>(lead.destination);
    }
    if (to == nullptr) return false;
    std::vector<std::string> names;
    for (auto const taxon : to->taxa) names.push_back(plain(edition_[taxon].name));
    std::sort(names.begin(), names.end());
    return names == plain_names(rest);
  }

  Edition const& edition_;
  Truth const& truth_;
  std::vector<std::optional<LeadId>> found_;     // by lead of the truth
  std::map<std::string, CoupletId> couplets_{};  // by number in the truth
};

TEST(MarkedCorpus, SendsLeadsToTheRightDestination) {
  auto const* elsewhere = std::getenv("KEYDRIFT_MARKED");
  auto const folder = elsewhere != nullptr ? fs::path{elsewhere}
                                           : fs::path{KEYDRIFT_SOURCE_DIR} / "tests/formats/marked";
  std::vector<fs::path> truths;
  for (auto const& entry : fs::directory_iterator{folder}) {
    if (entry.path().extension() == ".truth") truths.push_back(entry.path());
  }
  std::sort(truths.begin(), truths.end());
  ASSERT_FALSE(truths.empty());
  std::size_t leads = 0;
  std::size_t right = 0;
  for (auto path : truths) {
    auto const truth = read_truth(path);
    ASSERT_FALSE(truth.leads.empty()) << path;
    for (auto const* extension : {".xml", ".html", ".docx"}) {
      path.replace_extension(extension);
      if (fs::exists(path)) break;
    }
    auto const name = path.filename().string();
    auto const bytes = read_file(path);
    auto const loaded = read_edition({.name = name, .bytes = bytes});
    std::vector<std::string> wrong(truth.leads.size(), "the file was refused");
    if (loaded) wrong = Comparison{loaded.value->edition, truth}.wrong();
    auto const good = truth.leads.size() - wrong.size();
    auto const share = static_cast<double>(good) / static_cast<double>(truth.leads.size());
    EXPECT_GE(share + 1e-9, truth.expect) << name;
    leads += truth.leads.size();
    right += good;
    if (std::getenv("KEYDRIFT_MARKED_REPORT") == nullptr) continue;
    fmt::print("{:<44} {:>4} {:>4} {:.3f}\n", name, truth.leads.size(), good, share);
    for (auto const& line : wrong) fmt::print("    {}\n", line);
  }
  fmt::print("{:<44} {:>4} {:>4}\n", "all", leads, right);
}

}  // namespace
}  // namespace keydrift
