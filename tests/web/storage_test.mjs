// What is kept and what happens when it cannot be: no room, a browser that refuses, two pages on one storage, a
// browser that is gone from one moment to the next.
import { need, sleep } from "./browser.mjs";
import { carryOn, goOn, movesDone, oneMore, startCard } from "./maker.mjs";

const kTablet = { width: 1180, height: 820 };

/// Taps "done" without waiting for a frame: there may be none.
async function done(tablet) {
    await tablet.press(tablet.middle(await tablet.seen("make/done")));
}

async function sentence(tablet) {
    await tablet.page.waitForSelector("#again:not([hidden])", { timeout: 10000 });
    return tablet.page.textContent("#words");
}

/// The move that was not kept is not shown as done; once there is room it is kept.
async function refusedAndThenKept(tablet, before, allow) {
    need((await tablet.events()).length === before.length, "storage refused and yet holds more");
    const frames = await tablet.frames();
    await sleep(300);
    need((await tablet.frames()) === frames, "frames went on although the move was not kept");
    await tablet.shot("refused");
    await allow();
    await tablet.page.click("#again");
    await tablet.page.waitForFunction(() => document.getElementById("waiting").hidden && !Module.page.keeping);
    await tablet.settle();
    need((await tablet.events()).length === before.length + 1, "the move was not kept after all");
}

async function secondPage(tablet, address) {
    const page = await tablet.context.newPage();
    await page.goto(address);
    return page;
}

export const storages = {
    // No room: the transaction is taken back with the error browsers give then. (A quota set from outside is not
    // enforced for this kind of storage, so the browser's part is played here.)
    "storage-full": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const before = await tablet.events();
        await tablet.page.evaluate(() => {
            const put = IDBObjectStore.prototype.put;
            window.full = true;
            IDBObjectStore.prototype.put = function(...given) {
                const asked = put.apply(this, given);
                if (window.full) {
                    Object.defineProperty(this.transaction, "error", { value: new DOMException("", "QuotaExceededError") });
                    this.transaction.abort();
                    window.full = "told";
                }
                return asked;
            };
        });
        await done(tablet);
        const words = await sentence(tablet);
        need(words.includes("no room left") && words.indexOf(".") === words.length - 1, `it says: ${words}`);
        await refusedAndThenKept(tablet, before, () => tablet.page.evaluate(() => { window.full = false; }));
    },

    // A transaction that fails for any other reason.
    "storage-refuses": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const before = await tablet.events();
        await tablet.page.evaluate(() => {
            const put = IDBObjectStore.prototype.put;
            window.refusing = true;
            IDBObjectStore.prototype.put = function(...given) {
                if (window.refusing) {
                    throw new DOMException("the disk is away", "UnknownError");
                }
                return put.apply(this, given);
            };
        });
        await done(tablet);
        const words = await sentence(tablet);
        need(words.includes("did not keep your last move") && words.includes("the disk is away"), `it says: ${words}`);
        await refusedAndThenKept(tablet, before, () => tablet.page.evaluate(() => { window.refusing = false; }));
    },

    // No storage at all: said before anything could be lost.
    "storage-none": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet);
        await tablet.page.addInitScript(() => {
            IDBFactory.prototype.open = () => { throw new DOMException("not in this window", "SecurityError"); };
        });
        await tablet.page.goto(address);
        const words = await sentence(tablet);
        need(words.includes("gives no storage"), `it says: ${words}`);
        need(await tablet.page.evaluate(() => !Module.started), "the app started without storage");
    },

    // A second page waits for the first.
    "two-pages": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const second = await secondPage(tablet, address);
        await second.waitForFunction(() => document.getElementById("words").textContent.includes("another tab"));
        need(await second.evaluate(() => !Module.started), "a second page started beside the first");
        await second.screenshot({ path: `${tablet.shots}/two-pages-waiting.png` });
        await tablet.page.bringToFront();
        const events = await oneMore(tablet, await tablet.events());
        await tablet.page.close();
        await tablet.take(second);
        await tablet.ready();
        need((await tablet.events()).length === events.length, "the second page does not have all of the first");
        await carryOn(tablet);
        await oneMore(tablet, events);
    },

    // A browser that knows no locks lets two pages in; the one that was overtaken keeps nothing and says so.
    "two-pages-without-locks": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.context.addInitScript(() => {
            Object.defineProperty(Navigator.prototype, "locks", { get: () => undefined });
        });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const first = tablet.page;
        await tablet.take(await secondPage(tablet, address));
        await tablet.ready();
        await carryOn(tablet);
        const events = await goOn(tablet, (now) => movesDone(now, 1) === 2);

        await first.bringToFront();
        await tablet.take(first);
        await done(tablet);
        const words = await sentence(tablet);
        need(words.includes("another tab"), `it says: ${words}`);
        need(JSON.stringify(await tablet.events()) === JSON.stringify(events), "the first page wrote over the second");
        await tablet.shot("overtaken");
        await tablet.page.evaluate(() => { Module.firstFrame_ms = 0; });
        await tablet.page.click("#again");
        await tablet.ready();
        await carryOn(tablet);
        await oneMore(tablet, events);
    },

    // The browser is gone as soon as the screen says that a move is done; again and again.
    "killed": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        let events = await tablet.events();
        for (let i = 0; i < 3; ++i) {
            const label = (await tablet.seen("pips")).label;
            await done(tablet);
            // A frame after the tap is drawn only when the move is in storage; nothing waits for it after that.
            await tablet.page.waitForFunction((label) => watch.find("pips").label !== label, label, { polling: "raf" });
            await tablet.kill();
            await tablet.start();
            await tablet.open(address);
            const now = await tablet.events();
            need(now.length === events.length + 1, `after ending ${i + 1} storage ends with ${now.at(-1).event}`);
            need(JSON.stringify(now.slice(0, -1)) === JSON.stringify(events), "an earlier event changed");
            events = now;
            await carryOn(tablet);
        }
    },

    // Storage cleared beneath a running page: what is in memory is put back whole with the next move.
    "storage-cleared": async ({ tablet: fresh, address }) => {
        const tablet = await fresh(kTablet, { stillness: true });
        await tablet.open(address);
        await startCard(tablet, "window-candle");
        const events = await oneMore(tablet, await tablet.events());
        await tablet.cdp.send("Storage.clearDataForOrigin", { origin: new URL(address).origin, storageTypes: "indexeddb" });
        await done(tablet);
        await tablet.settle();
        const now = await tablet.events();
        need(JSON.stringify(now.slice(0, -1)) === JSON.stringify(events), "what was cleared did not come back");
        need(now.length === events.length + 1, "the move after it is not there");
    },
};
