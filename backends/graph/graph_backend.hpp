// The backend `graph`: the whole piece as YAML, for other programs.
//
// Numbers are exact: lengths and coordinates are millimetres as whole numbers or fractions in lowest terms
// ("5969/20"), never decimals; quantities are {value, unit} with the value in the base unit. Lists keep the
// design's order; parts, kinds, joints and assemblies are named by their place in their list, from 0. Fields:
//
//   format     1; goes up when a field changes its meaning or goes
//   piece      the piece's name
//   box        low and high corner [wide, deep, tall]
//   unit       how lengths are shown: {unit: in | mm, step}
//   params     the maker's parameters: {name: quantity}
//   woods      {name, species, common, cut, density (kg/m3), colour, sheet, radial, tangential: change for
//              each percent of moisture}
//   kinds      {letter, name, wood, size, overall: [length, width, thickness], extend: [[low, high] x 3],
//              mirror_of: kind, glued, parts: [part], features, shapes}; fields that do not apply are left
//              out
//     features {op: trim | blend | bevel | leave | remove, made_by, label, joint: joint kind,
//              body | edges and size}, in the kind's own axes: wide = length, deep = width, tall = thickness
//     body     {form: box | cylinder | prism, origin, u, v, w: "+wide", size_u, size_v, length, profile: [[u,
//     v]]} edges    pairs of faces shapes   {definition, label, numbers: {name: quantity}, words: {name:
//     word}}
//   parts      {name, declared, kind, assembly, from: ["+wide" x 3], move, box}: axis i of the piece takes
//   its
//              coordinate from the kind's axis from[i], and is then moved
//   joint_kinds {definition, fastening, glue, numbers, words, supplies: {name, count, note}, joints: [joint]}
//   joints     {kind, members: {role, part, face, form}, frame: {origin, u, v, w}, contact: [u, v], slides,
//              lets: {way, by}: how the first member may move; hold: box,
//              fasteners: {form: dowel | screw | clip, body}}; the bodies along the joint's u, v, w as wide,
//              deep, tall
//   assemblies {name, parent, box, opens}
//   loads      {force: quantity, part, face, place}
//   uses       {what, detail, people, on: [part]}
//   finishes   {name, coats}
//   accepts    {code, because, on: [part]}
//   climate    {driest, dampest: relative humidity; kelvin; made_at: moisture content; said: by the design}
#pragma once

#include <memory>
#include <string>

#include "compiler/plugin/backend.hpp"

namespace rodwright {

std::string piece_yaml(const Piece& piece);

class GraphBackend : public Backend {
  public:
    std::string name() const override { return "graph"; }
    std::string summary() const override {
        return "parts and joints with exact numbers, as YAML for other programs";
    }
    // Writes piece.yaml.
    void emit(const BackendInput& input, const OptionValues& options, OutputFolder& out,
              Diagnostics& diagnostics) const override;
};

std::unique_ptr<Backend> make_graph_backend();

}  // namespace rodwright
