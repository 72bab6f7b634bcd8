// What was to be remembered for the way back, on the job: it is heard of where it was written, and comes up in large words
// where its thing goes back, with the step that it is from.
import assert from 'node:assert/strict';
import { Follow } from './pages/follow.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

const REMINDER = 'The arrow on its body points down.';
const step = (id, stage, words, action, more) => ({ id, stage, words, actions: [{ do: action, on: ['trap'], says: [[0, words.length - 1]] }], ...more });
const DOCUMENT = {
  putback: 1, id: 'trap', title: 'Clean a trap (invented)', country: 'GB',
  map: { components: [{ id: 'trap', name: 'trap' }] },
  steps: [
    step('s1', 'strip', 'Take out the trap.', 'remove', { back: REMINDER }),
    step('s2', 'bench work', 'Clean the trap.', 'clean'),
    step('s3', 'refit', 'Refit the trap.', 'fit'),
  ],
};

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkRemembering(tally, screen) {
  await visited(tally, screen, 'a reminder on the job', async (place, visit) => {
    const { page } = visit;
    await new Write(page).open(place.server.address);
    await page.getByLabel('File to open').setInputFiles({
      name: 'trap.putback.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(DOCUMENT)),
    });
    await page.getByText('Take out the trap.').first().waitFor();
    const follow = new Follow(page);
    const now = page.getByRole('region', { name: 'Step to do' });
    const reminder = now.locator('.reminder');
    await place.tally.step('what is to be remembered stands at the step that it is from, and not as a reminder', async () => {
      await new Write(page).follow();
      await follow.ready();
      await now.getByText(`back: ${REMINDER}`).waitFor();
      await soonEqual(() => reminder.count(), 0);
    });
    await place.tally.step('between, nothing is said of it', async () => {
      await follow.doStep();
      await soonEqual(() => follow.current(), 2);
      await soonEqual(() => now.getByText(REMINDER).count(), 0);
    });
    await place.tally.step('it comes up where its thing goes back, in sight beside the words, with the step that it is from', async () => {
      await follow.doStep();
      await soonEqual(() => follow.current(), 3);
      await soonEqual(async () => (await reminder.innerText()).trim(), `Remember, from step 1: ${REMINDER}`);
      const { y, height } = await reminder.boundingBox();
      const words = await now.getByRole('heading').first().boundingBox();
      assert.ok(y >= words.y + words.height - 1 && y + height <= page.viewportSize().height, `it stands at ${y}`);
      const size = await reminder.evaluate((line) => Number.parseFloat(getComputedStyle(line).fontSize));
      assert.ok(size >= 18, `${size} px is no size to be read at arm's length`);
    });
    await look(place, visit, 'follow-reminder');
    await place.tally.step('a reload brings it up again', async () => {
      await page.reload();
      await follow.ready();
      await reminder.getByText(REMINDER).waitFor();
    });
  });
}
