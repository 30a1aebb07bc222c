// Lays the parts of an order out on sheets, tells how far the search has come, and prints the answer.
//
//     c++ -std=c++17 -I deck-ffi/include examples/cpp/nest.cpp -L target/release -ldeck_ffi -o nest
//     LD_LIBRARY_PATH=target/release ./nest "1/8" 4
//
// The first argument is the kerf, the second how many of each part.
#include "deck.hpp"

#include <iostream>

// JSON for a text: a quote or a backslash would end it.
static std::string quoted(const std::string &text) {
    std::string out = "\"";
    for (const char letter : text) {
        if (letter == '"' || letter == '\\') out += '\\';
        out += letter;
    }
    return out + "\"";
}

static std::string request(const std::string &kerf, const std::string &count) {
    const std::string each = ", \"count\": " + count + "}";
    return "{\"parts\": [{\"label\": \"seat base\", \"length\": \"2' 6-1/2\\\"\", \"width\": 22" + each +
           ", {\"label\": \"lid\", \"length\": 24, \"width\": 20, \"grain\": \"length\"" + each +
           "], \"stock\": [{\"label\": \"3/4 ply 4 x 8\", \"length\": 96, \"width\": 48}], \"kerf\": " + quoted(kerf) + "}";
}

int main(int argc, char **argv) {
    if (!deck::same_abi()) {
        std::cerr << "deck.hpp and the library are not of the same version\n";
        return 2;
    }
    try {
        const std::string order = request(argc > 1 ? argv[1] : "1/8", argc > 2 ? argv[2] : "4");
        std::cout << deck::nest(order, [](const deck::NestProgress &told) {
            std::cerr << "cost " << told.cost << ", bound " << told.bound << (told.proven ? ": proven\n" : "\n");
            return true;
        }) << "\n";
    } catch (const deck::Error &error) {
        for (const deck::Fault &fault : error.faults()) std::cerr << fault.text << "\n";
        return 1;
    }
    return 0;
}
