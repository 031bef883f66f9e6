// node browse.mjs PROFILE PDF PAGE.html
// Opens a page of ours in a browser, light and dark, wide and narrow, and as printed on A4, with a checker for access made by others, and prints one JSON line:
// what the browser complained of, what it asked for, what the checker found, what is wider than its page, and every cell of every table. The printed page goes to PDF.
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { launch } from './browser.mjs';

const [profile, pdf, page] = process.argv.slice(2);
const axe = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const browser = await launch(profile);
const said = [], asked = [], axed = [], wide = [];
let cells = [], headings = [], images = 0;
try {
  for (const [scheme, width] of [['light', 1280], ['dark', 1280], ['light', 360]]) {
    const tab = await browser.newPage();
    tab.on('console', m => said.push(`${m.type()}: ${m.text()}`));
    tab.on('pageerror', e => said.push(String(e)));
    tab.on('request', r => { if (!r.url().startsWith('data:') && r.url() !== pathToFileURL(page).href) asked.push(r.url()); });
    await tab.setBypassCSP(true); // for the checker alone: the page itself has no script
    await tab.setViewport({ width, height: 900 });
    await tab.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
    await tab.goto(pathToFileURL(page).href);
    await tab.addScriptTag({ path: axe });
    const found = await tab.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
    for (const v of found.violations) axed.push({ scheme, width, impact: v.impact, id: v.id, nodes: v.nodes.slice(0, 3).map(n => n.html.slice(0, 200)) });
    if (await tab.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth)) wide.push(`page ${width}`);
    if (width === 1280 && scheme === 'light') {
      ({ cells, headings, images } = await tab.evaluate(() => ({
        cells: [...document.querySelectorAll('table')].map(t => [...t.rows].map(r => [...r.cells].map(c => c.textContent))),
        headings: [...document.querySelectorAll('h1,h2,h3,h4')].map(h => `${h.tagName} ${h.textContent}`),
        images: document.querySelectorAll('figure.drawing svg, figure.drawing img').length,
      })));
      // Between the margins of an A4 sheet, in CSS pixels.
      await tab.setViewport({ width: Math.floor((210 - 26) * 96 / 25.4), height: 1000 });
      await tab.emulateMediaType('print');
      wide.push(...await tab.evaluate(() => [...document.querySelectorAll('table, figure, p, li, td, th')]
        .filter(e => e.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5).map(e => e.outerHTML.slice(0, 120))));
      await tab.emulateMediaType(null);
      await tab.pdf({ path: pdf, format: 'A4', printBackground: true });
    }
    await tab.close();
  }
} finally {
  await browser.close();
}
console.log(JSON.stringify({ said, asked, axed, wide, cells, headings, images }));
