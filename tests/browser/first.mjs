// A first visit: what stands before the editor is there, what is said if it cannot be had, and each way to begin.
import assert from 'node:assert/strict';
import { held } from './device.mjs';
import { fitsTheWidth, picture } from './looking.mjs';
import { Procedures, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { PATIENCE, begin, look, visited } from './visit.mjs';

const EDITOR = /-editor\.wasm$/;

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkFirst(tally, screen) {
  await visited(tally, screen, 'a first visit without the editor', withoutEditor);
  await visited(tally, screen, 'a first visit that begins with nothing', beginNew);
}

const tryIt = (page) => page.getByRole('button', { name: /^Try it/ });
const trouble = (page) => page.getByRole('alert').filter({ hasText: 'The editor could not be fetched.' });

/** Each try leaves two lines in the log of the browser, the last when it is over; they are left out of what is looked for. */
async function afterATry(complaints) {
  const isOver = () => complaints.some((line) => /HTTP status code is not ok/.test(line));
  for (const end = Date.now() + PATIENCE; Date.now() < end && !isOver(); ) {
    await new Promise((done) => setTimeout(done, 50));
  }
  complaints.length = 0;
}

async function withoutEditor(place, visit) {
  const { tally, server } = place;
  const { page, complaints } = visit;
  server.withhold(EDITOR);
  await tally.step('what this is for and how to begin stands before the editor is there', async () => {
    await page.goto(server.address);
    await tryIt(page).waitFor();
    await page.getByText('Nothing here yet.').waitFor();
    assert.match(page.url(), /#\/procedures$/);
  });
  await afterATry(complaints);
  await look(place, visit, 'first-visit');
  await page.setViewportSize({ width: 320, height: 640 });
  await tally.look('first-visit: fits 320', () => fitsTheWidth(page));
  await picture(page, `${place.screen.name}-first-visit-320`);
  await page.setViewportSize(place.screen.options.viewport);
  await tally.step('what needs the editor says that it cannot be had, and changes nothing', async () => {
    await tryIt(page).click();
    await trouble(page).waitFor();
    await page.getByRole('button', { name: 'New procedure' }).click();
    await trouble(page).waitFor();
    await soonEqual(() => held(page, 'docs'), []);
  });
  await tally.step('so does a screen of the editor, with a way to try again', async () => {
    await goTo(page, 'Write');
    await trouble(page).waitFor();
    await afterATry(complaints);
    await look(place, visit, 'first-visit-no-editor');
    server.withhold();
    await page.getByRole('button', { name: 'Try again' }).click();
    await new Write(page).stamped('REJECTED');
    await soonEqual(() => trouble(page).count(), 0);
  });
  await tally.step('from then on the page begins with what was open', async () => {
    await new Write(page).untilKept(() => new Write(page).putBack());
    await page.goto('about:blank');
    await page.goto(server.address);
    await new Write(page).stamped('ACCEPTED');
  });
  await tally.step('the list begins by itself too, and then knows which one is open', async () => {
    await goTo(page, 'Procedures');
    await page.reload();
    await page.getByText('open now').waitFor();
    await soonEqual(async () => (await new Procedures(page).titles()).length, 1);
    await soonEqual(() => tryIt(page).count(), 0);
  });
}

async function beginNew({ tally, server }, { page }) {
  await tally.step('a new procedure is the only one then, without the demonstration', async () => {
    await page.goto(server.address);
    await new Procedures(page).beginNew();
    await page.getByRole('textbox', { name: 'What the job is for' }).waitFor();
    await goTo(page, 'Procedures');
    await new Procedures(page).untilTitles('Untitled procedure');
  });
  await tally.step('a file that is no procedure is refused in words', async () => {
    await page.locator('input[type=file]').first().setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from('{') });
    await page.getByRole('alert').filter({ hasText: 'a.json was not opened' }).waitFor();
  });
}
