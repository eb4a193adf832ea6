#include "safety/audience.h"

namespace lanternleaf {

namespace {

AudienceChoice go_on(const Words& words) {
    return {"go-on", words("safety.go_on"), "", "", true};
}

AudienceChoice screw_holder(const Words& words) {
    return {"screw-holder", words("safety.screw_holder"), words("safety.screw_holder_why"), "screw-20", true};
}

AudienceChoice without_cell(const Words& words) {
    return {"without-cell", words("safety.without_cell"), words("safety.without_cell_why"), "", false};
}

AudienceChoice not_now(const Words& words) {
    return {"not-now", words("safety.not_now"), "", "", true};
}

AudienceAdvice for_small_children(Closure closure, const Words& words) {
    AudienceAdvice advice;
    if (closure == Closure::tool) {
        advice.headline = words("safety.screw_headline");
        advice.sentences = {words("safety.screw_tighten"), words("safety.screw_look"),
                            words("safety.screw_no_promise")};
        advice.choices = {go_on(words), without_cell(words), not_now(words)};
        return advice;
    }
    advice.must_choose = true;
    advice.headline = words("safety.finger_headline");
    advice.sentences = {words("safety.finger_hurt"), words("safety.finger_flap")};
    advice.choices = {screw_holder(words), without_cell(words), not_now(words)};
    return advice;
}

} // namespace

AudienceAdvice advice_for(Audience audience, Closure closure, const Words& words) {
    AudienceAdvice advice;
    switch (audience) {
    case Audience::adults:
        advice.headline = words("safety.adults_headline");
        advice.sentences = {words("safety.adults_visit"), words("safety.adults_caution")};
        advice.choices = {go_on(words), not_now(words)};
        return advice;
    case Audience::children:
        advice.headline = words("safety.children_headline");
        advice.sentences = {words("safety.children_adult"), words("safety.children_smaller")};
        advice.choices = {go_on(words), not_now(words)};
        if (closure == Closure::finger) {
            advice.choices.insert(advice.choices.begin() + 1, screw_holder(words));
        }
        return advice;
    case Audience::small_children:
        return for_small_children(closure, words);
    case Audience::school_class:
        advice = for_small_children(closure, words);
        advice.sentences.insert(advice.sentences.begin(), words("safety.class_homes"));
        advice.sentences.push_back(words("safety.class_count"));
        return advice;
    case Audience::sale:
        advice.must_choose = true;
        advice.headline = words("safety.sale_headline");
        advice.sentences = {words("safety.sale_rules"), words("safety.sale_ask"),
                            words("safety.sale_record")};
        advice.choices = {{"go-on", words("safety.sale_sample"), words("safety.sale_sample_why"), "", true},
                          screw_holder(words),
                          not_now(words)};
        return advice;
    }
    return advice;
}

std::string spoken(Audience audience, const Words& words) {
    switch (audience) {
    case Audience::adults:
        return words("safety.for_adults");
    case Audience::children:
        return words("safety.for_children");
    case Audience::small_children:
        return words("safety.for_small_children");
    case Audience::school_class:
        return words("safety.for_class");
    case Audience::sale:
        return words("safety.for_sale");
    }
    return "";
}

std::string back_label(const Words& words) {
    return words("safety.back_label");
}

} // namespace lanternleaf
