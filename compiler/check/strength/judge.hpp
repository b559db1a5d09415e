// What forces do to parts and joints: the worst of each over its cases.
#pragma once

#include <string>
#include <vector>

#include "compiler/check/strength/analysis.hpp"

namespace rodwright::strength {

struct PartResult {
    PartId part{};
    double stress = 0;   // MPa, where it is worst: bending with what pulls or presses along the grain
    double allowed = 0;  // MPa
    double at = 0;       // mm along the grain
    std::size_t in_case = 0;
    double use() const { return allowed > 0 ? stress / allowed : 0; }
};

// A part that is pressed along its grain, as a column.
struct ColumnResult {
    PartId part{};
    double force = 0;        // N
    double allowed = 0;      // N, before it crushes or buckles
    double slenderness = 0;  // L / r
    std::size_t in_case = 0;
    double use() const { return allowed > 0 ? force / allowed : 0; }
};

struct JointResult {
    std::size_t joint = 0;
    double use = 0;     // of what may be used; above 1 it is overloaded
    std::string mode;   // "glue", "dowel", "screw", "pull", "bending of the tongue"
    double force = 0;   // N, that passes through the worst stretch
    double moment = 0;  // N mm, the same
    std::size_t in_case = 0;
};

struct Sag {
    PartId part{};
    double sag = 0;   // mm, against the line through its ends; with creep where the load lasts
    double span = 0;  // mm
    std::size_t in_case = 0;
};

struct Sway {
    double sway = 0;    // mm, where it is pushed
    double height = 0;  // mm
    std::size_t in_case = 0;
};

struct Verdict {
    std::vector<PartResult> parts;      // by part; allowed = 0 for one that is in no structure
    std::vector<ColumnResult> columns;  // of single beams, the worst of each that is pressed
    std::vector<JointResult> joints;    // by joint; use = 0 where nothing is judged
    std::vector<Sag> sags;              // of carriers, the worst of each
    std::vector<Sway> sways;            // of pushes
};

class Judge {
  public:
    Judge(const Piece& piece, const Structure& structure, Sections& sections, const Rules& rules);
    void add(std::size_t index, const Case& loads, const CaseResult& result);
    Verdict take() { return std::move(verdict_); }

  private:
    const Piece& piece_;
    const Structure& structure_;
    Sections& sections_;
    const Rules& rules_;
    std::vector<double> glue_;  // by joint: N, all of its glue
    Verdict verdict_;

    void judge_part(const PartModel& part, double share, std::size_t index, const CaseResult& result);
    void judge_column(const PartModel& part, double share, std::size_t index, const CaseResult& result);
    void judge_joint(const JointSpring& joint, double share, std::size_t index, const CaseResult& result);
    void judge_sag(const PartModel& part, double creep, std::size_t index, const CaseResult& result);
};

}  // namespace rodwright::strength
