// GEOS behind values: what cannot be worked out comes back as nothing, and its messages go nowhere. Only for
// the files that divide and cover the paper.
#pragma once

#include <geos_c.h>

#include <memory>

#include "backends/drawing/regions.hpp"

namespace rodwright::drawing {

class Geos {
  public:
    Geos() : handle_(GEOS_init_r()) {}
    ~Geos() { GEOS_finish_r(handle_); }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;

    struct Destroy {
        GEOSContextHandle_t handle;
        void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(handle, geometry); }
    };
    using Shape = std::unique_ptr<GEOSGeometry, Destroy>;

    GEOSContextHandle_t get() const { return handle_; }
    Shape own(GEOSGeometry* geometry) const { return Shape(geometry, Destroy{handle_}); }

    GEOSCoordSequence* sequence(const Polyline& points, bool closed) const {
        const std::size_t count = points.size() + (closed ? 1 : 0);
        GEOSCoordSequence* made = GEOSCoordSeq_create_r(handle_, static_cast<unsigned>(count), 2);
        for (std::size_t i = 0; i < count; ++i) {
            const Point& point = points[i % points.size()];
            GEOSCoordSeq_setXY_r(handle_, made, static_cast<unsigned>(i), point.x, point.y);
        }
        return made;
    }

    Shape lines(const std::vector<Polyline>& polylines) const {
        std::vector<GEOSGeometry*> each;
        for (const Polyline& polyline : polylines) {
            if (polyline.size() < 2) continue;
            each.push_back(GEOSGeom_createLineString_r(handle_, sequence(polyline, false)));
        }
        return own(GEOSGeom_createCollection_r(handle_, GEOS_MULTILINESTRING, each.data(),
                                               static_cast<unsigned>(each.size())));
    }

    // Those with less than three corners are left out.
    Shape areas(const std::vector<Polyline>& outlines) const {
        std::vector<GEOSGeometry*> each;
        for (const Polyline& outline : outlines) {
            if (outline.size() < 3) continue;
            each.push_back(GEOSGeom_createPolygon_r(handle_, ring(outline), nullptr, 0));
        }
        return own(GEOSGeom_createCollection_r(handle_, GEOS_MULTIPOLYGON, each.data(),
                                               static_cast<unsigned>(each.size())));
    }

    GEOSGeometry* ring(const Polyline& points) const {
        return GEOSGeom_createLinearRing_r(handle_, sequence(points, true));
    }

    Polyline points_of(const GEOSGeometry* line) const {
        const GEOSCoordSequence* sequence = GEOSGeom_getCoordSeq_r(handle_, line);
        unsigned count = 0;
        GEOSCoordSeq_getSize_r(handle_, sequence, &count);
        Polyline points(count);
        for (unsigned i = 0; i < count; ++i)
            GEOSCoordSeq_getXY_r(handle_, sequence, i, &points[i].x, &points[i].y);
        return points;
    }

    Polyline open_ring(const GEOSGeometry* closed) const {
        Polyline points = points_of(closed);
        if (!points.empty()) points.pop_back();
        return points;
    }

    Region region_of(const GEOSGeometry* polygon) const {
        Region region;
        region.outline = open_ring(GEOSGetExteriorRing_r(handle_, polygon));
        for (int i = 0; i < GEOSGetNumInteriorRings_r(handle_, polygon); ++i)
            region.holes.push_back(open_ring(GEOSGetInteriorRingN_r(handle_, polygon, i)));
        GEOSArea_r(handle_, polygon, &region.area);
        if (const Shape inside = own(GEOSPointOnSurface_r(handle_, polygon))) {
            GEOSGeomGetX_r(handle_, inside.get(), &region.inside.x);
            GEOSGeomGetY_r(handle_, inside.get(), &region.inside.y);
        }
        return region;
    }

  private:
    GEOSContextHandle_t handle_;
};

}  // namespace rodwright::drawing
