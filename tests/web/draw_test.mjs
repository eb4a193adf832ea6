// Drawing by fingers in a browser: two of them pinch, one drags a light, and the plan is kept.
import { need } from "./browser.mjs";

const kSizes = { tablet: { width: 1180, height: 820 }, upright: { width: 820, height: 1180 } };

async function drawHere({ tablet: fresh, address }, size) {
    const tablet = await fresh(size);
    await tablet.open(address);
    await tablet.tap("shelf/draw/harbour-lighthouse");
    const board = tablet.middle(await tablet.seen("board"));
    await tablet.shot("plan");
    const span = async () => {
        const [a, b] = [await tablet.seen("board/led/L3"), await tablet.seen("board/led/L4")].map((one) => tablet.middle(one));
        return Math.hypot(a.x - b.x, a.y - b.y);
    };
    const apart = await span();
    await tablet.pinch(board, 120, 240);
    const wide = await span();
    need(Math.abs(wide / apart - 2) < 0.15, `fingers twice as far apart made the card ${(wide / apart).toFixed(2)} times as large`);
    await tablet.shot("pinched");
    await tablet.tap("draw/fit");
    need(Math.abs(await span() - apart) < 1, "the whole card is not shown again");

    // A light is dragged; one step back puts it where it was.
    await tablet.tap("draw/tool/select");
    const before = tablet.middle(await tablet.seen("board/led/L6"));
    await tablet.drag(before, { x: -60, y: 30 });
    const after = tablet.middle(await tablet.seen("board/led/L6"));
    need(Math.abs(after.x - before.x + 60) < 14 && Math.abs(after.y - before.y - 30) < 14,
         `dragged by -60, 30 the light moved by ${(after.x - before.x).toFixed(0)}, ${(after.y - before.y).toFixed(0)}`);
    await tablet.shot("dragged");
    const kept = Object.values(await tablet.kept(".card.json"));
    need(kept.length === 1, `${kept.length} cards are in storage after the first change`);
    const x = (text) => JSON.parse(text).leds.find((led) => led.id === "L6").at_mm[0];
    need(x(kept[0]) < 121, `storage has the light at ${x(kept[0])} mm`);
    await tablet.reload();
    need(x(Object.values(await tablet.kept(".card.json"))[0]) === x(kept[0]), "the plan changed with a reload");
    need(tablet.troubles.length === 0, tablet.troubles.join("; "));
}

export const drawing = Object.fromEntries(Object.entries(kSizes).map(([name, size]) =>
    ["draw-" + name, (table) => drawHere(table, size)]));
