// The functions of page.h, handed on to the page; linked into the program by --js-library.
mergeInto(LibraryManager.library, {
    page_wake: function(after_s) { Module.page.wake(after_s); },
    page_keep: function() { return Module.page.keep() ? 1 : 0; },
    page_ready: function() { Module.page.ready(); },
    page_stopped: function(sentence) { Module.page.stopped(UTF8ToString(sentence)); },
    page_surroundings: function(values) { HEAPF32.set(Module.page.surroundings(), values >> 2); },
    page_share_file: function(name, bytes, count, mime) {
        return Module.page.shareFile(UTF8ToString(name), HEAPU8.slice(bytes, bytes + count), UTF8ToString(mime)) ? 1 : 0;
    },
    page_hold_file: function(name, bytes, count, mime) {
        Module.page.holdFile(UTF8ToString(name), HEAPU8.slice(bytes, bytes + count), UTF8ToString(mime));
    },
    page_share_held: function(title) { return Module.page.shareHeld(UTF8ToString(title)) ? 1 : 0; },
    page_pick: function(accept) { Module.page.pick(UTF8ToString(accept)); },
    page_keep_screen_on: function(on) { Module.page.keepScreenOn(on !== 0); },
    page_show_keyboard: function(shown, x, y, w, h) { Module.page.showKeyboard(shown !== 0, x, y, w, h); },
    page_tick: function() { Module.page.tick(); },
});
