// A browser with the profile of a journey, and what every screen of it is looked at for.
import assert from 'node:assert/strict';
import { kill, launchWith, newProfile, removeProfile } from './browser.mjs';
import { accessible, fitsTheWidth, picture } from './looking.mjs';
import { page as folder } from './places.mjs';
import { Server } from './server.mjs';

/** A journey on one screen in a profile and from a server of its own: `act` gets the place and the first visit. */
export async function visited(tally, screen, name, act) {
  const profile = newProfile();
  const server = new Server(folder);
  await server.start();
  try {
    await tally.journey(`${name} at ${screen.name}`, async () => {
      const place = { tally, screen, profile, server };
      const visit = await begin(place);
      await act(place, visit);
      await visit.browser.close();
    });
  } finally {
    await kill(profile);
    await server.stop();
    removeProfile(profile);
  }
}

/** How long is waited for anything, in ms: what is waited for too shortly fails on the slowest machine alone. */
export const PATIENCE = 90_000;

/** How many times slower pages are than this machine would have them: what a walk does not wait for shows then. */
const SLOWER = Number(process.env.PUTBACK_SLOWER ?? 1);

async function slow(browser, first) {
  if (SLOWER <= 1) return;
  const one = async (page) => {
    await (await browser.newCDPSession(page)).send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  };
  // A page that is closed at once cannot be slowed, and need not be.
  browser.on('page', (page) => one(page).catch(() => {}));
  await one(first);
}

/** A browser with the profile of this journey, and its page, which must not complain. */
export async function begin({ screen, profile }) {
  const browser = await launchWith(profile, screen.options);
  browser.setDefaultTimeout(PATIENCE);
  const page = browser.pages()[0] ?? (await browser.newPage());
  await slow(browser, page);
  // Files are downloaded and uploaded, as in most browsers; the walk of files in hand brings pickers of its own.
  await browser.addInitScript(() => { globalThis.showOpenFilePicker = globalThis.showSaveFilePicker = undefined; });
  const complaints = [];
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (protocol.startsWith('http') && hostname !== '127.0.0.1') complaints.push(`asked ${request.url()}`);
  });
  return { browser, page, complaints };
}

/** Looks at the screen as it is now. */
export async function look({ tally, screen }, { page, complaints }, name) {
  await tally.look(`${name}: accessible`, () => accessible(page));
  await tally.look(`${name}: fits the width`, () => fitsTheWidth(page));
  await tally.look(`${name}: no complaint in the console, no request elsewhere`, () => assert.deepEqual(complaints, []));
  await picture(page, `${screen.name}-${name}`);
}
