#include "tests/unit/rack/random_rack.hpp"

#include <algorithm>
#include <utility>

namespace rodwright::testing {

namespace {

using Fields = std::vector<std::pair<std::string, std::string>>;

class Writer {
  public:
    explicit Writer(std::mt19937& random) : random_(random) {}

    RandomRack write();

  private:
    bool now_and_then(unsigned one_in = 3) { return random_() % one_in == 0; }
    std::string one_of(const std::vector<std::string>& choices) {
        return choices[random_() % choices.size()];
    }
    std::string quoted(const std::string& text);
    std::string any_note(bool block);

    Fields board(const std::string& name, bool offcut, bool block);
    Fields sheet(const std::string& name, bool block);
    std::string defects();
    void add_defects(Fields& fields, bool block);

    std::string in_braces(const Fields& fields, bool one_line);
    std::string with_dash(const Fields& fields, std::size_t column);

    void add(const std::string& text, const std::string& owner = {}) {
        rack_.stretches.push_back({text, owner});
    }
    void list(const std::string& key, const std::string& prefix, std::size_t most);
    void dashed_list(const std::string& key, const std::string& prefix, std::size_t count);
    void bracket_list(const std::string& key, const std::string& prefix, std::size_t count);
    Fields entry(const std::string& key, const std::string& name, bool block);
    void in_one_map();
    void comments(std::size_t column, const std::string& name);

    std::mt19937& random_;
    RandomRack rack_;
    std::size_t column_ = 0;
};

std::string Writer::quoted(const std::string& text) {
    const auto kind = random_() % 6;
    if (kind == 0 && text.find('\'') == std::string::npos) return "'" + text + "'";
    if (kind == 1 && text.find('"') == std::string::npos) return "\"" + text + "\"";
    return text;
}

std::string Writer::any_note(bool block) {
    std::vector<std::string> notes = {"behind the door", "\"a [b] {c}: d, # e\"", "'it''s \"old\"'",
                                      "\"two\n# lines\""};
    if (block) notes.push_back("|\n{}  first\n\n{}  # not a comment");
    return one_of(notes);
}

std::string Writer::defects() {
    std::string list = "[";
    for (unsigned i = 0; i <= random_() % 3; ++i) {
        list += (i == 0 ? "" : ", ") + std::string("{from_end: ") +
                one_of({"0", "3 in", "200mm", "19-5/8 in"}) +
                ", from_edge: " + one_of({"0", "1 in", "40mm"}) + ", length: " + one_of({"1 in", "15.5mm"}) +
                ", width: " + one_of({"2 in", "33mm"}) +
                (now_and_then() ? ", note: \"knot, \\\"dead\\\"\"}" : "}");
    }
    return list + "]";
}

void Writer::add_defects(Fields& fields, bool block) {
    if (now_and_then(2)) fields.emplace_back("defects", defects());
    if (now_and_then()) fields.emplace_back("note", any_note(block));
}

Fields Writer::board(const std::string& name, bool offcut, bool block) {
    Fields fields = {
        {"name", quoted(name)},
        {"wood", quoted(one_of({"white_ash", "cherry"}))},
        {"width", quoted(one_of({"6 in", "7-1/2 in", "150mm", "6 in to 5-1/4 in", "5 in to 180mm"}))},
        {"length", one_of({"61 in", "8 ft", "1200mm", "4'2-1/2\"", "1000-1/3mm"})}};
    if (now_and_then()) {
        fields.emplace_back("thickness", quoted(one_of({"13/16 in", "22mm", "3/4\""})));
        fields.emplace_back("surfaced", "true");
    } else {
        fields.emplace_back("thickness", quoted(one_of({"4/4", "5/4", "27mm", "1 in"})));
    }
    if (now_and_then()) fields.emplace_back("cut", one_of({"flat", "rift", "quartered"}));
    if (now_and_then()) fields.emplace_back("count", quoted(one_of({"1", "2", "13"})));
    if (now_and_then()) fields.emplace_back("moisture", one_of({"8%", "7.5%", "8-1/3%", "0%"}));
    if (now_and_then())
        fields.emplace_back("checks", one_of({"2 in", "[0, 33mm]", "\"2 in, 1 in\"", "[1 in]"}));
    if (now_and_then()) fields.emplace_back("sapwood", one_of({"3/4 in", "30mm", "5 in"}));
    if (now_and_then()) fields.emplace_back("bow", one_of({"1/8 in", "3mm"}));
    if (now_and_then()) fields.emplace_back("cup", "1/16 in");
    if (now_and_then()) fields.emplace_back("twist", "2mm");
    if (now_and_then()) fields.emplace_back("price", "4-1/2");
    if (offcut) fields.emplace_back("from", "B0");
    add_defects(fields, block);
    std::ranges::shuffle(fields, random_);
    return fields;
}

Fields Writer::sheet(const std::string& name, bool block) {
    Fields fields = {{"name", quoted(name)},
                     {"wood", one_of({"mdf", "birch_plywood"})},
                     {"thickness", one_of({"18mm", "3/4 in"})},
                     {"length", one_of({"2440mm", "8 ft"})},
                     {"width", one_of({"1220mm", "4 ft"})}};
    if (now_and_then()) fields.emplace_back("grain", one_of({"length", "width", "none"}));
    if (now_and_then()) fields.emplace_back("trim", one_of({"10mm", "1/2 in"}));
    if (now_and_then()) fields.emplace_back("count", "4");
    if (now_and_then()) fields.emplace_back("from", "somewhere");
    add_defects(fields, block);
    std::ranges::shuffle(fields, random_);
    return fields;
}

Fields Writer::entry(const std::string& key, const std::string& name, bool block) {
    return key == "sheets" ? sheet(name, block) : board(name, key == "offcuts", block);
}

std::string Writer::in_braces(const Fields& fields, bool one_line) {
    std::string text = "{";
    for (const auto& [key, value] : fields) {
        if (text != "{") text += one_line || !now_and_then(4) ? ", " : ",\n         ";
        text += key + ": " + value;
    }
    return text + (one_line || !now_and_then(5) ? "}" : "\n       }");
}

std::string Writer::with_dash(const Fields& fields, std::size_t column) {
    const std::size_t inner = column + 2 + (now_and_then() ? 2 : 0);
    const std::string margin(inner, ' ');
    std::string text = std::string(column, ' ') + "-" + std::string(inner - column - 1, ' ');
    if (now_and_then(5)) text = std::string(column, ' ') + one_of({"-", "- # why"}) + "\n" + margin;
    for (std::size_t i = 0; i < fields.size(); ++i) {
        std::string value = fields[i].second;
        const bool block_text = value.starts_with('|');
        for (std::size_t at = value.find("{}"); at != std::string::npos; at = value.find("{}")) {
            value.replace(at, 2, margin);
        }
        if (i > 0) text += margin;
        text += fields[i].first + ": " + value;
        if (!block_text && now_and_then(6)) text += "  # so it is";
        text += "\n";
        if (i + 1 < fields.size() && now_and_then(6)) text += margin + "# within\n";
        if (i + 1 < fields.size() && now_and_then(8)) text += "\n";
    }
    return text;
}

// Above an entry: what goes with it, and what stays.
void Writer::comments(std::size_t column, const std::string& name) {
    const std::string margin(column, ' ');
    if (now_and_then(4)) add("\n" + margin + "# above " + name + ", set apart\n\n");
    if (now_and_then(3)) add(margin + "# of " + name + "\n" + margin + "# and more\n", name);
}

void Writer::dashed_list(const std::string& key, const std::string& prefix, std::size_t count) {
    add(std::string(column_, ' ') + key + ":" + one_of({"", "  # list"}) + "\n");
    const std::size_t column = column_ + (now_and_then() ? 0 : 2);
    for (std::size_t i = 1; i <= count; ++i) {
        const std::string name = prefix + std::to_string(i);
        comments(column, name);
        if (now_and_then(2)) {
            add(with_dash(entry(key, name, true), column), name);
        } else {
            add(std::string(column, ' ') + "- " + in_braces(entry(key, name, false), false) +
                    one_of({"\n", "  # behind\n"}),
                name);
        }
    }
}

void Writer::bracket_list(const std::string& key, const std::string& prefix, std::size_t count) {
    const bool lines = now_and_then(2);
    rack_.in_lines = rack_.in_lines && lines;
    const bool comma_last = now_and_then(2);
    add(std::string(column_, ' ') + key + ": [" + (lines ? "\n" : ""));
    for (std::size_t i = 1; i <= count; ++i) {
        const std::string name = prefix + std::to_string(i);
        const std::string comma = i < count || comma_last ? "," : "";
        if (lines && now_and_then()) add(std::string(column_ + 4, ' ') + "# of " + name + "\n", name);
        const std::string braces = in_braces(entry(key, name, false), !lines);
        if (lines) {
            add(std::string(column_ + 4, ' ') + braces + comma + one_of({"\n", "  # behind\n"}), name);
        } else {
            add(braces + comma + (i < count ? one_of({" ", "\n    "}) : ""), name);
        }
    }
    add(one_of({"]\n", "]  # done\n"}));
}

void Writer::list(const std::string& key, const std::string& prefix, std::size_t most) {
    const std::size_t count = random_() % (most + 1);
    if (count == 0) {
        if (now_and_then()) return;
        add(std::string(column_, ' ') + key + ":");
        const std::string empty = one_of({"", " []", " ~", " null"});
        if (empty == " []") {
            add(" [");
            add("]");
        } else {
            add(empty, "replaced");
        }
        add(one_of({"\n", "  # none\n"}));
    } else if (now_and_then(3)) {
        bracket_list(key, prefix, count);
    } else {
        dashed_list(key, prefix, count);
    }
    if (now_and_then(2)) add("\n");
    if (now_and_then(4)) add(std::string(column_, ' ') + "# between lists\n");
}

// The whole file in braces.
void Writer::in_one_map() {
    rack_.in_lines = false;
    add("{money: crowns");
    for (const auto& [key, prefix] : std::vector<std::pair<std::string, std::string>>{
             {"boards", "B"}, {"offcuts", "O"}, {"sheets", "S"}}) {
        const std::size_t count = random_() % 4;
        if (count == 0) {
            add(one_of({"", ", " + key + ": []", ",\n" + key + ": null", ", " + key}));
            continue;
        }
        add(",\n \"" + key + "\": [");
        for (std::size_t i = 1; i <= count; ++i) {
            const std::string name = prefix + std::to_string(i);
            add(in_braces(entry(key, name, false), false) + (i < count ? one_of({",", ", ", "\n,"}) : ""),
                name);
        }
        add("]");
    }
    add("}\n");
}

RandomRack Writer::write() {
    rack_.in_lines = true;
    if (now_and_then(6)) {
        in_one_map();
    } else {
        column_ = now_and_then(5) ? 2 : 0;
        if (now_and_then(5)) add("---\n");
        add(one_of({"", "# The rack.\n", "\n"}));
        add(std::string(column_, ' ') + "money: crowns\n");
        list("boards", "B", 5);
        list("offcuts", "O", 3);
        list("sheets", "S", 3);
        if (now_and_then(3)) add(std::string(column_, ' ') + "dealer: {lumber: [], dowels: }\n");
        if (now_and_then(5)) add("# The end.\n");
        if (now_and_then(8)) add("...\n");
    }
    return std::move(rack_);
}

std::string with_returns(const std::string& text) {
    std::string longer;
    for (const char c : text) longer.append(c == '\n' ? "\r" : "").push_back(c);
    return longer;
}

}  // namespace

std::string RandomRack::text() const {
    std::string all;
    for (const Stretch& stretch : stretches) all += stretch.text;
    return all;
}

RandomRack random_rack(std::mt19937& random) {
    RandomRack rack = Writer(random).write();
    const auto kind = random() % 6;
    if (kind == 0) {
        for (RandomRack::Stretch& stretch : rack.stretches) stretch.text = with_returns(stretch.text);
    } else if (kind == 1) {
        rack.stretches.back().text.pop_back();
    } else if (kind == 2) {
        rack.stretches.front().text.insert(0, "\xEF\xBB\xBF");
    }
    return rack;
}

}  // namespace rodwright::testing
