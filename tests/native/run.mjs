// The whole job in a real window: from the shelf to the finished record with the mouse, with a slipped reading, a program
// that is killed in the middle, and a torn strip that Mend finds. Needs an X server (xvfb-run gives one) and xdotool.
// Usage: node run.mjs PROGRAM WORK
import { need } from "../web/browser.mjs";
import { canMeasure, carryOn, finishedRecord, goOn, mendTear, movesDone, startCard, tellLights, typeReading } from "../web/maker.mjs";
import { Desk } from "./desk.mjs";

const [program, work] = process.argv.slice(2);
const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);
const began = Date.now();
const desk = new Desk(program, work, "desk", { width: 1180, height: 820 });
await desk.forget();
await desk.start();
try {
    await desk.shot("1-shelf");
    await startCard(desk, "harbour-lighthouse");
    await goOn(desk, () => canMeasure(desk));
    await typeReading(desk, "88");
    need((await desk.events()).some((event) => event.event === "reading" && event.reading.value === 88),
         "the reading is not in the journal");
    await desk.shot("2-far-off");
    await desk.tap("make/done"); // "Measure again"
    await typeReading(desk, "0.2");
    const events = await goOn(desk, (now) => movesDone(now, 5) === 1);
    await desk.kill();
    await desk.start();
    need(same(await desk.events(), events), "the kill lost something");
    await carryOn(desk);
    await goOn(desk, async () => (await desk.targets()).some((one) => one.name.startsWith("make/light/")));
    await tellLights(desk, ["L1", "L2", "L7"]);
    await desk.shot("3-dark");
    await desk.reach("make/verdict", "make/find-fault");
    const tests = await mendTear(desk, "N3", () => desk.shot("4-found"));
    await goOn(desk);
    await finishedRecord(desk);
    await desk.shot("5-record");
    console.log(`passed  whole build in a window  (${((Date.now() - began) / 1000).toFixed(1)} s, Mend took ${tests} tests)`);
} catch (error) {
    await desk.shot("failed");
    console.log(`FAILED  whole build in a window: ${error.stack}\n${desk.troubles.join("")}`);
    process.exitCode = 1;
}
await desk.stop();
