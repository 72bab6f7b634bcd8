// A question on the job: the answers as keys, the steps of the other answers passed over, what was done and no more as
// the state, and all of it kept and taken back as a tick is.
import assert from 'node:assert/strict';
import { Follow } from './pages/follow.mjs';
import { Write } from './pages/write.mjs';
import { soonEqual, soonMatch } from './soon.mjs';
import { look, visited } from './visit.mjs';

const ASKED = 'Is the strainer blocked?';
const step = (id, words, actions, answer) => ({
  id, stage: 'strip', words, actions, ...(answer && { when: [{ question: 'blocked', answer }] }),
});
const DOCUMENT = {
  putback: 1, id: 'strainer', title: 'Look after a strainer (invented)', country: 'GB',
  map: {
    circuits: [{ id: 'heating', name: 'heating', kind: 'heating water', sections: [{ id: 'body', name: 'strainer body' }] }],
    isolators: [{ id: 'valve', name: 'inlet valve', between: ['supply', 'body'], handle: 'valve', location: 'left of it' }],
    connections: [
      { id: 'cap', name: 'cap screws', family: 'fixing', count: 2 },
      { id: 'plate', name: 'plate screws', family: 'fixing', count: 3 },
    ],
  },
  questions: [{ id: 'blocked', words: ASKED }],
  steps: [
    step('s1', 'Close the inlet valve.', [{ do: 'isolate', on: ['valve'] }]),
    step('s2', `Ask: ${ASKED}`, [{ do: 'ask', ask: 'blocked' }]),
    step('s3', 'Undo the two cap screws.', [{ do: 'undo', on: ['cap'] }], 'yes'),
    step('s4', 'Undo the three plate screws.', [{ do: 'undo', on: ['plate'] }], 'no'),
    step('s5', 'Read the gauge.', [{
      do: 'read', readings: [{ what: 'gauge', limits: { min: '1', max: '2', unit: 'bar' } }],
      on_fail: { again: 'close the inlet valve and call the office', leave_safe: true },
    }]),
  ],
};

/** Walks it on one screen: `{ name, options }`, the options as for a browser context. */
export async function walkAnswers(tally, screen) {
  await visited(tally, screen, 'a question on the job', async (place, visit) => {
    const { page } = visit;
    await new Write(page).open(place.server.address);
    await page.getByLabel('File to open').setInputFiles({
      name: 'strainer.putback.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(DOCUMENT)),
    });
    await page.getByText('Undo the two cap screws.').first().waitFor();
    const follow = new Follow(page);
    await asked(place, visit, follow);
    await answered(place, visit, follow);
    await takenBack(place, visit, follow);
    await out(place, visit, follow);
    await stop(place, visit, follow);
  });
}

async function asked(place, visit, follow) {
  const { page } = visit;
  await place.tally.step('what hangs on the answer says so before it is asked', async () => {
    await new Write(page).follow();
    await follow.startAllTheSame('R. Bell, to look at it');
    assert.ok((await follow.coming()).some((line) => line.startsWith('3 if yes: Undo the two cap screws.')));
    await follow.doStep();
    await soonEqual(() => follow.current(), 2);
  });
  await place.tally.step('the answers are large keys, and there is no other', async () => {
    const keys = page.getByRole('group', { name: ASKED }).getByRole('button');
    await soonEqual(() => keys.allInnerTexts(), ['Yes', 'No']);
    for (const key of await keys.all()) assert.ok((await key.boundingBox()).height >= 48);
    await soonEqual(() => page.getByRole('button', { name: /^Done/ }).count(), 0);
  });
  await look(place, visit, 'follow-asked');
}

async function answered(place, visit, follow) {
  const { page } = visit;
  await place.tally.step('steps of the other answer are passed over, and nobody has done them', async () => {
    await follow.answer('No');
    await page.getByText('Done: 2').waitFor({ state: 'attached' });
    await soonEqual(() => follow.current(), 4);
    assert.ok(!(await follow.coming()).join().includes('cap screws'));
    await page.locator('.now h1:focus').waitFor();
    await follow.doStep();
    await soonEqual(() => follow.current(), 5);
    const apart = await page.getByRole('complementary', { name: 'Still apart' }).innerText();
    assert.match(apart, /Still apart: 3/);
    assert.doesNotMatch(apart, /cap screws/);
  });
  await place.tally.step('a reload knows the answer', async () => {
    await page.reload();
    await follow.ready();
    await soonEqual(() => follow.current(), 5);
    await soonMatch(() => page.getByRole('complementary', { name: 'Still apart' }).innerText(), /Still apart: 3/);
  });
}

async function takenBack(place, { page }, follow) {
  await place.tally.step('an answer is taken back with its tick, and asked again', async () => {
    await follow.undoTick();
    await page.getByRole('heading', { name: /^Step 4:/ }).waitFor();
    await follow.undoTick();
    await page.getByRole('group', { name: ASKED }).waitFor();
    await follow.answer('Yes');
    await page.getByRole('heading', { name: /^Step 3:/ }).waitFor();
    await follow.doStep();
    await soonEqual(() => follow.current(), 5);
    await soonMatch(() => page.getByRole('complementary', { name: 'Still apart' }).innerText(), /Still apart: 2/);
  });
}

async function out(place, visit, follow) {
  const { page } = visit;
  await place.tally.step('a reading that is out says what the writer wrote for it', async () => {
    await follow.untilReading();
    await page.getByRole('group', { name: 'Keypad' }).getByRole('button', { name: '9' }).click();
    // A press soon after the key has changed is ignored.
    await page.waitForTimeout(450);
    await page.getByRole('button', { name: 'Take it' }).click();
    await page.getByText('If it is out: close the inlet valve and call the office; leave it safe').waitFor();
  });
  await look(place, visit, 'follow-out');
}

async function stop(place, visit, follow) {
  const { page } = visit;
  await place.tally.step('STOP calls by a key, and says first how the isolators stand', async () => {
    await follow.openStop();
    const call = page.getByRole('link', { name: 'Call 999 or 112' });
    await soonEqual(() => call.getAttribute('href'), 'tel:999');
    await page.locator('.stop-sheet > .isolators').getByText('inlet valve, left of it: closed').waitFor();
  });
  await look(place, visit, 'follow-stop-isolators');
  await follow.closeStop();
}
