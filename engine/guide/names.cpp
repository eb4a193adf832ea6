#include "guide/step.h"

namespace lanternleaf {

std::string title_of(StepId step, const Words& words) {
    return words(std::string("step.title_") + name_of(step));
}

const char* name_of(StepId step) {
    switch (step) {
    case StepId::mount_holder:
        return "mount_holder";
    case StepId::mark_pads:
        return "mark_pads";
    case StepId::lay_negative:
        return "lay_negative";
    case StepId::lay_positive:
        return "lay_positive";
    case StepId::insulate:
        return "insulate";
    case StepId::place_leds:
        return "place_leds";
    case StepId::pad_edges:
        return "pad_edges";
    }
    return "";
}

const char* name_of(MoveKind kind) {
    switch (kind) {
    case MoveKind::measure:
        return "measure";
    case MoveKind::peel:
        return "peel";
    case MoveKind::press:
        return "press";
    case MoveKind::flap_way:
        return "flap_way";
    case MoveKind::mark_pad:
        return "mark_pad";
    case MoveKind::start_strip:
        return "start_strip";
    case MoveKind::run:
        return "run";
    case MoveKind::fold:
        return "fold";
    case MoveKind::joint:
        return "joint";
    case MoveKind::cut:
        return "cut";
    case MoveKind::leave_tail:
        return "leave_tail";
    case MoveKind::patch:
        return "patch";
    case MoveKind::carry_across:
        return "carry_across";
    case MoveKind::place_resistor:
        return "place_resistor";
    case MoveKind::place_led:
        return "place_led";
    case MoveKind::adult_notice:
        return "adult_notice";
    case MoveKind::cell_in:
        return "cell_in";
    case MoveKind::light_test:
        return "light_test";
    case MoveKind::foam:
        return "foam";
    case MoveKind::close:
        return "close";
    case MoveKind::label:
        return "label";
    }
    return "";
}

const char* name_of(CheckKind kind) {
    switch (kind) {
    case CheckKind::resistance:
        return "resistance";
    case CheckKind::open:
        return "open";
    case CheckKind::lights:
        return "lights";
    case CheckKind::volts:
        return "volts";
    case CheckKind::height:
        return "height";
    case CheckKind::look:
        return "look";
    }
    return "";
}

} // namespace lanternleaf
