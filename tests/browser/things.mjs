// The things of the appliance: found, made one, made two, taken out, and what stands before them.
import assert from 'node:assert/strict';
import { Appliance, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkThings(tally, screen) {
  await visited(tally, screen, 'things', async (place, visit) => {
    await new Write(visit.page).open(place.server.address);
    await goTo(visit.page, 'Appliance');
    await find(place, visit);
    await takeOut(place, visit);
    await makeOne(place, visit);
    await stayTwo(place, visit);
    await makeTwo(place, visit);
  });
}

async function find(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('a thing is found by what it is, with the steps that name it', async () => {
    await appliance.find('drain');
    assert.deepEqual(await appliance.rows(), ['drain cock', 'drain hose']);
    await page.getByRole('status').filter({ hasText: /^2 of \d+$/ }).waitFor();
    assert.match(await appliance.row('drain cock').innerText(), /in steps \d+/);
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'things-found');
  await place.tally.step('its sheet says what stands before it', async () => {
    await appliance.find('pump');
    await appliance.open('suction flange');
    assert.match(await page.locator('.way').innerText(), /^insulation shell\s*>\s*suction flange$/);
  });
  await appliance.find('');
}

async function takeOut(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('what is used nowhere is listed, and taken out from there', async () => {
    await appliance.add('component', 'spare bracket');
    await page.getByRole('checkbox', { name: 'used nowhere' }).check();
    // The step of the demo that is out is the only one at the box terminals.
    assert.deepEqual(await appliance.rows(), ['spare bracket', 'box terminals']);
    await page.getByRole('button', { name: 'Take out the spare bracket' }).click();
    await appliance.row('spare bracket').waitFor({ state: 'detached' });
    await page.getByRole('checkbox', { name: 'used nowhere' }).uncheck();
    await page.getByRole('button', { name: 'Undo: take the spare bracket out' }).waitFor();
  });
}

async function makeOne(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('two things that are one: what differs is chosen first', async () => {
    await appliance.add('connection', 'cover screws');
    await page.getByRole('button', { name: 'Same as …' }).click();
    await appliance.choose('It is the same as', 'lid screws');
    const key = page.getByRole('button', { name: 'Make one of the two' });
    assert.ok(await key.isDisabled(), 'it could be made before anything was chosen');
    await appliance.pick('Its name', 'lid screws');
    await appliance.pick('What it does', 'fixing');
    await appliance.pick('How many fasteners', '4');
  });
  await look(place, visit, 'things-same');
  await place.tally.step('they are one, and the verdict is as before', async () => {
    await page.getByRole('button', { name: 'Make one of the two' }).click();
    await appliance.row('cover screws').waitFor({ state: 'detached' });
    assert.equal(await page.locator('.map-list .sheet').getByRole('textbox', { name: 'Other names' }).inputValue(), 'screws of the lid, cover screws');
    await new Write(page).stamped('REJECTED · 1 to mend');
  });
  await place.tally.step('one undo makes them two again', async () => {
    await page.getByRole('button', { name: 'Undo: make one of the lid screws and the cover screws' }).click();
    await appliance.row('cover screws').waitFor();
  });
}

async function stayTwo(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('two things that are two stay two, with the reason', async () => {
    await appliance.open('pump');
    await page.getByRole('button', { name: 'Same as …' }).click();
    await appliance.choose('It is the same as', 'insulation shell');
    await page.getByText('The pump and the insulation shell stay two: the pump is behind the insulation shell').waitFor();
    assert.equal(await page.getByRole('button', { name: 'Make one of the two' }).count(), 0);
  });
}

async function makeTwo(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('one thing that is two: the second gets a name and steps', async () => {
    await appliance.open('notice');
    await page.getByRole('button', { name: 'It is two …' }).click();
    await appliance.set('What the second one is called', 'door notice');
    await page.getByRole('group', { name: 'The steps for which it stands' }).getByRole('checkbox').first().check();
  });
  // Whatever lies half under the head that stays at the top would count as too small.
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'things-two');
  await place.tally.step('both are there, and the words of the step follow', async () => {
    await page.getByRole('button', { name: 'Make two of it' }).click();
    await appliance.row('door notice').waitFor();
    await goTo(page, 'Write');
    await page.locator('li[data-step] .words', { hasText: 'door notice' }).waitFor();
    await page.getByRole('button', { name: 'Undo: make two of the notice' }).click();
    await page.locator('li[data-step] .words', { hasText: 'door notice' }).waitFor({ state: 'detached' });
  });
}
