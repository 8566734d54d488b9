#include "keydrift/formats/text_labels.hpp"

#include <algorithm>
#include <array>

namespace keydrift {
namespace {

using namespace std::string_view_literals;

struct Named {
  Encoding encoding{};
  char const* word;        // for readers
  char const* iconv;       // glibc's name
  std::string_view label;  // that users are shown
  // Further labels, with a blank before and behind each (WHATWG Encoding Standard, 4.2, from
  // memory).
  std::string_view others;
};

constexpr std::array kTable{
    Named{Encoding::utf_8, "UTF-8", "UTF-8", "utf-8",
          " utf8 unicode-1-1-utf-8 unicode11utf8 unicode20utf8 x-unicode20utf8 "},
    Named{Encoding::utf_16_le, "UTF-16 (little-endian)", "UTF-16LE", "utf-16le",
          " utf-16 csunicode iso-10646-ucs-2 ucs-2 unicode unicodefeff "},
    Named{Encoding::utf_16_be, "UTF-16 (big-endian)", "UTF-16BE", "utf-16be", " unicodefffe "},
    Named{Encoding::utf_32_le, "UTF-32 (little-endian)", "UTF-32LE", "utf-32le", " utf-32 "},
    Named{Encoding::utf_32_be, "UTF-32 (big-endian)", "UTF-32BE", "utf-32be", ""},
    Named{Encoding::windows_1250, "Windows-1250", "CP1250", "windows-1250", " cp1250 x-cp1250 "},
    Named{Encoding::windows_1251, "Windows-1251", "CP1251", "windows-1251", " cp1251 x-cp1251 "},
    Named{Encoding::windows_1252, "Windows-1252", "CP1252", "windows-1252",
          " ansi_x3.4-1968 ascii cp1252 cp819 csisolatin1 ibm819 iso-8859-1 iso-ir-100 iso8859-1 "
          "iso88591 iso_8859-1 iso_8859-1:1987 l1 latin1 latin-1 us-ascii x-cp1252 "},
    Named{Encoding::windows_1253, "Windows-1253", "CP1253", "windows-1253", " cp1253 x-cp1253 "},
    Named{Encoding::windows_1254, "Windows-1254", "CP1254", "windows-1254",
          " cp1254 csisolatin5 iso-8859-9 iso-ir-148 iso8859-9 iso88599 iso_8859-9 "
          "iso_8859-9:1989 l5 latin5 x-cp1254 "},
    Named{Encoding::windows_1255, "Windows-1255", "CP1255", "windows-1255", " cp1255 x-cp1255 "},
    Named{Encoding::windows_1256, "Windows-1256", "CP1256", "windows-1256", " cp1256 x-cp1256 "},
    Named{Encoding::windows_1257, "Windows-1257", "CP1257", "windows-1257", " cp1257 x-cp1257 "},
    Named{Encoding::windows_1258, "Windows-1258", "CP1258", "windows-1258", " cp1258 x-cp1258 "},
    Named{Encoding::windows_874, "Windows-874", "WINDOWS-874", "windows-874",
          " dos-874 iso-8859-11 iso8859-11 iso885911 tis-620 "},
    Named{Encoding::iso_8859_2, "ISO-8859-2", "ISO-8859-2", "iso-8859-2",
          " csisolatin2 iso-ir-101 iso8859-2 iso88592 iso_8859-2 iso_8859-2:1987 l2 latin2 "},
    Named{Encoding::iso_8859_3, "ISO-8859-3", "ISO-8859-3", "iso-8859-3",
          " csisolatin3 iso-ir-109 iso8859-3 iso88593 iso_8859-3 iso_8859-3:1988 l3 latin3 "},
    Named{Encoding::iso_8859_4, "ISO-8859-4", "ISO-8859-4", "iso-8859-4",
          " csisolatin4 iso-ir-110 iso8859-4 iso88594 iso_8859-4 iso_8859-4:1988 l4 latin4 "},
    Named{Encoding::iso_8859_5, "ISO-8859-5", "ISO-8859-5", "iso-8859-5",
          " csisolatincyrillic cyrillic iso-ir-144 iso8859-5 iso88595 iso_8859-5 "
          "iso_8859-5:1988 "},
    Named{Encoding::iso_8859_6, "ISO-8859-6", "ISO-8859-6", "iso-8859-6",
          " arabic asmo-708 csiso88596e csiso88596i csisolatinarabic ecma-114 iso-8859-6-e "
          "iso-8859-6-i iso-ir-127 iso8859-6 iso88596 iso_8859-6 iso_8859-6:1987 "},
    Named{Encoding::iso_8859_7, "ISO-8859-7", "ISO-8859-7", "iso-8859-7",
          " csisolatingreek ecma-118 elot_928 greek greek8 iso-ir-126 iso8859-7 iso88597 "
          "iso_8859-7 iso_8859-7:1987 sun_eu_greek "},
    Named{Encoding::iso_8859_8, "ISO-8859-8", "ISO-8859-8", "iso-8859-8",
          " csiso88598e csiso88598i csisolatinhebrew hebrew iso-8859-8-e iso-8859-8-i iso-ir-138 "
          "iso8859-8 iso88598 iso_8859-8 iso_8859-8:1988 logical visual "},
    Named{Encoding::iso_8859_10, "ISO-8859-10", "ISO-8859-10", "iso-8859-10",
          " csisolatin6 iso-ir-157 iso8859-10 iso885910 l6 latin6 "},
    Named{Encoding::iso_8859_13, "ISO-8859-13", "ISO-8859-13", "iso-8859-13",
          " iso8859-13 iso885913 "},
    Named{Encoding::iso_8859_14, "ISO-8859-14", "ISO-8859-14", "iso-8859-14",
          " iso8859-14 iso885914 "},
    Named{Encoding::iso_8859_15, "ISO-8859-15", "ISO-8859-15", "iso-8859-15",
          " csisolatin9 iso8859-15 iso885915 iso_8859-15 l9 "},
    Named{Encoding::iso_8859_16, "ISO-8859-16", "ISO-8859-16", "iso-8859-16", ""},
    Named{Encoding::koi8_r, "KOI8-R", "KOI8-R", "koi8-r", " cskoi8r koi koi8 koi8_r "},
    Named{Encoding::koi8_u, "KOI8-U", "KOI8-U", "koi8-u", " koi8-ru "},
    Named{Encoding::ibm_866, "IBM 866", "CP866", "ibm866", " 866 cp866 csibm866 "},
    Named{Encoding::mac_roman, "Mac OS Roman", "MACINTOSH", "macintosh",
          " csmacintosh mac x-mac-roman "},
    Named{Encoding::mac_cyrillic, "Mac OS Cyrillic", "MAC-CYRILLIC", "x-mac-cyrillic",
          " x-mac-ukrainian "},
    Named{Encoding::gb_18030, "GB18030", "GB18030", "gb18030",
          " chinese csgb2312 csiso58gb231280 gb2312 gb_2312 gb_2312-80 gbk iso-ir-58 x-gbk cp936 "},
    Named{Encoding::big_5, "Big5", "BIG5-HKSCS", "big5",
          " big5-hkscs cn-big5 csbig5 x-x-big5 cp950 "},
    Named{Encoding::shift_jis, "Shift-JIS", "CP932", "shift_jis",
          " csshiftjis ms932 ms_kanji shift-jis sjis windows-31j x-sjis cp932 "},
    Named{Encoding::euc_jp, "EUC-JP", "EUC-JP-MS", "euc-jp", " cseucpkdfmtjapanese x-euc-jp "},
    Named{Encoding::iso_2022_jp, "ISO-2022-JP", "ISO-2022-JP-2", "iso-2022-jp", " csiso2022jp "},
    Named{Encoding::euc_kr, "EUC-KR", "CP949", "euc-kr",
          " cseuckr csksc56011987 iso-ir-149 korean ks_c_5601-1987 ks_c_5601-1989 ksc5601 ksc_5601 "
          "windows-949 cp949 "},
};

constexpr bool is_in_order() {
  for (std::size_t i = 0; i < kTable.size(); ++i) {
    if (static_cast<std::size_t>(kTable[i].encoding) != i) return false;
  }
  return true;
}
static_assert(is_in_order());

Named const& entry(Encoding encoding) { return kTable[static_cast<std::size_t>(encoding)]; }

}  // namespace

char const* to_word(Encoding encoding) { return entry(encoding).word; }

char const* encodings::iconv_name(Encoding encoding) { return entry(encoding).iconv; }

std::optional<Encoding> encoding_by_label(std::string_view label) {
  constexpr auto kBlanks = " \t\n\f\r"sv;
  label.remove_prefix(std::min(label.find_first_not_of(kBlanks), label.size()));
  label = label.substr(0, label.find_last_not_of(kBlanks) + 1);
  if (label.empty() || label.find(' ') != std::string_view::npos) return std::nullopt;
  std::string name{label};
  for (char& c : name) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c | 0x20);
  }
  auto const among_others = " " + name + " ";
  auto const* const found = std::find_if(kTable.begin(), kTable.end(), [&](Named const& one) {
    return one.label == name || one.others.find(among_others) != std::string_view::npos;
  });
  if (found == kTable.end()) return std::nullopt;
  return found->encoding;
}

std::string encoding_labels() {
  std::string labels;
  for (auto const& one : kTable) {
    if (!labels.empty()) labels += ", ";
    labels += one.label;
  }
  return labels;
}

}  // namespace keydrift
