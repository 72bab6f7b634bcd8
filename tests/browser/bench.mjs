// What a key costs in the page, in a step and in the line for a new one: from the key to its last change of the page, to
// the first message that comes through after it (the browser may lay out and paint before it), and to the next frame;
// what the heap keeps of a thousand edits that were undone. It asserts nothing; `./dev bench` prints it.
import { existsSync } from 'node:fs';
import { launch } from './browser.mjs';
import { Write } from './pages/write.mjs';
import { page as folder, repository } from './places.mjs';
import { Server } from './server.mjs';

/** Large procedures, written by the benchmark of the core. */
const FILES = [
  { name: '200', path: repository('target/bench/large-200.putback.json') },
  { name: '1000', path: repository('target/bench/large-1000.putback.json') },
];
const N_KEYS = 120;
/** What is typed in the line for a new step: of things that are new, and of a circuit that is not. */
const SENTENCES = [
  'Close the flow valve and lock it, then undo the two union nuts (30 mm) of the spare pump.',
  'Refit the cover with its four M5 screws and tighten them to 4 Nm.',
];
const N_EDITS = 1000;
/** How many times slower than this machine the slow one is. */
const SLOWED = 4;

const server = new Server(folder);
await server.start();
const browser = await launch();
try {
  await emptyPage();
  await emptyPage({ slowed: SLOWED });
  for (const file of FILES) {
    if (!existsSync(file.path)) throw new Error(`${file.path} is missing; \`./dev bench\` makes it`);
    await measure(file);
  }
  await measure({ ...FILES[0], slowed: SLOWED });
  await measureLine(FILES[0]);
  await measureLine({ ...FILES[0], slowed: SLOWED });
} finally {
  await browser.close();
  await server.stop();
}

/**
 * What a key costs where there is nothing but a field: from the key to the event that tells of its character, which
 * is the browser's own part, and to the next frame. What a slowed browser adds by itself is seen here.
 */
async function emptyPage({ slowed } = {}) {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await page.setContent('<textarea autofocus></textarea>');
  await page.locator('textarea').click();
  if (slowed) await slow(page, slowed);
  const { heard, frames } = await typed(page);
  console.log(`key in an empty page${how(slowed)}: character p50 ${part(heard, 0.5)} ms, p95 ${part(heard, 0.95)} ms; next frame p95 ${part(frames, 0.95)} ms`);
  await page.close();
}

/** Slows a page until a calculation takes so many times as long as before; the browser overdoes what it is told, by a sixth where there are two cores. */
async function slow(page, times) {
  const client = await page.context().newCDPSession(page);
  const before = await page.evaluate(calculate);
  let [told, found] = [times, 0];
  for (let turn = 0; turn < 5 && Math.abs(found - times) > times / 50; turn += 1) {
    if (found > 1) told = 1 + ((told - 1) * (times - 1)) / (found - 1);
    await client.send('Emulation.setCPUThrottlingRate', { rate: told });
    found = (await page.evaluate(calculate)) / before;
  }
  console.log(`(told to be ${told.toFixed(2)} times slower, a calculation takes ${found.toFixed(2)} times as long)`);
}

/** How long a calculation takes that takes a millisecond or two, with pauses as between keys. */
async function calculate() {
  const times = [];
  for (let turn = 0; turn < 41; turn += 1) {
    await new Promise((done) => setTimeout(done, 20));
    const start = performance.now();
    let mixed = turn;
    for (let i = 0; i < 250_000; i += 1) mixed = (mixed * 31 + i) | 0;
    globalThis.calculated = mixed;
    times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[20];
}

function how(slowed) {
  return slowed ? `, ${slowed} times slowed` : '';
}

async function typed(page, keys = Array.from({ length: N_KEYS }, (_, key) => (key % 2 ? 'Backspace' : 'x'))) {
  await page.evaluate(watchKeys);
  await page.evaluate(() => globalThis.forgetKeyTimes());
  for (const key of keys) {
    await page.keyboard.press(key);
    await page.waitForTimeout(20);
  }
  return page.evaluate(() => globalThis.keyTimes);
}

async function opened({ name, path }) {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await new Write(page).open(server.address);
  await page.locator('input[type=file]').first().setInputFiles(path);
  await page.waitForFunction((least) => document.querySelectorAll('li[data-step]').length >= least, Number(name));
  return { page, n: await page.locator('li[data-step]').count() };
}

/** Types sentences in the line for a new step, one after the other, as somebody does who writes. */
async function measureLine({ slowed, ...file }) {
  const { page, n } = await opened(file);
  const line = page.locator('#new-line');
  await line.click();
  if (slowed) await slow(page, slowed);
  const times = [];
  for (const sentence of SENTENCES) {
    await line.fill('');
    times.push(await typed(page, sentence.split('').map((letter) => (letter === ' ' ? 'Space' : letter))));
  }
  const all = (part) => times.flatMap((each) => each[part]);
  console.log(`key in a new line below ${n} steps${how(slowed)}: last change p50 ${part(all('changed'), 0.5)} ms, p95 ${part(all('changed'), 0.95)} ms (${all('changed').length} of ${all('done').length} keys)`);
  console.log(`  character p50 ${part(all('heard'), 0.5)} ms, p95 ${part(all('heard'), 0.95)} ms; next frame p95 ${part(all('frames'), 0.95)} ms`);
  await page.close();
}

async function measure({ slowed, ...file }) {
  const { page, n } = await opened(file);
  await page.locator('li[data-step]').nth(Math.floor(n / 2)).locator('.words').click();
  const field = page.locator('.row.selected textarea');
  await field.click();
  if (slowed) await slow(page, slowed);
  const { heard, changed, done, frames } = await typed(page);
  console.log(`key in ${n} steps${how(slowed)}: last change p50 ${part(changed, 0.5)} ms, p95 ${part(changed, 0.95)} ms (${changed.length} of ${done.length} keys)`);
  console.log(`  character p50 ${part(heard, 0.5)} ms, p95 ${part(heard, 0.95)} ms; message p50 ${part(done, 0.5)} ms, p95 ${part(done, 0.95)} ms; next frame p95 ${part(frames, 0.95)} ms`);
  if (file.name === '200' && !slowed) await heap(page, field);
  await page.close();
}

/** Notes for each key when its character is told, when it last changes the page, when a message comes, and the next frame. */
function watchKeys() {
  if (globalThis.keyTimes) return;
  let times;
  globalThis.forgetKeyTimes = () => {
    times = { heard: [], changed: [], done: [], frames: [] };
    globalThis.keyTimes = times;
  };
  globalThis.forgetKeyTimes();
  let [started, last] = [0, 0];
  // Called in the same turn as the change, before anything is laid out.
  new MutationObserver(() => { last = performance.now() - started; }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
  addEventListener('keydown', () => {
    const start = performance.now();
    [started, last] = [start, 0];
    // A message comes after everything that the key has set off by itself.
    const { port1, port2 } = new MessageChannel();
    addEventListener('input', () => {
      times.heard.push(performance.now() - start);
      port2.postMessage(null);
    }, { once: true, capture: true });
    port1.onmessage = () => {
      times.done.push(performance.now() - start);
      if (last > 0) times.changed.push(last);
    };
    requestAnimationFrame(() => times.frames.push(performance.now() - start));
  }, true);
}

function part(values, share) {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN).toFixed(1);
}

/** The heap before, and after many edits that were all undone. */
async function heap(page, field) {
  const client = await page.context().newCDPSession(page);
  const used = async () => {
    await client.send('HeapProfiler.collectGarbage');
    const { usedSize } = await client.send('Runtime.getHeapUsage');
    const wasm = await page.evaluate(() => performance.memory?.totalJSHeapSize ?? 0);
    return { usedSize, wasm };
  };
  const rounds = async (n) => {
    for (let edit = 0; edit < n; edit += 1) await page.keyboard.press('x');
    for (let edit = 0; edit < n; edit += 1) await page.keyboard.press('Backspace');
  };
  await field.click();
  await rounds(20);
  const before = await used();
  await rounds(N_EDITS / 2);
  const after = await used();
  const change = ((after.usedSize / before.usedSize - 1) * 100).toFixed(1);
  console.log(`heap of scripts after ${N_EDITS} edits taken back: ${(before.usedSize / 1e6).toFixed(2)} MB, then ${(after.usedSize / 1e6).toFixed(2)} MB (${change} %)`);
}
