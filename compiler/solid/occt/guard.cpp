#include "compiler/solid/occt/guard.hpp"

#include <array>
#include <csignal>

#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <OSD.hxx>
#include <Standard_ErrorHandler.hxx>

namespace rodwright::occt {

namespace {

// The signals that OSD::SetSignal takes over.
constexpr std::array<int, 8> taken_signals = {SIGFPE, SIGHUP, SIGINT,  SIGQUIT,
                                              SIGBUS, SIGILL, SIGSEGV, SIGSYS};

class SignalsTaken {
  public:
    SignalsTaken() {
        for (std::size_t i = 0; i < taken_signals.size(); ++i)
            sigaction(taken_signals[i], nullptr, &kept_[i]);
        OSD::SetSignal(OSD_SignalMode_Set, Standard_False);
        for (const int interrupt : {SIGHUP, SIGINT, SIGQUIT}) put_back(interrupt);
    }
    ~SignalsTaken() {
        for (const int each : taken_signals) put_back(each);
    }
    SignalsTaken(const SignalsTaken&) = delete;
    SignalsTaken& operator=(const SignalsTaken&) = delete;

  private:
    void put_back(int signal) {
        for (std::size_t i = 0; i < taken_signals.size(); ++i) {
            if (taken_signals[i] == signal) sigaction(signal, &kept_[i], nullptr);
        }
    }

    std::array<struct sigaction, taken_signals.size()> kept_{};
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
