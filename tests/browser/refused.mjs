// A device that keeps nothing: no room, or a browser that refuses. The page says so at once, gives a file, goes on
// trying, and says when it is kept again.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { openRecord } from './device.mjs';
import { out } from './places.mjs';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

const REFUSED = /^Not kept on this device since \d\d:\d\d:\d\d: /;
const AGAIN = /^Kept again at \d\d:\d\d:\d\d/;

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkRefused(tally, screen) {
  await visited(tally, screen, 'nothing can be kept', async (place, visit) => {
    await visit.page.addInitScript(refuseOnDemand);
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.untilKept(() => write.setWords(2, 'Kept before the trouble.'));
    await noRoom(place, visit, write);
    await refusal(place, visit, write);
    await noDatabase(place, visit);
  });
}

/** Runs in the page: while `refuses` names a way, the database refuses to be written in that way. */
function refuseOnDemand() {
  const { transaction } = IDBDatabase.prototype;
  IDBDatabase.prototype.transaction = function refusing(stores, mode, options) {
    if (mode === 'readwrite' && globalThis.refuses === 'at once') throw new DOMException('not here', 'SecurityError');
    return transaction.call(this, stores, mode, options);
  };
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function refusing(value, key) {
    // The second write of each transaction fails: what was asked for before it must not be kept either.
    if (globalThis.refuses === 'half way' && this.name === 'undo') throw new DOMException('no', 'DataCloneError');
    const request = put.call(this, value, key);
    // A full device takes what is written and gives up when all of it is to be made sure.
    if (globalThis.refuses === 'no room') {
      const { transaction } = this;
      const error = new DOMException('full', 'QuotaExceededError');
      Object.defineProperty(transaction, 'error', { value: error, configurable: true });
      transaction.commit = () => transaction.abort();
    }
    return request;
  };
}

const keptLine = (page) => page.locator('#kept').innerText();

/** Watches the line for the word until it is asked. */
async function neverSaysKept(page, act) {
  await page.evaluate(() => {
    const line = document.getElementById('kept');
    globalThis.saidKept = [];
    globalThis.watching = new MutationObserver(() => {
      if (/^(kept|keeping)/.test(line.innerText.trim())) globalThis.saidKept.push(line.innerText);
    });
    globalThis.watching.observe(line, { childList: true, characterData: true, subtree: true });
  });
  await act();
  const said = await page.evaluate(() => { globalThis.watching.disconnect(); return globalThis.saidKept; });
  assert.deepEqual(said, []);
}

async function noRoom(place, visit, write) {
  const { page } = visit;
  const banner = page.getByRole('alert').filter({ hasText: REFUSED });
  await place.tally.step('with no room left it says so where "kept" stood, and why', async () => {
    await page.evaluate(() => { globalThis.refuses = 'no room'; });
    await write.setWords(3, 'Written when there was no room.');
    await banner.getByText('no room left').waitFor();
    await soonMatch(() => keptLine(page), /^not kept since \d\d:\d\d:\d\d$/);
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'write-no-room');
  await place.tally.step('while somebody goes on typing it never says "kept"', async () => {
    await neverSaysKept(page, async () => {
      await write.setWords(4, 'Still written.');
      await page.waitForTimeout(3_600);
    });
    assert.ok(!(await openRecord(page)).includes('Written when there was no room.'));
  });
  await place.tally.step('the file that it offers holds the procedure as it now is', async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    const path = out(`${place.screen.name}-refused.putback.json`);
    await download.saveAs(path);
    const words = JSON.parse(readFileSync(path, 'utf8')).steps.map((step) => step.words);
    assert.deepEqual(words.slice(1, 4), ['Kept before the trouble.', 'Written when there was no room.', 'Still written.']);
  });
  await place.tally.step('other screens say it too', async () => {
    for (const screen of ['Appliance', 'Kit', 'Procedures']) {
      await goTo(page, screen);
      await banner.waitFor();
    }
    await new Procedures(page).titles();
  });
  await look(place, visit, 'procedures-no-room');
  await place.tally.step('with room again it is kept without a key, and it says so', async () => {
    await goTo(page, 'Write');
    await page.evaluate(() => { globalThis.refuses = undefined; });
    await page.getByRole('status').filter({ hasText: AGAIN }).waitFor();
    await banner.waitFor({ state: 'detached' });
    await soonMatch(() => keptLine(page), /^kept \d\d:\d\d:\d\d$/);
    const kept = await openRecord(page);
    assert.ok(kept.includes('Written when there was no room.') && kept.includes('Still written.'));
  });
  await look(place, visit, 'write-kept-again');
  await page.getByRole('button', { name: 'Close' }).click();
}

async function refusal(place, visit, write) {
  const { page } = visit;
  const banner = page.getByRole('alert').filter({ hasText: REFUSED });
  await place.tally.step('a browser that refuses is told from a full device', async () => {
    await page.evaluate(() => { globalThis.refuses = 'at once'; });
    await write.setWords(5, 'Refused.');
    await banner.getByText('does not let the site keep').waitFor();
  });
  await place.tally.step('a write that fails half way keeps nothing of itself', async () => {
    const before = await openRecord(page);
    await page.evaluate(() => { globalThis.refuses = 'half way'; });
    await banner.getByText('DataCloneError').waitFor();
    await soonEqual(() => openRecord(page), before);
  });
  await place.tally.step('whoever leaves the page now is asked first', async () => {
    const asked = page.waitForEvent('dialog');
    const leaving = page.reload().catch(() => 'stayed');
    const dialog = await asked;
    assert.equal(dialog.type(), 'beforeunload');
    await dialog.dismiss();
    await Promise.race([leaving, page.waitForTimeout(500)]);
    await banner.waitFor();
  });
  await place.tally.step('it is kept when the browser no longer refuses, and is there after a reload', async () => {
    await page.evaluate(() => { globalThis.refuses = undefined; });
    await page.getByRole('status').filter({ hasText: AGAIN }).waitFor();
    await page.reload();
    await write.row(5).getByText('Refused.').waitFor();
  });
}

/** A private window of some browsers: there is no database at all. */
async function noDatabase(place, visit) {
  // Else the other tab would write.
  await visit.page.goto('about:blank');
  const page = await visit.page.context().newPage();
  await page.addInitScript(() => Object.defineProperty(globalThis, 'indexedDB', { get: () => undefined }));
  const write = new Write(page);
  await place.tally.step('without a database the page can be written in, and says from the start that nothing is kept', async () => {
    await write.open(place.server.address);
    await page.getByRole('alert').filter({ hasText: REFUSED }).getByText('perhaps because the window is private').waitFor();
    await write.setWords(2, 'Written for a file.');
    const path = await write.save(out(`${place.screen.name}-private.putback.json`));
    assert.ok(readFileSync(path, 'utf8').includes('Written for a file.'));
  });
  await page.close();
}
