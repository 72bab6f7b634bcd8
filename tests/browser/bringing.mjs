// The map of another procedure brought into this one: whole or in parts, from this device or a file.
import assert from 'node:assert/strict';
import { Appliance, Procedures, goTo } from './pages/screens.mjs';
import { repository } from './places.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual } from './soon.mjs';
import { look, visited } from './visit.mjs';

const PUMP = 'Renew the heating pump P2 of a boiler plant (invented)';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkBringing(tally, screen) {
  await visited(tally, screen, 'bringing a map', async (place, visit) => {
    const { page } = visit;
    await new Write(page).open(place.server.address);
    // What is on the device is listed once it is kept.
    await page.locator('#kept').getByText(/^kept /).waitFor();
    await goTo(page, 'Procedures');
    await new Procedures(page).beginNew();
    await goTo(page, 'Appliance');
    await wholeMap(place, visit);
    await part(place, visit);
    await fromFile(place, visit);
  });
}

const panel = (page) => page.getByRole('region', { name: 'Bring the map from another procedure' });
const key = (page) => page.getByRole('button', { name: 'Bring the map from …' });

/** Presses Tab until something has the keyboard; fails after many. */
async function tabTo(page, locator) {
  for (let n = 0; n < 80; n += 1) {
    if (await locator.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  assert.fail(`${locator} cannot be reached by Tab`);
}

async function wholeMap(place, visit) {
  const { page } = visit;
  await place.tally.step('an empty appliance offers it', async () => {
    await page.getByText('Nothing here yet. Things you mention while writing appear here.').waitFor();
    await key(page).focus();
    await page.keyboard.press('Enter');
    await panel(page).waitFor();
    await tabTo(page, panel(page).getByRole('button', { name: `Take its map: ${PUMP}` }));
  });
  await look(place, visit, 'bringing-from');
  await place.tally.step('Esc leaves it as it was', async () => {
    await page.keyboard.press('Escape');
    await panel(page).waitFor({ state: 'detached' });
    assert.ok(await key(page).evaluate((element) => element === document.activeElement));
  });
  await place.tally.step('the whole map comes by keys alone', async () => {
    await page.keyboard.press('Enter');
    await tabTo(page, panel(page).getByRole('button', { name: `Take its map: ${PUMP}` }));
    await page.keyboard.press('Enter');
    await panel(page).getByText(/^New here: \d+ things: \d circuits, /).waitFor();
    await soonEqual(() => panel(page).locator('.meetings').count(), 0, 'nothing here has any of the names');
    await tabTo(page, panel(page).getByRole('button', { name: 'Bring it' }));
  });
  await look(place, visit, 'bringing-whole');
  await place.tally.step('it is there, says where it came from, and one undo takes it back', async () => {
    await page.keyboard.press('Enter');
    await page.getByText(/^Brought: \d+ things: /).waitFor();
    await new Appliance(page).row('pump').waitFor();
    const remark = page.getByRole('textbox', { name: 'Remark', exact: true });
    assert.ok((await remark.inputValue()).startsWith(`Map brought from "${PUMP}" (`));
    await page.keyboard.press('Control+z');
    await page.getByText('Nothing here yet. Things you mention while writing appear here.').waitFor();
    await soonEqual(() => remark.inputValue(), '');
    await page.keyboard.press('Control+y');
    await new Appliance(page).row('pump').waitFor();
  });
}

async function part(place, visit) {
  const { page } = visit;
  const question = (name) => panel(page).getByRole('group', { name, exact: true });
  await place.tally.step('of equal names each is asked about once, and nothing is new while all are the same', async () => {
    await key(page).click();
    await panel(page).getByRole('button', { name: `Take its map: ${PUMP}` }).click();
    await panel(page).getByText('Nothing of it is new: all of it is here already.').waitFor();
    assert.ok(await panel(page).getByRole('button', { name: 'Bring it' }).isDisabled());
    await soonEqual(() => question('suction flange connection').count(), 1);
  });
  await place.tally.step('of what is chosen only that comes, with what it needs', async () => {
    await panel(page).getByRole('radio', { name: 'only what is chosen' }).check();
    await panel(page).getByText('Nothing is chosen yet.').waitFor();
    await panel(page).getByRole('group', { name: 'Components, each with its connections' }).getByRole('checkbox', { name: 'pump', exact: true }).check();
    await question('pump component').getByRole('radio', { name: 'a new one' }).check();
    await panel(page).getByText(/^New here: \d+ things: 1 component, \d connections and 1 setting\./).waitFor();
    await soonEqual(() => question('suction flange connection').count(), 0, 'the flanges of another pump are others');
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'bringing-chosen');
  await place.tally.step('the new one has a name of its own, and the one here is as it was', async () => {
    await panel(page).getByRole('button', { name: 'Bring it' }).click();
    await new Appliance(page).row('pump 2').waitFor();
    await new Appliance(page).row('pump').waitFor();
    await new Appliance(page).row('suction flange 2').waitFor();
    await page.getByRole('button', { name: `Undo: bring the map from "${PUMP}"` }).click();
    await new Appliance(page).row('pump 2').waitFor({ state: 'detached' });
  });
}

async function fromFile(place, visit) {
  const { page } = visit;
  await place.tally.step('a file has its map too', async () => {
    await key(page).click();
    await panel(page).getByLabel('File with the map').setInputFiles(repository('public/demo/gas-valve.putback.json'));
    await panel(page).getByRole('heading', { name: /^The map of "/ }).waitFor();
    await panel(page).getByText(/^New here: /).waitFor();
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'bringing-file');
  await place.tally.step('what cannot be read says why, and changes nothing', async () => {
    await panel(page).getByRole('button', { name: 'Another procedure' }).click();
    await panel(page).getByLabel('File with the map').setInputFiles({ name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('pump') });
    await panel(page).getByRole('alert').getByText(/^notes\.txt: /).waitFor();
    await panel(page).getByRole('button', { name: 'Leave it' }).click();
    await panel(page).waitFor({ state: 'detached' });
  });
}
