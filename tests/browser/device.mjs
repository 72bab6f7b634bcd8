// What the browser's database holds, read and written behind the page's back.

/** Every key of a store with its text. */
export const held = (page, store) =>
  page.evaluate(async (store) => {
    const answer = (request) => new Promise((done, fail) => {
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
    const database = await answer(indexedDB.open('putback'));
    const transaction = database.transaction(store);
    const keys = await answer(transaction.objectStore(store).getAllKeys());
    const texts = await answer(transaction.objectStore(store).getAll());
    database.close();
    return keys.map((key, at) => [key, texts[at]]);
  }, store);

/** The record of the open procedure. */
export async function openRecord(page) {
  const current = new Map(await held(page, 'meta')).get('current');
  return new Map(await held(page, 'docs')).get(current);
}

/** Makes the database of an earlier version of the page: its number, its stores, and what they hold. */
export const makeOld = (page, version, stores) =>
  page.evaluate(async ([version, stores]) => {
    const database = await new Promise((done, fail) => {
      const request = indexedDB.open('putback', version);
      request.onupgradeneeded = () => {
        for (const store of Object.keys(stores)) request.result.createObjectStore(store);
      };
      request.onsuccess = () => done(request.result);
      request.onerror = () => fail(request.error);
    });
    const transaction = database.transaction(Object.keys(stores), 'readwrite');
    for (const [store, texts] of Object.entries(stores)) {
      for (const [key, text] of Object.entries(texts)) transaction.objectStore(store).put(text, key);
    }
    await new Promise((done) => { transaction.oncomplete = done; });
    database.close();
  }, [version, stores]);
