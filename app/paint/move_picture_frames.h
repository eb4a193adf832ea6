// The frames of each kind of move picture. For paint/move_picture*.cpp only.
#pragma once

#include "paint/picture_stage.h"

namespace lanternleaf::frames {

/// `frame` from 0; `swing` runs smoothly -1..1 with the phase (0 when still), `go` 0..1 (1 when still).
struct Beat {
    int frame = 0;
    double swing = 0;
    double go = 1;
};

// move_picture_tape.cpp
void start(PictureStage& on, const Beat& beat);
void run(PictureStage& on, const Beat& beat);
/// Past the edge of the stage, so that nothing seems to end there.
inline constexpr double kFar = 1.7;

void fold(PictureStage& on, const Beat& beat);
void joint(PictureStage& on, const Beat& beat);
void cut(PictureStage& on, const Beat& beat);
void tail(PictureStage& on, const Beat& beat);
void patch(PictureStage& on, const Beat& beat);
void carry(PictureStage& on, const Beat& beat);
// move_picture_parts.cpp
void measure(PictureStage& on, const Beat& beat);
void mark_pad(PictureStage& on, const Beat& beat);
void place_part(PictureStage& on, const Beat& beat);
void cell_in(PictureStage& on, const Beat& beat);
void flap_way(PictureStage& on, const Beat& beat);
void light_test(PictureStage& on, const Beat& beat);
// move_picture_card.cpp
void peel(PictureStage& on, const Beat& beat);
void press(PictureStage& on, const Beat& beat);
void foam(PictureStage& on, const Beat& beat);
void close(PictureStage& on, const Beat& beat);
void label(PictureStage& on, const Beat& beat);
void adult(PictureStage& on, const Beat& beat);

} // namespace lanternleaf::frames
