#include "compiler/world.hpp"

#include <doctest/doctest.h>
#include <sys/stat.h>

#include <filesystem>

#include "compiler/limits.hpp"
#include "tests/support/scratch_folder.hpp"

using namespace rodwright;

TEST_SUITE("unit/cli") {
    TEST_CASE("a file is read whole, byte for byte") {
        const ScratchFolder scratch;
        std::string bytes(200'000, 'x');
        bytes[70'000] = '\0';
        bytes[5] = '\xff';
        scratch.put("a", bytes);
        const ReadResult read = DiskWorld().read((scratch.path() / "a").string());
        REQUIRE(read.text);
        CHECK(*read.text == bytes);
    }

    TEST_CASE("the plain files of a folder, sorted") {
        const ScratchFolder scratch;
        for (const char* name : {"b.rod", "a.rod", "c"}) scratch.put(name, "");
        std::filesystem::create_directory(scratch.path() / "folder");
        const std::vector<std::string> names = {"a.rod", "b.rod", "c"};
        CHECK(DiskWorld().file_names(scratch.path().string()) == names);
        CHECK(DiskWorld().file_names((scratch.path() / "none").string()).empty());
        const MemoryWorld memory(
            {{"x/b.rod", ""}, {"x/a.rod", ""}, {"x/c", ""}, {"x/y/d", ""}, {"xz/e", ""}});
        CHECK(memory.file_names("x") == names);
    }

    TEST_CASE("what cannot be read says why, in words") {
        const ScratchFolder scratch;
        REQUIRE(::mkfifo((scratch.path() / "pipe").c_str(), 0600) == 0);
        const DiskWorld world;
        CHECK(world.read((scratch.path() / "none").string()).error == "no such file");
        CHECK(world.read(scratch.path().string()).error == "it is a folder");
        CHECK(world.read((scratch.path() / "pipe").string()).error == "it is not a plain file");
        CHECK(world.read("/dev/zero").error == "it is not a plain file");
        CHECK(world.read(std::string("a\0b", 3)).error == "no such file");
        CHECK(world.read("").error == "no such file");
        CHECK_FALSE(world.read(std::string(10'000, 'a')).text);
    }

    TEST_CASE("the size limit is exact, and a large file is refused before it is read") {
        const ScratchFolder scratch;
        scratch.put("a", std::string(limits::file_bytes, 'x'));
        CHECK(DiskWorld().read((scratch.path() / "a").string()).text);
        std::filesystem::resize_file(scratch.path() / "a", limits::file_bytes + 1);
        CHECK(DiskWorld().read((scratch.path() / "a").string()).error == "larger than 2 MB");
    }
}
