// node read-png.mjs FILE...
// Decodes PNG with a decoder made by others and prints one JSON line a file: its size and how much is on it.
import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';

for (const file of process.argv.slice(2)) {
  const { width, height, data } = PNG.sync.read(readFileSync(file));
  const shades = new Map();
  let run = 0;
  for (let i = 0; i < data.length; i += 4) {
    // Most dots are as the one before: they are counted together.
    run++;
    const shade = data.readUInt32BE(i);
    if (i + 4 === data.length || data.readUInt32BE(i + 4) !== shade) {
      shades.set(shade, (shades.get(shade) ?? 0) + run);
      run = 0;
    }
  }
  console.log(JSON.stringify({ file, width, height, shades: shades.size, background: Math.max(...shades.values()) / (width * height) }));
}
