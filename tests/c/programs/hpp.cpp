// deck.hpp: prints what it is asked for, or checks itself where it is asked for nothing.
#include "deck.hpp"

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <stdexcept>
#include <thread>
#include <type_traits>

#define CHECK(condition)                                                                        \
    do {                                                                                        \
        if (!(condition)) {                                                                     \
            std::cerr << __FILE__ << ":" << __LINE__ << ": not so: " << #condition << "\n";     \
            std::exit(1);                                                                       \
        }                                                                                       \
    } while (0)

static const char JOB[] = R"({
    "schema": 1, "name": "Dory", "unit": "in", "deck": {"length": 48, "beam": 96},
    "frame": {"measured_to": "centre", "flange": 2, "regular": {"first": 0, "last": 48, "spacing": 24}},
    "stock": [{"label": "ply", "length": 96, "width": 48, "thickness": "3/4"}], "gap": 0
})";

// Searches that no bound ends early.
static const char LONG[] = R"({"effort": 100000000, "kerf": 0.125, "stock": [{"label": "ply", "length": 96, "width": 48}],
    "parts": [{"label": "a", "length": 31, "width": 17, "count": 11}, {"label": "b", "length": 29, "width": 13, "count": 13},
    {"label": "c", "length": 23, "width": 19, "count": 17}, {"label": "d", "length": 41, "width": 11, "count": 7},
    {"label": "e", "length": 37, "width": 27, "count": 5}, {"label": "f", "length": 53, "width": 14, "count": 9}]})";
static const char FILL[] = R"({"sheet": {"label": "rest", "length": 40, "width": 36}, "effort": 2000,
    "parts": [{"label": "a", "length": 22.5, "width": 16, "count": 3}, {"label": "b", "length": 9, "width": 7, "count": null}]})";

static std::string read(const char *path) {
    std::ifstream file(path, std::ios::binary);
    CHECK(file);
    return std::string(std::istreambuf_iterator<char>(file), {});
}

// The error that a call throws.
template <class Call> static deck::Error thrown(Call call) {
    try {
        call();
    } catch (const deck::Error &error) {
        return error;
    }
    CHECK(!"nothing was thrown");
    std::abort();
}

static void print_plan(const char *job, const char *packet) {
    const deck::Plan plan(read(job));
    std::cout << plan.json() << "\n";
    for (const std::string &view : plan.views()) std::cout << view << "\n" << plan.svg(view) << "\n";
    plan.packet(packet);
}

static void print_answer(const std::string &name, const char *request) {
    using Ask = std::string (*)(std::string_view);
    const std::map<std::string, Ask> asks = {
        {"nest", deck::nest},           {"fill", deck::fill},
        {"seams", deck::seams},         {"panels", deck::panels},
        {"fasteners", deck::fasteners}, {"span_limits", deck::span_limits},
        {"beam", deck::beam},           {"plate", deck::plate},
        {"survey", deck::survey},
    };
    std::cout << asks.at(name)(read(request));
}

static void plans_move_and_do_not_copy() {
    static_assert(!std::is_copy_constructible_v<deck::Plan> && !std::is_copy_assignable_v<deck::Plan>);
    static_assert(std::is_nothrow_move_constructible_v<deck::Plan> && std::is_nothrow_move_assignable_v<deck::Plan>);
    static_assert(std::is_nothrow_copy_constructible_v<deck::Error>);
    deck::Plan first(JOB);
    deck::Plan second(std::move(first));
    CHECK(second.number("/deck/length") == 48.0 && second.text("/job/name") == "Dory");
    CHECK(second.count("/takeoff/lines") > 0);
    CHECK(thrown([&] { first.json(); }).status() == DECK_NULL_POINTER);
    first = std::move(second);
    CHECK(first.number("/deck/length") == 48.0);
    first = deck::Plan(JOB);
    double beam = 0;
    CHECK(deck_plan_number(first.get(), "/deck/beam", &beam) == DECK_OK && beam == 96.0);
}

static void errors_say_everything() {
    const deck::Error faulty = thrown([] { deck::Plan(R"({"schema": 1, "name": "x", "unit": "in", "stock": [{"lenght": 9}]})"); });
    CHECK(faulty.faults().size() > 2);
    CHECK(faulty.what() == faulty.faults()[0].text && faulty.pointer() == faulty.faults()[0].pointer);
    bool suggested = false;
    for (const deck::Fault &fault : faulty.faults()) {
        CHECK(fault.text.rfind(fault.pointer, 0) == 0);
        suggested = suggested || fault.text == "/stock/0/lenght: unknown field. Did you mean \"length\"?";
    }
    CHECK(suggested && faulty.status() > 100);

    const deck::Plan plan(JOB);
    CHECK(thrown([&] { plan.text("/job/nome"); }).status() == DECK_UNKNOWN_POINTER);
    CHECK(thrown([&] { plan.number(std::string_view("/deck/length\0x", 14)); }).status() == DECK_NOT_TEXT);
    CHECK(thrown([&] { plan.svg("no such view"); }).status() == DECK_UNKNOWN_VIEW);
    CHECK(thrown([&] { plan.packet("no/such/folder/packet.pdf"); }).status() == DECK_CANNOT_WRITE);
    CHECK(thrown([] { deck::nest({}); }).status() == DECK_NOT_JSON);
    CHECK(thrown([] { deck::beam("\xff"); }).status() == DECK_NOT_TEXT);
    CHECK(deck::status_text(DECK_OK) == "Done.");
    CHECK(thrown([] { deck::status_text(99); }).status() == DECK_NO_SUCH_STATUS);
    // The part of a longer text that a view shows, and nothing after it.
    CHECK(deck::Plan(std::string_view((std::string(JOB) + "rubbish").c_str(), sizeof JOB - 1)).text("/job/name") == "Dory");
}

static void watchers_look_on_stop_and_throw() {
    int calls = 0;
    const std::string stopped = deck::nest(LONG, [&](const deck::NestProgress &told) {
        CHECK(told.done <= told.of && told.bound <= told.cost && told.unplaced == 0.0);
        ++calls;
        return false;
    });
    CHECK(calls == 1 && stopped.find("\"proven\": false") != std::string::npos);
    CHECK(deck::fill(FILL, [](const deck::FillProgress &told) { return told.value <= told.bound; }) == deck::fill(FILL));
    bool came_back = false;
    try {
        deck::nest(LONG, [](const deck::NestProgress &) -> bool { throw std::range_error("enough"); });
    } catch (const std::range_error &error) {
        came_back = std::string(error.what()) == "enough";
    }
    CHECK(came_back);
    CHECK(thrown([] { deck::nest("{", [](const deck::NestProgress &) { return true; }); }).status() == DECK_NOT_JSON);
}

static void threads_read_one_plan() {
    const deck::Plan plan(JOB);
    const std::string json = plan.json();
    std::vector<std::thread> threads;
    for (int number = 0; number < 4; ++number) {
        threads.emplace_back([&plan, &json, number] {
            const std::string pointer = "/job/nome" + std::to_string(number);
            for (int round = 0; round < 5; ++round) {
                CHECK(plan.json() == json);
                CHECK(std::string(thrown([&] { plan.text(pointer); }).what()).find(pointer) != std::string::npos);
            }
        });
    }
    for (std::thread &thread : threads) thread.join();
}

int main(int argc, char **argv) {
    CHECK(deck::same_abi());
    if (argc == 4 && std::string(argv[1]) == "plan") {
        print_plan(argv[2], argv[3]);
    } else if (argc == 3) {
        print_answer(argv[1], argv[2]);
    } else {
        CHECK(deck::job_schema().find("2020-12") != std::string::npos);
        plans_move_and_do_not_copy();
        errors_say_everything();
        watchers_look_on_stop_and_throw();
        threads_read_one_plan();
    }
    return 0;
}
