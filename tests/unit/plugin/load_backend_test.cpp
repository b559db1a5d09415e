#include "compiler/plugin/load_backend.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "compiler/plugin/backend_table.hpp"
#include "tests/support/scratch_folder.hpp"

using namespace rodwright;

namespace {

namespace fs = std::filesystem;

fs::path module_file(const std::string& name) {
    return fs::path(RODWRIGHT_BINARY_DIR) / "lib/test_modules" / (name + ".so");
}

void check_refused(const fs::path& path, const std::string& why) {
    CAPTURE(path.string());
    Diagnostics diagnostics;
    CHECK(load_backend(path, diagnostics) == nullptr);
    REQUIRE(diagnostics.list().size() == 1);
    CHECK(diagnostics.list()[0].code == Code::bad_plugin);
    CAPTURE(diagnostics.list()[0].message);
    CHECK(diagnostics.list()[0].message.find(why) != std::string::npos);
    CHECK(diagnostics.list()[0].message.find(path.string()) != std::string::npos);
}

std::vector<std::string> names_of(const std::vector<std::unique_ptr<Backend>>& backends) {
    std::vector<std::string> names;
    for (const auto& backend : backends) names.push_back(backend->name());
    return names;
}

const std::vector<std::string> our_names = {"cutlist", "boards", "steps", "graph", "packet", "model", "svg"};

}  // namespace

TEST_SUITE("unit/plugin") {
    TEST_CASE("a module's backend is loaded and works") {
        Diagnostics diagnostics;
        const std::unique_ptr<Backend> backend = load_backend(module_file("good"), diagnostics);
        REQUIRE(backend);
        CHECK(diagnostics.list().empty());
        CHECK(backend->name() == "quiet");
    }

    TEST_CASE("every backend of ours is a module too, and names itself as in the table") {
        CHECK(names_of(linked_backends()) == our_names);
        for (const std::string& name : our_names) {
            Diagnostics diagnostics;
            const auto backend = load_backend(backend_folder() / (name + ".so"), diagnostics);
            REQUIRE(backend);
            CHECK(backend->name() == name);
        }
    }

    TEST_CASE("what is no backend is refused") {
        check_refused(module_file("not_there"), "there is no such file");
        check_refused(fs::path(RODWRIGHT_BINARY_DIR) / "lib", "it is not a file");
        check_refused(module_file("no_version"), "`rodwright_interface_version`");
        check_refused(module_file("no_factory"), "`rodwright_make_backend`");
        check_refused(module_file("other_version"), "version " +
                                                        std::to_string(backend_interface_version + 1) +
                                                        " of the interface, this program has version " +
                                                        std::to_string(backend_interface_version));
        check_refused(module_file("throws"), "no paper");
        check_refused(module_file("makes_nothing"), "it makes no backend");
        check_refused(module_file("nameless"), "no name");
        check_refused(fs::path(RODWRIGHT_SOURCE_DIR) / "CMakeLists.txt", "invalid ELF header");
    }

    TEST_CASE("a name without a slash is a file here, not one of the system's libraries") {
        check_refused("libc.so.6", "there is no such file");
    }

    TEST_CASE("ours come first, and modules of the folder that are ours are not loaded again") {
        Diagnostics diagnostics;
        CHECK(names_of(all_backends({}, backend_folder(), diagnostics)) == our_names);
        CHECK(names_of(all_backends({backend_folder() / "cutlist.so"}, backend_folder(), diagnostics)) ==
              our_names);
        CHECK(diagnostics.list().empty());
    }

    TEST_CASE("a plugin with a name that is taken is an error") {
        Diagnostics diagnostics;
        const auto backends = all_backends({module_file("same_name")}, backend_folder(), diagnostics);
        CHECK(names_of(backends) == our_names);
        REQUIRE(diagnostics.errors() == 1);
        CHECK(diagnostics.list()[0].message.find("`cutlist` already") != std::string::npos);
    }

    TEST_CASE("the folder is searched by name; a broken module there is a warning") {
        const ScratchFolder scratch;
        fs::copy_file(module_file("good"), scratch.path() / "quiet.so");
        std::ofstream(scratch.path() / "broken.so") << "not a module";
        std::ofstream(scratch.path() / "README") << "no module either";
        Diagnostics diagnostics;
        const auto backends = all_backends({}, scratch.path(), diagnostics);
        CHECK(backends.size() == our_names.size() + 1);
        CHECK(backends.back()->name() == "quiet");
        REQUIRE(diagnostics.list().size() == 1);
        CHECK(diagnostics.list()[0].severity == Severity::warning);
        CHECK(diagnostics.ok());
        CHECK(all_backends({}, scratch.path() / "nowhere", diagnostics).size() == our_names.size());
    }
}
