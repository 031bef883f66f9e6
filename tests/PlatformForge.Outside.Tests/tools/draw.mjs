// node draw.mjs PROFILE DRAWING PICTURE [DRAWING PICTURE]...
// Draws SVG files in a browser, one after another in one window of 1600 by 1200, and writes what it shows as PNG: a browser takes a second to start,
// a drawing a tenth of it.
import { pathToFileURL } from 'node:url';
import { launch } from './browser.mjs';

const [profile, ...pairs] = process.argv.slice(2);
const browser = await launch(profile);
try {
  const tab = await browser.newPage();
  await tab.setViewport({ width: 1600, height: 1200 });
  for (let i = 0; i + 1 < pairs.length; i += 2) {
    await tab.goto(pathToFileURL(pairs[i]).href);
    await tab.screenshot({ path: pairs[i + 1] });
  }
} finally {
  await browser.close();
}
