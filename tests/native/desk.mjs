// The program in a real window on an X server of its own, and a hand on the mouse that taps by name: the program tells
// where its targets are, xdotool moves and clicks. Has the faces of tests/web's Tablet that maker.mjs asks for.
import { spawn, execFile } from "node:child_process";
import { mkdir, readFile, readdir, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { need, sleep } from "../web/browser.mjs";

const run = promisify(execFile);

export class Desk {
    constructor(program, work, name, size) {
        this.program = program;
        this.folder = join(work, name);
        this.library = join(this.folder, "library");
        this.targetsFile = join(this.folder, "targets.json");
        this.shots = join(work, "shots");
        this.name = name;
        this.size = size;
        this.troubles = [];
    }

    /// A library with nothing in it but the wish that nothing moves by itself.
    async forget() {
        await rm(this.folder, { recursive: true, force: true });
        await mkdir(this.library, { recursive: true });
        await mkdir(this.shots, { recursive: true });
        await writeFile(join(this.library, "settings.txt"), "reduced_motion yes\n");
    }

    async start() {
        await rm(this.targetsFile, { force: true });
        const size = `${this.size.width}x${this.size.height}`;
        this.process = spawn(this.program, ["--window", size, "--library", this.library, "--targets", this.targetsFile],
                             { stdio: ["ignore", "ignore", "pipe"] });
        this.process.stderr.on("data", (text) => this.troubles.push(String(text)));
        this.ended = new Promise((done) => this.process.on("exit", (code, signal) => done({ code, signal })));
        const windows = await run("xdotool", ["search", "--sync", "--pid", String(this.process.pid)]);
        this.window = windows.stdout.trim().split("\n").at(-1);
        for (let i = 0; i < 200 && !(await this.told().catch(() => null)); ++i) {
            await sleep(50);
        }
        need(await this.told(), "the window shows nothing");
    }

    /// Ends it at once, as a flat battery does.
    async kill() {
        this.process.kill("SIGKILL");
        need((await this.ended).signal === "SIGKILL", "the program had ended before");
    }

    async stop() {
        this.process.kill("SIGTERM");
        await this.ended;
    }

    async told() {
        return JSON.parse(await readFile(this.targetsFile, "utf8"));
    }

    async targets() {
        return (await this.told()).targets;
    }

    async find(name) {
        return (await this.targets()).find((target) => target.name === name);
    }

    /// Nothing more is drawn: what was done has been taken in.
    async settle() {
        let last = -1;
        for (let same = 0; same < 3;) {
            await sleep(40);
            const { frame } = await this.told();
            same = frame === last ? same + 1 : 0;
            last = frame;
        }
    }

    async seen(name) {
        for (let i = 0; i < 150; ++i) {
            const before = await this.find(name);
            await sleep(30);
            const now = await this.find(name);
            if (before && now && now.rect.every((value, k) => Math.abs(value - before.rect[k]) < 0.5)) {
                return now;
            }
        }
        throw new Error(`no ${name} at rest on ${this.name}; there are: ` +
                        (await this.targets()).map((one) => one.name).join(" "));
    }

    middle(target) {
        const [x, y, w, h] = target.visible;
        return { x: x + w / 2, y: y + h / 2 };
    }

    async mouse(...what) {
        await run("xdotool", what.map(String));
    }

    to(at) {
        return ["mousemove", "--window", this.window, Math.round(at.x), Math.round(at.y)];
    }

    async tap(name) {
        const target = await this.seen(name);
        need(target.enabled, `${name} is not enabled on ${this.name}`);
        need(target.reachable, `${name} cannot be reached on ${this.name}`);
        await this.mouse(...this.to(this.middle(target)), "click", 1);
        await this.settle();
    }

    async hold(name, ms) {
        await this.mouse(...this.to(this.middle(await this.seen(name))), "mousedown", 1, "sleep", ms / 1000, "mouseup", 1);
        await this.settle();
    }

    /// Slow, and at rest before the button is let go, so that nothing is flung.
    async drag(from, by) {
        const way = [...this.to(from), "mousedown", 1];
        for (let i = 1; i <= 8; ++i) {
            way.push(...this.to({ x: from.x + by.x * i / 8, y: from.y + by.y * i / 8 }), "sleep", 0.015);
        }
        await this.mouse(...way, "sleep", 0.15, "mouseup", 1);
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

    /// The events of the one build in the library, read past the program.
    async events() {
        const folder = join(this.library, "builds");
        const files = (await readdir(folder)).filter((file) => file.endsWith(".build.jsonl"));
        need(files.length === 1, `expected one build in the library, found ${files.length}`);
        const text = await readFile(join(folder, files[0]), "utf8");
        need(text.endsWith("\n"), "the journal ends in the middle of a line");
        return text.trimEnd().split("\n").map((line) => JSON.parse(line));
    }

    /// A picture of the whole X screen, where ImageMagick is there to take it.
    async shot(what) {
        await run("import", ["-window", "root", join(this.shots, `${this.name}-${what}.png`)]).catch(() => {});
    }
}
