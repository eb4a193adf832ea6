// What a device is asked for and what it tells: a place on the home screen, a first frame in time, no drawing when
// nothing happens, insets, rotation, an on-screen keyboard, less motion, a screen kept on, files in and out.
import { readFile } from "node:fs/promises";
import { need, sleep } from "./browser.mjs";
import { oneMore, startCard } from "./maker.mjs";

const kTablet = { width: 1180, height: 820 };
const kPhone = { width: 390, height: 844 };
const kCard = new URL("../data/one-window.card.json", import.meta.url);

const cards = async (tablet) => (await tablet.targets()).map((one) => one.name).filter((name) => name.startsWith("shelf/card/"));

async function canvas(tablet) {
    return tablet.page.evaluate(() => {
        const one = document.getElementById("canvas");
        return { w: one.width, h: one.height, ratio: devicePixelRatio };
    });
}

export const devices = {
    // The first frame after the browser was opened, with nothing cached.
    "first-frame": async ({ tablet: fresh, address, say }) => {
        const times = [];
        for (let i = 0; i < 3; ++i) {
            const tablet = await fresh(kTablet);
            await tablet.open(address);
            times.push(await tablet.page.evaluate(() => Module.firstFrame_ms));
            await tablet.stop();
        }
        say(`first frame after ${times.map((ms) => ms.toFixed(0)).join(", ")} ms`);
        // The best of three: the tests run beside each other, and this asks what the page takes.
        need(Math.min(...times) < 2000, "the first frame takes more than 2 s");
    },

    // Once arrows and pictures have come to rest, a tablet on the table draws nothing.
    "idle": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet);
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        for (const where of ["a move", "the shelf"]) {
            const until = Date.now() + 15000;
            await Promise.race([tablet.page.evaluate(() => watch.still(1000)), sleep(15000)]);
            need(Date.now() < until, `${where} never comes to rest`);
            const before = await tablet.frames();
            await sleep(4000);
            const drawn = (await tablet.frames()) - before;
            need(drawn === 0, `${drawn} frames were drawn in 4 idle seconds at ${where}`);
            await tablet.tap("nav/shelf");
        }
    },

    // What a browser asks of a page that can be put on the home screen.
    "installable": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet);
        await tablet.open(address);
        await tablet.page.evaluate(() => navigator.serviceWorker.ready);
        const manifest = await tablet.cdp.send("Page.getAppManifest");
        need(manifest.errors.length === 0 && manifest.data.includes("Lanternleaf"), JSON.stringify(manifest.errors));
        const faults = (await tablet.cdp.send("Page.getInstallabilityErrors")).installabilityErrors;
        // A browser without a window of its own says this of every page.
        const own = faults.filter((fault) => fault.errorId !== "in-incognito");
        need(own.length === 0, JSON.stringify(own));
    },

    // Space that the device keeps for itself; a tablet that is turned; points and pixels.
    "insets-and-rotation": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kPhone, { scale: 2, stillness: true });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const bars = async () => {
            const top = (await tablet.targets()).filter((one) => one.role !== "group").map((one) => one.rect[1]);
            const done = await tablet.seen("make/done");
            return { top: Math.min(...top), bottom: done.rect[1] + done.rect[3] };
        };
        const plain = await bars();
        need((await canvas(tablet)).w === 780, `the canvas has ${(await canvas(tablet)).w} pixels across`);
        await tablet.page.evaluate(() => {
            document.getElementById("insets").style.padding = "44px 0 34px 0";
            window.dispatchEvent(new Event("resize"));
        });
        await tablet.settle();
        const inset = await bars();
        need(inset.top >= plain.top + 44, `the top bar moved from ${plain.top} to ${inset.top} for a notch of 44`);
        need(inset.bottom <= plain.bottom - 34, `the action bar ends at ${inset.bottom} above a home bar of 34`);
        await tablet.shot("insets");
        // A phone on its side has no room for the card; it says so and goes on when it stands up again.
        const upright = () => tablet.page.isHidden("#upright");
        need(await upright(), "a phone that stands upright is asked to be turned");
        await tablet.page.setViewportSize({ width: 844, height: 390 });
        await tablet.page.waitForSelector("#upright:not([hidden])", { timeout: 5000 });
        const turned = await canvas(tablet);
        need(turned.w === 1688 && turned.h === 780, `turned, the canvas is ${JSON.stringify(turned)}`);
        await tablet.shot("turned");
        await tablet.page.setViewportSize(kPhone);
        await tablet.page.waitForSelector("#upright", { state: "hidden", timeout: 5000 });
        await tablet.settle();
        need(JSON.stringify(await bars()) === JSON.stringify(inset), "upright again, the bars are elsewhere");
    },

    // A tablet is turned in the middle of a step: the same move, in the other form.
    "tablet-turned": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        await oneMore(tablet, await tablet.events());
        const pips = (await tablet.seen("pips")).label;
        for (const size of [{ width: 820, height: 1180 }, kTablet]) {
            await tablet.page.setViewportSize(size);
            await tablet.page.waitForFunction((h) => document.getElementById("canvas").height === h, size.height);
            await tablet.settle();
            const done = await tablet.seen("make/done");
            need(done.reachable && done.rect[0] + done.rect[2] <= size.width && done.rect[1] + done.rect[3] <= size.height,
                 `at ${size.width} the main button is out of reach`);
            need((await tablet.seen("pips")).label === pips, "turned, it is at another move");
            need(await tablet.page.isHidden("#upright"), "a tablet is asked to be turned");
        }
        await oneMore(tablet, await tablet.events());
    },

    // The keyboard on the glass types into the field that was tapped, and lets go of it.
    "on-screen-keyboard": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        await tablet.tap("shelf/draw/window-candle");
        await tablet.tap("draw/card");
        const before = (await tablet.seen("draw-card/title")).value;
        await tablet.tap("draw-card/title");
        const focus = () => tablet.page.evaluate(() => document.activeElement.id);
        need((await focus()) === "typing", `after a tap on the field ${await focus()} has the focus`);
        // As an on-screen keyboard does it: text put in, no key pressed.
        await tablet.cdp.send("Input.insertText", { text: "äß!" });
        await tablet.settle();
        need((await tablet.seen("draw-card/title")).value === before + "äß!" ||
             (await tablet.seen("draw-card/title")).value.endsWith("äß!"),
             `the field says ${(await tablet.seen("draw-card/title")).value}`);
        await tablet.page.keyboard.press("Backspace");
        await tablet.settle();
        need((await tablet.seen("draw-card/title")).value.endsWith("äß"), "a backspace takes no letter away");
        await tablet.shot("typed");
        await tablet.page.keyboard.press("Enter");
        await tablet.settle();
        need((await focus()) !== "typing", "the keyboard stays after the last letter");
        const saved = Object.values(await tablet.kept("window-candle.card.json"));
        need(saved.length <= 1, "more than one card was written");
    },

    // Less motion, as the system asks: nothing glides from the first start on.
    "less-motion": async ({ tablet: fresh, address, say }) => {
        const drawn = [];
        for (const stillness of [false, true]) {
            const tablet = await fresh(kTablet, { stillness });
            await tablet.open(address);
            await startCard(tablet, "window-candle");
            await oneMore(tablet, await tablet.events());
            const before = await tablet.frames();
            await sleep(2500); // the picture of a new move turns its pages
            drawn.push((await tablet.frames()) - before);
            await tablet.stop();
        }
        say(`frames in 2.5 s at a new move: ${drawn[0]}, with less motion ${drawn[1]}`);
        need(drawn[0] > 10, "nothing moves at a new move");
        need(drawn[1] <= 3, `${drawn[1]} frames were drawn although less motion is wanted`);
    },

    // The screen stays on while a step is made.
    "screen-kept-on": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        const on = () => tablet.page.evaluate(() => Module.page.screenIsKeptOn());
        need(!(await on()), "the screen is kept on at the shelf");
        await startCard(tablet, "window-candle");
        await tablet.page.waitForFunction(() => Module.page.screenIsKeptOn(), null, { timeout: 3000 });
        await tablet.tap("make/done");
        need(await on(), "the screen may go dark after the first move");
        await tablet.tap("nav/shelf");
        await tablet.page.waitForFunction(() => !Module.page.screenIsKeptOn(), null, { timeout: 3000 });
    },

    // A card's file, picked and dropped, stands on the shelf and is in storage; what is no card is refused.
    "files-in": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        const text = await readFile(kCard, "utf8");
        const [picker] = await Promise.all([tablet.page.waitForEvent("filechooser", { timeout: 20000 }),
                                            tablet.tap("shelf/bring-in")]);
        await picker.setFiles({ name: "One Window.card.json", mimeType: "application/json", buffer: Buffer.from(text) });
        await tablet.seen("shelf/card/one-window");
        await tablet.settle();

        const drop = (name, content) => tablet.page.evaluate(([name, content]) => {
            const given = new DataTransfer();
            given.items.add(new File([content], name));
            window.dispatchEvent(new DragEvent("drop", { dataTransfer: given, cancelable: true }));
        }, [name, content]);
        await drop("Two Windows.card.json", text.replace("One window", "Two windows"));
        await tablet.seen("shelf/card/two-windows");
        await drop("notes.json", "{}");
        await tablet.settle();
        await tablet.shot("refused");
        await tablet.reload();
        const there = await cards(tablet);
        need(there.includes("shelf/card/one-window") && there.includes("shelf/card/two-windows"),
             `after a reload there are ${there.join(" ")}`);
        need(!there.includes("shelf/card/notes"), "what is no card stands on the shelf");
        need(Object.values(await tablet.kept("one-window.card.json"))[0] === text, "the card is not kept as it came");
    },

    // A photo as a camera gives it is kept smaller, as a kind that every device reads, and lies under the plan.
    "photo-in": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        const photo = Buffer.from(await tablet.page.evaluate(async () => {
            const paper = new OffscreenCanvas(3000, 1800);
            const pen = paper.getContext("2d");
            for (let x = 0; x < 3000; x += 10) {
                for (let y = 0; y < 1800; y += 10) {
                    pen.fillStyle = `rgb(${(x * y) % 251} ${(x + 7 * y) % 241} ${(13 * x + y) % 239})`;
                    pen.fillRect(x, y, 10, 10);
                }
            }
            const bytes = new Uint8Array(await (await paper.convertToBlob({ type: "image/webp", quality: 1 })).arrayBuffer());
            let text = "";
            bytes.forEach((byte) => { text += String.fromCharCode(byte); });
            return btoa(text);
        }), "base64");
        await tablet.tap("shelf/draw/window-candle");
        await tablet.tap("draw/card");
        const [picker] = await Promise.all([tablet.page.waitForEvent("filechooser", { timeout: 20000 }),
                                            tablet.reach("draw-card/rows", "draw-card/art")]);
        await picker.setFiles({ name: "IMG 1.webp", mimeType: "image/webp", buffer: photo });
        await tablet.page.waitForFunction(() => Module.FS.readdir("/library").includes("cards") &&
            Module.FS.readdir("/library/cards").some((name) => name.endsWith(".jpg")), null, { timeout: 15000 });
        await tablet.settle();
        const kept = await tablet.page.evaluate(() => new Promise((resolve, reject) => {
            const asked = indexedDB.open("lanternleaf");
            asked.onsuccess = () => {
                const all = asked.result.transaction("files").objectStore("files").openCursor();
                all.onsuccess = async () => {
                    if (!all.result) {
                        reject(new Error("no picture in storage"));
                    } else if (String(all.result.key).endsWith(".jpg")) {
                        const bitmap = await createImageBitmap(new Blob([all.result.value.bytes]));
                        resolve({ w: bitmap.width, h: bitmap.height, count: all.result.value.bytes.length });
                    } else {
                        all.result.continue();
                    }
                };
            };
        }));
        need(kept.w === 2048 && kept.h === Math.round(1800 * 2048 / 3000), `it is kept at ${kept.w} x ${kept.h}`);
        need(kept.count < photo.length, `${photo.length} bytes came in and ${kept.count} are kept`);
        await tablet.shot("art");
    },

    // A card's file goes out: by the share sheet where there is one, else as a download, and never twice.
    "files-out": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.page.addInitScript(() => {
            window.sheet = null; // "takes", "closed" or "broken", once there is one
            window.taken = [];
            Navigator.prototype.canShare = () => window.sheet !== null;
            Navigator.prototype.share = async ({ files }) => {
                if (window.sheet !== "takes") {
                    throw new DOMException("", window.sheet === "closed" ? "AbortError" : "NotAllowedError");
                }
                taken.push({ name: files[0].name, type: files[0].type, text: await files[0].text() });
            };
        });
        await tablet.open(address);
        await tablet.tap("shelf/draw/window-candle");
        await tablet.tap("draw/card");
        const downloads = [];
        tablet.page.on("download", (download) => downloads.push(download));
        const send = async (sheet) => {
            await tablet.page.evaluate((sheet) => { window.sheet = sheet; }, sheet);
            await tablet.reach("draw-card/rows", "draw-card/send");
            await sleep(300); // a download that must not come would come now
        };
        await send(null);
        need(downloads.length === 1, `${downloads.length} downloads where there is no share sheet`);
        need(downloads[0].suggestedFilename() === "window-candle.card.json", downloads[0].suggestedFilename());
        const text = await readFile(await downloads[0].path(), "utf8");
        need(JSON.parse(text).title === "Window candle", "the file is not the card");
        await send("takes");
        const taken = await tablet.page.evaluate(() => taken);
        need(taken.length === 1 && taken[0].name === "window-candle.card.json" && taken[0].type === "application/json" &&
             taken[0].text === text, `the share sheet was given ${JSON.stringify(taken).slice(0, 200)}`);
        await send("closed");
        need(downloads.length === 1, "a closed share sheet gave a download");
        await send("broken");
        need(downloads.length === 2, "a share sheet that is not allowed leaves the person without the file");
        await tablet.shot("said");
    },
};
