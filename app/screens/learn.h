// Learn: what the stages of a part's test share on the screen: a column that is drawn downwards, and the
// commands that answer. Only learn*.cpp use it.
#pragma once

#include "screens/sheets.h"

#include <string>
#include <vector>

namespace lanternleaf {

/// What is drawn down the sheet, from y on; each returns the y below it.
struct LearnColumn {
    Screen& screen;
    Rect r;
    float y;

    [[nodiscard]] const Words& words() const { return screen.ui.words; }

    [[nodiscard]] const LearnState& learn() const { return *screen.state.learn; }

    void say(const std::string& text, bool bold = false);
    void rows(const std::vector<SheetRow>& list);
    void picture(); ///< of the stage
    /// A labelled number with a step down and a step up. True when it changed.
    bool number(const char* name, const std::string& label, const std::string& shown, double low, double high,
                double step, double& value);
    /// The sheet's one main action, as wide as the sheet.
    bool primary(const char* name, const std::string& label, Icon icon = Icon::Next);
};

[[nodiscard]] Command learn_command(const LearnCommand& act);
/// An answer, and the stage it leads to.
[[nodiscard]] Command told(const LearnAnswers& answers, LearnStage next);

// learn_stages.cpp: the stage at hand; tape's two readings are drawn on the keypad.
void draw_learn_stage(LearnColumn& on);
void draw_learn_reading(Screen& screen, const std::string& title);

} // namespace lanternleaf
