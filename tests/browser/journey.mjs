// The main job, end to end: from the demo on the screen to a job that survives the loss of server and browser.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { kill, newProfile, removeProfile } from './browser.mjs';
import { accessible, picture } from './looking.mjs';
import { commandLine, out, page as folder } from './places.mjs';
import { Follow } from './pages/follow.mjs';
import { Write } from './pages/write.mjs';
import { Server } from './server.mjs';
import { soonEqual } from './soon.mjs';
import { begin, look } from './visit.mjs';

/** A step that changes nothing on the appliance. */
const NEW_WORDS = 'Sweep the floor and leave the plant room tidy.';
/** How many steps are done before the browser is killed. */
const N_TICKS = 3;

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walk(tally, screen) {
  const profile = newProfile();
  const server = new Server(folder);
  await server.start();
  try {
    await tally.journey(`the main job at ${screen.name}`, async () => {
      const place = { tally, screen, profile, server };
      const first = await begin(place);
      await write(place, first);
      await save(place, first);
      await follow(place, first);
      await kill(profile);
      await resume(place);
    });
  } finally {
    await kill(profile);
    await server.stop();
    removeProfile(profile);
  }
}

async function write(place, visit) {
  const { tally, server } = place;
  const write = new Write(visit.page);
  await tally.step('the demo opens rejected, one step is out', async () => {
    await write.open(server.address);
    await write.stamped('REJECTED');
  });
  await look(place, visit, 'write-rejected');
  let nSteps = await write.steps();
  await tally.step('put back, it is accepted', async () => {
    await write.putBack();
    await write.stamped('ACCEPTED');
    await soonEqual(() => write.steps(), nSteps + 1);
  });
  await look(place, visit, 'write-accepted');
  nSteps = await write.steps();
  await tally.step('another step taken out, it is rejected', async () => {
    await write.remove(await toRemove(write));
    await write.stamped('REJECTED');
    await soonEqual(() => write.steps(), nSteps - 1);
  });
  await tally.step('undone, it is accepted', async () => {
    await write.undo();
    await write.stamped('ACCEPTED');
    await soonEqual(() => write.steps(), nSteps);
  });
  await tally.step('a new step is written by typing, and kept', async () => {
    await write.untilKept(() => write.addBelow(nSteps - 1, NEW_WORDS));
    await soonEqual(() => write.steps(), nSteps + 1);
    await soonEqual(() => write.words(nSteps), NEW_WORDS);
    await write.stamped('ACCEPTED');
  });
  await look(place, visit, 'write-new-step');
}

/** A step without which nobody should follow the rest: the first that proves. */
async function toRemove(write) {
  const nSteps = await write.steps();
  for (let number = 1; number <= nSteps; number += 1) {
    if (/\bprove\b/i.test(await write.words(number))) return number;
  }
  assert.fail('no step of the demo proves anything');
}

async function save({ tally, screen }, { page }) {
  const write = new Write(page);
  const file = out(`${screen.name}.putback.json`);
  await tally.step('it is saved as a file', () => write.save(file));
  await tally.step('the command line accepts the file', () => {
    const { status, stdout, stderr } = spawnSync(commandLine, ['check', file], { encoding: 'utf8' });
    assert.equal(status, 0, `${stdout}${stderr}`);
    assert.match(stdout, /accepted/i);
  });
}

async function follow(place, visit) {
  const { tally, server } = place;
  const { page } = visit;
  const follow = new Follow(page);
  await tally.step('it can be followed', async () => {
    await new Write(page).follow();
    await follow.ready();
    await soonEqual(() => follow.current(), 1);
    await soonEqual(() => follow.lastTicked(), 0);
  });
  await look(place, visit, 'follow-first-step');
  await tally.step('a step is done and ticked', async () => {
    await follow.doStep();
    await soonEqual(() => follow.lastTicked(), 1);
  });
  await tally.step('with the server stopped, a reload works and the tick is there', async () => {
    await offlineReady(page);
    await server.stop();
    await assert.rejects(fetch(server.address), 'the server still answers');
    await page.reload();
    await follow.ready();
    await soonEqual(() => follow.lastTicked(), 1);
    await soonEqual(() => follow.current(), 2);
  });
  await tally.step('with the server stopped, the job goes on', async () => {
    while ((await follow.lastTicked()) < N_TICKS) await follow.doStep();
    await soonEqual(() => follow.current(), N_TICKS + 1);
  });
  await look(place, visit, 'follow-some-steps-done');
}

/** Waits until every file that the build lists is kept, as the page itself says it to people. */
async function offlineReady(page) {
  await page.waitForFunction(async () => {
    await navigator.serviceWorker.ready;
    const list = await (await fetch('precache.json')).json();
    const kept = await Promise.all(list.map((address) => caches.match(address)));
    return list.length > 0 && kept.every(Boolean);
  });
}

async function resume(place) {
  const { tally, server } = place;
  const visit = await begin(place);
  const follow = new Follow(visit.page);
  // From here the test may let minutes pass at once.
  await visit.page.clock.install();
  await tally.step('killed and started again without a server, it says where one was', async () => {
    await visit.page.goto(server.address);
    await new Write(visit.page).follow();
    await follow.resumes();
  });
  await look(place, visit, 'follow-resumed');
  await tally.step('the job is at the same step with the same ticks', async () => {
    await follow.ready();
    await soonEqual(() => follow.lastTicked(), N_TICKS);
    await soonEqual(() => follow.current(), N_TICKS + 1);
  });
  await tally.step('STOP opens without a server, and closes', async () => {
    await follow.openStop();
    await picture(visit.page, `${place.screen.name}-follow-stop`);
    await tally.look('follow-stop: accessible', () => accessible(visit.page));
    await follow.closeStop();
  });
  await tally.step('it goes on, through waits and locks, to the first figure to be read', () => follow.untilReading());
  await look(place, visit, 'follow-reading');
  await tally.step('the figure is taken, and the step ticked', async () => {
    const number = await follow.current();
    await follow.doStep();
    await soonEqual(() => follow.lastTicked(), number);
  });
  await visit.browser.close();
}
