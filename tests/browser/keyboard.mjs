// The keys of Write, state after state: where Tab and Esc lead from a row, its leading words, its words, what they mean,
// a question and the line at the end; and by fingers alone what has a key.
import assert from 'node:assert/strict';
import { Appliance, Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch, soonOther } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkKeyboard(tally, screen) {
  await visited(tally, screen, 'keys of Write', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    const parts = screen.options.hasTouch ? [byFingers, anAnswer] : [row, words, meaning, elsewhere, question, lastLine, anAnswer];
    for (const part of parts) await part(place, visit, write);
  });
}

const line = (page) => page.locator('#new-line');
const selected = (page, what) => page.locator(`.row.selected ${what}`);
const onRow = (page) => page.locator('.row.selected:focus').waitFor();

async function row(place, visit, write) {
  const { page } = visit;
  const press = (key) => page.keyboard.press(key);
  await place.tally.step('Tab leads from a row to its leading words, along which arrows lead, then to what it means', async () => {
    await write.selectRow(3);
    await press('Tab');
    const at = (name) => selected(page, '.leading-keys button:focus').getByText(name, { exact: true }).waitFor();
    await at('warning');
    for (const [key, name] of [['ArrowRight', 'read'], ['ArrowLeft', 'warning'], ['ArrowLeft', 'bring'], ['Home', 'warning'], ['End', 'bring']]) {
      await press(key);
      await at(name);
    }
    await press('Tab');
    await selected(page, '.token:focus').waitFor();
    await press('Shift+Tab');
    await at('bring');
    await press('Shift+Tab');
    await selected(page, 'textarea:focus').waitFor();
  });
  await place.tally.step('what Tab goes through stands on the screen in the same order', async () => {
    const tops = await page.locator('.row.selected').evaluate((row) =>
      ['textarea', '.leading-keys', '.tokens', '.strip'].map((part) => Math.round(row.querySelector(part).getBoundingClientRect().top)));
    assert.deepEqual(tops, tops.toSorted((one, other) => one - other));
  });
  await place.tally.step('Esc leads from the leading words to the row, and there it lets go of it', async () => {
    await write.selectRow(3);
    await press('Tab');
    await press('Escape');
    await onRow(page);
    await press('Escape');
    await page.locator('.row.selected').waitFor({ state: 'detached' });
    await press('ArrowDown');
    await page.locator('.row[aria-label="Step 4"].selected:focus').waitFor();
  });
  await look(place, visit, 'write-row');
}

async function words({ tally }, { page }, write) {
  await tally.step('Tab leads from words to what they mean, and Esc in them takes back what was typed', async () => {
    await write.selectRow(3);
    await page.keyboard.press('Enter');
    await selected(page, 'textarea:focus').waitFor();
    const field = selected(page, 'textarea');
    const before = await field.inputValue();
    await page.keyboard.type(' Twice.');
    await soonEqual(() => field.inputValue(), `${before} Twice.`);
    await page.keyboard.press('Escape');
    await onRow(page);
    await soonEqual(() => field.inputValue(), before);
    await page.keyboard.press('Enter');
    await selected(page, 'textarea:focus').waitFor();
    await page.keyboard.press('Tab');
    await selected(page, '.token:focus').waitFor();
  });
  await tally.step('a leading word begins a line below the words by Enter alone', async () => {
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Home');
    await page.keyboard.press('Enter');
    await selected(page, 'textarea:focus').waitFor();
    await soonMatch(() => selected(page, 'textarea').inputValue(), /\nwarning: $/);
    await page.keyboard.press('Escape');
    await onRow(page);
  });
}

async function meaning({ tally }, { page }, write) {
  await tally.step('Esc leads from what it means into the words; from its fields to the key that opened them', async () => {
    for (const what of ['.token', '.tokens .other']) {
      await write.selectRow(3);
      await selected(page, what).first().focus();
      await page.keyboard.press('Escape');
      await selected(page, 'textarea:focus').waitFor();
    }
    await selected(page, '.token').first().focus();
    await page.keyboard.press('Enter');
    await selected(page, '.of-token').waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Escape');
    await selected(page, '.token:focus').waitFor();
    await soonEqual(() => selected(page, '.of-token').count(), 0);
  });
}

async function elsewhere({ tally }, { page }, write) {
  await tally.step('Esc leads from every other key of a row to the row', async () => {
    await write.selectRow(3);
    const keys = ['.handle', '.strip button:has-text("Details")', '.strip button:has-text("Move to")', '.strip button:has-text("Cut")'];
    for (const key of keys) {
      await selected(page, key).focus();
      await page.keyboard.press('Escape');
      await onRow(page);
    }
    await selected(page, keys[1]).press('Enter');
    await selected(page, '.details').waitFor();
    await page.keyboard.press('Tab');
    await selected(page, '.details :is(input, select, textarea)').first().focus();
    await page.keyboard.press('Escape');
    await onRow(page);
    await soonEqual(() => selected(page, '.details').count(), 0);
  });
  await tally.step('and from a finding', async () => {
    await page.locator('li[data-step].found .margin button').first().focus();
    await page.keyboard.press('Escape');
    await onRow(page);
  });
}

async function question(place, visit, write) {
  const { page } = visit;
  const asked = page.locator('.choices');
  await place.tally.step('Tab leads from question to question, arrows along the answers, and Esc leaves them open', async () => {
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await new Appliance(page).touched('heating water');
    await goTo(page, 'Write');
    for (const words of ['Close the flow valve and the return valve.', 'Open the flow valve and the return valve.']) await write.append(words);
    for (const words of ['Undo the pump plug and the fan plug.', 'Make the pump plug and the fan plug.']) await write.append(words);
    await line(page).fill('Close the valve and undo the plug.');
    await line(page).press('Enter');
    await asked.getByText('1 of 2').waitFor();
    await page.locator('.choices button:focus', { hasText: '1' }).waitFor();
    const first = await asked.locator('.doubt').innerText();
    await page.keyboard.press('ArrowDown');
    await page.locator('.choices button:focus', { hasText: '2' }).waitFor();
    await page.keyboard.press('Tab');
    await asked.getByText('2 of 2').waitFor();
    await page.locator('.choices button:focus', { hasText: '1' }).waitFor();
    await soonOther(() => asked.locator('.doubt').innerText(), first);
  });
  await look(place, visit, 'write-two-questions');
  await place.tally.step('Tab leads on to what the words mean, Shift+Tab to the question before', async () => {
    await page.keyboard.press('Tab');
    await soonEqual(() => page.evaluate(() => document.activeElement.closest('.tokens') !== null), true);
    await page.keyboard.press('Shift+Tab');
    await page.locator('.choices button:focus').waitFor();
    await page.keyboard.press('Shift+Tab');
    await asked.getByText('1 of 2').waitFor();
    await page.locator('.choices button:focus').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.choices button:focus').waitFor({ state: 'detached' });
  });
}

async function lastLine({ tally }, { page }) {
  await tally.step('Esc in the line at the end takes back what was typed, and once more brings it again', async () => {
    await line(page).focus();
    await page.keyboard.type('Close the fl');
    await page.keyboard.press('Escape');
    await soonEqual(() => line(page).inputValue(), '');
    await page.keyboard.press('Escape');
    await soonEqual(() => line(page).inputValue(), 'Close the fl');
    await page.keyboard.press('Escape');
    await soonEqual(() => line(page).inputValue(), '');
  });
}

async function byFingers({ tally }, { page }, write) {
  await tally.step('by fingers a row has a key for each key, large enough, and the keyboard says what Enter does', async () => {
    await write.row(3).locator('.words').tap();
    await soonEqual(() => selected(page, 'textarea').getAttribute('enterkeyhint'), 'next');
    await soonEqual(() => line(page).getAttribute('enterkeyhint'), 'next');
    for (const key of await selected(page, ':is(.token, .tokens .other)').all()) assert.ok((await key.boundingBox()).height >= 48);
    for (const name of ['Move up', 'Move down', 'Move to…', 'Duplicate', 'Copy', 'Cut', 'Remove step', 'New step below']) {
      const { height } = await write.row(3).getByRole('button', { name, exact: true }).boundingBox();
      assert.ok(height >= 44, `${name}: ${height}`);
    }
  });
}

async function anAnswer(place, visit, write) {
  const { page } = visit;
  await place.tally.step('a line that goes on on an answer says so, stands in, and one key leaves the answer', async () => {
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await new Appliance(page).touched('heating water');
    await goTo(page, 'Write');
    await write.append('ask: Is the filter clean?');
    await write.append('if no: Take out the filter.');
    const told = page.locator('.row.last .in-branch');
    await told.getByText('Goes on if no: "Is the filter clean?"').waitFor();
    const box = await told.boundingBox();
    assert.ok(box.y >= 0 && box.y + box.height <= page.viewportSize().height, 'it is in sight');
    const edge = await told.evaluate((told) => Math.max(...[told, told.parentElement].map((part) => Number.parseFloat(getComputedStyle(part).borderLeftWidth))));
    assert.ok(edge >= 3, 'with the line at its left that its rows have');
    const leave = told.getByRole('button', { name: 'Leave this answer' });
    assert.ok((await leave.boundingBox()).height >= (place.screen.options.hasTouch ? 44 : 24));
  });
  await look(place, visit, 'write-on-an-answer');
  await place.tally.step('what is written then is done on every answer', async () => {
    const leave = page.getByRole('button', { name: 'Leave this answer' });
    await (place.screen.options.hasTouch ? leave.tap() : leave.click());
    await page.locator('.in-branch').waitFor({ state: 'detached' });
    await write.append('Refit the filter.');
    await soonEqual(() => page.locator('.row[aria-label="Step 3"] .condition').count(), 0);
  });
}
