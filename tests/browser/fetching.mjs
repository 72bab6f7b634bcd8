// The list of procedures while the rest of the program does not come: never answered, or refused.
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

const EDITOR = '**/*-editor.wasm';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkFetching(tally, screen) {
  await visited(tally, screen, 'the editor does not come', async (place, visit) => {
    await unanswered(place, visit);
    await refused(place, visit);
  });
}

async function unanswered(place, visit) {
  const { page } = visit;
  let answer;
  const waits = new Promise((done) => { answer = done; });
  await page.route(EDITOR, async (route) => {
    await waits;
    await route.continue();
  });
  await place.tally.step('a key that needs the editor says at once that it is being fetched', async () => {
    await page.goto(place.server.address);
    await page.getByRole('button', { name: 'New procedure' }).click();
    await page.getByRole('status').getByText('The editor is being fetched …').waitFor({ timeout: 1000 });
  });
  await place.tally.step('after ten seconds it says what to do, and hands out what is kept', async () => {
    await page.getByText('The editor has not come within 10 seconds.').waitFor({ timeout: 12_000 });
    await page.getByRole('region', { name: 'Kept on this device' }).getByText('No procedure is kept').waitFor();
    await page.getByRole('button', { name: 'Load the page again' }).waitFor();
  });
  await look(place, visit, 'procedures-late');
  await place.tally.step('what was asked for last is opened once, if it comes after all', async () => {
    await page.getByRole('button', { name: /^Try it/ }).click();
    answer();
    await page.locator('li[data-step]').first().waitFor();
    await soonMatch(() => page.evaluate(() => location.hash), /write/);
    await page.unroute(EDITOR);
  });
}

async function refused(place, visit) {
  const { page, complaints } = visit;
  await place.tally.step('if it cannot be fetched, that is said at once, and it can be tried again', async () => {
    await page.evaluate(async () => {
      for (const one of await navigator.serviceWorker.getRegistrations()) await one.unregister();
      for (const name of await caches.keys()) await caches.delete(name);
    });
    await page.route(EDITOR, (route) => route.abort());
    await page.goto(`${place.server.address}#/procedures`);
    await page.reload();
    const told = page.getByRole('alert').getByText('The editor could not be fetched.');
    await told.waitFor();
    await page.getByRole('region', { name: 'Kept on this device' }).getByRole('button', { name: /^Save as a file/ }).first().waitFor();
    await page.unroute(EDITOR);
    await page.getByRole('button', { name: 'Try again' }).click();
    await told.waitFor({ state: 'detached' });
    await page.getByText('open now').waitFor();
    await soonEqual(() => page.getByRole('region', { name: 'Kept on this device' }).count(), 0);
  });
  complaints.length = 0;
  await place.tally.step('then procedures can be opened as ever', async () => {
    await page.getByRole('button', { name: /^Open a copy of/ }).first().click();
    await new Write(page).row(1).waitFor();
  });
}
