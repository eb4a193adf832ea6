// Checks our files against the JSON Schemas with a validator that is not ours (ajv, draft 2020-12): the shipped parts,
// the demo cards, the test card, every file given; and that documents with one thing wrong do fail. The same wrong
// documents are refused by the reader in tests/engine/cardfile/wrong_files_test.cpp, which keeps the two in step.
// Usage: node schema_check.mjs NODE_MODULES [FILE...]
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const [modules, ...given] = process.argv.slice(2);
if (!modules) {
    console.error("usage: node schema_check.mjs NODE_MODULES [FILE...]");
    process.exit(2);
}
const require = createRequire(join(resolve(modules), "ajv", "package.json"));
const Ajv2020 = require("ajv/dist/2020").default;

const top = resolve(dirname(fileURLToPath(import.meta.url)), "..", "..");
const read = (path) => JSON.parse(readFileSync(path, "utf8"));

const ajv = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false, allErrors: false });
ajv.addFormat("date-time", /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/);
ajv.addFormat("date", /^\d{4}-\d\d-\d\d$/);
const kinds = new Map(); // "card" -> id of its schema
const schemas = join(top, "assets", "schema");
for (const name of readdirSync(schemas).filter((file) => file.endsWith(".schema.json"))) {
    const schema = read(join(schemas, name));
    ajv.addSchema(schema, schema.$id ?? name);
    const kind = schema.properties?.kind?.const;
    if (kind) {
        kinds.set(kind, schema.$id ?? name);
    }
}

let failures = 0;
const fail = (text) => {
    failures += 1;
    console.error("FAIL " + text);
};
const validator = (kind) => ajv.getSchema(kinds.get(kind));

function check(path) {
    const document = read(path);
    if (!kinds.has(document.kind)) {
        fail(`${path}: no schema for the kind ${JSON.stringify(document.kind)}`);
        return;
    }
    const valid = validator(document.kind);
    if (!valid(document)) {
        fail(`${path}: ${ajv.errorsText(valid.errors)}`);
    }
}

// Puts or takes one value at a JSON pointer of a copy.
function changed(document, { at, put, take }) {
    const copy = structuredClone(document);
    const steps = at.split("/").slice(1).map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));
    const last = steps.pop();
    const parent = steps.reduce((value, step) => value[step], copy);
    if (!take) {
        parent[last] = put;
    } else if (Array.isArray(parent)) {
        parent.splice(Number(last), 1);
    } else {
        delete parent[last];
    }
    return copy;
}

function check_wrong(kind, base, list) {
    const document = read(base);
    let refused = 0;
    for (const wrong of read(list)) {
        const passes = validator(kind)(changed(document, wrong));
        if (passes && !wrong.reader_only) {
            fail(`${list}: ${JSON.stringify(wrong).slice(0, 200)} should not pass the schema`);
        } else if (!passes && wrong.reader_only) {
            fail(`${list}: ${JSON.stringify(wrong).slice(0, 200)} says reader_only, but the schema refuses it`);
        }
        refused += passes ? 0 : 1;
    }
    return refused;
}

const parts = join(top, "assets", "parts.json");
const sample = join(top, "tests", "data", "one-window.card.json");
const cards = join(top, "assets", "cards");
const demos = existsSync(cards)
    ? readdirSync(cards).filter((name) => name.endsWith(".card.json")).map((name) => join(cards, name))
    : [];
const files = [parts, sample, ...demos, ...given];
files.forEach(check);
const refused =
    check_wrong("card", sample, join(top, "tests", "data", "wrong-cards.json")) +
    check_wrong("parts", parts, join(top, "tests", "data", "wrong-parts.json"));

console.log(`${files.length} files checked, ${refused} wrong documents refused, ${failures} failures`);
process.exit(failures === 0 ? 0 : 1);
