// What a maker does, with fingers only: starts a card, makes its moves, proves its steps, measures, mends. Whatever
// is confirmed is looked for in the browser's storage as soon as the screen has moved on.
import { need, sleep } from "./browser.mjs";

export async function startCard(tablet, card) {
    await tablet.reach("shelf", "shelf/card/" + card);
    await tablet.tap("audience/adults");
    await tablet.tap("audience/way/go-on");
    await tablet.seen("make/done");
}

/// From the shelf on with the build that lies there.
export async function carryOn(tablet) {
    const build = (await tablet.targets()).find((one) => one.name.startsWith("shelf/build/"));
    need(build, "the build is not on the shelf");
    await tablet.tap(build.name);
}

/// What the maker is asked for now: "move", "proof", "verdict", "notice" or "finished".
async function face(tablet) {
    for (let i = 0; i < 100; ++i) {
        const names = new Set((await tablet.targets()).map((target) => target.name));
        const has = (name) => names.has(name);
        if (has("log/again")) {
            return "finished";
        }
        if (has("notice/adult")) {
            return "notice";
        }
        if (has("make/verdict")) {
            return "verdict";
        }
        if (has("make/proof")) {
            return "proof";
        }
        if (has("make/done")) {
            return "move";
        }
        await sleep(40);
    }
    throw new Error("none of the faces of a build is shown");
}

/// The proof of a step by eye; every light of the demo cards shows.
async function prove(tablet) {
    const lights = (await tablet.targets()).filter((target) => target.name.startsWith("make/light/"));
    for (const light of lights) {
        await tablet.reach("make/proof", light.name);
    }
    if (lights.length > 0) {
        await tablet.reach("make/proof", "make/save-seen");
    }
    if (await tablet.find("proof/all-look-right")) {
        await tablet.reach("make/proof", "proof/all-look-right");
    }
    const kept = await tablet.events();
    const step = kept.at(-1).step;
    const answered = new Set(kept.filter((event) => event.reading && event.step === step)
        .map((event) => event.reading.check));
    for (const target of (await tablet.targets()).filter((one) => one.name.startsWith("proof/look/"))) {
        if (!answered.has(target.name.slice("proof/look/".length))) {
            await tablet.reach("make/proof", target.name);
            await tablet.tap("look/yes");
        }
    }
    await tablet.tap("make/done");
}

/// The field to type a reading into: a field on a tablet, a button on a phone.
const kFields = ["make/check/field", "make/measure"];

export async function canMeasure(tablet) {
    return (await tablet.targets()).some((one) => kFields.includes(one.name));
}

export async function typeReading(tablet, digits) {
    const field = (await tablet.targets()).find((one) => kFields.includes(one.name));
    need(field, "there is nothing to measure here");
    await tablet.tap(field.name);
    for (const digit of digits) {
        await tablet.tap(digit === "." ? "keypad/point" : "keypad/" + digit);
    }
    await tablet.tap("keypad/save");
}

/// One confirmation more than storage holds now; gives the events after it.
export async function oneMore(tablet, before) {
    const now = await face(tablet);
    if (now === "notice") {
        await tablet.tap("notice/adult");
        need((await face(tablet)) === "notice", "a tap confirmed what an adult has to hold for");
        await tablet.hold("notice/adult", 4500);
    } else if (now === "proof") {
        await prove(tablet);
    } else {
        await tablet.tap("make/done");
        if (await tablet.find("notice/adult")) {
            return before;
        }
    }
    const events = await tablet.events();
    need(events.length > before.length, `the screen went on, but storage still ends with ${events.at(-1).event}`);
    return events;
}

/// Goes on until `stop(events)` says so, or the build is finished.
export async function goOn(tablet, stop = () => false) {
    let events = await tablet.events();
    for (let guard = 0; guard < 400; ++guard) {
        if (await face(tablet) === "finished") {
            return events;
        }
        events = await oneMore(tablet, events);
        if (await stop(events)) {
            return events;
        }
    }
    throw new Error("the build never ended");
}

export const movesDone = (events, step) =>
    events.filter((event) => event.step === step && event.event === "move-done").length;

export async function finishedRecord(tablet) {
    const events = await tablet.events();
    need(events.some((event) => event.event === "finished"), "storage does not hold the end of the build");
    need((await face(tablet)) === "finished", "the record is not on the screen");
    need(tablet.troubles.length === 0, tablet.troubles.join("; "));
}
/// The lights as the maker sees them in the proof of step 6: those named are dark, all others lit. Kept at once.
export async function tellLights(tablet, dark) {
    for (const light of (await tablet.targets()).filter((one) => one.name.startsWith("make/light/"))) {
        const taps = dark.includes(light.name.slice("make/light/".length)) ? 3 : 1; // lit, dim, dark
        for (let i = 0; i < taps; ++i) {
            await tablet.reach("make/proof", light.name);
        }
    }
    await tablet.reach("make/proof", "make/save-seen");
}

/// In Mend with a strip that is torn: does each test it asks for, answers as such a card would, and mends what it finds.
/// Gives the tests it took.
export async function mendTear(tablet, strip, look = () => {}) {
    await tablet.reach("mend", "mend/cool");
    for (let tests = 0; tests < 12; ++tests) {
        const targets = await tablet.targets();
        const likeliest = targets.find((one) => one.name === "mend/cause/A");
        need(likeliest, "Mend names no cause");
        if (likeliest.label.includes(strip + " ") && likeliest.label.includes("torn")) {
            await look();
            if (!targets.some((one) => one.name === "mend/found")) {
                await tablet.reach("mend", likeliest.name);
            }
            await tablet.reach("mend", "mend/found");
            return tests;
        }
        const answers = targets.filter((one) => one.name.startsWith("mend/answer/"));
        const answer = answers.find((one) => one.label.startsWith(strip + " ")) ??
                       answers.find((one) => one.label === "No change");
        await tablet.reach("mend", answer ? answer.name : "mend/another");
    }
    throw new Error("Mend does not find the tear");
}
