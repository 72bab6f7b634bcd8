// Lines of more than one sort: leading words, whole texts that are pasted, and three jobs as an engineer typed
// them who had not seen how sentences are read. Of those it counts the keys that are not characters.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { kill } from './browser.mjs';
import { out, repository } from './places.mjs';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { onlyTrue } from './truth.mjs';
import { look, visited } from './visit.mjs';

const SCRIPTS = ['air-vent', 'trap-and-fan', 'heat-exchanger'];
const text = (name) => readFileSync(repository(`tests/browser/scripts/${name}.txt`), 'utf8');

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkTyping(tally, screen) {
  await visited(tally, screen, 'typing', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await leadingWords(place, visit, write);
    await paste(place, visit, write);
    for (const name of SCRIPTS) await typed(place, visit.page, write, name);
  });
}

async function beginNew(page) {
  await goTo(page, 'Procedures');
  await new Procedures(page).beginNew();
  await goTo(page, 'Write');
}

async function leadingWords(place, visit, write) {
  const { page } = visit;
  await place.tally.step('leading words become messages, readings and reasons of their step', async () => {
    await beginNew(page);
    await write.append('Switch off at the wall isolator and lock it off.');
    await write.append('warning: mains voltage behind the cover; an electric shock can kill; prove it dead before touching');
    await write.append('Take off the cover: four M5 screws.');
    await write.append('read: duct temperature 20 to 40 °C (out: wait and read again)');
    await write.append('why: the fan is hot after a run');
    await write.counts(2);
    const step = await write.row(2).innerText();
    for (const part of [/WARNING/, /Mains voltage behind the cover/, /undo 4 cover screws/, /20 °C to 40 °C/, /why: the fan is hot/]) {
      assert.match(step, part);
    }
  });
  // What lies half under the line that is docked is too small a target only until somebody scrolls.
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'write-leading');
}

async function paste(place, visit, write) {
  const { page } = visit;
  await place.tally.step('a pasted text becomes steps at once, with what wants a look', async () => {
    await beginNew(page);
    await page.getByRole('textbox', { name: 'New step' }).evaluate((field, pasted) => {
      const data = new DataTransfer();
      data.setData('text/plain', pasted);
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    }, text('heat-exchanger'));
    await page.locator('.pasted').getByText(/^30 lines · \d+ steps/).waitFor();
    await page.getByRole('button', { name: /^Next of \d+ to look at$/ }).click();
    await page.locator('.row.selected').waitFor();
  });
  await look(place, visit, 'write-pasted');
  await place.tally.step('one undo takes the whole text back', async () => {
    await page.getByRole('button', { name: 'Undo all' }).click();
    await write.counts(0);
  });
}

/** Types a script, answers what is asked with the first choice, and counts the keys beside the characters. */
async function typed(place, page, write, name) {
  await place.tally.step(`${name}: 30 lines as they come to mind`, async () => {
    await beginNew(page);
    const line = page.locator('#new-line');
    const keys = [];
    for (const words of text(name).split('\n').filter(Boolean)) {
      await line.focus();
      await page.keyboard.insertText(words);
      await page.keyboard.press('Enter');
      await page.waitForFunction(() => document.getElementById('new-line').value === '');
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      let more = 1;
      while (more < 9 && (await page.locator('.choices button:focus').count()) > 0) {
        await page.keyboard.press('1');
        await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
        more += 1;
      }
      keys.push(more);
    }
    keys.sort((a, b) => a - b);
    const mean = keys.reduce((sum, n) => sum + n, 0) / keys.length;
    const most = keys[Math.ceil(keys.length * 0.9) - 1];
    const stamp = await page.locator('.stamp').innerText();
    console.log(`          keys a line beside its characters: mean ${mean.toFixed(2)}, 90th percentile ${most}; ${stamp}`);
    assert.ok(mean <= 1.5 && most <= 3, `mean ${mean}, 90th percentile ${most}`);
  });
  await place.tally.step(`${name}: what is found in it is true`, async () => {
    onlyTrue(name, await write.save(out(`typed-${place.screen.name}-${name}.putback.json`)));
  });
}
