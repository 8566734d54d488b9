#include "keydrift/key/spill/free_memory.hpp"

#include <cstdlib>

#if defined(__GLIBC__)
#include <malloc.h>
#endif

namespace keydrift {

void give_back_free_memory() {
#if defined(__GLIBC__)
  (void)::malloc_trim(0);
#endif
}

}  // namespace keydrift
