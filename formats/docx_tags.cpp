#include "keydrift/formats/docx_tags.hpp"

#include <unordered_map>

namespace keydrift::docx {

Tag tag_of(std::string_view local_name) {
  static std::unordered_map<std::string_view, Tag> const kTags{
      {"p", Tag::paragraph},
      {"r", Tag::run},
      {"t", Tag::text},
      {"tab", Tag::tab},
      {"ptab", Tag::tab},
      {"br", Tag::line_break},
      {"cr", Tag::line_break},
      {"noBreakHyphen", Tag::hyphen},
      {"sym", Tag::symbol},
      {"fldChar", Tag::field_mark},
      {"instrText", Tag::field_code},
      {"ins", Tag::inserted},
      {"del", Tag::deleted},
      {"moveFrom", Tag::moved_away},
      {"moveTo", Tag::moved_here},
      {"tbl", Tag::table},
      {"tr", Tag::row},
      {"tc", Tag::cell},
      {"txbxContent", Tag::box},
      {"Fallback", Tag::alternative},
      {"footnoteReference", Tag::note_mark},
      {"endnoteReference", Tag::note_mark},
      {"commentReference", Tag::comment_mark},
      {"altChunk", Tag::embedded},
      {"subDoc", Tag::embedded},
      {"pPr", Tag::passed_over},
      {"rPr", Tag::passed_over},
      {"tblPr", Tag::passed_over},
      {"tblGrid", Tag::passed_over},
      {"trPr", Tag::passed_over},
      {"tcPr", Tag::passed_over},
      {"sdtPr", Tag::passed_over},
      {"sectPr", Tag::passed_over},
      {"customXmlPr", Tag::passed_over},
      {"smartTagPr", Tag::passed_over},
      {"rt", Tag::passed_over},  // the small type above a base text
  };
  auto const found = kTags.find(local_name);
  return found != kTags.end() ? found->second : Tag::other;
}

}  // namespace keydrift::docx
