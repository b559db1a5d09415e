// Which parts are the same: copies that agree after a turn share a kind, mirror images are a kind beside it.
#include <algorithm>
#include <map>

#include "compiler/graph/draft.hpp"
#include "compiler/graph/isometry.hpp"

namespace rodwright {

namespace {

// How a part is seen in a kind's frame, and where that frame stands.
struct Look {
    const std::vector<Feature>& features;  // in the part's own box
    Isometry from_part;                    // part's own box to kind frame
    Isometry to_piece;                     // kind frame to piece frame
    Vector size;
    std::array<Extent, 3> extend;
};

std::string feature_key(const Feature& feature, const Isometry& move) {
    std::string text = std::to_string(static_cast<int>(feature.op)) + " ";
    if (feature.op != FeatureOp::blend && feature.op != FeatureOp::bevel)
        return text + canonical(move.apply(feature.body));
    append_exact(text, feature.size);
    std::vector<std::string> edges;
    for (const BoxEdge& own : feature.edges) {
        const BoxEdge edge = move.apply(own);
        edges.push_back(std::to_string(static_cast<int>(edge.a)) + "/" +
                        std::to_string(static_cast<int>(edge.b)));
    }
    std::sort(edges.begin(), edges.end());
    for (const std::string& edge : edges) text += edge + " ";
    return text;
}

std::string key_of(const Look& look) {
    std::string text;
    for (const Axis axis : all_axes) {
        append_exact(text, look.size[axis]);
        append_exact(text, look.extend[static_cast<std::size_t>(axis)].low);
        append_exact(text, look.extend[static_cast<std::size_t>(axis)].high);
    }
    std::vector<std::string> features;
    for (const Feature& feature : look.features) {
        features.push_back(feature_key(feature, look.from_part));
    }
    std::sort(features.begin(), features.end());
    for (const std::string& feature : features) text += feature + "\n";
    return text;
}

std::vector<Feature> moved(std::vector<Feature> features, const Isometry& move) {
    for (Feature& feature : features) {
        feature.body = move.apply(feature.body);
        for (BoxEdge& edge : feature.edges) edge = move.apply(edge);
    }
    return features;
}

// The part seen in a frame that is turned.
Look transformed(const Look& look, const Turn& turn) {
    Isometry move{turn, {}};
    Vector size = turn.apply(look.size);
    for (const Axis axis : all_axes) {
        if (size[axis] < 0) {
            size[axis] = -size[axis];
            move.move[axis] = size[axis];  // the box stays in the positive corner
        }
    }
    Look result{
        look.features, compose(look.from_part, move), compose(move.inverse(), look.to_piece), size, {}};
    for (const Axis axis : all_axes) {
        const Direction source = turn.from[static_cast<std::size_t>(axis)];
        Extent extent = look.extend[static_cast<std::size_t>(source.axis)];
        if (!source.positive) std::swap(extent.low, extent.high);
        result.extend[static_cast<std::size_t>(axis)] = extent;
    }
    return result;
}

// The turn that brings a part's length, width and thickness along x, y and z.
Turn to_kind_axes(const PartAxes& axes) {
    Turn turn;
    turn.from = {Direction{axes.length, true}, Direction{axes.width, true}, Direction{axes.thick, true}};
    if (turn.mirrored()) turn.from[2].positive = false;
    return turn;
}

Look first_look(const DraftPart& part) {
    Look look{part.features, {}, {{}, part.body.low}, {}, part.extend};
    for (const Axis axis : all_axes) look.size[axis] = part.body.size(axis);
    return transformed(look, to_kind_axes(part.axes));
}

// Turns (or reflections) of a stick onto itself that keep its length along x, its sizes where they are.
std::vector<Turn> self_turns(const Vector& size, bool mirrored) {
    std::vector<Turn> result;
    for (const Turn& turn : all_turns()) {
        if (turn.mirrored() != mirrored || turn.from[0].axis != Axis::wide) continue;
        const bool swapped = turn.from[1].axis != Axis::deep;
        if (!swapped || size[Axis::deep] == size[Axis::tall]) result.push_back(turn);
    }
    return result;
}

struct Best {
    std::string key;
    Look look;
};

Best best_look(const Look& look, bool mirrored) {
    std::optional<Best> best;
    for (const Turn& turn : self_turns(look.size, mirrored)) {
        Look candidate = transformed(look, turn);
        std::string key = key_of(candidate);
        if (!best || key < best->key) best.emplace(Best{std::move(key), std::move(candidate)});
    }
    return std::move(*best);
}

class KindMaker {
  public:
    KindMaker(const Draft& draft, Piece& piece) : draft_(draft), piece_(piece) {}

    void run() {
        for (std::size_t i = 0; i < draft_.parts.size(); ++i) add_part(i);
        set_letters();
    }

  private:
    struct Known {
        KindId kind;
        Isometry from_first;  // kind frame to the first look's frame
    };

    const Draft& draft_;
    Piece& piece_;
    std::map<std::string, Known> seen_;      // first looks: rows of equal parts are compared once
    std::map<std::string, KindId> kinds_;    // by key
    std::map<std::string, KindId> mirrors_;  // by the key that a mirror image would have
    std::map<std::size_t, std::vector<KindId>> of_declaration_;

    void add_part(std::size_t index) {
        const DraftPart& draft = draft_.parts[index];
        const Instance& instance = draft_.statements.instances[index];
        const PartDeclaration& declaration = draft_.statements.declarations[instance.declaration];
        const std::string prefix = std::to_string(instance.declaration) + ":";
        const Look look = first_look(draft);
        const std::string first_key = prefix + key_of(look);
        auto seen = seen_.find(first_key);
        if (seen == seen_.end()) {
            Best best = best_look(look, false);
            const Isometry from_first = compose(best.look.to_piece, look.to_piece.inverse());
            const KindId kind = find_or_make(prefix, std::move(best), look, draft, instance.declaration);
            seen = seen_.emplace(first_key, Known{kind, from_first}).first;
        }
        const Isometry place = compose(seen->second.from_first, look.to_piece);
        Part part;
        part.name = instance.name;
        part.declared = declaration.name;
        part.kind = seen->second.kind;
        part.placement = {place.turn, place.move};
        part.body = draft.body;
        part.assembly = assembly_of(declaration);
        part.where = declaration.where;
        piece_.kinds[static_cast<std::size_t>(part.kind)].parts.push_back(
            static_cast<PartId>(piece_.parts.size()));
        piece_.parts.push_back(std::move(part));
    }

    AssemblyId assembly_of(const PartDeclaration& declaration) const {
        for (std::size_t i = 1; i < draft_.statements.containers.size(); ++i) {
            if (&draft_.statements.containers[i] == declaration.container)
                return static_cast<AssemblyId>(i - 1);
        }
        return AssemblyId::none;
    }

    KindId find_or_make(const std::string& prefix, Best best, const Look& look, const DraftPart& draft,
                        std::size_t declaration_index) {
        const std::string key = prefix + best.key;
        if (const auto found = kinds_.find(key); found != kinds_.end()) return found->second;
        const PartDeclaration& declaration = draft_.statements.declarations[declaration_index];
        Kind kind;
        kind.name = declaration.name;
        kind.wood = declaration.wood;
        kind.size = best.look.size;
        kind.extend = best.look.extend;
        kind.features = moved(best.look.features, best.look.from_part);
        kind.shapes = draft.shapes;
        kind.glued = declaration.glued;
        kind.one_show_face = shows_one_face(declaration);
        for (const TakenSize& taken : declaration.taken)
            kind.taken_over[kind_axis(draft.axes, taken.axis)] = taken.over.value_or(0);
        kind.where = declaration.where;
        if (const auto mirror = mirrors_.find(key); mirror != mirrors_.end()) kind.mirror_of = mirror->second;
        const auto id = static_cast<KindId>(piece_.kinds.size());
        kinds_.emplace(key, id);
        mirrors_.emplace(prefix + best_look(look, true).key, id);
        of_declaration_[declaration_index].push_back(id);
        piece_.kinds.push_back(std::move(kind));
        return id;
    }

    // 0, 1 or 2: the piece's axis is the part's length, width or thickness.
    static std::size_t kind_axis(const PartAxes& axes, Axis axis) {
        if (axis == axes.length) return 0;
        return axis == axes.width ? 1 : 2;
    }

    static bool shows_one_face(const PartDeclaration& declaration) {
        const auto differs = [&](const auto& shown) {
            return shown.first != declaration.shown.front().first;
        };
        return !declaration.shown.empty() && std::ranges::none_of(declaration.shown, differs);
    }

    // A, B, ... by declaration, without I and O; A1, A2 where a declaration has several kinds.
    void set_letters() {
        for (const auto& [declaration, kinds] : of_declaration_) {
            const std::string letter = letters(declaration);
            for (std::size_t i = 0; i < kinds.size(); ++i) {
                piece_.kinds[static_cast<std::size_t>(kinds[i])].letter =
                    kinds.size() == 1 ? letter : letter + std::to_string(i + 1);
            }
        }
    }

    // A ... Z, AA, AB ...
    static std::string letters(std::size_t number) {
        static constexpr std::string_view alphabet = "ABCDEFGHJKLMNPQRSTUVWXYZ";
        std::string result(1, alphabet[number % alphabet.size()]);
        for (std::size_t rest = number / alphabet.size(); rest > 0; rest = (rest - 1) / alphabet.size()) {
            result.insert(result.begin(), alphabet[(rest - 1) % alphabet.size()]);
        }
        return result;
    }
};

}  // namespace

void make_kinds(const Draft& draft, Piece& piece) {
    KindMaker(draft, piece).run();
}

}  // namespace rodwright
