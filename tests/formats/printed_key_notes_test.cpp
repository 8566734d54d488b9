// Notes on a key in print: on lines of their own, told in so many words where they would be taken
// for something else.

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_key.hpp"
#include "keydrift/formats/printed_write.hpp"
#include "printed_support.hpp"

namespace keydrift {
namespace {

constexpr std::string_view kKey{
    "1. Body keeled ..... Ausella busa\n– Body not keeled ..... 2\n\n"
    "2. Fins red ..... Ausella cusa\n– Fins blue ..... Ausella dusa\n"};

// The key with notes behind it.
Edition with_notes(std::vector<std::string> const& notes) {
  auto edition = test::read_key(kKey).edition;
  for (auto const& note : notes) {
    edition.notes.push_back({note, edition.couplets.back().place});
  }
  return edition;
}

std::vector<std::string> notes_of(Edition const& edition) {
  std::vector<std::string> notes;
  for (auto const& note : edition.notes) notes.push_back(note.text);
  return notes;
}

TEST(PrintedKeyNotes, StandOnOneLineWhereTheyWouldBreakInTwo) {
  std::vector<std::string> const notes{
      "Fig. 6. Ausella spp., genitalia. a, A. busa; b, A. cusa; c, A. simplex, sp. nov., holotype; "
      "d, A. dusa.",
      "Ausella simplex, sp. nov."};
  auto const printed = print_key(with_notes(notes));
  ASSERT_TRUE(printed);
  EXPECT_NE(printed.value->find("\n" + notes[0] + "\n"), std::string::npos) << *printed.value;
  EXPECT_EQ(printed.value->find("Layout:"), std::string::npos) << *printed.value;
  EXPECT_EQ(notes_of(test::read_key(*printed.value).edition), notes);
}

TEST(PrintedKeyNotes, AreAnnouncedWhereTheyLookLikeLeads) {
  std::vector<std::string> const notes{
      "3. Fins of both sexes alike, with long rays that reach the tail in the young and that are "
      "lost in old ones ..... Ausella eusa",
      "The key was tried on spirit material only."};
  auto const printed = print_key(with_notes(notes));
  ASSERT_TRUE(printed);
  EXPECT_NE(printed.value->find("\nNote on the key: 3. Fins of both"), std::string::npos);
  EXPECT_EQ(printed.value->find("Note on the key: The key was"), std::string::npos);
  auto const again = test::read_key(*printed.value).edition;
  EXPECT_EQ(notes_of(again), notes);
  EXPECT_EQ(again.couplets.size(), 2U);
}

TEST(PrintedKeyNotes, EndAtABlankLine) {
  std::string const text{
      "Layout: parallel, exact\n\n"
      "1. Body keeled ..... Ausella busa\n– Body not keeled ..... 2\n\n"
      "Note on the key: 3. Fins of both sexes alike\n– Fins of the male long ..... 4\n\n"
      "2. Fins red ..... Ausella cusa\n– Fins blue ..... Ausella dusa\n"};
  auto const edition = test::read_key(text).edition;
  EXPECT_EQ(notes_of(edition), std::vector<std::string>{
                                   "3. Fins of both sexes alike – Fins of the male long ..... 4"});
  EXPECT_EQ(edition.couplets.size(), 2U);
  EXPECT_EQ(test::line_kinds(text),
            "front matter, blank, lead, lead, blank, note, note, blank, lead, lead");
}

}  // namespace
}  // namespace keydrift
