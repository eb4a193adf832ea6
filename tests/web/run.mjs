// Runs the tests beside it against the built site, two at a time; each has its own browser and its own storage.
// What was kept is read from the browser's storage past the program, so the program is not its own judge.
// Usage: node run.mjs NODE_MODULES SITE WORK [NAME...]   (without names: every test)
import { serve, Tablet } from "./browser.mjs";
import { builds } from "./build_test.mjs";
import { devices } from "./device_test.mjs";
import { drawing } from "./draw_test.mjs";
import { storages } from "./storage_test.mjs";

const [modules, site, work, ...only] = process.argv.slice(2);
const kPatience_ms = 200_000; // a test that hangs fails, and the list ends
const tests = { ...builds, ...storages, ...devices, ...drawing };
for (const name of only) {
    if (!tests[name]) {
        console.log(`No test ${name}; there are: ${Object.keys(tests).join(" ")}`);
        process.exit(2);
    }
}
const waiting = Object.entries(tests).filter(([name]) => only.length === 0 || only.includes(name));
let failed = 0;

async function run(name, test) {
    const server = await serve(site);
    const tablets = [];
    const lines = [];
    const table = {
        address: server.address,
        say: (line) => lines.push("    " + line),
        stopServing: () => server.stop(),
        async tablet(size, options = {}) {
            const tablet = new Tablet(modules, work, tablets.length === 0 ? name : `${name}-${tablets.length}`, size, options);
            tablets.push(tablet);
            await tablet.forget();
            await tablet.start();
            return tablet;
        },
    };
    const began = Date.now();
    let late;
    try {
        await Promise.race([test(table), new Promise((_, fail) => {
            late = setTimeout(() => fail(new Error(`not done after ${kPatience_ms / 1000} s`)), kPatience_ms);
        })]);
        lines.unshift(`passed  ${name}  (${((Date.now() - began) / 1000).toFixed(1)} s)`);
    } catch (error) {
        ++failed;
        lines.unshift(`FAILED  ${name}: ${error.stack}`);
        for (const tablet of tablets) {
            lines.push(...tablet.troubles.map((trouble) => "    " + trouble));
            await tablet.shot("failed").catch(() => {});
        }
    }
    clearTimeout(late);
    for (const tablet of tablets) {
        await tablet.stop().catch(() => {});
    }
    await server.stop().catch(() => {});
    console.log(lines.join("\n"));
}

async function worker() {
    while (waiting.length > 0) {
        await run(...waiting.shift());
    }
}

const began = Date.now();
await Promise.all([worker(), worker()]);
console.log(`${failed === 0 ? "All passed" : `${failed} failed`} in ${((Date.now() - began) / 1000).toFixed(0)} s.`);
process.exit(failed === 0 ? 0 : 1);
