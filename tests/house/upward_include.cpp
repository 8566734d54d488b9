// Reaches from the toolkit up into formats, which only who links formats may do.
#include "keydrift/formats/text.hpp"
