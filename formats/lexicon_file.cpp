#include "keydrift/formats/lexicon_file.hpp"

#include <algorithm>
#include <utility>

#include "keydrift/formats/file_kind.hpp"
#include "keydrift/formats/lexicon_parts.hpp"

namespace keydrift {

using namespace tables;

Loaded<Lexicon> read_lexicon(Source source) {
  Loaded<Lexicon> loaded;
  if (file_kind(source.bytes) == FileKind::json) {
    auto const decoded = decode_text(source);
    loaded.findings = decoded.findings;
    if (!decoded) return loaded;
    auto read = read_lexicon_json(*decoded.value);
    std::move(read.findings.begin(), read.findings.end(), std::back_inserter(loaded.findings));
    loaded.value = std::move(read.value);
  } else {
    loaded = read_lexicon_csv(source);
  }
  sort_findings(loaded.findings);
  if (!loaded) return loaded;
  auto checked = check_lexicon(*loaded.value);
  for (auto& finding : checked) {
    if (finding.file.empty()) finding.file = loaded.value->name;
    loaded.findings.push_back(std::move(finding));
  }
  sort_findings(loaded.findings);
  if (has_error(loaded.findings)) loaded.value.reset();
  return loaded;
}

}  // namespace keydrift
