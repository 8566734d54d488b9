#pragma once
// Numbers read without the lexicon: which of them are better taken for words, and which of them
// measure rather than count.

#include <vector>

#include "keydrift/characters/reading/draft.hpp"
#include "keydrift/characters/reading/tying.hpp"

namespace keydrift::reading {

// What one lead's numbers do not surely say: a count of nothing that is named ("14–16" alone), and
// two numbers of one name that exclude each other, which are of two things more likely than a
// contradiction.  They become words.
void take_doubtful_numbers_for_words(std::vector<Draft>& drafts);

// "Eye 2 OD" beside "eye 1.5 OD": what is printed with decimals anywhere is measured everywhere.
void measure_what_has_decimals(AllDrafts const& all);

// "Culms three-sided" against "culms round": a count or ratio that contrasts with words only, and
// nowhere with another count of the same, is read as words.
void turn_lone_counts_into_words(AllDrafts const& all);

}  // namespace keydrift::reading
