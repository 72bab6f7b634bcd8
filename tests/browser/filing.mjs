// A file in hand: opened and saved in its place, never written over unread; and shared where that is the way.
// The files are real ones of the browser's own folder, since its dialogues cannot be steered.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { page as folder, repository } from './places.mjs';
import { goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

const FILE = 'gas-union.putback.json';
const OTHER = 'another.putback.json';
const REJECTED = 'another.REJECTED.putback.json';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkFiling(tally, screen) {
  await visited(tally, screen, 'a file in hand', async (place, visit) => {
    await visit.page.addInitScript(pickWhatIsWanted);
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await inItsPlace(place, visit, write);
    await changedMeanwhile(place, visit, write);
    await elsewhere(place, visit, write);
    await sharing(place, visit, write);
  });
}

/** Runs in the page: the dialogues answer with the file that `wanted` names. */
function pickWhatIsWanted() {
  const file = async () => {
    if (!globalThis.wanted) throw new DOMException('closed', 'AbortError');
    return (await navigator.storage.getDirectory()).getFileHandle(globalThis.wanted, { create: true });
  };
  globalThis.showOpenFilePicker = async () => [await file()];
  globalThis.showSaveFilePicker = file;
}

const onDisk = (page, name) =>
  page.evaluate(async (name) => {
    const file = await (await navigator.storage.getDirectory()).getFileHandle(name);
    return (await file.getFile()).text();
  }, name);

const toDisk = (page, name, text) =>
  page.evaluate(async ([name, text]) => {
    const file = await (await navigator.storage.getDirectory()).getFileHandle(name, { create: true });
    const writer = await file.createWritable();
    await writer.write(text);
    await writer.close();
  }, [name, text]);

const want = (page, name) => page.evaluate((name) => { globalThis.wanted = name; }, name);
const press = (page, name) => page.getByRole('button', { name, exact: true }).click();
const words = (text) => JSON.parse(text).steps.map((step) => step.words);
const saved = (page) => page.locator('#filed', { hasText: /^saved \d\d:\d\d:\d\d$/ }).waitFor();
/** Waits until the last step of the file on the disk has these words. */
async function ends(page, name, expected) {
  let last;
  for (let look = 0; look < 100; look += 1) {
    const text = await onDisk(page, name).catch(() => '');
    last = text === '' ? undefined : words(text).at(-1);
    if (last === expected) return;
    await page.waitForTimeout(50);
  }
  assert.equal(last, expected);
}

const asked = (page) => page.getByRole('alert').filter({ hasText: `${FILE} was not saved.` });

async function inItsPlace({ tally }, { page }, write) {
  const text = readFileSync(repository(`tests/suite/accepted/${FILE}`), 'utf8');
  await toDisk(page, FILE, text);
  await tally.step('nothing picked is nothing opened', async () => {
    const n = await write.steps();
    await press(page, 'Open');
    await soonEqual(() => write.steps(), n);
  });
  await tally.step('a file is opened and saved in its place, byte for byte', async () => {
    await want(page, FILE);
    await press(page, 'Open');
    await write.counts(words(text).length);
    await want(page, undefined);
    await press(page, 'Save');
    await saved(page);
    await soonEqual(() => onDisk(page, FILE), text);
  });
  await tally.step('a change is said not to be in a file, until it is saved without a dialogue', async () => {
    await write.append('Sweep the floor.');
    await page.locator('#filed', { hasText: /^not in a file since \d\d:\d\d$/ }).waitFor();
    await press(page, 'Save');
    await ends(page, FILE, 'Sweep the floor.');
    await saved(page);
  });
}

async function changedMeanwhile(place, visit, write) {
  const { page } = visit;
  const theirs = JSON.parse(await onDisk(page, FILE));
  const n = theirs.steps.length;
  theirs.steps.at(-1).words = 'Sweep the floor twice.';
  theirs.title = 'Another title';
  const text = `${JSON.stringify(theirs, null, 2)}\n`;
  await place.tally.step('a file that was changed meanwhile is not written over, and what differs is told', async () => {
    await toDisk(page, FILE, text);
    await write.append('Leave the room tidy.');
    await press(page, 'Save');
    await asked(page).getByText(`1 step changed: ${n}; the title changed`).waitFor();
    await soonEqual(() => onDisk(page, FILE), text);
    await press(page, 'Save');
    await asked(page).waitFor();
    await soonEqual(() => onDisk(page, FILE), text, 'saving once more does not write it over either');
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'write-changed-file');
  await place.tally.step('if it changes once more before somebody says to save over it, that is asked too', async () => {
    await toDisk(page, FILE, text.replace('Sweep the floor twice.', 'Sweep all floors.'));
    await press(page, 'Save over it');
    await page.waitForTimeout(300);
    await asked(page).waitFor();
    await soonEqual(async () => words(await onDisk(page, FILE)).at(-1), 'Sweep all floors.');
  });
  await place.tally.step('it can be opened instead, and saved in its place again', async () => {
    await press(page, 'Open the file instead');
    await write.row(n).getByText('Sweep all floors.').waitFor();
    await asked(page).waitFor({ state: 'detached' });
    await write.append('Leave the room tidy.');
    await press(page, 'Save');
    await ends(page, FILE, 'Leave the room tidy.');
    await soonEqual(async () => words(await onDisk(page, FILE)).at(-2), 'Sweep all floors.');
  });
  await place.tally.step('it is saved over when somebody says so', async () => {
    await toDisk(page, FILE, text);
    await press(page, 'Save');
    await press(page, 'Save over it');
    await ends(page, FILE, 'Leave the room tidy.');
  });
}

async function elsewhere({ tally }, { page }, write) {
  await tally.step('the list of procedures tells too, also after a reload', async () => {
    await page.locator('#kept', { hasText: /^kept/ }).waitFor();
    await soonMatch(() => onShelf(page), /saved as a file today \d\d:\d\d$/);
    await write.untilKept(() => write.append('Lock the door.'));
    await write.untilKept(() => page.getByRole('button', { name: /^Undo: add step/ }).click());
    await page.reload();
    await page.locator('#filed', { hasText: /^not in a file since \d\d:\d\d$/ }).waitFor();
    await soonMatch(() => onShelf(page), /not in a file since today \d\d:\d\d$/);
    await want(page, FILE);
    await press(page, 'Open');
    await page.locator('#filed', { hasText: /^$/ }).waitFor({ state: 'attached' });
  });
  await tally.step('a file that is gone is said to be, and another place is asked for', async () => {
    await page.evaluate(async (name) => (await navigator.storage.getDirectory()).removeEntry(name), FILE);
    await press(page, 'Save');
    await page.getByText(/is not in its place any more; save once more to choose a place/).waitFor();
    await want(page, OTHER);
    await press(page, 'Save');
    await ends(page, OTHER, 'Leave the room tidy.');
  });
  await tally.step('a rejected state does not go into a file whose name does not say so', async () => {
    const before = await onDisk(page, OTHER);
    await want(page, REJECTED);
    await write.remove(6);
    await write.stamped('REJECTED');
    await press(page, 'Save');
    await ends(page, REJECTED, 'Leave the room tidy.');
    await soonEqual(() => onDisk(page, OTHER), before);
    await soonEqual(async () => words(await onDisk(page, REJECTED)).length, words(before).length - 1);
    await write.untilKept(() => write.undo());
  });
  await tally.step('a place that holds something else is asked about', async () => {
    await toDisk(page, FILE, 'a shopping list');
    await page.reload();
    await page.locator('li[data-step]').first().waitFor();
    await want(page, FILE);
    await press(page, 'Save');
    await asked(page).getByText('cannot be read as a procedure').waitFor();
    await soonEqual(() => onDisk(page, FILE), 'a shopping list');
    await press(page, 'Leave it');
    await asked(page).waitFor({ state: 'detached' });
  });
}

/** What the list of procedures says of the open one. */
async function onShelf(page) {
  await goTo(page, 'Procedures');
  const facts = await page.locator('.shelf li', { hasText: 'open now' }).locator('.facts').innerText();
  await goTo(page, 'Write');
  return facts;
}

async function sharing({ tally }, { page }, write) {
  await tally.step('where files are shared by touch, the file is offered to other programs, else downloaded', async () => {
    await page.addInitScript(() => {
      globalThis.showOpenFilePicker = globalThis.showSaveFilePicker = undefined;
      const { matchMedia } = globalThis;
      globalThis.matchMedia = (query) => (query.includes('coarse') ? { matches: true } : matchMedia.call(globalThis, query));
      navigator.canShare = ({ files }) => files.length === 1;
      navigator.share = async ({ files: [file] }) => {
        if (globalThis.sharing === 'refused') throw new DOMException('no', 'NotAllowedError');
        globalThis.shared = { name: file.name, text: await file.text() };
      };
    });
    await page.reload();
    await page.locator('li[data-step]').first().waitFor();
    await press(page, 'Save');
    await saved(page);
    const { name, text } = await page.evaluate(() => globalThis.shared);
    assert.match(name, /\.putback\.json$/);
    assert.equal(words(text).at(-1), 'Leave the room tidy.');
    await page.evaluate(() => { globalThis.sharing = 'refused'; });
    const [download] = await Promise.all([page.waitForEvent('download'), press(page, 'Save')]);
    assert.equal(download.suggestedFilename(), name);
    assert.ok((await write.steps()) > 0);
  });
}
