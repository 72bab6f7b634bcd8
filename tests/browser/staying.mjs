// From screen to screen and back: each keeps its place, and Write the row that has the keyboard.
import assert from 'node:assert/strict';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkStaying(tally, screen) {
  await visited(tally, screen, 'staying', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await openedReason(place, visit.page);
    await write.putBack();
    await scrolled(place, visit.page, write);
    await selected(place, visit.page, write);
    await undone(place, visit.page, write);
    await lettingGo(place, visit.page);
    await later(place, visit, write);
    await keys(place, visit.page);
  });
}

/** Waits until nothing scrolls by itself any more. */
const settled = (page) =>
  page.evaluate(async () => {
    for (let n = 0; n < 8; n += 1) await new Promise((done) => requestAnimationFrame(done));
  });

/** Goes to a screen by its tab, where a click of the tool would scroll the page first. */
const goTo = (page, screen) =>
  page.getByRole('navigation', { name: 'Screens' }).getByRole('button', { name: screen, exact: true }).evaluate((tab) => {
    tab.focus();
    tab.click();
  });

const fromTop = (page) => page.evaluate(() => Math.round(scrollY));

const topOf = (write, number) => write.row(number).evaluate((row) => row.getBoundingClientRect().top);

/** Fails unless a row is in the window and has the keyboard. */
async function inSightWithKeyboard(page, write, number) {
  await settled(page);
  const place = await write.row(number).evaluate((row) => ({
    isFocused: row === document.activeElement,
    top: row.getBoundingClientRect().top,
    bottom: row.getBoundingClientRect().bottom,
    height: innerHeight,
  }));
  assert.ok(place.isFocused, `the keyboard is on ${await page.evaluate(() => document.activeElement.outerHTML.slice(0, 90))}`);
  assert.ok(place.bottom > 100 && place.top < place.height - 60, `out of sight: ${JSON.stringify(place)}`);
}

async function openedReason({ tally }, page) {
  await tally.step('why a rule is there stands clear of the rows below it', async () => {
    const finding = page.locator('.row.found').first();
    await finding.getByRole('button', { name: 'Why', exact: true }).click();
    await finding.locator('.why-text').waitFor();
    const below = await finding.evaluate((row) => [row.querySelector('.margin').getBoundingClientRect().bottom, row.nextElementSibling.getBoundingClientRect().top]);
    assert.ok(below[0] <= below[1] + 1, `the text ends at ${below[0]}, the next row begins at ${below[1]}`);
    await finding.getByRole('button', { name: 'Why', exact: true }).click();
  });
}

async function scrolled({ tally }, page, write) {
  await tally.step('each screen comes back where it was left, and begins at its top', async () => {
    await write.row(16).evaluate((row) => row.scrollIntoView());
    await settled(page);
    const top = await topOf(write, 16);
    await goTo(page, 'Appliance');
    await settled(page);
    await soonEqual(() => fromTop(page), 0);
    await page.evaluate(() => scrollTo(0, 400));
    const appliance = await fromTop(page);
    assert.ok(appliance > 100);
    await goTo(page, 'Kit');
    await settled(page);
    await soonEqual(() => fromTop(page), 0);
    await goTo(page, 'Write');
    await settled(page);
    assert.ok(Math.abs((await topOf(write, 16)) - top) < 2, `step 16 at ${await topOf(write, 16)}, it was at ${top}`);
    await goTo(page, 'Appliance');
    await settled(page);
    assert.ok(Math.abs((await fromTop(page)) - appliance) < 2);
    await goTo(page, 'Write');
    await page.goBack();
    await settled(page);
    assert.ok(Math.abs((await fromTop(page)) - appliance) < 2, 'going back in the browser comes to the same place');
    await goTo(page, 'Write');
  });
}

async function selected({ tally }, page, write) {
  await tally.step('Write comes back to the selected row, with the keyboard on it', async () => {
    await write.selectRow(20);
    await goTo(page, 'Kit');
    await goTo(page, 'Write');
    await inSightWithKeyboard(page, write, 20);
  });
  await tally.step('after Esc, Down and Up go on from the row that has the keyboard', async () => {
    await page.keyboard.press('Escape');
    await page.locator('.row.selected').waitFor({ state: 'detached' });
    await page.keyboard.press('ArrowDown');
    await inSightWithKeyboard(page, write, 21);
    await page.keyboard.press('Escape');
    await page.locator('.row.selected').waitFor({ state: 'detached' });
    await page.keyboard.press('ArrowUp');
    await inSightWithKeyboard(page, write, 20);
  });
}

async function undone({ tally }, page, write) {
  await tally.step('undo from another screen leads to the row', async () => {
    await write.setWords(3, `${await write.words(3)} At once.`);
    await write.selectRow(await write.steps());
    await goTo(page, 'Appliance');
    await page.keyboard.press('Control+z');
    await page.waitForFunction(() => location.hash === '#/write');
    await inSightWithKeyboard(page, write, 3);
  });
}

async function lettingGo({ tally }, page) {
  await tally.step('a file that is no procedure is told in plain words, and no longer once something else is shown', async () => {
    await page.locator('input[type=file]').setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('Shut down the boiler.\n') });
    const told = page.locator('.banner.notice', { hasText: 'notes.txt was not opened: it is not a procedure of Putback.' });
    await told.waitFor();
    await page.waitForTimeout(1600);
    assert.ok(await told.isVisible());
    await goTo(page, 'Kit');
    await told.waitFor({ state: 'detached' });
  });
}

async function later(place, visit, write) {
  const { page } = visit;
  await place.tally.step('what is still to be found out makes a draft, and the stamp says so', async () => {
    await goTo(page, 'Write');
    await write.append('later: the size of the strainer');
    await write.stamped('ACCEPTED · DRAFT, 1 later');
    await soonEqual(() => page.locator('.stamp.draft').evaluate((stamp) => getComputedStyle(stamp).borderTopStyle), 'dashed');
  });
  await look(place, visit, 'write-draft');
  await place.tally.step('the walk through it begins in its first field', async () => {
    await page.getByRole('button', { name: '1 later: to be found out' }).click();
    await page.locator('.later-walk input:focus').waitFor();
    await page.keyboard.press('Control+z');
  });
}

async function keys({ tally }, page) {
  await tally.step('F1 opens a sheet of keys that is true on its screen', async () => {
    for (const [screen, title, first] of [['Kit', 'Keys here, and those of Write', 'Everywhere'], ['Procedures', 'Keys here', 'Procedures']]) {
      await goTo(page, screen);
      await page.getByRole('dialog').waitFor({ state: 'hidden' });
      await page.keyboard.press('F1');
      const sheet = page.getByRole('dialog', { name: title, exact: true });
      await sheet.waitFor();
      await soonEqual(() => sheet.getByRole('heading', { level: 3 }).first().innerText(), first);
      await page.keyboard.press('Escape');
      await sheet.waitFor({ state: 'hidden' });
    }
  });
}
