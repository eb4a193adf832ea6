// Storage: keeps one folder of the program's in-memory file system in the browser's IndexedDB.
// Writes are noted as they happen and put away in one transaction, so that storage holds all of a move or none
// of it. keep() settles only when the browser says the transaction is complete; 'strict' asks the browser to
// have it on the disk by then. A browser that does not know 'strict' says complete when the operating system
// has it: that outlives the page and the browser, not a power cut at that moment.
// Each transaction counts up one number. A page whose number is not the one in storage has been overtaken by
// another page and keeps nothing more: what it would write is not what the other one has.
'use strict';

class Overtaken extends Error {}

class Library {
    constructor(folder) {
        this.folder = folder;
        this.store = 'files';
        this.counter = 'count'; // no path: those begin with a slash
        this.count = 0;
        this.changed = new Set();
    }

    async connect() {
        this.db = await new Promise((resolve, reject) => {
            const asked = indexedDB.open('lanternleaf', 1);
            asked.onupgradeneeded = () => asked.result.createObjectStore(this.store);
            asked.onsuccess = () => resolve(asked.result);
            asked.onerror = () => reject(asked.error);
            asked.onblocked = () => reject(new Error('the storage is in use'));
        });
        // A browser may shut the connection by itself; the next keep() opens another.
        this.db.onclose = () => { this.db = null; };
    }

    async open(FS) {
        this.FS = FS;
        await this.connect();
        FS.mkdirTree(this.folder);
        await this.load();
        this.watch();
    }

    // Everything that was kept, into memory; a folder sorts before what is in it.
    async load() {
        const [paths, entries] = await new Promise((resolve, reject) => {
            const reading = this.db.transaction(this.store, 'readonly');
            const store = reading.objectStore(this.store);
            const paths = store.getAllKeys();
            const entries = store.getAll();
            reading.oncomplete = () => resolve([paths.result, entries.result]);
            reading.onerror = reading.onabort = () => reject(reading.error);
        });
        paths.forEach((path, i) => {
            if (path === this.counter) {
                this.count = entries[i];
            } else if (entries[i].bytes) {
                this.FS.mkdirTree(path.slice(0, path.lastIndexOf('/')));
                this.FS.writeFile(path, entries[i].bytes);
                this.FS.utime(path, entries[i].time_ms, entries[i].time_ms);
            } else {
                this.FS.mkdirTree(path);
            }
        });
    }

    note(path) {
        if (typeof path === 'string' && (path === this.folder || path.startsWith(this.folder + '/'))) {
            this.changed.add(path);
        }
    }

    noteAllBelow(path) {
        this.note(path);
        const found = this.FS.analyzePath(path);
        if (found.exists && this.FS.isDir(found.object.mode)) {
            this.FS.readdir(path).filter((name) => name !== '.' && name !== '..')
                .forEach((name) => this.noteAllBelow(path + '/' + name));
        }
    }

    // Every way the program can change a file goes through one of these.
    watch() {
        const FS = this.FS;
        const around = (name, before) => {
            const original = FS[name];
            FS[name] = (...given) => {
                before(...given);
                return original.apply(FS, given);
            };
        };
        const pathOf = (node) => typeof node === 'string' ? this.whole(node) : FS.getPath(node);
        around('write', (stream) => this.note(FS.getPath(stream.node)));
        around('ftruncate', (fd) => this.note(FS.getPath(FS.getStream(fd).node)));
        around('truncate', (path) => this.note(pathOf(path)));
        around('mknod', (path) => this.note(this.whole(path)));
        around('unlink', (path) => this.note(this.whole(path)));
        around('rmdir', (path) => this.note(this.whole(path)));
        const rename = FS.rename;
        FS.rename = (from, to) => {
            this.noteAllBelow(this.whole(from));
            rename.call(FS, from, to);
            this.noteAllBelow(this.whole(to));
        };
    }

    whole(path) {
        return path.startsWith('/') ? path : this.FS.cwd().replace(/\/$/, '') + '/' + path;
    }

    get hasChanges() {
        return this.changed.size > 0;
    }

    // Puts away what changed. After a failure nothing of it is in storage, and all of it is still to be kept.
    async keep() {
        const paths = [...this.changed];
        this.changed.clear();
        try {
            if (!this.db) {
                await this.connect();
            }
            await this.putAway(paths);
        } catch (error) {
            paths.forEach((path) => this.changed.add(path));
            throw error;
        }
    }

    putAway(paths) {
        return new Promise((resolve, reject) => {
            let trouble = null;
            const writing = this.db.transaction(this.store, 'readwrite', {durability: 'strict'});
            writing.onabort = () => reject(writing.error || trouble || new Error('the browser took it back'));
            writing.oncomplete = () => {
                ++this.count;
                resolve();
            };
            const store = writing.objectStore(this.store);
            const asked = store.get(this.counter);
            asked.onsuccess = () => {
                try {
                    if (asked.result === undefined && this.count > 0) {
                        this.everything().forEach((path) => this.put(store, path)); // storage was cleared beneath us
                    } else if ((asked.result || 0) !== this.count) {
                        throw new Overtaken('another page went on');
                    }
                    paths.forEach((path) => this.put(store, path));
                    store.put(this.count + 1, this.counter);
                } catch (error) {
                    trouble = error;
                    try {
                        writing.abort();
                    } catch (already) {
                        // the browser was quicker
                    }
                }
            };
        });
    }

    put(store, path) {
        const found = this.FS.analyzePath(path);
        if (!found.exists) {
            store.delete(path);
        } else if (this.FS.isDir(found.object.mode)) {
            store.put({}, path);
        } else {
            store.put({bytes: this.FS.readFile(path), time_ms: this.FS.stat(path).mtime.getTime()}, path);
        }
    }

    everything() {
        const all = new Library(this.folder);
        all.FS = this.FS;
        all.noteAllBelow(this.folder);
        return all.changed;
    }
}
