#pragma once
// Where text goes that is too long to be held.

#include <functional>
#include <string_view>

namespace keydrift {

using TextSink = std::function<void(std::string_view)>;

}  // namespace keydrift
