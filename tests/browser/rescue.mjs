// The program does not start: what is kept on the device is handed out as files all the same, also without a server.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { openRecord } from './device.mjs';
import { out } from './places.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

const DEMO = 'Renew the heating pump P2 of a boiler plant (invented)';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkRescue(tally, screen) {
  await visited(tally, screen, 'the program does not start', async (place, visit) => {
    await nothingKept(place, visit);
    const write = new Write(visit.page);
    await write.open(place.server.address);
    await write.untilKept(() => write.setWords(2, 'Tell the keeper: "off for three hours", <b>äöü</b> 12 °C.'));
    await crashes(place, visit);
    await withoutServer(place, visit);
  });
}

const offered = (page) => page.getByRole('region', { name: 'Kept on this device' });

async function nothingKept({ tally, server }, { page, complaints }) {
  await tally.step('on a device that keeps nothing it says so, and makes no database', async () => {
    await page.route('**/*.wasm', (route) => route.abort());
    await page.goto(server.address);
    await page.getByText(/^Putback could not start\./).waitFor();
    await offered(page).getByText('No procedure is kept').waitFor();
    await soonEqual(() => page.evaluate(() => indexedDB.databases()), []);
    await page.unroute('**/*.wasm');
  });
  complaints.length = 0;
}

async function saved(page, name) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: `Save as a file: ${DEMO}` }).click(),
  ]);
  assert.equal(download.suggestedFilename(), 'circulation-pump.NOT-CHECKED.putback.json');
  const path = out(name);
  await download.saveAs(path);
  return readFileSync(path, 'utf8');
}

async function crashes(place, { page, complaints }) {
  await place.tally.step('if the program breaks down while it starts, what is kept can be saved', async () => {
    await page.addInitScript(() => {
      const { getElementById } = Document.prototype;
      Document.prototype.getElementById = function breaking(id) {
        if (id === 'app' && sessionStorage.getItem('breaks')) throw new Error('broken for the test');
        return getElementById.call(this, id);
      };
    });
    await page.evaluate(() => sessionStorage.setItem('breaks', 'yes'));
    await page.reload();
    await offered(page).getByText(DEMO).waitFor();
    const { text } = JSON.parse(await openRecord(page));
    assert.equal(await saved(page, `${place.screen.name}-crash.putback.json`), text);
  });
  await place.tally.step('once it starts again, the program stands and everything is there', async () => {
    await page.evaluate(() => sessionStorage.removeItem('breaks'));
    await page.reload();
    await new Write(page).row(2).getByText('<b>äöü</b>').waitFor();
  });
  complaints.length = 0;
}

async function withoutServer(place, visit) {
  const { page, complaints } = visit;
  await place.tally.step('without server and without the program, the file is what was kept', async () => {
    await page.getByText(/Works offline: checked/).waitFor();
    const { text } = JSON.parse(await openRecord(page));
    await page.evaluate(async () => {
      for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        for (const request of await cache.keys()) if (request.url.endsWith('.wasm')) await cache.delete(request);
      }
    });
    await place.server.stop();
    await page.reload();
    await offered(page).getByText(DEMO).waitFor();
    assert.equal(await saved(page, `${place.screen.name}-rescued.putback.json`), text);
    assert.ok(text.includes('<b>äöü</b>'));
  });
  complaints.length = 0;
  await look(place, visit, 'rescue');
}
