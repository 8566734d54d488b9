// Texts in the encodings of their languages: said by the file or the user, or told by letters.

#include <gtest/gtest.h>
#include <iconv.h>

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "finding_text.hpp"
#include "keydrift/formats/edition_reader.hpp"
#include "keydrift/formats/text.hpp"
#include "keydrift/formats/text_declared.hpp"
#include "keydrift/formats/xml_document.hpp"

namespace keydrift {
namespace {

using namespace std::string_view_literals;
using test::one_line_each;
using Lines = std::vector<std::string>;

// `text`, UTF-8, in the encoding that iconv calls `name`.
std::string in(char const* name, std::string_view text) {
  auto const handle = ::iconv_open(name, "UTF-8");
  std::string from{text};
  std::string to(text.size() * 4 + 16, '\0');
  auto* at = from.data();
  auto left = from.size();
  auto* out = to.data();
  auto room = to.size();
  EXPECT_EQ(::iconv(handle, &at, &left, &out, &room), 0U) << name << ": " << text;
  ::iconv(handle, nullptr, nullptr, &out, &room);
  ::iconv_close(handle);
  to.resize(to.size() - room);
  return to;
}

// The encoding and the text, "Windows-1251: слово".
std::string decoding_of(std::string_view bytes, std::optional<Encoding> asked = {},
                        std::string_view declared = {}) {
  auto const loaded =
      decode_text({.name = "k.txt", .bytes = bytes, .encoding = asked}, {.declared = declared});
  if (!loaded) return "refused";
  return std::string{to_word(loaded.value->encoding)} + ": " + loaded.value->text;
}

constexpr auto kRussian =
    "1. Надкрылья чёрные, блестящие; переднеспинка с ямкой . . . 2\n"
    "– Надкрылья бурые, «матовые», длина 5–6 мм; усики её короткие. . . Aus bus\n"
    "2. ГОЛОВА широкая. Тело в волосках . . . Aus cus\n– Голова узкая . . . Aus dus\n"sv;
constexpr auto kUkrainian =
    "1. Надкрила чорні, блискучі; Від основи до вершини їх боки рівні . . . 2\n"
    "– Надкрила жовті, є пляма біля шва . . . Aus bus\n"sv;
constexpr auto kBulgarian =
    "1. Елитрите са черни и лъскави, краката са жълти . . . 2\n– Елитрите са кафяви . . . 3\n"sv;
constexpr auto kGreekWords =
    "1. Τα έλυτρα είναι μαύρα και γυαλιστερά, Ο θώρακας έχει κοιλότητα . . . 2\n"
    "– Τα έλυτρα είναι καφέ, το σώμα πλατύ· μήκος 5 mm . . . Aus bus\n"sv;

std::string as(char const* word, std::string_view text) {
  return std::string{word} + ": " + std::string{text};
}

// What an encoding has no sign for is left out.
std::string without(std::string text, std::initializer_list<std::string_view> signs) {
  for (auto const sign : signs) {
    for (auto at = text.find(sign); at != std::string::npos; at = text.find(sign, at)) {
      text.replace(at, sign.size(), "-");
    }
  }
  return text;
}

TEST(TextEncodings, CyrillicIsToldByItsLetters) {
  EXPECT_EQ(decoding_of(in("CP1251", kRussian)), as("Windows-1251", kRussian));
  EXPECT_EQ(decoding_of(in("MAC-CYRILLIC", kRussian)), as("Mac OS Cyrillic", kRussian));
  auto const plain = without(std::string{kRussian}, {"–", "«", "»"});
  EXPECT_EQ(decoding_of(in("KOI8-R", plain)), as("KOI8-R", plain));
  EXPECT_EQ(decoding_of(in("CP866", plain)), as("IBM 866", plain));
  EXPECT_EQ(decoding_of(in("ISO-8859-5", plain)), as("ISO-8859-5", plain));
  EXPECT_EQ(decoding_of(in("CP1251", kUkrainian)), as("Windows-1251", kUkrainian));
  auto const ukrainian = without(std::string{kUkrainian}, {"–"});
  EXPECT_EQ(decoding_of(in("KOI8-U", ukrainian)), as("KOI8-U", ukrainian));
  EXPECT_EQ(decoding_of(in("CP1251", kBulgarian)), as("Windows-1251", kBulgarian));
}

TEST(TextEncodings, GreekIsToldByItsLetters) {
  EXPECT_EQ(decoding_of(in("CP1253", kGreekWords)), as("Windows-1253", kGreekWords));
  auto const plain = without(std::string{kGreekWords} + "Άνω χείλος\n", {"–"});
  EXPECT_EQ(decoding_of(in("ISO-8859-7", plain)), as("ISO-8859-7", plain));
}

TEST(TextEncodings, JapaneseChineseAndKoreanAreToldByTheirCommonestSigns) {
  constexpr auto kJapanese =
      "1. 上翅は黒い。頭部は広く、触角は短い . . . 2\n- 上翅は褐色 . . . 3\n"sv;
  EXPECT_EQ(decoding_of(in("EUC-JP", kJapanese)), as("EUC-JP", kJapanese));
  EXPECT_EQ(decoding_of(in("CP932", kJapanese)), as("Shift-JIS", kJapanese));
  constexpr auto kSimplified =
      "1. 鞘翅黑色,有光泽;头部宽,触角较短 . . . 2\n- 鞘翅褐色或黄色,体毛长,足不为黑色 . . . 3\n"sv;
  EXPECT_EQ(decoding_of(in("GBK", kSimplified)), as("GB18030", kSimplified));
  constexpr auto kTraditional =
      "1. 鞘翅黑色,有光澤;頭部寬,觸角較短 . . . 2\n- 鞘翅褐色或黃色,體毛長,足不為黑色 . . . 3\n"sv;
  EXPECT_EQ(decoding_of(in("BIG5", kTraditional)), as("Big5", kTraditional));
  constexpr auto kKorean =
      "1. 딱지날개는 검은색이고 광택이 있다 . . . 2\n- 딱지날개는 갈색이며 머리는 넓다 . . . 3\n"sv;
  EXPECT_EQ(decoding_of(in("CP949", kKorean)), as("EUC-KR", kKorean));
}

// One is taken for another at the price of every word.
TEST(TextEncodings, LatinLettersAreNeverCyrillic) {
  constexpr std::array kTexts{
      "Élytres noirâtres, à côtes élevées; tête très étroite, créée après l’été où naît"sv,
      "Flügeldecken gewölbt, Fühler länger, Füße grün, Überzug gräulich, Größe größer"sv,
      "Élitros são mais curtos; coração, ações, porções não pãezinhos, às três órgãos"sv};
  for (auto const text : kTexts) {
    EXPECT_EQ(decoding_of(in("CP1252", text)), as("Windows-1252", text));
  }
  for (auto const text : {"Příčně žíhané krovky, tělo černé; štít úzký, nejširší vpředu, žluťoučký "
                          "kůň úpěl, příští šíře"sv,
                          "Pokrywy żółte, błyszczące; przedplecze węższe, źdźbło, żółć, łąką, "
                          "gęsią, większą częścią"sv}) {
    EXPECT_EQ(decoding_of(in("CP1250", text)).substr(0, 12), "Windows-1252");
  }
  auto const turkish =
      "Işığı sığ, kanatları açık sarı; ağacın gövdesi şişkin, ışığın çığlığı, güçlü göğüs"sv;
  EXPECT_EQ(decoding_of(in("CP1254", turkish)).substr(0, 12), "Windows-1252");
  auto const hebrew = "כנפיים שחורות ומבריקות, הראש רחב והגוף שעיר, המחושים קצרים וחומים"sv;
  EXPECT_EQ(decoding_of(in("CP1255", hebrew)).substr(0, 12), "Windows-1252");
  auto const arabic = "الأجنحة سوداء لامعة والرأس عريض والجسم مغطى بالشعر وقرون الاستشعار قصيرة"sv;
  EXPECT_EQ(decoding_of(in("CP1256", arabic)).substr(0, 12), "Windows-1252");
  // Rules and leaders of a text of another day.
  auto const ruled =
      "\xC4\xC4\xC4\xC4\xC4\xC4\xC4\xC4\xC4\xC4\xC4\xC4 key \x85\x85\x85\x85\x85\x85"
      "\xB7\xB7\xB7\xB7\xB7\xB7\xCD\xCD\xCD\xCD\xCD\xCD\xCD"sv;
  EXPECT_EQ(decoding_of(ruled).substr(0, 12), "Windows-1252");
}

TEST(TextEncodings, LinesOfUtf8AmongThemAreStillMended) {
  auto const mixed = std::string{kRussian} + "gr\xFCn\n";
  EXPECT_EQ(decoding_of(mixed), "UTF-8: " + std::string{kRussian} + "grün\n");
}

TEST(TextEncodings, LabelsAreThoseOfTheWeb) {
  EXPECT_EQ(encoding_by_label(" GB2312\n"), Encoding::gb_18030);
  EXPECT_EQ(encoding_by_label("x-sjis"), Encoding::shift_jis);
  EXPECT_EQ(encoding_by_label("KS_C_5601-1987"), Encoding::euc_kr);
  EXPECT_EQ(encoding_by_label("ISO-8859-1"), Encoding::windows_1252);
  EXPECT_EQ(encoding_by_label("us-ascii"), Encoding::windows_1252);
  EXPECT_EQ(encoding_by_label("iso-8859-9"), Encoding::windows_1254);
  EXPECT_EQ(encoding_by_label("tis-620"), Encoding::windows_874);
  for (auto const none : {"", " ", "x-none", "utf-8 koi8-r", "-8859-"}) {
    EXPECT_EQ(encoding_by_label(none), std::nullopt) << none;
  }
}

struct Written {
  char const* label;
  char const* iconv;
  std::string_view text;
};
constexpr std::array kWritten{Written{"windows-1250", "CP1250", "Příčně žíhané – łódź"},
                              Written{"iso-8859-2", "ISO-8859-2", "Příčně žíhané łódź"},
                              Written{"windows-1254", "CP1254", "ışığı çığ"},
                              Written{"windows-1257", "CP1257", "Ąžuolo žievė, šķīst"},
                              Written{"koi8-r", "KOI8-R", "ёж"},
                              Written{"cp866", "CP866", "ёж"},
                              Written{"windows-1258", "CP1258", "tiếng Việt"},
                              Written{"windows-874", "WINDOWS-874", "กุญแจ"},
                              Written{"gb2312", "GBK", "鞘翅黑色,触角短"},
                              Written{"gb18030", "GB18030", "鞘翅㐂黑色"},
                              Written{"big5", "BIG5", "鞘翅黑色"},
                              Written{"shift_jis", "CP932", "上翅は黒い。ソ表"},
                              Written{"euc-jp", "EUC-JP", "上翅は黒い。"},
                              Written{"iso-2022-jp", "ISO-2022-JP", "上翅は黒い。\nplain"},
                              Written{"euc-kr", "CP949", "딱지날개는 검은색 똠"},
                              Written{"utf-16le", "UTF-16LE", "ёжик"}};

TEST(TextEncodings, WhatTheUserSaysIsObeyed) {
  for (auto const& [label, iconv, text] : kWritten) {
    auto const asked = encoding_by_label(label);
    ASSERT_TRUE(asked) << label;
    EXPECT_EQ(decoding_of(in(iconv, text), asked), as(to_word(*asked), text));
  }
  auto const bytes = in("CP1250", "žluťoučký");
  auto const loaded =
      decode_text({.name = "k.txt", .bytes = bytes, .encoding = Encoding::windows_1250},
                  {.declared = "koi8-r"});
  EXPECT_EQ(one_line_each(loaded.findings),
            Lines{"k.txt:1:1: information: the file is not UTF-8; it was read as Windows-1250, as "
                  "--encoding says [encoding] (if any character looks wrong, save it as UTF-8, or "
                  "tell what it is in with --encoding NAME)"});
}

// The other edition may be UTF-8, and the option holds for both.
TEST(TextEncodings, WellFormedUtf8IsUtf8WhateverIsSaid) {
  EXPECT_EQ(decoding_of("Früchte", Encoding::koi8_r), "UTF-8: Früchte");
  EXPECT_EQ(decoding_of("Früchte", Encoding::iso_2022_jp), "UTF-8: Früchte");
  EXPECT_EQ(decoding_of("Früchte", {}, "gb2312"), "UTF-8: Früchte");
  EXPECT_EQ(decoding_of("\xFF\xFE"
                        "a\0"sv,
                        Encoding::koi8_r),
            "UTF-16 (little-endian): a");
}

TEST(TextEncodings, WhatIsNotOfTheEncodingIsToldWithItsPlace) {
  auto const bytes = "1. " + in("CP932", "上翅") + "\n2. a\x81 b \xFF c";
  auto const loaded =
      decode_text({.name = "k.txt", .bytes = bytes, .encoding = Encoding::shift_jis});
  ASSERT_TRUE(loaded);
  EXPECT_EQ(loaded.value->text, "1. 上翅\n2. a\uFFFD b \uFFFD c");
  ASSERT_EQ(loaded.findings.size(), 2U);
  EXPECT_EQ(test::one_line(loaded.findings[1]),
            "k.txt:2:5: warning: the word \"a\uFFFD\" holds bytes that are not Shift-JIS, and so "
            "does 1 further place [encoding-damage] (see whether the file is in another encoding, "
            "which --encoding NAME tells; else compare these places with the original)");
  EXPECT_EQ(decoding_of("a\x98z", Encoding::windows_1251), "Windows-1251: a\uFFFDz");
  EXPECT_EQ(decoding_of("\xE9\xE9", Encoding::utf_8), "UTF-8: \uFFFD\uFFFD");
  // Code page 949 has nothing for these two.
  EXPECT_EQ(decoding_of("a\xA2\xE8", Encoding::euc_kr), "EUC-KR: a\uFFFD");
  // The text ends within a letter.
  EXPECT_EQ(decoding_of("a\x81", Encoding::shift_jis), "Shift-JIS: a\uFFFD");
}

TEST(TextEncodings, WhatTheFileDeclaresIsObeyed) {
  for (auto const& [label, iconv, text] : kWritten) {
    if (label == "utf-16le"sv) continue;  // that a page can be read says that it is not so
    EXPECT_EQ(decoding_of(in(iconv, text), {}, label),
              as(to_word(*encoding_by_label(label)), text));
  }
  auto const loaded = decode_text({.name = "k.txt", .bytes = "gr\xFCn"}, {.declared = "x-none"});
  ASSERT_EQ(loaded.findings.size(), 2U);
  EXPECT_EQ(test::one_line(loaded.findings[0]),
            "k.txt:1:1: warning: the file declares the encoding \"x-none\", which is not known; it "
            "was read as Windows-1252 [unknown-encoding] (save it as UTF-8, or tell what it is in "
            "with --encoding NAME)");
}

TEST(TextEncodings, PagesDeclareThemInSeveralWays) {
  using encodings::declared_charset;
  EXPECT_EQ(declared_charset("<html><head><META CharSet=koi8-r><p>"), "koi8-r");
  EXPECT_EQ(declared_charset("<meta charset = \"gb2312\" />"), "gb2312");
  EXPECT_EQ(declared_charset("<meta http-equiv=\"Content-Type\" content=\"text/html; "
                             "charset=windows-1251\">"),
            "windows-1251");
  EXPECT_EQ(declared_charset("<meta content='text/html;charset=big5' http-equiv=content-type>"),
            "big5");
  EXPECT_EQ(declared_charset("<?xml version='1.0' encoding='euc-jp'?><html>"), "euc-jp");
  auto const comment = "<!--" + std::string(9000, 'x') + "<meta charset=big5> -->";
  EXPECT_EQ(declared_charset(comment + "<meta charset=euc-kr>"), "euc-kr");
  EXPECT_EQ(declared_charset("<script>'<meta charset=big5>'</script><meta charset=euc-kr>"),
            "euc-kr");
  EXPECT_EQ(declared_charset("<meta name=description content='charset=big5'><p>"), "");
  EXPECT_EQ(declared_charset("<p>charset=big5"), "");
  EXPECT_EQ(declared_charset(std::string(70'000, ' ') + "<meta charset=big5>"), "");
}

std::string first_lead(Loaded<EditionReading> const& loaded) {
  if (!loaded || loaded.value->edition.couplets.empty()) return "nothing";
  return loaded.value->edition.couplets.front().leads.front().text;
}

TEST(TextEncodings, APageIsReadAsItDeclares) {
  auto const page = in("CP1250",
                       "<html><head><meta http-equiv=\"Content-Type\" content=\"text/html; "
                       "charset=windows-1250\"></head><body><p>1. Krovky žluté ..... 2</p>"
                       "<p>– Krovky černé ..... Aus bus</p><p>2. Štít úzký ..... Aus cus</p>"
                       "<p>– Štít široký ..... Aus dus</p></body></html>");
  EXPECT_EQ(first_lead(read_edition({.name = "k.html", .bytes = page})), "Krovky žluté");
}

TEST(TextEncodings, AnArticleIsReadAsItDeclares) {
  for (auto const& [label, iconv, text] : kWritten) {
    if (label == "utf-16le"sv || label == "iso-2022-jp"sv) continue;
    auto const article = in(iconv, "<?xml version='1.0' encoding='" + std::string{label} +
                                       "'?><a>" + std::string{text} + "</a>");
    auto const loaded = xml::parse({.name = "k.xml", .bytes = article});
    ASSERT_TRUE(loaded) << label;
    EXPECT_EQ(std::string{loaded.value->root().first_child().value()}, text) << label;
    EXPECT_EQ(loaded.findings.size(), 1U) << label;
  }
  EXPECT_TRUE(xml::parse({.name = "k.xml",
                          .bytes = "<?xml version='1.0' encoding='x-none'?><a>\xE9</a>",
                          .encoding = Encoding::windows_1250}));
}

}  // namespace
}  // namespace keydrift
