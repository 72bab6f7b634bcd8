// Where the keyboard is after a key that has gone with what it did, and where a press on words puts the caret.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { Appliance, goTo, writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { repository } from './places.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { visited } from './visit.mjs';

const LINES = [
  'Switch off at the wall isolator and lock it off.',
  'Prove dead at the motor terminals, all three pairs, 0 to 5 V.',
  'Close the flow valve and the return valve.',
  'Take off the case: four M6 screws, 10 mm.',
  'Do as in step 1 and step 2.',
  'Unlock the wall isolator and switch it on.',
];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkKeyboardStays(tally, screen) {
  await visited(tally, screen, 'the keyboard stays', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await pressed(place, visit, write);
    await moved(place, visit, write);
    await writeNew(visit.page, LINES);
    await linked(place, visit, write);
    await mended(place, visit);
    await onAppliance(place, visit);
  });
}

/** What has the keyboard: the name of a row, the id of a field, or the words of a key. */
const holder = (page) =>
  page.evaluate(() => {
    const active = document.activeElement;
    return active.getAttribute('aria-label') || active.id || active.innerText?.trim() || active.tagName;
  });

async function pressed({ tally, screen }, { page }, write) {
  const caret = () => page.evaluate(() => [document.activeElement.closest('li')?.ariaLabel, document.activeElement.selectionStart ?? 'none']);
  const before = (n, words) => {
    // Where a part of the words stands.
    const of = (row, words) => {
      const text = row.querySelector('p.words').firstChild;
      const range = document.createRange();
      range.setStart(text, text.data.indexOf(words));
      range.setEnd(text, text.data.indexOf(words) + 1);
      const { left, top, height } = range.getBoundingClientRect();
      return { x: left + 1, y: top + height / 2 };
    };
    return write.row(n).evaluate(of, words);
  };
  await tally.step('a press on words puts the caret there, and beside them it selects the row', async () => {
    for (const [n, words] of [[2, 'keeper'], [4, 'boiler'], [1, 'pump']]) {
      const at = (await write.words(n)).indexOf(words);
      const { x, y } = await before(n, words);
      await page.mouse.click(x, y);
      await soonEqual(caret, [`Step ${n}`, at]);
    }
    await page.keyboard.type('old ');
    await soonMatch(() => write.words(1), /the new old pump/);
    const { x, y } = await write.row(3).locator('.number').boundingBox();
    await page.mouse.click(x + 2, y + 30);
    await soonEqual(() => holder(page), 'Step 3');
  });
  if (!screen.options.hasTouch) return;
  await tally.step('a finger selects first, so that no keyboard comes unasked', async () => {
    const { x, y } = await before(2, 'keeper');
    await page.touchscreen.tap(x, y);
    await soonEqual(() => holder(page), 'Step 2');
  });
}

async function moved({ tally }, { page }, write) {
  const demo = JSON.parse(readFileSync(repository('public/demo/circulation-pump.putback.json'), 'utf8'));
  const at = demo.steps.findIndex(({ words }) => words.startsWith('Undo the four lid screws'));
  demo.steps.splice(3, 0, ...demo.steps.splice(at, 1));
  // Over the one that was written in before it would be asked about.
  demo.id = 'early';
  await tally.step('where the remedy of Alt+Enter moves the row, the keyboard moves with it', async () => {
    const buffer = Buffer.from(JSON.stringify(demo));
    await page.getByLabel('File to open').setInputFiles({ name: 'early.putback.json', mimeType: 'application/json', buffer });
    await soonMatch(() => write.words(4), /^Undo the four lid screws/);
    for (const inWords of [false, true]) {
      await write.selectRow(4);
      if (inWords) await page.keyboard.press('Enter');
      await page.keyboard.press('Alt+Enter');
      await page.getByRole('button', { name: /^Undo: move step 4/ }).waitFor();
      await soonMatch(() => holder(page), inWords ? /^Words of step [67]$/ : /^Step [67]$/);
      if (!inWords) await page.keyboard.press('Control+z');
    }
  });
}

async function linked({ tally }, { page }, write) {
  const key = page.getByRole('button', { name: 'Let the number follow it' });
  await tally.step('once a number follows its step, or stays text, the keyboard is on the row', async () => {
    await write.select(5);
    await key.press('Enter');
    await page.getByRole('button', { name: 'Undo: point at step 1' }).waitFor();
    await soonEqual(() => holder(page), 'Step 5');
    await key.click();
    await page.getByRole('button', { name: 'Undo: point at step 2' }).waitFor();
    await soonEqual(() => holder(page), 'Step 5');
    await page.keyboard.press('Control+z');
    await page.getByRole('button', { name: 'Leave it as text' }).press('Enter');
    await key.waitFor({ state: 'detached' });
    await soonEqual(() => holder(page), 'Step 5');
  });
}

async function mended({ tally }, { page }) {
  await tally.step('a remedy that is pressed by the keyboard leads to the step of its finding', async () => {
    const row = page.locator('li[data-step]').filter({ has: page.locator('.key.mend') }).first();
    const [name, key] = [await row.getAttribute('aria-label'), row.locator('.key.mend').first()];
    await key.press('Enter');
    await soonEqual(() => holder(page), name);
  });
}

async function onAppliance({ tally }, { page }) {
  await goTo(page, 'Appliance');
  const appliance = new Appliance(page);
  await tally.step('with the rest of the census answered the keyboard is on a question of it', async () => {
    await page.getByRole('button', { name: /^(The other \d+ are|None of the \d+ is) (not )?here$/ }).press('Enter');
    await soonEqual(() => page.evaluate(() => document.activeElement.closest('.census') !== null), true);
  });
  await tally.step('of two that are made one the keyboard is on the row of the one that stays', async () => {
    await appliance.open('flow valve');
    await page.getByRole('button', { name: 'Same as …' }).click();
    await page.getByRole('combobox', { name: 'It is the same as' }).selectOption({ label: 'return valve' });
    const make = page.getByRole('button', { name: 'Make one of the two' });
    await make.waitFor();
    for (const one of await page.locator('.whole fieldset').all()) await one.getByRole('radio').first().check();
    await make.press('Enter');
    await soonMatch(() => holder(page), /^flow valve/);
    assert.ok(await page.locator('.thing-row:focus').isVisible());
  });
  await tally.step('of one that is made two it is on the row of the second', async () => {
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Escape');
    await appliance.open('wall isolator');
    await page.getByRole('button', { name: 'It is two …' }).click();
    await page.getByRole('textbox', { name: 'What the second one is called' }).fill('other isolator');
    await page.locator('.whole .things').getByRole('checkbox').first().check();
    await page.getByRole('button', { name: 'Make two of it' }).press('Enter');
    await soonMatch(() => holder(page), /^other isolator/);
  });
}
