#include "safety/audience.h"

namespace lanternleaf {

namespace {

AudienceChoice go_on() {
    return {"go-on", "Start building", "", "", true};
}

AudienceChoice screw_holder() {
    return {
        "screw-holder", "Use a screwed holder",
        "A ready-made holder that opens only with a screwdriver, fixed down so that it cannot be pulled off.",
        "screw-20", true};
}

AudienceChoice without_cell() {
    return {"without-cell", "Give it without the cell",
            "An adult shows the light, then takes the cell out and keeps it locked away.", "", false};
}

AudienceChoice not_now() {
    return {"not-now", "Not now", "", "", true};
}

AudienceAdvice for_small_children(Closure closure) {
    AudienceAdvice advice;
    if (closure == Closure::tool) {
        advice.headline = "The screw keeps the cell in";
        advice.sentences = {"Tighten the screw after every test.",
                            "Look at the holder now and then: a loose one must go out of reach at once.",
                            "A holder is no promise. Watch a small child with this card."};
        advice.choices = {go_on(), without_cell(), not_now()};
        return advice;
    }
    advice.must_choose = true;
    advice.headline = "Fingers can open this holder";
    advice.sentences = {"A coin cell can badly hurt a small child, even a flat one.",
                        "A paper flap does not keep a child out. Choose another way."};
    advice.choices = {screw_holder(), without_cell(), not_now()};
    return advice;
}

} // namespace

AudienceAdvice advice_for(Audience audience, Closure closure) {
    AudienceAdvice advice;
    switch (audience) {
    case Audience::adults:
        advice.headline = "For grown-ups";
        advice.sentences = {"If a child may visit, choose again.",
                            "Write the caution on the back all the same: cards are passed on."};
        advice.choices = {go_on(), not_now()};
        return advice;
    case Audience::children:
        advice.headline = "For children of six and over";
        advice.sentences = {"An adult fits the cell and tapes the flap shut on three sides.",
                            "Where a smaller child lives or visits, choose again."};
        advice.choices = {go_on(), not_now()};
        if (closure == Closure::finger) {
            advice.choices.insert(advice.choices.begin() + 1, screw_holder());
        }
        return advice;
    case Audience::small_children:
        return for_small_children(closure);
    case Audience::school_class:
        advice = for_small_children(closure);
        advice.sentences.insert(advice.sentences.begin(),
                                "Each card goes to a home you do not know: small children may live there.");
        advice.sentences.push_back(
            "Count the cells out and count them back. Send a note home about coin cells.");
        return advice;
    case Audience::sale:
        advice.must_choose = true;
        advice.headline = "Selling, or giving many away";
        advice.sentences = {
            "Many countries have rules for goods with coin cells: how the cell is shut in, how it is tested, "
            "what the label says. Look yours up before you sell.",
            "Ask about: battery compartments, warning labels, toy rules, product records, posting and "
            "disposal.",
            "The record of this build helps with your papers. It proves nothing about the rules."};
        advice.choices = {{"go-on", "Build a sample", "To keep, to test and to measure.", "", true},
                          screw_holder(),
                          not_now()};
        return advice;
    }
    return advice;
}

const char* spoken(Audience audience) {
    switch (audience) {
    case Audience::adults:
        return "Adults only";
    case Audience::children:
        return "Children, six and over";
    case Audience::small_children:
        return "Small children, or I don’t know";
    case Audience::school_class:
        return "A class takes them home";
    case Audience::sale:
        return "For sale";
    }
    return "";
}

const char* back_label() {
    return "Coin cell inside. Keep away from children. Swallowed, or in a nose or ear? "
           "Get emergency help at once, even without signs.";
}

} // namespace lanternleaf
