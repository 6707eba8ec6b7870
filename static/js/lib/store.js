/** What the phone keeps: a key-value store in IndexedDB, which survives a killed browser where localStorage does not. */

const NAME = "heatside";
const ROOM = "kept";
let opening = null;

function open() {
  opening ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(ROOM);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => { opening = null; reject(request.error); };
  });
  return opening;
}

async function run(mode, act) {
  const database = await open();
  return new Promise((resolve, reject) => {
    const transaction = database.transaction(ROOM, mode);
    const request = act(transaction.objectStore(ROOM));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onerror = () => reject(transaction.error);
    transaction.onabort = () => reject(transaction.error);
  });
}

export const get = (key) => run("readonly", (room) => room.get(key));
export const set = (key, value) => run("readwrite", (room) => room.put(value, key));
export const del = (key) => run("readwrite", (room) => room.delete(key));
