#include "keydrift/redetermination/compiled_key.hpp"

#include <algorithm>

#include "keydrift/taxa/names.hpp"

namespace keydrift {
namespace {

void add_atom(std::vector<CompiledAtom>& atoms, CompiledAtom atom) {
  // Two atoms of one either-or on the same character are one wider atom.
  for (auto& known : atoms) {
    if (known.character != atom.character) continue;
    for (std::size_t i = 0; i < known.allowed.size(); ++i) {
      known.allowed[i] |= atom.allowed[i];
      known.supported[i] |= atom.supported[i];
    }
    return;
  }
  atoms.push_back(std::move(atom));
}

CompiledStatement compile(Statement const& statement, std::uint32_t ordinal,
                          CharacterSpace const& space, NameIndex const& names) {
  CompiledStatement compiled{.ordinal = ordinal, .strength = statement.strength};
  for (auto const& atom : statement.any_of) {
    add_atom(compiled.any_of, {.character = *space.find(atom.character),
                               .allowed = space.allowed(atom),
                               .supported = space.supported(atom)});
  }
  for (auto const& limit : statement.limits) {
    auto const character = space.limit_character(limit.kind);
    if (!character) continue;
    Cells others(space[*character].words);
    auto const meant = space.limit_cells(limit);
    for (std::uint32_t cell = 0; cell < space[*character].inapplicable(); ++cell) {
      if (!has_cell(meant, cell)) add_cell(others, cell);
    }
    add_atom(compiled.any_of,
             {.character = *character, .allowed = others, .supported = others, .from_limit = true});
  }
  if (statement.strength == Strength::excepted) {
    for (auto const& group : statement.except) {
      auto const members = names.members(group);
      compiled.excepted.insert(compiled.excepted.end(), members.begin(), members.end());
    }
    std::sort(compiled.excepted.begin(), compiled.excepted.end());
  }
  return compiled;
}

}  // namespace

CompiledKey::CompiledKey(Edition const& an_edition, KeyGraph const& a_graph, NameIndex const& names,
                         CharacterSpace const& a_space)
    : edition{&an_edition}, graph{&a_graph}, space{&a_space} {
  if (!edition->parts.empty()) start = edition->parts.front().start;
  for (auto const& taxon : edition->taxa) name_keys.push_back(name_key(taxon.name));
  for (std::uint32_t c = 0; c < space->size(); ++c) {
    auto const& domain = (*space)[CharacterIndex{c}];
    character_of_word.insert(character_of_word.end(), domain.words, CharacterIndex{c});
    if (auto const other = domain.other()) {
      other_states.push_back({.character = CharacterIndex{c},
                              .word = domain.offset + *other / 64,
                              .bit = std::uint64_t{1} << (*other % 64)});
    }
  }
  couplets.resize(edition->couplets.size());
  for (std::uint32_t c = 0; c < couplets.size(); ++c) {
    auto const& couplet = edition->couplets[c];
    couplets[c].resize(couplet.leads.size());
    for (std::uint32_t l = 0; l < couplet.leads.size(); ++l) {
      auto const& lead = couplet.leads[l];
      auto& compiled = couplets[c][l];
      compiled.id = {.couplet = CoupletId{c}, .ordinal = l};
      for (std::uint32_t s = 0; s < lead.statements.size(); ++s) {
        auto const& statement = lead.statements[s];
        if (statement.strength == Strength::noted || statement.any_of.empty()) continue;
        compiled.statements.push_back(compile(statement, s, *space, names));
        if (!compiled.primary && statement.strength != Strength::hedged) {
          compiled.primary = compiled.statements.size() - 1;
        }
      }
      if (auto const* to = std::get_if<ToCouplet>(&lead.destination)) compiled.next = to->couplet;
      if (auto const* to = std::get_if<ToTaxa>(&lead.destination)) compiled.ends = to->taxa;
      if (auto const* to = std::get_if<ToKey>(&lead.destination)) {
        for (auto const& part : edition->parts) {
          if (part.title == to->key) compiled.next = part.start;
        }
      }
    }
  }
}

bool any_below(KeyGraph const& graph, LeadId lead, std::vector<TaxonId> const& taxa) {
  auto const runs = graph.taxa_below(lead);
  return std::any_of(taxa.begin(), taxa.end(), [&](TaxonId taxon) {
    auto const position = graph.position_of(taxon);
    auto const run = std::upper_bound(runs.begin(), runs.end(), position,
                                      [](auto at, TaxonRun const& r) { return at < r.end; });
    return run != runs.end() && run->begin <= position;
  });
}

Truth truth_of(CompiledStatement const& statement, CharacterSpace const& space, Box const& box) {
  // Atoms stand on different characters, so an either-or is certain only when one atom is.
  bool open = false;
  for (auto const& atom : statement.any_of) {
    auto const cells = space.part(box, atom.character);
    if (is_subset(cells, atom.supported)) return Truth::holds;
    if (meets(cells, atom.allowed)) open = true;
  }
  return open ? Truth::unknown : Truth::fails;
}

std::string known_words(CompiledStatement const& statement, CharacterSpace const& space,
                        Box const& box) {
  std::string known;
  for (auto const& atom : statement.any_of) {
    if (atom.from_limit) continue;
    auto const cells = space.part(box, atom.character);
    // That a character applies is no knowledge of its state.
    auto const& domain = space[atom.character];
    auto const states = domain.inapplicable();
    auto const shown = count_cells(cells) - (has_cell(cells, states) ? 1 : 0);
    if (shown == states) continue;
    if (!known.empty()) known += "; ";
    known += space.words(atom.character, cells);
  }
  return known;
}

LeadFit fit_of(CompiledKey const& key, CompiledLead const& lead, Box const& box) {
  bool holds = false;
  bool firm_fails = false;
  bool exception_used = false;
  bool unknown = false;
  for (auto const& statement : lead.statements) {
    auto const truth = truth_of(statement, *key.space, box);
    if (truth == Truth::holds) holds = true;
    if (statement.strength == Strength::hedged) continue;
    if (truth == Truth::unknown) unknown = true;
    if (truth != Truth::fails) continue;
    bool const covered = statement.strength == Strength::excepted &&
                         any_below(*key.graph, lead.id, statement.excepted);
    (covered ? exception_used : firm_fails) = true;
  }
  if (firm_fails) return holds ? LeadFit::conflict : LeadFit::refuted;
  if (unknown) return LeadFit::open;
  if (exception_used) return LeadFit::through_exception;
  return LeadFit::fits;
}

}  // namespace keydrift
