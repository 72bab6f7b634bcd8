// Starts the application, and says what to do if it does not start.
//
// An external file instead of the build's inline script, so that the content security policy can forbid
// every inline script. The build names the two files of the application in the attributes of this script.

// The page says "is starting" in the element `start`; the application takes it away once it stands.

const PATIENCE_MS = 10_000;

const own = document.querySelector('script[data-js]');
const address = (name) => new URL(name, document.baseURI).href;

/** Says in the place of "is starting" what went wrong and what to do. */
function show(reason) {
  const start = document.getElementById('start');
  if (!start) return;
  start.setAttribute('role', 'alert');
  start.textContent =
    `${reason} What is kept on this device stays kept. Reload the page; if that does not help, close all tabs ` +
    'of Putback and open it again, or use a current browser. In doubt about a job in front of you: STOP, and leave it safe.';
}

const late = setTimeout(() => show('Putback has not started within 10 seconds.'), PATIENCE_MS);

try {
  const application = await import(address(own.dataset.js));
  await application.default({ module_or_path: address(own.dataset.wasm) });
} catch (error) {
  clearTimeout(late);
  show('Putback could not start.');
  console.error(error);
}
