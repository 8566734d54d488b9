#include "keydrift/key/spill/stored_numbers.hpp"

#include <algorithm>
#include <string_view>

namespace keydrift {
namespace {

constexpr std::size_t kTail = 32'768;
constexpr std::size_t kPage = 512;

}  // namespace

void StoredNumbers::push_back(std::uint64_t number) {
  tail_.push_back(number);
  if (tail_.size() < kTail) return;
  file_.append({reinterpret_cast<char const*>(tail_.data()), tail_.size() * sizeof number});
  on_disk_ += tail_.size();
  tail_.clear();
}

std::uint64_t StoredNumbers::operator[](std::size_t index) {
  if (index >= on_disk_) return tail_[index - on_disk_];
  if (page_.empty() || index < first_of_page_ || index >= first_of_page_ + page_.size()) {
    if (file_.failure()) return 0;
    first_of_page_ = index / kPage * kPage;
    page_.resize(std::min(kPage, on_disk_ - first_of_page_));
    if (!file_.read(first_of_page_ * sizeof(std::uint64_t), reinterpret_cast<char*>(page_.data()),
                    page_.size() * sizeof(std::uint64_t))) {
      file_.fail("read back");
      page_.clear();
      return 0;
    }
  }
  return page_[index - first_of_page_];
}

}  // namespace keydrift
