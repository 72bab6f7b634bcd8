// The things of the appliance: found, made one, made two, taken out, and what stands before them.
import assert from 'node:assert/strict';
import { Appliance, goTo } from './pages/screens.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkThings(tally, screen) {
  await visited(tally, screen, 'things', async (place, visit) => {
    await new Write(visit.page).open(place.server.address);
    await goTo(visit.page, 'Appliance');
    await told(place, visit);
    await stepsOf(place, visit);
    await find(place, visit);
    await takeOut(place, visit);
    await makeOne(place, visit);
    await stayTwo(place, visit);
    await byDragging(place, visit);
    await new Appliance(visit.page).find('');
    await makeTwo(place, visit);
  });
}

async function told(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('a row says what the sheet says, and a stroke where nothing is known', async () => {
    await page.getByRole('heading', { name: 'Circuits 15 of 15 kinds answered' }).waitFor();
    await soonEqual(() => appliance.says('heating', 'Isolated at'), 'suction valve, discharge valve');
    await soonEqual(() => appliance.says('heating', 'Proved at'), 'drain cock');
    // The step of the demo that is out is the one that proves it.
    await soonEqual(() => appliance.says('mains', 'Proved at'), '-');
    await soonEqual(() => appliance.says('mains', 'Stored'), 'no charge');
    await soonEqual(() => appliance.says('lid', 'Is'), 'cover');
    await soonEqual(() => appliance.says('pump', 'Behind'), 'insulation shell');
    await soonEqual(() => appliance.says('lid screws', 'Size'), '4 × M4');
    await soonEqual(() => appliance.says('suction flange', 'Between'), 'pump');
    await soonEqual(() => appliance.says('suction flange', 'Tool'), '18 mm');
    await soonEqual(() => appliance.says('suction flange', 'Seal'), 'gasket DN 40, 3 mm, renew');
  });
  await place.tally.step('the columns of a wide window stand below each other, and those of a narrow one are named', async () => {
    const places = () => page.locator('.thing-line').evaluateAll((lines) => lines.map((line) => [...line.querySelectorAll('.cell')].map((cell) => Math.round(cell.getBoundingClientRect().left))));
    const size = page.viewportSize();
    await page.setViewportSize({ width: 1280, height: 800 });
    const all = await places();
    for (const of of all) assert.deepEqual(of, all[0]);
    assert.equal(new Set(all[0]).size, 6);
    await page.setViewportSize({ width: 820, height: 1180 });
    const width = await page.locator('.thing-line .what').first().evaluate((what) => what.getBoundingClientRect().width);
    assert.ok(width > 10, `${width}`);
    await page.setViewportSize(size);
  });
}

async function stepsOf(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('a number of a step leads to it, and going back leads to the row', async () => {
    const number = Number((await appliance.says('suction flange', 'Step')).split(/\s+/)[0]);
    await appliance.line('suction flange').getByRole('button', { name: `Step ${number}`, exact: true }).click();
    await page.locator('.row.selected:focus').waitFor();
    assert.ok(await new Write(page).row(number).evaluate((row) => row.classList.contains('selected')));
    await page.goBack();
    await page.locator('.thing-row:focus', { hasText: 'suction flange' }).waitFor();
  });
  await place.tally.step('a joint that nothing tests says so, until undo', async () => {
    const write = new Write(page);
    await goTo(page, 'Write');
    const words = await page.locator('li[data-step] .words').evaluateAll((all) => all.map((one) => one.value ?? one.textContent));
    const tests = words.flatMap((text, at) => (/^Check for leaks cold/.test(text) ? [at + 1] : []));
    assert.equal(tests.length, 1, words.join('\n'));
    await write.remove(tests[0]);
    await goTo(page, 'Appliance');
    await appliance.line('suction flange').getByText('no test', { exact: true }).waitFor();
    await soonEqual(() => appliance.line('lid screws').getByText('no test').count(), 0);
    await page.keyboard.press('Control+z');
    await page.getByText('no test', { exact: true }).first().waitFor({ state: 'detached' });
    await goTo(page, 'Appliance');
  });
}

async function find(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('a thing is found by what it is, with the steps that name it', async () => {
    await appliance.find('drain');
    // What is proved there says so in its row.
    await soonEqual(() => appliance.rows(), ['heating', 'pump body', 'drain cock', 'drain hose']);
    await page.getByRole('status').filter({ hasText: /^4 of \d+$/ }).waitFor();
    await soonMatch(() => appliance.says('drain cock', 'Step'), /^\d+\s+\d+\s+\d+$/);
  });
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await look(place, visit, 'things-found');
  await place.tally.step('its sheet says what stands before it', async () => {
    await appliance.find('pump');
    await appliance.open('suction flange');
    await soonMatch(() => page.locator('.sheet .way').innerText(), /^insulation shell\s*>\s*suction flange$/);
  });
  await place.tally.step('what stands before anything can be chosen, and begins with what is deepest inside', async () => {
    await appliance.find('');
    const choice = page.getByRole('combobox', { name: 'What stands before' });
    await soonEqual(() => choice.evaluate((field) => field.selectedOptions[0].textContent), 'pump');
    await soonMatch(() => page.locator('.access .way').innerText(), /^insulation shell\s*>\s*pump plug\s*>\s*suction flange\s*>\s*discharge flange\s*>\s*pump$/);
    await choice.selectOption({ label: 'shell clips' });
    await page.locator('.access').getByText('nothing: it can be reached at once').waitFor();
  });
  await appliance.find('');
}

async function takeOut(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  await place.tally.step('what is in no step is listed, as its row says, and what is used nowhere is taken out from there', async () => {
    await appliance.add('component', 'spare bracket');
    await page.getByRole('checkbox', { name: 'in no step' }).check();
    // The step of the demo that is out is the only one at the box terminals.
    await soonEqual(() => appliance.rows(), ['spare bracket', 'box terminals']);
    await page.getByRole('button', { name: 'Take out the spare bracket' }).click();
    await appliance.row('spare bracket').waitFor({ state: 'detached' });
    await page.getByRole('checkbox', { name: 'in no step' }).uncheck();
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
  // What lies half under the head is too small a target only until somebody scrolls.
  await page.locator('.map-list > li.open').evaluate((sheet) => sheet.scrollIntoView({ block: 'start' }));
  await look(place, visit, 'things-same');
  await place.tally.step('they are one, and the verdict is as before', async () => {
    await page.getByRole('button', { name: 'Make one of the two' }).click();
    await appliance.row('cover screws').waitFor({ state: 'detached' });
    await soonEqual(() => page.locator('.map-list .sheet').getByRole('textbox', { name: 'Other names' }).inputValue(), 'screws of the lid, cover screws');
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
    await soonEqual(() => page.getByRole('button', { name: 'Make one of the two' }).count(), 0);
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

/** Where the middle of the name of a thing is, or of its handle. */
async function middle(locator) {
  const box = await locator.boundingBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

async function byDragging(place, visit) {
  const { page } = visit;
  const appliance = new Appliance(page);
  const bar = page.locator('.held-bar');
  const close = async () => {
    await page.locator('.map-list .thing-row[aria-expanded="true"]').first().click();
    await page.locator('.map-list .sheet').waitFor({ state: 'detached' });
  };
  await close();
  // Only the lid, its screws, those that are new and the vent screw are left, all in sight.
  await appliance.find('screw');
  await page.evaluate(() => globalThis.scrollTo(0, 0));
  await appliance.row('cover screws').waitFor();
  await appliance.row('cover screws').evaluate((row) => row.scrollIntoView({ block: 'end' }));
  const ends = async (name) => [await middle(appliance.line('cover screws').locator('.handle')), await middle(appliance.row(name))];
  const drag = async (name) => {
    const [from, to] = await ends(name);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 12 });
  };
  await place.tally.step('dragged onto what it cannot be, a thing says why before it is let go, and stays', async () => {
    await drag('lid');
    await page.locator('li.stays-two').waitFor();
    await bar.filter({ hasText: /stay two: the first is a component, the other a connection/ }).waitFor();
    await page.keyboard.press('Escape');
    await bar.waitFor({ state: 'detached' });
    await page.mouse.up();
    await soonEqual(() => page.locator('.map-list .sheet').count(), 0);
    await drag('lid');
    await page.mouse.up();
    const told = page.getByRole('alert').filter({ hasText: /stay two/ });
    await told.getByRole('button', { name: 'Close' }).click();
    await appliance.row('cover screws').waitFor();
  });
  const merge = async () => {
    const panel = page.locator('.map-list .sheet .whole');
    await panel.waitFor();
    await soonEqual(() => panel.getByRole('combobox').evaluate((field) => field.selectedOptions[0].textContent), 'cover screws');
    await page.waitForFunction(() => document.activeElement?.closest('.whole'));
    await appliance.pick('What it does', 'fixing');
    await appliance.pick('How many fasteners', '4');
    await page.getByRole('button', { name: 'Make one of the two' }).click();
    await appliance.row('cover screws').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo: make one of the lid screws and the cover screws' }).click();
    await appliance.row('cover screws').waitFor();
    await close();
  };
  await place.tally.step('dragged onto the one that it is, what differs is asked, and one undo makes them two again', async () => {
    await drag('lid screws');
    await page.locator('li.could-be').waitFor();
    await bar.filter({ hasText: 'The cover screws and the lid screws would be one' }).waitFor();
    await look(place, visit, 'things-dragged');
    await page.mouse.up();
    await merge();
  });
  if (!place.screen.options.hasTouch) return;
  await place.tally.step('a finger drags the handle as a mouse does', async () => {
    const client = await page.context().newCDPSession(page);
    const touch = (type, points) => client.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await appliance.row('cover screws').evaluate((row) => row.scrollIntoView({ block: 'end' }));
    const [from, to] = await ends('lid screws');
    await touch('touchStart', [from]);
    for (let step = 1; step <= 10; step += 1) {
      await touch('touchMove', [{ x: from.x + ((to.x - from.x) * step) / 10, y: from.y + ((to.y - from.y) * step) / 10 }]);
    }
    await page.locator('li.could-be').waitFor();
    await touch('touchEnd', []);
    await merge();
  });
}
