// What is decided while writing: a thing that is new after all, what a line leaves open before it is kept, rows below an
// answer, reminders for the way back, a pasted text taken as plain rows, and one of very many lines.
import assert from 'node:assert/strict';
import { Appliance, Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkDeciding(tally, screen) {
  await visited(tally, screen, 'deciding', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    for (const part of PARTS) await part(place, visit, write);
  });
}

const line = (page) => page.locator('#new-line');
const notation = (page, number) => page.locator(`.row[aria-label="Step ${number}"]`).locator('.tokens, .notation').first();
const undo = (page, what) => page.getByRole('button', { name: new RegExp(`^Undo: ${what}`) });

async function begin(page) {
  await goTo(page, 'Procedures');
  await new Procedures(page).beginNew();
  await new Appliance(page).touched('heating water');
  await goTo(page, 'Write');
}

const paste = (page, text) =>
  line(page).evaluate((field, pasted) => {
    const data = new DataTransfer();
    data.setData('text/plain', pasted);
    field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  }, text);

async function mendedByHand({ tally }, { page }, write) {
  const key = page.getByRole('button', { name: 'Put it back', exact: true });
  await tally.step('the step that the demonstration lacks is no longer missed once somebody has written it', async () => {
    await key.waitFor();
    const words = await page.evaluate(() => document.querySelector('li[data-step].found .margin')?.textContent ?? '');
    const add = page.locator('li[data-step].found .margin').getByRole('button', { name: /^Add/ }).first();
    assert.ok(words.length > 0);
    await add.click();
    await key.waitFor({ state: 'detached' });
    await undo(page, '').first().click();
    await key.waitFor();
    await write.putBack();
    await key.waitFor({ state: 'detached' });
  });
}

async function leftOut(place, visit, write) {
  const { page } = visit;
  const told = page.locator('.choices .doubt').filter({ hasText: '"fan" is named too' });
  const found = page.locator('.finding .title').filter({ hasText: 'names "fan" too' });
  await place.tally.step('what a sentence names beside what is read of it is told, in its row and as a finding', async () => {
    await begin(page);
    await write.append('Take out the fuse and the fan.');
    await write.append('Take off the lid.');
    await found.waitFor();
    await write.select(1);
    await told.waitFor();
  });
  await look(place, visit, 'write-left-out');
  await place.tally.step('left as text it is told no more, until that is undone', async () => {
    await page.getByRole('button', { name: 'Leave it as text', exact: true }).click();
    await told.waitFor({ state: 'detached' });
    await found.waitFor({ state: 'detached' });
    await undo(page, '').first().click();
    await found.waitFor();
  });
  await place.tally.step('given a sentence of its own it is read', async () => {
    await write.setWords(1, 'Take out the fuse.');
    await write.addBelow(1, 'Take out the fan.');
    await found.waitFor({ state: 'detached' });
    await notation(page, 2).getByText('remove fan').waitFor();
  });
}

async function anew(place, visit, write) {
  const { page } = visit;
  const choices = page.getByRole('group', { name: 'Which one is "pressure switch"?' });
  await place.tally.step('of two that can be meant the last answer is a new one, and picking it makes it', async () => {
    await begin(page);
    for (const name of ['start pressure', 'high-pressure']) await write.append(`Unplug the ${name} switch.`);
    for (const name of ['start pressure', 'high-pressure']) await write.append(`Plug the ${name} switch in.`);
    await write.append('Unplug the pressure switch.');
    await choices.locator('.nth').nth(2).waitFor();
    await soonMatch(() => choices.getByRole('button').nth(2).innerText(), /^3\s*a new pressure switch plug · not on the appliance yet/);
  });
  await look(place, visit, 'write-one-more');
  await place.tally.step('one undo takes it back with what is done to it', async () => {
    await page.locator('.choices button:focus').waitFor();
    await page.keyboard.press('3');
    await notation(page, 5).getByText('undo pressure switch plug').waitFor();
    await page.locator('#new-line:focus').waitFor();
    await undo(page, 'say that step 5 means a new pressure switch plug').click();
    await choices.waitFor();
  });
}

async function neither(place, visit, write) {
  const { page } = visit;
  const choices = page.getByRole('group', { name: 'Which fan is it: left or right? Say it in the words' });
  await place.tally.step('a fan beside the covers of two is asked about, and none is made', async () => {
    await begin(page);
    await write.append('Take off the left fan cover and the right fan cover.');
    await write.append('Take out the fan.');
    await choices.getByRole('button').first().waitFor();
    await soonEqual(() => page.locator('.row[aria-label="Step 2"] .notation .action').count(), 0);
  });
  await look(place, visit, 'write-neither');
  await place.tally.step('the answer makes a new one, one undo takes it back, and other words say which', async () => {
    await choices.getByRole('button', { name: /a new fan/ }).click();
    await notation(page, 2).getByText('remove fan').waitFor();
    await undo(page, '').first().click();
    await choices.waitFor();
    await write.setWords(2, 'Take out the left fan.');
    await write.append('Clean the pump.');
    await choices.waitFor({ state: 'detached' });
    await notation(page, 2).getByText('remove left fan').waitFor();
  });
}

async function unreadBefore(place, visit, write) {
  const { page } = visit;
  const choices = page.getByRole('group', { name: /^Is the cover the front cover\? Nothing is read of the cover of the control box/ });
  const acts = page.locator('.row[aria-label="Step 3"] .notation .action');
  await place.tally.step('where nothing was read of another cover, the row asks whether the one that is known is meant', async () => {
    await begin(page);
    await write.append('Take off the front cover.');
    await write.append('Prise away the cover of the control box.');
    await page.locator('.row[aria-label="Step 2"]').getByText('words alone').waitFor();
    await write.append('Put the cover back.');
    await choices.getByRole('button').first().waitFor();
    await soonEqual(() => acts.count(), 0);
  });
  await look(place, visit, 'write-unread-before');
  await place.tally.step('its answer is the action, and one undo asks again', async () => {
    await choices.getByRole('button', { name: /front cover/ }).click();
    await notation(page, 3).getByText('fit front cover').waitFor();
    await undo(page, '').first().click();
    await choices.waitFor();
    await soonEqual(() => acts.count(), 0);
  });
}

async function whetherAtAll(place, visit, write) {
  const { page } = visit;
  const choices = page.getByRole('group', { name: 'Is this what "Set the cover on" says?' });
  await place.tally.step('what words say so weakly that it may be something else is asked for, with one answer', async () => {
    await begin(page);
    await write.append('Undo the two screws and take the cover off.');
    await write.append('Set the cover on the crate.');
    await choices.getByRole('button').first().waitFor();
    const answers = (await choices.getByRole('button').allInnerTexts()).map((text) => text.replace(/\s+/g, ' '));
    assert.deepEqual(answers.map((text) => text.replace(/^1 ?/, '')), ['fit cover · off here', 'Not that']);
    await soonEqual(() => page.locator('.row[aria-label="Step 2"] .notation .action').count(), 0);
  });
  await look(place, visit, 'write-whether');
  await place.tally.step('its answer makes the action, one undo takes it back, and the other leaves the words as text', async () => {
    await page.locator('.choices button:focus').waitFor();
    await page.keyboard.press('1');
    await notation(page, 2).getByText('fit cover').waitFor();
    await undo(page, 'say that step 2 means fit cover').click();
    await choices.waitFor();
    await choices.getByRole('button', { name: 'Not that' }).click();
    await choices.waitFor({ state: 'detached' });
    await soonEqual(() => page.locator('.row[aria-label="Step 2"] .notation .action').count(), 0);
  });
}

async function beforeItIsKept(place, visit, write) {
  const { page } = visit;
  if (place.screen.options.hasTouch) return;
  await place.tally.step('Tab leads from the line to what is asked in it', async () => {
    await begin(page);
    await write.append('Close the flow valve and the return valve.');
    await write.append('Open the flow valve and the return valve.');
    await line(page).fill('Close the valve.');
    await line(page).press('Tab');
    await page.locator('.choices button:focus').waitFor();
    await page.keyboard.press('2');
    await notation(page, 3).getByText('isolate return valve').waitFor();
    await page.locator('#new-line:focus').waitFor();
  });
  await place.tally.step('and to what a leading word lacks, part after part', async () => {
    await line(page).fill('warning: hot water');
    await line(page).press('Tab');
    const field = (name) => page.getByRole('textbox', { name, exact: true });
    await field('what can happen').and(page.locator(':focus')).waitFor();
    await page.keyboard.type('it scalds');
    await page.keyboard.press('Tab');
    await field('how to avoid it').and(page.locator(':focus')).waitFor();
    await soonEqual(() => line(page).inputValue(), 'warning: hot water; it scalds');
  });
  await look(place, visit, 'write-gap');
  await place.tally.step('Enter in the last of them keeps the line', async () => {
    await page.keyboard.type('let it cool');
    await page.keyboard.press('Enter');
    await page.locator('.band.warning').getByText('Hot water. It scalds. Let it cool.').waitFor();
    await page.locator('#new-line:focus').waitFor();
    await soonEqual(() => line(page).inputValue(), '');
  });
}

async function belowAnAnswer(place, visit, write) {
  const { page } = visit;
  await place.tally.step('rows below an answer go on on it and stand in, until Enter on the empty line leaves it', async () => {
    await begin(page);
    await write.append('ask: Is the filter clean?');
    await write.append('if no: Take out the filter.');
    await page.locator('.in-branch', { hasText: 'if no: "Is the filter clean?"' }).waitFor();
    await write.append('Clean the filter.');
    await page.locator('.row[aria-label="Step 3"] .condition', { hasText: 'if no' }).waitFor();
    const left = (number) => page.locator(`.row[aria-label="Step ${number}"] .said`).evaluate((said) => said.getBoundingClientRect().left);
    assert.ok((await left(3)) - (await left(1)) > 24, 'it stands in');
  });
  await look(place, visit, 'write-branch');
  await place.tally.step('what is written then is done whatever was answered', async () => {
    await line(page).press('Enter');
    await page.locator('.in-branch').waitFor({ state: 'detached' });
    await write.append('Refit the filter.');
    await page.locator('.row[aria-label="Step 4"]').waitFor();
    await soonEqual(() => page.locator('.row[aria-label="Step 4"] .condition').count(), 0);
  });
}

async function forTheWayBack(place, visit, write) {
  const { page } = visit;
  await place.tally.step('a reminder without a way back is advice', async () => {
    await begin(page);
    await write.append('Take out the fan.');
    await write.append('back: the arrow points down');
    await page.locator('.row[aria-label="Step 1"]').getByText('back: the arrow points down.').waitFor();
    await page.locator('.row[aria-label="Step 1"] .margin').getByText(/no step takes it back yet/).waitFor();
  });
  await place.tally.step('and comes up where its thing goes back, with the way to where it was written', async () => {
    await write.append('Clean the fan.');
    await write.append('Refit the fan.');
    const reminder = page.locator('.row[aria-label="Step 3"] .reminder');
    await reminder.getByText('the arrow points down.').waitFor();
    await soonEqual(() => page.getByText(/no step takes it back yet/).count(), 0);
    await look(place, visit, 'write-reminder');
    await reminder.getByRole('button', { name: 'step 1' }).click();
    await page.locator('.row[aria-label="Step 1"]:focus').waitFor();
  });
  await place.tally.step('on paper too', async () => {
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await page.locator('.pages .reminder').getByText('Remember, from step 1: the arrow points down.').waitFor();
    await goTo(page, 'Write');
  });
}

async function declined(place, visit, write) {
  const { page } = visit;
  await place.tally.step('what is no action carries its mark', async () => {
    await begin(page);
    await write.append('Take out the fan.');
    await write.select(1);
    await page.locator('.row.selected .token').first().focus();
    await page.keyboard.press('Backspace');
    const mark = page.locator('.row.selected .mirror .declined').first();
    await mark.waitFor();
    const shape = await mark.evaluate((span) => getComputedStyle(span).textDecorationLine);
    assert.equal(shape, 'overline', 'by its shape, not by colour alone');
  });
}

const REVIEWED = ['1. Close the valve.', '2. Mind the gap behind it.', '3. Open the valve.'].join('\n');

async function plainRows(place, visit, write) {
  const { page } = visit;
  const head = page.locator('.pasted');
  await place.tally.step('a question of a pasted text shows its line, and what is to decide is counted down', async () => {
    await begin(page);
    await write.append('Close the flow valve and the return valve.');
    await write.append('Open the flow valve and the return valve.');
    await paste(page, REVIEWED);
    await head.getByText('2 to decide').waitFor();
    await page.locator('.row.selected .pasted-line', { hasText: 'Line 1 of the text: 1. Close the valve.' }).waitFor();
    await look(place, visit, 'write-source-line');
    await page.keyboard.press('1');
    await head.getByText(/(1 to decide|nothing left to decide)/).waitFor();
  });
  await place.tally.step('Esc at a question makes plain rows of the text, and one undo brings back what was read', async () => {
    await undo(page, 'say that it means').click();
    await head.getByText('2 to decide').waitFor();
    await page.locator('.row[aria-label="Step 3"] .words').first().click();
    await page.locator('.choices button').first().focus();
    await page.keyboard.press('Escape');
    await page.getByText(/^The text stands as plain rows/).waitFor();
    await soonEqual(() => write.words(3), '1. Close the valve.');
    await soonEqual(() => page.locator('.pasted').count(), 0);
    await undo(page, 'take the text as plain rows').click();
    await head.getByText('2 to decide').waitFor();
    await soonEqual(() => write.words(4), 'Mind the gap behind it.');
  });
  await place.tally.step('F8 goes on to the next question', async () => {
    await page.locator('.row[aria-label="Step 3"] .words').first().click();
    await page.keyboard.press('Escape');
    for (let n = 0; n < 6; n += 1) {
      await page.keyboard.press('F8');
      const at = page.locator('.row.selected');
      await at.waitFor();
      if ((await at.getAttribute('aria-label')) === 'Step 5') break;
    }
    await page.locator('.row[aria-label="Step 5"] .choices button:focus').waitFor();
  });
}

async function manyLines(place, visit, write) {
  const { page } = visit;
  if (place.screen.options.hasTouch) return;
  const dialog = page.getByRole('dialog', { name: /^The text has \d+ lines/ });
  const text = (n) => Array.from({ length: n }, (_, at) => `${at + 1}. Wipe shelf number ${at + 1}.`).join('\n');
  await place.tally.step('a text of more than 2,000 lines is asked about, and can be left', async () => {
    await begin(page);
    await paste(page, text(2_100));
    await dialog.getByRole('button', { name: 'Read them all' }).waitFor();
    await look(place, visit, 'write-many-lines');
    await dialog.getByRole('button', { name: 'Leave it' }).click();
    await dialog.waitFor({ state: 'detached' }).catch(() => dialog.waitFor({ state: 'hidden' }));
    await write.counts(0);
  });
  await place.tally.step('what a procedure has no room for is refused with its number', async () => {
    await paste(page, text(5_001));
    await page.getByText('Nothing was pasted: the procedure would have 5,001 steps, and it can have 5,000.').waitFor();
    await write.counts(0);
  });
}

export const PARTS = [mendedByHand, anew, leftOut, neither, unreadBefore, whetherAtAll, beforeItIsKept, belowAnAnswer, forTheWayBack, declined, plainRows, manyLines];
