#include "compiler/geometry/geometry.hpp"

#include <doctest/doctest.h>

using namespace rodwright;

static Turn turn_of(Direction x, Direction y, Direction z) {
    return Turn{{x, y, z}};
}

static Vector vector_of(long x, long y, long z) {
    return Vector{{ratio(x), ratio(y), ratio(z)}};
}

static Vector as_vector(Direction direction) {
    Vector vector = vector_of(0, 0, 0);
    vector[direction.axis] = direction.positive ? 1 : -1;
    return vector;
}

static const std::vector<Direction> all_directions = {{Axis::wide, true}, {Axis::wide, false},
                                                      {Axis::deep, true}, {Axis::deep, false},
                                                      {Axis::tall, true}, {Axis::tall, false}};

// Determinant of the matrix whose columns are the images of the axes.
static Rational determinant(const Turn& turn) {
    const Vector a = turn.apply(vector_of(1, 0, 0));
    const Vector b = turn.apply(vector_of(0, 1, 0));
    const Vector c = turn.apply(vector_of(0, 0, 1));
    return a.at[0] * (b.at[1] * c.at[2] - b.at[2] * c.at[1]) -
           b.at[0] * (a.at[1] * c.at[2] - a.at[2] * c.at[1]) +
           c.at[0] * (a.at[1] * b.at[2] - a.at[2] * b.at[1]);
}

TEST_SUITE("unit/geometry") {
    TEST_CASE("names of faces and axes") {
        CHECK(face_name(Face::left) == "left");
        CHECK(face_name(Face::right) == "right");
        CHECK(face_name(Face::front) == "front");
        CHECK(face_name(Face::back) == "back");
        CHECK(face_name(Face::bottom) == "bottom");
        CHECK(face_name(Face::top) == "top");
        CHECK(axis_name(Axis::wide) == "wide");
        CHECK(axis_name(Axis::deep) == "deep");
        CHECK(axis_name(Axis::tall) == "tall");
    }

    TEST_CASE("a face and its outward direction share a number") {
        for (const Face face : all_faces) {
            const Direction out = outward(face);
            CHECK(face_of(out.axis, out.positive) == face);
            CHECK(outward(opposite(face)) == -out);
        }
    }

    TEST_CASE("a box says its sizes and where its faces are") {
        const Box box{vector_of(1, 2, 3), vector_of(11, 22, 33)};
        CHECK(box.size(Axis::deep) == 20);
        CHECK(box.at(Face::left) == 1);
        CHECK(box.at(Face::back) == 22);
        CHECK(box.at(Face::top) == 33);
    }

    TEST_CASE("a turn takes each coordinate from where it says") {
        // The result's wide is the old tall; its deep the old wide, reversed; its tall the old deep.
        const Turn turn = turn_of({Axis::tall, true}, {Axis::wide, false}, {Axis::deep, true});
        CHECK(turn.apply(vector_of(1, 2, 3)) == vector_of(3, -1, 2));
        CHECK(turn.apply(Direction{Axis::tall, true}) == Direction{Axis::wide, true});
        CHECK(turn.apply(Direction{Axis::wide, true}) == Direction{Axis::deep, false});
        CHECK(turn.apply(Direction{Axis::wide, false}) == Direction{Axis::deep, true});
        CHECK(turn.apply(Direction{Axis::deep, false}) == Direction{Axis::tall, false});
    }

    TEST_CASE("a quarter turn about tall is no mirror image; swapping two axes is") {
        CHECK_FALSE(turn_of({Axis::deep, false}, {Axis::wide, true}, {Axis::tall, true}).mirrored());
        CHECK(turn_of({Axis::deep, true}, {Axis::wide, true}, {Axis::tall, true}).mirrored());
        CHECK(turn_of({Axis::wide, false}, {Axis::deep, true}, {Axis::tall, true}).mirrored());
        CHECK_FALSE(Turn{}.mirrored());
    }

    TEST_CASE("compose turns by the first and then by the second") {
        // A quarter turn about tall takes wide to deep, one about wide takes deep to tall: together wide to
        // tall.
        const Turn about_tall = turn_of({Axis::deep, false}, {Axis::wide, true}, {Axis::tall, true});
        const Turn about_wide = turn_of({Axis::wide, true}, {Axis::tall, false}, {Axis::deep, true});
        CHECK(about_tall.apply(Direction{Axis::wide, true}) == Direction{Axis::deep, true});
        CHECK(about_wide.apply(Direction{Axis::deep, true}) == Direction{Axis::tall, true});
        CHECK(compose(about_tall, about_wide).apply(Direction{Axis::wide, true}) ==
              Direction{Axis::tall, true});
        CHECK(compose(about_wide, about_tall).apply(Direction{Axis::wide, true}) ==
              Direction{Axis::deep, true});
    }

    TEST_CASE(
        "there are 48 turns, all different, the 24 that do not mirror first, the identity first of all") {
        const std::vector<Turn>& turns = all_turns();
        REQUIRE(turns.size() == 48);
        CHECK(turns.front() == Turn{});
        for (std::size_t i = 0; i < turns.size(); ++i) {
            CHECK(turns[i].mirrored() == (i >= 24));
            for (std::size_t j = 0; j < i; ++j) CHECK_FALSE(turns[i] == turns[j]);
        }
    }

    TEST_CASE("mirrored is the sign of the determinant") {
        for (const Turn& turn : all_turns()) CHECK(determinant(turn) == (turn.mirrored() ? -1 : 1));
    }

    TEST_CASE("directions turn as the vectors along them") {
        for (const Turn& turn : all_turns()) {
            for (const Direction direction : all_directions) {
                CHECK(as_vector(turn.apply(direction)) == turn.apply(as_vector(direction)));
            }
        }
    }

    TEST_CASE("the turns are a group: inverses undo, composing is applying twice") {
        const Vector vector = vector_of(2, 3, 5);
        for (const Turn& first : all_turns()) {
            CHECK(compose(first, first.inverse()) == Turn{});
            CHECK(compose(first.inverse(), first) == Turn{});
            for (const Turn& second : all_turns()) {
                CHECK(compose(first, second).apply(vector) == second.apply(first.apply(vector)));
            }
        }
    }
}
