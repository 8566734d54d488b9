#include "keydrift/formats/printed_synonym_ends.hpp"

#include <cstddef>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_target.hpp"

namespace keydrift::printed {

void take_names_before_synonyms(LeadCutter& cutter, std::vector<ReadLead>& reads) {
  for (std::size_t i = 0; i < reads.size(); ++i) {
    auto& read = reads[i];
    if (read.to.form != DestinationForm::taxa || !read.lead.text.ends_with(" =")) continue;
    auto const joined = cutter.join(i);
    std::string_view const text = joined.raw;
    auto const sign = text.rfind('=');
    if (sign == std::string_view::npos) continue;
    auto const before = trim_right(text.substr(0, sign));
    auto const begin = trailing_name(before);
    if (!begin || *begin == 0) continue;
    cutter.cut(read, joined, trim_right(text.substr(0, *begin)).size(), *begin);
    cutter.say_name_taken(read);
  }
}

}  // namespace keydrift::printed
