// The header in C++, with a handle that frees itself.
#include "deck.h"

#include <memory>
#include <string>

struct Free {
    void operator()(deck_plan *plan) const { deck_plan_free(plan); }
};

int main() {
    const std::string job = R"({
        "schema": 1, "name": "Dory", "unit": "in", "deck": {"length": 48, "beam": 96},
        "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 48, "spacing": 24}},
        "stock": [{"label": "ply", "length": 96, "width": 48, "thickness": "3/4"}], "gap": 0
    })";
    if (deck_abi_version() != DECK_ABI_VERSION) return 1;
    deck_plan *made = nullptr;
    if (deck_plan_new(job.data(), static_cast<int64_t>(job.size()), &made) != DECK_OK) return 2;
    const std::unique_ptr<deck_plan, Free> plan(made);
    double length = 0;
    if (deck_plan_number(plan.get(), "/deck/length", &length) != DECK_OK || length != 48.0) return 3;
    std::u16string name(64, u'\0');
    size_t needed = 0;
    static const char16_t pointer[] = u"/job/name";
    const int32_t status = deck_plan_text_utf16(plan.get(), reinterpret_cast<const uint16_t *>(pointer), 9,
                                                reinterpret_cast<uint16_t *>(&name[0]), name.size(), &needed);
    if (status != DECK_OK) return 4;
    name.resize(needed - 1);
    return name == u"Dory" ? 0 : 5;
}
