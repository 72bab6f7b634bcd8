// Makes the PNG icons from public/icon.svg: node tests/browser/icons.mjs
// They are committed; this is only run again when the drawing changes.
import { readFile } from 'node:fs/promises';
import { launch } from './browser.mjs';
import { repository } from './places.mjs';

const ICONS = [
  { file: 'icon-192.png', size: 192, share: 1 },
  { file: 'icon-512.png', size: 512, share: 1 },
  // Launchers cut this one to a circle of four fifths, so the drawing stays inside it.
  { file: 'maskable-512.png', size: 512, share: 0.62 },
];

const drawing = await readFile(repository('public/icon.svg'), 'base64');
const browser = await launch();
for (const { file, size, share } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(
    `<body style="margin:0;background:#FBFAF6;display:grid;place-items:center;height:100vh">
     <img src="data:image/svg+xml;base64,${drawing}" width="${size * share}" height="${size * share}" alt="">`,
  );
  await page.screenshot({ path: repository(`public/icons/${file}`) });
  await page.close();
}
await browser.close();
