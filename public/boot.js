// Starts the application; if it does not start, says what to do and hands out what is kept on this device.
//
// An external file instead of the build's inline script, so that the content security policy can forbid
// every inline script. The build names the two files of the application in the attributes of this script.

import { showKept } from './rescue.js';

// The page says "is starting" in the element `start`; the application takes it away once it stands.

const PATIENCE_MS = 10_000;

const own = document.querySelector('script[data-js]');
const address = (name) => new URL(name, document.baseURI).href;
let isShown = false;

/** Says in the place of "is starting" what went wrong and what to do; once, and only if the application does not stand. */
function show(reason) {
  const start = document.getElementById('start');
  if (!start || isShown) return;
  isShown = true;
  const words = document.createElement('p');
  words.setAttribute('role', 'alert');
  words.textContent =
    `${reason} What is kept on this device stays kept, and can be saved as files here. Reload the page; if that does ` +
    'not help, close all tabs of Putback and open it again, or use a current browser. In doubt about a job in front of ' +
    'you: STOP, and leave it safe.';
  const name = document.createElement('h1');
  name.className = 'name';
  name.textContent = 'Putback';
  start.replaceChildren(name, words);
  showKept(start);
}

setTimeout(() => show('Putback has not started within 10 seconds.'), PATIENCE_MS);
// What fails in the application before it stands comes by here, since nobody awaits it.
for (const kind of ['error', 'unhandledrejection']) addEventListener(kind, () => show('Putback could not start.'));

// The application asks so when the rest of it does not come.
addEventListener('rescue-here', () => {
  const place = document.getElementById('rescue-here');
  if (place) showKept(place);
});

try {
  const application = await import(address(own.dataset.js));
  await application.default({ module_or_path: address(own.dataset.wasm) });
} catch (error) {
  show('Putback could not start.');
  console.error(error);
}
