#include "compiler/solid/occt/guard.hpp"

#include <array>
#include <csignal>
#include <mutex>

#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <OSD.hxx>
#include <Standard_ErrorHandler.hxx>

namespace rodwright::occt {

namespace {

// The signals that OSD::SetSignal takes over.
constexpr std::array<int, 8> taken_signals = {SIGFPE, SIGHUP, SIGINT,  SIGQUIT,
                                              SIGBUS, SIGILL, SIGSEGV, SIGSYS};

// The process's handlers are everybody's: the first of the threads that work at once takes them, the last
// puts them back.
class Signals {
  public:
    void take() {
        const std::lock_guard lock(mutex_);
        if (takers_++ > 0) return;
        for (std::size_t i = 0; i < taken_signals.size(); ++i)
            sigaction(taken_signals[i], nullptr, &kept_[i]);
        OSD::SetSignal(OSD_SignalMode_Set, Standard_False);
        for (const int interrupt : {SIGHUP, SIGINT, SIGQUIT}) put_back(interrupt);
    }
    void leave() {
        const std::lock_guard lock(mutex_);
        if (--takers_ > 0) return;
        for (const int each : taken_signals) put_back(each);
    }

  private:
    void put_back(int signal) {
        for (std::size_t i = 0; i < taken_signals.size(); ++i) {
            if (taken_signals[i] == signal) sigaction(signal, &kept_[i], nullptr);
        }
    }

    std::mutex mutex_;
    int takers_ = 0;
    std::array<struct sigaction, taken_signals.size()> kept_{};
};

class SignalsTaken {
  public:
    SignalsTaken() { signals().take(); }
    ~SignalsTaken() { signals().leave(); }
    SignalsTaken(const SignalsTaken&) = delete;
    SignalsTaken& operator=(const SignalsTaken&) = delete;

  private:
    static Signals& signals() {
        static Signals only;
        return only;
    }
};

}  // namespace

bool guarded(const std::function<void()>& work) {
    const SignalsTaken taken;
    try {
        OCC_CATCH_SIGNALS
        work();
        return true;
    } catch (...) {
        return false;
    }
}

void be_quiet() {
    Message::DefaultMessenger()->ChangePrinters().Clear();
}

}  // namespace rodwright::occt
