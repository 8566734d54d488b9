#include "keydrift/formats/printed_links.hpp"

#include <algorithm>
#include <string_view>
#include <vector>

#include "keydrift/formats/printed_take_out.hpp"

namespace keydrift::printed {
namespace {

// "#couplet-2", "/species/bus", "https://…", "bus.html": what no brackets of a key hold.
bool is_link_address(std::string_view text) {
  if (text.empty()) return false;
  if (text.front() == '#') return text.size() > 1;
  if (text.find("//") != std::string_view::npos || text.front() == '/') return true;
  auto const stop = text.rfind('.');
  if (stop == std::string_view::npos || stop == 0) return false;
  auto const ending = text.substr(stop + 1, text.find('#', stop) - stop - 1);
  for (auto const* one : {"html", "htm", "md", "php", "jpg", "jpeg", "png", "gif", "svg", "pdf"}) {
    if (ending == one) return true;
  }
  return text.starts_with("./") || text.starts_with("../");
}

// "/i" of "</i>": the end of an element, and no address.
bool closes_element(std::string_view text) {
  return text.starts_with('/') && text.size() > 1 &&
         std::all_of(text.begin() + 1, text.end(), [](char c) {
           return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
         });
}

// "Ausella busa <sp/busa.html>", "2 <#c2>": the address in its brackets and the blank before it, as
// pages are saved as text.
std::vector<Signs> bracketed_addresses(std::string_view text) {
  std::vector<Signs> signs;
  for (auto open = text.find('<'); open != std::string_view::npos;
       open = text.find('<', open + 1)) {
    auto const close = text.find_first_of("<> \t\n", open + 1);
    if (close == std::string_view::npos) break;
    auto const inside = text.substr(open + 1, close - open - 1);
    bool const address = is_link_address(inside) || inside.starts_with("mailto:");
    if (text[close] != '>' || !address || closes_element(inside)) continue;
    bool const blank = open > 0 && text[open - 1] == ' ';
    signs.push_back({open - (blank ? 1 : 0), close + 1});
  }
  return signs;
}

}  // namespace

LinksTaken take_off_links(std::string& text) {
  LinksTaken taken;
  auto signs = bracketed_addresses(text);
  taken.links = signs.size();
  taken.saved_page = !signs.empty();
  std::size_t done = 0;
  for (auto middle = text.find("]("); middle != std::string::npos;
       middle = text.find("](", middle + 2)) {
    if (middle == 0) continue;
    auto const open = text.find_last_of("[]\n", middle - 1);
    auto const close = text.find_first_of(" \t\n()[]", middle + 2);
    if (open == std::string::npos || open < done || text[open] != '[' || open + 1 == middle ||
        close == std::string::npos || text[close] != ')') {
      continue;
    }
    if (!is_link_address(std::string_view{text}.substr(middle + 2, close - middle - 2))) continue;
    bool const picture = open > done && text[open - 1] == '!';
    signs.push_back({open - (picture ? 1 : 0), open + 1});
    signs.push_back({middle, close + 1});
    done = close + 1;
    ++taken.links;
  }
  if (taken.links == 0) return taken;
  std::sort(signs.begin(), signs.end(),
            [](Signs const& a, Signs const& b) { return a.begin < b.begin; });
  // "[Aus bus](<https://…>)" holds one in the other.
  std::vector<Signs> apart;
  for (auto const& one : signs) {
    if (!apart.empty() && one.begin < apart.back().end) {
      apart.back().end = std::max(apart.back().end, one.end);
    } else {
      apart.push_back(one);
    }
  }
  take_out(text, apart);
  return taken;
}

}  // namespace keydrift::printed
