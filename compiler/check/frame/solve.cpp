#include "compiler/check/frame/solve.hpp"

#include <Eigen/SparseCholesky>
#include <cmath>

#include "compiler/check/frame/element.hpp"

namespace rodwright::frame {

namespace {

using Sparse = Eigen::SparseMatrix<double>;
using Vector = Eigen::VectorXd;

// After scaling every diagonal to one, a pivot below this is a motion that nothing holds back.
constexpr double least_pivot = 1e-11;

Vec12 motions_of(const Vector& all, std::size_t first, std::size_t second) {
    Vec12 result;
    result << all.segment<6>(static_cast<Eigen::Index>(6 * first)),
        all.segment<6>(static_cast<Eigen::Index>(6 * second));
    return result;
}

template <typename Block>
void add_block(std::vector<Eigen::Triplet<double>>& entries, std::size_t first, std::size_t second,
               const Block& block) {
    const auto place = [&](int i) { return static_cast<int>(6 * (i < 6 ? first : second)) + i % 6; };
    for (int i = 0; i < 12; ++i) {
        for (int j = 0; j < 12; ++j) {
            if (block(i, j) != 0) entries.emplace_back(place(i), place(j), block(i, j));
        }
    }
}

bool sound(const Beam& beam) {
    const Section& s = beam.section;
    for (const double value : {s.area, s.shear_y, s.shear_z, s.inertia_y, s.inertia_z, s.torsion,
                               beam.modulus, beam.shear_modulus}) {
        if (!std::isfinite(value) || value <= 0) return false;
    }
    return true;
}

}  // namespace

struct Factored::Inside {
    struct BeamParts {
        PlacedBeam placed;
        Mat12 stiffness;  // in its own axes
    };

    Model model;
    std::vector<BeamParts> beams;
    std::vector<Eigen::Matrix<double, 6, 12>> springs;
    std::vector<int> free;    // the equation of each motion, -1 where it is fixed
    std::vector<int> motion;  // of each equation
    Sparse whole;             // of all motions, fixed ones too
    Vector scale;             // of the equations
    Eigen::SimplicialLDLT<Sparse> factors;

    std::string name_of(int at) const { return model.nodes[static_cast<std::size_t>(at) / 6].name; }

    bool elements(Fault& fault) {
        for (const Beam& beam : model.beams) {
            bool usable = sound(beam);
            BeamParts parts;
            if (usable) parts.placed = place_beam(model, beam, usable);
            if (!usable) {
                fault = {Fault::Kind::bad_number, beam.name};
                return false;
            }
            parts.stiffness = beam_stiffness(beam, parts.placed.length);
            beams.push_back(std::move(parts));
        }
        for (const Spring& spring : model.springs) {
            if (!spring.stiffness.allFinite() || !spring.point.allFinite()) {
                fault = {Fault::Kind::bad_number, spring.name};
                return false;
            }
            springs.push_back(spring_motion(model, spring));
        }
        return true;
    }

    void assemble() {
        std::vector<Eigen::Triplet<double>> entries;
        for (std::size_t i = 0; i < beams.size(); ++i) {
            const Mat12 block =
                beams[i].placed.to_local.transpose() * beams[i].stiffness * beams[i].placed.to_local;
            add_block(entries, model.beams[i].start, model.beams[i].end, block);
        }
        for (std::size_t i = 0; i < springs.size(); ++i) {
            const Mat12 block = springs[i].transpose() * model.springs[i].stiffness * springs[i];
            add_block(entries, model.springs[i].first, model.springs[i].second, block);
        }
        const auto size = static_cast<Eigen::Index>(6 * model.nodes.size());
        whole.resize(size, size);
        whole.setFromTriplets(entries.begin(), entries.end());
    }

    void number_equations() {
        for (std::size_t i = 0; i < 6 * model.nodes.size(); ++i) {
            const bool fixed = model.nodes[i / 6].fixed[i % 6];
            free.push_back(fixed ? -1 : static_cast<int>(motion.size()));
            if (!fixed) motion.push_back(static_cast<int>(i));
        }
    }

    // The equations of what is free, scaled so that every diagonal is one.
    bool factor(Fault& fault) {
        const auto size = static_cast<Eigen::Index>(motion.size());
        scale.resize(size);
        for (Eigen::Index i = 0; i < size; ++i) {
            const double diagonal =
                whole.coeff(motion[static_cast<std::size_t>(i)], motion[static_cast<std::size_t>(i)]);
            if (!(diagonal > 0)) {
                fault = {Fault::Kind::mechanism, name_of(motion[static_cast<std::size_t>(i)])};
                return false;
            }
            scale(i) = 1 / std::sqrt(diagonal);
        }
        std::vector<Eigen::Triplet<double>> entries;
        for (Eigen::Index column = 0; column < whole.outerSize(); ++column) {
            for (Sparse::InnerIterator it(whole, column); it; ++it) {
                const int i = free[static_cast<std::size_t>(it.row())];
                const int j = free[static_cast<std::size_t>(it.col())];
                if (i >= 0 && j >= 0) entries.emplace_back(i, j, it.value() * scale(i) * scale(j));
            }
        }
        Sparse scaled(size, size);
        scaled.setFromTriplets(entries.begin(), entries.end());
        factors.compute(scaled);
        return no_mechanism(fault);
    }

    bool no_mechanism(Fault& fault) const {
        const Vector pivots = factors.vectorD();
        const auto order = factors.permutationPinv().indices();
        for (Eigen::Index i = 0; i < pivots.size(); ++i) {
            if (std::isfinite(pivots(i)) && pivots(i) > least_pivot) continue;
            const int equation = order.size() == 0 ? static_cast<int>(i) : order(i);
            fault = {Fault::Kind::mechanism, name_of(motion[static_cast<std::size_t>(equation)])};
            return false;
        }
        if (factors.info() == Eigen::Success) return true;
        fault = {Fault::Kind::mechanism, model.nodes.front().name};
        return false;
    }

    Vector load_vector(const LoadCase& loads) const {
        Vector force = Vector::Zero(static_cast<Eigen::Index>(6 * model.nodes.size()));
        for (const NodeLoad& load : loads.on_nodes)
            force.segment<6>(static_cast<Eigen::Index>(6 * load.node)) += load.force;
        for (const BeamLoad& load : loads.on_beams) {
            const BeamParts& parts = beams[load.beam];
            const Vec12 held = held_ends(parts.placed.rows * load.per_length, parts.placed.length);
            const Vec12 shared = parts.placed.to_local.transpose() * held;
            const Beam& beam = model.beams[load.beam];
            force.segment<6>(static_cast<Eigen::Index>(6 * beam.start)) -= shared.head<6>();
            force.segment<6>(static_cast<Eigen::Index>(6 * beam.end)) -= shared.tail<6>();
        }
        return force;
    }

    Vector of_free(const Vector& all) const {
        Vector result(static_cast<Eigen::Index>(motion.size()));
        for (std::size_t i = 0; i < motion.size(); ++i) result(static_cast<Eigen::Index>(i)) = all(motion[i]);
        return result;
    }

    Vector of_all(const Vector& equations) const {
        Vector result = Vector::Zero(static_cast<Eigen::Index>(6 * model.nodes.size()));
        for (std::size_t i = 0; i < motion.size(); ++i)
            result(motion[i]) = equations(static_cast<Eigen::Index>(i));
        return result;
    }

    // Two steps of refinement: joints are far stiffer than long thin parts.
    Vector motions(const Vector& force) const {
        Vector all = Vector::Zero(force.size());
        for (int step = 0; step < 3; ++step) {
            const Vector left = of_free(force - whole * all).cwiseProduct(scale);
            all += of_all(factors.solve(left).cwiseProduct(scale));
        }
        return all;
    }
};

Factored::Factored(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Factored::Factored(Factored&&) noexcept = default;
Factored& Factored::operator=(Factored&&) noexcept = default;
Factored::~Factored() = default;

std::optional<Factored> Factored::make(const Model& model, Fault& fault) {
    auto inside = std::make_unique<Inside>();
    inside->model = model;
    if (!inside->elements(fault)) return std::nullopt;
    inside->assemble();
    inside->number_equations();
    if (!inside->motion.empty() && !inside->factor(fault)) return std::nullopt;
    return Factored(std::move(inside));
}

std::optional<Solution> Factored::solve(const LoadCase& loads) const {
    const Inside& in = *inside_;
    const Vector force = in.load_vector(loads);
    const Vector all = in.motion.empty() ? Vector(Vector::Zero(force.size())) : in.motions(force);
    const Vector balance = in.whole * all - force;
    // Scaled as the equations are, so that forces and moments weigh alike.
    const auto size = [&](const Vector& unscaled) {
        return in.of_free(unscaled).cwiseProduct(in.scale).norm();
    };
    if (!all.allFinite() || size(balance) > most_residual * size(force)) return std::nullopt;

    Solution solution;
    for (std::size_t i = 0; i < in.model.nodes.size(); ++i) {
        solution.motions.push_back(all.segment<6>(static_cast<Eigen::Index>(6 * i)));
        Vec6 reaction = balance.segment<6>(static_cast<Eigen::Index>(6 * i));
        for (int j = 0; j < 6; ++j) {
            if (!in.model.nodes[i].fixed[static_cast<std::size_t>(j)]) reaction(j) = 0;
        }
        solution.reactions.push_back(reaction);
    }
    for (std::size_t i = 0; i < in.beams.size(); ++i) {
        const Beam& beam = in.model.beams[i];
        const Vec12 ends =
            in.beams[i].stiffness * (in.beams[i].placed.to_local * motions_of(all, beam.start, beam.end));
        solution.beams.push_back({ends.head<6>(), ends.tail<6>()});
    }
    for (const BeamLoad& load : loads.on_beams) {
        const PlacedBeam& placed = in.beams[load.beam].placed;
        const Vec12 held = held_ends(placed.rows * load.per_length, placed.length);
        solution.beams[load.beam].start += held.head<6>();
        solution.beams[load.beam].end += held.tail<6>();
    }
    for (std::size_t i = 0; i < in.springs.size(); ++i) {
        const Spring& spring = in.model.springs[i];
        solution.spring_motions.push_back(in.springs[i] * motions_of(all, spring.first, spring.second));
    }
    return solution;
}

}  // namespace rodwright::frame
