// What every screen is looked at for: accessibility, and a picture for people.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { out } from './places.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

// `wcag22aa` by name: the rule about the size of targets is off otherwise.
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Fails with every breach of the guidelines that axe-core finds on the page as it is now. */
export async function accessible(page) {
  // A script element would be stopped by the content security policy.
  await page.evaluate(axe);
  const { violations, passes } = await page.evaluate(
    (tags) => globalThis.axe.run(document, { runOnly: { type: 'tag', values: tags } }),
    TAGS,
  );
  if (passes.length === 0) throw new Error('axe-core looked at nothing');
  if (violations.length === 0) return;
  const lines = violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}\n  ${node.html}\n  ${node.failureSummary}`),
  );
  throw new Error(lines.join('\n'));
}

/** Keeps a picture of the page as `tests/browser/out/NAME.png`. */
export const picture = (page, name) => page.screenshot({ path: out(`${name}.png`) });

/** Fails if the page can be scrolled sideways, and names what sticks out. */
export async function fitsTheWidth(page) {
  const [wide, seen, out] = await page.evaluate(() => {
    const root = document.documentElement;
    const sticksOut = (element) => element.getBoundingClientRect().right > root.clientWidth + 0.5;
    const out = [...document.querySelectorAll('body *')].filter(sticksOut).map((element) => {
      const { className, tagName } = element;
      return `${tagName.toLowerCase()}.${className.baseVal ?? className} "${element.textContent.slice(0, 30)}"`;
    });
    return [root.scrollWidth, root.clientWidth, out.slice(0, 6)];
  });
  if (wide > seen) throw new Error(`the page is ${wide} px wide on a screen of ${seen} px: ${out.join('; ')}`);
}
