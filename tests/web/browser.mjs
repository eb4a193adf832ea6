// A browser on the built site, and fingers that tap by name: the program tells where its targets are, the touches
// are the browser's own. Used by the tests beside it.
import { createServer } from "node:http";
import { readFile, readdir, rm, mkdir } from "node:fs/promises";
import { createRequire } from "node:module";
import { extname, join, resolve } from "node:path";

const kTypes = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".svg": "image/svg+xml",
                 ".png": "image/png", ".wasm": "application/wasm", ".data": "application/octet-stream",
                 ".webmanifest": "application/manifest+json" };

/// Serves a folder on a free port of this machine.
export async function serve(folder) {
    const server = createServer(async (request, response) => {
        const path = new URL(request.url, "http://here").pathname;
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
    return { address: `http://127.0.0.1:${server.address().port}/`,
             stop: () => new Promise((done) => { server.closeAllConnections(); server.close(done); }) };
}

export function need(condition, what) {
    if (!condition) {
        throw new Error(what);
    }
}

export const sleep = (ms) => new Promise((done) => setTimeout(done, ms));

/// Runs in the page: waiting is done there, a drawing at a time, not across the wire.
function installWatch() {
    const drawing = () => new Promise((done) => requestAnimationFrame(() => done()));
    let cancelled = 0;
    addEventListener("touchcancel", () => { ++cancelled; }, { capture: true });
    window.watch = {
        targets: () => JSON.parse(Module.ccall("lanternleaf_targets", "string", [], [])),
        find: (name) => watch.targets().find((target) => target.name === name),
        cancelled: () => cancelled,
        /// The program has taken in what was just done, has kept what it wrote and has drawn again.
        async settle() {
            await drawing();
            await drawing();
            while (Module.page.keeping) {
                await drawing();
            }
            await drawing();
        },
        /// The target once it is there and has come to rest: a list that still rolls is stopped by a touch, not
        /// tapped. Null when that does not happen in time.
        async rest(name, patience_ms) {
            const until = performance.now() + patience_ms;
            let last = null;
            while (performance.now() < until) {
                const now = Module.page.keeping ? null : watch.find(name);
                if (now && last && now.rect.every((value, k) => Math.abs(value - last.rect[k]) < 0.5)) {
                    return now;
                }
                last = now;
                await drawing();
                await drawing();
            }
            return null;
        },
        async still(ms) {
            let frames = Module._lanternleaf_frames();
            let since = performance.now();
            while (performance.now() < since + ms) {
                await new Promise((done) => setTimeout(done, 50));
                if (Module._lanternleaf_frames() !== frames) {
                    frames = Module._lanternleaf_frames();
                    since = performance.now();
                }
            }
        },
    };
}

/// A tablet: a browser with storage of its own that outlives it, at one size, touched by fingers.
export class Tablet {
    constructor(modules, work, name, size, options = {}) {
        const require = createRequire(join(resolve(modules), "playwright-core", "package.json"));
        this.chromium = require("playwright-core").chromium;
        this.store = join(work, "profiles", name);
        this.shots = join(work, "shots");
        this.name = name;
        this.size = size;
        this.options = options; // scale, stillness
        this.troubles = [];
    }

    async forget() {
        await rm(this.store, { recursive: true, force: true });
        await mkdir(this.shots, { recursive: true });
    }

    async start() {
        this.context = await this.chromium.launchPersistentContext(this.store, {
            executablePath: "/usr/bin/chromium", headless: true, hasTouch: true, viewport: this.size,
            deviceScaleFactor: this.options.scale ?? 1, acceptDownloads: true,
            reducedMotion: this.options.stillness ? "reduce" : "no-preference",
            args: ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader", "--disable-quic",
                   "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
        await this.context.addInitScript(installWatch);
        await this.take(this.context.pages()[0] ?? await this.context.newPage());
    }

    /// Fingers and eyes go to this page.
    async take(page) {
        this.page = page;
        page.on("pageerror", (error) => this.troubles.push("page: " + error.message));
        page.on("console", (line) => {
            if (line.type() === "error") {
                this.troubles.push("console: " + line.text());
            }
        });
        this.cdp = await this.context.newCDPSession(page);
    }

    async open(address) {
        await this.page.goto(address);
        await this.ready();
    }

    async ready() {
        await this.page.waitForFunction(() => window.Module && Module.firstFrame_ms > 0, null, { timeout: 60000 });
    }

    async reload() {
        await this.page.reload();
        await this.ready();
    }

    async stop() {
        await this.context.close();
    }

    /// Ends the browser at once, as a flat battery does: no page hears of it.
    async kill() {
        const children = await readFile(`/proc/${process.pid}/task/${process.pid}/children`, "utf8");
        let killed = 0;
        for (const child of children.trim().split(/\s+/)) {
            const line = await readFile(`/proc/${child}/cmdline`, "utf8").catch(() => "");
            if (line.split("\0").some((word) => word.endsWith("=" + this.store))) {
                process.kill(Number(child), "SIGKILL");
                ++killed;
            }
        }
        need(killed === 1, `expected one browser to end, found ${killed}`);
        await this.context.close().catch(() => {});
        for (const file of await readdir(this.store)) {
            if (file.startsWith("Singleton")) { // the dead browser's claim to its folder
                await rm(join(this.store, file), { force: true });
            }
        }
    }

    frames() {
        return this.page.evaluate(() => Module._lanternleaf_frames());
    }

    targets() {
        return this.page.evaluate(() => watch.targets());
    }

    find(name) {
        return this.page.evaluate((name) => watch.find(name), name);
    }

    settle() {
        return this.page.evaluate(() => watch.settle());
    }

    async seen(name) {
        const target = await this.page.evaluate((name) => watch.rest(name, 8000), name);
        if (!target) {
            throw new Error(`no ${name} at rest on ${this.name}; there are: ` +
                            (await this.targets()).map((one) => one.name).join(" "));
        }
        return target;
    }

    middle(target) {
        const [x, y, w, h] = target.visible;
        return { x: x + w / 2, y: y + h / 2 };
    }

    async touch(type, points) {
        await this.cdp.send("Input.dispatchTouchEvent", { type, touchPoints: points });
    }

    /// A brief touch. A browser on a busy machine takes fingers away that the page is slow to answer; then nothing was
    /// touched, and a person would touch again.
    async press(at) {
        const cancelled = () => this.page.evaluate(() => watch.cancelled());
        for (let i = 0; i < 4; ++i) {
            const before = await cancelled();
            // Sent together: a slow machine must not make a long press of it.
            await Promise.all([this.touch("touchStart", [at]), this.touch("touchEnd", [])]);
            if (await cancelled() === before) {
                return;
            }
        }
        throw new Error(`the browser took four fingers away on ${this.name}`);
    }

    async tap(name) {
        const target = await this.seen(name);
        need(target.enabled, `${name} is not enabled on ${this.name}`);
        need(target.reachable, `${name} cannot be reached on ${this.name}`);
        await this.press(this.middle(target));
        await this.settle();
    }

    async hold(name, ms) {
        const at = this.middle(await this.seen(name));
        await this.touch("touchStart", [at]);
        await sleep(ms);
        await this.touch("touchEnd", []);
        await this.settle();
    }

    /// A slow drag, so that nothing is flung.
    async drag(from, by) {
        await this.touch("touchStart", [from]);
        for (let i = 1; i <= 8; ++i) {
            await this.touch("touchMove", [{ x: from.x + by.x * i / 8, y: from.y + by.y * i / 8 }]);
            await sleep(12);
        }
        await sleep(120); // the finger rests before it lifts
        await this.touch("touchEnd", []);
        await this.settle();
    }

    /// Two fingers round a point, from one distance to another.
    async pinch(middle, from, to) {
        const fingers = (apart) => [{ x: middle.x - apart / 2, y: middle.y, id: 1 },
                                    { x: middle.x + apart / 2, y: middle.y, id: 2 }];
        await this.touch("touchStart", fingers(from));
        for (let i = 1; i <= 10; ++i) {
            await this.touch("touchMove", fingers(from + (to - from) * i / 10));
            await sleep(12);
        }
        await sleep(120);
        await this.touch("touchEnd", []);
        await this.settle();
    }

    /// Scrolls a list by dragging until the target can be reached, then taps it.
    async reach(list, name) {
        for (let i = 0; i < 25; ++i) {
            const target = await this.seen(name);
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

    /// What lies in the browser's storage under names with this ending, read past the program.
    kept(ending) {
        return this.page.evaluate((ending) => new Promise((resolve, reject) => {
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
                        if (key.endsWith(ending)) {
                            texts[key] = new TextDecoder().decode(values.result[i].bytes);
                        }
                    });
                    resolve(texts);
                };
            };
        }), ending);
    }

    /// The events of the one build in storage.
    async events() {
        const texts = Object.values(await this.kept(".build.jsonl"));
        need(texts.length === 1, `expected one build in storage, found ${texts.length}`);
        need(texts[0].endsWith("\n"), "the journal ends in the middle of a line");
        return texts[0].trimEnd().split("\n").map((line) => JSON.parse(line));
    }

    async shot(what) {
        await this.page.screenshot({ path: join(this.shots, `${this.name}-${what}.png`) });
    }
}
