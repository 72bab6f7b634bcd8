// Writing on below a row: lines stay in their order, the finding of the step before is mended from the line, several
// lines that are pasted are steps wherever they are pasted, and Esc closes what a key of a row has opened.
import assert from 'node:assert/strict';
import { writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { visited } from './visit.mjs';

const LINES = ['Switch off at the wall isolator and lock it off.', 'Take off the cover: four M5 screws.'];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkWritingOn(tally, screen) {
  await visited(tally, screen, 'writing on', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await writeNew(visit.page, LINES);
    await inOrder(place, visit, write);
    await asked(place, visit, write);
    await mended(place, visit, write);
    await pasted(place, visit, write);
    await closed(place, visit, write);
  });
}

async function words(write, from, n) {
  return Promise.all([...Array(n).keys()].map((offset) => write.words(from + offset)));
}

async function inOrder({ tally }, { page }, write) {
  await tally.step('lines below a row stay in their order behind a wait and a message', async () => {
    await write.select(1);
    await page.keyboard.press('Control+Enter');
    await page.locator('#draft-line:focus').waitFor();
    // As on a device that is behind: no key waits until what the one before it did is seen.
    const keys = ['Wait 10 min.', 'warning: hot metal; can burn; wear gloves', 'Photograph the board.', 'Tell the keeper.'];
    await inOneGo(page, keys.map((line) => `${line}\n`).join(''));
    await page.keyboard.press('Escape');
    const now = await words(write, 2, 4);
    assert.deepEqual(now.map((one) => one.trim()), ['Wait 10 min.', 'Photograph the board.', 'Tell the keeper.', LINES[1]]);
    await write.row(3).getByText('hot metal').first().waitFor();
  });
}

/** Sends all keys before the first of them is answered. */
async function inOneGo(page, text) {
  const keyboard = await page.context().newCDPSession(page);
  const enter = { key: 'Enter', code: 'Enter', windowsVirtualKeyCode: 13, text: '\r' };
  const press = (key) => [
    keyboard.send('Input.dispatchKeyEvent', { type: 'keyDown', ...key }),
    keyboard.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key }),
  ];
  await Promise.all([...text].flatMap((key) => press(key === '\n' ? enter : { key, text: key })));
  await keyboard.detach();
}

async function asked({ tally }, { page }, write) {
  await tally.step('a question takes the answers beside it as steps, and one undo takes them back', async () => {
    const n = await write.steps();
    await write.append('ask: is the seal sound? if yes, photograph the seal. if no: take out the seal.');
    await write.counts(n + 3);
    await write.row(n + 2).getByText('if yes').first().waitFor();
    await write.row(n + 3).getByText('if no').first().waitFor();
    await page.getByRole('button', { name: 'Undo: add a question' }).click();
    await write.counts(n);
  });
}

async function mended({ tally }, { page }, write) {
  await tally.step('Alt+Enter in the empty line mends what the step before it has left out', async () => {
    await write.append('Prove dead at the motor terminals, all three pairs, 0 to 5 V.');
    await page.keyboard.press('Alt+Enter');
    await page.getByRole('button', { name: /^Undo: (?!add step)/ }).waitFor();
    await soonMatch(async () => write.row(await write.steps()).innerText(), /tester/i);
  });
}

async function pasted({ tally }, { page }, write) {
  const paste = (target, text) => target.evaluate((field, words) => {
    const data = new DataTransfer();
    data.setData('text/plain', words);
    field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  }, text);
  await tally.step('several lines pasted into words, and one pasted onto a row, are steps of their own', async () => {
    const n = await write.steps();
    await write.select(2);
    await paste(page.locator('.row.selected textarea').first(), 'Wipe the box.\nPhotograph the box.');
    await write.counts(n + 2);
    await soonEqual(() => words(write, 2, 3), ['Wait 10 min.', 'Wipe the box.', 'Photograph the box.']);
    await write.selectRow(3);
    await paste(page.locator('.row.selected'), 'Sweep the floor.');
    await write.counts(n + 3);
    await soonEqual(() => write.words(4), 'Sweep the floor.');
  });
}

async function closed({ tally }, { page }, write) {
  await tally.step('Esc closes details, the list of places and the fields of a token, each with the keyboard back', async () => {
    await write.select(8);
    await soonEqual(() => write.words(8), LINES[1]);
    for (const [key, fields] of [['Details', '.details'], ['Move to…', '.move-to']]) {
      await page.locator('.row.selected').getByRole('button', { name: key, exact: true }).click();
      await page.locator(`.row.selected ${fields} :is(input, select)`).first().focus();
      await page.keyboard.press('Escape');
      await page.locator(fields).waitFor({ state: 'detached' });
      await page.locator('.row.selected:focus').waitFor();
    }
    await page.locator('.row.selected .token', { hasText: 'undo 4' }).click();
    await page.locator('.row.selected .of-token :is(input, select)').first().focus();
    await page.keyboard.press('Escape');
    await page.locator('.of-token').waitFor({ state: 'detached' });
    await page.locator('.row.selected .token:focus').waitFor();
  });
}
