#pragma once
// Genera at the ends of leads that scanning made others of, put right by those that other leads
// lead to.  Inner header of formats.

#include <vector>

#include "keydrift/formats/printed_leads.hpp"

namespace keydrift::printed {

// "Selbycurna busa" where two leads at least lead to species of Selbycuma, a line of a list or an
// account begins with Selbycuma busa and nothing else names Selbycurna.  Changes `reads`' names
// (the printed destinations stay) and reports each.
void mend_misread_genera(KeyText const& key, std::vector<ReadLead>& reads,
                         std::vector<Finding>& findings);

}  // namespace keydrift::printed
