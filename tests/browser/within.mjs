// What is taken can be opened again, what cannot be opened is told and can be saved, and the keyboard is where somebody
// expects it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { out } from './places.mjs';
import { goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { visited } from './visit.mjs';

const LONG = 'x'.repeat(20_001);

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkWithin(tally, screen) {
  await visited(tally, screen, 'within what a file can hold', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await retyped(place, visit, write);
    await writeNew(visit.page, ['Take off the cover: four M5 screws.', 'Look at the seal.']);
    await tooLong(place, visit, write);
    await keyboard(place, visit, write);
    await unreadable(place, visit);
  });
}

async function retyped({ tally }, { page }, write) {
  await tally.step('a word that is typed once more says what it said', async () => {
    await write.putBack();
    await write.stamped('ACCEPTED');
    const at = 1 + (await page.locator('li[data-step] .words').allInnerTexts()).findIndex((words) => /^Prove/.test(words));
    await write.select(at);
    await page.keyboard.press('Control+Home');
    for (let n = 0; n < 'Prove'.length; n += 1) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.type('Prove');
    await page.keyboard.press('Escape');
    await write.stamped('ACCEPTED');
    // The texts of findings follow a moment later.
    await page.waitForTimeout(600);
    await soonEqual(() => page.getByText('its words do not say so').count(), 0);
  });
}

async function tooLong({ tally }, { page }, write) {
  await tally.step('a text that a file cannot hold is not taken, and what was there stays', async () => {
    await write.select(2);
    await page.keyboard.press('End');
    await page.keyboard.insertText(LONG);
    await page.getByText(/^Nothing was changed: a text would have 20,01\d characters, and it can have 20,000\.$/).waitFor();
    await page.reload();
    await write.counts(2);
    await soonEqual(() => write.words(2), 'Look at the seal.');
  });
}

async function keyboard({ tally }, { page }, write) {
  await tally.step('Enter on a row goes behind its last word', async () => {
    await write.select(1);
    await page.keyboard.press('Home');
    await page.keyboard.press('Escape');
    await page.locator('.row.selected:focus').waitFor();
    await page.keyboard.press('Enter');
    await page.locator('textarea:focus').waitFor();
    await page.waitForFunction(() => {
      const { selectionStart, value } = document.activeElement;
      return selectionStart === value.length;
    });
    await page.keyboard.press('Escape');
  });
  await tally.step('the name of a thing that is added is typed over', async () => {
    await goTo(page, 'Appliance');
    await page.getByRole('button', { name: 'Add a component', exact: true }).click();
    await page.waitForFunction(() => document.activeElement?.selectionEnd > document.activeElement?.selectionStart);
    await page.keyboard.type('pump');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'pump', exact: true }).waitFor();
    await goTo(page, 'Write');
  });
  await tally.step('where all steps are taken out the keyboard is in the line', async () => {
    await write.selectRow(1);
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Delete');
    await write.counts(0);
    await page.locator('#new-line:focus').waitFor();
    await page.keyboard.press('Control+z');
    await write.counts(2);
  });
}

async function unreadable({ tally, screen, server }, { page }) {
  await tally.step('what is kept and cannot be opened is told, and saved as it is', async () => {
    await page.waitForFunction(() => /^kept/.test(document.getElementById('kept')?.innerText ?? ''));
    await page.goto('about:blank');
    await page.goto(`${server.address}/manifest.webmanifest`);
    await spoil(page);
    await page.goto(server.address);
    await page.getByText(/cannot be read: .*20,001 characters.* It stays on this device/).waitFor();
    await goTo(page, 'Procedures');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save Untitled procedure', exact: true }).click(),
    ]);
    assert.match(download.suggestedFilename(), /\.NOT-CHECKED\.putback\.json$/);
    const path = out(`${screen.name}-as-kept.putback.json`);
    await download.saveAs(path);
    assert.ok(JSON.parse(readFileSync(path, 'utf8')).note.length > 20_000);
  });
}

/** Gives the procedure that was kept last a remark that is too long, as a page of an older version might have. */
async function spoil(page) {
  await page.evaluate(async () => {
    const done = (request) => new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    const database = await done(indexedDB.open('putback'));
    const store = database.transaction('docs', 'readwrite').objectStore('docs');
    for (const key of await done(store.getAllKeys())) {
      const kept = JSON.parse(await done(store.get(key)));
      const document = JSON.parse(kept.text);
      if (document.title !== 'Untitled procedure') continue;
      kept.text = JSON.stringify({ ...document, note: 'x'.repeat(20_001) });
      await done(store.put(JSON.stringify(kept), key));
    }
    database.close();
  });
}
