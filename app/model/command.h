// Command: everything a person can mean. Screens return these; update() carries them out.
#pragma once

#include "model/app_state.h"
#include "model/batch_command.h"
#include "model/draw_command.h"
#include "model/learn_command.h"
#include "model/log_command.h"
#include "model/mend_command.h"

#include <variant>
#include <vector>

namespace lanternleaf::command {

struct GoTo {
    Place place;
};

struct OpenSheet {
    SheetKind sheet;
};

struct CloseSheet {};

struct ReadNotice {};

struct CloseNotice {};

struct AdultConfirms {};

struct StartCard {
    std::string path;
}; ///< asks who will have the card

struct AnswerAudience {
    Audience audience;
};

struct ChooseWay {
    std::string choice;
}; ///< one of the advice's choices: the build starts

struct Resume {
    std::string journal;
};

struct PutAway {
    std::string journal;
}; ///< an unfinished build is abandoned, on record

struct OpenMenu {
    std::string journal;
};

struct OpenLog {
    std::string journal;
};

struct MoveDone {};

struct MoveBack {};

struct LookAtStep {
    int step;
};

struct OpenKeypad {
    std::string check;
};

struct TypeReading {
    std::string text;
}; ///< what the keypad shows now

struct SaveReading {};

struct MeterShowsOpen {};

struct OpenNoMeter {
    std::string check;
};

struct LookedAt {
    bool as_expected;
};

struct LookedAtAll {}; ///< every check left in the proof, by eye, as it should be

struct TapLight {
    std::string led;
};

struct SaveSeen {};

struct OfferDifferences {};

struct ChooseDifference {
    int index;
};

struct AdjustDifference {
    Change draft;
};

struct SaveDifference {};

struct ProveStep {};

struct MendWith {
    Change change;
}; ///< a repair from the verdict: recorded as a change, then judged again

struct GoOnRegardless {
    std::string why;
};

struct CellOut {};

struct ToggleNight {};

struct ChangeSettings {
    Settings settings;
};

struct MoveCamera {
    BoardCamera camera;
};

struct BuildAgain {};

struct OpenLight {}; ///< of the card at hand

struct CloseLight {};

struct SetLightHours {
    double hours;
};

struct ShowLightTraces {
    bool traces;
};

struct Draw {
    DrawCommand act;
};

struct Mend {
    MendCommand act;
};

struct Log {
    LogCommand act;
};

struct Batch {
    BatchCommand act;
};

struct Learn {
    LearnCommand act;
};

} // namespace lanternleaf::command

namespace lanternleaf {

using Command = std::variant<
    command::GoTo, command::OpenSheet, command::CloseSheet, command::ReadNotice, command::CloseNotice,
    command::AdultConfirms, command::StartCard, command::AnswerAudience, command::ChooseWay, command::Resume,
    command::PutAway, command::OpenMenu, command::OpenLog, command::MoveDone, command::MoveBack,
    command::LookAtStep, command::OpenKeypad, command::TypeReading, command::SaveReading,
    command::MeterShowsOpen, command::OpenNoMeter, command::LookedAt, command::LookedAtAll, command::TapLight,
    command::SaveSeen, command::OfferDifferences, command::ChooseDifference, command::AdjustDifference,
    command::SaveDifference, command::ProveStep, command::MendWith, command::GoOnRegardless, command::CellOut,
    command::ToggleNight, command::ChangeSettings, command::MoveCamera, command::BuildAgain,
    command::OpenLight, command::CloseLight, command::SetLightHours, command::ShowLightTraces, command::Draw,
    command::Mend, command::Log, command::Batch, command::Learn>;

} // namespace lanternleaf
