// The lanes: every state drawn and told in words, and findings that hang on the very boundary that they are about.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fitsTheWidth, picture } from './looking.mjs';
import { goTo } from './pages/screens.mjs';
import { repository } from './places.mjs';
import { Write } from './pages/write.mjs';
import { begin, look, visited } from './visit.mjs';

/** What the samples show between them: a selector for the drawing, and the words that tell it. */
const STATES = [
  ['.solid', /./],
  ['[fill^="url(#bars"]', /shut down/],
  ['[fill^="url(#hatch"]', /(off|shut off), /],
  ['[fill^="url(#dots"]', /released, not proved/],
  ['.edge.two', /proved (dead|at zero)/],
  ['.edge.three', /locked/],
  ['[fill^="url(#pins"]', /under test/],
  ['.bracket', /under test/],
  ['.ring', /, open/],
  ['.blank', /open and blanked off/],
];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkLanes(tally, screen) {
  await visited(tally, screen, 'lanes', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await boundaries(place, visit, write);
    await states(place, visit);
    await headsInLanes(place, visit);
    await many(place, visit);
  });
}

async function boundaries(place, visit, write) {
  const { page } = visit;
  await place.tally.step('findings hang on the boundary in their lane, however the page wraps and scrolls', async () => {
    await write.putBack();
    for (const words of ['Prove the pump body', 'Prove the box terminals']) {
      const all = await page.locator('li[data-step] .words').evaluateAll((all) => all.map((one) => one.value ?? one.textContent));
      await write.remove(all.findIndex((text) => text.startsWith(words)) + 1);
    }
    await page.locator('.finding.reject').nth(1).waitFor();
    const size = page.viewportSize();
    for (const width of [size.width, 700, 320]) {
      await page.setViewportSize({ width, height: size.height });
      for (const scroll of [0, 333, 900]) {
        await page.evaluate((scroll) => scrollTo(0, scroll), scroll);
        await onBoundaries(page);
      }
    }
    await page.setViewportSize(size);
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    await onBoundaries(page);
    await page.evaluate(() => document.documentElement.style.removeProperty('font-size'));
  });
  await look(place, visit, 'write-findings');
}

/** Fails unless every cross stands on a lane at the begin of its row, and every hairline begins there. */
async function onBoundaries(page) {
  const rows = await page.locator('.row.found').evaluateAll((rows) =>
    rows.map((row) => {
      const middle = (element) => {
        const { left, top, width, height } = element.getBoundingClientRect();
        return [left + width / 2, top + height / 2];
      };
      const hair = row.querySelector('.hair').getBoundingClientRect();
      return {
        top: row.getBoundingClientRect().top,
        lanes: [...row.querySelectorAll('.lane')].map((lane) => middle(lane)[0]),
        crosses: [...row.querySelectorAll('.cross')].map(middle),
        hair: [hair.left, hair.top, hair.right],
        words: row.querySelector('.content').getBoundingClientRect().left,
      };
    }));
  assert.ok(rows.some((row) => row.crosses.length > 0), 'no cross is drawn');
  for (const row of rows) {
    for (const [x, y] of row.crosses) {
      assert.ok(row.lanes.some((lane) => Math.abs(lane - x) < 1), `a cross at ${x}, lanes at ${row.lanes}`);
      assert.ok(Math.abs(y - row.top) < 1.5, `a cross at ${y}, its row begins at ${row.top}`);
    }
    const [left, top, right] = row.hair;
    if (row.crosses.length > 0) assert.ok(Math.abs(left - Math.min(...row.crosses.map(([x]) => x))) < 1, 'the hairline begins beside its cross');
    assert.ok(Math.abs(top - row.top) < 1.5 && right > row.words, 'the hairline does not reach the words');
  }
}

async function states(place, visit) {
  const { page } = visit;
  const drawn = new Set();
  let told = '';
  await place.tally.step('every change of a lane is told in words', async () => {
    for (let sample = 0; sample < 3; sample += 1) {
      await goTo(page, 'Procedures');
      await page.getByRole('button', { name: /^Open a copy of/ }).nth(sample).click();
      await page.locator('li[data-step]').first().waitFor();
      const rows = await page.locator('li[data-step] .lanes').evaluateAll((all, selectors) =>
        all.map((lanes) => ({
          changes: [...lanes.querySelectorAll('.lane')].filter((lane) => lane.querySelector('.change')).length,
          drawn: selectors.filter((selector) => lanes.querySelector(selector)),
          words: lanes.querySelector('.unseen').textContent,
        })), STATES.map(([selector]) => selector));
      for (const row of rows) {
        assert.equal(row.words.split(';').length - 1, row.changes, `${row.changes} lanes change: ${row.words}`);
        row.drawn.forEach((selector) => drawn.add(selector));
        told += `${row.words}\n`;
      }
    }
  });
  await place.tally.step('the states are drawn each in its way, and told', async () => {
    for (const [selector, words] of STATES) {
      assert.ok(drawn.has(selector), `${selector} is drawn nowhere`);
      assert.match(told, words);
    }
  });
}

/** The windows in which the head is looked at. */
const WIDTHS = [1920, 1280, 1180, 820, 320];

/** The names of the lanes never lie over each other, and what the checker cannot know is read whole. */
async function headsInLanes({ tally, screen }, { page }) {
  const size = page.viewportSize();
  await goTo(page, 'Write');
  await tally.step('names of lanes keep to themselves, and what the verdict rests on is read whole, with large text too', async () => {
    for (const text of ['100%', '150%', '200%']) {
      await page.evaluate((text) => document.documentElement.style.setProperty('font-size', text), text);
      for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: size.height });
        const [names, told] = await page.evaluate(headAndTold);
        names.forEach(({ name, left }, at) => {
          const before = names[at - 1];
          assert.ok(!before || left > before.right - 1, `${name} lies over ${before?.name} at ${width}, text at ${text}`);
        });
        assert.match(told.words, /cannot know what nobody named$/);
        assert.ok(told.isWhole, `what it was told of is cut off at ${width}, text at ${text}`);
      }
      await picture(page, `${screen.name}-heads-${text.slice(0, -1)}`);
    }
    await page.evaluate(() => document.documentElement.style.removeProperty('font-size'));
    await page.setViewportSize(size);
  });
}

/** Where the letters of the names stand, whose boxes are a little higher than they are; and the line of what the checker was told of, and whether it has room. */
function headAndTold() {
  const names = [...document.querySelectorAll('.lane-head > span')].map((name) => {
    const range = document.createRange();
    range.selectNodeContents(name);
    const { left, right } = range.getBoundingClientRect();
    const style = getComputedStyle(name);
    const around = style.writingMode === 'horizontal-tb' ? 0 : Number.parseFloat(style.fontSize) / 10;
    return { name: name.textContent, left: left + around, right: right - around };
  });
  const told = document.querySelector('.head .told');
  const { left, right } = told.getBoundingClientRect();
  const isWhole = told.scrollWidth <= told.clientWidth && told.scrollHeight <= told.clientHeight && left >= 0 && right <= innerWidth;
  return [names, { words: told.textContent, isWhole }];
}

/** The demonstration with so many circuits. */
export function withCircuits(n) {
  const document_ = JSON.parse(readFileSync(repository('public/demo/circulation-pump.putback.json'), 'utf8'));
  const { circuits } = document_.map;
  const [first] = circuits;
  for (let at = circuits.length; at < n; at += 1) {
    const sections = (first.sections ?? []).map((section, of) => ({ ...section, id: `section-${at}-${of}`, name: `section ${at} ${of}` }));
    circuits.push({ ...first, id: `circuit-${at}`, name: `circuit number ${at}`, sections });
  }
  return JSON.stringify(document_);
}

async function many({ tally, screen }, { page }) {
  const size = page.viewportSize();
  await goTo(page, 'Write');
  for (const n of [10, 15]) {
    await tally.step(`with ${n} circuits, half of the width is left for words, and nothing scrolls sideways`, async () => {
      const file = { name: 'many.putback.json', mimeType: 'application/json', buffer: Buffer.from(withCircuits(n)) };
      await page.locator('input[type=file]').setInputFiles(file);
      await page.waitForFunction((n) => document.querySelectorAll('.lane-head:not(.apart)').length === n, n);
      await page.locator('li[data-step]').nth(3).locator('.words').click();
      for (const width of [1280, 1024, 820, 320]) {
        await page.setViewportSize({ width, height: size.height });
        await fitsTheWidth(page);
        const lanes = await page.locator('li[data-step] .lanes').first().evaluate((lanes) => lanes.getBoundingClientRect().width);
        const words = await page.locator('.end .content').evaluate((words) => words.getBoundingClientRect().width);
        assert.ok(lanes <= width / 2 + 1, `lanes of ${lanes} px at ${width}`);
        if (width !== 1024) assert.ok(words >= width / 2 - 1, `words of ${words} px at ${width}`);
        await picture(page, `${screen.name}-lanes-${n}-at-${width}`);
      }
      await page.setViewportSize(size);
    });
  }
}
