#include "compiler/workplan/data/work_fields.hpp"

namespace rodwright {

Rational seconds_of(FieldReader& fields, std::string_view key) {
    const YamlNode* node = fields.optional_scalar(key);
    if (node == nullptr) return 0;
    const std::optional<Quantity> time = read_quantity(*node, fields.diagnostics());
    constexpr long longest = 365L * 86400;  // nothing in a shop waits longer
    if (time && time->dimension == Dimension::of(Base::time) && time->value >= 0 && time->value <= longest)
        return time->value;
    if (time) fields.fault(*node, "a time of a year at most is wanted", "write the unit: `5 min`, `24 h`");
    fields.spoil();
    return 0;
}

}  // namespace rodwright
