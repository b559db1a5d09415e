#include "compiler/graph/selector.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "compiler/evaluate/words.hpp"

namespace rodwright {

namespace {

std::vector<BoxEdge> all_edges() {
    std::vector<BoxEdge> edges;
    for (const Face a : all_faces) {
        for (const Face b : all_faces) {
            if (a < b && axis_of(a) != axis_of(b)) edges.push_back({a, b});
        }
    }
    return edges;
}

// The faces of a part that look towards the middle of its envelope, or away from it; none along an axis on
// which the part lies in the middle.
std::vector<Face> towards(const DraftPart& part, const Box& envelope, bool middle) {
    std::vector<Face> faces;
    for (const Axis axis : all_axes) {
        if (axis == part.axes.length) continue;
        const Rational here = part.body.low[axis] + part.body.high[axis];
        const Rational there = envelope.low[axis] + envelope.high[axis];
        if (here != there) faces.push_back(face_of(axis, (here < there) == middle));
    }
    return faces;
}

bool contains(const std::vector<Face>& faces, Face face) {
    return std::find(faces.begin(), faces.end(), face) != faces.end();
}

template <typename List, typename Keep>
void keep_if(List& list, const Keep& keep) {
    list.erase(std::remove_if(list.begin(), list.end(), [&](const auto& item) { return !keep(item); }),
               list.end());
}

class Selecting {
  public:
    Selecting(const DraftPart& part, const Box& envelope) : part_(part), envelope_(envelope) {}

    // Whether the last word of a selector says what is chosen.
    bool start(std::string_view noun) {
        const bool edges = noun == "edge" || noun == "edges";
        const bool ends = noun == "end" || noun == "ends";
        if (!edges && !ends && noun != "face" && noun != "faces") return false;
        if (edges) {
            chosen_.edges = all_edges();
        } else {
            chosen_.faces.assign(all_faces.begin(), all_faces.end());
            if (ends) keep_if(chosen_.faces, [&](Face face) { return is_end(face); });
        }
        return true;
    }

    bool narrow(std::string_view word) {
        if (const std::optional<Face> face = face_from(word)) {
            keep_if(chosen_.faces, [&](Face other) { return other == *face; });
            keep_if(chosen_.edges, [&](const BoxEdge& edge) { return edge.a == *face || edge.b == *face; });
        } else if (word == "long") {
            keep_if(chosen_.faces, [&](Face other) { return !is_end(other); });
            keep_if(chosen_.edges, [&](const BoxEdge& edge) { return !is_end(edge.a) && !is_end(edge.b); });
        } else if (word == "end") {
            keep_if(chosen_.faces, [&](Face other) { return is_end(other); });
            keep_if(chosen_.edges, [&](const BoxEdge& edge) { return is_end(edge.a) || is_end(edge.b); });
        } else if (word == "inside" || word == "outside") {
            const std::vector<Face> faces = towards(part_, envelope_, word == "inside");
            keep_if(chosen_.faces, [&](Face other) { return contains(faces, other); });
            keep_if(chosen_.edges,
                    [&](const BoxEdge& edge) { return contains(faces, edge.a) || contains(faces, edge.b); });
        } else {
            return word == "all" || word == "both";
        }
        return true;
    }

    const Selection& chosen() const { return chosen_; }

  private:
    const DraftPart& part_;
    const Box& envelope_;
    Selection chosen_;

    bool is_end(Face face) const { return axis_of(face) == part_.axes.length; }
};

constexpr std::string_view selector_help =
    "a selector ends in face, faces, edge, edges, end or ends, and may have before it: left right front back "
    "bottom "
    "top, long, end, inside, outside, all";

}  // namespace

std::optional<Selection> select(const Syntax& selector, const DraftPart& part, const Box& envelope,
                                Evaluator& evaluator) {
    const std::vector<Syntax> words = selector.children();
    Selecting selecting(part, envelope);
    const auto refuse = [&](const Syntax& at, std::string message) {
        evaluator.report(
            diagnose(Code::bad_selector, at.span(), std::move(message)).hint(std::string(selector_help)));
        return std::nullopt;
    };
    if (!selecting.start(words.back().text())) {
        return refuse(words.back(),
                      fmt::format("`{}` does not say whether faces or edges are meant", selector.text()));
    }
    for (std::size_t i = 0; i + 1 < words.size(); ++i) {
        if (!selecting.narrow(words[i].text())) {
            return refuse(words[i], fmt::format("`{}` chooses no face or edge", words[i].text()));
        }
    }
    if (selecting.chosen().faces.empty() && selecting.chosen().edges.empty()) {
        return refuse(selector, fmt::format("the part has no `{}`", selector.text()));
    }
    return selecting.chosen();
}

}  // namespace rodwright
