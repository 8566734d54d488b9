#pragma once
// Phrases of words with a payload each, found by walking word by word.

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

namespace keydrift::reading {

template <class Payload>
class WordTrie {
 public:
  using Node = std::uint32_t;
  static constexpr Node kNowhere = 0xFFFFFFFF;

  WordTrie() : payloads_(1) {}

  // The payloads of the phrase, to be added to; words must not be empty.
  std::vector<Payload>& at(std::vector<std::string> const& words) {
    Node node = 0;
    for (auto const& word : words) {
      auto const id = ids_.emplace(word, static_cast<std::uint32_t>(ids_.size())).first->second;
      auto const [edge, fresh] = edges_.emplace(key(node, id), static_cast<Node>(payloads_.size()));
      if (fresh) payloads_.emplace_back();
      node = edge->second;
    }
    return payloads_[node];
  }

  [[nodiscard]] bool empty() const { return payloads_.size() == 1; }
  [[nodiscard]] static Node root() { return 0; }

  [[nodiscard]] Node step(Node node, std::string_view word) const {
    auto const id = ids_.find(word);
    if (id == ids_.end()) return kNowhere;
    auto const edge = edges_.find(key(node, id->second));
    return edge == edges_.end() ? kNowhere : edge->second;
  }

  [[nodiscard]] std::vector<Payload> const& payloads(Node node) const { return payloads_[node]; }

 private:
  static std::uint64_t key(Node node, std::uint32_t id) { return (std::uint64_t{node} << 32) | id; }
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view word) const {
      return std::hash<std::string_view>{}(word);
    }
  };

  std::unordered_map<std::string, std::uint32_t, Hash, std::equal_to<>> ids_;
  std::unordered_map<std::uint64_t, Node> edges_;
  std::vector<std::vector<Payload>> payloads_;
};

}  // namespace keydrift::reading
