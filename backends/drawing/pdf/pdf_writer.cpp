#include "backends/drawing/pdf/pdf_writer.hpp"

#include <fmt/format.h>
#include <hpdf.h>
#include <hpdf_objects.h>
#include <hpdf_streams.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <memory>
#include <numbers>

#include "backends/drawing/curve.hpp"
#include "backends/drawing/dashes.hpp"
#include "backends/drawing/line_style.hpp"
#include "backends/drawing/pdf/to_unicode.hpp"
#include "backends/drawing/text_run.hpp"

namespace rodwright::drawing {

namespace {

constexpr double points_a_millimetre = 72.0 / 25.4;

// The first fault: the library repeats later ones, or hides the cause behind "invalid document".
struct Fault {
    std::string message;
    bool happened() const { return !message.empty(); }
    void set(std::string text) {
        if (message.empty()) message = std::move(text);
    }
};

void keep_first_fault(HPDF_STATUS code, HPDF_STATUS detail, void* fault) {
    static_cast<Fault*>(fault)->set(
        fmt::format("the PDF library refused what it was given (error {:#06x}, {})", code, detail));
}

// libharu clamps coordinates at 32767 without a word and writes garbage for what is not a number.
HPDF_REAL to_points(double millimetres, Fault& fault) {
    constexpr double limit = 5000;
    if (!std::isfinite(millimetres) || std::abs(millimetres) > limit) {
        fault.set("a place on a sheet is not a number within 5 m");
        return 0;
    }
    // Hundredths of a point, 0.0035 mm: shorter to write, and finer than any printer.
    return static_cast<HPDF_REAL>(std::round(millimetres * points_a_millimetre * 100) / 100);
}

HPDF_REAL part_of_one(std::uint8_t value) {
    return static_cast<HPDF_REAL>(value) / 255;
}

class Document {
  public:
    explicit Document(bool compressed) : document_(HPDF_New(keep_first_fault, &fault_)) {
        if (!document_) {
            fault_.set("there is not enough memory for the PDF library");
            return;
        }
        if (compressed) HPDF_SetCompressionMode(get(), HPDF_COMP_ALL);
        HPDF_UseUTFEncodings(get());
        // Titles and outline entries go through the current encoder.
        HPDF_SetCurrentEncoder(get(), "UTF-8");
    }
    // The library holds the fault's address.
    Document(const Document&) = delete;
    Document& operator=(const Document&) = delete;

    HPDF_Doc get() const { return document_.get(); }
    Fault& fault() { return fault_; }
    bool ok() const { return !fault_.happened(); }
    HPDF_Font font(FontFace face) const { return fonts_[static_cast<std::size_t>(face)]; }

    // `to_unicode`: the fonts' map from codes to characters.
    void load_fonts(const Fonts& fonts, const std::string& to_unicode) {
        for (const FontFace face : {FontFace::regular, FontFace::bold}) {
            const char* name = HPDF_LoadTTFontFromFile(get(), fonts[face].path.c_str(), HPDF_TRUE);
            if (!ok()) return;
            HPDF_Font font = HPDF_GetFont(get(), name, "UTF-8");
            if (!ok()) return;
            set_to_unicode(font, to_unicode);
            fonts_[static_cast<std::size_t>(face)] = font;
        }
    }
    std::string bytes() {
        if (ok()) HPDF_SaveToStream(get());
        if (!ok()) return "";
        std::string bytes(HPDF_GetStreamSize(get()), '\0');
        auto size = static_cast<HPDF_UINT32>(bytes.size());
        HPDF_ReadFromStream(get(), reinterpret_cast<HPDF_BYTE*>(bytes.data()), &size);
        bytes.resize(size);
        return bytes;
    }

  private:
    // The library's own map is written with operators that only maps of the other direction have.
    void set_to_unicode(HPDF_Font font, const std::string& to_unicode) {
        auto* map = static_cast<HPDF_Dict>(HPDF_Dict_GetItem(font, "ToUnicode", HPDF_OCLASS_DICT));
        if (map == nullptr) {
            fault_.set("the PDF library made a font without a map to characters");
            return;
        }
        HPDF_MemStream_FreeData(map->stream);
        if (HPDF_Stream_WriteStr(map->stream, to_unicode.c_str()) != HPDF_OK)
            fault_.set("there is not enough memory for the PDF library");
    }

    struct Free {
        void operator()(HPDF_Doc document) const { HPDF_Free(document); }
    };
    Fault fault_;
    std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, Free> document_;
    std::array<HPDF_Font, 2> fonts_{};
};

// Text between these two calls of the library, always both.
class TextBlock {
  public:
    explicit TextBlock(HPDF_Page page) : page_(page) { HPDF_Page_BeginText(page_); }
    ~TextBlock() { HPDF_Page_EndText(page_); }
    TextBlock(const TextBlock&) = delete;
    TextBlock& operator=(const TextBlock&) = delete;

  private:
    HPDF_Page page_;
};

// Draws the items of one sheet; says what a line looks like only when it changes.
class PagePainter {
  public:
    PagePainter(Document& document, HPDF_Page page, const Fonts& fonts)
        : document_(document), page_(page), fonts_(fonts) {
        HPDF_Page_SetLineCap(page_, HPDF_ROUND_END);
        HPDF_Page_SetLineJoin(page_, HPDF_ROUND_JOIN);
    }

    void operator()(const Stroke& stroke) {
        if (stroke.points.size() < 2) return;
        const LineStyle& style = line_style(stroke.role);
        use_style(style);
        if (!style.dashes.empty()) {
            for (const std::vector<Point>& dash : dashes_of(outline_of(stroke), style.dashes)) path(dash);
        } else if (stroke.smooth) {
            curve(bezier_through(stroke.points, stroke.closed));
        } else {
            path(stroke.points);
            if (stroke.closed) HPDF_Page_ClosePath(page_);
        }
        HPDF_Page_Stroke(page_);
    }
    void operator()(const Arc& arc) {
        const LineStyle& style = line_style(arc.role);
        use_style(style);
        for (const Arc& dash : dashes_of(arc, style.dashes)) curve(bezier_of(dash));
        if (style.dashes.empty() && arc.whole()) HPDF_Page_ClosePath(page_);
        HPDF_Page_Stroke(page_);
    }
    void operator()(const Disc& disc) {
        use_fill(disc.colour);
        curve(bezier_of({LineRole::visible, disc.centre, disc.radius, 0, 2 * std::numbers::pi}));
        HPDF_Page_Fill(page_);
    }
    void operator()(const Fill& fill) {
        if (fill.points.size() < 3) return;
        use_fill(fill.colour);
        path(fill.points);
        HPDF_Page_ClosePath(page_);
        HPDF_Page_Fill(page_);
    }
    void operator()(const Text& text) {
        if (!check_glyphs(text)) return;
        use_fill(black);
        const SetText set = set_text(text.text, text.face, text.height, fonts_);
        const double start = text.align == Align::left     ? 0
                             : text.align == Align::middle ? -set.width / 2
                                                           : -set.width;
        show_runs(set, text, start);
        draw_bars(set, text, start);
    }

    // Links are added when every page is there to lead to.
    void operator()(const Link&) {}
    void operator()(const GroupStart&) {}
    void operator()(const GroupEnd&) {}

    void operator()(const ClipStart& clip) {
        HPDF_Page_GSave(page_);
        HPDF_Page_Rectangle(page_, at(clip.box.left), at(clip.box.bottom), at(clip.box.width()),
                            at(clip.box.height()));
        HPDF_Page_Clip(page_);
        HPDF_Page_EndPath(page_);
    }
    // What lines, fills and letters look like is again what it was before the clip.
    void operator()(const ClipEnd&) {
        HPDF_Page_GRestore(page_);
        style_ = nullptr;
        fill_known_ = false;
        height_ = 0;
    }

  private:
    HPDF_REAL at(double millimetres) { return to_points(millimetres, document_.fault()); }

    static std::vector<Point> outline_of(const Stroke& stroke) {
        std::vector<Point> points = stroke.points;
        if (stroke.closed) points.push_back(points.front());
        return points;
    }

    void path(const std::vector<Point>& points) {
        HPDF_Page_MoveTo(page_, at(points[0].x), at(points[0].y));
        for (std::size_t i = 1; i < points.size(); ++i)
            HPDF_Page_LineTo(page_, at(points[i].x), at(points[i].y));
    }

    void curve(const std::vector<Point>& controls) {
        HPDF_Page_MoveTo(page_, at(controls[0].x), at(controls[0].y));
        for (std::size_t i = 1; i + 2 < controls.size(); i += 3) {
            HPDF_Page_CurveTo(page_, at(controls[i].x), at(controls[i].y), at(controls[i + 1].x),
                              at(controls[i + 1].y), at(controls[i + 2].x), at(controls[i + 2].y));
        }
    }

    void use_style(const LineStyle& style) {
        if (style_ == &style) return;
        style_ = &style;
        HPDF_Page_SetLineWidth(page_, at(style.width));
        HPDF_Page_SetRGBStroke(page_, part_of_one(style.colour.red), part_of_one(style.colour.green),
                               part_of_one(style.colour.blue));
    }

    void use_fill(Colour colour) {
        if (fill_known_ && fill_ == colour) return;
        fill_known_ = true;
        fill_ = colour;
        HPDF_Page_SetRGBFill(page_, part_of_one(colour.red), part_of_one(colour.green),
                             part_of_one(colour.blue));
    }

    bool check_glyphs(const Text& text) {
        const FontMetrics& metrics = fonts_[text.face].metrics;
        for (const char32_t character : characters_of(text.text)) {
            if (metrics.has(character)) continue;
            document_.fault().set(fmt::format("the font has no character U+{:04X}, needed for `{}`",
                                              static_cast<std::uint32_t>(character), text.text));
            return false;
        }
        return true;
    }

    // A point of a text's own line, turned and moved onto the sheet.
    static Point on_sheet(const Text& text, double start, Point offset) {
        const double along = start + offset.x;
        return text.upward ? text.at + Point{-offset.y, along} : text.at + Point{along, offset.y};
    }

    void show_runs(const SetText& set, const Text& text, double start) {
        const TextBlock block(page_);
        for (const PlacedRun& run : set.runs) {
            use_font(text.face, run.height);
            const Point place = on_sheet(text, start, run.offset);
            const HPDF_REAL turn = text.upward ? 1.0F : 0.0F;
            HPDF_Page_SetTextMatrix(page_, 1 - turn, turn, -turn, 1 - turn, at(place.x), at(place.y));
            HPDF_Page_ShowText(page_, run.text.c_str());
        }
    }

    void draw_bars(const SetText& set, const Text& text, double start) {
        for (const auto& [from, to] : set.bars) {
            (*this)(Stroke{LineRole::dimension, {on_sheet(text, start, from), on_sheet(text, start, to)}});
        }
    }

    void use_font(FontFace face, double height) {
        if (face == face_ && height == height_) return;
        face_ = face;
        height_ = height;
        HPDF_Page_SetFontAndSize(page_, document_.font(face), at(height / capital_height));
    }

    Document& document_;
    HPDF_Page page_;
    const Fonts& fonts_;
    const LineStyle* style_ = nullptr;
    Colour fill_;
    bool fill_known_ = false;
    FontFace face_ = FontFace::regular;
    double height_ = 0;
};

HPDF_Outline add_entry(Document& document, HPDF_Outline under, const std::string& title, HPDF_Page page) {
    HPDF_Outline entry = HPDF_CreateOutline(document.get(), under, title.c_str(), nullptr);
    HPDF_Outline_SetDestination(entry, HPDF_Page_CreateDestination(page));
    return entry;
}

// Whether the section that begins with that sheet has sheets of different titles.
bool has_several(const std::vector<Sheet>& sheets, std::size_t first) {
    for (std::size_t i = first; i < sheets.size() && sheets[i].section == sheets[first].section; ++i) {
        if (sheets[i].title != sheets[first].title) return true;
    }
    return false;
}

// A section of several sheets is an entry with theirs under it. A sheet that goes on with the one before it,
// under the same title, has none.
void add_outline(Document& document, const std::vector<Sheet>& sheets, const std::vector<HPDF_Page>& pages) {
    HPDF_Outline section = nullptr;
    for (std::size_t i = 0; i < sheets.size() && document.ok(); ++i) {
        const Sheet& sheet = sheets[i];
        const bool first = i == 0 || sheets[i - 1].section != sheet.section;
        if (first) {
            const bool nested = !sheet.section.empty() && has_several(sheets, i);
            section = nested ? add_entry(document, nullptr, sheet.section, pages[i]) : nullptr;
        }
        const bool goes_on = !first && sheets[i - 1].title == sheet.title;
        if (!sheet.title.empty() && !goes_on) add_entry(document, section, sheet.title, pages[i]);
    }
}

HPDF_Page add_page(Document& document, const Sheet& sheet, const Fonts& fonts) {
    HPDF_Page page = HPDF_AddPage(document.get());
    if (page == nullptr) return nullptr;
    HPDF_Page_SetWidth(page, to_points(sheet.width, document.fault()));
    HPDF_Page_SetHeight(page, to_points(sheet.height, document.fault()));
    PagePainter painter(document, page, fonts);
    for (const Item& item : sheet.items) {
        std::visit(painter, item);
        if (!document.ok()) return nullptr;
    }
    return page;
}

// A rectangle that leads to another page; it has no border of its own.
void add_link(Document& document, HPDF_Page page, const Rect& box, HPDF_Page target) {
    Fault& fault = document.fault();
    const HPDF_Rect on_page = {to_points(box.left, fault), to_points(box.bottom, fault),
                               to_points(box.right, fault), to_points(box.top, fault)};
    HPDF_Annotation link = HPDF_Page_CreateLinkAnnot(page, on_page, HPDF_Page_CreateDestination(target));
    if (link != nullptr) HPDF_LinkAnnot_SetBorderStyle(link, 0, 0, 0);
}

void add_links(Document& document, const std::vector<Sheet>& sheets, const std::vector<HPDF_Page>& pages) {
    std::map<std::string, HPDF_Page> anchors;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        for (const std::string& anchor : sheets[i].anchors) anchors.emplace(anchor, pages[i]);
    }
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        for (const Item& item : sheets[i].items) {
            const auto* link = std::get_if<Link>(&item);
            if (link == nullptr) continue;
            const auto target = anchors.find(link->anchor);
            if (target != anchors.end()) add_link(document, pages[i], link->box, target->second);
        }
    }
}

HPDF_Date date_of(std::chrono::sys_seconds time) {
    const auto day = std::chrono::floor<std::chrono::days>(time);
    const std::chrono::year_month_day date(day);
    const std::chrono::hh_mm_ss clock(time - day);
    return {static_cast<int>(date.year()),
            static_cast<int>(static_cast<unsigned>(date.month())),
            static_cast<int>(static_cast<unsigned>(date.day())),
            static_cast<int>(clock.hours().count()),
            static_cast<int>(clock.minutes().count()),
            static_cast<int>(clock.seconds().count()),
            'Z',
            0,
            0};
}

// Page labels are the numbers in the title blocks.
void set_info(Document& document, const PdfInfo& info) {
    HPDF_SetInfoAttr(document.get(), HPDF_INFO_TITLE, info.title.c_str());
    HPDF_SetInfoAttr(document.get(), HPDF_INFO_SUBJECT, info.subject.c_str());
    HPDF_SetInfoAttr(document.get(), HPDF_INFO_CREATOR, "rodwright");
    if (info.date) HPDF_SetInfoDateAttr(document.get(), HPDF_INFO_CREATION_DATE, date_of(*info.date));
    HPDF_SetPageMode(document.get(), HPDF_PAGE_MODE_USE_OUTLINE);
    HPDF_AddPageLabel(document.get(), 0, HPDF_PAGE_NUM_STYLE_DECIMAL, 1, "");
}

}  // namespace

std::optional<std::string> write_pdf(const std::vector<Sheet>& sheets, const Fonts& fonts,
                                     const PdfInfo& info, Diagnostics& diagnostics) {
    Document document(info.compressed);
    if (document.ok()) document.load_fonts(fonts, to_unicode_map(sheets));
    if (document.ok()) set_info(document, info);
    std::vector<HPDF_Page> pages;
    for (const Sheet& sheet : sheets) {
        if (document.ok()) pages.push_back(add_page(document, sheet, fonts));
    }
    if (document.ok()) add_links(document, sheets, pages);
    if (document.ok()) add_outline(document, sheets, pages);
    std::string bytes = document.bytes();
    if (document.ok()) return bytes;
    diagnostics.add(diagnose(Code::cannot_draw, {}, document.fault().message));
    return std::nullopt;
}

}  // namespace rodwright::drawing
