// A pasted text in which the same is asked again and again: asked once, answered for all, taken apart, taken back.
import assert from 'node:assert/strict';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

const TEXT = [
  'Close the valve.',
  'Hang a tag on it.',
  'Close the valve.',
  'Wipe the floor.',
  'Close the VALVE once more.',
  'Close one of the valves.',
  'Close one of the valves.',
].join('\n');

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkPasting(tally, screen) {
  await visited(tally, screen, 'pasting', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.putBack();
    await write.stamped('ACCEPTED');
    const n = await write.steps();
    await askedOnce(place, visit, n);
    await takenApart(place, visit, n);
    await takenBack(place, visit, write, n);
    await titled(place, visit, write);
  });
}

/** A title, steps of which the second is not understood, and one that is not asked about. */
const TITLED = [
  'Circulation pump of the boiler',
  '',
  '1. Close the flow valve.',
  '2. Mind the gap behind it.',
  '3. Wipe the floor.',
].join('\n');

const paste = (page, text = TEXT) =>
  page.getByRole('textbox', { name: 'New step' }).evaluate((field, pasted) => {
    const data = new DataTransfer();
    data.setData('text/plain', pasted);
    field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  }, text);

const choices = (page) => page.getByRole('group', { name: 'Which one is "valve"?' });
const notation = (page, number) => page.locator(`.row[aria-label="Step ${number}"] .notation`).first().innerText();

async function askedOnce(place, visit, n) {
  const { page } = visit;
  await place.tally.step('the first question comes by itself and says how many steps ask it', async () => {
    await paste(page);
    await page.locator('.pasted').getByText(/^7 lines · 7 steps .*to decide, in 2 questions/).waitFor();
    await page.locator('.choices button:focus').waitFor();
    await choices(page).getByRole('checkbox', { name: 'The same for all 3 that ask it' }).waitFor();
  });
  await look(place, visit, 'write-pasted-asked');
  await place.tally.step('none of them leaves the words of all as text, and the next question comes', async () => {
    await choices(page).getByRole('button', { name: 'None of these' }).click();
    await page.getByRole('button', { name: 'Undo: leave words as text in 3 steps' }).waitFor();
    const next = page.getByRole('group', { name: 'Which one is "valves"?' });
    await next.getByRole('checkbox', { name: `The same for step ${n + 7} too` }).waitFor();
    await page.locator('.choices button:focus').waitFor();
    await page.getByRole('button', { name: 'Next of 2 to look at' }).waitFor();
    await page.getByRole('button', { name: 'Undo: leave words as text in 3 steps' }).click();
    await page.getByRole('button', { name: 'Next of 5 to look at' }).waitFor();
  });
  await place.tally.step('one answer settles all of them, and leaves one thing for the others; one undo takes it back', async () => {
    await page.locator(`.row[aria-label="Step ${n + 1}"] .words`).first().click();
    await choices(page).getByRole('button', { name: /suction valve/ }).click();
    const undo = page.getByRole('button', { name: 'Undo: say that it means the suction valve in 3 steps' });
    await undo.waitFor();
    for (const step of [1, 3, 5]) assert.match(await notation(page, n + step), /isolate suction valve/);
    for (const step of [6, 7]) assert.match(await notation(page, n + step), /isolate discharge valve/);
    await soonEqual(() => page.getByRole('button', { name: /^Next of \d+ to look at$/ }).count(), 0);
    await undo.click();
    await page.getByRole('button', { name: 'Next of 5 to look at' }).waitFor();
  });
}

async function takenApart(place, visit, n) {
  const { page } = visit;
  await place.tally.step('a step is taken out of it', async () => {
    await page.locator(`.row[aria-label="Step ${n + 1}"] .words`).first().click();
    await choices(page).getByRole('button', { name: 'Choose which' }).click();
    const which = choices(page).getByRole('group', { name: 'Steps that get the answer' });
    await which.getByRole('checkbox', { name: `${n + 3} Close the valve.` }).uncheck();
  });
  await look(place, visit, 'write-taken-apart');
  await place.tally.step('the others get the answer, and it the only one that is left', async () => {
    await choices(page).getByRole('button', { name: /suction valve/ }).click();
    await page.getByRole('button', { name: /^Undo: say that it means the suction valve in 2 steps$/ }).waitFor();
    await soonMatch(() => notation(page, n + 5), /isolate suction valve/);
    await soonMatch(() => notation(page, n + 3), /isolate discharge valve/);
  });
}

async function takenBack(place, visit, write, n) {
  const { page } = visit;
  await place.tally.step('"Undo all" takes the text back, and the answers with it', async () => {
    await page.getByRole('button', { name: 'Undo all' }).click();
    await write.counts(n);
    await write.stamped('ACCEPTED');
    await soonEqual(() => page.locator('.pasted').count(), 0);
  });
}

async function titled(place, visit, write) {
  const { page } = visit;
  const title = page.getByRole('textbox', { name: 'Title' });
  await place.tally.step('the first line of a text names a procedure that has no name', async () => {
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await goTo(page, 'Write');
    await paste(page, TITLED);
    await write.counts(3);
    await soonEqual(() => title.inputValue(), 'Circulation pump of the boiler');
    await page.locator('.pasted').getByText('Its first line is the title: Circulation pump of the boiler').waitFor();
  });
  await place.tally.step('the keyboard is at the first thing to decide, not at the last row', async () => {
    const first = page.locator('.choices button:focus, .row.selected:focus').first();
    await first.waitFor();
    const row = await first.evaluate((element) => element.closest('.row').getAttribute('aria-label'));
    assert.notEqual(row, 'Step 3');
  });
  await look(place, visit, 'write-pasted-title');
  await place.tally.step('it can be a step after all, and undo has the title again', async () => {
    await page.locator('.pasted').getByRole('button', { name: 'It is a step' }).click();
    await write.counts(4);
    await soonEqual(() => title.inputValue(), 'Untitled procedure');
    await soonEqual(() => write.words(1), 'Circulation pump of the boiler');
    await page.getByRole('button', { name: 'Undo: make a step of the title' }).click();
    await write.counts(3);
    await soonEqual(() => title.inputValue(), 'Circulation pump of the boiler');
  });
  await place.tally.step('one undo takes back the text and the title', async () => {
    await page.getByRole('button', { name: /^Undo: paste 3 steps/ }).click();
    await write.counts(0);
    await soonEqual(() => title.inputValue(), 'Untitled procedure');
  });
}
