#include "learn/learn_words.h"

namespace lanternleaf {

namespace {

std::string of_led(const Words& words, const std::string& id, const LedType& led) {
    if (!led.mark) {
        return part_name(id);
    }
    return words(led.mark->negative ? "learn.said_minus" : "learn.said_plus",
                 {{"light", part_name(id)}, {"mark", led.mark->looks}});
}

std::string of_tape(const Words& words, const std::string& id, const TapeType& tape) {
    const Glue glue = glue_of(tape);
    const char* key = glue == Glue::conducts ? "learn.said_conducts"
                      : glue == Glue::weakly ? "learn.said_weakly"
                                             : "learn.said_not";
    return words(key, {{"tape", part_name(id)},
                       {"ohm", words.ohm(tape.joint_ohm_mm2 / (tape.width_mm * tape.width_mm))}});
}

std::string of_foam(const Words& words, const FoamType& foam) {
    const Fill thick{"mm", words.mm(foam.thickness_mm)};
    return foam.squeezed_mm > 0.0
               ? words("learn.said_foam_squeezed", {thick, {"squeezed", words.mm(foam.squeezed_mm)}})
               : words("learn.said_foam", {thick});
}

std::string line(const Words& words, PartSort sort, const std::string& id, const Parts& parts) {
    switch (sort) {
    case PartSort::led:
        return of_led(words, id, parts.leds.at(id));
    case PartSort::tape:
        return of_tape(words, id, parts.tapes.at(id));
    case PartSort::foam:
        return of_foam(words, parts.foams.at(id));
    }
    return id;
}

} // namespace

std::string part_name(const std::string& id) {
    std::string name = id;
    for (char& c : name) {
        c = c == '-' ? ' ' : c;
    }
    if (!name.empty() && name[0] >= 'a' && name[0] <= 'z') {
        name[0] = static_cast<char>(name[0] - 'a' + 'A');
    }
    return name;
}

std::string learnt_line(const Words& words, const Learnt& learnt, const std::string& planned) {
    const std::string said = line(words, learnt.sort, learnt.id, learnt.parts);
    if (learnt.sort != PartSort::led || planned.empty() || planned == learnt.id) {
        return said;
    }
    return words("learn.said_other", {{"line", said}, {"planned", part_name(planned)}});
}

std::string learnt_line(const Words& words, const OwnPart& part, const Parts& known) {
    return line(words, part.sort, part.id, known);
}

} // namespace lanternleaf
