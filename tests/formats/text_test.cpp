#include "keydrift/formats/text.hpp"

#include <gtest/gtest.h>

#include "finding_text.hpp"
#include "keydrift/formats/text_encodings.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::one_line_each;
using Lines = std::vector<std::string>;

std::string decoded_text(std::string_view bytes) {
  auto const loaded = decode_text({.name = "k.txt", .bytes = bytes});
  EXPECT_TRUE(loaded) << (loaded.findings.empty() ? "" : loaded.findings.front().message);
  return loaded ? loaded.value->text : "";
}

Lines findings(std::string_view bytes) {
  return one_line_each(decode_text({.name = "k.txt", .bytes = bytes}).findings);
}

TEST(DecodeText, TakesUtf8AsItIsAndDropsTheByteOrderMark) {
  EXPECT_EQ(decoded_text("1. Fr\u00FCchte – 2\n"), "1. Fr\u00FCchte – 2\n");
  EXPECT_EQ(decoded_text("\xEF\xBB\xBF"
                         "a\n"),
            "a\n");
  EXPECT_TRUE(findings("\xEF\xBB\xBF"
                       "a\n")
                  .empty());
}

TEST(DecodeText, ReadsUtf16OfBothByteOrdersWithAndWithoutMark) {
  EXPECT_EQ(decoded_text("\xFF\xFE"
                         "a\0\n\0"sv),
            "a\n");
  EXPECT_EQ(decoded_text("\xFE\xFF\0a\0\n"sv), "a\n");
  EXPECT_EQ(decoded_text("1\0.\0 \0A\0\xFC\0\n\0"sv), "1. A\u00FC\n");
  EXPECT_EQ(decoded_text("\xFF\xFE\x3D\xD8\x0A\xDE!\0"sv), "\U0001F60A!");
  EXPECT_EQ(findings("\xFE\xFF\0a\0\n"sv),
            Lines{"k.txt:1:1: information: the file is not UTF-8; it was read as UTF-16 "
                  "(big-endian) [encoding] (if any character looks wrong, save it as UTF-8, or "
                  "tell what it is in with --encoding NAME)"});
}

TEST(DecodeText, RecognisesWindows1252AndSaysSo) {
  EXPECT_EQ(decoded_text("1. Fr\xFC"
                         "chte \x96 l\xE4nger \x85 2"),
            "1. Früchte – länger … 2");
  EXPECT_EQ(findings("Fr\xFC"
                     "chte"),
            Lines{"k.txt:1:1: information: the file is not UTF-8; it was read as Windows-1252 "
                  "[encoding] (if any character looks wrong, save it as UTF-8, or tell what it is "
                  "in with --encoding NAME)"});
}

TEST(DecodeText, ReadsUtf32ByItsMark) {
  EXPECT_EQ(decoded_text("\xFF\xFE\0\0a\0\0\0\x3A\xF6\1\0\n\0\0\0"sv), "a\U0001F63A\n");
  EXPECT_EQ(decoded_text("\0\0\xFE\xFF\0\0\0\xFC\0\0\0\n"sv), "ü\n");
  EXPECT_EQ(decoded_text("\0\0\xFE\xFF\0\0\0x\0\x11\0\0\0\0"sv), "x\uFFFD\uFFFD");
  EXPECT_EQ(findings("\xFF\xFE\0\0a\0\0\0"sv),
            Lines{"k.txt:1:1: information: the file is not UTF-8; it was read as UTF-32 "
                  "(little-endian) [encoding] (if any character looks wrong, save it as UTF-8, or "
                  "tell what it is in with --encoding NAME)"});
}

TEST(DecodeText, TellsMacRomanByTheLettersWithinWords) {
  // "Früchte grün, Blätter länger \x96" in both.
  EXPECT_EQ(decoded_text("Fr\x9F"
                         "chte gr\x9Fn, Bl\x8Atter l\x8Anger \xD0 2 \xC9 3\r"),
            "Früchte grün, Blätter länger – 2 … 3\n");
  EXPECT_EQ(decoded_text("Fr\xFC"
                         "chte gr\xFCn, Bl\xE4tter l\xE4nger \x96 2 \x85 3\r\n"),
            "Früchte grün, Blätter länger – 2 … 3\n");
  EXPECT_EQ(decoded_text("p\x9A\x9Ai\x9A"
                         "e, l\x92herbe, c\x9Cur"),
            "pššiše, l’herbe, cœur");
  EXPECT_EQ(findings("gr\x9Fn"),
            Lines{"k.txt:1:1: information: the file is not UTF-8; it was read as Mac OS Roman "
                  "[encoding] (if any character looks wrong, save it as UTF-8, or tell what it is "
                  "in with --encoding NAME)"});
}

TEST(DecodeText, ReadsEachLineOfAMixedFileAsWhatItIs) {
  auto const mixed = "Früchte\ngr\xFCn \x96 2\r\nplain\rBlätter \xE9\nd\xFCnn";
  EXPECT_EQ(decoded_text(mixed), "Früchte\ngrün – 2\nplain\nBlätter é\ndünn");
  auto const loaded = decode_text({.name = "k.txt", .bytes = mixed});
  EXPECT_EQ(one_line_each(loaded.findings),
            Lines{"k.txt:2:1: warning: the file mixes encodings: 3 lines are not UTF-8 as the "
                  "others are, and were read as Windows-1252 [mixed-encodings] (compare these "
                  "lines with the original, and save the file as UTF-8)"});
  ASSERT_EQ(loaded.findings[0].related.size(), 2U);
  EXPECT_EQ(loaded.findings[0].related[0].place.line, 4U);
  EXPECT_EQ(loaded.findings[0].related[1].place.line, 5U);
}

TEST(DecodeText, RepairsStrayBytesInAFileThatIsMostlyUtf8) {
  EXPECT_EQ(decoded_text("ä ö ü \xE9 ß"), "ä ö ü é ß");
  EXPECT_EQ(findings("ä ö ü \xE9 ß"),
            Lines{"k.txt:1:1: warning: the file mixes encodings: 1 line is not UTF-8 as the others "
                  "are, and was read as Windows-1252 [mixed-encodings] (compare this line with the "
                  "original, and save the file as UTF-8)"});
}

TEST(DecodeText, NormalisesTheLineEndsOfEveryPlatform) {
  EXPECT_EQ(decoded_text("a\r\nb\rc\nd\ve\u2028f\u2029g\u0085h"), "a\nb\nc\nd\ne\nf\ng\nh");
  EXPECT_EQ(decoded_text("a\r\n\r\nb\r\r"), "a\n\nb\n\n");
}

TEST(DecodeText, KeepsTabsAndFormFeedsAndBlanksOutOtherControls) {
  EXPECT_EQ(decoded_text("a text of some length\tb\f\n\x01 words that go on for a while"),
            "a text of some length\tb\f\n  words that go on for a while");
}

TEST(DecodeText, ComposesToNormalisationFormC) {
  EXPECT_EQ(decoded_text("Fru\u0308chte e\u0301 \u212B"), "Früchte é \u00C5");
  EXPECT_EQ(decoded_text("\u0308x"), "\u0308x");
}

TEST(DecodeText, RefusesAnEmptyFile) {
  EXPECT_EQ(findings(""), Lines{"k.txt:1:1: error: the file is empty [empty-file] (check that this "
                                "is the right file and that it was saved)"});
  EXPECT_EQ(findings("\xEF\xBB\xBF \n\r\n"),
            Lines{"k.txt:1:1: error: the file holds nothing but blanks [empty-file] (check that "
                  "this is the right file and that it was saved)"});
}

TEST(DecodeText, RefusesBinaryFilesAndSaysWhatToDo) {
  EXPECT_EQ(findings("ab\0cd\0\0\0e"sv),
            Lines{"k.txt:1:1: error: this is a binary file (it holds NUL bytes), not text "
                  "[binary-file] (export it as plain text (UTF-8) and load that file)"});
  EXPECT_EQ(findings("PK\x03\x04rest"),
            Lines{"k.txt:1:1: error: this is a word-processor, spreadsheet or zip file, not text "
                  "[binary-file] (export it as plain text (UTF-8) and load that file)"});
  EXPECT_EQ(findings("\x01\x02\x03\x04\x05 a"),
            Lines{"k.txt:1:1: error: this is a binary file (it is full of control characters), not "
                  "text [binary-file] (export it as plain text (UTF-8) and load that file)"});
  EXPECT_FALSE(decode_text({.name = "k.txt", .bytes = "%PDF-1.7"}));
}

TEST(DecodeText, RefusesWhatExceedsTheLimit) {
  auto const loaded = decode_text({.name = "k.txt", .bytes = "abcdef"}, {.maximum_bytes = 5});
  EXPECT_EQ(one_line_each(loaded.findings),
            Lines{"k.txt:1:1: error: the file has 6 bytes, more than the limit of 5 [too-large] "
                  "(split the file; if it is meant to be this large, --limit size=6 takes it in)"});
}

TEST(DecodeText, ReportsTracesOfAWrongConversionOnceWithAllPlaces) {
  auto const loaded =
      decode_text({.name = "k.txt", .bytes = "ok\nFrÃ¼chte rot\nx â€“ y\nz \uFFFD"});
  ASSERT_TRUE(loaded);
  ASSERT_EQ(one_line_each(loaded.findings),
            Lines{"k.txt:2:3: warning: the word \"FrÃ¼chte\" was damaged by a wrong conversion, "
                  "and so were 2 further places [encoding-damage] (open the original, save it as "
                  "UTF-8 text and compare these places)"});
  ASSERT_EQ(loaded.findings[0].related.size(), 2U);
  EXPECT_EQ(loaded.findings[0].related[0].place.line, 3U);
  EXPECT_EQ(loaded.findings[0].related[1].place.column, 3U);
}

TEST(DecodeText, LeavesLanguagesAlone) {
  EXPECT_TRUE(findings("São João, Île-d'Â, coração, pâté, « Ã »").empty());
}

TEST(Utf8, RejectsOverlongAndSurrogateSequences) {
  EXPECT_EQ(encodings::sequence_length("\xC0\x80"), 0U);
  EXPECT_EQ(encodings::sequence_length("\xE0\x80\x80"), 0U);
  EXPECT_EQ(encodings::sequence_length("\xED\xA0\x80"), 0U);
  EXPECT_EQ(encodings::sequence_length("\xF4\x90\x80\x80"), 0U);
  EXPECT_EQ(encodings::sequence_length("\xF4\x8F\xBF\xBF"), 4U);
  EXPECT_EQ(encodings::first_ill_formed("plain ascii of some length \xC3"), 27U);
}

TEST(TextPlaces, CountsLinesFromOneAndColumnsInCodePoints) {
  TextPlaces const places{"ab\nüüx\n\nz"};
  EXPECT_EQ(places.line_count(), 4U);
  auto const place = places.at(7, 8);
  EXPECT_EQ(place.line, 2U);
  EXPECT_EQ(place.column, 3U);
  EXPECT_EQ(place.begin, 7U);
  EXPECT_EQ(places.line(2), "üüx");
  EXPECT_EQ(places.line(3), "");
  EXPECT_EQ(places.at(0, 0).column, 1U);
  EXPECT_EQ(TextPlaces{"a\n"}.line_count(), 1U);
}

}  // namespace
}  // namespace keydrift
