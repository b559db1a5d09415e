#include "compiler/graph/build.hpp"

#include <fmt/format.h>

#include <map>

#include "compiler/evaluate/part_references.hpp"
#include "compiler/graph/draft.hpp"

namespace rodwright {

namespace {

void add_wood(const WoodStatement& statement, const WoodTable& table, Evaluator& evaluator, Piece& piece) {
    const WoodSpecies* species = table.find(statement.species);
    if (species == nullptr) {
        evaluator.report(no_such_wood(statement.species, statement.species_span, table));
        return;
    }
    piece.woods.push_back({statement.name, statement.species, species->common, statement.cut,
                           species->density, species->colour, species->sheet, species->radial,
                           species->tangential, species->caution, species->mechanics});
}

void check_part_woods(const Statements& statements, Evaluator& evaluator) {
    for (const PartDeclaration& declaration : statements.declarations) {
        if (declaration.wood.empty()) continue;
        std::vector<std::string> names;
        for (const WoodStatement& wood : statements.woods) names.push_back(wood.name);
        if (std::find(names.begin(), names.end(), declaration.wood) != names.end()) continue;
        const Syntax of = declaration.syntax.find(NodeKind::of);
        Diagnostic diagnostic = diagnose(Code::unknown_wood, of.child(0).span(),
                                         fmt::format("the piece has no wood `{}`", declaration.wood));
        const std::string near = nearest_name(declaration.wood, names);
        diagnostic.help = near.empty() ? fmt::format("name it: `wood {} = white_oak`", declaration.wood)
                                       : fmt::format("did you mean `{}`?", near);
        evaluator.report(std::move(diagnostic));
    }
}

void add_assemblies(const Statements& statements, const Places& places, Piece& piece) {
    for (std::size_t i = 1; i < statements.containers.size(); ++i) {
        const Container& container = statements.containers[i];
        Assembly assembly{container.name, AssemblyId::none, places.containers[i], container.opens,
                          container.where};
        for (std::size_t j = 1; j < i; ++j) {
            if (&statements.containers[j] == container.parent)
                assembly.parent = static_cast<AssemblyId>(j - 1);
        }
        piece.assemblies.push_back(std::move(assembly));
    }
}

void add_loads(const Statements& statements, Piece& piece) {
    for (const LoadStatement& load : statements.loads) {
        for (const std::size_t part : matching(statements, load.part)) {
            piece.loads.push_back(
                {load.force, static_cast<PartId>(part), *load.part.face, load.place, load.where});
        }
    }
}

void add_uses(const Statements& statements, Piece& piece) {
    for (const UseStatement& use : statements.uses) {
        piece.uses.push_back({use.what, use.detail, use.people, parts_of(statements, use.on), use.where});
    }
}

void add_accepts(const Statements& statements, Piece& piece) {
    for (const AcceptStatement& accept : statements.accepts) {
        piece.accepts.push_back({accept.code, accept.because, accept.where, parts_of(statements, accept.on)});
    }
}

MatchKind match_kind(NodeKind how) {
    if (how == NodeKind::as_book) return MatchKind::book;
    return how == NodeKind::in_sequence ? MatchKind::sequence : MatchKind::one_board;
}

// Why parts cannot come out of the same wood; empty where they can.
std::string unmatched(const Piece& piece, const Match& match) {
    const Kind& first = piece[piece[match.parts.front()].kind];
    const Wood* wood = piece.find_wood(first.wood);
    if (wood == nullptr) return fmt::format("`{}` is of no wood", first.name);
    if (wood->sheet) return fmt::format("`{}` is of sheet goods, which have no boards", first.name);
    for (const PartId part : match.parts) {
        const Kind& kind = piece[piece[part].kind];
        if (kind.wood != first.wood)
            return fmt::format("`{}` and `{}` are of different woods", first.name, kind.name);
        if (kind.overall(Axis::tall) != first.overall(Axis::tall))
            return fmt::format("`{}` and `{}` are not of the same thickness", first.name, kind.name);
    }
    if (match.how == MatchKind::book && match.parts.size() != 2)
        return fmt::format("a book has two leaves, not {}", match.parts.size());
    return {};
}

void add_matches(const Statements& statements, Evaluator& evaluator, Piece& piece) {
    std::map<PartId, Span> taken;
    for (const MatchStatement& statement : statements.matches) {
        Match match{match_kind(statement.how), {}, statement.where};
        for (const PartPattern& pattern : statement.parts) {
            for (const std::size_t part : matching(statements, pattern)) {
                const auto id = static_cast<PartId>(part);
                const auto [earlier, is_new] = taken.emplace(id, statement.where);
                if (is_new) {
                    match.parts.push_back(id);
                    continue;
                }
                evaluator.report(diagnose(Code::bad_match, pattern.where,
                                          fmt::format("`{}` is already matched", piece[id].name))
                                     .label(earlier->second, "here")
                                     .hint("name each part once"));
            }
        }
        if (match.parts.empty()) continue;
        if (const std::string why = unmatched(piece, match); !why.empty()) {
            evaluator.report(diagnose(Code::bad_match, statement.where, why)
                                 .hint("match parts of one wood and one thickness"));
            continue;
        }
        piece.matches.push_back(std::move(match));
    }
}

// Where the design takes a size from the work and does not say by how much the part is cut over.
void set_usual_over(const FittingOver& usual, Piece& piece) {
    const std::array<Rational, 3> over = {usual.length, usual.width, usual.thickness};
    for (Kind& kind : piece.kinds) {
        for (std::size_t i = 0; i < over.size(); ++i) {
            if (kind.taken_over[i] == Rational(0)) kind.taken_over[i] = over[i];
        }
    }
}

Climate climate_of(const Statements& statements) {
    Climate climate;
    if (!statements.climate) return climate;
    const ClimateStatement& said = *statements.climate;
    climate.driest = said.driest;
    climate.dampest = said.dampest;
    climate.kelvin = said.kelvin;
    if (said.made_at) climate.made_at = *said.made_at;
    climate.said = true;
    return climate;
}

void add_params(const Statements& statements, Evaluator& evaluator, Piece& piece) {
    for (const auto& [name, param] : statements.params) {
        Definition* definition = statements.containers.front().scope->find(name);
        if (definition == nullptr) continue;
        const std::optional<Value> value = evaluator.value_of(*definition, name, param.span());
        if (const auto* quantity = value ? std::get_if<Quantity>(&*value) : nullptr) {
            piece.params.emplace_back(name, *quantity);
        }
    }
}

}  // namespace

std::vector<PartId> parts_of(const Statements& statements, const std::vector<PartPattern>& patterns) {
    std::vector<PartId> parts;
    for (const PartPattern& pattern : patterns) {
        for (const std::size_t part : matching(statements, pattern))
            parts.push_back(static_cast<PartId>(part));
    }
    return parts;
}

std::optional<Piece> build_piece(const Statements& statements, const Places& places, const WoodTable& woods,
                                 const Shop& shop, Design& design, Evaluator& evaluator) {
    Piece piece;
    piece.name = statements.name;
    piece.style = statements.style;
    if (!places.containers.empty()) piece.box = places.containers.front();
    for (const WoodStatement& wood : statements.woods) add_wood(wood, woods, evaluator, piece);
    check_part_woods(statements, evaluator);
    Draft draft{.statements = statements, .places = places, .design = design, .evaluator = evaluator};
    draft_parts(draft);
    draft_shapes(draft);
    draft_joins(draft);
    if (!evaluator.diagnostics().ok()) return std::nullopt;
    make_kinds(draft, piece);
    set_usual_over(shop.fitting(), piece);
    piece.joint_kinds = std::move(draft.joint_kinds);
    piece.joints = std::move(draft.joints);
    add_assemblies(statements, places, piece);
    add_loads(statements, piece);
    add_uses(statements, piece);
    add_matches(statements, evaluator, piece);
    for (const auto& [name, coats] : statements.finishes)
        piece.finishes.push_back({name, static_cast<int>(coats)});
    if (statements.glue) {
        piece.glue = statements.glue.text();
        piece.glue_where = statements.glue.span();
    }
    add_as_built(statements, piece);
    add_accepts(statements, piece);
    piece.climate = climate_of(statements);
    add_params(statements, evaluator, piece);
    if (!evaluator.diagnostics().ok()) return std::nullopt;
    return piece;
}

bool Piece::is_of_sheet(const Kind& kind) const {
    const Wood* wood = find_wood(kind.wood);
    return wood != nullptr && wood->sheet;
}

const Wood* Piece::find_wood(const std::string& wood_name) const {
    for (const Wood& wood : woods) {
        if (wood.name == wood_name) return &wood;
    }
    return nullptr;
}

}  // namespace rodwright
