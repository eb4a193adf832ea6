// Whether a tape's glue conducts, and how well: two strips, one joint.
#include "base/readout.h"
#include "learn/learnt.h"
#include "learn/limits.h"

#include <algorithm>

namespace lanternleaf {

namespace {

Outcome<Done> measurable(const TwoStripTest& test, const Words& words) {
    using namespace learn;
    const auto refuse = [](const std::string& expected) { return Problem{"", "two strips", expected}; };
    if (!usable(test.overlap_mm) || test.overlap_mm < kLeastOverlap_mm || test.overlap_mm > kMostOverlap_mm) {
        return refuse("expected an overlap of " + readout_number(kLeastOverlap_mm, 0) + " to " +
                      readout_mm(kMostOverlap_mm));
    }
    if (!usable(test.between_mm) || test.between_mm < test.overlap_mm || test.between_mm > kMostBetween_mm) {
        return refuse("expected the probes at least the overlap and at most " + readout_mm(kMostBetween_mm) +
                      " apart");
    }
    if (!usable(test.leads_ohm) || test.leads_ohm < 0.0 || test.leads_ohm > kMostLeads_ohm) {
        return refuse(words("learn.no_tips", {{"ohm", words.ohm(kMostLeads_ohm)}}));
    }
    if (test.answer == JointAnswer::ohms &&
        (!usable(test.reading_ohm) || test.reading_ohm < 0.0 || test.reading_ohm > kMostReading_ohm)) {
        return refuse("expected a reading in ohms");
    }
    return Done{};
}

std::string source_of(const TwoStripTest& test, const TapeType& tape) {
    const std::string over = readout_number(test.overlap_mm, 1) + " × " + readout_mm(tape.width_mm);
    switch (test.answer) {
    case JointAnswer::ohms:
        return readout_number(test.reading_ohm, 2) + " Ω over " + over + ", leads " +
               readout_number(test.leads_ohm, 2) + " Ω, probes " + readout_mm(test.between_mm) + " apart";
    case JointAnswer::open:
        return "no path (OL) over " + over;
    case JointAnswer::lit:
        return "a light fed over " + over + " was lit; no figure";
    case JointAnswer::dim:
        return "a light fed over " + over + " was dim; no figure";
    case JointAnswer::dark:
        return "a light fed over " + over + " stayed dark; no figure";
    }
    return over;
}

} // namespace

double joint_ohm(const TwoStripTest& test, const TapeType& tape) {
    return test.reading_ohm - test.leads_ohm - tape.ohm_per_square * test.between_mm / tape.width_mm;
}

Outcome<Learnt> learn_tape(const TwoStripTest& test, const Parts& known, const std::string& at,
                           const Words& words) {
    const auto found = known.tapes.find(test.type);
    if (found == known.tapes.end()) {
        return Problem{"", test.type, "expected a tape that is among the parts"};
    }
    if (const Outcome<Done> fits = measurable(test, words); !fits) {
        return fits.problem();
    }
    TapeType tape = found->second;
    tape.adhesive = Adhesive::conductive;
    std::string kept = "; joint figure as it was known";
    if (test.answer == JointAnswer::ohms) {
        const double ohm = joint_ohm(test, tape);
        if (ohm < -learn::kMeterSlack_ohm) {
            return Problem{"", "two strips", words("learn.no_leads")};
        }
        const double ohm_mm2 = std::max(ohm, kLeastJoint_ohm) * test.overlap_mm * tape.width_mm;
        if (ohm_mm2 > kOpen_ohm_mm2) {
            tape.adhesive = Adhesive::non_conductive;
        } else {
            tape.joint_ohm_mm2 = ohm_mm2;
            kept.clear();
        }
    } else if (test.answer != JointAnswer::lit) {
        tape.adhesive = Adhesive::non_conductive;
    }
    tape.measured_at = at;
    tape.source =
        learn::measured_on(at) + source_of(test, tape) + kept + "; all else as " + test.type + " was known";
    Learnt out;
    out.sort = PartSort::tape;
    out.id = test.type;
    out.parts.tapes[out.id] = std::move(tape);
    return out;
}

Glue glue_of(const TapeType& tape) {
    if (tape.adhesive == Adhesive::non_conductive) {
        return Glue::not_at_all;
    }
    return tape.joint_ohm_mm2 <= kGood_ohm_mm2 ? Glue::conducts : Glue::weakly;
}

} // namespace lanternleaf
