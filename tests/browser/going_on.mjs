// Writing without looking: past a question, to another screen and back, across a cut and a join; and what is said of
// words that were set by hand.
import assert from 'node:assert/strict';
import { kill } from './browser.mjs';
import { Appliance, Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

const VALVES = ['Close the flow valve and the return valve.', 'Close the valve.'];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkGoingOn(tally, screen) {
  await visited(tally, screen, 'going on', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await wordsByHand(place, visit, write);
    await sealByHand(place, visit, write);
    await pastAQuestion(place, visit, write);
    await unfinished(place, visit, write);
    await cutAndJoined(place, visit, write);
    await asWords(place, visit, write);
    await onAnAnswer(place, visit, write);
    await sheets(place, visit);
    await acrossScreens(place, visit, write);
  });
}

const line = (page) => page.locator('#new-line');
const frames = (page) => page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

async function wordsByHand({ tally }, { page }, write) {
  await tally.step('what was set by hand follows where the words said it, and stays where not', async () => {
    await write.putBack();
    const count = await write.steps();
    let n = 1;
    while (n <= count && !/40 N·m/.test(await write.words(n))) n += 1;
    const words = await write.words(n);
    const notation = () => write.row(n).locator('.tokens, .notation').first().innerText();
    await write.select(n);
    const before = await notation();
    assert.match(before, /40/);
    await write.setWords(n, words.replace('40 N·m', '30 N·m'));
    await page.waitForFunction(([number]) => document.querySelectorAll('li[data-step]')[number - 1].querySelector('.tokens, .notation').innerText.includes('30'), [n]);
    await write.undo();
    await soonEqual(() => notation(), before);
  });
}

async function beginNew(page) {
  await goTo(page, 'Procedures');
  await new Procedures(page).beginNew();
  await new Appliance(page).touched('heating water');
  await goTo(page, 'Write');
}

async function pastAQuestion({ tally }, { page }, write) {
  await tally.step('who types on past a question loses no letter and answers nothing', async () => {
    await beginNew(page);
    for (const words of VALVES) await write.append(words);
    await page.locator('.choices button:focus').waitFor();
    await page.keyboard.type('Undo the bracket, 3 screws');
    await soonEqual(() => line(page).inputValue(), 'Undo the bracket, 3 screws');
    await page.locator('#new-line:focus').waitFor();
    await soonEqual(() => write.row(2).getByText(/isolate/).count(), 0);
    await soonEqual(() => write.steps(), 2);
  });
}

async function unfinished(place, visit, write) {
  const { tally } = place;
  const { page } = visit;
  await tally.step('a line that is not finished is there after another screen, and after a reload', async () => {
    await goTo(page, 'Appliance');
    await goTo(page, 'Write');
    await soonEqual(() => line(page).inputValue(), 'Undo the bracket, 3 screws');
    await page.reload();
    await line(page).waitFor();
    await soonEqual(() => line(page).inputValue(), 'Undo the bracket, 3 screws');
    await line(page).fill('');
    await page.reload();
    await line(page).waitFor();
    await soonEqual(() => line(page).inputValue(), '');
  });
  await tally.step('what was typed below a step and has become one comes back as no line', async () => {
    const n = await write.steps();
    await write.select(1);
    await page.keyboard.press('Control+Enter');
    await page.getByRole('textbox', { name: 'Step after 1', exact: true }).pressSequentially('Take off the hood.');
    // The keyboard goes elsewhere: what was typed becomes step 2, and the one that was is step 3.
    await write.row(2).locator('.words').click();
    await write.counts(n + 1);
    await page.reload();
    await line(page).waitFor();
    await write.counts(n + 1);
    assert.equal(await page.locator('#draft-line').count(), 0);
    await page.getByRole('button', { name: 'Undo: add step 2' }).click();
    await write.counts(n);
  });
  await look(place, visit, 'write-example');
}

async function cutAndJoined({ tally }, { page }, write) {
  await tally.step('a step that is cut through what it means is read anew on both sides', async () => {
    await write.append('Undo the four lid screws and take off the lid.');
    const n = await write.steps();
    await write.select(n);
    await page.locator('.row.selected textarea').evaluate((field) => field.setSelectionRange(8, 8));
    await page.keyboard.press('Enter');
    await write.counts(n + 1);
    await soonEqual(() => write.row(n).getByText(/undo/).count(), 0, 'the head has no thing to undo');
  });
  await tally.step('Backspace at the start of a step joins it to the one before', async () => {
    const n = await write.steps();
    await write.select(n);
    await page.locator('.row.selected textarea').evaluate((field) => field.setSelectionRange(0, 0));
    await page.keyboard.press('Backspace');
    await write.counts(n - 1);
    await frames(page);
    await soonEqual(() => write.words(n - 1), 'Undo the four lid screws and take off the lid.');
    const caret = await page.locator('.row.selected textarea').evaluate((field) => field.selectionStart);
    assert.equal(caret, 'Undo the'.length);
    await page.getByRole('button', { name: `Undo: join steps ${n - 1} and ${n}` }).click();
    await write.counts(n);
  });
}

async function asWords({ tally }, { page }, write) {
  await tally.step('lines that are pasted plain are not read', async () => {
    await beginNew(page);
    await line(page).focus();
    await page.keyboard.down('Control');
    await page.keyboard.down('Shift');
    await line(page).evaluate((field) => {
      field.dispatchEvent(new KeyboardEvent('keydown', { key: 'V', ctrlKey: true, shiftKey: true, bubbles: true }));
      const data = new DataTransfer();
      data.setData('text/plain', 'Close the flow valve.\n\nOpen the drain cock.');
      field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
    });
    await page.keyboard.up('Shift');
    await page.keyboard.up('Control');
    await write.counts(2);
    await soonEqual(() => page.locator('.pasted').count(), 0);
    await soonEqual(() => write.row(1).getByText(/^isolate/).count(), 0);
    await page.getByRole('button', { name: 'Undo: paste 2 steps as words' }).click();
    await write.counts(0);
  });
  await tally.step('a message waits for the step of a leading word', async () => {
    await write.append('danger: live parts; an electric shock can kill; do not touch');
    await write.append('wait 5 min');
    await write.counts(1);
    // What is out of sight is not laid out, so the text as it is in the page.
    const row = await write.row(1).textContent();
    assert.match(row, /danger/i);
    assert.match(row, /wait 5 min/i);
  });
}

async function sealByHand({ tally }, { page }, write) {
  await tally.step('a seal that is set in the token is said in the sentence, and read there again', async () => {
    await beginNew(page);
    await write.append('Undo the two union nuts of the pump, flat washers.');
    await write.append('Make the two union nuts of the pump.');
    await write.select(2);
    await page.locator('.row.selected .token').first().click();
    const seal = page.locator('.row.selected .of-token').getByRole('combobox', { name: 'Seal', exact: true });
    const words = () => write.words(2);
    await seal.selectOption('with a new seal');
    const now = await words();
    assert.match(now, /^Make the two union nuts of the pump with (a )?new [a-z -]+\.$/);
    await seal.selectOption('with the seal reused');
    await soonEqual(() => words(), now.replace(/a new|new/, 'the same'));
    await seal.selectOption('as the map says');
    await soonEqual(() => words(), 'Make the two union nuts of the pump.');
    await seal.selectOption('with a new seal');
    await soonEqual(() => words(), now);
    // Typed on, the words are read as what is set, so nothing differs.
    await write.select(2);
    await page.keyboard.press('Control+End');
    await page.keyboard.type(' Look at both.');
    await page.locator('.row.selected .token', { hasText: 'with new seal' }).first().waitFor();
    await page.getByRole('button', { name: 'Undo: change the words of step 2' }).click();
    await page.getByRole('button', { name: 'Undo: change step 2' }).waitFor();
  });
}

async function acrossScreens(place, { page }, write) {
  const { tally } = place;
  await tally.step('a token has the size, torque and circuit of its joint', async () => {
    await beginNew(page);
    await write.append('Undo the two union nuts of the pump, G 1, 37 mm.');
    await write.select(1);
    await page.locator('.row.selected .token').first().click();
    const sheet = page.locator('.row.selected .of-token');
    const thread = sheet.getByRole('textbox', { name: 'Thread', exact: true });
    await soonEqual(() => thread.inputValue(), 'G 1');
    await thread.fill('G 1 1/4');
    await write.row(1).getByText(/G 1 1\/4/).first().waitFor();
    await soonEqual(() => sheet.getByRole('textbox', { name: 'Torque from, N·m' }).count(), 0, 'nothing is tightened here');
    await sheet.getByRole('combobox', { name: 'Carries what is in' }).waitFor();
  });
  await tally.step('undo and redo go on by keys and by name on another screen', async () => {
    await goTo(page, 'Appliance');
    await page.locator('h1').click();
    await page.keyboard.press('Control+z');
    await page.locator('.thing-line', { hasText: 'G 1 1/4' }).waitFor({ state: 'detached' });
    await page.locator('.thing-line', { hasText: 'G 1' }).first().waitFor();
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    await page.locator('.thing-line', { hasText: 'G 1 1/4' }).first().waitFor();
  });
  await tally.step('undo leads to the step on which it acts, from wherever it is pressed', async () => {
    await goTo(page, 'Write');
    await write.append('Hang the notice on the wall switch.');
    const n = await write.steps();
    await goTo(page, 'Kit');
    await page.locator('h1').click();
    await page.keyboard.press('Control+z');
    await line(page).waitFor();
    await soonEqual(() => write.steps(), n - 1);
    await goTo(page, 'Kit');
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    await page.locator('li[data-step]:focus', { hasText: 'Hang the notice' }).waitFor();
    await soonEqual(() => write.steps(), n);
  });
  await tally.step('and to the thing, where no step shows it', async () => {
    await goTo(page, 'Appliance');
    const appliance = new Appliance(page);
    await appliance.add('seal', 'spare washer');
    await goTo(page, 'Write');
    await page.locator('h1').click();
    await page.keyboard.press('Control+z');
    await page.locator('.appliance .map').waitFor();
    await soonEqual(() => page.locator('.thing-row', { hasText: 'spare washer' }).count(), 0);
    await goTo(page, 'Kit');
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    await page.locator('.map-list .sheet').getByRole('textbox', { name: 'Name', exact: true }).waitFor();
    await page.locator('.thing-row:focus', { hasText: 'spare washer' }).waitFor();
  });
}

async function onAnAnswer(place, visit, write) {
  const { page } = visit;
  await place.tally.step('a step that is done on an answer says so, and what is done where a value is out', async () => {
    await beginNew(page);
    await write.append('ask: Is the filter clean?');
    await write.append('if no: Take out the filter.');
    await page.locator('.condition').getByText('if no: "Is the filter clean?"').waitFor();
    await write.append('Look at the gauge.');
    await write.append('read: pressure 1 bar to 2 bar (out: wait and read again)');
    await page.getByText('out: wait and read again').first().waitFor();
  });
  await look(place, visit, 'write-condition');
}

async function sheets({ tally }, { page }) {
  await tally.step('Esc takes a name back, and then closes the sheet', async () => {
    await new Write(page).append('Close the flow valve.');
    await goTo(page, 'Appliance');
    await page.locator('.map-list .thing-row', { hasText: 'flow valve' }).click();
    const name = page.locator('.sheet').getByRole('textbox', { name: 'Name', exact: true });
    await name.fill('flow valve X');
    await name.press('Escape');
    await soonEqual(() => name.inputValue(), 'flow valve');
    await name.press('Escape');
    await page.locator('.thing-row:focus').waitFor();
    await soonEqual(() => page.locator('.map-list .sheet').count(), 0);
  });
}
