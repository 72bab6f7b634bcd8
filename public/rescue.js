// What is kept on this device, to be saved as files without the program: for a device on which it does not start.
//
// Plain JavaScript on purpose, and nothing is written: what the database holds is handed out as it is.

const DATABASE = 'putback';
const PROCEDURES = 'docs';
const ENDING = '.putback.json';

/** The procedures on this device, the last kept first; a record that cannot be read is handed out as it is. */
async function procedures() {
  const database = await opened();
  if (!database) return [];
  try {
    if (!database.objectStoreNames.contains(PROCEDURES)) return [];
    const store = database.transaction(PROCEDURES).objectStore(PROCEDURES);
    const [keys, records] = await Promise.all([answer(store.getAllKeys()), answer(store.getAll())]);
    const found = records.map((record, at) => described(String(keys[at]), String(record)));
    return found.sort((a, b) => b.at - a.at);
  } finally {
    database.close();
  }
}

/** The database as it is; nothing if there is none, and none is made. */
function opened() {
  return new Promise((done, fail) => {
    const request = indexedDB.open(DATABASE);
    request.onupgradeneeded = () => request.transaction.abort();
    request.onsuccess = () => done(request.result);
    request.onerror = () => (request.error?.name === 'AbortError' ? done(undefined) : fail(request.error));
    request.onblocked = () => fail(new Error('another tab of Putback holds it; close the other tabs'));
  });
}

function answer(request) {
  return new Promise((done, fail) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });
}

/** What there is to show of a record, and the text of its file. */
function described(key, record) {
  try {
    const { name, text, at_ms: at, removed_ms: removed } = JSON.parse(record);
    if (typeof text !== 'string') throw new Error('no text');
    const title = titleOf(text);
    const own = name === 'untitled' ? '' : name;
    return { title: title ?? key, name: own || afterTitle(title ?? '') || key, text, at: at ?? 0, inBin: removed !== undefined };
  } catch {
    return { title: `${key} (damaged)`, name: key, text: record, at: 0, inBin: false };
  }
}

/** A name for a file that has none of its own, in letters and figures alone. */
function afterTitle(title) {
  return title.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/g, '').slice(0, 48);
}

function titleOf(text) {
  try {
    const { title } = JSON.parse(text);
    return typeof title === 'string' && title !== '' ? title : undefined;
  } catch {
    return undefined;
  }
}

function save({ name, text }) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  // Nothing judges it here, so its name does not say that it is fit.
  link.download = `${name}.NOT-CHECKED${ENDING}`;
  link.click();
  // Some browsers begin to read only later.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** Shows what is kept in the element, each with a key that saves it as a file. */
export async function showKept(place) {
  const list = element('section', { class: 'rescue', 'aria-labelledby': 'rescue-head' });
  list.append(element('h2', { id: 'rescue-head', class: 'stage' }, 'Kept on this device'));
  place.append(list);
  try {
    const found = await procedures();
    list.append(found.length === 0 ? element('p', {}, 'No procedure is kept on this device.') : rows(found));
  } catch (error) {
    console.error(error);
    list.append(element('p', {}, `What is kept on this device cannot be read now: ${error.message}.`));
  }
}

function rows(found) {
  const list = element('ul', { class: 'shelf' });
  for (const one of found) {
    const row = element('li', {});
    const about = element('span', { class: 'about' });
    about.append(element('strong', {}, one.title), element('span', { class: 'facts' }, facts(one)));
    const key = element('button', { type: 'button', class: 'key', 'aria-label': `Save as a file: ${one.title}` }, 'Save as a file');
    key.addEventListener('click', () => save(one));
    row.append(about, key);
    list.append(row);
  }
  return list;
}

function facts({ name, at, inBin }) {
  const when = at > 0 ? ` · kept ${new Date(at).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}` : '';
  return `${name}${when}${inBin ? ' · in the bin' : ''}`;
}

function element(name, attributes, text) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  if (text !== undefined) made.textContent = text;
  return made;
}
