#include "compiler/check/movement/moisture.hpp"

namespace rodwright {

double equilibrium_moisture(double kelvin, double humidity) {
    const double t = kelvin - 273.15;
    const double w = 349 + 1.29 * t + 0.0135 * t * t;
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * humidity;
    const double dissolved = kh / (1 - kh);
    const double bound = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
    return 1800 / w * (dissolved + bound);
}

Seasons seasons_of(const Climate& climate) {
    const double kelvin = climate.kelvin.get_d();
    return {100 * climate.made_at.get_d(), equilibrium_moisture(kelvin, climate.driest.get_d()),
            equilibrium_moisture(kelvin, climate.dampest.get_d())};
}

}  // namespace rodwright
