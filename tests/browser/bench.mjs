// What a key costs in the page: from the key to its last change of the page, to the first message that comes
// through after it (the browser may lay out and paint before it), and to the next frame; what the heap keeps of a
// thousand edits that were undone. It asserts nothing; `./dev bench` prints it.
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

async function slow(page, rate) {
  await (await page.context().newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate });
}

function how(slowed) {
  return slowed ? `, ${slowed} times slowed` : '';
}

async function typed(page) {
  await page.evaluate(watchKeys);
  for (let key = 0; key < N_KEYS; key += 1) {
    await page.keyboard.press(key % 2 ? 'Backspace' : 'x');
    await page.waitForTimeout(20);
  }
  return page.evaluate(() => globalThis.keyTimes);
}

async function measure({ name, path, slowed }) {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
  await new Write(page).open(server.address);
  await page.locator('input[type=file]').first().setInputFiles(path);
  await page.waitForFunction((least) => document.querySelectorAll('li[data-step]').length >= least, Number(name));
  const n = await page.locator('li[data-step]').count();
  await page.locator('li[data-step]').nth(Math.floor(n / 2)).locator('.words').click();
  const field = page.locator('.row.selected textarea');
  await field.click();
  if (slowed) await slow(page, slowed);
  const { heard, changed, done, frames } = await typed(page);
  console.log(`key in ${n} steps${how(slowed)}: last change p50 ${part(changed, 0.5)} ms, p95 ${part(changed, 0.95)} ms (${changed.length} of ${done.length} keys)`);
  console.log(`  character p50 ${part(heard, 0.5)} ms, p95 ${part(heard, 0.95)} ms; message p50 ${part(done, 0.5)} ms, p95 ${part(done, 0.95)} ms; next frame p95 ${part(frames, 0.95)} ms`);
  if (name === '200' && !slowed) await heap(page, field);
  await page.close();
}

/** Notes for each key when its character is told, when it last changes the page, when a message comes, and the next frame. */
function watchKeys() {
  const times = { heard: [], changed: [], done: [], frames: [] };
  globalThis.keyTimes = times;
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
