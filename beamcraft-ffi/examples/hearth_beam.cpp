// A hollow ash shelf beam from C++: typed calls behind a small wrapper, the JSON door, and the plan of a spec.
//
//     c++ -std=c++17 hearth_beam.cpp $(pkg-config --cflags --libs beamcraft) -o hearth_beam_cpp
//     ./hearth_beam_cpp [ash_shelf_beam.json]
//
// The wrapper is all that is needed: an exception that holds every fault, an owner of a plan, and a few functions.
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "beamcraft.h"

namespace beamcraft {

struct FreeError {
    void operator()(beamcraft_error *error) const { beamcraft_error_free(error); }
};

// A text that the library writes into the caller's buffer: asks for the size, then for the text.
template <class Give>
std::string text(Give give)
{
    std::size_t needed = 0;
    if (give(nullptr, std::size_t{0}, &needed) != BEAMCRAFT_OK || needed == 0) {
        return {};
    }
    std::string bytes(needed, '\0');
    if (give(bytes.data(), bytes.size(), &needed) != BEAMCRAFT_OK) {
        return {};
    }
    bytes.resize(needed - 1);
    return bytes;
}

struct FreePlan {
    void operator()(beamcraft_plan *plan) const { beamcraft_plan_free(plan); }
};

using Plan = std::unique_ptr<beamcraft_plan, FreePlan>;

struct Fault {
    beamcraft_status code;
    std::string path;
    std::string message;
};

class Refused : public std::runtime_error {
public:
    Refused(beamcraft_status first, std::unique_ptr<beamcraft_error, FreeError> error)
        : std::runtime_error(text([&](char *buffer, std::size_t capacity, std::size_t *needed) {
              return beamcraft_error_text(error.get(), buffer, capacity, needed);
          })),
          status(first)
    {
        for (std::size_t index = 0; index < beamcraft_error_count(error.get()); ++index) {
            Fault fault{};
            beamcraft_error_code(error.get(), index, &fault.code);
            fault.path = text([&](char *buffer, std::size_t capacity, std::size_t *needed) {
                return beamcraft_error_path(error.get(), index, buffer, capacity, needed);
            });
            fault.message = text([&](char *buffer, std::size_t capacity, std::size_t *needed) {
                return beamcraft_error_message(error.get(), index, buffer, capacity, needed);
            });
            faults.push_back(std::move(fault));
        }
    }

    beamcraft_status status;
    std::vector<Fault> faults;
};

// Makes a call that may fail; what it returns through its error pointer becomes an exception.
template <class Call>
void must(Call call)
{
    beamcraft_error *raw = nullptr;
    const beamcraft_status status = call(&raw);
    std::unique_ptr<beamcraft_error, FreeError> error(raw);
    if (status != BEAMCRAFT_OK) {
        throw Refused(status, std::move(error));
    }
}

// JSON to JSON by the name of a calculation.
std::string call_json(std::string_view name, std::string_view input)
{
    std::string output(4096, '\0');
    std::size_t needed = 0;
    const auto call = [&](beamcraft_error **error) {
        return beamcraft_call_json(name.data(), name.size(), input.data(), input.size(), output.data(), output.size(),
                                   &needed, error);
    };
    try {
        must(call);
    } catch (const Refused &refused) {
        if (refused.status != BEAMCRAFT_E_BUFFER_TOO_SMALL) {
            throw;
        }
        output.resize(needed);
        must(call);
    }
    output.resize(needed - 1);
    return output;
}

Plan plan(std::string_view spec)
{
    beamcraft_plan *raw = nullptr;
    must([&](beamcraft_error **error) { return beamcraft_plan_new(spec.data(), spec.size(), &raw, error); });
    return Plan(raw);
}

std::string json(const Plan &plan)
{
    return text([&](char *buffer, std::size_t capacity, std::size_t *needed) {
        return beamcraft_plan_json(plan.get(), buffer, capacity, needed, nullptr);
    });
}

}  // namespace beamcraft

int main(int argument_count, char **arguments)
{
    try {
        // Every corner of the beam is square and every board 20 mm thick.
        beamcraft_mitre_pair_input corner;
        beamcraft_mitre_pair_output mitre;
        beamcraft_mitre_pair_input_init(&corner);
        corner.thickness_a_mm = 20.0;
        corner.thickness_b_mm = 20.0;
        beamcraft::must([&](beamcraft_error **error) { return beamcraft_mitre_pair(&corner, &mitre, error); });
        std::printf("blade tilt %.2f deg, seam %.2f mm\n", mitre.tilt_a_deg, mitre.seam_mm);

        // The cleat through the JSON door, with a shop length beside millimetres.
        const std::string halves = beamcraft::call_json(
            "cleat_halves",
            R"({"strip_width_mm": "4 3/8 in", "thickness_mm": 18, "bevel_deg": 45, "kerf_mm": 3.2, "blunt_mm": 2})");
        std::printf("cleat halves %s\n", halves.c_str());

        // A slip: every fault is named, with what would be right.
        try {
            beamcraft::call_json("cleat_halves", R"({"strip_width": 110, "thickness_mm": "18 furlongs"})");
            return EXIT_FAILURE;
        } catch (const beamcraft::Refused &refused) {
            for (const beamcraft::Fault &fault : refused.faults) {
                std::printf("refused (%s): %s\n", beamcraft_status_name(fault.code), fault.message.c_str());
            }
        }

        if (argument_count > 1) {
            std::ifstream file(arguments[1], std::ios::binary);
            const std::string spec{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
            const beamcraft::Plan plan = beamcraft::plan(spec);
            double mass_kg = 0.0;
            beamcraft::must([&](beamcraft_error **error) { return beamcraft_plan_mass_kg(plan.get(), &mass_kg, error); });
            std::printf("to be lifted %.2f kg\n", mass_kg);
            // The same bytes through every door.
            const bool same = beamcraft::json(plan) == beamcraft::call_json("plan", spec);
            std::printf("plan of %zu bytes of JSON, %s\n", beamcraft::json(plan).size(), same ? "the same" : "another");
            return same ? EXIT_SUCCESS : EXIT_FAILURE;
        }
        return EXIT_SUCCESS;
    } catch (const beamcraft::Refused &refused) {
        std::fprintf(stderr, "%s\n", refused.what());
        return EXIT_FAILURE;
    }
}
