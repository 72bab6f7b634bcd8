// Printing: what is chosen stands on pages as they come out, each says of what it is and whether it is fit, and nothing
// is cut off.
import assert from 'node:assert/strict';
import { withCircuits } from './lanes.mjs';
import { picture } from './looking.mjs';
import { goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkPrinting(tally, screen) {
  await visited(tally, screen, 'printing', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await rejected(place, visit);
    await parts(place, visit);
    await toPrinter(place, visit);
    await accepted(place, visit, write);
    await many(place, visit);
  });
}

const pages = (page) => page.getByRole('region', { name: /^Page \d+ of/ });

async function choose(page, what, value) {
  await page.getByRole('combobox', { name: what }).selectOption(value);
}

/** Waits until there are as many pages as the line above them says, each of the size of its paper. */
async function whole(page) {
  await page.waitForFunction(() => {
    const [n, said] = [document.querySelectorAll('.pages > section').length, document.querySelector('.print-choices [role=status]').textContent];
    return n > 0 && said === (n === 1 ? 'one page' : `${n} pages`);
  });
  // A sheet grows with what it has no room for: 297 mm and 11 in at 96 to the inch.
  const heights = await page.locator('.pages > section').evaluateAll((all) => all.map((one) => [one.classList.contains('a4') ? 1122.52 : 1056, Number.parseFloat(getComputedStyle(one).height)]));
  for (const [paper, is] of heights) assert.ok(Math.abs(paper - is) < 0.5, `${is} on ${paper}`);
  return pages(page).count();
}

async function rejected({ tally, screen }, visit) {
  const { page } = visit;
  await tally.step('every page of a rejected procedure says so, and every step stands on one', async () => {
    const steps = await page.locator('li[data-step]').count();
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    const n = await whole(page);
    assert.ok(n > 1, `${n} pages`);
    await soonEqual(() => pages(page).locator('header').filter({ hasText: 'REJECTED · 1 to mend' }).count(), n);
    await soonEqual(() => pages(page).locator('.step-on-paper').count(), steps);
    assert.ok((await pages(page).locator('.step-on-paper .lane').count()) >= 2 * steps);
    assert.ok((await pages(page).locator('.blank').count()) > 5);
  });
  await look({ tally, screen }, visit, 'print');
}

async function parts({ tally }, { page }) {
  await tally.step('a stage, the kit or what is to be found out alone, without lanes, on another paper', async () => {
    const all = await pages(page).locator('.step-on-paper').count();
    await choose(page, 'What', 'only strip');
    // The heading stands among everything too, so it tells nothing.
    await page.waitForFunction((all) => {
      const n = document.querySelectorAll('.pages .step-on-paper').length;
      return n > 0 && n < all;
    }, all);
    await whole(page);
    const some = await pages(page).locator('.step-on-paper').count();
    assert.ok(some > 2 && some < all, `${some} of ${all}`);
    await page.getByRole('checkbox', { name: 'lanes beside the steps' }).uncheck();
    await whole(page);
    await soonEqual(() => pages(page).locator('.lane').count(), 0);
    await page.getByRole('checkbox', { name: 'lanes beside the steps' }).check();
    await choose(page, 'What', 'only what is to be found out');
    await pages(page).getByText('Nothing is left to find out.').waitFor();
    await choose(page, 'What', 'only what to bring');
    await pages(page).getByText(/^gasket · DN 40, 3 mm · 2 of them .* · steps \d+, \d+$/).waitFor();
    await choose(page, 'What', 'everything');
    await choose(page, 'Paper', 'Letter');
    await page.locator('.pages > .letter').first().waitFor();
    await whole(page);
    const { width, height } = await page.locator('.pages > section').first().evaluate((one) => getComputedStyle(one));
    // 8.5 in by 11 in at 96 to the inch.
    assert.deepEqual([width, height].map((length) => Math.round(Number.parseFloat(length))), [816, 1056]);
    const [needs, has] = await page.locator('.pages').evaluate((all) => [all.scrollWidth, all.clientWidth]);
    assert.ok(needs <= has, `a sheet is ${needs} wide on ${has}`);
    await choose(page, 'Paper', 'A4');
    await page.locator('.pages > .a4').first().waitFor();
  });
}

async function toPrinter({ tally }, { page }) {
  await tally.step('the browser makes as many pages of it, and a file of them has the name of a rejected one', async () => {
    const n = await whole(page);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    assert.equal((pdf.toString('latin1').match(/\/Type \/Page\b/g) ?? []).length, n);
    await page.evaluate(() => {
      globalThis.print = () => {
        dispatchEvent(new Event('beforeprint'));
        globalThis.printedAs = document.title;
        dispatchEvent(new Event('afterprint'));
      };
    });
    const before = await page.title();
    await page.getByRole('main').getByRole('button', { name: 'Print', exact: true }).click();
    await soonMatch(() => page.evaluate(() => globalThis.printedAs), /\.REJECTED$/);
    await soonEqual(() => page.title(), before);
  });
}

async function accepted({ tally }, { page }, write) {
  await tally.step('put right, no page says that it is rejected', async () => {
    await goTo(page, 'Write');
    await write.putBack();
    await write.stamped('ACCEPTED');
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    const n = await whole(page);
    await soonEqual(() => pages(page).locator('header').filter({ hasText: 'REJECTED' }).count(), 0);
    await soonEqual(() => pages(page).locator('header').filter({ hasText: 'ACCEPTED' }).count(), n);
  });
}

/** How many lanes there are, how wide the narrowest words and the sheets are, and what of the heads is cut or covered. */
function lanesOnPaper() {
  const box = (element) => element.getBoundingClientRect();
  const widths = (selector) => [...document.querySelectorAll(`.pages > section ${selector}`)].map((one) => box(one).width);
  const [sheet] = document.querySelectorAll('.pages > section');
  const heads = [...sheet.querySelectorAll('.lane-head > span')].map(box);
  const above = Math.max(...[...sheet.querySelectorAll('header > :not(.lanes) *')].map((one) => box(one).bottom));
  const lanes = [...sheet.querySelector('.step-on-paper').querySelectorAll('.lane')].map(box);
  return {
    n: lanes.length,
    words: Math.min(...widths('.on-paper-said p')),
    sheet: box(sheet).width,
    isCut: [...sheet.querySelectorAll('.lane-head > span')].some((span) => span.scrollHeight > span.clientHeight + 1),
    covers: heads.some((head, at) => at > 0 && head.left < heads[at - 1].right - 0.5),
    isUnderTheTitle: heads.every((head) => head.top >= above - 0.5),
    isOnItsLane: heads.every((head, at) => head.left <= lanes[at].right && head.right >= lanes[at].left),
    isInTheHead: heads.every((head) => head.bottom <= box(sheet.querySelector('.on-page')).top + 0.5),
  };
}

async function many({ tally, screen }, { page }) {
  for (const n of [6, 10, 15]) {
    await tally.step(`with ${n} circuits, words keep half of the paper, and each lane has its name`, async () => {
      await goTo(page, 'Write');
      const file = { name: 'many.putback.json', mimeType: 'application/json', buffer: Buffer.from(withCircuits(n)) };
      await page.locator('input[type=file]').setInputFiles(file);
      await page.waitForFunction((n) => document.querySelectorAll('.lane-head:not(.apart)').length === n, n);
      await page.getByRole('button', { name: 'Print', exact: true }).click();
      for (const paper of ['A4', 'Letter']) {
        await choose(page, 'Paper', paper);
        await page.locator(`.pages > .${paper.toLowerCase()}`).first().waitFor();
        await whole(page);
        const { words, sheet, n: lanes, ...rest } = await page.evaluate(lanesOnPaper);
        assert.equal(lanes, n);
        assert.ok(words >= sheet / 2, `words of ${words} px on a sheet of ${sheet} px`);
        assert.deepEqual(rest, { isCut: false, covers: false, isUnderTheTitle: true, isOnItsLane: true, isInTheHead: true });
        await picture(page, `${screen.name}-print-${n}-on-${paper}`);
      }
    });
  }
}
