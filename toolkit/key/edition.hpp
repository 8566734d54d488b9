#pragma once
// An edition of an identification key: front matter, couplets in printed order, terminal taxa.
//
// Values only.  The verbatim text is never lost: everything derived points back to it by Place.

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "keydrift/key/finding.hpp"
#include "keydrift/key/id.hpp"
#include "keydrift/key/statement.hpp"

namespace keydrift {

// What the key is for.  Empty members mean "not said", which covers everything.
struct Scope {
  std::string taxa;                 // as printed: "the species of Aus"
  std::string region;               // as printed: "Halvern Basin and the Outer Marches"
  std::vector<std::string> places;  // place names inside the region (front matter "Places: a; b")
  std::vector<std::string> excluded_taxa;  // said to be left out ("Excludes: Aus; Bus cus")
  std::vector<std::string> listed_taxa;    // the list of taxa that the key claims ("Lists: …")
  std::string life_stage;           // canonical, e.g. "adult"
  std::string sex;                  // "male" / "female"
  std::string material;             // e.g. "fruiting"
  // Where the names of the two lists stand, one for one; empty when that is not known.
  std::vector<Place> excluded_places{};
  std::vector<Place> listed_places{};
};

// "New name = old name": nomenclature only, said in the front matter ("Synonyms: A. bus = C. bus").
struct Synonymy {
  std::string accepted;
  std::string synonym;
  Place place;
};

struct FrontMatter {
  std::string title;
  std::string edition;  // label: "1998", "2nd"
  std::optional<int> year;
  std::vector<std::string> authors;
  std::string language;  // BCP 47; empty: not said (read as English)
  Scope scope;
  std::vector<Synonymy> synonyms;
  std::vector<std::pair<std::string, std::string>> other;  // unrecognised "Name: value" lines
};

// A terminal of the key.
struct Taxon {
  std::string name;        // without authorship: "Velunaca palustris"; abbreviations expanded
  std::string authorship;  // as printed; may be empty
  Place place;             // first lead that names it
};

// Where a lead leads.
struct ToCouplet {
  CoupletId couplet;
  bool operator==(ToCouplet const&) const = default;
};
struct ToTaxa {
  std::vector<TaxonId> taxa;  // one or more, printed order
  bool operator==(ToTaxa const&) const = default;
};
struct ToKey {
  std::string key;  // title or name of another key, as printed ("Key B")
  bool operator==(ToKey const&) const = default;
};
struct Unresolved {
  std::string printed;  // may be empty: the lead prints no destination at all
  bool operator==(Unresolved const&) const = default;
};
using Destination = std::variant<Unresolved, ToCouplet, ToTaxa, ToKey>;

// Ties a stretch of Lead::text to the source: bytes text_begin … up to the next run's text_begin
// come from `place` (a run never spans a line end; hyphenation and joins are made between runs).
struct TextRun {
  std::size_t text_begin{};
  Place place;
};

struct Lead {
  std::string label;  // as printed: "7a", "7'", "–"
  std::string text;   // the words between label and destination; wrapped lines joined by one blank
  std::vector<TextRun> runs;
  Place place;                      // of the whole lead: label to destination
  Destination destination;
  std::string destination_printed;  // as printed, without dot leaders: "8", "Aus bus Smith, p. 44"
  Place destination_place;
  std::string taxon_remark;         // said after the taxon: "in part", "rare form only"
  std::vector<Statement> statements;  // filled by keydrift/characters (or by inline marks / JSON)
  std::vector<std::string> notes;     // notes printed under the lead
  std::vector<std::string> figures;   // "Fig. 7", as printed
};

// "9 (3, 12)": the couplets said to lead here.
struct BackReference {
  std::string label;
  Place place;
};

struct Couplet {
  std::string label;  // without lead letters and back-references: "7", "7a"
  std::vector<Lead> leads;
  std::vector<BackReference> back_references;
  std::vector<std::string> notes;
  Place place;
};

struct Note {
  std::string text;
  Place place;
};

// A key within the file; most files hold one.
struct KeyPart {
  std::string title;  // may be empty
  CoupletId start;
  Place place;
};

struct Edition {
  std::string name;  // what messages call it: the path or REPO@REVISION:PATH it came from
  FrontMatter front;
  std::vector<KeyPart> parts;  // in printed order; parts[0].start is where keying begins
  std::vector<Couplet> couplets;
  std::vector<Taxon> taxa;  // order of first naming
  std::vector<Note> notes;

  // Precondition of these: the id was issued by this edition.
  [[nodiscard]] Couplet const& operator[](CoupletId id) const { return couplets[id.index]; }
  [[nodiscard]] Couplet& operator[](CoupletId id) { return couplets[id.index]; }
  [[nodiscard]] Lead const& operator[](LeadId id) const {
    return couplets[id.couplet.index].leads[id.ordinal];
  }
  [[nodiscard]] Lead& operator[](LeadId id) { return couplets[id.couplet.index].leads[id.ordinal]; }
  [[nodiscard]] Taxon const& operator[](TaxonId id) const { return taxa[id.index]; }
};

// How a short message names the edition: its label, else its year, else its file name.
[[nodiscard]] std::string short_label(Edition const& edition);

// "7a": how a lead is called in prose.  The printed label if it tells couplet and side, else the
// couplet's label with a letter.
[[nodiscard]] std::string lead_name(Edition const& edition, LeadId lead);

// The place in the source of byte `offset` of lead.text.
[[nodiscard]] Place place_in_text(Lead const& lead, std::size_t offset, std::size_t length);

// Same front matter, couplets, leads, destinations and taxa; places, runs, labels of leads and
// statements (which are derived) are ignored.  What a round trip must preserve.
[[nodiscard]] bool same_content(Edition const& a, Edition const& b);

}  // namespace keydrift
