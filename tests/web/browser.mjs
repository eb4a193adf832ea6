// A browser on the built site, and fingers that tap by name: the program tells where its targets are, the touches
// are the browser's own. Used by the tests beside it.
import { createServer } from "node:http";
import { readFile, rm, mkdir } from "node:fs/promises";
import { createRequire } from "node:module";
import { extname, join, resolve } from "node:path";

const kTypes = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml",
                 ".png": "image/png", ".wasm": "application/wasm", ".data": "application/octet-stream",
                 ".webmanifest": "application/manifest+json" };

/// Serves a folder on a free port of this machine.
export async function serve(folder) {
    const asked = [];
    const server = createServer(async (request, response) => {
        const path = new URL(request.url, "http://here").pathname;
        asked.push(path);
        try {
            const file = path.endsWith("/") ? path + "index.html" : path;
            const bytes = await readFile(join(folder, file));
            response.writeHead(200, { "content-type": kTypes[extname(file)] ?? "application/octet-stream",
                                      "cache-control": "no-cache" });
            response.end(bytes);
        } catch {
            response.writeHead(404);
            response.end();
        }
    });
    await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
    return { address: `http://127.0.0.1:${server.address().port}/`, asked,
             stop: () => new Promise((done) => { server.closeAllConnections(); server.close(done); }) };
}

export function need(condition, what) {
    if (!condition) {
        throw new Error(what);
    }
}

export const sleep = (ms) => new Promise((done) => setTimeout(done, ms));

/// A tablet: a browser with storage of its own that outlives it, at one size, touched by fingers.
export class Tablet {
    constructor(modules, work, name, size, scale = 1) {
        const require = createRequire(join(resolve(modules), "playwright-core", "package.json"));
        this.chromium = require("playwright-core").chromium;
        this.store = join(work, "profile-" + name);
        this.shots = join(work, "shots");
        this.name = name;
        this.size = size;
        this.scale = scale;
        this.troubles = [];
    }

    async forget() {
        await rm(this.store, { recursive: true, force: true });
        await mkdir(this.shots, { recursive: true });
    }

    async start() {
        this.context = await this.chromium.launchPersistentContext(this.store, {
            executablePath: "/usr/bin/chromium", headless: true, hasTouch: true, viewport: this.size,
            deviceScaleFactor: this.scale, acceptDownloads: true,
            args: ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--disable-quic",
                   "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        this.page = this.context.pages()[0] ?? await this.context.newPage();
        this.page.on("pageerror", (error) => this.troubles.push("page: " + error.message));
        this.page.on("console", (line) => {
            if (line.type() === "error") {
                this.troubles.push("console: " + line.text());
            }
        });
        this.cdp = await this.context.newCDPSession(this.page);
    }

    async open(address) {
        await this.page.goto(address);
        await this.ready();
    }

    async ready() {
        await this.page.waitForFunction(() => window.Module && Module.firstFrame_ms > 0, null, { timeout: 60000 });
    }

    async stop() {
        await this.context.close();
    }

    frames() {
        return this.page.evaluate(() => Module._lanternleaf_frames());
    }

    targets() {
        return this.page.evaluate(() => JSON.parse(Module.ccall("lanternleaf_targets", "string", [], [])));
    }

    async find(name) {
        return (await this.targets()).find((target) => target.name === name);
    }

    /// Waits until the program has taken in what was just done, has kept what it wrote and has drawn again.
    async settle() {
        const drawings = () => this.page.evaluate(() => new Promise((done) => requestAnimationFrame(() =>
            requestAnimationFrame(() => setTimeout(done, 20)))));
        await drawings();
        await this.page.waitForFunction(() => !Module.page.keeping, null, { timeout: 20000, polling: 20 });
        await drawings();
    }

    async seen(name) {
        for (let i = 0; i < 150; ++i) {
            const target = await this.find(name);
            if (target) {
                return target;
            }
            await sleep(40);
        }
        throw new Error(`no target ${name} on ${this.name}; there are: ` +
                        (await this.targets()).map((target) => target.name).join(" "));
    }

    /// The target once it has come to rest: a list that is still rolling is stopped by a touch, not tapped.
    async atRest(name) {
        let last = await this.seen(name);
        for (let i = 0; i < 100; ++i) {
            await sleep(60);
            const now = await this.seen(name);
            if (now.rect.every((value, k) => Math.abs(value - last.rect[k]) < 0.5)) {
                return now;
            }
            last = now;
        }
        throw new Error(`${name} never comes to rest on ${this.name}`);
    }

    middle(target) {
        const [x, y, w, h] = target.visible;
        return { x: x + w / 2, y: y + h / 2 };
    }

    async touch(type, points) {
        await this.cdp.send("Input.dispatchTouchEvent", { type, touchPoints: points });
    }

    async tap(name) {
        const target = await this.atRest(name);
        need(target.enabled, `${name} is not enabled on ${this.name}`);
        need(target.reachable, `${name} cannot be reached on ${this.name}`);
        const at = this.middle(target);
        await this.touch("touchStart", [at]);
        await sleep(30);
        // A finger is never quite still.
        await this.touch("touchMove", [{ x: at.x + 2, y: at.y - 1 }]);
        await sleep(30);
        await this.touch("touchEnd", []);
        await this.settle();
    }

    async hold(name, ms) {
        const at = this.middle(await this.seen(name));
        await this.touch("touchStart", [at]);
        await sleep(ms);
        await this.touch("touchEnd", []);
        await sleep(300);
    }

    /// A slow drag, so that nothing is flung.
    async drag(from, by) {
        await this.touch("touchStart", [from]);
        for (let i = 1; i <= 8; ++i) {
            await this.touch("touchMove", [{ x: from.x + by.x * i / 8, y: from.y + by.y * i / 8 }]);
            await sleep(25);
        }
        await sleep(150);
        await this.touch("touchEnd", []);
        await sleep(150);
    }

    /// Scrolls a list by dragging until the target can be reached, then taps it.
    async reach(list, name) {
        for (let i = 0; i < 25; ++i) {
            const target = await this.atRest(name);
            if (target.reachable) {
                break;
            }
            const room = await this.seen(list);
            const middle = this.middle(room);
            const below = target.rect[1] + target.rect[3] / 2 > middle.y;
            const step = Math.min(room.visible[3] * 0.4, 220);
            await this.drag({ x: room.visible[0] + 14, y: middle.y + (below ? step / 2 : -step / 2) },
                            { x: 0, y: below ? -step : step });
        }
        await this.tap(name);
    }

    /// The text of every journal in the browser's storage, read past the program.
    journals() {
        return this.page.evaluate(() => new Promise((resolve, reject) => {
            const asked = indexedDB.open("lanternleaf");
            asked.onerror = () => reject(asked.error);
            asked.onsuccess = () => {
                const store = asked.result.transaction("files").objectStore("files");
                const keys = store.getAllKeys();
                const values = store.getAll();
                values.onsuccess = () => {
                    asked.result.close();
                    const texts = {};
                    keys.result.forEach((key, i) => {
                        if (key.endsWith(".build.jsonl")) {
                            texts[key] = new TextDecoder().decode(values.result[i].bytes);
                        }
                    });
                    resolve(texts);
                };
            };
        }));
    }

    async events() {
        const texts = Object.values(await this.journals());
        need(texts.length === 1, `expected one build in storage, found ${texts.length}`);
        need(texts[0].endsWith("\n"), "the journal ends in the middle of a line");
        return texts[0].trimEnd().split("\n").map((line) => JSON.parse(line));
    }

    async shot(what) {
        await this.page.screenshot({ path: join(this.shots, `${this.name}-${what}.png`) });
    }
}
