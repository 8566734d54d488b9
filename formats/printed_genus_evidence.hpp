#pragma once
// Which of a text's words is the genus that leads leave out or cut short.  Inner header of formats.

#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "keydrift/formats/printed_lines.hpp"

namespace keydrift::printed {

// Weighs what all lines of a file say about a word that may be a genus.  Weights are those of
// TitleGenus (printed_title_genus.hpp): a strict Latin ending alone is 4, "Genus" before it 8 more.
class GenusEvidence {
 public:
  // `epithets`: those that the key's leads lead to; `words`: what stands before them and is no
  // genus, as places; `leads`: by line, whether a lead begins there.  Looks at the first 20,000
  // lines.
  GenusEvidence(std::vector<SourceLine> const& lines,
                std::unordered_set<std::string> const& epithets,
                std::unordered_set<std::string> words, std::vector<bool> const& leads);

  // What speaks for `genus` besides its place in a title, less what speaks against it: it stands
  // before epithets of the key, alone or nearly so on a line, opens the head of an account, has the
  // initial that stands before epithets of the key; it is a word of sentences, opens leads, occurs
  // in small letters too, is cited behind an author as journals are.
  [[nodiscard]] int weight(std::string const& genus) const;

  // The genera that stand before the epithet somewhere, in full: in order of their weights, of
  // equal ones in printed order.
  [[nodiscard]] std::vector<std::string> before_epithet(std::string const& epithet) const;

  // Genera that stand before some epithet of the key, or alone on a line, or within a sentence
  // where epithets of the key have their initial; in printed order, those of sentences last.
  [[nodiscard]] std::vector<std::string> const& candidates() const { return candidates_; }

 private:
  struct Uses {
    std::unordered_set<std::string> epithets;  // of the key, that stand behind it
    bool candidate{false};
    std::size_t alone{};          // on a line, with a number or an author at most
    std::size_t heads{};          // of accounts, with a number or "Genus" before it
    std::size_t accounts{};       // before epithets of no species in the key, and an author
    std::size_t announced{};      // behind "genus", or the genus of "Sect. Eu…"
    std::size_t opens_leads{};    // first of a lead's words
    std::size_t of_sentences{};   // opens words in small letters that are no epithets
    std::size_t cited{};          // behind "Roe,"
    std::size_t between_marks{};  // "Home > Plants"
    std::size_t mentions{};       // within sentences, behind an article
  };

  void look_at(std::string_view line, std::unordered_set<std::string> const& epithets, bool lead);
  void look_for_title(std::vector<std::string_view> const& words);
  void look_at_head(std::string_view line);
  void look_at_lead(std::string_view line);
  void know(std::string const& genus, Uses& uses);
  // Sentences name the genus of "A. bus" in full.
  void know_mentioned();

  std::unordered_set<std::string> words_;
  std::unordered_map<std::string, Uses> uses_;
  std::unordered_map<std::string, std::size_t> initials_;  // "A" of "A. bus": epithets of the key
  std::unordered_set<std::string> small_;                  // words in small letters
  std::unordered_map<std::string, std::vector<std::string>> before_;  // by epithet
  std::vector<std::string> mentioned_;  // within sentences, as genera are
  std::vector<std::string> candidates_;
};

}  // namespace keydrift::printed
