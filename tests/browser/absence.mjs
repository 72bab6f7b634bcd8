// Hours away: what was proved before counts for nothing until it is proved again, circuit by circuit, with its readings.
import { Follow } from './pages/follow.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

const AWAY = '14:00:00';
const step = (id, words, actions) => ({ id, stage: 'make safe', words, actions });
const DOCUMENT = {
  putback: 1, id: 'absence', title: 'Leave a pump overnight (invented)', country: 'GB',
  map: {
    circuits: [
      { id: 'mains', name: 'mains', kind: 'mains electricity', sections: [{ id: 'pump_mains', name: 'pump mains' }] },
      { id: 'heating', name: 'heating', kind: 'heating water', sections: [{ id: 'body', name: 'pump body' }] },
    ],
    isolators: [
      { id: 'switch', name: 'pump switch', between: ['supply', 'pump_mains'], handle: 'switch', lockable: true },
      { id: 'valve', name: 'pump valve', between: ['supply', 'body'], handle: 'valve' },
    ],
  },
  steps: [
    step('s1', 'Switch off the pump switch and lock it.', [{ do: 'isolate', on: ['switch'] }, { do: 'lock', on: ['switch'] }]),
    step('s2', 'Prove the pump dead.', [{ do: 'prove', on: ['mains'] }]),
    step('s3', 'Close the pump valve and drain the body.', [
      { do: 'isolate', on: ['valve'] }, { do: 'release', on: ['body'], what: 'pressure', by: 'drain' },
    ]),
    step('s4', 'Prove the body at zero.', [{ do: 'prove', on: ['body'] }]),
    step('s5', 'Take the pump out.', []),
  ],
};

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkAbsence(tally, screen) {
  await visited(tally, screen, 'hours away', async (place, visit) => {
    const { page } = visit;
    await new Write(page).open(place.server.address);
    await page.getByLabel('File to open').setInputFiles({
      name: 'absence.putback.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(DOCUMENT)),
    });
    await page.getByText('Prove the pump dead.').first().waitFor();
    const follow = new Follow(page);
    await before(place, visit, follow);
    await away(place, visit, follow);
    await again(place, visit, follow);
  });
}

async function before(place, { page }, follow) {
  await place.tally.step('both circuits are proved', async () => {
    await new Write(page).follow();
    await follow.startAllTheSame('R. Bell, to look at it');
    while ((await follow.current()) < 5) await follow.doStep();
    await soonMatch(() => follow.circuit('mains'), /^proved dead/);
    await soonMatch(() => follow.circuit('heating'), /^proved at zero/);
  });
  await place.tally.step('a reload at once changes nothing of that', async () => {
    await page.reload();
    await page.getByRole('button', { name: 'Go on from step 5' }).waitFor();
    await soonMatch(() => follow.circuit('mains'), /^proved dead/);
  });
}

async function away(place, visit, follow) {
  const { page } = visit;
  await place.tally.step('after a night nobody goes on: both are to be proved again', async () => {
    await page.clock.install();
    await page.clock.fastForward(AWAY);
    await page.reload();
    await page.getByRole('heading', { name: 'You were here' }).waitFor();
    await soonEqual(() => page.getByRole('button', { name: /^Go on/ }).count(), 0);
    await soonMatch(() => follow.circuit('mains'), /^prove again/);
    await soonMatch(() => follow.circuit('heating'), /^prove again/);
    const list = page.getByRole('region', { name: 'Where you were' }).locator('.again li');
    await soonEqual(() => list.count(), 2);
    await soonMatch(() => list.first().innerText(), /^Prove again: mains \(proved 14 h ago\)$/);
  });
  await look(place, visit, 'follow-away');
  await place.tally.step('who does not go on is told how to leave', async () => {
    await page.getByRole('button', { name: 'Leave it safe' }).click();
    await page.getByRole('heading', { name: 'I must leave' }).waitFor();
    await follow.closeStop();
  });
}

async function again(place, visit, follow) {
  const { page } = visit;
  await place.tally.step('a proof is taken again with its readings', async () => {
    await page.waitForTimeout(450);
    await page.getByRole('button', { name: 'Prove again: mains' }).click();
    await page.getByRole('heading', { name: 'Prove again: mains' }).waitFor();
    await look(place, visit, 'follow-prove-again');
    await follow.proveAgain();
    await page.getByRole('heading', { name: 'Prove again: heating' }).waitFor();
    await soonMatch(() => follow.circuit('mains'), /^proved dead/);
    await soonMatch(() => follow.circuit('heating'), /^prove again/);
  });
  await place.tally.step('what is taken again is kept, and the rest stays to be taken', async () => {
    await page.reload();
    await page.getByRole('heading', { name: 'You were here' }).waitFor();
    await soonEqual(() => page.locator('.again li').count(), 1);
    await page.waitForTimeout(450);
    await page.getByRole('button', { name: 'Prove again: heating' }).click();
    await follow.proveAgain();
  });
  await place.tally.step('then the job goes on where it was', async () => {
    await page.getByRole('heading', { name: /^Step 5:/ }).waitFor();
    await soonMatch(() => follow.circuit('heating'), /^proved at zero/);
  });
}
