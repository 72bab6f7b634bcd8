// What the margin tells is told by shapes and not by colour alone.
import assert from 'node:assert/strict';
import { writeNew } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { visited } from './visit.mjs';

const LINES = [
  'Close the flow valve and the return valve.',
  'Open the drain valve until the gauge reads 0 to 0.1 bar.',
  'Undo the two union nuts of the pump, G 1, 37 mm.',
  'later: size of the pump union nuts, on site',
];

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkToldWhole(tally, screen) {
  await visited(tally, screen, 'told whole', async (place, visit) => {
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await writeNew(visit.page, LINES);
    await marked(place, visit);
  });
}

async function marked({ tally }, { page }) {
  await tally.step('what rejects and what is only doubted have marks of different shapes beside their words', async () => {
    const shape = (level) => page.locator(`.finding.${level} .title .level-mark`).first().evaluate((mark) => [...mark.children].map(({ tagName }) => tagName));
    await page.locator('.finding.warn').first().waitFor();
    assert.deepEqual(await shape('reject'), ['circle', 'path']);
    assert.deepEqual(await shape('warn'), ['path']);
    const [n, nMarks] = [await page.locator('.finding:not(.accepted)').count(), await page.locator('.finding .level-mark').count()];
    assert.equal(nMarks, n);
  });
}
