// The long test of keeping: kills the browser again and again while somebody writes, and looks after each
// kill whether everything that the page had called kept is there. `./dev soak` runs it.
import assert from 'node:assert/strict';
import { kill, launchWith, newProfile, removeProfile } from './browser.mjs';
import { page as folder } from './places.mjs';
import { Write } from './pages/write.mjs';
import { Server } from './server.mjs';
import { Tally } from './tally.mjs';
import { PATIENCE } from './visit.mjs';

const N_KILLS = Number(process.env.PUTBACK_KILLS ?? 25);
const SEED = Number(process.env.PUTBACK_SEED ?? 1);
/** The longest time from an edit to the kill. */
const LONGEST_MS = 1500;
/** Of what was typed, a kill takes at most what came last. */
const MOST_LOST_MS = 500;

/** A small generator of numbers from 0 to 1, the same for the same seed (mulberry32). */
function generator(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Replaces the words of a step and waits each time until they are called kept; `note` is told which are. */
async function replace(write, round, isOver, note) {
  note(await write.words(1));
  for (let word = 0; !isOver(); word += 1) {
    const words = `Round ${round}, word ${word}.`;
    await write.untilKept(() => write.setWords(1, words));
    note(words);
  }
}

/** Types key after key without a pause; `note` is told the words after each, and when they stood there. */
async function typeOn(write, round, isOver, note, pace) {
  let words = `Round ${round}, word 0.`;
  await write.untilKept(() => write.setWords(1, words));
  note(words);
  for (let key = 0; !isOver(); key += 1) {
    const letter = key % 5 === 0 ? ' ' : 'going'[key % 5];
    await write.type(letter);
    words += letter;
    note(words, Date.now());
    await new Promise((resolve) => setTimeout(resolve, pace()));
  }
}

/** Writes until the kill; gives the last words that the page had called kept or that stood there long enough before. */
async function writeUntilKilled(write, profile, round, after, pace) {
  let isOver = false;
  const noted = [];
  const note = (words, at = 0) => noted.push({ words, at });
  const way = round % 2 ? replace : typeOn;
  const typing = way(write, round, () => isOver, note, pace).catch((error) => {
    // The kill ends the typing in the middle of something; before it, nothing may.
    if (!isOver) throw error;
  });
  await Promise.race([typing, new Promise((resolve) => setTimeout(resolve, after))]);
  isOver = true;
  const killed = Date.now();
  const promised = noted.filter(({ at }) => at <= killed - MOST_LOST_MS).at(-1)?.words;
  await kill(profile);
  await typing;
  return promised;
}

/** How far words have come: by round, by word, by what was typed behind. */
const number = (words) => {
  const match = /^Round (\d+), word (\d+)\.(.*)$/.exec(words);
  return match ? Number(match[1]) * 1e9 + Number(match[2]) * 1e4 + match[3].length : -1;
};

const tally = new Tally();
const random = generator(SEED);
const server = new Server(folder);
const profile = newProfile();
await server.start();
await tally.journey(`${N_KILLS} kills while writing, seed ${SEED}, ${new Date().toISOString().slice(0, 10)}`, async () => {
  let promised;
  for (let round = 1; round <= N_KILLS + 1; round += 1) {
    await tally.step(round > N_KILLS ? 'after the last kill' : `kill ${round}`, async () => {
      const browser = await launchWith(profile, { viewport: { width: 1280, height: 800 } });
      browser.setDefaultTimeout(PATIENCE);
      const write = new Write(browser.pages()[0] ?? (await browser.newPage()));
      await write.open(server.address);
      const found = await write.words(1);
      // Words typed after the last promise may be there or not; older ones may not.
      if (promised !== undefined) assert.ok(number(found) >= number(promised), `kept "${promised}", found "${found}"`);
      if (round > N_KILLS) await browser.close();
      else promised = (await writeUntilKilled(write, profile, round, 300 + random() * LONGEST_MS * (round % 2 ? 1 : 2), () => 20 + random() * 120)) ?? found;
    });
  }
});
await kill(profile);
await server.stop();
removeProfile(profile);
process.exit(tally.close() ? 0 : 1);
