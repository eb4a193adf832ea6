// The whole job on each size of screen, by touch: from the shelf to the finished record, with what goes wrong on a
// craft table on the way.
import { need } from "./browser.mjs";
import { canMeasure, carryOn, finishedRecord, goOn, mendTear, movesDone, startCard, tellLights, typeReading } from "./maker.mjs";

const kSizes = { tablet: { width: 1180, height: 820 }, upright: { width: 820, height: 1180 }, phone: { width: 390, height: 844 } };

const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

async function wholeBuild({ tablet: fresh, address, stopServing, say }, name, size) {
    // One of the three is drawn with all its motion; the others as the system asks for less.
    const tablet = await fresh(size, { stillness: name !== "tablet" });
    await tablet.open(address);
    await tablet.shot("1-shelf");
    await startCard(tablet, "harbour-lighthouse");
    await tablet.shot("2-first-move");

    // Reloaded in the middle of a step: nothing is lost, and it goes on at the same move.
    let events = await goOn(tablet, (now) => movesDone(now, 3) === 2);
    const move = (await tablet.seen("make/done")).label;
    await tablet.reload();
    need(same(await tablet.events(), events), "the reload changed what was kept");
    await carryOn(tablet);
    need((await tablet.seen("make/done")).label === move, "the build goes on at another move");
    await tablet.shot("3-after-reload");

    // The meter's tip slipped: far too much is kept as it was read and stops the step; read again, it goes on.
    await goOn(tablet, () => canMeasure(tablet));
    await typeReading(tablet, "88");
    need((await tablet.events()).some((event) => event.event === "reading" && event.reading.value === 88),
         "the reading is not in storage");
    await tablet.shot("4-far-off");
    await tablet.tap("make/done"); // "Measure again"
    await typeReading(tablet, "0.2");
    need((await tablet.events()).at(-1).reading?.value === 0.2, "the second reading is not in storage");

    // The browser ends without a word to the page, and there is no network when it opens again.
    events = await goOn(tablet, (now) => movesDone(now, 5) === 1);
    await tablet.page.evaluate(() => navigator.serviceWorker.ready);
    await tablet.kill();
    await stopServing();
    await tablet.start();
    await tablet.context.setOffline(true);
    await tablet.open(address);
    need(same(await tablet.events(), events), "ending the browser lost something");
    await carryOn(tablet);

    // A strip tore unseen: three lights stay dark, Mend asks and finds the place, and with the tape mended all are lit.
    await goOn(tablet, async () => (await tablet.targets()).some((one) => one.name.startsWith("make/light/")));
    await tablet.shot("5-lights");
    await tellLights(tablet, ["L1", "L2", "L7"]);
    await tablet.shot("6-dark");
    await tablet.reach("make/verdict", "make/find-fault");
    say(`Mend found the tear after ${await mendTear(tablet, "N3", () => tablet.shot("7-found"))} tests`);
    await goOn(tablet);
    await finishedRecord(tablet);
    await tablet.shot("8-record");
}

export const builds = Object.fromEntries(Object.entries(kSizes).map(([name, size]) =>
    ["build-" + name, (table) => wholeBuild(table, name, size)]));
