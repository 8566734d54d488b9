#include "keydrift/formats/printed_difference.hpp"

#include <algorithm>
#include <string_view>
#include <variant>

#include "keydrift/key/front_lines.hpp"

namespace keydrift::printed {
namespace {

constexpr std::size_t kMessageWordsShown = 60;  // bytes of words that a message quotes

std::string words_in_quotes(std::string_view text) {
  auto end = std::min(text.size(), kMessageWordsShown);
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return "\"" + std::string{text.substr(0, end)} + (end < text.size() ? "…" : "") + "\"";
}

struct DestinationAsWords {
  Edition const& edition;

  std::string operator()(Unresolved const& to) const {
    return to.printed.empty() ? "nowhere" : "the unresolved " + words_in_quotes(to.printed);
  }
  std::string operator()(ToCouplet const& to) const {
    return "couplet " + words_in_quotes(edition[to.couplet].label);
  }
  std::string operator()(ToTaxa const& to) const {
    std::string words;
    for (auto const taxon : to.taxa) {
      words += (words.empty() ? "" : ", ") + words_in_quotes(edition[taxon].name);
    }
    return words;
  }
  std::string operator()(ToKey const& to) const { return "the key " + words_in_quotes(to.key); }
};

class Comparer {
 public:
  Comparer(Edition const& wanted, Edition const& got, std::size_t most)
      : wanted_{wanted}, got_{got}, most_{most} {}

  std::vector<Difference> run() && {
    auto const count = std::min(wanted_.couplets.size(), got_.couplets.size());
    for (std::uint32_t c = 0; c < count && found_.size() < most_; ++c) compare_couplet(c);
    if (wanted_.couplets.size() != got_.couplets.size()) compare_counts(count);
    compare_parts();
    compare_taxa();
    compare_notes();
    if (found_.empty() && !same_content(wanted_, got_)) compare_front();
    found_.resize(std::min(found_.size(), most_));
    return std::move(found_);
  }

 private:
  void add(std::string what, std::string happens) {
    found_.push_back({std::move(what), std::move(happens)});
  }

  void compare_couplet(std::uint32_t c) {
    auto const& wanted = wanted_.couplets[c];
    auto const& got = got_.couplets[c];
    auto const what = "couplet " + words_in_quotes(wanted.label);
    if (wanted.label != got.label) {
      return add(what, "couplet " + words_in_quotes(got.label) + " would be read in its place");
    }
    if (wanted.leads.size() != got.leads.size()) {
      return add(what, "it would have " + std::to_string(got.leads.size()) + " leads instead of " +
                           std::to_string(wanted.leads.size()));
    }
    for (std::uint32_t i = 0; i < wanted.leads.size(); ++i) {
      auto happens = of_lead(LeadId{CoupletId{c}, i});
      if (!happens.empty()) return add(what, std::move(happens));
    }
    if (wanted.notes != got.notes) return add(what, "its notes would be read otherwise");
    bool const same = std::equal(wanted.back_references.begin(), wanted.back_references.end(),
                                 got.back_references.begin(), got.back_references.end(),
                                 [](auto const& a, auto const& b) { return a.label == b.label; });
    if (!same) add(what, "its back-references would be read otherwise");
  }

  [[nodiscard]] std::string of_lead(LeadId id) const {
    auto const& wanted = wanted_[id];
    auto const& got = got_[id];
    auto const lead = "its lead " + std::to_string(id.ordinal + 1);
    if (wanted.text != got.text) {
      return "the words of " + lead + " would be read as " + words_in_quotes(got.text);
    }
    auto const to = std::visit(DestinationAsWords{wanted_}, wanted.destination);
    auto const other = std::visit(DestinationAsWords{got_}, got.destination);
    if (wanted.destination != got.destination || to != other) {
      return lead + " would lead to " + other + " instead of " + to +
             (to == other ? " (another of that name)" : "");
    }
    if (wanted.taxon_remark != got.taxon_remark) {
      return "the remark of " + lead + " would be read as " + words_in_quotes(got.taxon_remark);
    }
    if (wanted.notes != got.notes) return "the notes of " + lead + " would be read otherwise";
    if (wanted.figures != got.figures) return "the figures of " + lead + " would be read otherwise";
    return {};
  }

  void compare_counts(std::size_t count) {
    if (wanted_.couplets.size() > count) {
      add("couplet " + words_in_quotes(wanted_.couplets[count].label),
          "it would not be read as a couplet");
    } else {
      add("couplet " + words_in_quotes(got_.couplets[count].label),
          "it would be read though there is none");
    }
  }

  void compare_parts() {
    if (wanted_.parts.size() != got_.parts.size()) {
      return add("the division into keys", std::to_string(got_.parts.size()) +
                                               " would be read instead of " +
                                               std::to_string(wanted_.parts.size()));
    }
    for (std::size_t p = 0; p < wanted_.parts.size(); ++p) {
      auto const& wanted = wanted_.parts[p];
      auto const& got = got_.parts[p];
      if (wanted.title != got.title) {
        add("the key's title " + words_in_quotes(wanted.title),
            "it would be read as " + words_in_quotes(got.title));
      } else if (wanted.start != got.start) {
        add("the key " + words_in_quotes(wanted.title), "it would begin at another couplet");
      }
    }
  }

  void compare_taxa() {
    auto const count = std::min(wanted_.taxa.size(), got_.taxa.size());
    for (std::size_t t = 0; t < count; ++t) {
      auto const& wanted = wanted_.taxa[t];
      auto const& got = got_.taxa[t];
      auto const printed = [](Taxon const& taxon) {
        return words_in_quotes(taxon.name +
                               (taxon.authorship.empty() ? "" : " " + taxon.authorship));
      };
      if (wanted.name != got.name || wanted.authorship != got.authorship) {
        add("the taxon " + printed(wanted), "it would be read as " + printed(got));
      }
    }
    if (wanted_.taxa.size() != got_.taxa.size()) {
      add("the list of taxa", std::to_string(got_.taxa.size()) + " would be read instead of " +
                                  std::to_string(wanted_.taxa.size()));
    }
  }

  void compare_notes() {
    auto const count = std::min(wanted_.notes.size(), got_.notes.size());
    for (std::size_t n = 0; n < count; ++n) {
      if (wanted_.notes[n].text != got_.notes[n].text) {
        add("the note " + words_in_quotes(wanted_.notes[n].text),
            "it would be read as " + words_in_quotes(got_.notes[n].text));
      }
    }
    if (wanted_.notes.size() > count) {
      add("the note " + words_in_quotes(wanted_.notes[count].text), "it would be read as no note");
    } else if (got_.notes.size() > count) {
      add("the text " + words_in_quotes(got_.notes[count].text), "it would be read as a note");
    }
  }

  void compare_front() {
    auto const wanted = front_lines(wanted_.front);
    auto const got = front_lines(got_.front);
    for (auto const& line : wanted) {
      bool const same = std::any_of(got.begin(), got.end(), [&](FrontLine const& other) {
        return other.name == line.name && other.value == line.value;
      });
      if (!same) {
        add("the front matter " + words_in_quotes(line.name + ": " + line.value),
            "it would be read otherwise");
      }
    }
    if (found_.empty()) add("the front matter", "it would be read otherwise");
  }

  Edition const& wanted_;
  Edition const& got_;
  std::size_t most_;
  std::vector<Difference> found_;
};

}  // namespace

std::vector<Difference> differences(Edition const& wanted, Edition const& got, std::size_t most) {
  return Comparer{wanted, got, most}.run();
}

}  // namespace keydrift::printed
