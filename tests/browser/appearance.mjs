// How it looks: every screen and main state in each theme for accessibility, at each size for its width; the whole
// of Write by keyboard with the focus in sight; and the screens as a screen reader meets them.
import assert from 'node:assert/strict';
import { kill, newProfile, removeProfile } from './browser.mjs';
import { accessible, fitsTheWidth, picture } from './looking.mjs';
import { compareOutline } from './outlines.mjs';
import { page as folder } from './places.mjs';
import { Write } from './pages/write.mjs';
import { Server } from './server.mjs';
import { everyState } from './states.mjs';
import { begin } from './visit.mjs';

const DESK = { width: 1280, height: 800 };

const THEMES = [
  { name: 'light', look: 'light' },
  { name: 'dark', look: 'dark' },
  { name: 'high', look: 'high' },
  { name: 'forced', look: 'system', options: { forcedColors: 'active', colorScheme: 'dark' } },
];

/** The windows; 640 by 400 is the desk at 200 %, and 320 by 640 what it must still fit. */
const SIZES = [
  { name: '1920', width: 1920, height: 1080 },
  { name: 'upright', width: 820, height: 1180 },
  { name: 'lying', width: 1180, height: 820 },
  { name: 'zoomed', width: 640, height: 400 },
  { name: '320', width: 320, height: 640 },
];

/** The states that are kept as outlines. */
const OUTLINED = ['write-rejected', 'all-findings', 'write-token', 'procedures', 'appliance', 'follow-step'];

/** Every state in one theme; in the first one also at every size, with large text, and as outlines. */
const inTheme = (theme) => (tally) =>
  visited(tally, theme, async (page, complaints) => {
    await everyState(page, async (state) => {
      await tally.look(`${theme.name}: ${state}: accessible`, () => accessible(page));
      await picture(page, `${theme.name}-${state}`);
      if (theme === THEMES[0]) await atEverySize(tally, page, state);
    });
    await tally.look(`${theme.name}: no complaint in the console`, () => assert.deepEqual(complaints, []));
  });

/** Its walks, each for a tally. */
export const APPEARANCES = [
  ...THEMES.map(inTheme),
  (tally) => visited(tally, { name: 'keyboard', look: 'light' }, (page) => focusInSight(tally, page)),
];

async function atEverySize(tally, page, state) {
  if (OUTLINED.includes(state)) await tally.look(`${state}: outline as kept`, () => compareOutline(page, state));
  const at = await page.evaluate(() => globalThis.scrollY);
  for (const size of SIZES) await fits(tally, page, state, size);
  await largeText(tally, page, state);
  await page.setViewportSize(DESK);
  await page.evaluate((at) => globalThis.scrollTo(0, at), at);
}

/** A first visit with this look. */
async function visited(tally, theme, act) {
  const profile = newProfile();
  const server = new Server(folder);
  await server.start();
  try {
    await tally.journey(`appearance: ${theme.name}`, async () => {
      const screen = { name: theme.name, options: { viewport: DESK, ...theme.options } };
      const { browser, page, complaints } = await begin({ screen, profile });
      await new Write(page).open(server.address);
      await page.getByRole('combobox', { name: 'Look' }).selectOption(theme.look);
      await page.evaluate(() => globalThis.scrollTo(0, 0));
      await act(page, complaints);
      await browser.close();
    });
  } finally {
    await kill(profile);
    await server.stop();
    removeProfile(profile);
  }
}

async function fits(tally, page, state, { name, width, height }) {
  await page.setViewportSize({ width, height });
  await settled(page);
  await tally.look(`${state} at ${name}: fits the width`, () => fitsTheWidth(page));
  await page.evaluate(showSubject);
  await picture(page, `size-${name}-${state}`);
}

/** Scrolls what the state is about into the window: what is open, asked or held, or the row that is selected. */
function showSubject() {
  const subject = ['.map-list > li.open', '.row.held', '.choices', '.move-to', '.details', '.of-token', '.row.selected', '.row.last .notation', '.row:has(.question)']
    .map((selector) => document.querySelector(selector)).find((element) => element && element.getClientRects().length > 0);
  if (subject) subject.scrollIntoView({ block: 'center', behavior: 'instant' });
}

async function largeText(tally, page, state) {
  await page.setViewportSize(DESK);
  await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
  await settled(page);
  await tally.look(`${state} with text twice as large: fits the width`, () => fitsTheWidth(page));
  await page.evaluate(showSubject);
  await picture(page, `size-text-${state}`);
  await page.evaluate(() => document.documentElement.style.removeProperty('font-size'));
}

const settled = (page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Goes through Write by Tab, and fails where the focus cannot be seen. */
async function focusInSight(tally, page) {
  await tally.look('by Tab from the top to the line at the end, the focus is always in sight', async () => {
    const seen = [];
    await page.mouse.click(2, 2);
    for (let n = 0; n < 80; n += 1) {
      await page.keyboard.press('Tab');
      await settled(page);
      const focus = await page.evaluate(describeFocus);
      assert.ok(focus, 'the focus is nowhere');
      assert.ok(focus.isInWindow, `${focus.name} is out of sight: ${focus.place}`);
      assert.ok(focus.isOnTop, `${focus.name} is covered by ${focus.by}`);
      assert.ok(focus.isMarked, `${focus.name} shows no mark of the focus`);
      seen.push(focus.name);
      if (focus.name === 'new-line') break;
    }
    assert.ok(seen.includes('new-line'), `the line at the end was not reached: ${seen.join(', ')}`);
    assert.ok(seen.some((name) => name.startsWith('row-')), 'no row was reached');
  });
}

/** What is focused, whether it is in the window with nothing over it, and whether it is marked. */
function describeFocus() {
  const element = document.activeElement;
  if (!element || element === document.body) return null;
  const place = element.getBoundingClientRect();
  const x = Math.min(Math.max(place.left + place.width / 2, 1), innerWidth - 1);
  const y = Math.min(Math.max(place.top + Math.min(place.height, innerHeight) / 2, 1), innerHeight - 1);
  const top = document.elementFromPoint(x, y);
  const marks = [element, element.closest('.grows'), element.querySelector(':scope > .content')].filter(Boolean);
  const isMarked = marks.some((part) =>
    [getComputedStyle(part), getComputedStyle(part, '::before')].some((style) =>
      (style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2) ||
      (style.boxShadow !== 'none') || (style.content !== 'none' && Number.parseFloat(style.borderLeftWidth) >= 2)));
  return {
    name: element.id || element.getAttribute('aria-label') || element.textContent.trim().slice(0, 40),
    place: JSON.stringify(place),
    isInWindow: place.bottom > 0 && place.top < innerHeight && place.width > 0,
    isOnTop: top !== null && (element.contains(top) || top.contains(element)),
    by: top?.outerHTML.slice(0, 120),
    isMarked,
  };
}
