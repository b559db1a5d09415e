#include "compiler/check/check_data.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <stdexcept>

#include "compiler/data/embedded.hpp"
#include "compiler/data/yaml_fields.hpp"

namespace rodwright {
namespace {

constexpr std::array<std::pair<std::string_view, Measure>, 5> measures = {{{"top", Measure::top},
                                                                           {"knees", Measure::knees},
                                                                           {"depth", Measure::depth},
                                                                           {"spacing", Measure::spacing},
                                                                           {"reach", Measure::reach}}};

// A quantity above zero of that dimension; none of it where it is not so.
Quantity quantity_of(const YamlNode& node, FieldReader& fields, Base base) {
    const std::optional<Quantity> value = read_quantity(node, fields.diagnostics());
    if (!value) {
        fields.spoil();
    } else if (value->dimension != Dimension::of(base) || value->value <= 0) {
        fields.fault(node, "this is a quantity above zero, of another kind", "as in `2mm`, `600 N`, `30 lb`");
    } else {
        return *value;
    }
    return {};
}

// In base units.
double value_of(FieldReader& fields, std::string_view key, Base base) {
    const YamlNode* node = fields.scalar(key);
    return node == nullptr ? 0 : quantity_of(*node, fields, base).to_double();
}

double value_or(FieldReader& fields, std::string_view key, Base base, double otherwise) {
    const YamlNode* node = fields.optional_scalar(key);
    return node == nullptr ? otherwise : quantity_of(*node, fields, base).to_double();
}

Quantity force_of(FieldReader& fields, std::string_view key) {
    const YamlNode* node = fields.scalar(key);
    return node == nullptr ? Quantity() : quantity_of(*node, fields, Base::force);
}

double share_of(FieldReader& fields, std::string_view key) {
    return fields.number(key).get_d();
}

// The maps of a section, each with the fields that its reader asks for.
class Section {
  public:
    Section(FieldReader& fields, std::string_view key, std::initializer_list<std::string_view> known,
            Diagnostics& diagnostics)
        : diagnostics_(diagnostics) {
        if (const YamlNode* map = fields.map(key)) fields_.emplace(*map, known, diagnostics);
    }

    // Whether it is there and was read so far without a fault.
    explicit operator bool() const { return ok_ && fields_ && fields_->ok(); }
    FieldReader& fields() { return *fields_; }

    template <typename Read>
    void read(std::string_view key, std::initializer_list<std::string_view> known, Read&& read) {
        const YamlNode* map = fields_ ? fields_->map(key) : nullptr;
        if (map == nullptr) return;
        FieldReader inside(*map, known, diagnostics_);
        read(inside);
        ok_ = ok_ && inside.ok();
    }

  private:
    Diagnostics& diagnostics_;
    std::optional<FieldReader> fields_;
    bool ok_ = true;
};

GapLimit read_gap(FieldReader& fields) {
    fields.text("source");
    return {value_of(fields, "widest", Base::length), share_of(fields, "cover")};
}

bool read_fit(FieldReader& root, FitLimits& fit, Diagnostics& diagnostics) {
    Section section(root, "fit", {"gap", "wall", "trench"}, diagnostics);
    section.read("gap", {"widest", "cover", "source"}, [&](FieldReader& f) { fit.gap = read_gap(f); });
    section.read("wall", {"thinnest", "share", "source"}, [&](FieldReader& f) {
        fit.thinnest_wall = value_of(f, "thinnest", Base::length);
        fit.wall_share = share_of(f, "share");
        f.text("source");
    });
    section.read("trench", {"share", "source"}, [&](FieldReader& f) {
        fit.trench_share = share_of(f, "share");
        f.text("source");
    });
    return static_cast<bool>(section);
}

bool read_wood(FieldReader& root, WoodLimits& wood, Diagnostics& diagnostics) {
    Section section(root, "wood", {"short_way", "run_out"}, diagnostics);
    section.read("short_way", {"ratio", "source"}, [&](FieldReader& f) {
        wood.short_way = share_of(f, "ratio");
        f.text("source");
    });
    section.read("run_out", {"share", "source"}, [&](FieldReader& f) {
        wood.run_out = share_of(f, "share");
        f.text("source");
    });
    return static_cast<bool>(section);
}

bool read_tip_test(const YamlNode& node, std::vector<TipTest>& tests, Diagnostics& diagnostics) {
    FieldReader fields(node, {"use", "down", "inset", "push", "backwards", "source"}, diagnostics);
    TipTest test;
    test.use = fields.text("use");
    test.down = value_of(fields, "down", Base::force);
    test.inset = value_of(fields, "inset", Base::length);
    test.push = value_or(fields, "push", Base::force, 0);
    test.backwards = fields.flag("backwards");
    test.source = fields.text("source");
    tests.push_back(std::move(test));
    return fields.ok();
}

StorageTest read_storage(FieldReader& fields) {
    StorageTest test;
    test.least_height = value_of(fields, "least_height", Base::length);
    test.least_mass = value_of(fields, "least_mass", Base::mass);
    test.child = force_of(fields, "child");
    test.block = value_of(fields, "block", Base::length);
    test.push = force_of(fields, "push");
    test.push_height = value_of(fields, "push_height", Base::length);
    test.contents = share_of(fields, "contents");
    test.source = fields.text("source");
    return test;
}

bool read_standing(FieldReader& root, StandingLimits& standing, Diagnostics& diagnostics) {
    Section section(root, "standing", {"least_angle", "tests", "storage"}, diagnostics);
    section.read("least_angle", {"angle", "source"}, [&](FieldReader& f) {
        standing.least_angle = value_of(f, "angle", Base::angle);
        f.text("source");
    });
    section.read(
        "storage",
        {"least_height", "least_mass", "child", "block", "push", "push_height", "contents", "source"},
        [&](FieldReader& f) { standing.storage = read_storage(f); });
    const YamlNode* tests = section ? section.fields().list("tests") : nullptr;
    if (tests == nullptr) return false;
    return std::ranges::all_of(tests->children, [&](const YamlNode& node) {
        return read_tip_test(node, standing.tests, diagnostics);
    });
}

bool read_usual(const YamlNode& node, std::vector<UsualSize>& sizes, Diagnostics& diagnostics) {
    FieldReader fields(node, {"use", "measure", "what", "least", "most", "source"}, diagnostics);
    UsualSize size;
    size.use = fields.text("use");
    const std::string word = fields.text("measure");
    const auto measure = std::ranges::find(measures, word, &std::pair<std::string_view, Measure>::first);
    if (measure != measures.end()) {
        size.measure = measure->second;
    } else if (fields.ok()) {
        fields.fault(*fields.entry("measure"), "no such measure",
                     "one of `top`, `knees`, `depth`, `spacing`, `reach`");
    }
    size.what = fields.text("what");
    size.least = value_or(fields, "least", Base::length, 0);
    size.most = value_or(fields, "most", Base::length, std::numeric_limits<double>::infinity());
    size.source = fields.text("source");
    sizes.push_back(std::move(size));
    return fields.ok();
}

bool read_people(FieldReader& root, std::vector<UsualSize>& sizes, Diagnostics& diagnostics) {
    const YamlNode* list = root.list("people");
    if (list == nullptr) return false;
    return std::ranges::all_of(list->children,
                               [&](const YamlNode& node) { return read_usual(node, sizes, diagnostics); });
}

CheckData built_in() {
    SourceManager sources;
    Diagnostics diagnostics;
    if (auto data = read_check_data(sources, add_embedded("data/checks.yaml", sources), diagnostics))
        return std::move(*data);
    throw std::logic_error("data/checks.yaml of the library: " + diagnostics.list().front().message);
}

}  // namespace

std::optional<CheckData> read_check_data(const SourceManager& sources, FileId file,
                                         Diagnostics& diagnostics) {
    const std::optional<YamlNode> root = read_yaml(sources, file, diagnostics);
    if (!root) return std::nullopt;
    FieldReader fields(*root, {"fit", "movement", "wood", "standing", "people"}, diagnostics);
    CheckData data;
    bool ok = read_fit(fields, data.fit, diagnostics);
    Section movement(fields, "movement", {"gap"}, diagnostics);
    movement.read("gap", {"widest", "cover", "source"}, [&](FieldReader& f) { data.movement = read_gap(f); });
    ok = static_cast<bool>(movement) && ok;
    ok = read_wood(fields, data.wood, diagnostics) && ok;
    ok = read_standing(fields, data.standing, diagnostics) && ok;
    ok = read_people(fields, data.people, diagnostics) && ok;
    if (!ok || !fields.ok()) return std::nullopt;
    return data;
}

const CheckData& check_data() {
    static const CheckData data = built_in();
    return data;
}

}  // namespace rodwright
