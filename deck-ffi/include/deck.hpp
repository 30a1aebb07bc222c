/*
 * deck.h for C++17: a plan that frees itself, texts as std::string, and an exception for every status but DECK_OK.
 *
 *     deck::Plan plan(job);                                       // JSON text; throws deck::Error
 *     double length = plan.number("/deck/length");
 *     std::string answer = deck::nest(request);                   // JSON in, JSON out
 *
 * All text is UTF-8. What the requests and answers hold, and how long each takes, is said in deck.h at the function of the
 * same name.
 *
 * - A deck::Plan owns its handle: it moves and does not copy. One that was moved from is empty: it can be assigned to and
 *   destroyed; anything else throws (DECK_NULL_POINTER).
 * - Any number of threads may read one plan at once, as long as none moves, assigns or destroys it meanwhile. Every other
 *   function may be called from any thread.
 * - A deck::Error has everything that the thread's last error held when it was thrown, and can be kept and passed on to
 *   other threads. std::bad_alloc is the only other exception that starts here; one that leaves a watcher stops the
 *   search and comes out of the call.
 *
 * Everything is inline: there is nothing to link but the C library.
 */
#ifndef DECK_HPP
#define DECK_HPP

#include "deck.h"

#include <cstddef>
#include <cstdint>
#include <exception>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace deck {

/** One thing that is wrong. */
struct Fault {
    /** JSON pointer of the field; empty where the fault is about the whole of the text, or about the call. */
    std::string pointer;
    /** The pointer, what is wrong, and what would be accepted. */
    std::string text;
};

/** A call that failed. what() is the first fault's text. */
class Error : public std::runtime_error {
  public:
    Error(std::int32_t status, std::vector<Fault> faults)
        : std::runtime_error(faults.empty() ? std::string("no reason was given") : faults.front().text), status_(status),
          faults_(std::make_shared<const std::vector<Fault>>(std::move(faults))) {}

    /** The number from deck.h, such as DECK_MISSING_FIELD: the first fault's. */
    std::int32_t status() const noexcept { return status_; }

    /** JSON pointer of the first fault's field. */
    std::string pointer() const { return faults_->empty() ? std::string() : faults_->front().pointer; }

    /** Everything that is wrong, in the order of the text that was handed in. Lives as long as this or a copy of it. */
    const std::vector<Fault> &faults() const noexcept { return *faults_; }

  private:
    std::int32_t status_;
    // Shared, so that copying an exception never throws.
    std::shared_ptr<const std::vector<Fault>> faults_;
};

/** Not for use outside this header. */
namespace detail {

/** Whatever `call` writes into a buffer; its status goes to `status`. The first try has room for `room` bytes. */
template <class Call> std::string written(std::int32_t &status, std::size_t room, const Call &call) {
    std::string text(room, '\0');
    std::size_t needed = 0;
    while ((status = call(text.empty() ? nullptr : text.data(), text.size(), &needed)) == DECK_SHORT_BUFFER) {
        text.resize(needed);
    }
    text.resize(status == DECK_OK ? needed - 1 : 0);
    return text;
}

/** The thread's last error. */
inline std::vector<Fault> faults() {
    std::vector<Fault> all;
    for (std::int32_t index = 0; index < deck_last_error_count(); ++index) {
        std::int32_t status = DECK_OK;
        std::string pointer = written(status, 0, [index](char *buf, std::size_t cap, std::size_t *needed) {
            return deck_last_error_pointer(index, buf, cap, needed);
        });
        std::string text = written(status, 0, [index](char *buf, std::size_t cap, std::size_t *needed) {
            return index == 0 ? deck_last_error(buf, cap, needed) : deck_last_error_at(index, buf, cap, needed);
        });
        all.push_back(Fault{std::move(pointer), std::move(text)});
    }
    return all;
}

inline void check(std::int32_t status) {
    if (status != DECK_OK) throw Error(status, faults());
}

template <class Call> std::string text(std::size_t room, const Call &call) {
    std::int32_t status = DECK_OK;
    std::string text = written(status, room, call);
    check(status);
    return text;
}

inline std::int64_t count(std::string_view text) { return static_cast<std::int64_t>(text.size()); }

/** A view without a text points nowhere; C is handed an empty text. */
inline const char *start(std::string_view text) { return text.data() == nullptr ? "" : text.data(); }

/** A copy that ends with a NUL. One within would end it too early without a word. */
inline std::string ended(std::string_view text, const char *argument) {
    if (text.find('\0') != std::string_view::npos) {
        throw Error(DECK_NOT_TEXT, {Fault{"", std::string(argument) + " holds a NUL."}});
    }
    return std::string(text);
}

using Ask = std::int32_t (*)(const char *, std::int64_t, char *, std::size_t, std::size_t *);

inline std::string ask(Ask function, std::string_view request) {
    return text(0, [&](char *buf, std::size_t cap, std::size_t *needed) {
        return function(start(request), count(request), buf, cap, needed);
    });
}

/** A watcher on its way through C, whose frames no exception may cross. */
template <class Progress> struct Watch {
    const std::function<bool(const Progress &)> &watcher;
    std::exception_ptr thrown;

    std::int32_t tell(const Progress &progress) noexcept {
        try {
            return watcher(progress) ? 0 : 1;
        } catch (...) {
            thrown = std::current_exception();
            return 1;
        }
    }
};

template <class Progress, class Call>
std::string watched(const std::function<bool(const Progress &)> &watcher, const Call &call) {
    Watch<Progress> watch{watcher, nullptr};
    std::int32_t status = DECK_OK;
    std::string answer = written(status, 0, [&](char *buf, std::size_t cap, std::size_t *needed) {
        const std::int32_t told = call(buf, cap, needed, static_cast<void *>(&watch));
        if (watch.thrown) std::rethrow_exception(watch.thrown);
        return told;
    });
    check(status);
    return answer;
}

} // namespace detail

/** Whether the library is of the border that this header describes. */
inline bool same_abi() noexcept { return deck_abi_version() == DECK_ABI_VERSION; }

/** What a status means, in a line. */
inline std::string status_text(std::int32_t status) {
    std::int32_t found = DECK_OK;
    std::string text = detail::written(found, 0, [status](char *buf, std::size_t cap, std::size_t *needed) {
        return deck_status_text(status, buf, cap, needed);
    });
    // This function leaves the last error as it is, so there is none of its own to read.
    if (found != DECK_OK) throw Error(found, {Fault{"", "There is no status " + std::to_string(status) + "."}});
    return text;
}

/** The plan of a job. */
class Plan {
  public:
    /** Plans a job, given as JSON. One that cannot be laid out is a plan too, with the reason at /no_layout. */
    explicit Plan(std::string_view job) {
        deck_plan *made = nullptr;
        detail::check(deck_plan_new(detail::start(job), detail::count(job), &made));
        plan_.reset(made);
    }

    /** The plan's JSON: the same bytes as from C, Rust and Python. */
    std::string json() const {
        return detail::text(0, [this](char *buf, std::size_t cap, std::size_t *needed) {
            return deck_plan_json(get(), buf, cap, needed);
        });
    }

    /** One number, by a JSON pointer such as /deck/length, in the job's unit. True is 1 and false is 0. */
    double number(std::string_view json_pointer) const {
        double value = 0;
        detail::check(deck_plan_number(get(), detail::ended(json_pointer, "json_pointer").c_str(), &value));
        return value;
    }

    /** How much is in a list or an object, by a JSON pointer such as /takeoff/lines. */
    std::size_t count(std::string_view json_pointer) const {
        std::size_t count = 0;
        detail::check(deck_plan_count(get(), detail::ended(json_pointer, "json_pointer").c_str(), &count));
        return count;
    }

    /** One text, by a JSON pointer such as /takeoff/lines/0/description. */
    std::string text(std::string_view json_pointer) const {
        const std::string pointer = detail::ended(json_pointer, "json_pointer");
        return detail::text(0, [&](char *buf, std::size_t cap, std::size_t *needed) {
            return deck_plan_text(get(), pointer.c_str(), buf, cap, needed);
        });
    }

    /** The quote as comma-separated values, the total in the last row; empty where the job asks for none. */
    std::string quote_csv() const {
        return detail::text(0, [this](char *buf, std::size_t cap, std::size_t *needed) {
            return deck_plan_quote_csv(get(), buf, cap, needed);
        });
    }

    /** The names of the views, in the order of the packet. */
    std::vector<std::string> views() const {
        const std::string list = detail::text(0, [this](char *buf, std::size_t cap, std::size_t *needed) {
            return deck_plan_views(get(), buf, cap, needed);
        });
        // The names are the library's own, of letters, digits and hyphens, so nothing in the list is escaped.
        std::vector<std::string> names;
        for (std::size_t open = list.find('"'); open != std::string::npos; open = list.find('"', open)) {
            const std::size_t close = list.find('"', open + 1);
            names.push_back(list.substr(open + 1, close - open - 1));
            open = close + 1;
        }
        return names;
    }

    /** One view as SVG, on the plan's own paper. */
    std::string svg(std::string_view view) const {
        const std::string name = detail::ended(view, "view");
        // Each call draws anew: most views fit at once.
        return detail::text(std::size_t{1} << 17, [&](char *buf, std::size_t cap, std::size_t *needed) {
            return deck_plan_svg(get(), name.c_str(), buf, cap, needed);
        });
    }

    /** Writes every view as a page of one PDF. The folder must be there; a file of that name is replaced. */
    void packet(std::string_view path) const {
        detail::check(deck_plan_packet(get(), detail::ended(path, "path").c_str()));
    }

    /** The handle for a function of deck.h. It stays this plan's. */
    const deck_plan *get() const noexcept { return plan_.get(); }

  private:
    struct Free {
        void operator()(deck_plan *plan) const noexcept { deck_plan_free(plan); }
    };
    std::unique_ptr<deck_plan, Free> plan_;
};

/** How far a nest has come, as deck_progress in deck.h tells it. */
struct NestProgress {
    double done, of, unplaced, cost, bound;
    bool proven;
};

/** How far the filling of a sheet has come, as deck_fill_progress in deck.h tells it. */
struct FillProgress {
    double done, of, value, bound;
    bool proven;
};

/** Looks on, and says whether to go on. It is called in the thread of the call. */
using NestWatcher = std::function<bool(const NestProgress &)>;
using FillWatcher = std::function<bool(const FillProgress &)>;

/** Lays parts out on sheets. */
inline std::string nest(std::string_view request) { return detail::ask(deck_nest, request); }

/** The same, while `watcher` looks on; where it says no, the best answer so far is the answer. */
inline std::string nest(std::string_view request, const NestWatcher &watcher) {
    const deck_progress progress = [](void *user, double done, double of, double unplaced, double cost, double bound,
                                      std::int32_t proven) -> std::int32_t {
        const NestProgress told{done, of, unplaced, cost, bound, proven != 0};
        return static_cast<detail::Watch<NestProgress> *>(user)->tell(told);
    };
    return detail::watched(watcher, [&](char *buf, std::size_t cap, std::size_t *needed, void *user) {
        return deck_nest_watched(detail::start(request), detail::count(request), buf, cap, needed, progress, user);
    });
}

/** Finds the most valuable set of parts that can be cut from one sheet. */
inline std::string fill(std::string_view request) { return detail::ask(deck_fill, request); }

/** The same, while `watcher` looks on; where it says no, the best answer so far is the answer. */
inline std::string fill(std::string_view request, const FillWatcher &watcher) {
    const deck_fill_progress progress = [](void *user, double done, double of, double value, double bound,
                                           std::int32_t proven) -> std::int32_t {
        const FillProgress told{done, of, value, bound, proven != 0};
        return static_cast<detail::Watch<FillProgress> *>(user)->tell(told);
    };
    return detail::watched(watcher, [&](char *buf, std::size_t cap, std::size_t *needed, void *user) {
        return deck_fill_watched(detail::start(request), detail::count(request), buf, cap, needed, progress, user);
    });
}

/** Finds where a deck splits into boards. */
inline std::string seams(std::string_view request) { return detail::ask(deck_seams, request); }

/** Cuts the boards in their true shape. */
inline std::string panels(std::string_view request) { return detail::ask(deck_panels, request); }

/** Places the fasteners. */
inline std::string fasteners(std::string_view request) { return detail::ask(deck_fasteners, request); }

/** Finds where measured points lie, and which readings are wrong. */
inline std::string survey(std::string_view request) { return detail::ask(deck_survey, request); }

/** The allowable uniform loads of a panel on equal spans. */
inline std::string span_limits(std::string_view request) { return detail::ask(deck_span_limits, request); }

/** Reactions, moments, shears and deflections of a beam over several supports. */
inline std::string beam(std::string_view request) { return detail::ask(deck_beam, request); }

/** Deflections, moments and reactions of an orthotropic plate. */
inline std::string plate(std::string_view request) { return detail::ask(deck_plate, request); }

/** Reads a length as a job's are read, and writes it as a plan's are. */
inline std::string length(std::string_view request) { return detail::ask(deck_length, request); }

/** The JSON Schema (draft 2020-12) of a job. */
inline std::string job_schema() {
    return detail::text(0, [](char *buf, std::size_t cap, std::size_t *needed) {
        return deck_job_schema(buf, cap, needed);
    });
}

} // namespace deck

#endif /* DECK_HPP */
