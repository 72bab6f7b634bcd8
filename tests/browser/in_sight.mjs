// What is written stays in sight: the line while rows above it grow, the step that a docked line has become, the docked line
// above the keyboard of a tablet, and the step of a finding that is gone to. Whoever scrolls by hand is left there.
import assert from 'node:assert/strict';
import { writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

const LINES = [
  'Switch off at the wall isolator and lock it off.',
  'Prove dead at the motor terminals, all three pairs, 0 to 5 V.',
  'Close the gas cock and lock it.',
  'Close the flow valve and the return valve.',
  'Open the drain valve until the gauge reads 0 to 0.1 bar.',
  'Take off the case: four M6 screws, 10 mm.',
  'Undo the two union nuts of the pump, G 1, 37 mm.',
];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkInSight(tally, screen) {
  await visited(tally, screen, 'in sight', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await fromTheList(place, visit, write);
    await writeNew(visit.page, []);
    if (screen.options.hasTouch) await docked(place, visit, write);
    else await onADesk(place, visit, write);
  });
}

/** Where a part of the page stands, and the edge below which nothing of it is seen. */
const standing = (page, selector) =>
  page.evaluate((selector) => {
    const found = [...document.querySelectorAll(selector)].at(-1).getBoundingClientRect();
    const last = document.querySelector('.row.last');
    const isDocked = getComputedStyle(last).position === 'fixed';
    const edge = isDocked ? last.getBoundingClientRect().top : innerHeight;
    const head = document.querySelector('.head').getBoundingClientRect().bottom;
    return { top: found.top, bottom: found.bottom, head: Math.max(head, 0), edge, isDocked };
  }, selector);

/** Fails where a part of the page is not wholly seen. */
async function seen(page, selector) {
  const { top, bottom, head, edge } = await standing(page, selector);
  assert.ok(top >= head && bottom <= edge, `${selector} from ${top} to ${bottom}, seen from ${head} to ${edge}`);
}

const isSeen = (page, selector) => soonMatch(() => seen(page, selector).then(() => 'seen', String), /^seen$/);

/** Waits until the findings of the last step and their remedies stand, and nothing moves any more. */
async function settled(page) {
  await page.waitForTimeout(1200);
  const at = () => page.evaluate(() => [scrollY, document.documentElement.scrollHeight].join());
  for (let before; before !== (before = await at());) await page.waitForTimeout(200);
}

async function fromTheList({ tally, screen }, { page }, write) {
  await tally.step('a finding of the list leads to its step, also if that is selected and out of sight', async () => {
    await write.remove(13);
    await page.locator('.finding').first().waitFor();
    await page.keyboard.press('F9');
    const first = page.locator('.found-row').first();
    const step = (await first.locator('.place').innerText()).trim();
    await first.press('Enter');
    const row = page.locator('.row.selected:focus');
    await row.waitFor();
    assert.equal(await row.getAttribute('aria-label'), step);
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    await page.keyboard.press('F9');
    await page.locator('.found-row:focus').press('Enter');
    await isSeen(page, '.row.selected .body');
    await row.waitFor();
    if (!screen.options.hasTouch) await page.evaluate(() => scrollTo(0, 0));
  });
}

async function onADesk(place, { page }) {
  const line = page.getByRole('textbox', { name: 'New step' });
  await place.tally.step('twelve lines on, the line is seen whatever comes above it', async () => {
    await line.click();
    for (const words of LINES) {
      await page.keyboard.type(words);
      await page.keyboard.press('Enter');
      await settled(page);
      await seen(page, '#new-line');
      assert.equal(await page.evaluate(() => document.activeElement.id), 'new-line');
    }
  });
  await place.tally.step('whoever scrolls by hand is left there while findings come, and the next letter leads back', async () => {
    await page.keyboard.type('Take out the pump.');
    await page.keyboard.press('Enter');
    await page.mouse.move(640, 400);
    await page.mouse.wheel(0, -2000);
    await soonEqual(() => page.evaluate(() => scrollY), 0);
    await settled(page);
    assert.equal(await page.evaluate(() => scrollY), 0);
    await page.keyboard.type('R');
    await isSeen(page, '#new-line');
    await page.keyboard.press('Backspace');
  });
}

async function docked(place, visit) {
  const { page } = visit;
  const line = page.getByRole('textbox', { name: 'New step' });
  await place.tally.step('above the docked line each step is seen that it becomes, with all that comes with it', async () => {
    // As with the keyboard of the tablet.
    await page.setViewportSize({ width: 820, height: 760 });
    await line.tap();
    for (const words of LINES) {
      await page.keyboard.type(words);
      await page.keyboard.press('Enter');
      await settled(page);
      await seen(page, 'li[data-step]');
      assert.equal(await page.evaluate(() => document.activeElement.id), 'new-line');
    }
  });
  await look(place, visit, 'write-above-the-dock');
  await place.tally.step('where things may not move, it is there at once', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await page.evaluate(() => {
      globalThis.smooth = 0;
      const { scrollTo } = globalThis;
      globalThis.scrollTo = (to) => { globalThis.smooth += Number(to.behavior === 'smooth'); scrollTo.call(globalThis, to); };
    });
    await page.keyboard.type('Take out the pump.');
    await page.keyboard.press('Enter');
    await settled(page);
    await seen(page, 'li[data-step]');
    assert.equal(await page.evaluate(() => globalThis.smooth), 0);
    await page.emulateMedia({ reducedMotion: null });
  });
  await place.tally.step('letters in the docked line leave the rows where they were scrolled to', async () => {
    await page.evaluate(() => scrollTo({ top: 0 }));
    await page.keyboard.type('Clean the pump.');
    await settled(page);
    assert.equal(await page.evaluate(() => scrollY), 0);
    await page.keyboard.press('Enter');
    await isSeen(page, 'li[data-step]');
  });
  await place.tally.step('with little room above a keyboard the line stays docked, with its keys in one line', async () => {
    for (const height of [820, 600, 520, 400, 320]) {
      await page.setViewportSize({ width: 1180, height });
      await soonEqual(async () => (await standing(page, '#new-line')).isDocked, true, `${height}`);
      const { bottom, edge } = await standing(page, '#new-line');
      assert.ok(bottom <= height && height - edge <= Math.max(110, height * 0.35), `at ${height} from ${edge}, the line to ${bottom}`);
      assert.equal(await page.evaluate(() => document.activeElement.id), 'new-line');
    }
    await page.setViewportSize({ width: 375, height: 400 });
    await soonEqual(async () => (await standing(page, '#new-line')).isDocked, true);
    const tops = await page.locator('.new-line .leading-keys button').evaluateAll((keys) => keys.map((key) => key.getBoundingClientRect().top));
    assert.equal(new Set(tops).size, 1);
  });
  await look(place, visit, 'write-low-dock');
}
