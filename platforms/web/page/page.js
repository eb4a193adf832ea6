// The page round the program: its storage, the files it hands over and takes in, the screen kept on, the
// on-screen keyboard, insets. See page.h for what the program asks.
'use strict';

const at = (id) => document.getElementById(id);
const canvas = at('canvas');
const storage = new Library('/library');

function say(words, again, label = 'Try again') {
    at('words').textContent = words;
    at('again').textContent = label;
    at('again').hidden = !again;
    at('again').onclick = again || null;
    at('waiting').hidden = false;
}

// Turns ---------------------------------------------------------------------------------------------------
let frameAsked = 0;
let timer = 0;

function turn() {
    cancelAnimationFrame(frameAsked);
    frameAsked = 0;
    Module._lanternleaf_turn();
}

function wake(after_s) {
    clearTimeout(timer);
    if (after_s > 0) {
        timer = setTimeout(() => wake(0), Math.min(after_s * 1000, 0x7FFFFFFF));
    } else if (!frameAsked) {
        frameAsked = requestAnimationFrame(turn);
    }
}

// Storage -------------------------------------------------------------------------------------------------
let askedToStay = false;

function sayNotKept(error, trying) {
    const again = () => {
        at('waiting').hidden = true;
        trying();
    };
    if (error instanceof Overtaken) {
        say('Lanternleaf went on in another tab or window, so it cannot go on here: what is kept there is whole.',
            () => location.reload(), 'Open what is kept');
    } else if (error.name === 'QuotaExceededError') {
        say('This device has no room left, so your last move is not kept yet: free some space, then try again.', again);
    } else {
        say(`This browser did not keep your last move (${error.message}); all before it is kept, so try again.`, again);
    }
}

function keep() {
    if (!storage.hasChanges) {
        return false;
    }
    Module.page.keeping = true;
    const trying = async () => {
        const started = performance.now();
        try {
            await storage.keep();
        } catch (error) {
            sayNotKept(error, trying);
            return;
        }
        Module.page.keptIn_ms.push(performance.now() - started);
        Module.page.keeping = false;
        Module._lanternleaf_kept();
        // Once there is something to lose, the browser is asked not to clear it when space runs short.
        if (!askedToStay && navigator.storage && navigator.storage.persist) {
            askedToStay = true;
            navigator.storage.persist();
        }
    };
    trying();
    return true;
}

// Two pages with one storage would each miss what the other writes, so the second waits for the first.
function aloneWithStorage() {
    if (!navigator.locks) {
        return Promise.resolve();
    }
    return new Promise((ready) => {
        const late = setTimeout(() => say('Lanternleaf is open in another tab or window. Close it there and it goes on here.'), 400);
        navigator.locks.request('lanternleaf-library', () => {
            clearTimeout(late);
            ready();
            return new Promise(() => {}); // held until the page goes
        });
    });
}

// The screen ----------------------------------------------------------------------------------------------
let wantsScreen = false;
let screenLock = null;
let askingForScreen = false;

async function keepScreenOn(on) {
    wantsScreen = on;
    if (!navigator.wakeLock || askingForScreen) {
        return;
    }
    if (on && !screenLock && document.visibilityState === 'visible') {
        askingForScreen = true;
        try {
            screenLock = await navigator.wakeLock.request('screen');
            screenLock.addEventListener('release', () => { screenLock = null; });
        } catch (refused) {
            screenLock = null; // a low battery, for one: the maker then wakes the screen by hand
        }
        askingForScreen = false;
    }
    if (screenLock && !wantsScreen) {
        screenLock.release();
    }
}
// The system takes the lock away when the page is left; it is asked for again on return.
document.addEventListener('visibilitychange', () => keepScreenOn(wantsScreen));

const wantsLessMotion = matchMedia('(prefers-reduced-motion: reduce)');
const wantsDark = matchMedia('(prefers-color-scheme: dark)');
const byFinger = matchMedia('(pointer: coarse)');

// Browsers do not tell how large a point is. Phones have about 160 points an inch and tablets about 132 (makers'
// figures, from memory); at a desk 96, which is what the CSS standard calls an inch.
function pointsPerMm() {
    const short = Math.min(screen.width, screen.height);
    return (!byFinger.matches ? 96 : short < 600 ? 160 : 132) / 25.4;
}

let surroundingsNow = null;

function surroundings() {
    if (!surroundingsNow) {
        const style = getComputedStyle(at('insets'));
        const side = (name) => parseFloat(style['padding' + name]) || 0;
        surroundingsNow = [side('Left'), side('Top'), side('Right'), side('Bottom'), pointsPerMm(),
                           wantsLessMotion.matches ? 1 : 0, wantsDark.matches ? 1 : 0];
    }
    return surroundingsNow;
}

function changed() {
    surroundingsNow = null;
    if (Module.started) {
        Module._lanternleaf_disturb();
    }
}
for (const query of [wantsLessMotion, wantsDark, byFinger]) {
    query.addEventListener('change', changed);
}

// A phone on its side: bars and buttons would leave nothing between them. (A keyboard makes a screen low, not wide.)
function onItsSide() {
    return byFinger.matches && Math.min(screen.width, screen.height) < 600 && innerWidth > 600 && innerHeight < 480;
}

// An on-screen keyboard shortens what can be seen without the window changing its size.
function fit() {
    at('upright').hidden = !onItsSide();
    const seen = window.visualViewport;
    if (seen && Math.abs(seen.scale - 1) < 0.01) {
        document.documentElement.style.setProperty('--page-height', seen.height + 'px');
    }
    changed();
}
addEventListener('resize', fit);
if (window.visualViewport) {
    let height = visualViewport.height;
    visualViewport.addEventListener('resize', () => {
        if (visualViewport.height !== height) {
            height = visualViewport.height;
            fit();
            dispatchEvent(new Event('resize')); // the program measures the canvas when the window is resized
        }
    });
}

// Touch ---------------------------------------------------------------------------------------------------
canvas.addEventListener('touchcancel', (event) => {
    event.stopImmediatePropagation();
    for (const touch of event.changedTouches) {
        Module._lanternleaf_touch_lost(touch.identifier);
    }
}, {capture: true});
// A keyboard, a picker and a share sheet are given only while the browser is still telling of the finger that
// asked for them, so what a lifted finger means is carried out here and now, not with the next drawing.
addEventListener('touchend', () => {
    if (Module.started) {
        turn();
    }
});
canvas.addEventListener('contextmenu', (event) => event.preventDefault());

function tick() {
    if (navigator.vibrate) {
        navigator.vibrate(12);
    }
}

// Reload, find, zoom, a new tab: the browser's own keys stay its own; the program would swallow them all.
addEventListener('keydown', (event) => {
    const own = (event.ctrlKey || event.metaKey) && !['z', 'Z', 'y', 'Y'].includes(event.key);
    if (own || /^F[0-9]+$/.test(event.key)) {
        event.stopImmediatePropagation();
    }
}, {capture: true});

// The on-screen keyboard ------------------------------------------------------------------------------------
// It types into a field of the page; what changes there goes on to the program. The field is never empty, so
// that a backspace always changes something.
const typing = at('typing');
const kFiller = ' '.repeat(32);
let typed = kFiller;

function showKeyboard(shown, x, y, w, h) {
    if (shown) {
        typing.style.left = x + 'px';
        typing.style.top = y + 'px';
        typing.style.width = w + 'px';
        typing.style.height = h + 'px';
        typing.value = typed = kFiller;
        typing.focus({preventScroll: true});
        typing.setSelectionRange(kFiller.length, kFiller.length);
    } else if (document.activeElement === typing) {
        typing.blur();
        canvas.focus({preventScroll: true});
    }
}

typing.addEventListener('input', () => {
    const now = typing.value;
    let same = 0;
    while (same < typed.length && same < now.length && typed[same] === now[same]) {
        ++same;
    }
    for (const _ of [...typed.slice(same)]) {
        Module._lanternleaf_backspace();
    }
    if (same < now.length) {
        Module.ccall('lanternleaf_type', null, ['string'], [now.slice(same)]);
    }
    typed = now;
    if (now.length < 4) {
        typing.value = typed = kFiller;
    }
});
// The program listens at the window; letters would arrive twice.
for (const kind of ['keydown', 'keypress', 'keyup']) {
    typing.addEventListener(kind, (event) => {
        if (!['Enter', 'Escape', 'Tab'].includes(event.key)) {
            event.stopPropagation();
        }
    });
}

// Files -----------------------------------------------------------------------------------------------------
// True when the device's share sheet takes the file; else it goes to the downloads.
function shareFile(name, bytes, mime) {
    return share([new File([bytes], name, {type: mime})], name);
}

let held = []; // files that are to be given together

function holdFile(name, bytes, mime) {
    held.push(new File([bytes], name, {type: mime}));
}

function shareHeld(title) {
    const files = held;
    held = [];
    return share(files, title);
}

function share(files, title) {
    if (byFinger.matches && navigator.canShare && navigator.canShare({files})) {
        navigator.share({files, title}).catch((refused) => {
            if (refused.name !== 'AbortError') { // that one is the person closing the sheet
                files.forEach(download);
            }
        });
        return true;
    }
    files.forEach(download);
    return false;
}

function download(file) {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(file);
    link.download = file.name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
}

const kLongest_px = 2048; // of a photo that is kept: enough to read a card by, and a hundred of them still fit

// A photo as it is kept: no larger than it need be, upright, and of a kind that every device reads.
async function asKept(file) {
    const plain = ['image/png', 'image/jpeg'].includes(file.type);
    if (!file.type.startsWith('image/') || (plain && file.size < 400000)) {
        return file;
    }
    try {
        const whole = await createImageBitmap(file, {imageOrientation: 'from-image'});
        const scale = Math.min(1, kLongest_px / Math.max(whole.width, whole.height));
        const paper = document.createElement('canvas');
        paper.width = Math.max(1, Math.round(whole.width * scale));
        paper.height = Math.max(1, Math.round(whole.height * scale));
        const pen = paper.getContext('2d');
        pen.fillStyle = '#FFFFFF'; // what is clear in a drawing is paper, not night
        pen.fillRect(0, 0, paper.width, paper.height);
        pen.drawImage(whole, 0, 0, paper.width, paper.height);
        whole.close();
        const jpeg = await new Promise((done) => paper.toBlob(done, 'image/jpeg', 0.85));
        return jpeg ? new File([jpeg], file.name.replace(/\.[^.]*$/, '') + '.jpg', {type: jpeg.type}) : file;
    } catch (unreadable) {
        return file; // the program says what it does not read
    }
}

// What was chosen together belongs together: a card and its pictures, which are then taken as they are. A file
// of any other kind is refused by the program with a sentence of its own.
async function bringIn(files) {
    const withCard = [...files].some((file) => file.name.toLowerCase().endsWith('.json'));
    for (const given of files) {
        const file = withCard ? given : await asKept(given);
        if (file.size > 32 * 1024 * 1024) {
            continue; // larger than any file the program reads
        }
        const bytes = new Uint8Array(await file.arrayBuffer());
        while (Module.page.keeping) {
            await new Promise((later) => setTimeout(later, 20));
        }
        const at = Module._malloc(bytes.length || 1);
        Module.HEAPU8.set(bytes, at);
        Module.ccall('lanternleaf_bring_in', null, ['string', 'number', 'number'], [file.name, at, bytes.length]);
        Module._free(at);
    }
    Module.ccall('lanternleaf_brought_in', null, [], []);
}

function pick(accept) {
    const picker = at('picker');
    picker.accept = accept;
    picker.multiple = accept.includes('.json'); // a card with its pictures
    picker.value = '';
    picker.onchange = () => bringIn(picker.files);
    picker.click();
}
addEventListener('dragover', (event) => event.preventDefault());
addEventListener('drop', (event) => {
    event.preventDefault();
    bringIn(event.dataTransfer.files);
});
// The installed app is offered for card files by the systems that do such a thing.
if ('launchQueue' in window) {
    launchQueue.setConsumer(async (launch) => {
        await Module.ready;
        bringIn(await Promise.all(launch.files.map((handle) => handle.getFile())));
    });
}

// Start -------------------------------------------------------------------------------------------------------
let tellReady;

var Module = {
    canvas,
    ready: new Promise((ready) => { tellReady = ready; }),
    noInitialRun: true,
    started: false,
    page: {keeping: false, keptIn_ms: [], screenIsKeptOn: () => screenLock !== null, wake, keep, tick, surroundings, shareFile, holdFile, shareHeld, pick, keepScreenOn, showKeyboard,
           ready: () => {
               at('waiting').hidden = true;
               Module.firstFrame_ms = performance.now();
               tellReady();
               canvas.focus({preventScroll: true});
               // Only now, so that it takes nothing from the first frame's way here.
               if ('serviceWorker' in navigator) {
                   navigator.serviceWorker.register('service-worker.js');
               }
           },
           stopped: (sentence) => say(sentence, () => location.reload())},
    onAbort: () => stopped(),
    async onRuntimeInitialized() {
        try {
            await aloneWithStorage();
            await storage.open(Module.FS);
        } catch (error) {
            say('This browser gives no storage to this page, so nothing could be kept (' + error.message +
                '). Leave private browsing or allow storage, then try again.', () => location.reload());
            return;
        }
        Module.started = true;
        Module.callMain([]);
    },
};

function stopped() {
    say('Lanternleaf has stopped. Every move you confirmed is kept; open it again to go on.', () => location.reload());
}
addEventListener('error', (event) => { if (event.error instanceof WebAssembly.RuntimeError) { stopped(); } });
// A graphics chip that was taken away comes back with the page; the moves are in storage.
canvas.addEventListener('webglcontextlost', (event) => { event.preventDefault(); stopped(); });

fit();
