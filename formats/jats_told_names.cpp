#include "keydrift/formats/jats_told_names.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "keydrift/formats/printed_chars.hpp"
#include "keydrift/formats/printed_name_words.hpp"
#include "keydrift/formats/printed_shapes.hpp"
#include "keydrift/formats/printed_taxa.hpp"
#include "keydrift/formats/xml_document.hpp"
#include "keydrift/key/word_list.hpp"

namespace keydrift::jats {
namespace {

using namespace printed;
using namespace std::string_view_literals;

// The parts of a name that a lead ends in; families stand beside them as attributes alone.
constexpr std::array kNameParts{"species"sv, "subspecies"sv, "variety"sv, "form"sv,
                                "infraspecific-rank"sv};
constexpr std::array kLowerRanks{"species"sv, "subspecies"sv, "variety"sv, "form"sv};

bool is_whole_word(std::string_view word) {
  return word.size() > 1 && word.find_first_of(". \t\n()[]?") == std::string_view::npos;
}

class NameInParts {
 public:
  explicit NameInParts(pugi::xml_node name) {
    name.find_node([this](pugi::xml_node node) {
      if (xml::local_name(node) == "taxon-name-part") {
        add_part(node);
      } else if (node.type() == pugi::node_pcdata && !is_within_part(node)) {
        add_words_between(node.value());
      }
      return false;
    });
  }

  void tell(ToldNames& told) const {
    if (!genus_.empty() && !genus_printed_.empty()) told.tell_genus(genus_printed_, genus_);
    if (parts_ > 1) told.tell(printed_, whole_);
  }

 private:
  static bool is_within_part(pugi::xml_node node) {
    for (; node && xml::local_name(node) != "taxon-name"; node = node.parent()) {
      if (xml::local_name(node) == "taxon-name-part") return true;
    }
    return false;
  }

  void add_part(pugi::xml_node node) {
    std::string_view const type = node.attribute("taxon-name-part-type").value();
    auto const printed = squeeze(words_in(node));
    auto const told = squeeze(node.attribute("reg").value());
    if (type == "genus") {
      // A genus that is not printed tells what a lone epithet belongs to.
      bool const stands_for =
          is_whole_word(told) && is_capitalised(told) &&
          (printed.empty() || (is_abbreviated(printed) && printed.front() == told.front()));
      add(printed, stands_for ? told : printed);
      if (stands_for && !printed.empty()) {
        genus_printed_ = printed;
        genus_ = told;
      }
    } else if (is_one_of(kNameParts, type) && !printed.empty()) {
      bool const stands_for = is_one_of(kLowerRanks, type) && is_whole_word(told) &&
                              printed.ends_with('.') && printed.size() < told.size() &&
                              told.starts_with(printed.substr(0, printed.size() - 1));
      add(printed, stands_for ? told : printed);
    }
  }

  // Ranks belong to the name; authors between its parts do not.
  void add_words_between(std::string_view text) {
    for (auto const word : words_of(text)) {
      if (word.ends_with('.') && is_rank(fold(word))) add(word, word);
    }
  }

  static std::string words_in(pugi::xml_node part) {
    std::string words;
    part.find_node([&words](pugi::xml_node node) {
      if (node.type() == pugi::node_pcdata || node.type() == pugi::node_cdata) {
        words += node.value();
      }
      return false;
    });
    return words;
  }

  void add(std::string_view printed, std::string_view whole) {
    auto const append = [](std::string& name, std::string_view word) {
      if (word.empty()) return;
      if (!name.empty()) name += ' ';
      name += word;
    };
    append(printed_, printed);
    append(whole_, whole);
    ++parts_;
  }

  std::string printed_;
  std::string whole_;
  std::string genus_printed_;
  std::string genus_;
  std::size_t parts_{0};
};

}  // namespace

void tell_names(pugi::xml_node element, ToldNames& told) {
  element.find_node([&told](pugi::xml_node node) {
    if (xml::local_name(node) == "taxon-name") NameInParts{node}.tell(told);
    return false;
  });
}

}  // namespace keydrift::jats
