// The browser build in a real browser, touched as a maker touches it. What was kept is read from the browser's
// storage past the program, so the program is not its own judge.
// Usage: node build_test.mjs NODE_MODULES SITE WORK [NAME...]   (without names: every test)
import { readFile } from "node:fs/promises";
import { need, serve, sleep, Tablet } from "./browser.mjs";

const [modules, site, work, ...only] = process.argv.slice(2);
const kTablet = { width: 1180, height: 820 };
const kUpright = { width: 820, height: 1180 };
const kPhone = { width: 390, height: 844 };

async function startCard(tablet, card) {
    await tablet.reach("shelf", "shelf/card/" + card);
    await tablet.tap("audience/adults");
    await tablet.tap("audience/way/go-on");
    await tablet.seen("make/done");
}

/// What the maker is asked for now: "move", "proof", or "finished".
async function face(tablet) {
    for (let i = 0; i < 100; ++i) {
        const names = (await tablet.targets()).map((target) => target.name);
        if (names.some((name) => name.startsWith("log/"))) {
            return "finished";
        }
        if (names.includes("notice/adult")) {
            return "notice";
        }
        if (names.includes("make/proof")) {
            return "proof";
        }
        if (names.includes("make/done")) {
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

async function typeReading(tablet, digits) {
    await tablet.tap("make/check/field");
    for (const digit of digits) {
        await tablet.tap(digit === "." ? "keypad/point" : "keypad/" + digit);
    }
    await tablet.tap("keypad/save");
}

/// Goes on until `stop(events)` says so, or the build is finished. Every tap that confirms something is looked
/// for in storage as soon as the screen has moved on.
async function goOn(tablet, stop = () => false) {
    for (let guard = 0; guard < 400; ++guard) {
        const now = await face(tablet);
        if (now === "finished") {
            return;
        }
        const before = (await tablet.events()).length;
        if (now === "notice") {
            await tablet.tap("notice/adult");
            need((await face(tablet)) === "notice", "a tap confirmed what an adult has to hold for");
            await tablet.hold("notice/adult", 4600);
        } else if (now === "move") {
            await tablet.tap("make/done");
            if (await tablet.find("notice/adult")) {
                continue;
            }
        } else {
            await prove(tablet);
        }
        const events = await tablet.events();
        need(events.length > before, `the screen went on, but storage still ends with ${events.at(-1).event}`);
        if (stop(events)) {
            return;
        }
    }
    throw new Error("the build never ended");
}

function isFinished(events) {
    return events.some((event) => event.event === "finished");
}

async function finishedRecord(tablet) {
    const events = await tablet.events();
    need(isFinished(events), "storage does not hold the end of the build");
    const first = await tablet.seen((await tablet.targets()).find((one) => one.name.startsWith("log/")).name);
    need(first.rect[2] > 0, "the record is not on the screen");
    need(tablet.troubles.length === 0, tablet.troubles.join("; "));
}

const tests = {
    // A whole build at each size, and then nothing more is drawn.
    ...Object.fromEntries([["tablet", kTablet], ["upright", kUpright], ["phone", kPhone]].map(([name, size]) =>
        ["window-candle-" + name, async (fresh, address) => {
            const tablet = await fresh(name, size, name === "phone" ? 2 : 1);
            await tablet.open(address);
            const first_ms = await tablet.page.evaluate(() => Module.firstFrame_ms);
            console.log(`    first frame after ${first_ms.toFixed(0)} ms`);
            await tablet.shot("shelf");
            const canvas = await tablet.page.evaluate(() => [document.getElementById("canvas").width, devicePixelRatio]);
            need(canvas[0] === size.width * canvas[1], `the canvas has ${canvas[0]} pixels across`);
            await startCard(tablet, "window-candle");
            await tablet.shot("first-move");
            await goOn(tablet);
            await finishedRecord(tablet);
            await tablet.shot("record");
            await sleep(9000); // the last sentence goes, chevrons and picture come to rest
            const before = await tablet.frames();
            await sleep(5000);
            const drawn = (await tablet.frames()) - before;
            need(drawn === 0, `${drawn} frames were drawn in 5 idle seconds`);
            await tablet.stop();
        }])),

    // The page is reloaded in the middle of a step, then the browser is ended, then the network goes away.
    "harbour-lighthouse": async (fresh, address, server) => {
        const tablet = await fresh("harbour", kTablet);
        await tablet.open(address);
        await tablet.page.evaluate(() => navigator.serviceWorker.ready);
        await startCard(tablet, "harbour-lighthouse");
        const movesOf = (events, step) => events.filter((event) => event.step === step && event.event === "move-done").length;
        await goOn(tablet, (events) => movesOf(events, 3) === 2);

        // A tear is put on record in the middle of the step.
        await tablet.tap("make/differs");
        const offers = (await tablet.targets()).filter((one) => one.name.startsWith("differs/offer/"));
        const tear = offers.find((one) => one.label.toLowerCase().includes("tear") || one.label.toLowerCase().includes("tore"));
        need(tear, "no tear among what may differ: " + offers.map((one) => one.label).join("; "));
        await tablet.reach("differs/rows", tear.name);
        await tablet.tap("differs/save");
        need((await tablet.events()).at(-1).event === "change", "the tear is not in storage");

        const held = await tablet.events();
        const move = (await tablet.seen("make/done")).label;
        await tablet.page.reload();
        await tablet.ready();
        need(JSON.stringify(await tablet.events()) === JSON.stringify(held), "the reload changed what was kept");
        const build = (await tablet.targets()).find((one) => one.name.startsWith("shelf/build/"));
        need(build, "the build is not on the shelf after a reload");
        await tablet.tap(build.name);
        need((await tablet.seen("make/done")).label === move, "the build goes on at another move");
        await tablet.shot("after-reload");

        // The proof stops at the tear; mended, the step is proved.
        await goOn(tablet, (events) => events.some((event) => event.event === "verdict" && event.step === 3));
        await tablet.shot("stopped");
        need((await tablet.events()).at(-1).step === 3, "the tear did not stop the step");
        await tablet.tap("make/done");
        need((await tablet.events()).at(-1).step === 4, "the mended step is not proved");

        // A reading far off is kept as it was read and leads to the verdict.
        await goOn(tablet, (events) => movesOf(events, 4) === 1);
        for (let i = 0; i < 30 && !(await tablet.find("make/check/field")); ++i) {
            await tablet.tap("make/done");
        }
        const measured = (await tablet.find("make/check/field")) !== undefined;
        if (measured) {
            await typeReading(tablet, "88");
            need((await tablet.events()).some((event) => event.event === "reading" && event.reading.value === 88),
                 "the reading is not in storage");
            await tablet.shot("far-off");
        }

        // The browser ends without a word to the page, the server too; the network is cut.
        const again = await tablet.events();
        await tablet.stop();
        await server.stop();
        await tablet.start();
        await tablet.context.setOffline(true);
        await tablet.open(address);
        need(JSON.stringify(await tablet.events()) === JSON.stringify(again), "ending the browser lost something");
        await tablet.tap((await tablet.targets()).find((one) => one.name.startsWith("shelf/build/")).name);
        if (measured) {
            await tablet.seen("make/check/field");
            await typeReading(tablet, "0.3");
        }
        await goOn(tablet);
        await finishedRecord(tablet);
        await tablet.shot("record");
        await tablet.stop();
    },

    // Storage that refuses: nothing is said to be done, and the move is kept once storage takes it.
    "storage-refuses": async (fresh, address) => {
        const tablet = await fresh("refuses", kTablet);
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const before = await tablet.events();
        await tablet.page.evaluate(() => {
            const put = IDBObjectStore.prototype.put;
            window.refused = 0;
            IDBObjectStore.prototype.put = function(...given) {
                if (window.refusing) {
                    window.refused++;
                    this.transaction.abort();
                    throw new DOMException("no room", "QuotaExceededError");
                }
                return put.apply(this, given);
            };
            window.refusing = true;
        });
        const label = (await tablet.seen("make/done")).label;
        const at = tablet.middle(await tablet.seen("make/done"));
        await tablet.page.touchscreen.tap(at.x, at.y);
        await tablet.page.waitForSelector("#again:not([hidden])", { timeout: 10000 });
        need((await tablet.events()).length === before.length, "storage refused and yet holds more");
        const frames = await tablet.frames();
        await sleep(600);
        need((await tablet.frames()) === frames, "frames went on although the move was not kept");
        await tablet.shot("refused");
        await tablet.page.evaluate(() => { window.refusing = false; });
        await tablet.page.click("#again");
        await tablet.page.waitForFunction(() => document.getElementById("waiting").hidden && !Module.page.keeping);
        await tablet.settle();
        need((await tablet.events()).length === before.length + 1, "the move was not kept after all");
        need(label !== undefined, "the button says nothing");
        await tablet.stop();
    },

    // A second page waits; two would each miss what the other writes.
    "two-pages": async (fresh, address) => {
        const tablet = await fresh("two", kTablet);
        await tablet.open(address);
        const second = await tablet.context.newPage();
        await second.goto(address);
        await second.waitForFunction(() => document.getElementById("words").textContent.includes("another tab"));
        need(await second.evaluate(() => !Module.started), "a second page started beside the first");
        await tablet.page.close();
        await second.waitForFunction(() => Module.firstFrame_ms > 0, null, { timeout: 30000 });
        await tablet.stop();
    },

    // A card file dropped on the page stands on the shelf and is in storage; what is no card is refused.
    "bring-in": async (fresh, address) => {
        const tablet = await fresh("bring", kTablet);
        await tablet.open(address);
        const drop = (name, text) => tablet.page.evaluate(([name, text]) => {
            const given = new DataTransfer();
            given.items.add(new File([text], name));
            window.dispatchEvent(new DragEvent("drop", { dataTransfer: given, cancelable: true }));
        }, [name, text]);
        const card = await readFile(new URL("../data/one-window.card.json", import.meta.url), "utf8");
        await drop("One Window.card.json", card);
        await tablet.settle();
        await tablet.seen("shelf/card/one-window");
        await drop("notes.json", "{}");
        await sleep(500);
        await tablet.page.reload();
        await tablet.ready();
        const cards = (await tablet.targets()).filter((one) => one.name.startsWith("shelf/card/")).map((one) => one.name);
        need(cards.includes("shelf/card/one-window"), "the card is not there after a reload");
        need(!cards.includes("shelf/card/notes"), "what is no card stands on the shelf");
        await tablet.stop();
    },

    // Space that the device keeps for itself; a keyboard that shortens the page; a wish for less motion.
    "surroundings": async (fresh, address) => {
        const tablet = await fresh("around", kPhone, 2);
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const bars = async () => {
            const top = (await tablet.targets()).filter((one) => one.role !== "group").map((one) => one.rect[1]);
            const done = await tablet.seen("make/done");
            return { top: Math.min(...top), bottom: done.rect[1] + done.rect[3] };
        };
        const plain = await bars();
        await tablet.page.evaluate(() => {
            document.getElementById("insets").style.padding = "44px 0 34px 0";
            window.dispatchEvent(new Event("resize"));
        });
        await sleep(700);
        const inset = await bars();
        need(inset.top >= plain.top + 44, `the top bar moved from ${plain.top} to ${inset.top} for a notch of 44`);
        need(inset.bottom <= plain.bottom - 34, `the action bar ends at ${inset.bottom} above a home bar of 34`);
        await tablet.shot("insets");
        await tablet.page.setViewportSize({ width: 844, height: 390 });
        await sleep(700);
        const canvas = await tablet.page.evaluate(() => {
            const canvas = document.getElementById("canvas");
            return [canvas.width, canvas.height, devicePixelRatio];
        });
        need(canvas[0] === 844 * canvas[2] && canvas[1] === 390 * canvas[2], `turned, the canvas is ${canvas}`);
        await tablet.shot("turned");
        await tablet.stop();
    },

    // What a browser asks of a page that can be put on the home screen.
    "installable": async (fresh, address) => {
        const tablet = await fresh("install", kTablet);
        await tablet.open(address);
        await tablet.page.evaluate(() => navigator.serviceWorker.ready);
        const manifest = await tablet.cdp.send("Page.getAppManifest");
        need(manifest.errors.length === 0, JSON.stringify(manifest.errors));
        const faults = (await tablet.cdp.send("Page.getInstallabilityErrors")).installabilityErrors;
        // A browser without a window of its own says this of every page.
        const own = faults.filter((fault) => fault.errorId !== "in-incognito");
        need(own.length === 0, JSON.stringify(own));
        await tablet.stop();
    },
};

let failed = 0;
for (const [name, test] of Object.entries(tests)) {
    if (only.length > 0 && !only.includes(name)) {
        continue;
    }
    const server = await serve(site);
    const tablets = [];
    const fresh = async (folder, size, scale = 1) => {
        const tablet = new Tablet(modules, work, folder, size, scale);
        tablets.push(tablet);
        await tablet.forget();
        await tablet.start();
        return tablet;
    };
    const began = Date.now();
    try {
        await test(fresh, server.address, server);
        console.log(`passed  ${name}  (${((Date.now() - began) / 1000).toFixed(1)} s)`);
    } catch (error) {
        ++failed;
        console.log(`FAILED  ${name}: ${error.stack}`);
        for (const tablet of tablets) {
            console.log("    " + tablet.troubles.join("\n    "));
            await tablet.shot("failed").catch(() => {});
        }
    }
    for (const tablet of tablets) {
        await tablet.stop().catch(() => {});
    }
    await server.stop().catch(() => {});
}
process.exit(failed === 0 ? 0 : 1);
